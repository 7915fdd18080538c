package io.github.stoplag.sweep;

import java.util.Objects;

/**
 * How a plan spreads its scenarios over its axes. Every design gives the values of a scenario from its index alone.
 *
 * <ul>
 *   <li><b>Full grid</b>: every combination of the levels, the first axis slowest, each repeated; drawn axes are
 * random.
 *   <li><b>Random</b>: every axis independent.
 *   <li><b>Latin hypercube</b>: of n scenarios, each axis has exactly one in each n-th of its probability (McKay,
 * Beckman &amp;
 *       Conover 1979, from memory).
 *   <li><b>Sobol sequence</b>: low-discrepancy points (direction numbers of Joe &amp; Kuo as in Commons Math), moved by
 * a digital
 *       shift drawn from the seed, so that replicates with other seeds show the error.
 * </ul>
 *
 * <p>In the last three an axis of levels takes each level with the same probability.
 *
 * @param kind which design
 * @param count the scenarios; in a grid, those per combination of levels
 */
public record Design(Kind kind, long count) {
    /** The kinds of design. */
    public enum Kind {
        /** Every combination of levels. */
        GRID,
        /** Independent draws. */
        RANDOM,
        /** One draw in each stratum of each axis. */
        LATIN_HYPERCUBE,
        /** Sobol's low-discrepancy sequence. */
        SOBOL
    }

    /**
     * Checks the count.
     *
     * @param kind which design
     * @param count the scenarios; in a grid, those per combination of levels
     * @throws IllegalArgumentException if the count is not in [1, 2⁴⁸], for Sobol [1, 2³¹]
     */
    public Design {
        Objects.requireNonNull(kind, "kind");
        long most = kind == Kind.SOBOL ? SobolPoints.MOST_POINTS : CounterRandom.MOST_SCENARIOS;
        if (count < 1 || count > most) {
            throw new IllegalArgumentException(
                    "scenarios of a " + kind + " design must be in [1, " + most + "], got " + count);
        }
    }

    /**
     * Takes every combination of levels once.
     *
     * @return the design
     */
    public static Design grid() {
        return new Design(Kind.GRID, 1);
    }

    /**
     * Takes every combination of levels several times, with new draws on the drawn axes.
     *
     * @param perCombination how many scenarios per combination
     * @return the design
     * @throws IllegalArgumentException if the count is out of range
     */
    public static Design grid(long perCombination) {
        return new Design(Kind.GRID, perCombination);
    }

    /**
     * Draws every axis independently.
     *
     * @param count the scenarios
     * @return the design
     * @throws IllegalArgumentException if the count is out of range
     */
    public static Design random(long count) {
        return new Design(Kind.RANDOM, count);
    }

    /**
     * Draws a Latin hypercube.
     *
     * @param count the scenarios
     * @return the design
     * @throws IllegalArgumentException if the count is out of range
     */
    public static Design latinHypercube(long count) {
        return new Design(Kind.LATIN_HYPERCUBE, count);
    }

    /**
     * Takes the points of Sobol's sequence.
     *
     * @param count the scenarios, at best a power of two
     * @return the design
     * @throws IllegalArgumentException if the count is out of range
     */
    public static Design sobol(long count) {
        return new Design(Kind.SOBOL, count);
    }

    /** Uniform numbers in (0, 1) of consecutive scenarios on one axis. */
    interface Uniforms {
        void fill(int axis, long firstIndex, int count, double[] uniform);
    }

    Uniforms uniforms(long seed, int axes) {
        CounterRandom random = CounterRandom.of(seed);
        return switch (kind) {
            case GRID, RANDOM -> random::fill;
            case LATIN_HYPERCUBE -> latinHypercube(random, axes);
            case SOBOL -> sobol(random, axes);
        };
    }

    // keys and shifts come from axes beyond those that are drawn
    private static long key(CounterRandom random, int axis) {
        return random.bits(CounterRandom.MOST_AXES - 2, axis);
    }

    private Uniforms latinHypercube(CounterRandom random, int axes) {
        Permutation[] strata = new Permutation[axes];
        for (int axis = 0; axis < axes; axis++) {
            strata[axis] = new Permutation(count, key(random, axis));
        }
        double width = 1.0 / count;
        return (axis, first, n, uniform) -> {
            random.fill(axis, first, n, uniform);
            for (int i = 0; i < n; i++) {
                double u = (strata[axis].at(first + i) + uniform[i]) * width;
                // rounding must not reach the ends
                uniform[i] = Math.min(Math.max(u, 0x1p-53), 1 - 0x1p-53);
            }
        };
    }

    private static Uniforms sobol(CounterRandom random, int axes) {
        SobolPoints points = new SobolPoints(axes);
        return (axis, first, n, uniform) -> points.fill(axis, key(random, axis), first, n, uniform);
    }
}
