package io.github.stoplag.following;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A published rule or law on the gap to keep, such as the two-second rule or half the speedometer.
 *
 * <pre>
 *   TIME:              d = t v
 *   HALF_SPEEDOMETER:  d [m] = p · v [km/h] / 2, a time gap of 1.8 s · p
 *   DISTANCE:          d
 * </pre>
 *
 * <p>t time gap [s], p share of half the speedometer reading, v speed. The gap is from the leader's rear to the
 * follower's front. Rules are advice or the borders of offences, as each row says; none is legal advice, local law goes
 * first.
 *
 * <pre>{@code
 * HeadwayRule.twoSecond().minimumGap(Speed.kmh(90)).orElseThrow(); // 50 m
 * HeadwayRule.halfSpeedometer().minimumGap(Speed.kmh(100)).orElseThrow(); // 50 m
 * }</pre>
 *
 * @param id the name of the row, unique in the table
 * @param rule who is to keep it, and when
 * @param kind how the gap grows with speed
 * @param amount t in s, p as a ratio, or d in m
 * @param above the speed above which it applies
 * @param source who published it
 * @param note what to know before using it, possibly empty
 */
public record HeadwayRule(String id, String rule, Kind kind, double amount, Speed above, Source source, String note)
        implements Evident {
    private static final Catalogue<HeadwayRule> PUBLISHED =
            Catalogue.read("headway rule", HeadwayRule.class, "headway_rules.csv", HeadwayRule::read, HeadwayRule::id);

    /** How the gap grows with speed. */
    public enum Kind {
        /** A time gap in s. */
        TIME,
        /** A share of half the speedometer reading in km/h, taken as metres. */
        HALF_SPEEDOMETER,
        /** A distance in m. */
        DISTANCE
    }

    /**
     * Checks the amount.
     *
     * @param id the name of the row, unique in the table
     * @param rule who is to keep it, and when
     * @param kind how the gap grows with speed
     * @param amount t in s, p as a ratio, or d in m
     * @param above the speed above which it applies
     * @param source who published it
     * @param note what to know before using it, possibly empty
     * @throws IllegalArgumentException if the amount is not in (0, 1000]
     */
    public HeadwayRule {
        Objects.requireNonNull(above, "above");
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(rule, "rule");
        Objects.requireNonNull(source, "source");
        Check.above("amount of headway rule " + id, amount, 0, 1000, "");
    }

    @Override
    public Evidence evidence() {
        Evidence published = Evidence.of(rule, source);
        return note.isEmpty() ? published : published.with(Evidence.of(note));
    }

    /**
     * Lists the published rules.
     *
     * @return the rows of the table in order
     */
    public static List<HeadwayRule> published() {
        return PUBLISHED.list();
    }

    private static HeadwayRule read(Table table, Map<String, String> row) {
        return new HeadwayRule(
                table.text(row, "id"),
                table.text(row, "rule"),
                Kind.valueOf(table.text(row, "kind").toUpperCase(Locale.ROOT)),
                table.number(row, "amount"),
                Speed.kmh(table.number(row, "above_kmh")),
                table.source(row),
                table.text(row, "note"));
    }

    /**
     * Finds a published rule by its name.
     *
     * @param id the name, for example {@code gb-two-second}
     * @return the rule
     * @throws IllegalArgumentException if there is no such rule; the message offers the nearest
     */
    public static HeadwayRule published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    /**
     * Gives the two-second rule of the British Highway Code.
     *
     * @return the rule {@code gb-two-second}
     */
    public static HeadwayRule twoSecond() {
        return published("gb-two-second");
    }

    /**
     * Gives the German rule of half the speedometer.
     *
     * @return the rule {@code de-half-speedometer}
     */
    public static HeadwayRule halfSpeedometer() {
        return published("de-half-speedometer");
    }

    /**
     * Gives the gap to keep.
     *
     * @param speed the speed of the vehicle behind
     * @return the gap, or nothing at a speed the rule does not apply to
     */
    public Optional<Distance> minimumGap(Speed speed) {
        if (speed.compareTo(above) <= 0 && above.inMps() > 0) {
            return Optional.empty();
        }
        return Optional.of(Distance.metres(
                switch (kind) {
                    case TIME -> amount * speed.inMps();
                    case HALF_SPEEDOMETER -> amount * 0.5 * speed.inKmh();
                    case DISTANCE -> amount;
                }));
    }

    @Override
    public String toString() {
        String what = switch (kind) {
            case TIME -> Numbers.text(amount) + " s";
            case HALF_SPEEDOMETER -> Numbers.text(amount) + " of half the speedometer";
            case DISTANCE -> Numbers.text(amount) + " m";
        };
        return rule + ": " + what + (above.inMps() > 0 ? " above " + Numbers.text(above.inKmh()) + " km/h" : "") + ", "
                + source;
    }
}
