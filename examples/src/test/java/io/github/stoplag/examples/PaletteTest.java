package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.examples.draw.Figure;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The pictures' own colours on both backgrounds: contrast, order in grey print, and what two kinds of dichromats see.
 */
class PaletteTest {
    private static final double TEXT = 4.5;
    private static final double LINE = 3;
    private static final int DARK_FROM = Figure.STYLE.indexOf("@media");

    /** Rows of linear RGB as protanopes and deuteranopes see it: Viénot, Brettel and Mollon 1999 (from memory). */
    private static final double[][][] DICHROMATS = {
        {{0.11238, 0.88762, 0}, {0.11238, 0.88762, 0}, {0.00401, -0.00401, 1}},
        {{0.29275, 0.70725, 0}, {0.29275, 0.70725, 0}, {-0.02234, 0.02234, 1}}
    };

    private static double[] colour(boolean dark, String style, String property) {
        String rules = dark ? Figure.STYLE.substring(DARK_FROM) : Figure.STYLE.substring(0, DARK_FROM);
        Matcher rule = Pattern.compile(Pattern.quote(style) + "(?:,[^{}]*)?\\{[^}]*" + property + ":#([0-9a-f]{6})")
                .matcher(rules);
        assertThat(rule.find())
                .as(style + " " + property + (dark ? " dark" : " light"))
                .isTrue();
        int rgb = Integer.parseInt(rule.group(1), 16);
        return new double[] {linear(rgb >> 16), linear(rgb >> 8 & 255), linear(rgb & 255)};
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static double luminance(double[] colour) {
        return 0.2126 * colour[0] + 0.7152 * colour[1] + 0.0722 * colour[2];
    }

    private static double contrast(double[] one, double[] other) {
        double a = luminance(one) + 0.05;
        double b = luminance(other) + 0.05;
        return Math.max(a, b) / Math.min(a, b);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void textAndLinesStandOutFromThePage(boolean dark) {
        double[] page = colour(dark, ".sl-page", "fill");
        assertThat(contrast(colour(dark, ".sl text", "fill"), page)).isGreaterThan(TEXT);
        assertThat(contrast(colour(dark, ".sl-note", "fill"), page)).isGreaterThan(TEXT);
        for (int style = 0; style <= 5; style++) {
            assertThat(contrast(colour(dark, ".sl-" + style, "stroke"), page))
                    .as("line " + style)
                    .isGreaterThan(LINE);
        }
        assertThat(contrast(colour(dark, ".sl-cross", "stroke"), page)).isGreaterThan(LINE);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void shadesAreOrderedInGreyAndCarryTheirFigures(boolean dark) {
        double[] before = colour(dark, ".sl-page", "fill");
        double[] ink = colour(dark, ".sl text", "fill");
        for (int shade = 0; shade <= 4; shade++) {
            double[] now = colour(dark, ".sl-r" + shade, "fill");
            assertThat(luminance(now) > luminance(before))
                    .as("order of shade " + shade)
                    .isEqualTo(dark);
            assertThat(contrast(now, before)).as("step to shade " + shade).isGreaterThan(1.14);
            boolean turned = shade >= (dark ? 2 : 3);
            double[] figure = turned ? colour(dark, ".sl-on4", "fill") : ink;
            assertThat(contrast(figure, now)).as("figure on shade " + shade).isGreaterThan(TEXT);
            before = now;
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void bothLampsAndNeighbouringShadesDifferForDichromats(boolean dark) {
        for (double[][] eye : DICHROMATS) {
            assertThat(difference(
                            seen(eye, colour(dark, ".sl-0", "stroke")), seen(eye, colour(dark, ".sl-1", "stroke"))))
                    .as("the two lamps")
                    .isGreaterThan(40);
            for (int shade = 1; shade <= 4; shade++) {
                double[] one = seen(eye, colour(dark, ".sl-r" + (shade - 1), "fill"));
                double[] next = seen(eye, colour(dark, ".sl-r" + shade, "fill"));
                assertThat(difference(one, next)).as("shade " + shade).isGreaterThan(12);
            }
        }
    }

    private static double[] seen(double[][] eye, double[] colour) {
        double[] seen = new double[3];
        for (int row = 0; row < 3; row++) {
            for (int c = 0; c < 3; c++) {
                seen[row] += eye[row][c] * colour[c];
            }
            seen[row] = Math.min(1, Math.max(0, seen[row]));
        }
        return seen;
    }

    /** The colour difference of CIELAB 1976, white D65. */
    private static double difference(double[] one, double[] other) {
        double[] a = lab(one);
        double[] b = lab(other);
        return Math.hypot(Math.hypot(a[0] - b[0], a[1] - b[1]), a[2] - b[2]);
    }

    private static double[] lab(double[] c) {
        double x = f((0.4124 * c[0] + 0.3576 * c[1] + 0.1805 * c[2]) / 0.9505);
        double y = f(luminance(c));
        double z = f((0.0193 * c[0] + 0.1192 * c[1] + 0.9505 * c[2]) / 1.089);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static double f(double t) {
        return t > 0.008856 ? Math.cbrt(t) : 7.787 * t + 16.0 / 116;
    }
}
