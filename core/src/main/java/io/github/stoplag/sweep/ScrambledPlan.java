package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.StandardNormal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/** A plan's columns at the points of scrambled Sobol sequences, one scramble for each replicate. */
final class ScrambledPlan {
    private final Axis[] axes;
    private final int[] dimension;
    private final int[] drawn;
    private final double[][] lower;
    private final List<Optional<QuantileTable>> tables;
    private final List<DoubleUnaryOperator> quantiles;
    private final List<DoubleUnaryOperator> upperQuantiles;
    private final SobolPoints points;
    private final double[] score;

    ScrambledPlan(Plan plan) {
        axes = plan.axes().toArray(new Axis[0]);
        int[] varying = IntStream.range(0, axes.length)
                .filter(a -> axes[a].levelCount() != 1)
                .toArray();
        dimension = new int[axes.length];
        Arrays.fill(dimension, -1);
        for (int d = 0; d < varying.length; d++) {
            dimension[varying[d]] = d;
        }
        drawn = Arrays.stream(varying).filter(a -> axes[a].levelCount() == 0).toArray();
        points = new SobolPoints(Math.max(1, varying.length));
        tables = plan.axes().stream().map(plan::table).toList();
        quantiles = functions(plan, Distribution::quantileFunction);
        upperQuantiles = functions(plan, Distribution::upperQuantileFunction);
        Correlations correlations = new Correlations(axes.length);
        plan.correlations()
                .forEach(pair -> correlations.set(
                        plan.columns().indexOf(pair.first()), plan.columns().indexOf(pair.second()), pair.rho()));
        lower = plan.correlations().isEmpty() ? new double[0][] : correlations.factor(plan.columns());
        score = new double[axes.length];
    }

    private static List<DoubleUnaryOperator> functions(
            Plan plan, java.util.function.Function<Distribution, DoubleUnaryOperator> function) {
        return plan.axes().stream()
                .map(axis -> axis.distribution().map(function).orElseGet(DoubleUnaryOperator::identity))
                .toList();
    }

    /** The number of axes drawn from a law, whose scores may be tilted. */
    int scores() {
        return drawn.length;
    }

    /** Fills columns with the values of consecutive points under the scramble of a key. */
    void fill(CounterRandom scramble, long first, int count, double[][] columns) {
        uniforms(scramble, first, count, columns);
        if (lower.length > 0) {
            for (int i = 0; i < count; i++) {
                correlate(columns, i);
            }
        }
        for (int a = 0; a < axes.length; a++) {
            if (axes[a].levelCount() > 0) {
                level(a, count, columns[a]);
            } else if (tables.get(a).isPresent()) {
                tables.get(a).orElseThrow().transform(count, columns[a]);
            } else {
                for (int i = 0; i < count; i++) {
                    columns[a][i] = quantiles.get(a).applyAsDouble(columns[a][i]);
                }
            }
        }
    }

    /**
     * Fills columns from tilted scores.
     *
     * @param weight where the density of the plan over that of the tilt goes
     * @param scores where the scores of each drawn axis go
     */
    void fill(
            CounterRandom scramble,
            long first,
            int count,
            double[][] columns,
            Tilt tilt,
            double[] weight,
            double[][] scores) {
        uniforms(scramble, first, count, columns);
        double[] z = new double[drawn.length];
        for (int i = 0; i < count; i++) {
            for (int d = 0; d < drawn.length; d++) {
                z[d] = StandardNormal.quantile(columns[drawn[d]][i]);
            }
            weight[i] = tilt.apply(z);
            for (int d = 0; d < drawn.length; d++) {
                scores[d][i] = z[d];
                score[drawn[d]] = z[d];
            }
            for (int d = drawn.length - 1; d >= 0; d--) {
                int a = drawn[d];
                double s = lower.length > 0 ? mixed(a) : score[a];
                columns[a][i] = s < 0
                        ? quantiles.get(a).applyAsDouble(StandardNormal.cdf(s))
                        : upperQuantiles.get(a).applyAsDouble(StandardNormal.cdf(-s));
            }
        }
        for (int a = 0; a < axes.length; a++) {
            if (axes[a].levelCount() > 0) {
                level(a, count, columns[a]);
            }
        }
    }

    private void uniforms(CounterRandom scramble, long first, int count, double[][] columns) {
        for (int a = 0; a < axes.length; a++) {
            if (dimension[a] >= 0) {
                points.fillScrambled(dimension[a], scramble.bits(0, a), first, count, columns[a]);
            }
        }
    }

    private void level(int axis, int count, double[] column) {
        Axis levels = axes[axis];
        if (levels.levelCount() == 1) {
            Arrays.fill(column, 0, count, levels.level(0));
            return;
        }
        for (int i = 0; i < count; i++) {
            column[i] = levels.level((int) (column[i] * levels.levelCount()));
        }
    }

    private void correlate(double[][] columns, int row) {
        for (int a : drawn) {
            score[a] = StandardNormal.quantile(columns[a][row]);
        }
        for (int d = drawn.length - 1; d >= 0; d--) {
            int a = drawn[d];
            if (!alone(a)) {
                columns[a][row] = Math.min(Math.max(StandardNormal.cdf(mixed(a)), 0x1p-53), 1 - 0x1p-53);
            }
        }
    }

    private boolean alone(int axis) {
        return lower[axis][axis] == 1;
    }

    private double mixed(int axis) {
        double sum = 0;
        for (int k = 0; k <= axis; k++) {
            sum += lower[axis][k] == 0 ? 0 : lower[axis][k] * score[k];
        }
        return sum;
    }
}
