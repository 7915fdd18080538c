package io.github.stoplag.sweep;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/** The values of a plan's scenarios by index. Immutable and free of allocation when filling: one for all threads. */
public final class Scenarios {
    private final Plan plan;
    private final long size;
    private final Axis[] axes;
    private final Design.Uniforms uniforms;
    private final List<Optional<QuantileTable>> tables;
    private final List<DoubleUnaryOperator> quantiles;
    private final int[] correlatedFirst;
    private final int[] correlatedSecond;
    private final double[] rho;
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
            correlate(rho[k], count, columns[correlatedFirst[k]], columns[correlatedSecond[k]]);
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

    private static void correlate(double rho, int count, double[] first, double[] second) {
        double rest = Math.sqrt(1 - rho * rho);
        for (int i = 0; i < count; i++) {
            double z = rho * StandardNormal.quantile(first[i]) + rest * StandardNormal.quantile(second[i]);
            second[i] = Math.min(Math.max(StandardNormal.cdf(z), 0x1p-53), 1 - 0x1p-53);
        }
    }
}
