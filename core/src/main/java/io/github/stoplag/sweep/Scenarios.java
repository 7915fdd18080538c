package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.StandardNormal;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/** The values of a plan's scenarios by index. Immutable and free of allocation when filling: one for all threads. */
public final class Scenarios {
    private static final int MOST_RANKED = 1 << 24;

    private final Plan plan;
    private final long size;
    private final Axis[] axes;
    private final Design.Uniforms uniforms;
    private final List<Optional<QuantileTable>> tables;
    private final List<DoubleUnaryOperator> quantiles;
    private final int[] correlatedFirst;
    private final int[] correlatedSecond;
    private final double[] rho;
    // of a Latin hypercube: for each pair the second axis's scores of all scenarios, sorted
    private final double[][] scores;
    private final long[] gridStride;

    Scenarios(Plan plan) {
        this.plan = plan;
        size = plan.size();
        axes = plan.axes().toArray(new Axis[0]);
        uniforms = plan.design().uniforms(plan.seed(), Math.max(1, axes.length));
        tables = plan.axes().stream().map(plan::table).toList();
        quantiles = plan.axes().stream()
                .map(axis -> axis.distribution()
                        .map(Distribution::quantileFunction)
                        .orElseGet(DoubleUnaryOperator::identity))
                .toList();
        List<Plan.Correlation> pairs = plan.correlations();
        correlatedFirst = pairs.stream()
                .mapToInt(pair -> plan.columns().indexOf(pair.first()))
                .toArray();
        correlatedSecond = pairs.stream()
                .mapToInt(pair -> plan.columns().indexOf(pair.second()))
                .toArray();
        rho = pairs.stream().mapToDouble(Plan.Correlation::rho).toArray();
        scores = plan.design().kind() == Design.Kind.LATIN_HYPERCUBE ? scores() : new double[0][];
        gridStride = new long[axes.length];
        long stride = plan.design().count();
        for (int a = axes.length - 1; a >= 0; a--) {
            gridStride[a] = stride;
            stride *= plan.design().kind() == Design.Kind.GRID ? Math.max(1, axes[a].levelCount()) : 1;
        }
    }

    /**
     * Fills columns with the values of consecutive scenarios.
     *
     * @param firstIndex the first scenario
     * @param count how many
     * @param columns one array for each axis in order, filled from 0 on
     * @throws IllegalArgumentException if the scenarios are not all in the plan, or arrays are too few or too short
     */
    public void fill(long firstIndex, int count, double[][] columns) {
        Objects.requireNonNull(columns, "columns");
        if (firstIndex < 0 || count < 0 || firstIndex > size - count) {
            throw new IllegalArgumentException(
                    "scenarios must be in [0, " + (size - 1) + "], got " + count + " from " + firstIndex + " on");
        }
        if (columns.length != axes.length) {
            throw new IllegalArgumentException(
                    "there must be one array for each of " + axes.length + " axes, got " + columns.length);
        }
        boolean grid = plan.design().kind() == Design.Kind.GRID;
        for (int a = 0; a < axes.length; a++) {
            if (!(grid && axes[a].levelCount() > 0) && axes[a].levelCount() != 1) {
                uniforms.fill(a, firstIndex, count, columns[a]);
            }
        }
        for (int k = 0; k < rho.length; k++) {
            if (scores.length > 0) {
                stratify(k, count, columns[correlatedFirst[k]], columns[correlatedSecond[k]]);
            } else {
                correlate(rho[k], count, columns[correlatedFirst[k]], columns[correlatedSecond[k]]);
            }
        }
        for (int a = 0; a < axes.length; a++) {
            if (axes[a].levelCount() == 1) {
                Arrays.fill(columns[a], 0, count, axes[a].level(0));
            } else if (axes[a].levelCount() == 0) {
                draw(a, count, columns[a]);
            } else if (grid) {
                gridLevels(a, firstIndex, count, columns[a]);
            } else {
                randomLevels(axes[a], count, columns[a]);
            }
        }
    }

    /**
     * Gives the values of one scenario.
     *
     * @param index the scenario
     * @return one value for each axis in order
     * @throws IllegalArgumentException if the scenario is not in the plan
     */
    public double[] at(long index) {
        double[][] columns = new double[axes.length][1];
        fill(index, 1, columns);
        return Arrays.stream(columns).mapToDouble(column -> column[0]).toArray();
    }

    private void draw(int axis, int count, double[] column) {
        Optional<QuantileTable> table = tables.get(axis);
        if (table.isPresent()) {
            table.get().transform(count, column);
            return;
        }
        DoubleUnaryOperator quantile = quantiles.get(axis);
        for (int i = 0; i < count; i++) {
            column[i] = quantile.applyAsDouble(column[i]);
        }
    }

    private void gridLevels(int axis, long firstIndex, int count, double[] column) {
        Axis levels = axes[axis];
        long stride = gridStride[axis];
        int level = (int) (firstIndex / stride % levels.levelCount());
        long left = stride - firstIndex % stride;
        for (int i = 0; i < count; i++) {
            if (left == 0) {
                level = level + 1 < levels.levelCount() ? level + 1 : 0;
                left = stride;
            }
            column[i] = levels.level(level);
            left--;
        }
    }

    private static void randomLevels(Axis axis, int count, double[] column) {
        for (int i = 0; i < count; i++) {
            column[i] = axis.level((int) (column[i] * axis.levelCount()));
        }
    }

    private double[][] scores() {
        if (rho.length > 0 && size > MOST_RANKED) {
            throw new IllegalArgumentException("a Latin hypercube with correlated axes must have at most " + MOST_RANKED
                    + " scenarios, got " + size);
        }
        double[][] sorted = new double[rho.length][(int) (rho.length == 0 ? 0 : size)];
        double[] first = new double[RowBlock.ROWS];
        double[] second = new double[RowBlock.ROWS];
        for (int k = 0; k < rho.length; k++) {
            for (int from = 0; from < size; from += RowBlock.ROWS) {
                int count = (int) Math.min(RowBlock.ROWS, size - from);
                uniforms.fill(correlatedFirst[k], from, count, first);
                uniforms.fill(correlatedSecond[k], from, count, second);
                for (int i = 0; i < count; i++) {
                    sorted[k][from + i] = score(rho[k], first[i], second[i]);
                }
            }
            Arrays.sort(sorted[k]);
        }
        return sorted;
    }

    /** Puts the second axis into the stratum of its score's rank, at the place it had in its own stratum. */
    private void stratify(int pair, int count, double[] first, double[] second) {
        double[] sorted = scores[pair];
        for (int i = 0; i < count; i++) {
            int rank = Arrays.binarySearch(sorted, score(rho[pair], first[i], second[i]));
            double place = second[i] * sorted.length;
            double u = (rank + place - Math.floor(place)) / sorted.length;
            second[i] = Math.min(Math.max(u, 0x1p-53), 1 - 0x1p-53);
        }
    }

    private static double score(double rho, double first, double second) {
        return rho * StandardNormal.quantile(first) + Math.sqrt(1 - rho * rho) * StandardNormal.quantile(second);
    }

    private static void correlate(double rho, int count, double[] first, double[] second) {
        for (int i = 0; i < count; i++) {
            double z = score(rho, first[i], second[i]);
            second[i] = Math.min(Math.max(StandardNormal.cdf(z), 0x1p-53), 1 - 0x1p-53);
        }
    }
}
