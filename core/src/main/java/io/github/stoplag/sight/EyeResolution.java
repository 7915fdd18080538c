package io.github.stoplag.sight;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import java.util.List;
import java.util.Objects;

/**
 * How close two lamps must stand, as seen, for their lights to count as one.
 *
 * <p>Within the angle they merge and their intensities add, as light within the area that the eye sums does (Riccò's
 * law); beyond it each is seen on its own. Between the two lies a range no source gives a law for: lamps somewhat
 * further apart still help each other a little. The published angles stand in {@code eye_resolution.csv}.
 *
 * @param id what it is called
 * @param arcMinutes the angle, (0, 600] minutes of arc
 * @param source where it comes from
 */
public record EyeResolution(String id, double arcMinutes, Source source) implements Evident {
    private static final Catalogue<EyeResolution> PUBLISHED = Catalogue.read(
            "resolution of the eye",
            EyeResolution.class,
            "eye_resolution.csv",
            (table, row) ->
                    new EyeResolution(table.text(row, "id"), table.number(row, "arc_minutes"), table.source(row)),
            EyeResolution::id);

    /** The usual measure of a healthy eye: 1 minute of arc. */
    public static final EyeResolution NORMAL = published("point-discrimination");

    /**
     * Checks the range.
     *
     * @param id what it is called
     * @param arcMinutes the angle, (0, 600] minutes of arc
     * @param source where it comes from
     * @throws IllegalArgumentException if it is out of range
     */
    public EyeResolution {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(source, "source");
        Check.above("resolution of the eye", arcMinutes, 0, 600, "minutes of arc");
    }

    /** {@return the published angles} */
    public static List<EyeResolution> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a published angle.
     *
     * @param id its name, for example {@code point-discrimination}
     * @return the resolution
     * @throws IllegalArgumentException if there is none; the message offers the nearest
     */
    public static EyeResolution published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    /**
     * Says whether two lamps merge.
     *
     * @param apart how far they stand apart
     * @param distance how far the eye is
     * @return true if the angle between them is not above the resolution
     */
    boolean merges(double apart, Distance distance) {
        return Math.toDegrees(Math.atan2(apart, distance.inMetres())) * 60 <= arcMinutes;
    }

    @Override
    public Evidence evidence() {
        return Evidence.of("lamps merge within " + this, source);
    }

    @Override
    public String toString() {
        return Numbers.text(arcMinutes) + " minutes of arc";
    }
}
