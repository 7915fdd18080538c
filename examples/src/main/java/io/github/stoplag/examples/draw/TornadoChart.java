package io.github.stoplag.examples.draw;

import java.util.Comparator;
import java.util.List;

/**
 * One-at-a-time sensitivities: how far a result moves when one input goes from low to high and the others stay. The
 * widest swing comes first.
 *
 * @param notes lines under the heading, such as what low and high mean
 * @param xLabel the result with its unit
 * @param base the result with every input in its middle
 * @param swings one for each input, in any order
 */
public record TornadoChart(List<String> notes, String xLabel, double base, List<Swing> swings) {
    /**
     * What one input does.
     *
     * @param label the input with its low and high value and unit
     * @param atLow the result at its low value
     * @param atHigh the result at its high value
     */
    public record Swing(String label, double atLow, double atHigh) {
        public double width() {
            return Math.abs(atHigh - atLow);
        }
    }

    /** Makes the picture; the description must give the decisive figures. */
    public Figure figure(String id, String title, String description) {
        List<RowedBars.Row> rows = swings.stream()
                .sorted(Comparator.comparingDouble(Swing::width).reversed())
                .map(this::row)
                .toList();
        return new RowedBars(notes, "input at its low value", "input at its high value", xLabel, base, rows)
                .figure(id, title, description);
    }

    private RowedBars.Row row(Swing swing) {
        RowedBars.Bar low = new RowedBars.Bar(swing.atLow, false, 0);
        RowedBars.Bar high = new RowedBars.Bar(swing.atHigh, true, 0);
        // where both lie on one side the shorter one has to come on top
        boolean lowFirst = Math.abs(swing.atLow - base) >= Math.abs(swing.atHigh - base);
        return new RowedBars.Row(swing.label, List.of(lowFirst ? List.of(low, high) : List.of(high, low)));
    }
}
