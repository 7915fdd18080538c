package io.github.stoplag.examples;

/**
 * The frame of a picture over two linear axes.
 *
 * @param x the horizontal axis
 * @param y the vertical axis, upwards
 */
record Plot(Axis x, Axis y) {
    /** Draws grid, axes, ticks and labels. */
    void axes(Markup out, String xLabel, String yLabel) {
        for (double tick : x.ticks()) {
            segment(out, "sl-grid", x.at(tick), y.from(), x.at(tick), y.to());
            out.element("text", x.text(tick), "x", px(x.at(tick)), "y", px(y.from() + 22), "text-anchor", "middle");
        }
        out.line();
        for (double tick : y.ticks()) {
            segment(out, "sl-grid", x.from(), y.at(tick), x.to(), y.at(tick));
            out.element("text", y.text(tick), "x", px(x.from() - 8), "y", px(y.at(tick) + 6), "text-anchor", "end");
        }
        out.line();
        segment(out, "sl-axis", x.from(), y.at(y.lo()), x.to(), y.at(y.lo()));
        segment(out, "sl-axis", x.from(), y.from(), x.from(), y.to());
        double middle = (x.from() + x.to()) / 2;
        out.element("text", xLabel, "x", px(middle), "y", px(y.from() + 50), "text-anchor", "middle");
        out.element(
                "text",
                yLabel,
                "transform",
                "translate(20 " + px((y.from() + y.to()) / 2) + ") rotate(-90)",
                "text-anchor",
                "middle");
        out.line();
    }

    static void segment(Markup out, String style, double x1, double y1, double x2, double y2) {
        out.empty("line", "class", style, "x1", px(x1), "y1", px(y1), "x2", px(x2), "y2", px(y2));
    }

    private static String px(double value) {
        return LineChart.px(value);
    }
}
