package io.github.stoplag.examples.teach;

import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.TextFile;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * A student's answers: a CSV file with the header {@code question,answer}, the number of the question and a number with
 * its unit or the letter of a choice; an empty answer is none. Lines that start with {@code #} are comments. Fields may
 * be parted by semicolons, as spreadsheets do where the comma is the decimal sign.
 */
final class AnswerFile {
    static final List<String> HEADER = List.of("question", "answer");
    private static final Pattern NUMBER = Pattern.compile("[1-9][0-9]{0,3}");

    private final Path path;
    private final int questions;
    private final Map<Integer, String> answers = new TreeMap<>();
    private boolean begun;

    private AnswerFile(Path path, int questions) {
        this.path = path;
        this.questions = questions;
    }

    /**
     * Reads the answers to a sheet.
     *
     * @throws InputException if the file is missing or a row cannot be used; the message names the line
     */
    static Map<Integer, String> read(Path path, int questions) {
        AnswerFile file = new AnswerFile(path, questions);
        TextFile.rowsOfSpreadsheet(path, file::accept);
        if (!file.begun) {
            throw file.bad(1, "header must be \"" + String.join(",", HEADER) + "\", got nothing");
        }
        return file.answers;
    }

    private void accept(CsvRecord row) {
        long line = row.getStartingLineNumber();
        String text = String.join(",", row.getFields());
        if (!begun) {
            begun = true;
            List<String> header = row.getFields().stream()
                    .map(field -> field.strip().toLowerCase(Locale.ROOT))
                    .toList();
            if (!header.equals(HEADER)) {
                throw bad(line, "header must be \"" + String.join(",", HEADER) + "\", got \"" + text + "\"");
            }
            return;
        }
        if (row.getFieldCount() != HEADER.size()) {
            throw bad(
                    line,
                    "must have 2 fields (question, answer), got " + row.getFieldCount() + " in \"" + text
                            + "\"; an answer with a comma needs quotes");
        }
        String number = row.getField(0).strip();
        int question = NUMBER.matcher(number).matches() ? Integer.parseInt(number) : 0;
        if (question < 1 || question > questions) {
            throw bad(line, "question must be a whole number in [1, " + questions + "], got \"" + number + "\"");
        }
        String answer = row.getField(1).strip();
        if (answers.putIfAbsent(question, answer) != null) {
            throw bad(line, "question " + question + " is answered already further up");
        }
    }

    private InputException bad(long line, String what) {
        return new InputException(path + ": line " + line + ": " + what);
    }
}
