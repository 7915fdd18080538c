package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * How much of the variance of a result each axis of a plan brings in, alone and with others, by Saltelli's scheme.
 *
 * <pre>
 *   first order  Sᵢ  = mean( f(B) (f(ABᵢ) − f(A)) ) / V
 *   total        STᵢ = mean( (f(A) − f(ABᵢ))² ) / (2 V)
 * </pre>
 *
 * <p>A and B are two independent sets of scenarios, ABᵢ is A with the column of axis i taken from B, V the variance of
 * f over A and B together, f less its mean in the first formula. n base scenarios cost n (axes + 2) evaluations.
 *
 * <p>Standard errors are those of a ratio of two means of n independent rows: Var(S) ≈ Var(p − S w)/(n V²), p the term
 * under the upper mean and w the row's part of V. With a Sobol design they are too large as a rule.
 *
 * <p>Range: independent axes, at most 200, random or Sobol design, an output that is a finite number wherever a
 * scenario is not rejected, or NaN where it does not exist, see {@link #withoutValue}. Source: Saltelli, Annoni,
 * Azzini, Campolongo, Ratto &amp; Tarantola, Computer Physics Communications 181, 2010, table 2 (b) and (f), the latter
 * after Jansen (from memory; tested against Ishigami's analytic values).
 */
public final class SobolIndices {
    /**
     * The share of one axis.
     *
     * @param column the axis
     * @param first the first-order index: the share of variance the axis brings alone
     * @param firstStandardError its standard error for independent draws, that of V included
     * @param total the total index: the share including all interactions
     * @param totalStandardError its standard error for independent draws, that of V included
     */
    public record Index(
            String column, double first, double firstStandardError, double total, double totalStandardError) {

        /**
         * Refuses nulls.
         *
         * @param column the axis
         * @param first the first-order index: the share of variance the axis brings alone
         * @param firstStandardError its standard error for independent draws, that of V included
         * @param total the total index: the share including all interactions
         * @param totalStandardError its standard error for independent draws, that of V included
         * @throws NullPointerException if one that is required is null
         */
        public Index {
            Objects.requireNonNull(column, "column");
        }

        @Override
        public String toString() {
            return column + ": first order " + Numbers.text(first, 3) + ", total " + Numbers.text(total, 3);
        }
    }

    private static final long PILOT = 4096;
    private static final int MOST_AXES = Plan.MOST_AXES / 2;

    private final List<Index> indices;
    private final Moments output;
    private final List<Rejects.Entry> rejects;
    private final long withoutValue;

    private SobolIndices(List<Index> indices, Moments output, List<Rejects.Entry> rejects, long withoutValue) {
        this.indices = Check.copyOf("indices", indices);
        this.output = output;
        this.rejects = Check.copyOf("rejects", rejects);
        this.withoutValue = withoutValue;
    }

    /**
     * Estimates the indices of all axes from several independent repetitions of the plan, and their standard errors
     * from the scatter of these: of a Sobol design they are the true ones, many times smaller than those that
     * {@link #of} states.
     *
     * @param plan the plan; its size is the number n of base scenarios of each repetition
     * @param model what to compute
     * @param output the column to explain
     * @param repetitions how many, [2, 1000]
     * @param threads how many threads
     * @return the mean indices, with standard errors s/√R
     * @throws IllegalArgumentException as {@link #of}, or if the number of repetitions is out of range
     */
    public static SobolIndices replicated(Plan plan, Model model, String output, int repetitions, int threads) {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(output, "output");
        Check.inRange("repetitions", repetitions, 2, 1000, "");
        List<Moments> first = new ArrayList<>();
        List<Moments> total = new ArrayList<>();
        plan.axes().forEach(axis -> {
            first.add(new Moments());
            total.add(new Moments());
        });
        Moments all = new Moments();
        Rejects rejects = new Rejects(plan.columns(), 0);
        long withoutValue = 0;
        for (int r = 0; r < repetitions; r++) {
            SobolIndices one = of(plan.replicate(r), model, output, threads);
            all.absorb(one.output);
            rejects.absorb(one.rejects);
            withoutValue += one.withoutValue;
            for (int i = 0; i < first.size(); i++) {
                first.get(i).add(one.indices.get(i).first());
                total.get(i).add(one.indices.get(i).total());
            }
        }
        double perRoot = 1 / Math.sqrt(repetitions);
        List<Index> indices = IntStream.range(0, first.size())
                .mapToObj(i -> new Index(
                        plan.columns().get(i),
                        first.get(i).mean(),
                        first.get(i).standardDeviation() * perRoot,
                        total.get(i).mean(),
                        total.get(i).standardDeviation() * perRoot))
                .toList();
        return new SobolIndices(indices, all, rejects.entries(), withoutValue);
    }

    /**
     * Estimates the indices of all axes.
     *
     * @param plan the plan; its size is the number n of base scenarios
     * @param model what to compute
     * @param output the column to explain
     * @param threads how many threads
     * @return the indices
     * @throws IllegalArgumentException if the plan is a grid, a Latin hypercube, has correlations or more than 200
     *     axes, there is no such output, it does not vary, or it is infinite in a scenario that is not rejected
     */
    public static SobolIndices of(Plan plan, Model model, String output, int threads) {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(output, "output");
        boolean kind =
                plan.design().kind() == Design.Kind.RANDOM || plan.design().kind() == Design.Kind.SOBOL;
        if (!kind || !plan.correlations().isEmpty()) {
            throw new IllegalArgumentException(
                    "sensitivity indices need a random or Sobol design with independent axes, got " + plan);
        }
        int axes = plan.axes().size();
        if (axes > MOST_AXES) {
            throw new IllegalArgumentException("sensitivity indices need at most " + MOST_AXES + " axes, got " + axes);
        }
        int outputAt = model.outputs().indexOf(output);
        if (outputAt < 0) {
            throw new IllegalArgumentException("output must be one of " + model.outputs() + ", got " + output);
        }
        double centre = centre(plan, model, output);
        Plan twofold = Plan.of(plan.design(), plan.seed());
        for (String prefix : List.of("a_", "b_")) {
            for (Axis axis : plan.axes()) {
                twofold = twofold.axis(axis.renamed(prefix + axis.column()));
            }
        }
        // no axis can be called so: theirs begin with a_ or b_
        List<String> outputs = new ArrayList<>(List.of("fa", "fb"));
        plan.columns().forEach(column -> outputs.add("fab_" + column));
        List<Integer> order =
                model.inputs().stream().map(plan.columns()::indexOf).toList();
        Model swapped = new SwappedModel(twofold.columns(), List.copyOf(outputs), model, order, axes, outputAt);
        SweepResult<SwappedTally> result =
                Sweep.of(twofold, swapped).withThreads(threads).run(() -> new SwappedTally(outputs, centre));
        Moments both = result.tally().output();
        result.tally().requireFinite(output);
        double variance = both.count() < 2 ? 0 : both.variance();
        if (!(variance > 0)) {
            throw new IllegalArgumentException("output " + output + " must vary, got " + both);
        }
        List<Index> indices = IntStream.range(0, axes)
                .mapToObj(i -> index(plan.columns().get(i), result.tally(), i, variance))
                .toList();
        return new SobolIndices(indices, both, result.rejects(), result.tally().withoutValue);
    }

    // any value that does not depend on the draws leaves the first-order formula's expectation alone; one near the mean
    // takes away most of its scatter
    private static double centre(Plan plan, Model model, String output) {
        Design few = new Design(plan.design().kind(), Math.min(plan.design().count(), PILOT));
        Moments pilot = Sweep.of(plan.withDesign(few).replicate(0), model)
                .withThreads(1)
                .run(() -> new ColumnTally(output))
                .tally()
                .moments();
        return pilot.count() == 0 ? 0 : pilot.mean();
    }

    private static Index index(String column, SwappedTally tally, int axis, double variance) {
        Ratio first = tally.first.get(axis);
        Ratio total = tally.total.get(axis);
        if (first.upper.count() < 2 || total.upper.count() < 2) {
            throw new IllegalArgumentException("the output must have a value in at least two base scenarios and their"
                    + " mixtures for axis " + column + ", got " + first.upper.count());
        }
        return new Index(
                column,
                first.upper.mean() / variance,
                first.standardError(tally.spread, variance),
                total.upper.mean() / variance,
                total.standardError(tally.spread, variance));
    }

    /**
     * Gives the indices.
     *
     * @return one for each axis in order
     */
    public List<Index> indices() {
        return indices;
    }

    /**
     * Gives the output over both sets of base scenarios.
     *
     * @return its mean, variance and extremes
     */
    public Moments output() {
        return output;
    }

    /**
     * Gives the base scenarios left out because A, B or a mixture of them was no possible combination; many of them
     * bias the indices.
     *
     * @return the reasons
     */
    public List<Rejects.Entry> rejects() {
        return rejects;
    }

    /**
     * Gives how often the output had no value, NaN, among f(A), f(B) and all f(ABᵢ) of base scenarios that were not
     * rejected. What would need one of these values is left out of its mean, so the indices speak of the scenarios
     * where the output exists; many of them bias the indices, as existence itself depends on the inputs.
     *
     * @return the count
     */
    public long withoutValue() {
        return withoutValue;
    }

    /** Computes f(A), f(B) and every f(ABᵢ) without copying a column. */
    private record SwappedModel(
            List<String> inputs, List<String> outputs, Model model, List<Integer> order, int axes, int outputAt)
            implements Model {
        @Override
        public Evaluator evaluator() {
            Evaluator inner = model.evaluator();
            double[][] in = new double[order.size()][];
            double[][] out = new double[model.outputs().size()][RowBlock.ROWS];
            return (count, columns, results, rejects) -> {
                for (int set = 0; set < axes + 2; set++) {
                    for (int c = 0; c < in.length; c++) {
                        int axis = order.get(c);
                        boolean fromB = set == 1 || axis == set - 2;
                        in[c] = columns[axis + (fromB ? axes : 0)];
                    }
                    inner.evaluate(count, in, out, rejects);
                    System.arraycopy(out[outputAt], 0, results[set], 0, count);
                }
            };
        }
    }

    /** What is needed of the terms p of an upper mean: their moments, and those of p + w for the covariance with w. */
    private static final class Ratio {
        private final Moments upper = new Moments();
        private final Moments sum = new Moments();

        void add(double[] terms, double[] lower, double[] scratch, int count) {
            upper.add(terms, count);
            for (int r = 0; r < count; r++) {
                scratch[r] = terms[r] + lower[r];
            }
            sum.add(scratch, count);
        }

        void absorb(Ratio later) {
            upper.absorb(later.upper);
            sum.absorb(later.sum);
        }

        void clear() {
            upper.clear();
            sum.clear();
        }

        double standardError(Moments lower, double variance) {
            double ratio = upper.mean() / variance;
            double twiceCovariance = sum.variance() - upper.variance() - lower.variance();
            double square = upper.variance() - ratio * twiceCovariance + ratio * ratio * lower.variance();
            // rounding alone can lead below 0
            return Math.sqrt(Math.max(0, square) / upper.count()) / variance;
        }
    }

    private static final class SwappedTally implements Tally<SwappedTally> {
        private final List<String> outputs;
        private final double centre;
        private final Moments output = new Moments();
        private final Moments spread = new Moments();
        private final List<Ratio> first = new ArrayList<>();
        private final List<Ratio> total = new ArrayList<>();
        private final double[] product = new double[RowBlock.ROWS];
        private final double[] square = new double[RowBlock.ROWS];
        private final double[] around = new double[RowBlock.ROWS];
        private final double[] scratch = new double[RowBlock.ROWS];
        private long infinite;
        private long withoutValue;

        SwappedTally(List<String> outputs, double centre) {
            this.outputs = outputs;
            this.centre = centre;
            for (int i = 2; i < outputs.size(); i++) {
                first.add(new Ratio());
                total.add(new Ratio());
            }
        }

        Moments output() {
            return output;
        }

        void requireFinite(String name) {
            if (infinite > 0) {
                throw new IllegalArgumentException("output " + name
                        + " must be a finite number in every scenario that is not rejected, or NaN where it does not"
                        + " exist, got infinity " + infinite + " times");
            }
        }

        @Override
        public void add(RowBlock rows) {
            int count = rows.count();
            double[] a = rows.column("fa");
            double[] b = rows.column("fb");
            countOthers(rows);
            output.add(a, count);
            output.add(b, count);
            for (int r = 0; r < count; r++) {
                around[r] = 0.5 * ((a[r] - centre) * (a[r] - centre) + (b[r] - centre) * (b[r] - centre));
            }
            spread.add(around, count);
            for (int i = 0; i < first.size(); i++) {
                double[] ab = rows.column(outputs.get(i + 2));
                for (int r = 0; r < count; r++) {
                    product[r] = (b[r] - centre) * (ab[r] - a[r]);
                    square[r] = 0.5 * (a[r] - ab[r]) * (a[r] - ab[r]);
                }
                first.get(i).add(product, around, scratch, count);
                total.get(i).add(square, around, scratch, count);
            }
        }

        private void countOthers(RowBlock rows) {
            for (String name : outputs) {
                double[] values = rows.column(name);
                for (int r = 0; r < rows.count(); r++) {
                    infinite += Double.isInfinite(values[r]) && !rows.isRejected(r) ? 1 : 0;
                    withoutValue += Double.isNaN(values[r]) && !rows.isRejected(r) ? 1 : 0;
                }
            }
        }

        @Override
        public void absorb(SwappedTally later) {
            infinite += later.infinite;
            withoutValue += later.withoutValue;
            output.absorb(later.output);
            spread.absorb(later.spread);
            for (int i = 0; i < first.size(); i++) {
                first.get(i).absorb(later.first.get(i));
                total.get(i).absorb(later.total.get(i));
            }
        }

        @Override
        public void clear() {
            infinite = 0;
            withoutValue = 0;
            output.clear();
            spread.clear();
            first.forEach(Ratio::clear);
            total.forEach(Ratio::clear);
        }
    }
}
