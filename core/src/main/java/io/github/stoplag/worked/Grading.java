package io.github.stoplag.worked;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.worked.Exercise.Choice;

/**
 * What becomes of a student's answer.
 *
 * <p>Right: within {@link Tolerance#rightRatio} of the unrounded answer, the printed answer itself, or for a temperature within
 * half a degree. Within tolerance: within {@link Tolerance#withinRatio}, as rounding on the way leads to. The limits of {@link
 * Tolerance#ASSUMED} are assumed here; a teacher sets others with {@link Exercise#grade(Amount, Tolerance)}.
 */
public sealed interface Grading {
    /**
     * How near an answer must come.
     *
     * @param rightRatio how far a right answer may be off, as a share of it, in [0, 0.02]
     * @param withinRatio how far an answer within tolerance may be off, in [rightRatio, 0.02]; wrong choices lie 4 % apart, so
     *     that a wider tolerance would take mistakes for right
     */
    record Tolerance(double rightRatio, double withinRatio) {
        /** Half a per cent, as of three significant digits, and two per cent; common practice, no source. */
        public static final Tolerance ASSUMED = new Tolerance(0.005, 0.02);

        private static final double WIDEST = 0.02;

        /**
         * Checks the limits.
         *
         * @param rightRatio how far a right answer may be off, as a share of it, in [0, 0.02]
         * @param withinRatio how far an answer within tolerance may be off, in [rightRatio, 0.02]
         * @throws IllegalArgumentException if a limit is out of range
         */
        public Tolerance {
            Check.inRange("share by which a right answer may be off", rightRatio, 0, WIDEST, "");
            Check.inRange("share by which an answer within tolerance may be off", withinRatio, rightRatio, WIDEST, "");
        }
    }

    /** The answer is right. */
    record Right() implements Grading {}

    /**
     * The answer is right but for rounding.
     *
     * @param offRatio how far it is off, as a share of the right answer
     */
    record WithinTolerance(double offRatio) implements Grading {}

    /**
     * The number is right, its unit is not.
     *
     * @param wanted the unit asked for
     */
    record WrongUnit(Unit wanted) implements Grading {}

    /**
     * The answer is what a common mistake leads to.
     *
     * @param mistake the mistake in words
     */
    record CommonMistake(String mistake) implements Grading {}

    /** The answer is wrong in a way not known here. */
    record Wrong() implements Grading {}

    /**
     * Grades an answer; a unit of the same kind is converted first.
     *
     * @param exercise the exercise
     * @param answer the answer
     * @param tolerance how near it must come
     * @return the grade
     */
    static Grading of(Exercise exercise, Amount answer, Tolerance tolerance) {
        Amount printed = exercise.answer();
        Amount carried = exercise.solution().answer().carried();
        double number = answer.number().doubleValue();
        Grading wrongUnit = new WrongUnit(printed.unit());
        boolean numberFits = close(number, carried, tolerance.withinRatio) || isPrinted(number, printed);
        if (!answer.unit().measuresTheSameAs(printed.unit())) {
            return numberFits ? wrongUnit : new Wrong();
        }
        double converted = answer.in(printed.unit());
        if (isPrinted(converted, printed) || close(converted, carried, tolerance.rightRatio)) {
            return new Right();
        }
        for (Choice choice : exercise.choices()) {
            Amount wrong = choice.amount();
            // a wrong choice is known by its printed digits, which lie up to half a per cent from the unrounded number
            if (!choice.isRight() && (isPrinted(converted, wrong) || close(converted, wrong, 0.005))) {
                return new CommonMistake(choice.mistake());
            }
        }
        if (close(converted, carried, tolerance.withinRatio)) {
            return new WithinTolerance(Math.abs(converted / carried.number().doubleValue() - 1));
        }
        return numberFits ? wrongUnit : new Wrong();
    }

    private static boolean isPrinted(double number, Amount printed) {
        double lastDigit = printed.number().ulp().doubleValue();
        double off = Math.abs(number - printed.number().doubleValue());
        return off <= (printed.unit() == Unit.CELSIUS ? 0.5 : 1e-9 * lastDigit);
    }

    private static boolean close(double number, Amount amount, double share) {
        double wanted = amount.number().doubleValue();
        return Math.abs(number - wanted) <= share * Math.abs(wanted);
    }
}
