package io.github.stoplag.examples.draw;

import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Bars along one horizontal axis in two shades, each row named on a line of its own above them.
 *
 * @param notes lines under the heading
 * @param light what bars of the light shade are
 * @param dark what bars of the dark shade are
 * @param xLabel the axis with its unit
 * @param base where the bars start
 * @param rows the rows from the top
 */
record RowedBars(List<String> notes, String light, String dark, String xLabel, double base, List<Row> rows) {
    private static final int LIGHT = 1;
    private static final int DARK = 3;
    private static final int BAR = 16;
    private static final int NAME = 24;
    private static final int MARGIN = 30;

    /**
     * A row.
     *
     * @param name what it is about
     * @param lines its lines of bars from the top, later bars of a line on top of earlier ones
     */
    record Row(String name, List<List<Bar>> lines) {}

    /**
     * A bar from the base.
     *
     * @param to where it ends
     * @param dark whether it has the dark shade
     * @param error half the length of the whisker at its end, 0 for none
     */
    record Bar(double to, boolean dark, double error) {}

    /** Makes the picture. */
    Figure figure(String id, String title, String description) {
        ChartFrame frame = new ChartFrame(
                title,
                notes,
                List.of(ChartFrame.boxed(light, shade(LIGHT)), ChartFrame.boxed(dark, shade(DARK))),
                rows.stream().mapToInt(RowedBars::height).sum() + 8);
        return frame.figure(id, description, out -> draw(out, frame));
    }

    private static String shade(int shade) {
        return "sl-cell sl-r" + shade;
    }

    private static int height(Row row) {
        return NAME + BAR * row.lines.size() + 12;
    }

    private void draw(Markup out, ChartFrame frame) {
        double[] ends = rows.stream()
                .flatMap(row -> row.lines.stream().flatMap(List::stream))
                .flatMapToDouble(bar -> DoubleStream.of(base, bar.to - bar.error, bar.to + bar.error))
                .toArray();
        Scale x = axis(ends);
        Plot.horizontal(out, x, frame.plotBottom(), frame.plotTop(), xLabel);
        Plot.segment(out, "sl-axis", x.from(), frame.plotBottom(), x.to(), frame.plotBottom());
        double top = frame.plotTop();
        for (Row row : rows) {
            row(out, row, x, top);
            double foot = top + NAME + BAR * row.lines.size() + 4;
            Plot.segment(out, "sl-rim", x.at(base), top + NAME - 2, x.at(base), foot);
            out.line();
            top += height(row);
        }
    }

    /** The axis; what reaches a little below zero gets the room it needs and not a whole tick. */
    private static Scale axis(double[] ends) {
        Scale whole = Scale.over(ends, MARGIN, ChartFrame.WIDTH - MARGIN);
        double least = DoubleStream.of(ends).min().orElse(0);
        if (least >= 0 || least < -whole.step() / 2) {
            return whole;
        }
        double[] above = DoubleStream.of(ends).map(end -> Math.max(0, end)).toArray();
        Scale upper = Scale.over(above, whole.from(), whole.to());
        double room = (upper.to() - upper.from()) * -least / (upper.hi() - least);
        return Scale.linear(0, upper.hi(), upper.step(), upper.from() + room, upper.to());
    }

    private void row(Markup out, Row row, Scale x, double top) {
        for (int i = 0; i < row.lines.size(); i++) {
            double y = top + NAME + BAR * i;
            row.lines.get(i).forEach(bar -> bar(out, bar, x, y));
        }
        double named = top + NAME - 6;
        out.element("text", row.name, "class", "sl-over", "x", px(x.from() + 6), "y", px(named))
                .line();
    }

    private void bar(Markup out, Bar bar, Scale x, double y) {
        double left = Math.min(x.at(base), x.at(bar.to));
        ChartFrame.box(out, shade(bar.dark ? DARK : LIGHT), left, y, Math.abs(x.at(bar.to) - x.at(base)), BAR);
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
