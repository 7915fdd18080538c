package io.github.stoplag.driver;

import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * A published change of the reaction time by age, distraction, alcohol, drugs or surprise.
 *
 * <p>t = ratio · t₀
 *
 * <p>Studies contradict each other: the same factor stands here with an effect and without one. None is a default; a
 * caller who multiplies by one states which ({@link ReactionDistribution#scaledBy}).
 *
 * <pre>{@code
 * ResponseEffect.published("hand-held-call").timeRatio(); // 1.46
 * }</pre>
 *
 * @param id the name of the row
 * @param factor {@code age}, {@code distraction}, {@code alcohol}, {@code drugs} or {@code surprise}
 * @param situation what was compared
 * @param timeRatio the reaction time over that without the factor; 1 where no significant difference was found
 * @param source who published it
 * @param note what to know before using it, possibly empty
 */
public record ResponseEffect(String id, String factor, String situation, double timeRatio, Source source, String note) {
    private static final Catalogue<ResponseEffect> PUBLISHED = Catalogue.read(
            "response effect", ResponseEffect.class, "response_effects.csv", ResponseEffect::of, ResponseEffect::id);

    /**
     * Refuses nulls.
     *
     * @param id the name of the row
     * @param factor {@code age}, {@code distraction}, {@code alcohol}, {@code drugs} or {@code surprise}
     * @param situation what was compared
     * @param timeRatio the reaction time over that without the factor; 1 where no significant difference was found
     * @param source who published it
     * @param note what to know before using it, possibly empty
     * @throws NullPointerException if one that is required is null
     */
    public ResponseEffect {
        Objects.requireNonNull(factor, "factor");
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(situation, "situation");
        Objects.requireNonNull(source, "source");
    }

    /**
     * Lists all published effects.
     *
     * @return the rows of the table in order
     */
    public static List<ResponseEffect> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a published effect by its row name.
     *
     * @param id the row name, for example {@code texting}
     * @return the effect
     * @throws IllegalArgumentException if no row has this name; the message offers the nearest
     */
    public static ResponseEffect published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
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
