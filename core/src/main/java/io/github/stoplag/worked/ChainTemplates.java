package io.github.stoplag.worked;

import io.github.stoplag.worked.Draw.Draft;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** Exercises on a chain of vehicles whose drivers each see only the lamp ahead. */
final class ChainTemplates {
    private static final String TOPIC = "chain";
    private static final String NO_LATENCY = "the latency of the lamps was forgotten";
    private static final List<String> COUNTS = List.of("Three", "Four", "Five", "Six");

    private ChainTemplates() {}

    static List<ExerciseTemplate> all() {
        return List.of(
                ExerciseTemplate.of("chain-pedal", TOPIC, Difficulty.STANDARD, 1, 25, ChainTemplates::pedal),
                ExerciseTemplate.of("chain-gap", TOPIC, Difficulty.STANDARD, 5, 400, ChainTemplates::gap),
                ExerciseTemplate.choosing(
                        "chain-tightest", TOPIC, Difficulty.ADVANCED, 1, 120, ChainTemplates::tightest));
    }

    private static Given latency(Draw d) {
        return d.from("50", "300", "10", Unit.MILLISECOND);
    }

    private static WorkedChain equal(Given v, Given a, Given r, Given latency, int vehicles) {
        Given none = Given.of(0, Unit.METRE);
        return new WorkedChain(v, Collections.nCopies(vehicles, new WorkedChain.Vehicle(a, r, latency, none)));
    }

    private static Draft pedal(Draw d) {
        Given r = d.reaction();
        Given latency = latency(d);
        int n = (int) Draw.bare(d.from("3", "6", "1", Unit.NONE));
        double each = Draw.bare(r) + latency.in(Unit.SECOND);
        WorkedChain chain = equal(Given.of(50, Unit.KMH), Given.of(6, Unit.MPS2), r, latency, n);
        return d.draft(
                        COUNTS.get(n - 3)
                                + " cars follow each other. Each driver sees only the stop lamp of the car ahead, which can be seen "
                                + latency.amount() + " after its pedal is pressed, and reacts " + r.amount()
                                + " after that. How long after the first driver does the last one press the pedal?",
                        chain.pedalTime(d.style(), n))
                .mistake("the cars were counted instead of the steps between them", n * each, Unit.SECOND)
                .mistake(NO_LATENCY, (n - 1) * Draw.bare(r), Unit.SECOND)
                .mistake(
                        "the latency was counted once instead of at every lamp",
                        (n - 1) * Draw.bare(r) + latency.in(Unit.SECOND),
                        Unit.SECOND)
                .mistake("only the last driver was looked at", each, Unit.SECOND);
    }

    private static Draft gap(Draw d) {
        Given v = d.speed();
        Given a = d.deceleration();
        Given r = d.reaction();
        Given latency = latency(d);
        int n = (int) Draw.bare(d.from("3", "6", "1", Unit.NONE));
        double speed = d.speed(v);
        double each = Draw.bare(r) + latency.in(Unit.SECOND);
        Unit length = d.style().units().length();
        return d.draft(
                        COUNTS.get(n - 3) + " cars follow each other at " + v.amount() + " and all brake at "
                                + a.amount()
                                + ". Each driver sees only the stop lamp of the car ahead, which can be seen "
                                + latency.amount() + " after its pedal is pressed, and reacts " + r.amount()
                                + " after that. What gap does the last car need at least, from its front to the rear of the car"
                                + " ahead?",
                        equal(v, a, r, latency, n).gapNeeded(d.style(), n))
                .mistake(
                        "the delay since the first car was taken, but only that behind the car ahead counts",
                        speed * (n - 1) * each,
                        length)
                .mistake("the latency of the lamp was forgotten", speed * Draw.bare(r), length)
                .mistake("the speed was not converted", Draw.bare(v) * each, length)
                .mistake(
                        "the whole stopping distance was given",
                        speed * each + speed * speed / (2 * d.decel(a)),
                        length);
    }

    private static Optional<Draft> tightest(Draw d) {
        Given v = d.speed();
        Given r = d.from("0.6", "1.5", "0.1", Unit.SECOND);
        Given latency = latency(d);
        Given[] a = {d.deceleration(), d.deceleration(), d.deceleration()};
        Given[] g = {gapAhead(d), gapAhead(d)};
        WorkedChain chain = new WorkedChain(
                v,
                List.of(
                        new WorkedChain.Vehicle(a[0], r, latency, Given.of(0, Unit.METRE)),
                        new WorkedChain.Vehicle(a[1], r, latency, g[0]),
                        new WorkedChain.Vehicle(a[2], r, latency, g[1])));
        Solution solution = chain.tightest(d.style());
        double right = solution.answer().carried().number().doubleValue();
        double first = left(solution, "r_2");
        double second = left(solution, "r_3");
        if (!(right > 0) || g[0].equals(g[1])) {
            return Optional.empty();
        }
        double speed = d.speed(v);
        double drives = speed * (Draw.bare(r) + latency.in(Unit.SECOND));
        Unit length = d.style().units().length();
        Draft draft = d.draft(
                        "Three cars follow each other at " + v.amount() + " with gaps, each from front to rear, of "
                                + g[0].amount() + " and "
                                + g[1].amount() + ". They brake at " + a[0].amount() + ", " + a[1].amount() + " and "
                                + a[2].amount() + " in order from the front. Each driver sees only the lamp ahead, "
                                + latency.amount() + " after its pedal is pressed, and reacts " + r.amount()
                                + " later. How small does the smallest gap get?",
                        solution)
                .mistake("the other gap was taken, but it stays larger", Math.max(first, second), length)
                .mistake("all were taken to brake alike", Math.min(Draw.bare(g[0]), Draw.bare(g[1])) - drives, length)
                .mistake("the smaller gap at first was given", Math.min(Draw.bare(g[0]), Draw.bare(g[1])), length);
        return Optional.of(draft.mistake(NO_LATENCY, tightestWithout(d, chain), length));
    }

    /** The smallest gap where the lamps can be seen at once. */
    private static double tightestWithout(Draw d, WorkedChain chain) {
        List<WorkedChain.Vehicle> vehicles = chain.vehicles().stream()
                .map(each -> new WorkedChain.Vehicle(
                        each.deceleration(), each.reaction(), Given.of(0, Unit.MILLISECOND), each.gap()))
                .toList();
        return new WorkedChain(chain.speed(), vehicles)
                .tightest(d.style())
                .answer()
                .carried()
                .number()
                .doubleValue();
    }

    private static Given gapAhead(Draw d) {
        return d.metric() ? d.from("20", "90", "1", Unit.METRE) : d.from("60", "300", "5", Unit.FOOT);
    }

    private static double left(Solution solution, String symbol) {
        return solution.steps().stream()
                .filter(step -> step.symbol().equals(Expression.Symbol.of(symbol)))
                .findFirst()
                .orElseThrow()
                .result()
                .number()
                .doubleValue();
    }
}
