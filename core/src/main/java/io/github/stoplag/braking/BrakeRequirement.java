package io.github.stoplag.braking;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A published minimum performance of brakes: a least mean deceleration, a longest stopping distance, or both.
 *
 * <p>A measured stop that meets the figures is no approval: the regulation also sets load, road, pedal force,
 * temperature and order of the tests. Check with the authority or the test service.
 *
 * <pre>{@code
 * double[] timeS = {0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4};
 * double[] speedMps = {28, 24.5, 21, 17.5, 14, 10.5, 7, 3.5, 0};
 * RecordedStop stop = RecordedStop.ofTimes(timeS, speedMps, Speed.mps(0.01));
 * BrakeRequirement.published("un-r13h-type0").check(stop).met(); // true
 * }</pre>
 *
 * @param id the name of the row
 * @param what vehicle and test
 * @param minimum the least mean fully developed deceleration, if the source sets one
 * @param limit the longest stopping distance, if the source sets one
 * @param oneSuffices true if the source is content with either; false if it demands all it sets
 * @param source who published it
 * @param note what to know before using it, possibly empty
 */
public record BrakeRequirement(
        String id,
        String what,
        Optional<Deceleration> minimum,
        Optional<Limit> limit,
        boolean oneSuffices,
        Source source,
        String note) {
    private static final Catalogue<BrakeRequirement> PUBLISHED = Catalogue.read(
            "brake requirement",
            BrakeRequirement.class,
            "brake_requirements.csv",
            BrakeRequirement::of,
            BrakeRequirement::id);
    private static final double LEAST_SHARE_OF_TEST_SPEED = 0.98;
    private static final double MOST_SHARE_OF_TEST_SPEED = 1.02;

    /**
     * Refuses nulls.
     *
     * @param id the name of the row
     * @param what vehicle and test
     * @param minimum the least mean fully developed deceleration, if the source sets one
     * @param limit the longest stopping distance, if the source sets one
     * @param oneSuffices true if the source is content with either; false if it demands all it sets
     * @param source who published it
     * @param note what to know before using it, possibly empty
     * @throws NullPointerException if one that is required is null
     */
    public BrakeRequirement {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(minimum, "minimum");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(what, "what");
    }

    /**
     * A longest stopping distance.
     *
     * @param from the prescribed speed
     * @param distance the distance from there to rest
     */
    public record Limit(Speed from, Distance distance) {

        /**
         * Refuses nulls.
         *
         * @param from the prescribed speed
         * @param distance the distance from there to rest
         * @throws NullPointerException if one that is required is null
         */
        public Limit {
            Objects.requireNonNull(distance, "distance");
            Objects.requireNonNull(from, "from");
        }
    }

    /**
     * One comparison.
     *
     * @param text what was compared, with both values
     * @param met true if the measured value is good enough
     */
    public record Finding(String text, boolean met) {

        /**
         * Refuses nulls.
         *
         * @param text what was compared, with both values
         * @param met true if the measured value is good enough
         * @throws NullPointerException if one that is required is null
         */
        public Finding {
            Objects.requireNonNull(text, "text");
        }
    }

    /**
     * A measured stop against a requirement.
     *
     * @param requirement the requirement
     * @param met true if it is met as far as the figures go
     * @param findings the comparisons
     * @param caveats what weakens them
     */
    public record Verdict(BrakeRequirement requirement, boolean met, List<Finding> findings, List<Caveat> caveats)
            implements Evident {
        /**
         * Copies the lists.
         *
         * @param requirement the requirement
         * @param met true if it is met as far as the figures go
         * @param findings the comparisons
         * @param caveats what weakens them
         */
        public Verdict {
            Objects.requireNonNull(requirement, "requirement");
            findings = Check.copyOf("findings", findings);
            caveats = Check.copyOf("caveats", caveats);
        }

        @Override
        public Evidence evidence() {
            return Evidence.of("requirement " + requirement.id(), requirement.source())
                    .withCaveats(caveats);
        }
    }

    /**
     * Lists the published requirements.
     *
     * @return the rows of the table in order
     */
    public static List<BrakeRequirement> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a published requirement.
     *
     * @param id the name of the row, for example {@code un-r13h-type0}
     * @return the requirement
     * @throws IllegalArgumentException if no row has this name; the message offers the nearest
     */
    public static BrakeRequirement published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    /**
     * Checks a recorded stop.
     *
     * <p>A stop from another speed than the prescribed one is compared with the limit scaled by (v/v_p)², which leaves
     * the lag out; a caveat says so below 0.98 of the prescribed speed (UN R13-H's margin, from memory) and above 1.02
     * of it (our choice, the same margin upwards).
     *
     * @param stop the recorded stop
     * @return whether it meets the requirement
     * @throws IllegalArgumentException if the recording ends too early for what the requirement asks
     */
    public Verdict check(RecordedStop stop) {
        List<Finding> findings = new ArrayList<>();
        List<Caveat> caveats = new ArrayList<>();
        minimum.ifPresent(least -> {
            MeanDeceleration mean = stop.meanFullyDevelopedDeceleration();
            caveats.addAll(mean.caveats());
            findings.add(new Finding(
                    "mean fully developed deceleration " + mean.deceleration() + ", at least " + least,
                    mean.deceleration().compareTo(least) >= 0));
        });
        limit.ifPresent(longest -> {
            findings.add(against(longest, stop));
            if (stop.initialSpeed().inMps()
                    < LEAST_SHARE_OF_TEST_SPEED * longest.from().inMps()) {
                caveats.add(new Caveat(
                        "initial speed " + stop.initialSpeed() + " is below 98 % of the prescribed " + longest.from()));
            }
            if (stop.initialSpeed().inMps()
                    > MOST_SHARE_OF_TEST_SPEED * longest.from().inMps()) {
                caveats.add(new Caveat(
                        "initial speed " + stop.initialSpeed() + " is above 102 % of the prescribed " + longest.from()
                                + ": the limit is scaled by v², which allows more than a rule with a term in v"));
            }
        });
        boolean met = oneSuffices
                ? findings.stream().anyMatch(Finding::met)
                : findings.stream().allMatch(Finding::met);
        return new Verdict(this, met, findings, caveats);
    }

    private static Finding against(Limit longest, RecordedStop stop) {
        Distance measured = stop.stoppingDistance()
                .orElseThrow(() -> new IllegalArgumentException(
                        "recording must run to rest for a stopping distance, it ends while the vehicle moves"));
        double ratio = stop.initialSpeed().inMps() / longest.from().inMps();
        Distance allowed = Distance.metres(longest.distance().inMetres() * ratio * ratio);
        return new Finding(
                "stopping distance " + measured + " from " + stop.initialSpeed() + ", at most " + allowed + " (limit "
                        + longest.distance() + " from " + longest.from() + ")",
                measured.compareTo(allowed) <= 0);
    }

    private static BrakeRequirement of(Table table, Map<String, String> row) {
        String minimum = table.text(row, "minimum_deceleration");
        String limit = table.text(row, "limit");
        return new BrakeRequirement(
                table.text(row, "id"),
                table.text(row, "what"),
                minimum.isEmpty()
                        ? Optional.empty()
                        : Optional.of(RuleTables.deceleration(
                                table.number(row, "minimum_deceleration"), table.text(row, "deceleration_unit"))),
                limit.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new Limit(
                                RuleTables.speed(table.number(row, "from_speed"), table.text(row, "speed_unit")),
                                RuleTables.distance(table.number(row, "limit"), table.text(row, "limit_unit")))),
                table.text(row, "demand").equals("either"),
                table.source(row),
                table.text(row, "note"));
    }
}
