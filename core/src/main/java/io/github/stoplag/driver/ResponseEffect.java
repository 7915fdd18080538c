package io.github.stoplag.driver;

import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;

/**
 * A published change of the reaction time by age, distraction, alcohol, drugs or surprise.
 *
 * <p>t = ratio · t₀
 *
 * <p>Studies contradict each other: the same factor stands here with an effect and without one. None is a default; a
 * caller who multiplies by one states which ({@link ReactionDistribution#scaledBy}).
 *
 * @param id the name of the row
 * @param factor {@code age}, {@code distraction}, {@code alcohol}, {@code drugs} or {@code surprise}
 * @param situation what was compared
 * @param timeRatio the reaction time over that without the factor; 1 where no significant difference was found
 * @param source who published it
 * @param note what to know before using it, possibly empty
 */
public record ResponseEffect(String id, String factor, String situation, double timeRatio, Source source, String note) {

    /**
     * Lists all published effects.
     *
     * @return the rows of the table in order
     */
    public static List<ResponseEffect> published() {
        Table table = Table.read(ResponseEffect.class, "response_effects.csv");
        return table.rows().stream().map(row -> of(table, row)).toList();
    }

    /**
     * Finds a published effect by its row name.
     *
     * @param id the row name, for example {@code texting}
     * @return the effect
     * @throws IllegalArgumentException if no row has this name
     */
    public static ResponseEffect published(String id) {
        return published().stream()
                .filter(effect -> effect.id.equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("response effect must be one of "
                        + published().stream().map(ResponseEffect::id).toList() + ", got \"" + id + "\""));
    }

    private static ResponseEffect of(Table table, Map<String, String> row) {
        return new ResponseEffect(
                table.text(row, "id"),
                table.text(row, "factor"),
                table.text(row, "situation"),
                table.number(row, "time_ratio"),
                table.source(row),
                table.text(row, "note"));
    }
}
