package io.github.stoplag.worked;

import io.github.stoplag.worked.Exercise.Choice;

/**
 * What becomes of a student's answer.
 *
 * <p>Right: the printed answer to its last digit or within 0.5 %. Within tolerance: within 2 %, as rounding on the way leads to.
 * Both figures are chosen here, common practice, no source; temperatures are compared in kelvin's size of degree by half a
 * degree and 2 %.
 */
public sealed interface Grading {
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
     * @return the grade
     */
    static Grading of(Exercise exercise, Amount answer) {
        Amount printed = exercise.answer();
        Amount carried = exercise.solution().answer().carried();
        double number = answer.number().doubleValue();
        if (!answer.unit().measuresTheSameAs(printed.unit())) {
            return close(number, carried, 0.02) || close(number, printed, 0.02)
                    ? new WrongUnit(printed.unit())
                    : new Wrong();
        }
        double converted = answer.in(printed.unit());
        if (isRight(converted, printed, carried)) {
            return new Right();
        }
        for (Choice choice : exercise.choices()) {
            if (!choice.isRight() && isRight(converted, choice.amount(), choice.amount())) {
                return new CommonMistake(choice.mistake());
            }
        }
        if (close(converted, carried, 0.02)) {
            return new WithinTolerance(Math.abs(converted / carried.number().doubleValue() - 1));
        }
        return close(number, carried, 0.005) ? new WrongUnit(printed.unit()) : new Wrong();
    }

    private static boolean isRight(double number, Amount printed, Amount carried) {
        double lastDigit = printed.number().ulp().doubleValue();
        return Math.abs(number - printed.number().doubleValue()) <= 1e-9 * lastDigit || close(number, carried, 0.005);
    }

    private static boolean close(double number, Amount amount, double share) {
        double wanted = amount.number().doubleValue();
        return Math.abs(number - wanted) <= share * Math.abs(wanted);
    }
}
