package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.driver.DriverResponse;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * A leader that brakes and a follower that sees one of several stop lamps: contact, closing speed and smallest gap for
 * each lamp on the same draws.
 *
 * <p>Columns of the plan: {@link PairColumn}; the model takes those that are there. Outputs per lamp:
 * {@link PairOutput}. The leader brakes in every scenario: see {@link #STATEMENT}.
 *
 * <p>Rejected: values outside the range of their {@link PairColumn}, values of {@code responds_ratio} other than 0 and
 * 1, and roads whose friction does not outweigh the downgrade.
 */
public final class PairModel implements Model {
    /** What a contact probability from this model says, and what it does not. */
    public static final String STATEMENT =
            "Conditional probability under the plan's assumptions: the share of the drawn scenarios, in each of which"
                    + " the leader brakes and nobody steers away, that end in contact. It is not a crash rate and no proof"
                    + " of safety.";

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
        Objects.requireNonNull(lamps, "lamps");
        List<String> names = List.of(lamps);
        if (names.stream().distinct().count() != lamps.length) {
            throw new IllegalArgumentException("lamps must have different names, got " + names);
        }
        List<String> needed = Stream.of(PairColumn.values())
                .filter(column -> column.isNeeded() || column == PairColumn.LATENCY)
                .flatMap(column -> column.columns(names).stream())
                .toList();
        List<String> columns = plan.columns();
        boolean oneGap = columns.contains(PairColumn.GAP.column()) != columns.contains(PairColumn.TIME_GAP.column());
        boolean road = columns.contains(PairColumn.FRICTION.column()) || !columns.contains(PairColumn.GRADE.column());
        if (lamps.length == 0 || !columns.containsAll(needed) || !oneGap || !road) {
            throw new IllegalArgumentException("a pair needs at least one lamp, the columns " + needed
                    + ", one of gap_m and time_gap_s, and friction_ratio with grade_ratio; got " + columns);
        }
        return new PairModel(
                names,
                PairColumn.taken(names, columns),
                plan.axes().stream()
                        .filter(axis -> axis.column().equals(PairColumn.RESPONDS.column()))
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
        return PairColumn.RESPONDS.drawn(new Distribution.Bernoulli(shareRatio));
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
        return inputs.contains(PairColumn.RESPONDS.column())
                ? share + ", as the plan says."
                : share + ", because the plan says nothing of drivers who do not: all shares are of those who respond.";
    }

    /**
     * Gives the lamps' names.
     *
     * @return the names in order
     */
    public List<String> lamps() {
        return lamps;
    }

    /**
     * Gives the lamp that the others are compared with.
     *
     * @return the first
     */
    public String reference() {
        return lamps.get(0);
    }

    /**
     * Gives the lamps that are compared with the first.
     *
     * @return all others in order, possibly none
     */
    public List<String> others() {
        return lamps.subList(1, lamps.size());
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
            texts.add("A driver who does not respond keeps the speed for good, the worst there is: in a study it may"
                    + " mean only no response within the time that was watched.");
        }
        texts.add("Straight lane, constant deceleration after a linear build-up, constant speed until the brakes act.");
        if (!inputs.contains(PairColumn.FOLLOWER_SPEED.column())) {
            texts.add("Both vehicles have the same speed.");
        }
        if (!inputs.contains(PairColumn.LEADER_DECEL.column())) {
            texts.add("Both vehicles brake equally hard.");
        }
        if (!inputs.contains(PairColumn.DEAD_TIME.column()) || !inputs.contains(PairColumn.BUILD_UP.column())) {
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
                .flatMap(lamp -> Stream.of(PairOutput.values()).map(output -> output.column(lamp)))
                .toList();
    }

    @Override
    public Evaluator evaluator() {
        return new PairEvaluator(inputs, lamps);
    }
}
