package io.github.stoplag.worked;

import java.util.List;

/**
 * A question with its worked solution and the wrong answers that common mistakes lead to.
 *
 * @param template the template it was drawn from
 * @param difficulty how much it asks for
 * @param question the question in words
 * @param solution the worked solution
 * @param choices the right answer and the mistakes in a mixed order
 */
public record Exercise(
        String template, Difficulty difficulty, String question, Solution solution, List<Choice> choices) {
    /**
     * One choice of a multiple-choice question.
     *
     * @param amount the answer offered
     * @param mistake how one comes to it; empty for the right answer
     */
    public record Choice(Amount amount, String mistake) {
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
     */
    public Exercise {
        choices = List.copyOf(choices);
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
     * Grades an answer given in words, for example {@code 79.3 m}, {@code 260 ft} or {@code 7.93e1 m}.
     *
     * @param answer a number and a unit as {@link Amount#parse} reads them
     * @return the grade
     * @throws IllegalArgumentException if the text holds no such number and unit: empty, {@code NaN}, or with a comma
     *     that may part thousands
     */
    public Grading grade(String answer) {
        return grade(Amount.parse(answer));
    }

    /**
     * Grades an answer by the {@link #tolerance()} of the exercise; a unit of the same kind is converted first.
     *
     * @param answer the answer
     * @return the grade
     */
    public Grading grade(Amount answer) {
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
        return Grading.of(this, answer, tolerance);
    }
}
