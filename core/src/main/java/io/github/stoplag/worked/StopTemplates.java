package io.github.stoplag.worked;

import io.github.stoplag.worked.Draw.Draft;
import java.util.List;
import java.util.Optional;

/** Exercises on one vehicle. */
final class StopTemplates {
    private static final String TOPIC = "stopping";
    private static final String GRADE = " Take the deceleration as g (μ + G)/√(1 + G²), with G below 0 on a downgrade.";
    private static final String SMALL_ANGLE =
            "by g (μ + G), without the root of 1 + G²: in common use, and as good on the grades of roads";
    private static final String UNITS = "the speed was not converted";

    private StopTemplates() {}

    static List<ExerciseTemplate> all() {
        return List.of(
                ExerciseTemplate.of("reaction-distance", TOPIC, Difficulty.BASIC, 5, 400, StopTemplates::reaction),
                ExerciseTemplate.of("braking-distance", TOPIC, Difficulty.BASIC, 5, 500, StopTemplates::braking),
                ExerciseTemplate.of("braking-time", TOPIC, Difficulty.BASIC, 1, 12, StopTemplates::time),
                ExerciseTemplate.choosing(
                        "deceleration-from-distance", TOPIC, Difficulty.BASIC, 2, 32, d -> mean(d, true)),
                ExerciseTemplate.choosing(
                        "deceleration-from-time", TOPIC, Difficulty.BASIC, 2, 32, d -> mean(d, false)),
                ExerciseTemplate.of("stopping-distance", TOPIC, Difficulty.STANDARD, 15, 900, StopTemplates::stopping),
                ExerciseTemplate.of("stopping-build-up", TOPIC, Difficulty.ADVANCED, 15, 900, StopTemplates::buildUp),
                ExerciseTemplate.of("stopping-friction", TOPIC, Difficulty.STANDARD, 15, 900, d -> road(d, false)),
                ExerciseTemplate.of("stopping-downgrade", TOPIC, Difficulty.ADVANCED, 15, 1200, d -> road(d, true)),
                ExerciseTemplate.of("skid-speed", TOPIC, Difficulty.STANDARD, 15, 130, d -> skid(d, false)),
                ExerciseTemplate.of("skid-speed-grade", TOPIC, Difficulty.ADVANCED, 15, 130, d -> skid(d, true)),
                ExerciseTemplate.of("lamp-lag", "lamp", Difficulty.BASIC, 0.5, 60, StopTemplates::lag));
    }

    private static Draft reaction(Draw d) {
        Given v = d.speed();
        Given t = d.reaction();
        Unit length = d.style().units().length();
        return d.draft(
                        "A car goes at " + v.amount() + ". Its driver reacts after " + t.amount()
                                + ". How far does the car go in that time?",
                        WorkedStop.reactionDistance(d.style(), v, t))
                .mistake(UNITS, Draw.bare(v) * t.in(Unit.SECOND), length)
                .mistake("divided by the time instead of multiplied", d.speed(v) / t.in(Unit.SECOND), length)
                .mistake("one second was taken whatever the driver does", d.speed(v), length)
                .mistake(
                        "half the speed was taken, as if the car were braking already",
                        d.speed(v) * t.in(Unit.SECOND) / 2,
                        length);
    }

    private static Draft braking(Draw d) {
        Given v = d.speed();
        Given a = d.deceleration();
        double mps = d.speed(v);
        Unit length = d.style().units().length();
        return d.draft(
                        "A car brakes from " + v.amount() + " at " + a.amount() + ". How long is the braking distance?",
                        WorkedStop.brakingDistance(d.style(), v, a))
                .mistake(UNITS, Draw.bare(v) * Draw.bare(v) / (2 * d.decel(a)), length)
                .mistake("the factor 2 is missing", mps * mps / d.decel(a), length)
                .mistake("the speed was not squared", mps / (2 * d.decel(a)), length)
                .mistake(
                        "a reaction time of one second was added, but only the braking was asked for",
                        mps * mps / (2 * d.decel(a)) + mps,
                        length);
    }

    private static Draft time(Draw d) {
        Given v = d.speed();
        Given a = d.deceleration();
        return d.draft(
                        "A car brakes from " + v.amount() + " to rest at " + a.amount() + ". How long does that take?",
                        WorkedBraking.brakingTime(d.style(), v, a))
                .mistake(UNITS, Draw.bare(v) / d.decel(a), Unit.SECOND)
                .mistake(
                        "the mean speed was taken instead of the full change",
                        d.speed(v) / (2 * d.decel(a)),
                        Unit.SECOND)
                .mistake("the root of the quotient was taken", Math.sqrt(2 * d.speed(v) / d.decel(a)), Unit.SECOND);
    }

    private static Optional<Draft> mean(Draw d, boolean byDistance) {
        Draft draft = byDistance ? meanOverDistance(d) : meanOverTime(d);
        // what the tyres of a car can do
        double mps2 = draft.answer().in(Unit.MPS2);
        return mps2 >= 2 && mps2 <= 9.5 ? Optional.of(draft) : Optional.empty();
    }

    private static Draft meanOverDistance(Draw d) {
        Given v = d.speed();
        double speed = d.speed(v);
        Unit unit = d.style().units().deceleration();
        Given s = d.metric() ? d.from("10", "120", "2", Unit.METRE) : d.from("40", "400", "5", Unit.FOOT);
        double length = Draw.bare(s);
        return d.draft(
                        "A car comes to rest from " + v.amount() + " within a braking distance of " + s.amount()
                                + ". What is its mean deceleration over this distance?",
                        WorkedBraking.decelerationFromDistance(d.style(), v, s))
                .mistake(UNITS, Draw.bare(v) * Draw.bare(v) / (2 * length), unit)
                .mistake("the factor 2 is missing", speed * speed / length, unit)
                .mistake("the speed was not squared", speed / (2 * length), unit)
                .mistake("multiplied by 2 instead of divided", 2 * speed * speed / length, unit);
    }

    private static Draft meanOverTime(Draw d) {
        Given v = d.speed();
        double speed = d.speed(v);
        Unit unit = d.style().units().deceleration();
        Given t = d.from("2", "8", "0.1", Unit.SECOND);
        return d.draft(
                        "A car comes to rest from " + v.amount() + " within " + t.amount()
                                + " of braking. What is its mean deceleration over this time?",
                        WorkedBraking.decelerationFromTime(d.style(), v, t))
                .mistake(UNITS, Draw.bare(v) / Draw.bare(t), unit)
                .mistake("the mean speed was taken instead of the full change", speed / (2 * Draw.bare(t)), unit)
                .mistake("divided by the square of the time", speed / Math.pow(Draw.bare(t), 2), unit);
    }

    private static Draft stopping(Draw d) {
        Given v = d.speed();
        Given t = d.reaction();
        Given a = d.deceleration();
        double braking = d.speed(v) * d.speed(v) / (2 * d.decel(a));
        double reacting = d.speed(v) * t.in(Unit.SECOND);
        Unit length = d.style().units().length();
        return d.draft(
                        "A driver at " + v.amount() + " reacts after " + t.amount() + " and then brakes at "
                                + a.amount() + ". How long is the stopping distance?",
                        WorkedStop.stoppingDistance(d.style(), v, t, a))
                .mistake("the reaction was forgotten", braking, length)
                .mistake("the braking was forgotten", reacting, length)
                .mistake("the factor 2 is missing in the braking distance", reacting + 2 * braking, length)
                .mistake(
                        UNITS,
                        Draw.bare(v) * t.in(Unit.SECOND) + Draw.bare(v) * Draw.bare(v) / (2 * d.decel(a)),
                        length);
    }

    private static Draft buildUp(Draw d) {
        Given v = d.speed();
        Given t = d.reaction();
        Given a = d.deceleration();
        Given tb = d.from("0.3", "0.8", "0.1", Unit.SECOND);
        double speed = d.speed(v);
        double instant = speed * t.in(Unit.SECOND) + speed * speed / (2 * d.decel(a));
        double late = speed * tb.in(Unit.SECOND);
        double small = d.decel(a) * Math.pow(tb.in(Unit.SECOND), 2) / 24;
        Unit length = d.style().units().length();
        return d.draft(
                        "A driver at " + v.amount() + " reacts after " + t.amount()
                                + ". The deceleration then rises evenly to "
                                + a.amount() + " within " + tb.amount()
                                + " and stays there. How long is the stopping distance?",
                        WorkedStop.stoppingDistance(d.style(), v, t, tb, a))
                .mistake("the reaction was forgotten", instant - speed * t.in(Unit.SECOND) + late / 2 - small, length)
                .mistake("the build-up was forgotten", instant, length)
                .mistake("the build-up was taken as time without any braking", instant + late, length)
                .mistake(
                        UNITS,
                        Draw.bare(v) * (t.in(Unit.SECOND) + tb.in(Unit.SECOND) / 2)
                                + Draw.bare(v) * Draw.bare(v) / (2 * d.decel(a))
                                - small,
                        length);
    }

    private static Draft road(Draw d, boolean graded) {
        Given v = d.speed();
        Given t = d.reaction();
        Given mu = d.friction();
        Given grade = graded ? d.from("-9", "-3", "1", Unit.PERCENT) : Given.of(0, Unit.PERCENT);
        double speed = d.speed(v);
        double g = d.decel(d.style().gravity());
        double slope = grade.in(Unit.NONE);
        double reacting = speed * t.in(Unit.SECOND);
        double braking = speed * speed / (2 * g * (Draw.bare(mu) + slope));
        Unit length = d.style().units().length();
        String where = graded ? " on a downgrade of " + grade.amount().number().abs() + " %" : " on the level";
        Draft draft = d.draft(
                "A driver at " + v.amount() + where + " reacts after " + t.amount()
                        + " and then brakes with the full friction of the road, coefficient " + mu.amount()
                        + ". How long is the stopping distance?" + (graded ? GRADE : "") + " (g = "
                        + d.style().gravity().amount() + ")",
                WorkedStop.stoppingOnRoad(d.style(), v, t, mu, grade));
        if (graded) {
            draft.alsoRight(SMALL_ANGLE, reacting + braking, length)
                    .mistake("the grade was forgotten", reacting + speed * speed / (2 * g * Draw.bare(mu)), length)
                    .mistake(
                            "the downgrade was added to the friction instead of taken from it",
                            reacting + speed * speed / (2 * g * (Draw.bare(mu) - slope)),
                            length);
        }
        return draft.mistake("the reaction was forgotten", braking, length)
                .mistake("the braking was forgotten", reacting, length)
                .mistake("the factor 2 is missing in the braking distance", reacting + 2 * braking, length)
                .mistake("the friction was forgotten", reacting + speed * speed / (2 * g * (1 + slope)), length);
    }

    private static Draft skid(Draw d, boolean graded) {
        Given s = d.metric() ? d.from("8", "80", "1", Unit.METRE) : d.from("25", "250", "5", Unit.FOOT);
        Given mu = d.friction();
        Given grade = graded ? d.from("-8", "-2", "1", Unit.PERCENT) : Given.of(0, Unit.PERCENT);
        double g = d.decel(d.style().gravity());
        double slope = grade.in(Unit.NONE);
        double right = Math.sqrt(2 * g * (Draw.bare(mu) + slope) * Draw.bare(s));
        Unit unit = d.style().units().speed();
        Unit answered = d.style().units().roadSpeed();
        String where = graded ? " on a downgrade of " + grade.amount().number().abs() + " %" : " on a level road";
        Draft draft = d.draft(
                "A car left straight marks of " + s.amount() + " with all wheels locked" + where
                        + " and came to rest at their end. The friction coefficient is " + mu.amount()
                        + ". How fast was it at the first mark?" + (graded ? GRADE : "") + " (g = "
                        + d.style().gravity().amount() + ")",
                WorkedStop.skidSpeed(d.style(), s, mu, grade));
        if (graded) {
            draft.alsoRight(SMALL_ANGLE, right, unit)
                    .mistake("the grade was forgotten", Math.sqrt(2 * g * Draw.bare(mu) * Draw.bare(s)), unit)
                    .mistake(
                            "the downgrade was added to the friction instead of taken from it",
                            Math.sqrt(2 * g * (Draw.bare(mu) - slope) * Draw.bare(s)),
                            unit);
        }
        return draft.mistake("the speed was not converted to " + answered.symbol(), right, answered)
                .mistake("the factor 2 is missing", right / Math.sqrt(2), unit)
                .mistake("the friction was forgotten", Math.sqrt(2 * g * Draw.bare(s)), unit);
    }

    private static Draft lag(Draw d) {
        Given v = d.speed();
        Given t = d.reaction();
        Given lag = d.from("100", "300", "10", Unit.MILLISECOND);
        double lagS = lag.in(Unit.SECOND);
        Unit length = d.style().units().length();
        return d.draft(
                        "A driver at " + v.amount() + " reacts " + t.amount()
                                + " after the stop lamp ahead can be seen. A filament lamp can be seen " + lag.amount()
                                + " later than a lamp that lights at once. How much longer is the reaction distance?",
                        WorkedStop.lampLagDistance(d.style(), v, t, lag))
                .mistake(UNITS, Draw.bare(v) * lagS, length)
                .mistake("the whole reaction distance was given", d.speed(v) * (t.in(Unit.SECOND) + lagS), length)
                .mistake("half the speed was taken, as if the car were braking already", d.speed(v) * lagS / 2, length)
                .mistake(
                        "the reaction distance was given instead of what the lag adds",
                        d.speed(v) * t.in(Unit.SECOND),
                        length);
    }
}
