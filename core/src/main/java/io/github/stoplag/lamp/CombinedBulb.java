package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * A bulb with a stop and a tail filament in one lamp: at night the tail is lit, and the stop light comes on top of it.
 *
 * <p>What the driver behind sees change is c(t) = (Is r(t) + It)/It. In UN R148 the ratio asked for is its end value
 * (Is + It)/It, stop and position together over position alone; in FMVSS 108 it is Is/It, stop alone over tail.
 *
 * <p>Symbols: Is, It light of the stop and the tail filament in the same direction; r the stop filament's onset. Each
 * filament is built from its own rating. Both light the same optics, so Is/It is taken as the ratio of their fluxes
 * behind the lens times an optics ratio, 1 unless given: a reflector focused on one filament collects less of the
 * other. The tail filament runs cooler, so a red lens lets more of its light through and brings the ratio down. The
 * tail filament warms its neighbour through gas and radiation by an amount no source gives: 0 K unless given. The earth
 * lead they share is left out.
 *
 * @param major the stop filament
 * @param minor the tail filament
 * @param warmingK by how much the lit tail filament warms the unlit stop filament, [0, 500] K
 * @param opticsRatio the share of its flux that the lamp sends rearward from the stop filament over that from the tail
 *     filament, [0.1, 10]
 */
public record CombinedBulb(FilamentLamp major, FilamentLamp minor, double warmingK, double opticsRatio) {
    /**
     * Checks the ranges.
     *
     * @param major the stop filament
     * @param minor the tail filament
     * @param warmingK by how much the lit tail filament warms the unlit stop filament, [0, 500] K
     * @param opticsRatio the stop filament's share of flux sent rearward over the tail filament's, [0.1, 10]
     * @throws IllegalArgumentException if warming or optics ratio are out of range
     */
    public CombinedBulb {
        Objects.requireNonNull(major, "major");
        Objects.requireNonNull(minor, "minor");
        Check.inRange("warming of the stop filament by the tail filament", warmingK, 0, 500, "K");
        Check.inRange("optics ratio of stop to tail filament", opticsRatio, 0.1, 10, "");
    }

    /**
     * Makes a bulb whose filaments neither warm each other nor sit differently in the optics.
     *
     * @param major the stop filament
     * @param minor the tail filament
     * @return the bulb
     */
    public static CombinedBulb of(FilamentLamp major, FilamentLamp minor) {
        Objects.requireNonNull(major, "major");
        Objects.requireNonNull(minor, "minor");
        return new CombinedBulb(major, minor, 0, 1);
    }

    /**
     * Switches the stop filament on while the tail filament burns.
     *
     * @param stop how the stop filament is fed
     * @param tail how the tail filament is fed; it has burned for long
     * @return the change the driver behind sees
     * @throws IllegalArgumentException as {@link FilamentLamp#switchOn}, or if the two are not behind the same lens
     */
    public Change stopOverTail(SupplyConditions stop, SupplyConditions tail) {
        Objects.requireNonNull(tail, "tail");
        if (stop.lens() != tail.lens()) {
            throw new IllegalArgumentException("stop and tail filament of one bulb must be behind the same lens, got "
                    + stop.lens() + " and " + tail.lens());
        }
        Temperature warmed = Temperature.kelvin(stop.initialTemperature().inKelvin() + warmingK);
        FilamentOnset onset = major.switchOn(stop.withInitialTemperature(warmed));
        FilamentOnset burning = minor.switchOn(tail);
        double ratio = opticsRatio
                * onset.fluxBehindLens().inLumens()
                / burning.fluxBehindLens().inLumens();
        return new Change(onset, burning, ratio, warmingK);
    }

    /**
     * A stop light coming on over a lit tail light.
     *
     * @param stop the stop filament's onset
     * @param tail the tail filament, settled
     * @param stopToTail Is/It once both are settled, the ratio of FMVSS 108
     * @param warmingK by how much the tail filament had warmed the stop filament
     */
    public record Change(FilamentOnset stop, FilamentOnset tail, double stopToTail, double warmingK)
            implements Evident {

        /**
         * Refuses nulls.
         *
         * @param stop the stop filament's onset
         * @param tail the tail filament, settled
         * @param stopToTail Is/It once both are settled, the ratio of FMVSS 108
         * @param warmingK by how much the tail filament had warmed the stop filament
         * @throws NullPointerException if one that is required is null
         */
        public Change {
            Objects.requireNonNull(stop, "stop");
            Objects.requireNonNull(tail, "tail");
        }

        /** {@return (Is + It)/It once settled, the ratio of UN R148} */
        public double sumToTail() {
            return stopToTail + 1;
        }

        /**
         * Gives the light over that of the tail alone.
         *
         * @param timeS the time since the stop light was switched on in seconds
         * @return c(t), 1 before the filament glows
         * @throws IllegalArgumentException if the time is NaN
         */
        public double relativeToTail(double timeS) {
            return 1 + stopToTail * stop.relativeIntensity(timeS);
        }

        @Override
        public Evidence evidence() {
            return Evidence.of(
                            "stop filament: " + stop.label(),
                            "tail filament: " + tail.label(),
                            "light of both in the ratio of their fluxes behind a "
                                    + stop.conditions().lens() + "; tail filament warms the stop filament by "
                                    + warmingK + " K (assumed)")
                    .with(stop.evidence())
                    .with(tail.evidence());
        }
    }
}
