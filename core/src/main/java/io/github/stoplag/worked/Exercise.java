package io.github.stoplag.worked;

import io.github.stoplag.quantity.Check;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A question with its worked solution and the wrong answers that common mistakes lead to.
 *
 * @param template the template it was drawn from
 * @param difficulty how much it asks for
 * @param question the question in words
 * @param solution the worked solution
 * @param choices the right answer and the mistakes in a mixed order
 * @param alsoRight answers of another formula in use, accepted with a remark
 */
public record Exercise(
        String template,
        Difficulty difficulty,
        String question,
        Solution solution,
        List<Choice> choices,
        List<AlsoRight> alsoRight) {
    private static final Pattern LETTERED =
            Pattern.compile("\\s*[(\\[]?(?<letter>\\p{L})(?:\\s*[)\\].:]+|\\s+(?=[~≈+.0-9-])|(?=\\s*$))(?<rest>.*)");

    /**
     * An answer by another formula in use.
     *
     * @param amount the answer as it would be printed
     * @param remark what to tell who gives it
     */
    public record AlsoRight(Amount amount, String remark) {

        /**
         * Refuses nulls.
         *
         * @param amount the answer as it would be printed
         * @param remark what to tell who gives it
         * @throws NullPointerException if one that is required is null
         */
        public AlsoRight {
            Objects.requireNonNull(amount, "amount");
            Objects.requireNonNull(remark, "remark");
        }
    }

    /**
     * One choice of a multiple-choice question.
     *
     * @param amount the answer offered
     * @param mistake how one comes to it; empty for the right answer
     */
    public record Choice(Amount amount, String mistake) {

        /**
         * Refuses nulls.
         *
         * @param amount the answer offered
         * @param mistake how one comes to it; empty for the right answer
         * @throws NullPointerException if one that is required is null
         */
        public Choice {
            Objects.requireNonNull(amount, "amount");
            Objects.requireNonNull(mistake, "mistake");
        }

        /**
         * Says whether this is the right answer.
         *
         * @return true if no mistake leads to it
         */
        public boolean isRight() {
            return mistake.isEmpty();
        }
    }

    /**
     * Makes the list immutable.
     *
     * @param template the template it was drawn from
     * @param difficulty how much it asks for
     * @param question the question in words
     * @param solution the worked solution
     * @param choices the right answer and the mistakes in a mixed order
     * @param alsoRight answers of another formula in use, accepted with a remark
     */
    public Exercise {
        Objects.requireNonNull(difficulty, "difficulty");
        Objects.requireNonNull(question, "question");
        Objects.requireNonNull(solution, "solution");
        Objects.requireNonNull(template, "template");
        choices = Check.copyOf("choices", choices);
        alsoRight = Check.copyOf("alsoRight", alsoRight);
    }

    /**
     * Makes an exercise with one right answer.
     *
     * @param template the template it was drawn from
     * @param difficulty how much it asks for
     * @param question the question in words
     * @param solution the worked solution
     * @param choices the right answer and the mistakes in a mixed order
     */
    public Exercise(String template, Difficulty difficulty, String question, Solution solution, List<Choice> choices) {
        this(template, difficulty, question, solution, choices, List.of());
        Objects.requireNonNull(choices, "choices");
        Objects.requireNonNull(difficulty, "difficulty");
        Objects.requireNonNull(question, "question");
        Objects.requireNonNull(solution, "solution");
        Objects.requireNonNull(template, "template");
    }

    /**
     * Gives the right answer as printed.
     *
     * @return number and unit
     */
    public Amount answer() {
        return solution.answer().printed();
    }

    /**
     * Gives the letter of the right choice.
     *
     * @return A, B, C and so on
     */
    public String letter() {
        for (int i = 0; i < choices.size(); i++) {
            if (choices.get(i).isRight()) {
                return Document.mark(i);
            }
        }
        throw new IllegalStateException("an exercise has a right choice");
    }

    /**
     * Gives how near an answer must come.
     *
     * @return {@link Grading.Tolerance#ASSUMED}, or none where a rule or a series of values sets the answer in steps:
     *     the next step, or the number before it was raised, is another answer
     */
    public Grading.Tolerance tolerance() {
        return isStepped(solution) ? new Grading.Tolerance(0, 0) : Grading.Tolerance.ASSUMED;
    }

    /**
     * Whether a rule raises the answer to a step or it comes from a series, so that it is not only rounded for print.
     */
    static boolean isStepped(Solution solution) {
        return solution.steps().stream()
                .filter(step -> step.symbol().equals(solution.answer().symbol()))
                // of what a working chooses, a resistance comes from a series; the larger of two gaps does not
                .anyMatch(step -> step.note().startsWith("raised to")
                        || (step.note().equals("chosen") && step.result().unit() == Unit.OHM));
    }

    /**
     * Grades an answer as a student writes it: {@code 79.3 m}, {@code 260 ft}, {@code about 72 m}, {@code b)} or
     * {@code D) 5.18 s}.
     *
     * <p>A letter alone is the choice of that letter; a letter before a number must be the one of that number.
     *
     * @param answer a letter, or a number and a unit as {@link Amount#parse} reads them, or both
     * @return the grade
     * @throws IllegalArgumentException if the text holds no such answer: empty, {@code NaN}, with a comma that may part
     *     thousands, or with a letter and a number that belong to different choices
     */
    public Grading grade(String answer) {
        Objects.requireNonNull(answer, "answer");
        Matcher lettered = LETTERED.matcher(answer);
        if (!lettered.matches()) {
            return Grading.of(this, AnswerText.read(answer), tolerance());
        }
        int index = lettered.group("letter").toUpperCase(Locale.ROOT).charAt(0) - 'A';
        if (index < 0 || index >= choices.size()) {
            throw new IllegalArgumentException(
                    "the choices are A to " + Document.mark(choices.size() - 1) + ", got \"" + answer.strip() + "\"");
        }
        Choice choice = choices.get(index);
        Grading chosen = choice.isRight() ? new Grading.Right() : new Grading.CommonMistake(choice.mistake());
        String rest = lettered.group("rest").strip();
        if (rest.isEmpty()) {
            return chosen;
        }
        Grading number = Grading.of(this, AnswerText.read(rest), tolerance());
        if (number.countsAsRight() != choice.isRight() && !(number instanceof Grading.MissingUnit)) {
            throw new IllegalArgumentException(
                    "the letter says " + choice.amount() + ", the number says " + rest + "; one answer is wanted");
        }
        return number;
    }

    /** How far the answer is rounded, in words for a sheet; nothing where a rule or a series sets it. */
    String digitsAsked() {
        if (isStepped(solution)) {
            return "";
        }
        Rounding rounding = solution.answer().rounding();
        return switch (rounding.mode()) {
            case DIGITS -> ", to " + rounding.step() + " significant digits";
            case NEAREST ->
                rounding.step().compareTo(BigDecimal.ONE) == 0
                        ? ", to a whole number"
                        : ", to the nearest " + rounding.step().toPlainString();
            case UP, DOWN -> "";
        };
    }

    /** Whether a number is one of the wrong choices, digit by digit. */
    boolean isChoice(Amount amount) {
        return choices.stream()
                .filter(choice -> !choice.isRight())
                .map(Choice::amount)
                .anyMatch(wrong -> wrong.number().compareTo(amount.number()) == 0
                        && (wrong.unit() == amount.unit() || amount.unit() == Unit.NONE));
    }

    /**
     * Grades an answer by the {@link #tolerance()} of the exercise; a unit of the same kind is converted first.
     *
     * @param answer the answer
     * @return the grade
     */
    public Grading grade(Amount answer) {
        Objects.requireNonNull(answer, "answer");
        return grade(answer, tolerance());
    }

    /**
     * Grades an answer; a unit of the same kind is converted first.
     *
     * @param answer the answer
     * @param tolerance how near it must come
     * @return the grade
     */
    public Grading grade(Amount answer, Grading.Tolerance tolerance) {
        Objects.requireNonNull(answer, "answer");
        Objects.requireNonNull(tolerance, "tolerance");
        return Grading.of(this, AnswerText.Reading.of(answer), tolerance);
    }
}
