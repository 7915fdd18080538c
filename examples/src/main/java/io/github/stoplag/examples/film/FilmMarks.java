package io.github.stoplag.examples.film;

import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.TextFile;
import io.github.stoplag.quantity.Numbers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Marks set by eye: for each judge and lamp the last frame without something and the first one with it.
 *
 * <pre>
 *   time          t = mean over the judges of the middle between both frames, less time zero
 *   uncertainty   u² = w²/12 + s²/n + u₀²
 * </pre>
 *
 * <p>Symbols: w mean time between both frames, anywhere in which the moment may lie alike (JCGM 100:2008, 4.3.7, from
 * memory); s standard deviation between n judges or viewings, left out for one; u₀ standard uncertainty of time zero.
 * The interval that holds 95 % is 0.95 w for one judge, with u₀ added in squares, and 2 u for several.
 */
final class FilmMarks {
    private static final List<String> HEADER = List.of("lamp", "direction", "mark", "judge", "frame_before", "frame");
    private static final Pattern WORD = Pattern.compile("[a-z][a-z0-9_]{0,39}");
    private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}");

    private final Path path;
    private final List<Mark> marks = new ArrayList<>();
    private boolean begun;

    /** One mark of one judge; the line is where it stands. */
    private record Mark(String lamp, boolean rising, String mark, int before, int frame, long line) {}

    private FilmMarks(Path path) {
        this.path = path;
    }

    /**
     * Reads marks.
     *
     * @throws InputException if the file cannot be read or a row cannot be used; the message names the line
     */
    static FilmMarks read(Path path) {
        FilmMarks marks = new FilmMarks(path);
        TextFile.rowsOfSpreadsheet(path, marks::accept);
        if (marks.marks.isEmpty()) {
            throw new InputException(path + ": holds no marks");
        }
        return marks;
    }

    private void accept(CsvRecord row) {
        List<String> fields = row.getFields().stream().map(String::strip).toList();
        long line = row.getStartingLineNumber();
        if (!begun) {
            begun = true;
            if (!fields.equals(HEADER)) {
                throw bad(
                        line,
                        "header must be \"" + String.join(",", HEADER) + "\", got \"" + String.join(",", fields)
                                + "\"");
            }
            return;
        }
        if (fields.size() != HEADER.size()) {
            throw bad(line, "must have " + HEADER.size() + " fields, got " + fields.size());
        }
        String direction = fields.get(1);
        if (!direction.equals("on") && !direction.equals("off")) {
            throw bad(line, "direction must be on or off, got \"" + direction + "\"");
        } else if (!WORD.matcher(fields.get(2)).matches()) {
            throw bad(line, "mark must be a word of small letters, digits and \"_\", got \"" + fields.get(2) + "\"");
        }
        int before = frame(line, fields.get(4));
        int frame = frame(line, fields.get(5));
        if (before >= frame) {
            throw bad(line, "frame must be after frame_before, " + before + ", got " + frame);
        }
        marks.add(new Mark(fields.get(0), direction.equals("on"), fields.get(2), before, frame, line));
    }

    private int frame(long line, String text) {
        if (!WHOLE.matcher(text).matches()) {
            throw bad(line, "frame must be a whole number from 0 on, got \"" + text + "\"");
        }
        return Integer.parseInt(text);
    }

    /**
     * Gives them as rows in the form of the moments.
     *
     * @throws InputException if a mark is of a lamp or frame that the film does not have
     */
    List<List<String>> rows(FilmStudy study, FrameClock clock) {
        Map<List<String>, List<Mark>> groups = new LinkedHashMap<>();
        for (Mark mark : marks) {
            if (study.lamps().stream().noneMatch(lamp -> lamp.label().equals(mark.lamp))) {
                throw bad(mark.line, "the film has no lamp \"" + mark.lamp + "\"");
            } else if (!clock.has(mark.before) || !clock.has(mark.frame)) {
                throw bad(mark.line, "the film has no frame " + (clock.has(mark.before) ? mark.frame : mark.before));
            }
            groups.computeIfAbsent(
                            List.of(mark.lamp, mark.rising ? "on" : "off", "marked_" + mark.mark),
                            key -> new ArrayList<>())
                    .add(mark);
        }
        return groups.entrySet().stream()
                .map(group -> row(group.getKey(), group.getValue(), study, clock))
                .toList();
    }

    private static List<String> row(List<String> key, List<Mark> group, FilmStudy study, FrameClock clock) {
        FilmStudy.Zero zero = study.zero(group.get(0).rising);
        int n = group.size();
        double middle = 0;
        double width = 0;
        for (Mark mark : group) {
            middle += (clock.middleS(mark.before) + clock.middleS(mark.frame)) / 2 / n;
            width += (clock.middleS(mark.frame) - clock.middleS(mark.before)) / n;
        }
        double squares = 0;
        for (Mark mark : group) {
            squares += Math.pow((clock.middleS(mark.before) + clock.middleS(mark.frame)) / 2 - middle, 2);
        }
        double ofJudges = n == 1 ? 0 : squares / (n - 1) / n;
        double u = Math.sqrt(width * width / 12 + ofJudges + zero.uncertaintyS() * zero.uncertaintyS());
        double half = n == 1 ? Math.hypot(0.475 * width, 1.96 * zero.uncertaintyS()) : 2 * u;
        double timeS = middle - zero.timeS();
        List<String> row = new ArrayList<>(key);
        for (double value : new double[] {timeS, u, timeS - half, timeS + half}) {
            row.add(Numbers.fixed(value, 6));
        }
        row.add("0.95");
        return row;
    }

    private InputException bad(long line, String what) {
        return new InputException(path + ": line " + line + ": " + what);
    }
}
