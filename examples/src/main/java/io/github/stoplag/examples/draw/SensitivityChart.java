package io.github.stoplag.examples.draw;

import java.util.Comparator;
import java.util.List;

/**
 * Variance-based sensitivities: the share of a result's variance that each input brings alone and with the others. The
 * largest total comes first.
 *
 * @param notes lines under the heading, such as the result whose variance is shared out
 * @param indices one for each input, in any order
 */
public record SensitivityChart(List<String> notes, List<Index> indices) {
    /**
     * The indices of one input, as ratios.
     *
     * @param label the input
     * @param first its first-order index
     * @param firstError half the length of the first-order whisker, such as 1.96 standard errors
     * @param total its total index
     * @param totalError half the length of the total whisker
     */
    public record Index(String label, double first, double firstError, double total, double totalError) {}

    /** Makes the picture; the description must give the decisive figures. */
    public Figure figure(String id, String title, String description) {
        List<RowedBars.Row> rows = indices.stream()
                .sorted(Comparator.comparingDouble(Index::total).reversed())
                .map(SensitivityChart::row)
                .toList();
        String share = "share of the variance (%)";
        return new RowedBars(notes, "alone (first order)", "with all interactions (total)", share, 0, rows)
                .figure(id, title, description);
    }

    private static RowedBars.Row row(Index index) {
        return new RowedBars.Row(
                index.label,
                List.of(
                        List.of(new RowedBars.Bar(100 * index.first, false, 100 * index.firstError)),
                        List.of(new RowedBars.Bar(100 * index.total, true, 100 * index.totalError))));
    }
}
