package io.github.stoplag.road;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/**
 * A road surface with the range of friction that one source gives for it.
 *
 * <p>Published figures differ by a factor of two for what reads like the same road; that is why every surface carries a
 * range and a source, and why the same material stands here from several sources. Measure the road in question where it
 * matters.
 *
 * @param id the name of the row
 * @param material the surface in words, with the speed range where the source gives one
 * @param condition what lies on it
 * @param kind whether the figure is a peak or a sliding value
 * @param low the lowest friction coefficient μ the source gives
 * @param high the highest
 * @param source who published it
 * @param note what to know before using it, possibly empty
 */
public record Surface(
        String id,
        String material,
        Condition condition,
        Kind kind,
        FrictionCoefficient low,
        FrictionCoefficient high,
        Source source,
        String note) {
    private static final Catalogue<Surface> PUBLISHED =
            Catalogue.read("surface", Surface.class, "surfaces.csv", Surface::of, Surface::id);

    /** What lies on the surface. */
    public enum Condition {
        /** Dry and clean. */
        DRY,
        /** Wet, without a continuous water film. */
        WET,
        /** Loose: gravel, earth. */
        LOOSE,
        /** Covered with snow. */
        SNOW,
        /** Covered with ice. */
        ICE
    }

    /** Which point of the slip curve a figure describes. */
    public enum Kind {
        /** The largest friction while the wheel still turns, as anti-lock brakes seek it. */
        PEAK,
        /** The friction of locked wheels. */
        SLIDING,
        /** The source does not say. */
        UNSTATED
    }

    /**
     * Checks the order of the range.
     *
     * @param id the name of the row
     * @param material the surface in words, with the speed range where the source gives one
     * @param condition what lies on it
     * @param kind whether the figure is a peak or a sliding value
     * @param low the lowest friction coefficient μ the source gives
     * @param high the highest
     * @param source who published it
     * @param note what to know before using it, possibly empty
     * @throws IllegalArgumentException if low exceeds high
     */
    public Surface {
        Objects.requireNonNull(high, "high");
        Objects.requireNonNull(low, "low");
        Objects.requireNonNull(condition, "condition");
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(material, "material");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(source, "source");
        if (low.compareTo(high) > 0) {
            throw new IllegalArgumentException(
                    "friction range of " + material + " must have low <= high, got " + low + " and " + high);
        }
    }

    /**
     * Lists all published surfaces.
     *
     * @return the rows of the table in order
     */
    public static List<Surface> published() {
        return PUBLISHED.list();
    }

    private static Surface of(Table table, Map<String, String> row) {
        return new Surface(
                table.text(row, "id"),
                table.text(row, "material"),
                Condition.valueOf(table.text(row, "condition").toUpperCase(Locale.ROOT)),
                Kind.valueOf(table.text(row, "kind").toUpperCase(Locale.ROOT)),
                FrictionCoefficient.of(table.number(row, "low")),
                FrictionCoefficient.of(table.number(row, "high")),
                table.source(row),
                table.text(row, "note"));
    }

    /**
     * Finds a published surface by its row name.
     *
     * @param id the row name, for example {@code ice-1994}
     * @return the surface
     * @throws IllegalArgumentException if no row has this name; the message offers the nearest
     */
    public static Surface published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    /**
     * Lists the published surfaces in one condition, so that their spread can be seen.
     *
     * @param condition what lies on the surface
     * @return the rows in order
     */
    public static List<Surface> published(Condition condition) {
        Objects.requireNonNull(condition, "condition");
        return PUBLISHED.list(surface -> surface.condition == condition);
    }

    /**
     * Gives a friction coefficient inside the range.
     *
     * <p>μ = low + x (high − low)
     *
     * @param share the place x in the range, 0 for the low end to 1 for the high end
     * @return the friction coefficient with its source and the range it was taken from
     * @throws IllegalArgumentException if the share is not in [0, 1]
     */
    public SourcedFriction friction(double share) {
        Check.inRange("share of the friction range", share, 0, 1, "");
        double ratio = low.inRatio() + share * (high.inRatio() - low.inRatio());
        List<Caveat> caveats = new ArrayList<>();
        caveats.add(new Caveat("friction " + Numbers.text(ratio) + " of " + material + ", "
                + condition.name().toLowerCase(Locale.ROOT) + ", is taken from a published range " + low + " to "
                + high));
        if (source.standing() != Standing.SEEN) {
            caveats.add(new Caveat("the friction range of " + material + " is known " + source.standing()));
        }
        return new SourcedFriction(FrictionCoefficient.of(ratio), source, caveats);
    }
}
