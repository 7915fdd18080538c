package io.github.stoplag.examples.draw;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * Probabilities over one quantity, each curve with the band of its interval. Probabilities are ratios and drawn in
 * percent.
 *
 * @param notes lines under the heading, such as what the interval is
 * @param xLabel the horizontal axis with its unit
 * @param yLabel the vertical axis, in percent
 * @param curves the curves, named above the plot in this order
 */
public record ProbabilityChart(List<String> notes, String xLabel, String yLabel, List<Curve> curves) {
    private static final int MOST_MARKED = 16;

    /**
     * One curve, as of one lamp.
     *
     * @param label its name
     * @param style 0, 1, 3, 4 or 5, one for each lamp
     * @param points from left to right
     */
    public record Curve(String label, int style, List<Point> points) {}

    /**
     * A probability with its interval.
     *
     * @param x the quantity it belongs to
     * @param ratio the probability, [0, 1]
     * @param lo the lower end of its interval
     * @param hi the upper end
     */
    public record Point(double x, double ratio, double lo, double hi) {
        public Point {
            if (!(0 <= lo && lo <= ratio && ratio <= hi && hi <= 1)) {
                throw new IllegalArgumentException(
                        "a probability with its interval must have 0 <= lo <= p <= hi <= 1, got " + lo + ", " + ratio
                                + ", " + hi);
            }
        }
    }

    /** Makes the picture; the description must give the decisive figures. */
    public Figure figure(String id, String title, String description) {
        return new LineChart(
                        notes,
                        xLabel,
                        yLabel,
                        curves.stream().map(ProbabilityChart::series).toList())
                .figure(id, title, description);
    }

    private static LineChart.Series series(Curve curve) {
        List<Point> points = curve.points;
        List<LineChart.Point> middle = line(points, Point::ratio).toList();
        List<LineChart.Point> upper = line(points, Point::hi).toList();
        List<LineChart.Point> back = new ArrayList<>(line(points, Point::lo).toList());
        Collections.reverse(back);
        return new LineChart.Series(
                curve.label,
                curve.style,
                middle,
                points.size() <= MOST_MARKED ? middle : List.of(),
                false,
                Stream.concat(upper.stream(), back.stream()).toList());
    }

    private static Stream<LineChart.Point> line(List<Point> points, ToDoubleFunction<Point> ratio) {
        return points.stream().map(p -> new LineChart.Point(p.x, 100 * ratio.applyAsDouble(p)));
    }
}
