package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;

/**
 * A supply voltage that changes with time: U(t) from time 0 on, 0 V before.
 *
 * <p>A step U; a sag U(t) = U1 + (U0 − U1) e^(−t/τ); straight lines through points; a switched voltage; or any
 * function. Range: [0, 1000] V.
 */
public final class SupplyCourse {
    private final String label;
    private final DoubleUnaryOperator volts;
    private final double[] breaksS;

    private SupplyCourse(String label, DoubleUnaryOperator volts, double[] breaksS) {
        this.label = label;
        this.volts = volts;
        this.breaksS = breaksS;
    }

    /**
     * Makes a constant supply.
     *
     * @param voltage U, [0, 1000] V
     * @return the supply
     * @throws IllegalArgumentException if it is out of range
     */
    public static SupplyCourse step(Voltage voltage) {
        double volt = Ranges.SUPPLY.check(voltage.inVolts());
        return new SupplyCourse("a step of " + voltage, t -> volt, new double[0]);
    }

    /**
     * Makes a supply that sags, or recovers, to a final value.
     *
     * @param first U0, [0, 1000] V
     * @param last U1, [0, 1000] V
     * @param timeConstant τ, (0, 1000] s
     * @return the supply
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static SupplyCourse sag(Voltage first, Voltage last, TimeSpan timeConstant) {
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(last, "last");
        Objects.requireNonNull(timeConstant, "timeConstant");
        double u0 = Ranges.SUPPLY.check("first supply voltage", first.inVolts());
        double u1 = Ranges.SUPPLY.check("last supply voltage", last.inVolts());
        double tau = Check.above("time constant of the supply", timeConstant.inSeconds(), 0, 1000, "s");
        return new SupplyCourse(
                "a sag from " + first + " to " + last + " with time constant " + timeConstant,
                t -> u1 + (u0 - u1) * Math.exp(-t / tau),
                new double[0]);
    }

    /**
     * Makes a supply from points, straight between them and constant after the last; two points at the same time are a
     * jump.
     *
     * @param timeS the times in seconds, from 0, not decreasing
     * @param volts the voltage at each, [0, 1000] V
     * @return the supply
     * @throws IllegalArgumentException if the arrays differ in length or hold fewer than two points, the first time is
     *     not 0, times fall, or a voltage is out of range
     */
    public static SupplyCourse points(double[] timeS, double[] volts) {
        Objects.requireNonNull(timeS, "timeS");
        Objects.requireNonNull(volts, "volts");
        if (timeS.length != volts.length || timeS.length < 2) {
            throw new IllegalArgumentException(
                    "a supply course must have equally many times and voltages, at least 2, got " + timeS.length
                            + " and " + volts.length);
        }
        for (int i = 0; i < timeS.length; i++) {
            Ranges.SUPPLY.check("point " + i + ": supply voltage", volts[i]);
            Check.inRange("point " + i + ": time", timeS[i], i == 0 ? 0 : timeS[i - 1], i == 0 ? 0 : 1e4, "s");
        }
        double[] times = timeS.clone();
        double[] values = volts.clone();
        return new SupplyCourse(
                "a course of " + timeS.length + " points",
                t -> between(times, values, t),
                Arrays.stream(times).filter(t -> t > 0).distinct().toArray());
    }

    private static double between(double[] timeS, double[] volts, double atS) {
        int right = 1;
        while (right < timeS.length && timeS[right] <= atS) {
            right++;
        }
        if (right == timeS.length) {
            return volts[right - 1];
        }
        double share = (atS - timeS[right - 1]) / (timeS[right] - timeS[right - 1]);
        return volts[right - 1] + share * (volts[right] - volts[right - 1]);
    }

    /**
     * Makes a supply that a pattern switches.
     *
     * @param voltage the voltage while on, [0, 1000] V
     * @param pattern when it is on
     * @param until up to when the pattern runs, (0, 1000] s; off after
     * @return the supply
     * @throws IllegalArgumentException if an argument is out of range or there are more than 10 000 edges
     */
    public static SupplyCourse switched(Voltage voltage, SwitchingPattern pattern, TimeSpan until) {
        Objects.requireNonNull(until, "until");
        double volt = Ranges.SUPPLY.check(voltage.inVolts());
        double untilS = Check.above("end of the switching", until.inSeconds(), 0, 1000, "s");
        double[] edges = pattern.edgesUntilS(untilS);
        // asked midway between two edges, so that rounding cannot put a moment on the wrong side of one
        return new SupplyCourse(
                voltage + " switched with " + pattern,
                t -> {
                    int found = Arrays.binarySearch(edges, t);
                    int next = found >= 0 ? found + 1 : -found - 1;
                    double left = next == 0 ? 0 : edges[next - 1];
                    return next < edges.length && pattern.isOn((left + edges[next]) / 2) ? volt : 0;
                },
                edges);
    }

    /**
     * Makes a supply from a function.
     *
     * @param label what it is, for reports
     * @param volts the voltage in volts at a time in seconds from 0 on, [0, 1000] V; it must change nothing else
     * @param breaksS the times at which it jumps or bends, rising, above 0
     * @return the supply
     * @throws IllegalArgumentException if the breaks do not rise from above 0
     */
    public static SupplyCourse of(String label, DoubleUnaryOperator volts, double... breaksS) {
        Objects.requireNonNull(breaksS, "breaksS");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(volts, "volts");
        for (int i = 0; i < breaksS.length; i++) {
            Check.above("break " + i + " of the supply", breaksS[i], i == 0 ? 0 : breaksS[i - 1], 1e6, "s");
        }
        return new SupplyCourse(label, volts, breaksS.clone());
    }

    /**
     * Gives the voltage at a time.
     *
     * @param timeS the time in seconds
     * @return U in volts; at a jump the value after it
     * @throws IllegalArgumentException if the time is NaN or a function given by the caller leaves [0, 1000] V
     */
    public double atV(double timeS) {
        OnsetCurve.checkTimeS("time in a supply's course", timeS);
        return timeS < 0 ? 0 : checkedV(timeS);
    }

    private double checkedV(double timeS) {
        double volt = volts.applyAsDouble(timeS);
        if (!(volt >= 0 && volt <= 1000)) {
            throw new IllegalArgumentException("supply voltage at " + Numbers.text(timeS)
                    + " s must be in [0, 1000] V, got " + Numbers.text(volt) + " V");
        }
        return volt;
    }

    double[] breaksS() {
        return breaksS.clone();
    }

    @Override
    public String toString() {
        return label;
    }
}
