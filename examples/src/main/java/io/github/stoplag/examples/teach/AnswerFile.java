package io.github.stoplag.examples.teach;

import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.TextFile;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The answers of a student or of a whole class: a CSV file with the columns {@code question,answer}, with a column
 * {@code name} besides for a class, or with the columns {@code name,1,2,3} and one row a student.
 *
 * <p>An answer is what {@link io.github.stoplag.worked.Exercise#grade(String)} reads; an empty one is none. Lines that
 * start with {@code #} are comments. Fields may be parted by semicolons, as spreadsheets do where the comma is the
 * decimal sign. A line that cannot be used is listed and left out.
 */
final class AnswerFile {
    static final List<String> HEADER = List.of("question", "answer");
    private static final Set<String> NAMES = Set.of("name", "student", "pupil", "learner");
    private static final Set<String> QUESTIONS = Set.of("question", "no", "no.", "nr", "nr.", "number", "q");
    private static final Set<String> ANSWERS = Set.of("answer", "answers");
    private static final Pattern NUMBER = Pattern.compile("(?:q|question)?\\s*([1-9][0-9]{0,3})\\s*[.)]?");
    private static final int MOST_STUDENTS = 1000;

    private final Path path;
    private final int questions;
    private final Map<String, Map<Integer, String>> students = new LinkedHashMap<>();
    private final List<String> unusable = new ArrayList<>();
    private List<String> header = List.of();
    private String encoding = "";

    private AnswerFile(Path path, int questions) {
        this.path = path;
        this.questions = questions;
    }

    /**
     * Reads the answers to a sheet.
     *
     * @throws InputException if the file is missing or its header says nothing of answers
     */
    static AnswerFile read(Path path, int questions) {
        AnswerFile file = new AnswerFile(path, questions);
        file.encoding = TextFile.rowsInAnyEncoding(path, file::accept);
        if (file.header.isEmpty()) {
            throw file.noHeader("nothing");
        }
        if (file.students.isEmpty()) {
            file.students.put("", Map.of());
        }
        return file;
    }

    /** The answers of each student by the number of the question; the name is empty where there is no such column. */
    Map<String, Map<Integer, String>> students() {
        return students;
    }

    /** What to tell about lines that were left out, and about the encoding if it is not the usual one. */
    List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (!encoding.equals("UTF-8")) {
            notes.add("The file is read as " + encoding + ".");
        }
        notes.addAll(unusable);
        return notes;
    }

    private InputException noHeader(String got) {
        return new InputException(path + ": line 1: header must be \"" + String.join(",", HEADER)
                + "\", for a class \"name,question,answer\" or \"name,1,2,3\", got " + got);
    }

    private int column(Set<String> words) {
        for (int i = 0; i < header.size(); i++) {
            if (words.contains(header.get(i))) {
                return i;
            }
        }
        return -1;
    }

    private void accept(CsvRecord row) {
        if (header.isEmpty()) {
            begin(row);
            return;
        }
        int name = column(NAMES);
        if (row.getFieldCount() > header.size() || (column(ANSWERS) >= 0 && row.getFieldCount() < header.size())) {
            leaveOut(
                    row,
                    "must have " + header.size() + " fields (" + String.join(", ", header) + "), got "
                            + row.getFieldCount() + "; an answer with a comma needs quotes");
            return;
        }
        String student = name < 0 || name >= row.getFieldCount()
                ? ""
                : row.getField(name).strip();
        if (name >= 0 && student.isEmpty()) {
            leaveOut(row, "has no name");
        } else if (!students.containsKey(student) && students.size() >= MOST_STUDENTS) {
            throw new InputException(path + ": more than " + MOST_STUDENTS + " names; grade in several files");
        } else if (column(ANSWERS) >= 0) {
            answer(row, student);
        } else {
            wide(row, student);
        }
    }

    private void begin(CsvRecord row) {
        header = row.getFields().stream()
                .map(field -> field.strip().toLowerCase(Locale.ROOT))
                .toList();
        boolean lines = column(ANSWERS) >= 0 && column(QUESTIONS) >= 0;
        boolean wide = column(NAMES) >= 0
                && header.size() > 1
                && header.stream().filter(field -> !NAMES.contains(field)).allMatch(field -> question(field) > 0);
        if (!lines && !wide) {
            throw noHeader("\"" + String.join(",", row.getFields()) + "\"");
        }
    }

    private int question(String text) {
        Matcher number = NUMBER.matcher(text.strip().toLowerCase(Locale.ROOT));
        int question = number.matches() ? Integer.parseInt(number.group(1)) : 0;
        return question <= questions ? question : 0;
    }

    private void answer(CsvRecord row, String student) {
        String number = row.getField(column(QUESTIONS)).strip();
        int question = question(number);
        if (question == 0) {
            leaveOut(row, "question must be a whole number in [1, " + questions + "], got \"" + number + "\"");
        } else if (answers(student)
                        .putIfAbsent(question, row.getField(column(ANSWERS)).strip())
                != null) {
            leaveOut(
                    row,
                    "question " + question + (student.isEmpty() ? "" : " of " + student)
                            + " is answered already further up; the first answer counts");
        }
    }

    private void wide(CsvRecord row, String student) {
        if (students.containsKey(student)) {
            leaveOut(row, student + " stands there already; the first row counts");
            return;
        }
        Map<Integer, String> answers = answers(student);
        for (int i = 0; i < row.getFieldCount(); i++) {
            if (!NAMES.contains(header.get(i))) {
                answers.put(question(header.get(i)), row.getField(i).strip());
            }
        }
    }

    private Map<Integer, String> answers(String student) {
        return students.computeIfAbsent(student, each -> new TreeMap<>());
    }

    private void leaveOut(CsvRecord row, String why) {
        unusable.add("Left out: line " + row.getStartingLineNumber() + ": " + why + ".");
    }
}
