package io.github.stoplag.worked;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.worked.Exercise.Choice;

/**
 * What becomes of a student's answer.
 *
 * <p>Right: within {@link Tolerance#rightRatio} of the unrounded answer, the printed answer itself, or for a
 * temperature within half a degree. Within tolerance: within {@link Tolerance#withinRatio}, as rounding on the way
 * leads to. The limits of {@link Tolerance#ASSUMED} are assumed here; a teacher sets others with
 * {@link Exercise#grade(Amount, Tolerance)}.
 */
public sealed interface Grading {
    /**
     * How near an answer must come.
     *
     * @param rightRatio how far a right answer may be off, as a share of it, in [0, 0.02]
     * @param withinRatio how far an answer within tolerance may be off, in [rightRatio, 0.02]; wrong choices lie 4 %
     *     apart, so that a wider tolerance would take mistakes for right
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
     * The number is right, but no unit stands behind it; whether that counts is the teacher's to say.
     *
     * @param wanted the unit asked for
     */
    record MissingUnit(Unit wanted) implements Grading {}

    /**
     * The answer is what a common mistake leads to.
     *
     * @param mistake the mistake in words
     */
    record CommonMistake(String mistake) implements Grading {}

    /** The answer is wrong in a way not known here. */
    record Wrong() implements Grading {}

    /**
     * Grades an answer; a unit of the same kind is converted first. A number without a unit is taken in the unit asked
     * for. An answer asked for in kelvin is a difference of temperatures, which may be given in degrees as well.
     *
     * @param exercise the exercise
     * @param answer the answer
     * @param tolerance how near it must come
     * @return the grade
     */
    static Grading of(Exercise exercise, Amount answer, Tolerance tolerance) {
        Amount printed = exercise.answer();
        Unit wanted = printed.unit();
        double number = answer.number().doubleValue();
        if (!answer.unit().measuresTheSameAs(wanted)) {
            Grading alone = ofNumber(exercise, number, tolerance);
            boolean fits = alone instanceof Right || alone instanceof WithinTolerance;
            if (answer.unit() == Unit.NONE) {
                return fits ? new MissingUnit(wanted) : alone;
            }
            return fits ? new WrongUnit(wanted) : new Wrong();
        }
        Grading grade = ofNumber(exercise, answer.in(wanted), tolerance);
        if (wanted == Unit.KELVIN && answer.unit() != wanted && !(grade instanceof Right)) {
            double degree = Amount.of(1, answer.unit()).in(wanted)
                    - Amount.of(0, answer.unit()).in(wanted);
            grade = ofNumber(exercise, number * degree, tolerance);
        }
        boolean known = !(grade instanceof Wrong);
        Amount carried = exercise.solution().answer().carried();
        return known || !(close(number, carried, tolerance.withinRatio) || isPrinted(number, printed))
                ? grade
                : answer.unit() == Unit.NONE ? new MissingUnit(wanted) : new WrongUnit(wanted);
    }

    /** Grades a number in the unit asked for. */
    private static Grading ofNumber(Exercise exercise, double number, Tolerance tolerance) {
        Amount carried = exercise.solution().answer().carried();
        if (isPrinted(number, exercise.answer()) || close(number, carried, tolerance.rightRatio)) {
            return new Right();
        }
        for (Choice choice : exercise.choices()) {
            Amount wrong = choice.amount();
            // a wrong choice is known by its printed digits, which lie up to half a per cent from the unrounded number
            if (!choice.isRight() && (isPrinted(number, wrong) || close(number, wrong, 0.005))) {
                return new CommonMistake(choice.mistake());
            }
        }
        return close(number, carried, tolerance.withinRatio)
                ? new WithinTolerance(Math.abs(number / carried.number().doubleValue() - 1))
                : new Wrong();
    }

    private static boolean isPrinted(double number, Amount printed) {
        double lastDigit = printed.number().ulp().doubleValue();
        double off = Math.abs(number - printed.number().doubleValue());
        // degrees of a thermometer are printed whole; kelvin here are differences, which are not
        boolean degrees = printed.unit().measuresTheSameAs(Unit.KELVIN) && printed.unit() != Unit.KELVIN;
        return off <= (degrees ? 0.5 : 1e-9 * lastDigit);
    }

    private static boolean close(double number, Amount amount, double share) {
        double wanted = amount.number().doubleValue();
        return Math.abs(number - wanted) <= share * Math.abs(wanted);
    }
}
