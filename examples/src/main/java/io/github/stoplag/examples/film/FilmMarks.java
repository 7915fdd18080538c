package io.github.stoplag.examples.film;

import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.TextFile;
import io.github.stoplag.film.Camera;
import io.github.stoplag.film.FrameMark;
import io.github.stoplag.film.GreySeries;
import io.github.stoplag.film.MarkedMoment;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Marks set by eye: for each judge and lamp the last frame without something and the first one with it. What they are
 * worth is core's {@link MarkedMoment}.
 */
final class FilmMarks {
    private static final List<String> HEADER = List.of("lamp", "direction", "mark", "judge", "frame_before", "frame");
    private static final Pattern WORD = Pattern.compile("[a-z][a-z0-9_]{0,39}");
    private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}");

    private final Path path;
    private final List<Mark> marks = new ArrayList<>();
    private boolean begun;

    /** One mark of one judge; the line is where it stands. */
    private record Mark(String lamp, boolean rising, String mark, FrameMark frames, long line) {
        List<Object> group() {
            return List.of(lamp, rising, mark);
        }
    }

    /**
     * What the judges say of one moment.
     *
     * @param lamp the lamp
     * @param rising whether it comes on
     * @param moment the moment's name in tables
     * @param marked the moment
     */
    record Marked(String lamp, boolean rising, String moment, MarkedMoment marked) {}

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
        try {
            FrameMark frames = new FrameMark(fields.get(3), frame(line, fields.get(4)), frame(line, fields.get(5)));
            marks.add(new Mark(fields.get(0), direction.equals("on"), fields.get(2), frames, line));
        } catch (IllegalArgumentException e) {
            throw bad(line, String.valueOf(e.getMessage()));
        }
    }

    private int frame(long line, String text) {
        if (!WHOLE.matcher(text).matches()) {
            throw bad(line, "frame must be a whole number from 0 on, got \"" + text + "\"");
        }
        return Integer.parseInt(text);
    }

    /**
     * Gives the moments that the marks stand for.
     *
     * @throws InputException if a mark is of a lamp or frame that the film does not have
     */
    List<Marked> moments(FilmStudy study, GreySeries series) {
        Map<List<Object>, List<Mark>> groups = new LinkedHashMap<>();
        for (Mark mark : marks) {
            if (study.lamps().stream().noneMatch(lamp -> lamp.label().equals(mark.lamp))) {
                throw bad(mark.line, "the film has no lamp \"" + mark.lamp + "\"");
            }
            groups.computeIfAbsent(mark.group(), key -> new ArrayList<>()).add(mark);
        }
        return groups.values().stream()
                .map(group -> marked(group, study.camera(), series))
                .toList();
    }

    private Marked marked(List<Mark> group, Camera camera, GreySeries series) {
        Mark first = group.get(0);
        try {
            String name = first.lamp + " " + first.mark.replace('_', ' ') + (first.rising ? "" : ", going out");
            return new Marked(
                    first.lamp,
                    first.rising,
                    "marked_" + first.mark,
                    MarkedMoment.of(
                            name,
                            camera,
                            series,
                            group.stream().map(Mark::frames).toList()));
        } catch (IllegalArgumentException e) {
            throw bad(first.line, String.valueOf(e.getMessage()));
        }
    }

    private InputException bad(long line, String what) {
        return new InputException(path + ": line " + line + ": " + what);
    }
}
