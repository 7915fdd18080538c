package io.github.stoplag.examples.film;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.LineChart;
import io.github.stoplag.examples.draw.Markup;
import java.util.List;

/** The film's own frames as pictures: the regions of the lamps, and a strip of stills with the times written on. */
final class FilmPictures {
    private static final int WIDTH = LineChart.WIDTH;
    private static final int MARGIN = 12;
    private static final int HEAD = 68;
    private static final int LINE = 21;
    private static final int PER_ROW = 2;

    private FilmPictures() {}

    /** A still with what is written below it. */
    record Titled(Still still, List<String> lines) {}

    /** Draws the regions into a frame in which lamps are lit. */
    static Figure regions(Still whole, List<LampRegion> lamps, String marked) {
        double scale = (WIDTH - 2.0 * MARGIN) / whole.area().width();
        double height = scale * whole.area().height();
        String note = "frame " + whole.frame() + "; check that each box holds its lamp" + marked;
        return new Figure(
                "regions",
                "Where the lamps are looked for; " + note,
                "Frame " + whole.frame() + " with the regions of " + names(lamps),
                WIDTH,
                (int) Math.ceil(HEAD + height + MARGIN),
                out -> {
                    head(out, "Where the lamps are looked for", note);
                    image(out, whole, MARGIN, HEAD, WIDTH - 2 * MARGIN, height);
                    lamps.forEach(lamp -> box(out, lamp, scale));
                });
    }

    private static String names(List<LampRegion> lamps) {
        return String.join(
                ", ",
                lamps.stream().map(lamp -> lamp.name() + " (" + lamp + ")").toList());
    }

    private static void box(Markup out, LampRegion lamp, double scale) {
        double x = MARGIN + scale * lamp.x();
        double y = HEAD + scale * lamp.y();
        double width = scale * lamp.width();
        double height = scale * lamp.height();
        for (String style : List.of("stroke:#000000;stroke-width:5", "stroke:#ffffff;stroke-width:2")) {
            out.empty(
                    "rect",
                    "style",
                    "fill:none;" + style,
                    "x",
                    px(x),
                    "y",
                    px(y),
                    "width",
                    px(width),
                    "height",
                    px(height));
        }
        boolean above = y > HEAD + 30;
        out.element(
                        "text",
                        lamp.name(),
                        "x",
                        px(Math.min(x, WIDTH - 140)),
                        "y",
                        px(above ? y - 8 : y + height + 22),
                        "style",
                        "fill:#ffffff;stroke:#000000;stroke-width:4;paint-order:stroke;font-weight:600")
                .line();
    }

    /** Draws stills in the order of time. */
    static Figure strip(String id, String title, String note, List<Titled> stills) {
        int width = (WIDTH - (PER_ROW + 1) * MARGIN) / PER_ROW;
        int lines =
                stills.stream().mapToInt(still -> still.lines().size()).max().orElse(0);
        LampRegion area = stills.get(0).still().area();
        double height = width * (double) area.height() / area.width();
        double row = height + LINE * lines + 2 * MARGIN;
        int rows = -(-stills.size() / PER_ROW);
        return new Figure(
                id,
                title + "; " + note,
                String.join(
                        "; ",
                        stills.stream().map(s -> String.join(", ", s.lines())).toList()),
                WIDTH,
                (int) Math.ceil(HEAD + rows * row),
                out -> {
                    head(out, title, note);
                    for (int i = 0; i < stills.size(); i++) {
                        double x = MARGIN + i % PER_ROW * (width + MARGIN);
                        int line = i / PER_ROW;
                        double y = HEAD + line * row;
                        image(out, stills.get(i).still(), x, y, width, height);
                        List<String> below = stills.get(i).lines();
                        for (int k = 0; k < below.size(); k++) {
                            out.element(
                                    "text",
                                    below.get(k),
                                    "class",
                                    k == 0 ? "sl-title" : "sl-note",
                                    "x",
                                    px(x),
                                    "y",
                                    px(y + height + LINE * (k + 1)));
                        }
                        out.line();
                    }
                });
    }

    private static void head(Markup out, String title, String note) {
        out.element("text", title, "class", "sl-title", "x", "12", "y", "28").line();
        out.element("text", note, "class", "sl-note", "x", "12", "y", "52").line();
    }

    private static void image(Markup out, Still still, double x, double y, double width, double height) {
        out.empty(
                        "image",
                        "href",
                        still.address(),
                        "x",
                        px(x),
                        "y",
                        px(y),
                        "width",
                        px(width),
                        "height",
                        px(height),
                        "preserveAspectRatio",
                        "none")
                .line();
    }

    private static String px(double value) {
        return LineChart.px(value);
    }
}
