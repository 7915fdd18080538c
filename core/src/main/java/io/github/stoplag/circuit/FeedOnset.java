package io.github.stoplag.circuit;

import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * The onset of a filament lamp behind wiring and an isolating diode, held between two lamps that bracket it.
 *
 * <p>The lamp's onset model knows a supply and a series resistance. The diode's curve U_F(I), from the settled lamp's
 * current I_s up to the inrush, lies between two lines through its settled point, U_F(I_s) + r (I − I_s) with the least
 * and the greatest r; each line is such a supply: U_s − U_F(I_s) + r I_s behind R + r. Both settle exactly as the true
 * lamp does, and on the way the true filament is never hotter than behind the flat line and never colder than behind
 * the steep one.
 *
 * @param direct the lamp behind the same wiring without the diode
 * @param quickest the lamp behind the flat line
 * @param slowest the lamp behind the steep line
 * @param lampVoltage the settled lamp's voltage
 * @param band the voltage between the two lines at the inrush current; 0 V without a diode
 * @param evidence what it rests on
 */
public record FeedOnset(
        FilamentOnset direct,
        FilamentOnset quickest,
        FilamentOnset slowest,
        Voltage lampVoltage,
        Voltage band,
        Evidence evidence)
        implements Evident {

    /**
     * Refuses nulls.
     *
     * @param direct the lamp behind the same wiring without the diode
     * @param quickest the lamp behind the flat line
     * @param slowest the lamp behind the steep line
     * @param lampVoltage the settled lamp's voltage
     * @param band the voltage between the two lines at the inrush current; 0 V without a diode
     * @param evidence what it rests on
     * @throws NullPointerException if one that is required is null
     */
    public FeedOnset {
        Objects.requireNonNull(band, "band");
        Objects.requireNonNull(direct, "direct");
        Objects.requireNonNull(evidence, "evidence");
        Objects.requireNonNull(lampVoltage, "lampVoltage");
        Objects.requireNonNull(quickest, "quickest");
        Objects.requireNonNull(slowest, "slowest");
    }

    /** The lamp behind its wiring alone. */
    static FeedOnset bare(FilamentOnset direct) {
        return feedOnset(direct, direct, direct, 0, Evidence.of("no diode in the feed"));
    }

    /** The lamp behind its wiring and a diode. */
    static FeedOnset through(ForwardCharacteristic curve, FilamentOnset direct) {
        double dropV = settledDropV(curve, direct);
        double steadyA = steadyA(direct, dropV);
        double mostA = direct.inrushCurrent().inAmperes();
        FilamentOnset settled = behind(direct, dropV, 0);
        Check.above(
                "settled filament temperature",
                settled.steadyTemperature().inKelvin(),
                direct.conditions().initialTemperature().inKelvin(),
                1e4,
                "K");
        DoubleUnaryOperator slope = i -> (curve.voltageV(i) - dropV) / (i - steadyA);
        double nextA = steadyA + 1e-4 * (mostA - steadyA);
        double[] knotsA = curve instanceof TabledDiode table ? table.knotsA() : new double[0];
        double flatOhm = slope.applyAsDouble(Extremum.argMin(slope, nextA, mostA, knotsA));
        double steepOhm = slope.applyAsDouble(Extremum.argMax(slope, nextA, mostA, knotsA));
        Evidence evidence = curve.evidence(mostA)
                .with(curve.evidence(steadyA))
                .with(Evidence.of("diode from " + Numbers.text(steadyA, 3) + " A steady to " + Numbers.text(mostA, 3)
                        + " A inrush held between two lines of " + Numbers.text(1000 * flatOhm, 3) + " and "
                        + Numbers.text(1000 * steepOhm, 3) + " mΩ through its settled drop of "
                        + Numbers.text(dropV, 3) + " V: the true onset lies between theirs"));
        return feedOnset(
                direct,
                behind(direct, dropV - flatOhm * steadyA, flatOhm),
                behind(direct, dropV - steepOhm * steadyA, steepOhm),
                (steepOhm - flatOhm) * (mostA - steadyA),
                evidence);
    }

    /** Solves U_F = U_F(I) for the current that the settled lamp draws behind a constant U_F. */
    private static double settledDropV(ForwardCharacteristic curve, FilamentOnset direct) {
        double mostV = curve.voltageV(direct.steadyCurrent().inAmperes());
        if (!(direct.conditions().supply().inVolts() > mostV)) {
            throw new IllegalArgumentException("supply must exceed the diode's drop of " + Numbers.text(mostV, 3)
                    + " V for the lamp to light, got " + direct.conditions().supply());
        }
        return new BrentSolver(1e-14, 1e-12, 0)
                .solve(100, drop -> curve.voltageV(steadyA(direct, drop)) - drop, 0, mostV);
    }

    private static double steadyA(FilamentOnset direct, double dropV) {
        return behind(direct, dropV, 0).steadyCurrent().inAmperes();
    }

    private static FilamentOnset behind(FilamentOnset direct, double dropV, double seriesOhm) {
        SupplyConditions c = direct.conditions();
        return direct.lamp()
                .switchOn(new SupplyConditions(
                        Voltage.volts(c.supply().inVolts() - dropV),
                        Resistance.ohms(c.seriesResistance().inOhms() + seriesOhm),
                        c.ambientTemperature(),
                        c.ownTemperature(),
                        c.lens()));
    }

    private static FeedOnset feedOnset(
            FilamentOnset direct, FilamentOnset quickest, FilamentOnset slowest, double bandV, Evidence evidence) {
        Evidence whole = direct.evidence()
                .with(evidence)
                .with(slowest.evidence().reservations())
                .withCautions(Caution.LAMP_LAW, Caution.LICENSED_PRACTICE);
        return new FeedOnset(
                direct, quickest, slowest, Voltage.volts(lampVoltageV(slowest)), Voltage.volts(bandV), whole);
    }

    private static double lampVoltageV(FilamentOnset onset) {
        return onset.steadyPower().inWatts() / onset.steadyCurrent().inAmperes();
    }

    /**
     * The earliest and the latest time.
     *
     * @param earliest behind the flat line
     * @param latest behind the steep line
     */
    public record Times(TimeSpan earliest, TimeSpan latest) {

        /**
         * Refuses nulls.
         *
         * @param earliest behind the flat line
         * @param latest behind the steep line
         * @throws NullPointerException if one that is required is null
         */
        public Times {
            Objects.requireNonNull(earliest, "earliest");
            Objects.requireNonNull(latest, "latest");
        }
    }

    /**
     * Gives the bracket of the time to a level.
     *
     * @param levelRatio the level relative to the final light, in (0, 1)
     * @return the earliest and latest time since the circuit closed
     * @throws IllegalArgumentException if the level is outside (0, 1)
     */
    public Times timeToLevel(double levelRatio) {
        return new Times(
                TimeSpan.seconds(quickest.timeToLevelS(levelRatio).orElseThrow()),
                TimeSpan.seconds(slowest.timeToLevelS(levelRatio).orElseThrow()));
    }

    /**
     * Gives the bracket of how much later the level is reached than without the diode.
     *
     * @param levelRatio the level relative to the final light, in (0, 1)
     * @return the least and the greatest delay
     * @throws IllegalArgumentException if the level is outside (0, 1)
     */
    public Times delayByDiode(double levelRatio) {
        double without = direct.timeToLevelS(levelRatio).orElseThrow();
        Times with = timeToLevel(levelRatio);
        return new Times(
                TimeSpan.seconds(with.earliest().inSeconds() - without),
                TimeSpan.seconds(with.latest().inSeconds() - without));
    }

    /**
     * Gives the final light over that of the same wiring without the diode.
     *
     * @return the ratio, 1 without a diode
     */
    public double lightAgainstDirectRatio() {
        return slowest.relativeToRated() / direct.relativeToRated();
    }

    /**
     * Gives the greatest inrush current of the bracket: what the diode's surge rating must bear.
     *
     * @return the current at switch-on
     */
    public Current inrushCurrent() {
        return quickest.inrushCurrent();
    }
}
