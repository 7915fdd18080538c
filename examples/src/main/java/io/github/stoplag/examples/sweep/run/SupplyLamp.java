package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.LampSignal;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

/**
 * From a filament lamp's circuit closing to its light being detected, as it follows from the supply: the lamp model at
 * evenly spaced voltages, joined linearly.
 *
 * <p>Values of the table are rounded to 1 ns, so that they have the same bits on every JDK.
 */
final class SupplyLamp {
    private static final int CELLS = 64;
    private static final double LOWEST = 0.65;
    private static final double HIGHEST = 1.15;
    private static final int DECIMALS = 9;

    private final double loV;
    private final double hiV;
    private final double[] latencyS = new double[CELLS + 1];
    private final double largestErrorS;
    private final String seenBy;

    private SupplyLamp(FilamentLamp lamp, LuminousIntensity atRated, Criterion eye) {
        loV = LOWEST * lamp.ratedVoltage().inVolts();
        hiV = HIGHEST * lamp.ratedVoltage().inVolts();
        seenBy = eye.criterion();
        double worst = 0;
        for (int i = 0; i <= CELLS; i++) {
            latencyS[i] = rounded(exactS(lamp, atRated, eye, volts(i)));
        }
        for (int i = 0; i < CELLS; i++) {
            // a straight line is furthest from a bent curve near the middle
            double middle = exactS(lamp, atRated, eye, volts(i + 0.5));
            worst = Math.max(worst, Math.abs(latencyS(volts(i + 0.5)) - middle));
        }
        largestErrorS = worst;
    }

    /**
     * Tabulates a lamp behind a red lens, cold at first and without wiring losses.
     *
     * @param lamp the bulb
     * @param atRated its lamp's luminous intensity at the design voltage
     * @param eye who looks
     * @throws IllegalArgumentException if the lamp is not seen at one of the voltages
     */
    static SupplyLamp of(FilamentLamp lamp, LuminousIntensity atRated, Criterion eye) {
        return new SupplyLamp(lamp, atRated, eye);
    }

    static double exactS(FilamentLamp lamp, LuminousIntensity atRated, Criterion eye, double supplyV) {
        FilamentOnset onset =
                lamp.switchOn(SupplyConditions.of(Voltage.volts(supplyV)).withLens(Lens.RED));
        LuminousIntensity intensity = LuminousIntensity.candela(atRated.inCandela() * onset.relativeToRated());
        Detection detection = eye.detect(LampSignal.of(onset, intensity));
        if (detection instanceof Detection.Seen seen) {
            return seen.at().inSeconds();
        }
        throw new IllegalArgumentException("at " + Numbers.text(supplyV) + " V the lamp is never seen: "
                + ((Detection.NeverSeen) detection).reason());
    }

    static double rounded(double timeS) {
        return BigDecimal.valueOf(timeS)
                .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                .doubleValue();
    }

    private double volts(double cell) {
        return loV + cell * ((hiV - loV) / CELLS);
    }

    /** Says whether the table reaches a voltage. */
    boolean covers(double supplyV) {
        return supplyV >= loV && supplyV <= hiV;
    }

    /** The latency at a voltage that the table covers. */
    double latencyS(double supplyV) {
        double at = (supplyV - loV) * (CELLS / (hiV - loV));
        int cell = Math.min(CELLS - 1, (int) at);
        return latencyS[cell] + (at - cell) * (latencyS[cell + 1] - latencyS[cell]);
    }

    /** The largest error of the table in the middle of its cells. */
    double largestErrorS() {
        return largestErrorS;
    }

    /** Who looks. */
    String seenBy() {
        return seenBy;
    }

    /** The voltages that the table covers, for example {@code [8.775, 15.525] V}. */
    String range() {
        return "[" + Numbers.text(loV) + ", " + Numbers.text(hiV) + "] V";
    }

    /** All that decides its values. */
    String canonical() {
        return "table of supply_v from " + ExactText.of(loV) + " to " + ExactText.of(hiV) + ": "
                + DoubleStream.of(latencyS).mapToObj(ExactText::of).collect(Collectors.joining(", "));
    }
}
