package io.github.stoplag.sweep;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * One curve of a result for each axis, the other axes held at their middle: the median of a drawn axis, the middle
 * level of a list.
 *
 * <p>It shows shape and direction, not interactions; those are in {@link SobolIndices}.
 */
public final class OneAtATime {
    /**
     * The result along one axis.
     *
     * @param column the axis
     * @param at its values: the levels, or the quantiles at evenly spaced probabilities
     * @param output the result at each, NaN where the inputs were rejected
     */
    public record Curve(String column, List<Double> at, List<Double> output) {

        /**
         * Refuses nulls.
         *
         * @param column the axis
         * @param at its values: the levels, or the quantiles at evenly spaced probabilities
         * @param output the result at each, NaN where the inputs were rejected
         * @throws NullPointerException if one that is required is null
         */
        public Curve {
            Objects.requireNonNull(at, "at");
            Objects.requireNonNull(column, "column");
            Objects.requireNonNull(output, "output");
        }
    }

    private OneAtATime() {}

    /**
     * Computes the curves of all axes that vary.
     *
     * @param plan the plan; its design and seed play no part
     * @param model what to compute
     * @param output the column to show
     * @param points how many points on a drawn axis, [2, 1000]
     * @return the curves in the order of the axes
     * @throws IllegalArgumentException if there is no such output or the number of points is out of range
     */
    public static List<Curve> curves(Plan plan, Model model, String output, int points) {
        Objects.requireNonNull(plan, "plan");
        int outputAt = model.outputs().indexOf(output);
        if (outputAt < 0 || points < 2 || points > 1000) {
            throw new IllegalArgumentException("curves need an output of " + model.outputs()
                    + " and 2 to 1000 points, got " + output + " and " + points);
        }
        List<Curve> curves = new ArrayList<>();
        for (Axis axis : plan.axes()) {
            double[] at = values(axis, points);
            if (at.length > 1) {
                curves.add(curve(plan, model, outputAt, axis, at));
            }
        }
        return curves;
    }

    private static Curve curve(Plan plan, Model model, int outputAt, Axis axis, double[] at) {
        Plan along = Plan.of(Design.grid(), plan.seed());
        for (Axis other : plan.axes()) {
            double[] levels = other.equals(axis) ? at : new double[] {middle(other)};
            along = along.axis(Axis.list(other.column(), "", levels));
        }
        Column gathered = Sweep.of(along, model)
                .withThreads(1)
                .run(() -> new Column(model.outputs().get(outputAt)))
                .tally();
        return new Curve(axis.column(), boxed(at), List.copyOf(gathered.values));
    }

    private static List<Double> boxed(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }

    private static double[] values(Axis axis, int points) {
        return axis.distribution()
                .map(distribution -> IntStream.range(0, points)
                        .mapToDouble(k -> distribution.quantile((k + 0.5) / points))
                        .toArray())
                .orElseGet(axis::levels);
    }

    private static double middle(Axis axis) {
        return axis.distribution()
                .map(distribution -> distribution.quantile(0.5))
                .orElseGet(() -> axis.level(axis.levelCount() / 2));
    }

    private static final class Column implements Tally<Column> {
        private final String name;
        private final List<Double> values = new ArrayList<>();

        Column(String name) {
            this.name = name;
        }

        @Override
        public void add(RowBlock rows) {
            double[] column = rows.column(name);
            for (int i = 0; i < rows.count(); i++) {
                values.add(column[i]);
            }
        }

        @Override
        public void absorb(Column later) {
            values.addAll(later.values);
        }

        @Override
        public void clear() {
            values.clear();
        }
    }
}
