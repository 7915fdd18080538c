package io.github.stoplag.examples.draw;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How a result spreads, as steps over bins.
 *
 * @param notes lines under the heading
 * @param xLabel the quantity with its unit
 * @param yLabel what the heights are, with their unit
 * @param steps the distributions, named above the plot in this order
 */
public record DistributionChart(List<String> notes, String xLabel, String yLabel, List<Steps> steps) {
    /**
     * One distribution, as of one lamp.
     *
     * @param label its name with its decisive figure
     * @param style 0, 1, 3, 4 or 5, one for each lamp
     * @param edges the ends of the bins, rising, one more than there are bins
     * @param heights one for each bin
     * @param marked a value to mark, such as the median
     */
    public record Steps(String label, int style, List<Double> edges, List<Double> heights, OptionalDouble marked) {
        public Steps {
            if (heights.isEmpty() || edges.size() != heights.size() + 1) {
                throw new IllegalArgumentException(
                        "a distribution needs at least 1 bin and one more edge than bins, got " + edges.size()
                                + " edges and " + heights.size() + " bins");
            }
        }
    }

    /** Makes the picture; the description must give the decisive figures. */
    public Figure figure(String id, String title, String description) {
        return new LineChart(
                        notes,
                        xLabel,
                        yLabel,
                        steps.stream().map(DistributionChart::series).toList())
                .figure(id, title, description);
    }

    private static LineChart.Series series(Steps steps) {
        List<LineChart.Point> outline = new ArrayList<>();
        outline.add(new LineChart.Point(steps.edges.get(0), 0));
        for (int bin = 0; bin < steps.heights.size(); bin++) {
            outline.add(new LineChart.Point(steps.edges.get(bin), steps.heights.get(bin)));
            outline.add(new LineChart.Point(steps.edges.get(bin + 1), steps.heights.get(bin)));
        }
        outline.add(new LineChart.Point(steps.edges.get(steps.heights.size()), 0));
        List<LineChart.Point> marks = steps.marked.stream()
                .mapToObj(x -> new LineChart.Point(x, height(steps, x)))
                .toList();
        return new LineChart.Series(steps.label, steps.style, outline, marks, true, outline);
    }

    private static double height(Steps steps, double x) {
        for (int bin = 0; bin < steps.heights.size(); bin++) {
            if (x >= steps.edges.get(bin) && x < steps.edges.get(bin + 1)) {
                return steps.heights.get(bin);
            }
        }
        return 0;
    }
}
