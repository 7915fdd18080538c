package io.github.stoplag.examples;

import java.util.List;
import java.util.stream.DoubleStream;

/** Bars along one horizontal axis, each row named on a line of its own above them. */
final class RowedBars {
    static final int BAR = 16;
    private static final int NAME = 24;
    private static final int MARGIN = 30;

    private RowedBars() {}

    /**
     * A row.
     *
     * @param name what it is about
     * @param lines its lines of bars from the top, later bars of a line on top of earlier ones
     */
    record Row(String name, List<List<Bar>> lines) {}

    /**
     * A bar.
     *
     * @param from where it starts
     * @param to where it ends
     * @param shade its lightness, 0 (nearest to the page) to 4
     * @param error half the length of the whisker at its end, 0 for none
     */
    record Bar(double from, double to, int shade, double error) {}

    static Figure figure(
            String id,
            String title,
            String description,
            List<String> notes,
            List<ChartFrame.Entry> legend,
            String xLabel,
            double base,
            List<Row> rows) {
        int height = rows.stream().mapToInt(RowedBars::height).sum() + 8;
        ChartFrame frame = new ChartFrame(title, notes, legend, height);
        return frame.figure(id, description, out -> draw(out, frame, xLabel, base, rows));
    }

    private static int height(Row row) {
        return NAME + BAR * row.lines.size() + 12;
    }

    private static void draw(Markup out, ChartFrame frame, String xLabel, double base, List<Row> rows) {
        double[] ends = rows.stream()
                .flatMap(row -> row.lines.stream().flatMap(List::stream))
                .flatMapToDouble(bar -> DoubleStream.of(bar.from, bar.to - bar.error, bar.to + bar.error))
                .toArray();
        Axis x = Axis.over(ends, MARGIN, ChartFrame.WIDTH - MARGIN);
        Plot.horizontal(out, x, frame.plotBottom(), frame.plotTop(), xLabel);
        Plot.segment(out, "sl-axis", x.from(), frame.plotBottom(), x.to(), frame.plotBottom());
        double top = frame.plotTop();
        for (Row row : rows) {
            row(out, row, x, top);
            top += height(row);
        }
        Plot.segment(out, "sl-rim", x.at(base), frame.plotTop(), x.at(base), frame.plotBottom());
        out.line();
    }

    private static void row(Markup out, Row row, Axis x, double top) {
        for (int i = 0; i < row.lines.size(); i++) {
            double y = top + NAME + BAR * i;
            row.lines.get(i).forEach(bar -> bar(out, bar, x, y));
        }
        double named = top + NAME - 6;
        out.element("text", row.name, "class", "sl-over", "x", px(x.from() + 6), "y", px(named))
                .line();
    }

    private static void bar(Markup out, Bar bar, Axis x, double y) {
        double left = Math.min(x.at(bar.from), x.at(bar.to));
        ChartFrame.box(out, "sl-cell sl-r" + bar.shade, left, y, Math.abs(x.at(bar.to) - x.at(bar.from)), BAR);
        if (bar.error > 0) {
            double middle = y + BAR / 2.0;
            double lo = x.at(bar.to - bar.error);
            double hi = x.at(bar.to + bar.error);
            Plot.segment(out, "sl-over", lo, middle, hi, middle);
            Plot.segment(out, "sl-whisker", lo, middle, hi, middle);
            Plot.segment(out, "sl-whisker", lo, middle - 4, lo, middle + 4);
            Plot.segment(out, "sl-whisker", hi, middle - 4, hi, middle + 4);
        }
    }

    private static String px(double value) {
        return LineChart.px(value);
    }
}
