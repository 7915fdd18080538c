package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.quantity.Check;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What a sweep computes: axes, a design and a seed. The values of a scenario depend on its index alone, so chunks can
 * be computed anywhere in any order.
 *
 * <p>Two drawn axes may be correlated by a Gaussian copula: z₂ ← ρ z₁ + √(1 − ρ²) z₂ on the normal scores z = Φ⁻¹(u),
 * which keeps both distributions. ρ is the correlation of the scores, not of the values. In a Latin hypercube the
 * second axis takes the stratum whose number is the rank of its score among all scenarios, so that it keeps its strata
 * too; such a plan has at most 2²⁴ scenarios.
 *
 * <p>Example: {@code Plan.of(Design.random(1_000_000), 42).axis(Axis.constant("gap", "m",
 * 20)).axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.17, 0.44)))}. Plans are immutable; each method
 * gives a new one.
 */
public final class Plan {
    /** Scenarios in a chunk, the last one excepted. */
    public static final int CHUNK = 65_536;

    static final int MOST_AXES = 400;

    /**
     * Two axes that vary together.
     *
     * @param first the column of the first axis
     * @param second the column of the second axis
     * @param rho the correlation of their normal scores
     */
    public record Correlation(String first, String second, double rho) {
        /**
         * Checks the correlation.
         *
         * @param first the column of the first axis
         * @param second the column of the second axis
         * @param rho the correlation of their normal scores
         * @throws NullPointerException if a column is null
         * @throws IllegalArgumentException if ρ is not in [−1, 1]
         */
        public Correlation {
            Objects.requireNonNull(first, "first column of a correlation");
            Objects.requireNonNull(second, "second column of a correlation");
            Check.inRange("correlation of " + first + " and " + second, rho, -1, 1, "");
        }
    }

    private final Design design;
    private final long seed;
    private final List<Axis> axes;
    private final List<Correlation> correlations;
    private final boolean exact;

    private Plan(Design design, long seed, List<Axis> axes, List<Correlation> correlations, boolean exact) {
        this.design = design;
        this.seed = seed;
        this.axes = Check.copyOf("axes", axes);
        this.correlations = Check.copyOf("correlations", correlations);
        this.exact = exact;
    }

    /**
     * Starts a plan without axes.
     *
     * @param design how scenarios spread over the axes
     * @param seed the seed of all draws
     * @return the plan
     */
    public static Plan of(Design design, long seed) {
        Objects.requireNonNull(design, "design");
        return new Plan(design, seed, List.of(), List.of(), false);
    }

    /**
     * Adds an axis. The order of axes decides which random numbers each gets.
     *
     * @param axis the axis
     * @return the new plan
     * @throws IllegalArgumentException if there is one of this column or 400 axes already
     */
    public Plan axis(Axis axis) {
        if (axes.size() >= MOST_AXES) {
            throw new IllegalArgumentException(
                    "a plan must have at most " + MOST_AXES + " axes, got " + axis.column() + " as one more");
        }
        if (columns().contains(axis.column())) {
            throw new IllegalArgumentException(
                    "axes must have different columns, got " + axis.column() + " beside " + columns());
        }
        List<Axis> more = new ArrayList<>(axes);
        more.add(axis);
        return new Plan(design, seed, more, correlations, exact);
    }

    /**
     * Takes an axis out; those after it then get other random numbers.
     *
     * @param column the axis's column
     * @return the new plan
     * @throws IllegalArgumentException if there is no such axis or it is correlated
     */
    public Plan without(String column) {
        Objects.requireNonNull(column, "column");
        boolean correlated = correlations.stream()
                .anyMatch(c -> c.first().equals(column) || c.second().equals(column));
        if (!columns().contains(column) || correlated) {
            throw new IllegalArgumentException(
                    "an axis to take out must be one of " + columns() + " without correlation, got " + column);
        }
        List<Axis> fewer =
                axes.stream().filter(axis -> !axis.column().equals(column)).toList();
        return new Plan(design, seed, fewer, correlations, exact);
    }

    /**
     * Lets two drawn axes vary together.
     *
     * @param first the column of the first axis
     * @param second the column of the second axis
     * @param rho the correlation ρ of their normal scores, [−1, 1]
     * @return the new plan
     * @throws IllegalArgumentException if ρ is out of range, or an axis is missing, not drawn or already correlated
     */
    public Plan correlate(String first, String second, double rho) {
        Correlation correlation = new Correlation(first, second, rho);
        for (String column : List.of(first, second)) {
            boolean free = correlations.stream()
                    .noneMatch(c -> c.first().equals(column) || c.second().equals(column));
            boolean drawn = axes.stream()
                    .anyMatch(a -> a.column().equals(column) && a.distribution().isPresent());
            if (!free || !drawn || first.equals(second)) {
                throw new IllegalArgumentException("a correlation must join two drawn axes of " + columns()
                        + " that are in no other, got " + first + " and " + second);
            }
        }
        List<Correlation> more = new ArrayList<>(correlations);
        more.add(correlation);
        return new Plan(design, seed, axes, more, exact);
    }

    /**
     * Gives the plan with quantile functions evaluated exactly instead of from tables: the reference, and several times
     * slower.
     *
     * @return the new plan
     */
    public Plan withExactQuantiles() {
        return new Plan(design, seed, axes, correlations, true);
    }

    /**
     * Gives the plan with another seed.
     *
     * @param newSeed the seed
     * @return the new plan
     */
    public Plan withSeed(long newSeed) {
        return new Plan(design, newSeed, axes, correlations, exact);
    }

    /**
     * Gives the plan with another design.
     *
     * @param newDesign the design
     * @return the new plan
     */
    public Plan withDesign(Design newDesign) {
        Objects.requireNonNull(newDesign, "newDesign");
        return new Plan(newDesign, seed, axes, correlations, exact);
    }

    /**
     * Gives an independent repetition: the same plan with a seed drawn from this one's.
     *
     * @param number which repetition, at least 0
     * @return the new plan
     * @throws IllegalArgumentException if the number is negative
     */
    public Plan replicate(long number) {
        return withSeed(CounterRandom.of(seed).bits(CounterRandom.MOST_AXES - 1, number));
    }

    /**
     * Gives the number of scenarios.
     *
     * @return the count
     * @throws IllegalArgumentException if a grid has more than 2⁴⁸ combinations
     */
    public long size() {
        long size = design.count();
        if (design.kind() == Design.Kind.GRID) {
            for (Axis axis : axes) {
                int levels = Math.max(1, axis.levelCount());
                if (size > CounterRandom.MOST_SCENARIOS / levels) {
                    throw new IllegalArgumentException(
                            "a grid must have at most 2^48 scenarios, got more with axes " + columns());
                }
                size *= levels;
            }
        }
        return size;
    }

    /**
     * Gives the number of chunks.
     *
     * @return the scenarios over {@link #CHUNK}, rounded up
     */
    public long chunks() {
        return (size() + CHUNK - 1) / CHUNK;
    }

    /**
     * Gives the number of scenarios in a chunk.
     *
     * @param chunk which, [0, chunks)
     * @return {@link #CHUNK}, or fewer in the last
     * @throws IllegalArgumentException if there is no such chunk
     */
    public int chunkSize(long chunk) {
        if (chunk < 0 || chunk >= chunks()) {
            throw new IllegalArgumentException("chunk must be in [0, " + (chunks() - 1) + "], got " + chunk);
        }
        return (int) Math.min(CHUNK, size() - chunk * CHUNK);
    }

    /**
     * Prepares to read the plan's values; builds the quantile tables.
     *
     * @return the values, for any number of threads
     */
    public Scenarios scenarios() {
        return new Scenarios(this);
    }

    /**
     * Gives the design.
     *
     * @return the design
     */
    public Design design() {
        return design;
    }

    /**
     * Gives the seed.
     *
     * @return the seed
     */
    public long seed() {
        return seed;
    }

    /**
     * Gives the axes.
     *
     * @return the axes in order
     */
    public List<Axis> axes() {
        return axes;
    }

    /**
     * Gives the axes' columns.
     *
     * @return names with units in order
     */
    public List<String> columns() {
        return axes.stream().map(Axis::column).toList();
    }

    /**
     * Gives the correlated pairs.
     *
     * @return the pairs in the order they were joined
     */
    public List<Correlation> correlations() {
        return correlations;
    }

    /**
     * Gives the SHA-256 of all that decides the values of the scenarios: design, seed, axes with every level, parameter
     * and observation, correlations. Sources play no part. It is the same on every JDK.
     *
     * @return 64 hexadecimal digits
     */
    public String digest() {
        return HexFormat.of().formatHex(PlanDigest.of(this));
    }

    boolean exactQuantiles() {
        return exact;
    }

    Optional<QuantileTable> table(Axis axis) {
        return exact
                ? Optional.empty()
                : axis.distribution().filter(Distribution::tabulated).map(QuantileTable::of);
    }

    @Override
    public String toString() {
        return design + ", seed " + seed + ", axes " + axes + (correlations.isEmpty() ? "" : ", " + correlations)
                + (exact ? ", exact quantiles" : "");
    }
}
