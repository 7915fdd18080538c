package io.github.stoplag.examples.draw;

/**
 * The frame of a picture over two linear axes.
 *
 * @param x the horizontal axis
 * @param y the vertical axis, upwards
 */
public record Plot(Scale x, Scale y) {
    /** Draws grid, axes, ticks and labels. */
    public void axes(Markup out, String xLabel, String yLabel) {
        horizontal(out, x, y.from(), y.to(), xLabel);
        for (double tick : y.ticks()) {
            segment(out, "sl-grid", x.from(), y.at(tick), x.to(), y.at(tick));
            out.element("text", y.text(tick), "x", px(x.from() - 8), "y", px(y.at(tick) + 6), "text-anchor", "end");
        }
        out.line();
        segment(out, "sl-axis", x.from(), y.at(y.lo()), x.to(), y.at(y.lo()));
        segment(out, "sl-axis", x.from(), y.from(), x.from(), y.to());
        upright(out, yLabel, (y.from() + y.to()) / 2);
    }

    /** Draws a horizontal axis at the bottom of a plot, its grid lines up to the top, and its label. */
    static void horizontal(Markup out, Scale x, double bottom, double top, String label) {
        for (double tick : x.ticks()) {
            segment(out, "sl-grid", x.at(tick), bottom, x.at(tick), top);
            out.element("text", x.text(tick), "x", px(x.at(tick)), "y", px(bottom + 22), "text-anchor", "middle");
        }
        out.line();
        below(out, label, (x.from() + x.to()) / 2, bottom);
    }

    /** Writes the label of a horizontal axis below its figures. */
    static void below(Markup out, String label, double middle, double bottom) {
        out.element("text", label, "x", px(middle), "y", px(bottom + 50), "text-anchor", "middle")
                .line();
    }

    /** Writes the label of an upright axis at the left edge. */
    static void upright(Markup out, String label, double middle) {
        out.element("text", label, "transform", "translate(20 " + px(middle) + ") rotate(-90)", "text-anchor", "middle")
                .line();
    }

    public static void segment(Markup out, String style, double x1, double y1, double x2, double y2) {
        out.empty("line", "class", style, "x1", px(x1), "y1", px(y1), "x2", px(x2), "y2", px(y2));
    }

    private static String px(double value) {
        return LineChart.px(value);
    }
}
