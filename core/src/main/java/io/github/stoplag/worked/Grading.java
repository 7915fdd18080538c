package io.github.stoplag.worked;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.worked.Exercise.Choice;
import java.math.BigDecimal;
import java.util.Objects;

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
     * The answer is the right one rounded rightly to fewer digits than asked for.
     *
     * @param digits the significant digits it has
     * @param near true if it still lies within the tolerance and so counts
     */
    record Rounded(int digits, boolean near) implements Grading {}

    /**
     * The answer is that of another formula in use.
     *
     * @param remark which one
     */
    record OtherFormula(String remark) implements Grading {

        /**
         * Refuses nulls.
         *
         * @param remark which one
         * @throws NullPointerException if one that is required is null
         */
        public OtherFormula {
            Objects.requireNonNull(remark, "remark");
        }
    }

    /**
     * Says whether the answer counts as right.
     *
     * @return true if it does; a missing unit is the teacher's to judge and does not
     */
    default boolean countsAsRight() {
        return this instanceof Right
                || this instanceof WithinTolerance
                || this instanceof OtherFormula
                || (this instanceof Rounded rounded && rounded.near);
    }

    /**
     * The number is right, its unit is not.
     *
     * @param wanted the unit asked for
     */
    record WrongUnit(Unit wanted) implements Grading {

        /**
         * Refuses nulls.
         *
         * @param wanted the unit asked for
         * @throws NullPointerException if one that is required is null
         */
        public WrongUnit {
            Objects.requireNonNull(wanted, "wanted");
        }
    }

    /**
     * The number is right, but no unit stands behind it; whether that counts is the teacher's to say.
     *
     * @param wanted the unit asked for
     */
    record MissingUnit(Unit wanted) implements Grading {

        /**
         * Refuses nulls.
         *
         * @param wanted the unit asked for
         * @throws NullPointerException if one that is required is null
         */
        public MissingUnit {
            Objects.requireNonNull(wanted, "wanted");
        }
    }

    /**
     * The answer is what a common mistake leads to.
     *
     * @param mistake the mistake in words
     */
    record CommonMistake(String mistake) implements Grading {

        /**
         * Refuses nulls.
         *
         * @param mistake the mistake in words
         * @throws NullPointerException if one that is required is null
         */
        public CommonMistake {
            Objects.requireNonNull(mistake, "mistake");
        }
    }

    /** The answer is wrong in a way not known here. */
    record Wrong() implements Grading {}

    /**
     * Grades an answer; a unit of the same kind is converted first. A number without a unit is taken in the unit asked
     * for. An answer asked for in kelvin is a difference of temperatures, which may be given in degrees as well.
     *
     * @param exercise the exercise
     * @param read the answer with the digits it was written with
     * @param tolerance how near it must come
     * @return the grade
     */
    static Grading of(Exercise exercise, AnswerText.Reading read, Tolerance tolerance) {
        Objects.requireNonNull(exercise, "exercise");
        Objects.requireNonNull(tolerance, "tolerance");
        Amount answer = read.amount();
        Amount printed = exercise.answer();
        Unit wanted = printed.unit();
        double number = answer.number().doubleValue();
        if (!answer.unit().measuresTheSameAs(wanted)) {
            Grading alone = rounded(exercise, read, wanted, ofNumber(exercise, number, tolerance), tolerance);
            if (answer.unit() == Unit.NONE) {
                return alone.countsAsRight() ? new MissingUnit(wanted) : alone;
            }
            return alone.countsAsRight() ? new WrongUnit(wanted) : new Wrong();
        }
        Grading grade = ofNumber(exercise, answer.in(wanted), tolerance);
        if (wanted == Unit.KELVIN && answer.unit() != wanted && !(grade instanceof Right)) {
            double degree = Amount.of(1, answer.unit()).in(wanted)
                    - Amount.of(0, answer.unit()).in(wanted);
            grade = ofNumber(exercise, number * degree, tolerance);
        }
        grade = rounded(exercise, read, answer.unit(), grade, tolerance);
        boolean known = !(grade instanceof Wrong);
        Amount exactly = exercise.solution().answer().unrounded();
        return known || !(close(number, exactly, tolerance.withinRatio) || isPrinted(number, printed))
                ? grade
                : answer.unit() == Unit.NONE ? new MissingUnit(wanted) : new WrongUnit(wanted);
    }

    /** Grades a number in the unit asked for. */
    private static Grading ofNumber(Exercise exercise, double number, Tolerance tolerance) {
        Amount exactly = exercise.solution().answer().unrounded();
        if (isPrinted(number, exercise.answer())) {
            return new Right();
        }
        for (Exercise.AlsoRight other : exercise.alsoRight()) {
            if (isPrinted(number, other.amount())) {
                return new OtherFormula(other.remark());
            }
        }
        if (close(number, exactly, tolerance.rightRatio)) {
            return new Right();
        }
        for (Choice choice : exercise.choices()) {
            Amount wrong = choice.amount();
            // a wrong choice is known by its printed digits, which lie up to half a per cent from the unrounded number
            if (!choice.isRight() && (isPrinted(number, wrong) || close(number, wrong, 0.005))) {
                return new CommonMistake(choice.mistake());
            }
        }
        return close(number, exactly, tolerance.withinRatio)
                ? new WithinTolerance(Math.abs(number / exactly.number().doubleValue() - 1))
                : new Wrong();
    }

    /** Tells a number that is the right one rounded to fewer digits from one that is merely off. */
    private static Grading rounded(
            Exercise exercise, AnswerText.Reading read, Unit unit, Grading grade, Tolerance tolerance) {
        boolean open = grade instanceof WithinTolerance || grade instanceof Wrong || grade instanceof CommonMistake;
        boolean thermometer = exercise.answer().unit().measuresTheSameAs(Unit.KELVIN)
                && exercise.answer().unit() != Unit.KELVIN;
        // an answer that comes in steps is another one if it is rounded, and nobody rounds degrees to tens
        if (!open || thermometer || read.exact() || tolerance.withinRatio == 0 || exercise.isChoice(read.amount())) {
            return grade;
        }
        Amount exactly = exercise.solution().answer().unrounded();
        double exact = exactly.in(unit);
        int most = exercise.answer().number().precision();
        for (int digits = 1; digits < most; digits++) {
            BigDecimal fewer = Rounding.digits(digits).apply(exact);
            if (fewer.compareTo(read.written()) == 0 && read.written().precision() <= Math.max(digits, whole(fewer))) {
                return new Rounded(digits, grade instanceof WithinTolerance);
            }
        }
        return grade;
    }

    /** How many digits a number has before its point, all of which are written if it is rounded to tens. */
    private static int whole(BigDecimal number) {
        return number.precision() - number.scale();
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
