package io.github.stoplag.examples.draw;

import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * What stands around a plot: heading, notes and legend above it, room for an axis below.
 *
 * @param title the heading
 * @param notes lines under the heading
 * @param legend one line for each thing drawn
 * @param plotHeight the height of the plot in units of the drawing
 */
record ChartFrame(String title, List<String> notes, List<Entry> legend, int plotHeight) {
    static final int WIDTH = 640;
    static final int LEFT = 74;
    static final int RIGHT = 24;
    /** Where the sample of a legend line starts and ends. */
    static final int SAMPLE_FROM = 16;

    static final int SAMPLE_TO = 66;
    private static final int NOTE_STEP = 22;
    private static final int LEGEND_STEP = 26;
    private static final int TITLE_HEIGHT = 42;
    private static final int FOOT = 68;

    /**
     * A line of the legend.
     *
     * @param label what it is, with its decisive figure
     * @param sample draws a sample of it
     */
    record Entry(String label, Sample sample) {}

    /** Draws a sample between {@link #SAMPLE_FROM} and {@link #SAMPLE_TO}. */
    interface Sample {
        /** Draws it around a height. */
        void draw(Markup out, double middle);
    }

    int plotTop() {
        return legendTop() + LEGEND_STEP * legend.size() + 14;
    }

    int plotBottom() {
        return plotTop() + plotHeight;
    }

    private int legendTop() {
        return TITLE_HEIGHT + NOTE_STEP * notes.size();
    }

    /** Makes the picture; the notes become part of its title. */
    Figure figure(String id, String description, Consumer<Markup> plot) {
        return new Figure(
                id,
                title + notes.stream().map(note -> "; " + note).collect(Collectors.joining()),
                description,
                WIDTH,
                plotBottom() + FOOT,
                out -> {
                    head(out);
                    plot.accept(out);
                });
    }

    private void head(Markup out) {
        out.element("text", title, "class", "sl-title", "x", "12", "y", "28").line();
        for (int i = 0; i < notes.size(); i++) {
            out.element("text", notes.get(i), "class", "sl-note", "x", "12", "y", px(52 + i * NOTE_STEP))
                    .line();
        }
        for (int i = 0; i < legend.size(); i++) {
            double y = legendTop() + LEGEND_STEP * i + 14;
            legend.get(i).sample().draw(out, y - 6);
            out.element("text", legend.get(i).label(), "x", "76", "y", px(y)).line();
        }
    }

    /** Gives a legend line with a filled box. */
    static Entry boxed(String label, String style) {
        return new Entry(label, (out, middle) -> box(out, style, SAMPLE_FROM, middle - 7, SAMPLE_TO - SAMPLE_FROM, 14));
    }

    static void box(Markup out, String style, double x, double y, double width, double height) {
        out.empty("rect", "class", style, "x", px(x), "y", px(y), "width", px(width), "height", px(height));
    }

    private static String px(double value) {
        return LineChart.px(value);
    }
}
