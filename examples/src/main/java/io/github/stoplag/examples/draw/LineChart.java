package io.github.stoplag.examples.draw;

import io.github.stoplag.quantity.Numbers;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A chart of lines over two axes, the horizontal one linear or logarithmic.
 *
 * <p><b>Why the charts are drawn here.</b> Measured on the onset chart of {@code lamp-swap}, 640 by 510, 10 kB as drawn
 * here. XChart 4.0.3 painted into the SVG canvas of Apache Batik 1.19 gives 118 kB and not one text element: XChart
 * fills the outlines of its letters itself, so no canvas can keep them as text. It draws the two curves as 482 separate
 * segments and the dashes start anew at each, so a dashed line of close points comes out solid and cannot be told from
 * the other in grey print. JFreeChart 1.5.6 painted the same way keeps text and dashes, looks much like this and takes
 * 21 kB; it is LGPL, comes with Batik to 16 jars, and places text by the fonts installed where it runs, so the file
 * differs from one computer to the next and labels sit slightly off centre in another font. Here labels are anchored in
 * the file.
 *
 * @param notes lines under the heading
 * @param xLabel the horizontal axis with its unit
 * @param yLabel the vertical axis with its unit
 * @param series the lines, named above the plot in this order
 * @param bands ranges of the vertical axis, named below the lines
 * @param decades whether the horizontal axis is logarithmic; what lies at or below zero is then not drawn
 */
public record LineChart(
        List<String> notes, String xLabel, String yLabel, List<Series> series, List<Band> bands, boolean decades) {
    public static final int WIDTH = ChartFrame.WIDTH;
    public static final int COMPARED = 2;
    private static final int PLOT_HEIGHT = 290;

    /**
     * One line.
     *
     * @param label its name with its decisive figure
     * @param style 0, 1, 3 or 4: the lamp it belongs to; 2: a second answer for comparison
     * @param points what it joins
     * @param marks which of the points to mark
     * @param drops whether a mark is joined to the horizontal axis
     * @param area the outline of an area of its colour behind the lines, empty for none
     */
    public record Series(
            String label, int style, List<Point> points, List<Point> marks, boolean drops, List<Point> area) {
        public Series(String label, int style, List<Point> points, List<Point> marks, boolean drops) {
            this(label, style, points, marks, drops, List.of());
        }
    }

    public record Point(double x, double y) {}

    /**
     * A range of the vertical axis.
     *
     * @param label what it is
     * @param lo its lower end
     * @param hi its upper end
     */
    public record Band(String label, double lo, double hi) {}

    public LineChart(List<String> notes, String xLabel, String yLabel, List<Series> series) {
        this(notes, xLabel, yLabel, series, List.of(), false);
    }

    public LineChart withBands(List<Band> more) {
        return new LineChart(notes, xLabel, yLabel, series, more, decades);
    }

    /** Gives the chart with a logarithmic horizontal axis. */
    public LineChart overDecades() {
        return new LineChart(notes, xLabel, yLabel, series, bands, true);
    }

    /** Makes the picture of the chart; the notes become part of its title. */
    public Figure figure(String id, String title, String description) {
        Stream<ChartFrame.Entry> lines =
                series.stream().map(s -> new ChartFrame.Entry(s.label, (out, middle) -> sample(out, s, middle)));
        Stream<ChartFrame.Entry> ranges = bands.stream().map(band -> ChartFrame.boxed(band.label, "sl-band"));
        ChartFrame frame =
                new ChartFrame(title, notes, Stream.concat(lines, ranges).toList(), PLOT_HEIGHT);
        return frame.figure(id, description, out -> draw(out, frame));
    }

    private void draw(Markup out, ChartFrame frame) {
        double[] across = points().mapToDouble(Point::x).filter(this::drawn).toArray();
        double right = WIDTH - ChartFrame.RIGHT;
        Scale x = decades
                ? Scale.overDecades(across, ChartFrame.LEFT, right)
                : Scale.over(across, ChartFrame.LEFT, right);
        Scale y = Scale.over(
                DoubleStream.concat(
                                points().mapToDouble(Point::y), bands.stream().mapToDouble(Band::hi))
                        .toArray(),
                frame.plotBottom(),
                frame.plotTop());
        for (Band band : bands) {
            ChartFrame.box(out, "sl-band", x.from(), y.at(band.hi), x.to() - x.from(), y.at(band.lo) - y.at(band.hi));
        }
        series.stream()
                .filter(s -> !s.area.isEmpty())
                .forEach(s -> out.empty("polygon", "class", "sl-area sl-" + s.style, "points", joined(s.area, x, y))
                        .line());
        new Plot(x, y).axes(out, xLabel, yLabel);
        series.forEach(s -> line(out, s, x, y));
    }

    private Stream<Point> points() {
        return series.stream().flatMap(s -> Stream.concat(s.points.stream(), s.area.stream()));
    }

    private boolean drawn(double x) {
        return !decades || x > 0;
    }

    private String joined(List<Point> points, Scale x, Scale y) {
        return points.stream()
                .filter(point -> drawn(point.x))
                .map(point -> px(x.at(point.x)) + "," + px(y.at(point.y)))
                .collect(Collectors.joining(" "));
    }

    private static void sample(Markup out, Series s, double middle) {
        if (!s.area.isEmpty()) {
            ChartFrame.box(out, "sl-area sl-" + s.style, ChartFrame.SAMPLE_FROM, middle - 8, 50, 16);
        }
        Plot.segment(out, lineClass(s), ChartFrame.SAMPLE_FROM, middle, ChartFrame.SAMPLE_TO, middle);
        if (!s.marks.isEmpty()) {
            mark(out, s, 41, middle);
        }
    }

    private void line(Markup out, Series s, Scale x, Scale y) {
        out.empty("polyline", "class", lineClass(s), "points", joined(s.points, x, y))
                .line();
        for (Point point : s.marks.stream().filter(mark -> drawn(mark.x)).toList()) {
            double at = x.at(point.x);
            if (s.drops) {
                Plot.segment(out, "sl-thin sl-" + s.style, at, y.at(point.y), at, y.from());
            }
            mark(out, s, at, y.at(point.y));
        }
        out.line();
    }

    private static void mark(Markup out, Series s, double x, double y) {
        String style = "sl-open sl-" + s.style;
        switch (s.style) {
            case 1 ->
                out.empty("rect", "class", style, "x", px(x - 5.5), "y", px(y - 5.5), "width", "11", "height", "11");
            case 3 -> polygon(out, style, x, y - 8, x + 8, y, x, y + 8, x - 8, y);
            case 4 -> polygon(out, style, x, y - 8, x + 7, y + 5, x - 7, y + 5);
            default -> out.empty("circle", "class", style, "cx", px(x), "cy", px(y), "r", "6");
        }
    }

    private static void polygon(Markup out, String style, double... corners) {
        String points = IntStream.range(0, corners.length / 2)
                .mapToObj(i -> px(corners[2 * i]) + "," + px(corners[2 * i + 1]))
                .collect(Collectors.joining(" "));
        out.empty("polygon", "class", style, "points", points);
    }

    private static String lineClass(Series s) {
        return (s.style == COMPARED ? "sl-thin" : "sl-line") + " sl-" + s.style;
    }

    public static String px(double value) {
        return Numbers.fixed(value, 1);
    }
}
