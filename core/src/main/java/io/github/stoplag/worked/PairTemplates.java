package io.github.stoplag.worked;

import io.github.stoplag.worked.Draw.Draft;
import java.util.List;
import java.util.Optional;

/** Exercises on a follower behind a braking leader. */
final class PairTemplates {
    private static final String TOPIC = "following";

    private static final String GAP = " (A gap is from the front of the second to the rear of the first.)";

    private PairTemplates() {}

    static List<ExerciseTemplate> all() {
        return List.of(
                ExerciseTemplate.of("gap-equal", TOPIC, Difficulty.STANDARD, 5, 400, PairTemplates::equal),
                ExerciseTemplate.choosing("gap-leader-harder", TOPIC, Difficulty.STANDARD, 5, 600, d -> gap(d, false)),
                ExerciseTemplate.choosing("gap-while-moving", TOPIC, Difficulty.ADVANCED, 3, 400, d -> gap(d, true)),
                ExerciseTemplate.choosing(
                        "closing-standing", TOPIC, Difficulty.ADVANCED, 4, 120, d -> contact(d, true)),
                ExerciseTemplate.choosing("closing-moving", TOPIC, Difficulty.ADVANCED, 4, 80, d -> contact(d, false)),
                ExerciseTemplate.choosing("smallest-gap", TOPIC, Difficulty.STANDARD, 2, 200, PairTemplates::smallest));
    }

    private static Draft equal(Draw d) {
        Given v = d.speed();
        Given a = d.deceleration();
        Given t = d.reaction();
        double speed = d.speed(v);
        double braking = speed * speed / (2 * d.decel(a));
        Unit length = d.style().units().length();
        return d.draft(
                        "Two cars follow each other at " + v.amount() + " and both brake at " + a.amount()
                                + ", the second " + t.amount() + " after the first. What gap do they need at least?"
                                + GAP,
                        new WorkedPair(v, a, v, a, t).gapNeeded(d.style()))
                .mistake("the speed was not converted", Draw.bare(v) * Draw.bare(t), length)
                .mistake("the follower's whole stopping distance was given", speed * Draw.bare(t) + braking, length)
                .mistake("the braking distance alone was given", braking, length)
                .mistake("half the speed was taken", speed * Draw.bare(t) / 2, length);
    }

    private static String both(Given v, Given al, Given af, Given t) {
        return "Two cars follow each other at " + v.amount() + ". The first brakes at " + al.amount()
                + ", the second at " + af.amount() + " and " + t.amount() + " later.";
    }

    private static Optional<Draft> gap(Draw d, boolean followerHarder) {
        Given v = d.speed();
        Given al = d.deceleration();
        Given af = d.deceleration();
        Given t = d.from("0.5", "2", "0.1", Unit.SECOND);
        double speed = d.speed(v);
        double leader = speed * speed / (2 * d.decel(al));
        double follower = speed * Draw.bare(t) + speed * speed / (2 * d.decel(af));
        // where the follower brakes harder, the speeds must become equal while the leader still moves
        double equalS = d.decel(af) * Draw.bare(t) / (d.decel(af) - d.decel(al));
        if (followerHarder ? !(equalS > 0 && equalS < speed / d.decel(al)) : !(d.decel(af) < d.decel(al))) {
            return Optional.empty();
        }
        Solution solution = new WorkedPair(v, al, v, af, t).gapNeeded(d.style());
        double right = solution.answer().carried().number().doubleValue();
        if (followerHarder && !(right > 1.1 * Math.max(0, follower - leader))) {
            return Optional.empty();
        }
        Unit length = d.style().units().length();
        return Optional.of(d.draft(both(v, al, af, t) + " What gap do they need at least?" + GAP, solution)
                .mistake(
                        followerHarder
                                ? "the stopping distances were subtracted; but the two come closest while both move"
                                : "the reaction was forgotten",
                        followerHarder ? follower - leader : follower - leader - speed * Draw.bare(t),
                        length)
                .mistake("only the distance during the delay was counted", speed * Draw.bare(t), length)
                .mistake("the leader was taken as standing at once", follower, length)
                .mistake("the speed was not converted", Draw.bare(v) * Draw.bare(t), length));
    }

    private static Optional<Draft> contact(Draw d, boolean standing) {
        Given v = d.speed();
        Given al = d.deceleration();
        Given af = d.deceleration();
        Given t = d.from("0.8", "2", "0.1", Unit.SECOND);
        Given g = d.metric() ? d.from("4", "40", "1", Unit.METRE) : d.from("15", "140", "5", Unit.FOOT);
        WorkedPair pair = new WorkedPair(v, al, v, af, t);
        if (!pair.endsInContact(g, standing)) {
            return Optional.empty();
        }
        Solution solution = pair.outcome(d.style(), g);
        double speed = d.speed(v);
        double leader = speed * speed / (2 * d.decel(al));
        double left = Draw.bare(g) + leader - speed * Draw.bare(t);
        double atOnce = closingAtOnce(speed, d.decel(al), d.decel(af), Draw.bare(g));
        double intoStanding = Math.sqrt(speed * speed - 2 * d.decel(af) * left);
        double wall = Math.sqrt(speed * speed - 2 * d.decel(af) * Math.max(0, Draw.bare(g) - speed * Draw.bare(t)));
        Unit unit = d.style().units().speed();
        Unit answered = d.style().units().roadSpeed();
        Draft draft = d.draft(
                both(v, al, af, t) + " The gap is " + g.amount() + " at first. With what closing speed do they touch?"
                        + GAP,
                solution);
        if (!standing) {
            draft.mistake("the leader was taken as standing at the contact", intoStanding, unit);
        }
        double coherent = Amount.of(solution.answer().carried().number().doubleValue(), answered)
                .in(unit);
        return Optional.of(draft.mistake("the reaction was forgotten", atOnce, unit)
                .mistake("the leader was taken as a standing wall from the start", wall, unit)
                .mistake("the speed was not converted to " + answered.symbol(), coherent, answered)
                .mistake(
                        "only deceleration of the leader during the delay was counted",
                        d.decel(al) * Draw.bare(t),
                        unit));
    }

    /**
     * The closing speed where both brake at once from the same speed; NaN, which is no choice, if they do not touch.
     */
    private static double closingAtOnce(double speed, double al, double af, double gap) {
        double leader = speed * speed / (2 * al);
        if (!(speed * speed / (2 * af) - leader > gap)) {
            return Double.NaN;
        }
        double bothMove = Math.sqrt(2 * (al - af) * gap);
        return bothMove / (al - af) <= speed / al ? bothMove : Math.sqrt(speed * speed - 2 * af * (gap + leader));
    }

    private static Optional<Draft> smallest(Draw d) {
        Given v = d.speed();
        Given al = d.deceleration();
        Given af = d.deceleration();
        Given t = d.from("0.5", "1.5", "0.1", Unit.SECOND);
        Given g = d.metric() ? d.from("20", "100", "1", Unit.METRE) : d.from("60", "330", "5", Unit.FOOT);
        double speed = d.speed(v);
        double difference =
                speed * Draw.bare(t) + speed * speed / (2 * d.decel(af)) - speed * speed / (2 * d.decel(al));
        Unit length = d.style().units().length();
        Solution solution = new WorkedPair(v, al, v, af, t).outcome(d.style(), g);
        if (solution.answer().printed().unit() != length) {
            return Optional.empty();
        }
        double needed = Draw.bare(g) - solution.answer().carried().number().doubleValue();
        double atOnce = Draw.bare(g) - Math.max(0, difference - speed * Draw.bare(t));
        return Optional.of(d.draft(
                        both(v, al, af, t) + " The gap is " + g.amount() + " at first. What is the smallest gap?" + GAP,
                        solution)
                .mistake("the reaction was forgotten", atOnce, length)
                .mistake("the gap needed was given instead of the gap left", needed, length)
                // a smallest gap above the gap at first is no choice
                .mistake(
                        "the stopping distances were subtracted without a look at the motion",
                        difference > 0 ? Draw.bare(g) - difference : Double.NaN,
                        length)
                .mistake(
                        "only the distance during the delay was taken off",
                        Draw.bare(g) - speed * Draw.bare(t),
                        length));
    }
}
