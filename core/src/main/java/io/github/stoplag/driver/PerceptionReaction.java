package io.github.stoplag.driver;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * A perception-reaction time as the sum of its parts, or as the constant of a norm.
 *
 * <p>t = Σ tᵢ, for example perceive + decide + move the foot
 *
 * <p>tᵢ in s, each [0, 30] s. A constant stands for one driver, the design driver of its norm; it says nothing about
 * the spread. Use a {@link ReactionStudy} for that.
 *
 * <pre>{@code
 * PerceptionReaction.of(TimeSpan.seconds(0.3), TimeSpan.seconds(0.4), TimeSpan.seconds(0.2),
 *         Source.assumed("invented example")).total(); // 0.9 s
 * }</pre>
 *
 * @param name the name of the norm or the set of parts, for example {@code AASHTO}
 * @param parts the parts in their order, at least one
 */
public record PerceptionReaction(String name, List<Part> parts) {
    private static final Catalogue<PerceptionReaction> PUBLISHED =
            Catalogue.of("perception-reaction set", read(), PerceptionReaction::name);

    /**
     * One part of the time.
     *
     * @param name what the driver does in it
     * @param time how long it takes
     * @param source who says so
     */
    public record Part(String name, TimeSpan time, Source source) {
        /**
         * Checks the time.
         *
         * @param name what the driver does in it
         * @param time how long it takes
         * @param source who says so
         * @throws IllegalArgumentException if it is not in [0, 30] s
         */
        public Part {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(source, "source");
            Ranges.REACTION.check("time to " + name, time.inSeconds());
        }
    }

    /**
     * Copies the parts.
     *
     * @param name the name of the norm or the set of parts
     * @param parts the parts in their order, at least one
     * @throws IllegalArgumentException if there is none
     */
    public PerceptionReaction {
        Objects.requireNonNull(name, "name");
        parts = Check.copyOf("parts", parts);
        if (parts.isEmpty()) {
            throw new IllegalArgumentException("a perception-reaction time needs at least one part, got none");
        }
    }

    /**
     * Makes the time from three parts of the caller's own.
     *
     * @param perceive the time to perceive the signal
     * @param decide the time to decide to brake
     * @param moveFoot the time to move the foot to the pedal
     * @param source where the figures come from
     * @return the time in parts
     * @throws IllegalArgumentException if a part is not in [0, 30] s
     */
    public static PerceptionReaction of(TimeSpan perceive, TimeSpan decide, TimeSpan moveFoot, Source source) {
        Objects.requireNonNull(decide, "decide");
        Objects.requireNonNull(moveFoot, "moveFoot");
        Objects.requireNonNull(perceive, "perceive");
        Objects.requireNonNull(source, "source");
        return new PerceptionReaction(
                "perceive, decide, move the foot",
                List.of(
                        new Part("perceive", perceive, source),
                        new Part("decide", decide, source),
                        new Part("move the foot", moveFoot, source)));
    }

    /**
     * Finds a published norm or set of parts.
     *
     * @param set its name, for example {@code AASHTO} (2.5 s)
     * @return the time in parts
     * @throws IllegalArgumentException if there is no such set; the message offers the nearest
     */
    public static PerceptionReaction published(String set) {
        Objects.requireNonNull(set, "set");
        return PUBLISHED.get(set);
    }

    /**
     * Lists the published norms and sets of parts.
     *
     * @return all of them, in the order of the table
     */
    public static List<PerceptionReaction> published() {
        return PUBLISHED.list();
    }

    private static List<PerceptionReaction> read() {
        Table table = Table.read(PerceptionReaction.class, "reaction_parts.csv");
        return table.groups("set").entrySet().stream()
                .map(set -> new PerceptionReaction(
                        set.getKey(),
                        set.getValue().stream().map(row -> part(table, row)).toList()))
                .toList();
    }

    private static Part part(Table table, Map<String, String> row) {
        return new Part(table.text(row, "part"), TimeSpan.seconds(table.number(row, "seconds")), table.source(row));
    }

    /**
     * Gives the whole time.
     *
     * @return the sum of the parts
     */
    public TimeSpan total() {
        return TimeSpan.seconds(
                parts.stream().mapToDouble(part -> part.time().inSeconds()).sum());
    }
}
