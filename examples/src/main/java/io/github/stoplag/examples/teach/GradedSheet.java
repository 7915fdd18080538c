package io.github.stoplag.examples.teach;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.worked.Exercise;
import io.github.stoplag.worked.ExerciseSheet;
import io.github.stoplag.worked.Grading;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * A student's answers beside the right ones.
 *
 * @param lines one a question, in order
 */
record GradedSheet(List<Line> lines) {
    private static final String MISSING_UNIT = "missing unit";

    static final List<String> HEADER = List.of("question", "answer", "right_answer", "verdict", "points", "remark");

    /**
     * What became of one answer.
     *
     * @param question its number
     * @param answer the answer as given, possibly empty
     * @param right the right answer, with its letter
     * @param verdict right, within tolerance, rounded, other formula, missing unit, wrong unit, common mistake, wrong,
     *     unreadable or no answer
     * @param points 1 if it counts as right, else 0
     * @param remark what to tell the student, possibly empty
     */
    record Line(int question, String answer, String right, String verdict, int points, String remark) {
        private Line counted() {
            return verdict.equals(MISSING_UNIT) ? new Line(question, answer, right, verdict, 1, remark) : this;
        }
    }

    /** The same with right numbers counted though they lack their unit. */
    GradedSheet unitsForgiven() {
        return new GradedSheet(lines.stream().map(Line::counted).toList());
    }

    static GradedSheet of(ExerciseSheet sheet, Map<Integer, String> answers) {
        List<Line> lines = new ArrayList<>();
        for (int i = 1; i <= sheet.exercises().size(); i++) {
            lines.add(line(i, sheet.exercises().get(i - 1), answers.getOrDefault(i, "")));
        }
        return new GradedSheet(List.copyOf(lines));
    }

    private static Line line(int number, Exercise exercise, String answer) {
        String right = exercise.answer() + " (" + exercise.letter() + ")";
        if (answer.isEmpty()) {
            return new Line(number, answer, right, "no answer", 0, "");
        }
        Grading grading;
        try {
            grading = exercise.grade(answer);
        } catch (IllegalArgumentException e) {
            return new Line(number, answer, right, "unreadable", 0, String.valueOf(e.getMessage()));
        }
        if (grading instanceof Grading.Right) {
            return new Line(number, answer, right, "right", 1, "");
        } else if (grading instanceof Grading.WithinTolerance near) {
            String off = Numbers.fixed(100 * near.offRatio(), 1) + " % off, as rounding on the way leads to";
            return new Line(number, answer, right, "within tolerance", 1, off);
        } else if (grading instanceof Grading.Rounded rounded) {
            String digits = rounded.digits() + (rounded.digits() == 1 ? " digit" : " digits");
            String remark =
                    "rightly rounded to " + digits + (rounded.near() ? "" : ", too few to tell it from a wrong answer");
            return new Line(number, answer, right, "rounded", rounded.near() ? 1 : 0, remark);
        } else if (grading instanceof Grading.OtherFormula other) {
            return new Line(number, answer, right, "other formula", 1, other.remark());
        } else if (grading instanceof Grading.MissingUnit unit) {
            String remark =
                    "the number is right; write its unit, " + unit.wanted().symbol();
            return new Line(number, answer, right, MISSING_UNIT, 0, remark);
        } else if (grading instanceof Grading.WrongUnit unit) {
            return new Line(
                    number,
                    answer,
                    right,
                    "wrong unit",
                    0,
                    "the number is right, the unit must be " + unit.wanted().symbol());
        } else if (grading instanceof Grading.CommonMistake mistake) {
            return new Line(number, answer, right, "common mistake", 0, mistake.mistake());
        }
        return new Line(number, answer, right, "wrong", 0, "no common mistake leads to this number");
    }

    int points() {
        return lines.stream().mapToInt(Line::points).sum();
    }

    List<String> text() {
        List<String> text = new ArrayList<>();
        for (Line line : lines) {
            text.add("Question " + line.question + ": " + (line.answer.isEmpty() ? "" : line.answer + ": ")
                    + line.verdict + (line.remark.isEmpty() ? "" : ": " + line.remark)
                    + (line.points == 1 && line.remark.isEmpty() ? "" : "; right is " + line.right));
        }
        text.add(points() + " of " + lines.size() + " right, those within tolerance included.");
        long missing = lines.stream()
                .filter(line -> line.verdict.equals(MISSING_UNIT) && line.points == 0)
                .count();
        if (missing > 0) {
            text.add("Not counted: " + missing
                    + " with the right number and no unit; --accept-missing-units counts them.");
        }
        return text;
    }

    /** The rows of the table of marks. */
    Stream<List<String>> rows() {
        return lines.stream()
                .map(line -> List.of(
                        String.valueOf(line.question),
                        line.answer,
                        line.right,
                        line.verdict,
                        String.valueOf(line.points),
                        line.remark));
    }
}
