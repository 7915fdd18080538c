package io.github.stoplag.examples.draw;

import io.github.stoplag.quantity.Numbers;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * An outcome over two quantities: one cell for each pair of values, its figure, rounded down, in it, shaded by class,
 * the classes parted by lines. Shades are ordered, so that the map reads in grey print too.
 *
 * @param notes lines under the heading
 * @param xLabel the horizontal quantity with its unit
 * @param yLabel the upright quantity with its unit
 * @param none what a cell without a figure means
 * @param unit the unit of the figures
 * @param bounds the lower ends of the classes above the first, rising, at most four
 * @param columns the values of the horizontal quantity
 * @param rows the values of the upright quantity, the lowest row first
 * @param cells the outcome by row and column, nothing for the named outcome without a figure
 */
public record HeatMap(
        List<String> notes,
        String xLabel,
        String yLabel,
        String none,
        String unit,
        List<Double> bounds,
        List<Double> columns,
        List<Double> rows,
        List<List<OptionalDouble>> cells) {
    private static final int ROW_HEIGHT = 30;
    private static final int MOST_BOUNDS = 4;
    private static final int NONE = -1;

    public HeatMap {
        if (cells.size() != rows.size() || cells.stream().anyMatch(row -> row.size() != columns.size())) {
            throw new IllegalArgumentException("a heat map needs one cell for each of " + rows.size() + " rows and "
                    + columns.size() + " columns, got " + cells.size() + " rows of "
                    + cells.stream().map(List::size).distinct().toList());
        }
        if (bounds.size() > MOST_BOUNDS) {
            throw new IllegalArgumentException("a heat map has at most " + MOST_BOUNDS + " bounds, got " + bounds);
        }
    }

    /** Makes the picture; the description must give the decisive figures. */
    public Figure figure(String id, String title, String description) {
        ChartFrame frame = new ChartFrame(title, notes, legend(), ROW_HEIGHT * rows.size());
        return frame.figure(id, description, out -> draw(out, frame));
    }

    private List<ChartFrame.Entry> legend() {
        List<ChartFrame.Entry> entries = new ArrayList<>();
        entries.add(ChartFrame.boxed(none, "sl-none"));
        for (int i = 0; i <= bounds.size(); i++) {
            entries.add(ChartFrame.boxed(range(i), shade(i)));
        }
        return entries;
    }

    private String range(int shade) {
        if (shade == 0) {
            return bounds.isEmpty() ? "in " + unit : "below " + Text.digits(bounds.get(0)) + " " + unit;
        }
        String from = Text.digits(bounds.get(shade - 1));
        return shade == bounds.size()
                ? from + " " + unit + " and above"
                : from + " to " + Text.digits(bounds.get(shade)) + " " + unit;
    }

    private int shadeOf(OptionalDouble value) {
        return value.isEmpty()
                ? NONE
                : (int) bounds.stream()
                        .filter(bound -> value.getAsDouble() >= bound)
                        .count();
    }

    private static String shade(int shade) {
        return shade == NONE ? "sl-none" : "sl-cell sl-r" + shade;
    }

    private void draw(Markup out, ChartFrame frame) {
        double width = (ChartFrame.WIDTH - ChartFrame.RIGHT - ChartFrame.LEFT) / (double) columns.size();
        for (int row = 0; row < rows.size(); row++) {
            double top = frame.plotBottom() - ROW_HEIGHT * (row + 1.0);
            for (int column = 0; column < columns.size(); column++) {
                cell(out, cells.get(row).get(column), ChartFrame.LEFT + width * column, top, width);
            }
            out.line();
            middle(out, "sl-tick", ticks(rows).get(row), ChartFrame.LEFT - 24, top + 21);
        }
        for (int column = 0; column < columns.size(); column++) {
            middle(
                    out,
                    "sl-tick",
                    ticks(columns).get(column),
                    ChartFrame.LEFT + width * (column + 0.5),
                    frame.plotBottom() + 22);
        }
        rims(out, width, frame.plotBottom());
        Plot.below(out, xLabel, (ChartFrame.LEFT + ChartFrame.WIDTH - ChartFrame.RIGHT) / 2.0, frame.plotBottom());
        Plot.upright(out, yLabel, (frame.plotTop() + frame.plotBottom()) / 2.0);
    }

    private void cell(Markup out, OptionalDouble value, double left, double top, double width) {
        int shade = shadeOf(value);
        ChartFrame.box(out, shade(shade), left, top, width, ROW_HEIGHT);
        if (value.isPresent()) {
            middle(
                    out,
                    "sl-in sl-on" + shade,
                    Numbers.fixed(Math.floor(value.getAsDouble()), 0),
                    left + width / 2,
                    top + 20);
        }
    }

    private static void middle(Markup out, String style, String figure, double x, double y) {
        out.element("text", figure, "class", style, "x", px(x), "y", px(y), "text-anchor", "middle");
    }

    /** Writes the values of an axis with as many decimals as one of them needs. */
    private static List<String> ticks(List<Double> values) {
        int decimals = values.stream()
                .mapToInt(value -> Math.max(
                        0,
                        new BigDecimal(Text.digits(value)).stripTrailingZeros().scale()))
                .max()
                .orElse(0);
        return values.stream().map(value -> Numbers.fixed(value, decimals)).toList();
    }

    /** Draws lines between cells of different classes. */
    private void rims(Markup out, double width, double bottom) {
        StringBuilder path = new StringBuilder();
        for (int row = 0; row < rows.size(); row++) {
            for (int column = 0; column < columns.size(); column++) {
                int shade = shadeOf(cells.get(row).get(column));
                double left = ChartFrame.LEFT + width * column;
                double below = bottom - ROW_HEIGHT * row;
                if (column > 0 && shadeOf(cells.get(row).get(column - 1)) != shade) {
                    path.append("M")
                            .append(px(left))
                            .append(' ')
                            .append(px(below))
                            .append("v-")
                            .append(ROW_HEIGHT);
                }
                if (row > 0 && shadeOf(cells.get(row - 1).get(column)) != shade) {
                    path.append("M")
                            .append(px(left))
                            .append(' ')
                            .append(px(below))
                            .append("h")
                            .append(px(width));
                }
            }
        }
        out.empty("path", "class", "sl-rim", "d", path.isEmpty() ? "M0 0" : path.toString())
                .line();
    }

    /** Says in how many cells there is a figure, and which is the largest. */
    public String inWords() {
        List<Double> figures = cells.stream()
                .flatMap(List::stream)
                .flatMapToDouble(OptionalDouble::stream)
                .boxed()
                .toList();
        String largest = figures.stream()
                .max(Double::compare)
                .map(value -> "; largest figure " + Text.digits(value) + " " + unit)
                .orElse("");
        return none + " in " + (rows.size() * columns.size() - figures.size()) + " of " + rows.size() * columns.size()
                + " cells" + largest + ".";
    }

    private static String px(double value) {
        return LineChart.px(value);
    }
}
