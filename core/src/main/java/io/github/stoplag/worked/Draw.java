package io.github.stoplag.worked;

import io.github.stoplag.worked.Exercise.AlsoRight;
import io.github.stoplag.worked.Exercise.Choice;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** One drawing of an exercise: round numbers by chance, and the conditions under which they make a fair question. */
final class Draw {
    private static final double APART = 0.04;
    private static final double APART_STEPPED = 0.006;
    // a choice far smaller or larger than the rest gives itself away
    private static final double SMALLEST_RATIO = 0.05;
    private static final double LARGEST_RATIO = 15;
    private static final int MOST_MISTAKES = 4;

    // java.util.Random: its sequence is fixed by its specification, so that a seed means the same sheet on every
    // release
    private final Random random;
    private final Style style;

    Draw(long seed, UnitSystem units) {
        this.random = new Random(seed);
        this.style = Style.in(units)
                .withGravity(
                        units.isMetric()
                                ? Given.of(9.81, Unit.MPS2, "standard gravity, rounded")
                                : Given.of(32.2, Unit.FTPS2, "standard gravity, rounded"));
    }

    Style style() {
        return style;
    }

    boolean metric() {
        return style.units().isMetric();
    }

    /** Whether road speeds are in km/h: in the United Kingdom they are not, though its lengths are metric. */
    boolean inKmh() {
        return style.units().roadSpeed() == Unit.KMH;
    }

    /** A round number from lo to hi. */
    Given from(String lo, String hi, String step, Unit unit) {
        BigDecimal low = new BigDecimal(lo);
        BigDecimal width = new BigDecimal(step);
        int steps = new BigDecimal(hi).subtract(low).divide(width).intValueExact();
        return Given.of(
                low.add(width.multiply(BigDecimal.valueOf(random.nextInt(steps + 1))))
                        .doubleValue(),
                unit);
    }

    /** One of several numbers, for values that come in series. */
    Given oneOf(Unit unit, double... numbers) {
        return Given.of(numbers[random.nextInt(numbers.length)], unit);
    }

    Given speed() {
        return inKmh() ? from("40", "130", "5", Unit.KMH) : from("25", "80", "1", Unit.MPH);
    }

    Given deceleration() {
        return metric() ? from("4", "9", "0.1", Unit.MPS2) : from("13", "29", "0.5", Unit.FTPS2);
    }

    Given reaction() {
        return from("0.7", "2.5", "0.1", Unit.SECOND);
    }

    Given friction() {
        return from("0.3", "0.9", "0.05", Unit.NONE);
    }

    /** A number in the unit in which the solution calculates with speeds. */
    double speed(Given given) {
        return given.in(style.units().speed());
    }

    double decel(Given given) {
        return given.in(style.units().deceleration());
    }

    Draft draft(String question, Solution solution) {
        return new Draft(question, solution);
    }

    /** The bare number, as one who forgets the unit uses it. */
    static double bare(Given given) {
        return given.amount().number().doubleValue();
    }

    /** An exercise before it is known to be fair. */
    final class Draft {
        private final String question;
        private final Solution solution;
        private final List<Choice> mistakes = new ArrayList<>();
        private final List<AlsoRight> alsoRight = new ArrayList<>();

        private Draft(String question, Solution solution) {
            this.question = question;
            this.solution = solution;
        }

        /** The right answer before it is rounded for print. */
        Amount answer() {
            return solution.answer().carried();
        }

        /** Accepts the answer of another formula in use, in the coherent unit or the unit of the answer. */
        Draft alsoRight(String remark, double number, Unit unit) {
            Amount printed = solution.answer().printed();
            BigDecimal value =
                    solution.answer().rounding().apply(Amount.of(number, unit).in(printed.unit()));
            if (value.compareTo(printed.number()) != 0) {
                alsoRight.add(new AlsoRight(new Amount(value, printed.unit()), remark));
            }
            return this;
        }

        /** Adds a wrong answer in the coherent unit or the unit of the answer, unless it is no plausible one. */
        Draft mistake(String text, double number, Unit unit) {
            if (!(Math.abs(number) <= Double.MAX_VALUE)) {
                return this;
            }
            Unit wanted = solution.answer().printed().unit();
            double value = Amount.of(number, unit).in(wanted);
            // printed like the right answer, which must not stand out
            Amount rounded = new Amount(solution.answer().rounding().apply(value), wanted);
            double printed = rounded.number().doubleValue();
            Amount right = solution.answer().printed();
            // whole degrees or metres can print alike, or nearly so, what lies apart
            double ratio = printed / right.number().doubleValue();
            boolean plausible = ratio >= SMALLEST_RATIO
                    && ratio <= LARGEST_RATIO
                    && apart(value, solution.answer().carried())
                    && apart(printed, right);
            for (AlsoRight other : alsoRight) {
                plausible &= apart(value, other.amount()) && apart(printed, other.amount());
            }
            for (Choice other : mistakes) {
                plausible &= apart(value, other.amount()) && apart(printed, other.amount());
            }
            if (plausible && mistakes.size() < MOST_MISTAKES) {
                mistakes.add(new Choice(rounded, text));
            }
            return this;
        }

        /**
         * Makes the exercise if its answer lies in a range and passes its checks, and at least two mistakes differ from
         * it.
         */
        Optional<Exercise> within(String template, Difficulty difficulty, double lo, double hi) {
            double answer = solution.answer().carried().number().doubleValue();
            boolean checked = solution.checks().stream().allMatch(Solution.Verification::agrees);
            // whoever rounds the last step gets the printed answer, or the question is drawn again
            boolean clean = solution.answer().carriesEnough();
            if (!(answer >= lo && answer <= hi) || mistakes.size() < 2 || !checked || !clean) {
                return Optional.empty();
            }
            List<Choice> choices = new ArrayList<>(mistakes);
            choices.add(new Choice(solution.answer().printed(), ""));
            Collections.shuffle(choices, random);
            return Optional.of(new Exercise(template, difficulty, question, solution, choices, alsoRight));
        }

        private boolean apart(double value, Amount other) {
            double number = other.number().doubleValue();
            // an answer in steps is exact, so that a choice next to it is a fair one
            double share = Exercise.isStepped(solution) ? APART_STEPPED : APART;
            return Math.abs(value - number) > share * Math.max(Math.abs(value), Math.abs(number));
        }
    }
}
