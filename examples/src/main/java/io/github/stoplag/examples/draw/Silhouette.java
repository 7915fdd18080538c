package io.github.stoplag.examples.draw;

import java.util.Locale;

/** Plain outlines of two vehicles that drive to the right, in metres on a road axis. */
public final class Silhouette {
    public static final double MINIBUS_HEIGHT_M = 2.6;
    private static final double CAR_HEIGHT_M = 1.5;
    private static final double SMALLEST_LAMP_PX = 4;

    private Silhouette() {}

    /** Draws a minibus with its stop lamp lit, its rear at a position. */
    public static void minibus(Markup out, Scale metres, double rearM, double lengthM, double ground) {
        double[][] body = {
            {0, 0.35},
            {0, 0.92},
            {0.02, 1},
            {0.8, 1},
            {0.9, 0.9},
            {0.96, 0.55},
            {1, 0.48},
            {1, 0.12},
            {0.98, 0.12},
            {0, 0.12}
        };
        double[][] glass = {{0.05, 0.55}, {0.05, 0.88}, {0.8, 0.88}, {0.88, 0.82}, {0.93, 0.55}};
        Drawing drawing = new Drawing(out, metres, rearM, lengthM, MINIBUS_HEIGHT_M, ground);
        drawing.outline("sl-body", body);
        drawing.outline("sl-glass", glass);
        drawing.wheels(0.2, 0.82);
        double lampPx = Math.max(SMALLEST_LAMP_PX, 0.2 * drawing.scale());
        out.empty(
                "rect",
                "class",
                "sl-lit",
                "x",
                LineChart.px(metres.at(rearM)),
                "y",
                LineChart.px(ground - 0.45 * MINIBUS_HEIGHT_M * drawing.scale() - lampPx / 2),
                "width",
                LineChart.px(lampPx * 0.8),
                "height",
                LineChart.px(lampPx));
    }

    /** Draws a car, its front at a position. */
    public static void car(Markup out, Scale metres, double frontM, double lengthM, double ground) {
        double[][] body = {
            {0, 0.2},
            {0, 0.55},
            {0.05, 0.65},
            {0.14, 0.66},
            {0.26, 0.97},
            {0.56, 1},
            {0.72, 0.64},
            {0.95, 0.55},
            {1, 0.42},
            {1, 0.18}
        };
        double[][] glass = {{0.2, 0.66}, {0.29, 0.9}, {0.54, 0.92}, {0.66, 0.64}};
        Drawing drawing = new Drawing(out, metres, frontM - lengthM, lengthM, CAR_HEIGHT_M, ground);
        drawing.outline("sl-body", body);
        drawing.outline("sl-glass", glass);
        drawing.wheels(0.2, 0.8);
    }

    /** Turns shares of length and height into coordinates, the same scale along and up. */
    private record Drawing(Markup out, Scale metres, double rearM, double lengthM, double heightM, double ground) {
        private static final double WHEEL_RADIUS_M = 0.33;

        double scale() {
            return (metres.to() - metres.from()) / (metres.hi() - metres.lo());
        }

        void outline(String style, double[][] shares) {
            StringBuilder points = new StringBuilder();
            for (double[] share : shares) {
                points.append(String.format(
                        Locale.ROOT,
                        "%.2f,%.2f ",
                        metres.at(rearM + share[0] * lengthM),
                        ground - share[1] * heightM * scale()));
            }
            out.empty("polygon", "class", style, "points", points.toString().strip());
        }

        void wheels(double... shares) {
            for (double share : shares) {
                out.empty(
                        "circle",
                        "class",
                        "sl-ink",
                        "cx",
                        LineChart.px(metres.at(rearM + share * lengthM)),
                        "cy",
                        LineChart.px(ground - WHEEL_RADIUS_M * scale()),
                        "r",
                        LineChart.px(WHEEL_RADIUS_M * scale()));
            }
        }
    }
}
