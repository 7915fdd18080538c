package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.file.CsvText;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.worked.ExerciseSheet;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * The answers of a class beside the right ones, and what it got wrong most often.
 *
 * @param students the graded sheet of each by name; one without a name is a single student
 * @param notes what to tell of the file they came from
 */
record GradedClass(Map<String, GradedSheet> students, List<String> notes) {
    private static final List<String> SUMMARY =
            List.of("question", "right_answer", "students", "points", "verdict", "remark", "count");
    private static final int MOST_MISTAKES = 3;

    /** One way in which a question went wrong. */
    private record Kind(String verdict, String remark) {
        String text() {
            return remark.isEmpty() || !verdict.equals("common mistake") ? verdict : remark;
        }
    }

    static GradedClass of(ExerciseSheet sheet, AnswerFile file, boolean unitsForgiven) {
        UnaryOperator<GradedSheet> forgiving = unitsForgiven ? GradedSheet::unitsForgiven : UnaryOperator.identity();
        Map<String, GradedSheet> graded = new LinkedHashMap<>();
        file.students().forEach((name, answers) -> graded.put(name, forgiving.apply(GradedSheet.of(sheet, answers))));
        return new GradedClass(graded, file.notes());
    }

    /** Whether there are names, so that the table needs a column for them. */
    boolean isNamed() {
        return !students.keySet().stream().allMatch(String::isEmpty);
    }

    List<String> text() {
        List<String> text = new ArrayList<>();
        if (!isNamed()) {
            students.values().forEach(sheet -> text.addAll(sheet.text()));
            text.addAll(notes);
            return text;
        }
        students.forEach((name, sheet) ->
                text.add(name + ": " + sheet.points() + " of " + sheet.lines().size() + " right"));
        int points = students.values().stream().mapToInt(GradedSheet::points).sum();
        text.add(students.size() + (students.size() == 1 ? " student, " : " students, on average ")
                + Numbers.fixed((double) points / students.size(), 1) + " of "
                + first().lines().size() + " right, those within tolerance included. What went wrong, by frequency:");
        for (int i = 0; i < first().lines().size(); i++) {
            text.add(question(i));
        }
        text.addAll(notes);
        return text;
    }

    private GradedSheet first() {
        return students.values().iterator().next();
    }

    private String question(int index) {
        List<String> wrong = kinds(index).stream()
                .limit(MOST_MISTAKES)
                .map(each -> each.getValue() + " × " + each.getKey().text())
                .toList();
        return "Question " + (index + 1) + ": " + points(index) + " of " + students.size() + " right"
                + (wrong.isEmpty() ? "" : "; " + String.join("; ", wrong));
    }

    private int points(int index) {
        return students.values().stream()
                .mapToInt(sheet -> sheet.lines().get(index).points())
                .sum();
    }

    /** What went wrong with a question, the most frequent first. */
    private List<Map.Entry<Kind, Integer>> kinds(int index) {
        Map<Kind, Integer> counts =
                new TreeMap<>(Comparator.comparing(Kind::verdict).thenComparing(Kind::remark));
        for (GradedSheet sheet : students.values()) {
            GradedSheet.Line line = sheet.lines().get(index);
            if (line.points() == 0) {
                boolean mistake = line.verdict().equals("common mistake");
                counts.merge(new Kind(line.verdict(), mistake ? line.remark() : ""), 1, Integer::sum);
            }
        }
        return counts.entrySet().stream()
                .sorted(Map.Entry.<Kind, Integer>comparingByValue().reversed())
                .toList();
    }

    /** The table of marks, one line an answer. */
    String csv() {
        if (!isNamed()) {
            return CsvText.of(GradedSheet.HEADER, first().rows());
        }
        List<String> header =
                Stream.concat(Stream.of("name"), GradedSheet.HEADER.stream()).toList();
        return CsvText.of(
                header,
                students.entrySet().stream()
                        .flatMap(each -> each.getValue()
                                .rows()
                                .map(row -> Stream.concat(Stream.of(each.getKey()), row.stream())
                                        .toList())));
    }

    /** The summary of a class: one line for each way in which a question went wrong, the most frequent first. */
    String summary() {
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < first().lines().size(); i++) {
            List<String> begin = List.of(
                    String.valueOf(i + 1),
                    first().lines().get(i).right(),
                    String.valueOf(students.size()),
                    String.valueOf(points(i)));
            if (kinds(i).isEmpty()) {
                rows.add(Stream.concat(begin.stream(), Stream.of("", "", "0")).toList());
            }
            kinds(i).forEach(each -> rows.add(Stream.concat(
                            begin.stream(),
                            Stream.of(each.getKey().verdict(), each.getKey().remark(), String.valueOf(each.getValue())))
                    .toList()));
        }
        return CsvText.of(SUMMARY, rows.stream());
    }
}
