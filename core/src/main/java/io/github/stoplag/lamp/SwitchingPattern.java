package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Arrays;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;

/**
 * When a lamp's circuit is closed: intervals on and off, repeated with a period from time 0 on; off before.
 *
 * <p>Symbols: period in (0, 1000] s; edges alternate on, off, on, off within it. Patterns superpose by {@link #or} (two
 * switches in parallel), {@link #and} (in series) and {@link #xor} (changeover), so that the on-times obey t(a or b) +
 * t(a and b) = t(a) + t(b). Two periods must have a common multiple of at most 1000 s.
 */
public final class SwitchingPattern {
    private static final double LONGEST_S = 1000;
    private static final double STEADY_S = 100;
    private static final double SAME = 1e-9;

    private final double periodS;
    /** On, off, on, off ... within one period, rising. */
    private final double[] edgesS;

    private SwitchingPattern(double periodS, double[] edgesS) {
        this.periodS = periodS;
        this.edgesS = edgesS;
    }

    private static SwitchingPattern checked(double periodS, double[] edgesS) {
        boolean always = edgesS.length == 2 && edgesS[0] == 0 && edgesS[1] == periodS;
        return always ? steady() : new SwitchingPattern(periodS, edgesS);
    }

    /** {@return a circuit that stays closed} */
    public static SwitchingPattern steady() {
        return new SwitchingPattern(STEADY_S, new double[] {0, STEADY_S});
    }

    /**
     * Flashes at a frequency, starting with the circuit closed.
     *
     * @param frequencyHz the frequency, [0.001, 1e5] Hz
     * @param dutyRatio the share of the period with the circuit closed, (0, 1]
     * @return the pattern
     * @throws IllegalArgumentException if either is out of range
     */
    public static SwitchingPattern flashing(double frequencyHz, double dutyRatio) {
        double period = 1 / Check.inRange("switching frequency", frequencyHz, 1 / LONGEST_S, 1e5, "Hz");
        return checked(period, new double[] {0, period * Check.above("duty", dutyRatio, 0, 1, "")});
    }

    /**
     * Repeats given intervals.
     *
     * @param period the period, (0, 1000] s
     * @param edges the times within the period at which the circuit closes, opens, closes, opens ..., rising; an even
     *     count
     * @return the pattern
     * @throws IllegalArgumentException if the period is out of range, the edges are not an even count of at least 2, or
     *     do not rise within [0, period]
     */
    public static SwitchingPattern of(TimeSpan period, TimeSpan... edges) {
        Objects.requireNonNull(edges, "edges");
        Objects.requireNonNull(period, "period");
        double periodS = Check.above("period of a switching pattern", period.inSeconds(), 0, LONGEST_S, "s");
        if (edges.length < 2 || edges.length % 2 != 0) {
            throw new IllegalArgumentException(
                    "a switching pattern must have pairs of on and off edges, got " + edges.length + " edges");
        }
        double[] edgesS = new double[edges.length];
        for (int i = 0; i < edges.length; i++) {
            edgesS[i] = Check.inRange("edge " + i, edges[i].inSeconds(), 0, periodS, "s");
            if (i > 0 && !(edgesS[i] > edgesS[i - 1])) {
                throw new IllegalArgumentException(
                        "edge " + i + " must be after edge " + (i - 1) + " at " + edges[i - 1] + ", got " + edges[i]);
            }
        }
        return checked(periodS, edgesS);
    }

    /** {@return the period} */
    public TimeSpan period() {
        return TimeSpan.seconds(periodS);
    }

    /** {@return the share of the period with the circuit closed} */
    public double onRatio() {
        double sum = 0;
        for (int i = 0; i < edgesS.length; i += 2) {
            sum += edgesS[i + 1] - edgesS[i];
        }
        return sum / periodS;
    }

    /**
     * Says whether the circuit is closed.
     *
     * @param timeS the time in seconds
     * @return true from each on edge up to, but not at, the next off edge
     * @throws IllegalArgumentException if the time is NaN
     */
    public boolean isOn(double timeS) {
        OnsetCurve.checkTimeS("time in a switching pattern", timeS);
        return timeS >= 0 && isOnInPeriod(timeS - periodS * Math.floor(timeS / periodS));
    }

    private boolean isOnInPeriod(double timeS) {
        int found = Arrays.binarySearch(edgesS, timeS);
        int passed = found >= 0 ? found + 1 : -found - 1;
        return passed % 2 == 1;
    }

    /**
     * Closes the circuit when either pattern does.
     *
     * @param other the other pattern
     * @return the union
     * @throws IllegalArgumentException if the periods have no common multiple up to 1000 s
     */
    public SwitchingPattern or(SwitchingPattern other) {
        Objects.requireNonNull(other, "other");
        return combined(other, (a, b) -> a || b);
    }

    /**
     * Closes the circuit when both patterns do.
     *
     * @param other the other pattern
     * @return the intersection
     * @throws IllegalArgumentException if the periods have no common multiple up to 1000 s
     */
    public SwitchingPattern and(SwitchingPattern other) {
        Objects.requireNonNull(other, "other");
        return combined(other, (a, b) -> a && b);
    }

    /**
     * Closes the circuit when exactly one pattern does.
     *
     * @param other the other pattern
     * @return the symmetric difference
     * @throws IllegalArgumentException if the periods have no common multiple up to 1000 s
     */
    public SwitchingPattern xor(SwitchingPattern other) {
        Objects.requireNonNull(other, "other");
        return combined(other, (a, b) -> a != b);
    }

    private SwitchingPattern combined(SwitchingPattern other, Both both) {
        double common = commonPeriodS(other);
        TreeSet<Double> times = new TreeSet<>();
        times.add(0.0);
        times.add(common);
        addEdges(times, common);
        other.addEdges(times, common);
        double[] at = times.stream().mapToDouble(t -> t).toArray();
        double[] edges = new double[at.length + 1];
        int count = 0;
        for (int i = 0; i + 1 < at.length; i++) {
            if (at[i + 1] - at[i] <= SAME * common) {
                continue;
            }
            double mid = (at[i] + at[i + 1]) / 2;
            boolean on = both.test(isOn(mid), other.isOn(mid));
            if (on != (count % 2 == 1)) {
                edges[count++] = at[i];
            }
        }
        if (count % 2 == 1) {
            edges[count++] = common;
        }
        return checked(common, Arrays.copyOf(edges, count));
    }

    private void addEdges(Set<Double> times, double untilS) {
        int cycles = (int) Math.round(untilS / periodS);
        for (int cycle = 0; cycle < cycles; cycle++) {
            for (double edge : edgesS) {
                times.add(Math.min(untilS, cycle * periodS + edge));
            }
        }
    }

    private double commonPeriodS(SwitchingPattern other) {
        for (int cycles = 1; cycles * periodS <= LONGEST_S; cycles++) {
            double others = cycles * periodS / other.periodS;
            if (others > 0.5 && Math.abs(others - Math.rint(others)) <= SAME * others) {
                return cycles * periodS;
            }
        }
        throw new IllegalArgumentException(
                "switching patterns must have a common period of at most 1000 s, got periods " + Numbers.text(periodS)
                        + " s and " + Numbers.text(other.periodS) + " s");
    }

    /** Gives the edges of one period, on and off in turn. */
    double[] edgesS() {
        return edgesS.clone();
    }

    /** Gives the edges of all periods up to a time, and that time, rising and without those at 0. */
    double[] edgesUntilS(double untilS) {
        double cycles = Math.ceil(untilS / periodS);
        Check.inRange("edges of the switching pattern", cycles * edgesS.length, 0, 10_000, "");
        TreeSet<Double> times = new TreeSet<>();
        times.add(untilS);
        for (int cycle = 0; cycle < cycles; cycle++) {
            for (double edge : edgesS) {
                double at = cycle * periodS + edge;
                if (at > 0 && at < untilS) {
                    times.add(at);
                }
            }
        }
        return times.stream().mapToDouble(t -> t).toArray();
    }

    boolean isOnOverItsEnd() {
        return edgesS.length > 0 && edgesS[0] == 0 && edgesS[edgesS.length - 1] == periodS;
    }

    double periodS() {
        return periodS;
    }

    @Override
    public String toString() {
        return "period " + Numbers.text(periodS) + " s, on for " + Numbers.text(100 * onRatio(), 3) + " %";
    }

    private interface Both {
        boolean test(boolean a, boolean b);
    }
}
