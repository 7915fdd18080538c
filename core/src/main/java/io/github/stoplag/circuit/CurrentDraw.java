package io.github.stoplag.circuit;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;

/**
 * The steady current a load draws as a function of the voltage across it.
 *
 * <p>I = I(U), in amperes over volts; U in [0, 1000] V. Loads in parallel add: {@link #plus}. The lamp has settled: the
 * inrush of a cold filament is not in it.
 *
 * <pre>{@code
 * CurrentDraw bulb = CurrentDraw.filament(Voltage.volts(13.5), Power.watts(26.5));
 * bulb.current(Voltage.volts(13.5)); // 1.96296 A
 * }</pre>
 */
public final class CurrentDraw implements Evident {
    private static final Range SOME_RESISTANCE = Ranges.RESISTANCE.withoutLowerEnd();
    private final String label;
    private final DoubleUnaryOperator currentA;
    private final double[] knotsV;
    private final Evidence evidence;

    private CurrentDraw(String label, DoubleUnaryOperator currentA, Evidence evidence, double... knotsV) {
        this.label = label;
        this.currentA = currentA;
        this.knotsV = Arrays.stream(knotsV).sorted().toArray();
        this.evidence = evidence;
    }

    /**
     * A broken lamp or wire: no current at any voltage.
     *
     * @return the open circuit
     */
    public static CurrentDraw open() {
        return new CurrentDraw("open circuit", v -> 0, Evidence.of("open circuit: I = 0"));
    }

    /**
     * A constant resistance: I = U/R.
     *
     * @param resistance R, in (0, 1e9] Ω
     * @return the load
     * @throws IllegalArgumentException if the resistance is 0, a short circuit, whose current only the wiring limits
     */
    public static CurrentDraw resistive(Resistance resistance) {
        double ohms = resistance.inOhms();
        if (!(ohms > 0)) {
            throw new IllegalArgumentException("a load of 0 Ω is a short circuit: only the wiring limits its current,"
                    + " see LampFeed.shortCircuitCurrent");
        }
        return new CurrentDraw(
                "resistor " + resistance, v -> v / ohms, Evidence.of("resistor " + resistance + ": I = U/R"));
    }

    /**
     * A settled filament lamp known by volts and watts: that of {@link FilamentLamp#builder} with its defaults.
     *
     * @param ratedVoltage U₀, the voltage at which the power holds, [0.5, 300] V
     * @param ratedPower P₀, the power it really draws there, [0.1, 1000] W
     * @return the load
     * @throws IllegalArgumentException if a rating is outside its range
     */
    public static CurrentDraw filament(Voltage ratedVoltage, Power ratedPower) {
        Objects.requireNonNull(ratedPower, "ratedPower");
        Objects.requireNonNull(ratedVoltage, "ratedVoltage");
        return filament(FilamentLamp.builder(ratedVoltage, ratedPower).build());
    }

    /**
     * A settled filament lamp: I = U/R(T), T the temperature at which its heat balance is even.
     *
     * <p>It draws the published power law's current, I ~ U^0.55, near its rated voltage, and more than that far below.
     *
     * @param lamp the lamp, in surroundings of 300 K
     * @return the load; asked for a voltage that drives the filament beyond 3600 K, it refuses
     */
    public static CurrentDraw filament(FilamentLamp lamp) {
        String label = "filament lamp " + lamp.ratedPower() + " at " + lamp.ratedVoltage();
        FilamentOnset rated = lamp.switchOn(SupplyConditions.of(lamp.ratedVoltage()));
        Evidence evidence = Evidence.of(label + ": I = U/R(T), T from its heat balance, surroundings at 300 K")
                .with(new Evidence(rated.basis(), rated.caveats(), List.of()));
        return new CurrentDraw(
                label,
                v -> v == 0
                        ? 0
                        : lamp.settledCurrent(SupplyConditions.of(Voltage.volts(v)))
                                .inAmperes(),
                evidence);
    }

    /**
     * An LED lamp with a current regulator: constant current from its lowest working voltage up; below it a straight
     * line to zero is assumed.
     *
     * @param current the regulated current, not negative
     * @param lowestVoltage the voltage from which it is held, above 0 V
     * @return the load
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static CurrentDraw ledRegulated(Current current, Voltage lowestVoltage) {
        Objects.requireNonNull(lowestVoltage, "lowestVoltage");
        double i = Check.inRange("LED current", current.inAmperes(), 0, 1000, "A");
        double u = Ranges.LIVE_SUPPLY.check("lowest working voltage", lowestVoltage.inVolts());
        return new CurrentDraw(
                "LED lamp " + current,
                v -> i * Math.min(1, v / u),
                Evidence.of("LED lamp: constant " + current + " from " + lowestVoltage
                        + ", a straight line to zero below (assumed)"),
                u);
    }

    /**
     * An LED lamp with a series resistor: I = (U − U_F)/R above its forward voltage, 0 below.
     *
     * @param forwardVoltage U_F of the LED string, not negative
     * @param series R, above 0 Ω
     * @return the load
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static CurrentDraw ledWithResistor(Voltage forwardVoltage, Resistance series) {
        Objects.requireNonNull(forwardVoltage, "forwardVoltage");
        Objects.requireNonNull(series, "series");
        double uf = Ranges.SUPPLY.check("forward voltage", forwardVoltage.inVolts());
        double r = SOME_RESISTANCE.check("series resistance", series.inOhms());
        return new CurrentDraw(
                "LED lamp " + forwardVoltage + " + " + series,
                v -> Math.max(0, (v - uf) / r),
                Evidence.of("LED lamp: I = (U − " + forwardVoltage + ")/" + series),
                uf);
    }

    /**
     * A load measured at several voltages; straight lines between them, a straight line to zero below the first, the
     * last current kept above the last.
     *
     * @param label what was measured
     * @param voltageV the voltages in volts, above 0 and increasing
     * @param amperes the currents there in amperes, not negative
     * @return the load
     * @throws IllegalArgumentException if the arrays differ in length, are empty or hold a value outside its range
     */
    public static CurrentDraw measured(String label, double[] voltageV, double[] amperes) {
        Objects.requireNonNull(amperes, "amperes");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(voltageV, "voltageV");
        if (voltageV.length == 0 || voltageV.length != amperes.length) {
            throw new IllegalArgumentException(
                    "a measured load needs as many currents as voltages and at least one, got " + voltageV.length
                            + " voltages and " + amperes.length + " currents");
        }
        double[] u = new double[voltageV.length + 1];
        double[] i = new double[u.length];
        for (int k = 1; k < u.length; k++) {
            u[k] = Check.above("voltage " + (k - 1), voltageV[k - 1], u[k - 1], 1000, "V");
            i[k] = Ranges.FORWARD_CURRENT.check("current " + (k - 1), amperes[k - 1]);
        }
        String range = Numbers.text(u[1]) + " to " + Numbers.text(u[u.length - 1]) + " V";
        Evidence evidence = Evidence.of(label + ": measured from " + range + ", straight lines between")
                .withCaveat("the current of " + label + " was measured from " + range + " and is a guess outside");
        return new CurrentDraw(label, v -> interpolate(u, i, v), evidence, u);
    }

    private static double interpolate(double[] u, double[] i, double v) {
        int last = u.length - 1;
        if (v >= u[last]) {
            return i[last];
        }
        int k = 1;
        while (u[k] < v) {
            k++;
        }
        return i[k - 1] + (i[k] - i[k - 1]) * (v - u[k - 1]) / (u[k] - u[k - 1]);
    }

    /** A load made of others, for the package's own compositions. */
    static CurrentDraw composed(String label, DoubleUnaryOperator currentA, Evidence evidence, double... knotsV) {
        return new CurrentDraw(label, currentA, evidence, knotsV);
    }

    /**
     * Puts a second load in parallel: the currents add.
     *
     * @param other the second load
     * @return both together
     */
    public CurrentDraw plus(CurrentDraw other) {
        Objects.requireNonNull(other, "other");
        return new CurrentDraw(
                label + " + " + other.label,
                v -> currentA.applyAsDouble(v) + other.currentA.applyAsDouble(v),
                evidence.with(other.evidence),
                DoubleStream.concat(Arrays.stream(knotsV), Arrays.stream(other.knotsV))
                        .toArray());
    }

    /**
     * Gives the current at a voltage.
     *
     * @param voltage the voltage across the load, not negative
     * @return the current
     * @throws IllegalArgumentException if the voltage is negative
     */
    public Current current(Voltage voltage) {
        return Current.amperes(currentA(voltage.inVolts()));
    }

    /**
     * Gives the power at a voltage.
     *
     * @param voltage the voltage across the load, not negative
     * @return the power U I
     * @throws IllegalArgumentException if the voltage is negative
     */
    public Power power(Voltage voltage) {
        return Power.watts(voltage.inVolts() * currentA(voltage.inVolts()));
    }

    /** The voltages at which the current may turn sharply, in rising order; between them it is smooth. */
    double[] knotsV() {
        return knotsV.clone();
    }

    double currentA(double voltageV) {
        return currentA.applyAsDouble(Ranges.SUPPLY.check("voltage across the load", voltageV));
    }

    /**
     * Names the load.
     *
     * @return a short name
     */
    public String label() {
        return label;
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }
}
