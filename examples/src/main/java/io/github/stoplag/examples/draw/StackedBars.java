package io.github.stoplag.examples.draw;

import java.util.List;

/**
 * Sums as horizontal bars of their parts.
 *
 * @param notes lines under the heading
 * @param xLabel what is summed, with its unit
 * @param yLabel what the bars belong to, with its unit
 * @param parts the parts of every bar in order from the axis
 * @param bars the bars from the top
 * @param unit the unit written behind each sum
 */
public record StackedBars(
        List<String> notes, String xLabel, String yLabel, List<Part> parts, List<Bar> bars, String unit) {
    private static final int BAR = 30;
    private static final int PITCH = 42;
    private static final int ROOM_FOR_SUM = 84;
    private static final int PX_PER_LETTER = 9;

    /**
     * One part of every bar.
     *
     * @param label its name
     * @param shade its lightness, 0 (nearest to the page) to 4; neighbours must differ
     */
    public record Part(String label, int shade) {}

    /**
     * One bar.
     *
     * @param label what it belongs to, as a number in the unit of the axis
     * @param values one for each part, not negative
     */
    public record Bar(String label, List<Double> values) {
        public double sum() {
            return values.stream().mapToDouble(value -> value).sum();
        }
    }

    /** Makes the picture; the description must give the decisive figures. */
    public Figure figure(String id, String title, String description) {
        ChartFrame frame = new ChartFrame(
                title,
                notes,
                parts.stream()
                        .map(part -> ChartFrame.boxed(part.label, shade(part)))
                        .toList(),
                PITCH * bars.size() + 8);
        return frame.figure(id, description, out -> draw(out, frame));
    }

    private static String shade(Part part) {
        return "sl-cell sl-r" + part.shade;
    }

    private void draw(Markup out, ChartFrame frame) {
        Scale x = Scale.over(
                bars.stream().mapToDouble(Bar::sum).toArray(), ChartFrame.LEFT, ChartFrame.WIDTH - ROOM_FOR_SUM);
        Plot.horizontal(out, x, frame.plotBottom(), frame.plotTop(), xLabel);
        for (int i = 0; i < bars.size(); i++) {
            bar(out, bars.get(i), x, frame.plotTop() + 8 + PITCH * i);
        }
        Plot.segment(out, "sl-axis", x.from(), frame.plotTop(), x.from(), frame.plotBottom());
        Plot.upright(out, yLabel, (frame.plotTop() + frame.plotBottom()) / 2.0);
    }

    private void bar(Markup out, Bar bar, Scale x, double top) {
        double from = 0;
        for (int i = 0; i < parts.size(); i++) {
            double to = from + bar.values.get(i);
            double width = x.at(to) - x.at(from);
            ChartFrame.box(out, shade(parts.get(i)), x.at(from), top, width, BAR);
            String figure = Text.digits(bar.values.get(i));
            if (width > figure.length() * PX_PER_LETTER + 6) {
                out.element(
                        "text",
                        figure,
                        "class",
                        "sl-in sl-on" + parts.get(i).shade,
                        "x",
                        px((x.at(from) + x.at(to)) / 2),
                        "y",
                        px(top + 20),
                        "text-anchor",
                        "middle");
            }
            from = to;
        }
        out.element("text", bar.label, "x", px(x.from() - 8), "y", px(top + 21), "text-anchor", "end");
        out.element("text", Text.digits(from) + " " + unit, "x", px(x.at(from) + 8), "y", px(top + 21))
                .line();
    }

    private static String px(double value) {
        return LineChart.px(value);
    }
}
