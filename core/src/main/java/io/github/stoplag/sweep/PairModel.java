package io.github.stoplag.sweep;

import io.github.stoplag.driver.DriverResponse;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * A leader that brakes and a follower that sees one of several stop lamps: contact, closing speed and smallest gap for
 * each lamp on the same draws.
 *
 * <p>Columns of the plan; the model takes those that are there:
 *
 * <table>
 * <caption>Columns</caption>
 * <tr><th>column</th><th>what</th><th>if absent</th></tr>
 * <tr><td>{@code speed_mps}</td><td>the leader's speed</td><td>needed</td></tr>
 * <tr><td>{@code follower_speed_mps}</td><td>the follower's speed</td><td>the leader's</td></tr>
 * <tr><td>{@code gap_m} or {@code time_gap_s}</td><td>the gap, or gap over the follower's speed</td><td>one
 * needed</td></tr>
 * <tr><td>{@code reaction_s}</td><td>perception-reaction time from the light's detection to the foot on the
 * brake</td><td>needed</td></tr>
 * <tr><td>{@code lamp_latency_<lamp>_s}</td><td>from the lamp's circuit closing to its light being
 * detected</td><td>needed for each lamp</td></tr>
 * <tr><td>{@code follower_decel_mps2}</td><td>the follower's full deceleration</td><td>needed</td></tr>
 * <tr><td>{@code leader_decel_mps2}</td><td>the leader's full deceleration</td><td>the follower's</td></tr>
 * <tr><td>{@code brake_dead_time_s}</td><td>pedal to first deceleration, both</td><td>0</td></tr>
 * <tr><td>{@code brake_build_up_s}</td><td>first to full deceleration, both</td><td>0</td></tr>
 * <tr><td>{@code responds_ratio}</td><td>1 where the follower responds to the lamp, 0 where it never brakes, see
 * {@link #responding}</td><td>1</td></tr>
 * <tr><td>{@code friction_ratio}, {@code grade_ratio}</td><td>the road, which limits both decelerations; uphill
 * positive</td><td>no limit; level</td></tr>
 * </table>
 *
 * <p>Outputs per lamp: {@code contact_<lamp>} (1 or 0), {@code closing_speed_<lamp>_mps} (NaN without contact), {@code
 * smallest_gap_<lamp>_m} (0 on contact), {@code event_time_<lamp>_s}. The leader brakes in every scenario: see
 * {@link #STATEMENT}.
 *
 * <p>Rejected: speeds outside [0, 150] m/s, reaction times and lamp latencies outside [0, 30] s, brake dead and
 * build-up times outside [0, 10] s, time gaps outside [0, 300] s, decelerations outside [0, 200] m/s², gaps outside [0,
 * 1e5] m, values of {@code responds_ratio} other than 0 and 1, friction outside (0, 2], grades outside [−0.5, 0.5], and
 * roads whose friction does not outweigh the downgrade.
 */
public final class PairModel implements Model {
    /** What a contact probability from this model says, and what it does not. */
    public static final String STATEMENT =
            "Conditional probability under the plan's assumptions: the share of the drawn scenarios, in each of which the leader"
                    + " brakes and nobody steers away, that end in contact. It is not a crash rate and no proof of safety.";

    /** The column that says whether the follower responds. */
    static final String RESPONDS = "responds_ratio";

    static final double LARGEST_GAP_M = 1e5;
    static final double LARGEST_TIME_GAP_S = 300;
    static final List<String> NEEDED = List.of("speed_mps", "reaction_s", "follower_decel_mps2");
    static final List<String> OPTIONAL = List.of(
            "follower_speed_mps",
            "leader_decel_mps2",
            "brake_dead_time_s",
            "brake_build_up_s",
            "friction_ratio",
            "grade_ratio",
            "gap_m",
            "time_gap_s",
            RESPONDS);

    private final List<String> lamps;
    private final List<String> inputs;
    private final double respondingRatio;

    private PairModel(List<String> lamps, List<String> inputs, double respondingRatio) {
        this.lamps = lamps;
        this.inputs = inputs;
        this.respondingRatio = respondingRatio;
    }

    /**
     * Makes the model for a plan's columns.
     *
     * @param plan the plan
     * @param lamps the lamps' names as in the columns {@code lamp_latency_<lamp>_s}, at least one
     * @return the model
     * @throws IllegalArgumentException if two lamps have the same name, a needed column is missing, both or neither of
     *     gap and time gap are there, or there is a grade without friction
     */
    public static PairModel of(Plan plan, String... lamps) {
        List<String> needed = new ArrayList<>(NEEDED);
        for (String lamp : lamps) {
            needed.add(latencyColumn(lamp));
        }
        if (Stream.of(lamps).distinct().count() != lamps.length) {
            throw new IllegalArgumentException("lamps must have different names, got " + List.of(lamps));
        }
        List<String> columns = plan.columns();
        boolean oneGap = columns.contains("gap_m") != columns.contains("time_gap_s");
        boolean road = columns.contains("friction_ratio") || !columns.contains("grade_ratio");
        if (lamps.length == 0 || !columns.containsAll(needed) || !oneGap || !road) {
            throw new IllegalArgumentException("a pair needs at least one lamp, the columns " + needed
                    + ", one of gap_m and time_gap_s, and friction_ratio with grade_ratio; got " + columns);
        }
        return new PairModel(
                List.of(lamps),
                Stream.concat(needed.stream(), OPTIONAL.stream().filter(columns::contains))
                        .toList(),
                plan.axes().stream()
                        .filter(axis -> axis.column().equals(RESPONDS))
                        .mapToDouble(PairModel::shareOfOnes)
                        .findFirst()
                        .orElse(1));
    }

    private static double shareOfOnes(Axis axis) {
        return axis.distribution()
                .map(drawn -> 1 - drawn.cdf(0.5))
                .orElseGet(() -> Arrays.stream(axis.levels()).average().orElse(1));
    }

    /**
     * Makes the axis of drivers who respond to the lamp or never do: a study in which some did not is then kept whole.
     * A driver who does not respond never brakes and never steers away, which is the worst a driver can do.
     *
     * @param shareRatio the share of drivers who respond, as in {@link DriverResponse#respondingShare}, [0, 1]
     * @return the axis {@code responds_ratio}, 1 in that share of the scenarios and 0 in the others
     * @throws IllegalArgumentException if the share is out of range
     */
    public static Axis responding(double shareRatio) {
        return Axis.drawn("responds", "ratio", new Distribution.Bernoulli(shareRatio));
    }

    /**
     * Gives the share of drivers who respond.
     *
     * @return the share, 1 if the plan says nothing of it
     */
    public double respondingRatio() {
        return respondingRatio;
    }

    /**
     * Says whose contacts are counted.
     *
     * @return a sentence with the responding share
     */
    public String population() {
        String share = Numbers.text(100 * respondingRatio, 4) + " % of the drivers respond to the lamp";
        if (respondingRatio < 1) {
            return "Only " + share + ", the other " + Numbers.text(100 * (1 - respondingRatio), 4)
                    + " % never brake; all shares are of both together.";
        }
        return inputs.contains(RESPONDS)
                ? share + ", as the plan says."
                : share + ", because the plan says nothing of drivers who do not: all shares are of those who respond.";
    }

    static String latencyColumn(String lamp) {
        return "lamp_latency_" + lamp + "_s";
    }

    static String contactColumn(String lamp) {
        return "contact_" + lamp;
    }

    static String closingColumn(String lamp) {
        return "closing_speed_" + lamp + "_mps";
    }

    static String gapColumn(String lamp) {
        return "smallest_gap_" + lamp + "_m";
    }

    /**
     * Gives the lamps' names.
     *
     * @return the names in order
     */
    public List<String> lamps() {
        return lamps;
    }

    static int lampIndex(List<String> lamps, String name) {
        int index = lamps.indexOf(name);
        if (index < 0) {
            throw new IllegalArgumentException("lamp must be one of " + lamps + ", got " + name);
        }
        return index;
    }

    /**
     * Says in words what the model takes for granted beyond the plan.
     *
     * @return one sentence for each assumption
     */
    public List<String> assumptions() {
        List<String> texts = new ArrayList<>();
        texts.add(STATEMENT);
        texts.add(population());
        if (respondingRatio < 1) {
            texts.add(
                    "A driver who does not respond keeps the speed for good, the worst there is: in a study it may mean only no response"
                            + " within the time that was watched.");
        }
        texts.add("Straight lane, constant deceleration after a linear build-up, constant speed until the brakes act.");
        if (!inputs.contains("follower_speed_mps")) {
            texts.add("Both vehicles have the same speed.");
        }
        if (!inputs.contains("leader_decel_mps2")) {
            texts.add("Both vehicles brake equally hard.");
        }
        if (!inputs.contains("brake_dead_time_s") || !inputs.contains("brake_build_up_s")) {
            texts.add("A brake dead time or build-up that is not in the plan is 0 s.");
        }
        return texts;
    }

    @Override
    public List<String> inputs() {
        return inputs;
    }

    @Override
    public List<String> outputs() {
        return lamps.stream()
                .flatMap(lamp -> Stream.of(
                        contactColumn(lamp), closingColumn(lamp), gapColumn(lamp), "event_time_" + lamp + "_s"))
                .toList();
    }

    @Override
    public Evaluator evaluator() {
        return new PairEvaluator(inputs, lamps.size());
    }
}
