package io.github.stoplag.driver;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * A published distribution of the decelerations that drivers choose, before road and brakes cut it.
 *
 * @param id the name of the row
 * @param situation what happened to the drivers
 * @param mean the mean
 * @param standardDeviation the standard deviation
 * @param source who published it
 * @param note what to know before using it, possibly empty
 */
public record DecelerationStudy(
        String id, String situation, Deceleration mean, Deceleration standardDeviation, Source source, String note) {
    private static final Catalogue<DecelerationStudy> PUBLISHED = Catalogue.read(
            "deceleration study",
            DecelerationStudy.class,
            "deceleration_distributions.csv",
            DecelerationStudy::of,
            DecelerationStudy::id);

    /**
     * Refuses nulls.
     *
     * @param id the name of the row
     * @param situation what happened to the drivers
     * @param mean the mean
     * @param standardDeviation the standard deviation
     * @param source who published it
     * @param note what to know before using it, possibly empty
     * @throws NullPointerException if one that is required is null
     */
    public DecelerationStudy {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(situation, "situation");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(standardDeviation, "standardDeviation");
    }

    /**
     * Lists all published distributions.
     *
     * @return the rows of the table in order
     */
    public static List<DecelerationStudy> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a published distribution by its row name.
     *
     * @param id the row name, for example {@code unexpected-1997}
     * @return the distribution
     * @throws IllegalArgumentException if no row has this name; the message offers the nearest
     */
    public static DecelerationStudy published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    private static DecelerationStudy of(Table table, Map<String, String> row) {
        return new DecelerationStudy(
                table.text(row, "id"),
                table.text(row, "situation"),
                Deceleration.standardGravities(table.number(row, "mean_g")),
                Deceleration.standardGravities(table.number(row, "sd_g")),
                table.source(row),
                table.text(row, "note"));
    }

    /**
     * Gives the distribution on a road.
     *
     * @param most the largest deceleration that road and brakes allow
     * @return the distribution cut there
     * @throws IllegalArgumentException if it is 0
     */
    public ChosenDeceleration upTo(Deceleration most) {
        Objects.requireNonNull(most, "most");
        return ChosenDeceleration.ofMeanAndSd(mean, standardDeviation, most, source);
    }
}
