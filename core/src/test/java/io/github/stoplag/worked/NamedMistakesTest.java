package io.github.stoplag.worked;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.worked.Exercise.Choice;
import java.util.HashMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/**
 * Wrong choices recomputed from the givens of the question alone: motions stepped through in small steps of time, rules
 * written out again. What a mistake says is what its number must come from.
 */
class NamedMistakesTest {
    // the rarest, a contact with a standing leader that no reaction prevents, is offered once in 70 drawings
    private static final int SEEDS = 600;
    private static final double STEP_S = 1e-4;
    private static final String REACTION = "the reaction was forgotten";

    /** The motion of two vehicles: the closing speed at contact, or NaN, and the smallest gap. */
    private record Motion(double closingMps, double smallestM) {}

    private static double si(Exercise exercise, String symbol) {
        Amount amount = exercise.solution().givens().stream()
                .filter(line -> line.symbol().equals(Expression.Symbol.of(symbol)))
                .findFirst()
                .orElseThrow()
                .given()
                .amount();
        return switch (amount.unit().symbol()) {
            case "km/h", "mph", "m/s", "ft/s" -> amount.in(Unit.MPS);
            case "m/s²", "ft/s²" -> amount.in(Unit.MPS2);
            case "m", "ft" -> amount.in(Unit.METRE);
            case "s", "ms" -> amount.in(Unit.SECOND);
            default -> amount.number().doubleValue();
        };
    }

    private static Motion motion(Exercise e, double delayS, double gapM) {
        double leader = si(e, "v_L");
        double follower = si(e, "v_F");
        double leaderDecel = si(e, "a_L");
        double followerDecel = si(e, "a_F");
        double gap = gapM;
        double smallest = gapM;
        for (double t = 0; follower > 0; t += STEP_S) {
            double leaderThen = Math.max(0, leader - leaderDecel * STEP_S);
            double followerThen = t + STEP_S / 2 < delayS ? follower : Math.max(0, follower - followerDecel * STEP_S);
            gap += (leader + leaderThen - follower - followerThen) / 2 * STEP_S;
            leader = leaderThen;
            follower = followerThen;
            smallest = Math.min(smallest, gap);
            if (gap < 0) {
                return new Motion(follower - leader, gap);
            }
        }
        return new Motion(Double.NaN, smallest);
    }

    /** The gap with which a motion just avoids contact. */
    private static double gapNeeded(Exercise e, double delayS) {
        return 1000 - motion(e, delayS, 1000).smallestM();
    }

    private static void check(String template, Unit unit, Map<String, ToDoubleFunction<Exercise>> mistakes) {
        Map<String, Integer> met = new HashMap<>();
        for (int seed = 0; seed < SEEDS; seed++) {
            Exercise exercise = draw(template, seed);
            for (Choice choice : exercise.choices()) {
                ToDoubleFunction<Exercise> recomputed = mistakes.get(choice.mistake());
                if (recomputed == null) {
                    continue;
                }
                double wanted = recomputed.applyAsDouble(exercise);
                double printed = choice.amount().in(unit);
                double lastDigit = new Amount(
                                choice.amount().number().ulp(), choice.amount().unit())
                        .in(unit);
                assertThat(printed)
                        .as("%s: %s instead of %s %s", exercise.question(), choice, wanted, unit)
                        .isBetween(
                                wanted - 0.52 * lastDigit - 2e-3 * wanted, wanted + 0.52 * lastDigit + 2e-3 * wanted);
                met.merge(choice.mistake(), 1, Integer::sum);
            }
        }
        assertThat(met).as("mistakes met in " + template).containsOnlyKeys(mistakes.keySet());
    }

    private static Exercise draw(String id, int seed) {
        return ExerciseTemplate.all().stream()
                .filter(template -> template.id().equals(id))
                .findFirst()
                .orElseThrow()
                .draw(seed, seed % 2 == 0 ? UnitSystem.METRIC : UnitSystem.US_CUSTOMARY);
    }

    @Test
    void smallestGap() {
        check(
                "smallest-gap",
                Unit.METRE,
                Map.of(
                        REACTION,
                        e -> motion(e, 0, si(e, "g")).smallestM(),
                        "the gap needed was given instead of the gap left",
                        e -> gapNeeded(e, si(e, "T")),
                        "only the distance during the delay was taken off",
                        e -> si(e, "g") - si(e, "v_F") * si(e, "T")));
        for (int seed = 0; seed < 500; seed++) {
            Exercise exercise = draw("smallest-gap", seed);
            double atFirst = si(exercise, "g");
            assertThat(exercise.choices())
                    .as(exercise.question())
                    .allMatch(choice -> choice.amount().in(Unit.METRE) <= atFirst * 1.005);
        }
    }

    @Test
    void gapNeeded() {
        check("gap-leader-harder", Unit.METRE, Map.of(REACTION, e -> gapNeeded(e, 0)));
        for (int seed = 0; seed < 500; seed++) {
            Exercise exercise = draw("gap-leader-harder", seed);
            assertThat(si(exercise, "a_F")).as(exercise.question()).isLessThan(si(exercise, "a_L"));
        }
    }

    @Test
    void closingSpeed() {
        check(
                "closing-standing",
                Unit.MPS,
                Map.of(REACTION, e -> motion(e, 0, si(e, "g")).closingMps()));
        check(
                "closing-moving",
                Unit.MPS,
                Map.of(
                        REACTION,
                        e -> motion(e, 0, si(e, "g")).closingMps(),
                        "only deceleration of the leader during the delay was counted",
                        e -> si(e, "a_L") * si(e, "T")));
    }

    @Test
    void stoppingWithBuildUp() {
        check("stopping-build-up", Unit.METRE, Map.of(REACTION, e -> {
            double way = 0;
            double speed = si(e, "v");
            double full = si(e, "a");
            double rise = si(e, "t_b");
            for (double t = 0; speed > 0; t += STEP_S) {
                double decel = full * Math.min(1, (t + STEP_S / 2) / rise);
                way += speed * STEP_S - decel * STEP_S * STEP_S / 2;
                speed -= decel * STEP_S;
            }
            return way;
        }));
    }

    @Test
    void highwayCode() {
        check(
                "highway-code",
                Unit.METRE,
                Map.of(
                        "divided by 10 instead of 20", e -> highwayCode(e, 1, 10),
                        "the thinking distance was forgotten", e -> highwayCode(e, 0, 20)));
    }

    private static double highwayCode(Exercise e, int thinking, double divisor) {
        double v = si(e, "V") / 0.44704;
        return e.solution().units() == UnitSystem.METRIC
                ? thinking * Math.round(v * 0.3048) + Math.round(v * v / divisor * 0.3048)
                : (thinking * v + v * v / divisor) * 0.3048;
    }

    @Test
    void designSightDistance() {
        check(
                "aashto-design",
                Unit.METRE,
                Map.of(
                        "the sum was not raised to the next multiple of 5",
                        e -> aashto(e, 1, 1, 1),
                        REACTION,
                        e -> aashto(e, 0, 1, 5),
                        "the braking was forgotten",
                        e -> aashto(e, 1, 0, 5)));
    }

    private static double aashto(Exercise e, int reacting, int braking, double step) {
        boolean metric = e.solution().units() == UnitSystem.METRIC;
        double v = metric ? si(e, "V") * 3.6 : si(e, "V") / 0.44704;
        double whole =
                reacting * (metric ? 0.278 : 1.47) * v * 2.5 + braking * (metric ? 0.039 / 3.4 : 1.075 / 11.2) * v * v;
        return (step > 1 ? step * Math.ceil(whole / step) : whole) * (metric ? 1 : 0.3048);
    }
}
