package io.github.stoplag.worked;

import io.github.stoplag.braking.RuleUnits;
import io.github.stoplag.source.Source;
import io.github.stoplag.worked.Draw.Draft;
import io.github.stoplag.worked.WorkedDriver.Uncertain;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** Exercises on published rules, measured runs, drivers and uncertainty. */
final class RuleTemplates {
    private static final String TOPIC = "rules";

    private RuleTemplates() {}

    static List<ExerciseTemplate> all() {
        return List.of(
                ExerciseTemplate.of("aashto-design", TOPIC, Difficulty.STANDARD, 20, 1000, RuleTemplates::aashto),
                ExerciseTemplate.of("highway-code", TOPIC, Difficulty.BASIC, 10, 500, RuleTemplates::highwayCode),
                ExerciseTemplate.of("quadratic-rule", TOPIC, Difficulty.BASIC, 8, 900, RuleTemplates::quadratic),
                ExerciseTemplate.choosing(
                        "mean-fully-developed", TOPIC, Difficulty.ADVANCED, 3, 32, RuleTemplates::mfdd),
                ExerciseTemplate.choosing(
                        "reaction-percentile", "driver", Difficulty.ADVANCED, 0.3, 8, RuleTemplates::percentile),
                ExerciseTemplate.of(
                        "uncertainty-budget", "driver", Difficulty.ADVANCED, 1, 300, RuleTemplates::uncertainty));
    }

    private static Draft aashto(Draw d) {
        Given v = d.metric() ? d.from("20", "130", "10", Unit.KMH) : d.from("15", "80", "5", Unit.MPH);
        double n = Draw.bare(v);
        Unit length = d.style().units().length();
        double reacting = tenths((d.metric() ? 0.278 : 1.47) * n * 2.5);
        double braking = tenths((d.metric() ? 0.039 / 3.4 : 1.075 / 11.2) * n * n);
        String rule = d.metric()
                ? "0.278 V t + 0.039 V²/a metres, with V in km/h, t = 2.5 s and a = 3.4 m/s²"
                : "1.47 V t + 1.075 V²/a feet, with V in mph, t = 2.5 s and a = 11.2 ft/s²";
        return d.draft(
                        "By the AASHTO rule the stopping sight distance on a level road is " + rule
                                + ", each part rounded to 0.1 " + length.symbol()
                                + " and the sum raised to the next multiple of 5 " + length.symbol()
                                + ". What is it for a design speed of " + v.amount() + "?",
                        WorkedRule.aashto(d.style(), v))
                .mistake("the sum was not raised to the next multiple of 5", reacting + braking, length)
                .mistake("the reaction was forgotten", raised(braking), length)
                .mistake("the braking was forgotten", raised(reacting), length)
                .mistake(
                        "the reaction time of 2.5 s was left out of the product",
                        raised(tenths(reacting / 2.5) + braking),
                        length)
                .mistake(
                        "the speed in the braking part was not squared",
                        raised(reacting + tenths(braking / n)),
                        length);
    }

    private static double tenths(double value) {
        return Rounding.nearest("0.1").apply(value).doubleValue();
    }

    private static double raised(double value) {
        return Rounding.up("5").apply(value).doubleValue();
    }

    private static Draft highwayCode(Draw d) {
        Given v = d.from("20", "79", "1", Unit.MPH);
        double n = Draw.bare(v);
        Unit length = d.style().units().length();
        String rounded = d.metric() ? ", each part in whole metres" : ", in whole feet";
        return d.draft(
                        "The UK Highway Code's typical stopping distance is a thinking distance of 1 ft for each mph and"
                                + " a braking distance of V²/20 ft, V in mph. How long is it from "
                                + v.amount() + rounded + "?",
                        WorkedRule.highwayCode(d.style(), v))
                .mistake("the thinking distance was forgotten", part(d, n * n / 20), length)
                .mistake("the braking distance was forgotten", part(d, n), length)
                .mistake("the result in ft was given as m", n + n * n / 20, length)
                .mistake("divided by 10 instead of 20", part(d, n) + part(d, n * n / 10), length);
    }

    /** A part of the rule in whole metres, or unrounded in feet. */
    private static double part(Draw d, double feet) {
        return d.metric() ? Rounding.nearest("1").apply(feet * 0.3048).doubleValue() : feet;
    }

    private static Draft quadratic(Draw d) {
        Given v = d.inKmh() ? d.from("40", "160", "1", Unit.KMH) : d.from("25", "100", "1", Unit.MPH);
        double n = v.in(Unit.KMH);
        double mps = v.in(Unit.MPS);
        Unit length = d.style().units().length();
        Draft draft = d.draft(
                        "A brake test asks for a stop within 0.1 v + 0.0060 v² metres, v in km/h. How far may a car go from "
                                + v.amount() + (d.metric() ? "?" : ", in ft?"),
                        WorkedRule.quadratic(
                                d.style(),
                                "UN R13-H Type-0 test, engine disconnected",
                                RuleUnits.KMH_M,
                                new BigDecimal("0.1"),
                                new BigDecimal("0.0060"),
                                Source.seen("UN Regulation No. 13-H; GB 21670-2008", "annex 3"),
                                v))
                .mistake("the linear part was forgotten", 0.006 * n * n, Unit.METRE)
                .mistake("the speed was put in m/s, but the rule wants km/h", 0.1 * mps + 0.006 * mps * mps, Unit.METRE)
                .mistake("the square was forgotten", 0.1 * n + 0.006 * n, Unit.METRE);
        return d.metric() ? draft : draft.mistake("the result in m was given as ft", 0.1 * n + 0.006 * n * n, length);
    }

    private static Optional<Draft> mfdd(Draw d) {
        Given v = d.inKmh() ? d.from("60", "130", "5", Unit.KMH) : d.from("40", "80", "1", Unit.MPH);
        Unit length = d.style().units().length();
        Given sb = d.metric() ? d.from("8", "35", "1", length) : d.from("25", "115", "5", length);
        Given se = d.metric() ? d.from("25", "110", "1", length) : d.from("80", "360", "5", length);
        double mps = v.in(Unit.MPS);
        double begin = sb.in(Unit.METRE);
        double way = se.in(Unit.METRE) - begin;
        double right = 0.63 * mps * mps / (2 * way);
        // while the brakes build up the car slows less than afterwards, but it does brake by half of that
        double first = 0.36 * mps * mps / (2 * begin);
        if (!(way > 5 && right >= 3 && right <= 9.5 && first <= 0.95 * right && first >= 0.4 * right)) {
            return Optional.empty();
        }
        return Optional.of(d.draft(
                        "In a brake test from " + v.amount() + " the car passes 0.8 of the speed at " + sb.amount()
                                + " and 0.1 of it at " + se.amount()
                                + ", both counted from the first touch of the pedal. What is the mean fully developed"
                                + " deceleration?",
                        WorkedRule.meanFullyDeveloped(d.style(), v, sb, se))
                .mistake("the whole speed was taken down to rest", right / 0.63, Unit.MPS2)
                .mistake(
                        "the distance was counted from the pedal instead of from 0.8 of the speed",
                        right * way / (way + begin),
                        Unit.MPS2)
                .mistake("the speeds were subtracted before squaring", right * 0.49 / 0.63, Unit.MPS2));
    }

    private static Optional<Draft> percentile(Draw d) {
        Given m = d.from("0.8", "2", "0.1", Unit.SECOND);
        Given s = d.from("0.2", "0.9", "0.05", Unit.SECOND);
        Given p = d.from("75", "98", "1", Unit.PERCENT);
        // studies of drivers find standard deviations of a fifth to a half of the mean
        if (!(Draw.bare(s) >= 0.2 * Draw.bare(m) && Draw.bare(s) <= 0.5 * Draw.bare(m))) {
            return Optional.empty();
        }
        Solution solution = WorkedDriver.percentile(d.style(), m, s, p);
        double mean = Draw.bare(m);
        double sd = Draw.bare(s);
        double z = solution.givens().get(2).given().amount().number().doubleValue();
        double sigma = Math.sqrt(Math.log1p(sd * sd / mean / mean));
        return Optional.of(d.draft(
                        "Reaction times are log-normally distributed with mean " + m.amount()
                                + " and standard deviation " + s.amount() + ". Within what time have " + p.amount()
                                + " reacted? (z = " + z + ")",
                        solution)
                .mistake("the median was given", Math.exp(Math.log(mean) - sigma * sigma / 2), Unit.SECOND)
                .mistake("a normal distribution was taken", mean + z * sd, Unit.SECOND)
                .mistake(
                        "standard deviation over mean was taken for that of the logarithm, the mean for the median",
                        mean * Math.exp(z * sd / mean),
                        Unit.SECOND)
                .mistake(
                        "the lower side of the distribution was taken",
                        Math.exp(Math.log(mean) - sigma * sigma / 2 - z * sigma),
                        Unit.SECOND));
    }

    private static Draft uncertainty(Draw d) {
        Given v = d.speed();
        Given t = d.reaction();
        Given a = d.deceleration();
        Given uv = d.from("1", "5", "0.5", d.style().units().roadSpeed());
        Given ut = d.from("0.1", "0.4", "0.05", Unit.SECOND);
        Given ua = d.metric() ? d.from("0.2", "0.8", "0.1", Unit.MPS2) : d.from("1", "3", "0.5", Unit.FTPS2);
        double speed = d.speed(v);
        double decel = d.decel(a);
        double partV = (Draw.bare(t) + speed / decel) * d.speed(uv);
        double partT = speed * Draw.bare(ut);
        double partA = speed * speed / (2 * decel * decel) * d.decel(ua);
        double right = 2 * Math.sqrt(partV * partV + partT * partT + partA * partA);
        Unit length = d.style().units().length();
        return d.draft(
                        "A stopping distance follows from a speed of " + v.amount() + " (standard uncertainty "
                                + uv.amount() + "), a reaction time of " + t.amount() + " (" + ut.amount()
                                + ") and a deceleration of " + a.amount() + " (" + ua.amount()
                                + "), all independent. What is its expanded uncertainty for a coverage factor of 2?",
                        WorkedDriver.uncertainty(
                                d.style(), new Uncertain(v, uv), new Uncertain(t, ut), new Uncertain(a, ua), 2))
                .mistake("the coverage factor was forgotten", right / 2, length)
                .mistake("the parts were added without squaring", 2 * (partV + partT + partA), length)
                .mistake(
                        "the root was taken of the speed's and the time's part alone",
                        2 * Math.hypot(partV, partT),
                        length)
                .mistake("the reaction time was taken as exact", 2 * Math.hypot(partV, partA), length);
    }
}
