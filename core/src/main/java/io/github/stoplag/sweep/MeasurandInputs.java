package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.StandardNormal;
import io.github.stoplag.chance.StudentT;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * The inputs of a measurand: what is known of each, and how they depend on each other.
 *
 * @param inputs the inputs in order
 * @param correlations the correlated pairs, as they were given
 */
record MeasurandInputs(List<Input> inputs, List<Pair> correlations) {
    static final MeasurandInputs NONE = new MeasurandInputs(List.of(), List.of());
    private static final Distribution SCORE =
            new Distribution.TruncatedNormal(0, 1, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    private static final int QUADRATURE = 200_000;

    record Input(
            String name, Distribution distribution, double mean, double standardUncertainty, double degreesOfFreedom) {
        static Input of(String name, Distribution distribution, double degreesOfFreedom) {
            if (!(degreesOfFreedom >= 1)) {
                throw new IllegalArgumentException(
                        "degrees of freedom of " + name + " must be at least 1, got " + Numbers.text(degreesOfFreedom));
            }
            if (distribution instanceof StudentT t) {
                return new Input(name, t, t.mean(), t.scale(), Math.min(degreesOfFreedom, t.degreesOfFreedom()));
            }
            if (distribution instanceof Distribution.LogNormal d) {
                double square = d.sigma() * d.sigma();
                double mean = StrictMath.exp(d.mu() + square / 2);
                return new Input(name, d, mean, mean * Math.sqrt(StrictMath.expm1(square)), degreesOfFreedom);
            }
            Moments moments = new Moments();
            double[] values = new double[QUADRATURE];
            DoubleUnaryOperator lower = distribution.quantileFunction();
            DoubleUnaryOperator upper = distribution.upperQuantileFunction();
            for (int k = 0; k < QUADRATURE; k++) {
                double p = (k + 0.5) / QUADRATURE;
                values[k] = p < 0.5 ? lower.applyAsDouble(p) : upper.applyAsDouble((QUADRATURE - k - 0.5) / QUADRATURE);
            }
            moments.add(values, QUADRATURE);
            return new Input(name, distribution, moments.mean(), moments.standardDeviation(), degreesOfFreedom);
        }
    }

    record Pair(int first, int second, double correlation) {}

    /** Takes the result of one draw. */
    interface Taker {
        void take(int index, double[] inputs);
    }

    int size() {
        return inputs.size();
    }

    Input get(int i) {
        return inputs.get(i);
    }

    private List<String> names() {
        return inputs.stream().map(Input::name).toList();
    }

    double[] estimates() {
        return inputs.stream().mapToDouble(Input::mean).toArray();
    }

    MeasurandInputs with(Input input) {
        if (names().contains(input.name())) {
            throw new IllegalArgumentException(
                    "inputs must have different names, got " + input.name() + " beside " + names());
        }
        List<Input> more = new ArrayList<>(inputs);
        more.add(input);
        return new MeasurandInputs(List.copyOf(more), correlations);
    }

    MeasurandInputs correlate(String first, String second, double correlation) {
        double checked = new Plan.Correlation(first, second, correlation).rho();
        int i = names().indexOf(first);
        int j = names().indexOf(second);
        if (i < 0 || j < 0 || i == j) {
            throw new IllegalArgumentException(
                    "a correlation must join two inputs of " + names() + ", got " + first + " and " + second);
        }
        List<Pair> more = new ArrayList<>(correlations);
        more.removeIf(pair -> pair.first() == Math.min(i, j) && pair.second() == Math.max(i, j));
        more.add(new Pair(Math.min(i, j), Math.max(i, j), checked));
        return new MeasurandInputs(inputs, List.copyOf(more));
    }

    MeasurandInputs withReadings(List<String> names, double[]... readings) {
        int n = readings.length == 0 ? 0 : readings[0].length;
        if (names.size() != readings.length || n < 2 || !Arrays.stream(readings).allMatch(of -> of.length == n)) {
            throw new IllegalArgumentException("simultaneous readings must be at least two of each of " + names
                    + ", as many of each, got "
                    + Arrays.stream(readings).map(of -> of.length).toList());
        }
        MeasurandInputs more = this;
        double[] mean = new double[readings.length];
        double[] deviation = new double[readings.length];
        for (int i = 0; i < readings.length; i++) {
            mean[i] = Arrays.stream(readings[i]).average().orElseThrow();
            deviation[i] = Math.sqrt(product(readings[i], mean[i], readings[i], mean[i]));
            Check.above("standard deviation of the readings of " + names.get(i), deviation[i], 0, 1e9, "");
            more = more.with(Input.of(
                    names.get(i),
                    new StudentT(mean[i], deviation[i] / Math.sqrt(n * (n - 1.0)), n - 1),
                    Double.POSITIVE_INFINITY));
        }
        for (int i = 0; i < readings.length; i++) {
            for (int j = 0; j < i; j++) {
                double r = product(readings[i], mean[i], readings[j], mean[j]) / (deviation[i] * deviation[j]);
                more = more.correlate(names.get(j), names.get(i), Math.min(1, Math.max(-1, r)));
            }
        }
        return more;
    }

    private static double product(double[] x, double meanX, double[] y, double meanY) {
        return IntStream.range(0, x.length)
                .mapToDouble(k -> (x[k] - meanX) * (y[k] - meanY))
                .sum();
    }

    /** All others stand still at their estimates. */
    MeasurandInputs onlyVarying(int one) {
        List<Input> held = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            Input input = get(i);
            held.add(i == one ? input : new Input(input.name(), new Held(input.mean()), input.mean(), 0, 1));
        }
        return new MeasurandInputs(List.copyOf(held), List.of());
    }

    private record Held(double value) implements Distribution {
        @Override
        public double quantile(double probability) {
            return value;
        }

        @Override
        public double cdf(double at) {
            return at >= value ? 1 : 0;
        }

        @Override
        public String canonical() {
            return Distribution.canonical("held", value);
        }
    }

    /** Σ Σ xᵢ yⱼ rᵢⱼ. */
    double covariance(double[] x, double[] y) {
        factor();
        double sum = 0;
        for (int i = 0; i < size(); i++) {
            sum += x[i] * y[i];
        }
        for (Pair pair : correlations) {
            int i = pair.first();
            int j = pair.second();
            sum += pair.correlation() * (x[i] * y[j] + x[j] * y[i]);
        }
        return sum;
    }

    /** u_c⁴/Σ uᵢ⁴/νᵢ; inputs that depend on each other count together. */
    double effectiveDegreesOfFreedom(double[] parts, double u) {
        int[] group = groups();
        double sum = 0;
        for (int g : new TreeSet<>(Arrays.stream(group).boxed().toList())) {
            double[] together = new double[parts.length];
            double freedom = 0;
            for (int i = 0; i < parts.length; i++) {
                if (group[i] == g) {
                    together[i] = parts[i];
                    if (freedom > 0 && freedom != get(i).degreesOfFreedom()) {
                        throw new IllegalArgumentException("correlated inputs must have the same degrees of freedom,"
                                + " as readings taken together have, got " + Numbers.text(freedom) + " and "
                                + Numbers.text(get(i).degreesOfFreedom()) + " for " + get(i).name());
                    }
                    freedom = get(i).degreesOfFreedom();
                }
            }
            double square = covariance(together, together);
            sum += square * square / freedom;
        }
        return sum > 0 ? u * u * u * u / sum : Double.POSITIVE_INFINITY;
    }

    /** For each input the first of those it depends on, directly or through others. */
    private int[] groups() {
        int[] group = IntStream.range(0, size()).toArray();
        for (Pair pair : correlations) {
            int low = Math.min(group[pair.first()], group[pair.second()]);
            int high = Math.max(group[pair.first()], group[pair.second()]);
            for (int i = 0; i < group.length; i++) {
                group[i] = pair.correlation() != 0 && group[i] == high ? low : group[i];
            }
        }
        return group;
    }

    private double[][] factor() {
        Correlations all = new Correlations(size());
        correlations.forEach(pair -> all.set(pair.first(), pair.second(), pair.correlation()));
        return all.factor(names());
    }

    void draw(int draws, long seed, Taker taker) {
        boolean[] joint = new boolean[size()];
        correlations.forEach(pair -> joint[pair.first()] = joint[pair.second()] = true);
        double[][] lower = factor();
        DoubleUnaryOperator[] quantiles = new DoubleUnaryOperator[size()];
        Plan plan = Plan.of(Design.random(draws), seed);
        for (int i = 0; i < size(); i++) {
            plan = plan.axis(Axis.drawn("x" + i, "", joint[i] ? SCORE : get(i).distribution()));
            quantiles[i] = ofScore(get(i));
        }
        double[][] columns = new double[size()][RowBlock.ROWS];
        double[] at = new double[size()];
        Scenarios scenarios = plan.scenarios();
        for (int from = 0; from < draws; from += RowBlock.ROWS) {
            int count = Math.min(RowBlock.ROWS, draws - from);
            scenarios.fill(from, count, columns);
            for (int row = 0; row < count; row++) {
                for (int i = 0; i < at.length; i++) {
                    at[i] = joint[i] ? quantiles[i].applyAsDouble(score(lower[i], columns, row)) : columns[i][row];
                }
                taker.take(from + row, at);
            }
        }
    }

    // those before it in the row that do not vary with it have a zero in the triangle
    private static double score(double[] lower, double[][] columns, int row) {
        double sum = 0;
        for (int k = 0; k < lower.length; k++) {
            sum += lower[k] == 0 ? 0 : lower[k] * columns[k][row];
        }
        return sum;
    }

    /** From a normal score to the input's value. */
    private static DoubleUnaryOperator ofScore(Input input) {
        if (input.distribution() instanceof Distribution.TruncatedNormal) {
            return z -> input.mean() + input.standardUncertainty() * z;
        }
        DoubleUnaryOperator lower = input.distribution().quantileFunction();
        DoubleUnaryOperator upper = input.distribution().upperQuantileFunction();
        return z -> z < 0 ? lower.applyAsDouble(StandardNormal.cdf(z)) : upper.applyAsDouble(StandardNormal.cdf(-z));
    }

    @Override
    public String toString() {
        return names().toString();
    }
}
