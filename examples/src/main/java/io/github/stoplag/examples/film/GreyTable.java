package io.github.stoplag.examples.film;

import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.stoplag.examples.file.ColumnHead;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.TextFile;
import io.github.stoplag.film.GreyScale;
import io.github.stoplag.film.GreySeries;
import io.github.stoplag.quantity.Numbers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Grey values as a table: a column {@code frame} or {@code time_s} or both, and one column for each lamp, in any range.
 */
final class GreyTable {
    private static final String FRAME = "frame";
    private static final Pattern NUMBER =
            Pattern.compile("[+-]?([0-9]+([.,][0-9]*)?|[.,][0-9]+)([eE][+-]?[0-9]{1,3})?");
    private static final int[] DEPTHS = {8, 10, 12, 14, 16};

    private final Path path;
    private final List<String> wanted;
    private final Map<Integer, GreySeries.Builder> series = new LinkedHashMap<>();
    private int frameColumn = -1;
    private int timeColumn = -1;
    private double timeUnitS = 1;
    private int columns;
    private int rows;
    private boolean whole = true;
    private double least = Double.POSITIVE_INFINITY;
    private double greatest = Double.NEGATIVE_INFINITY;

    private GreyTable(Path path, List<String> wanted) {
        this.path = path;
        this.wanted = wanted;
    }

    /**
     * Reads a table.
     *
     * @param path the file
     * @param wanted the columns that are lamps; none for all but those of frames and times
     * @throws InputException if the file cannot be read or a row cannot be used; the message names the line
     */
    static GreyTable read(Path path, List<String> wanted) {
        GreyTable table = new GreyTable(path, wanted);
        TextFile.rowsOfSpreadsheet(path, table::accept);
        if (table.series.isEmpty()) {
            throw new InputException(path + ": is empty");
        }
        return table;
    }

    List<LampSeries> lamps() {
        try {
            return series.values().stream()
                    .map(builder -> new LampSeries(builder.build().label(), null, builder.build(), List.of()))
                    .toList();
        } catch (IllegalArgumentException e) {
            throw new InputException(path + ": " + e.getMessage(), e);
        }
    }

    /** Gives the scale that holds all values: a share of 1, a usual depth of bits, or just their range. */
    GreyScale scale() {
        if (least >= 0 && greatest <= 1) {
            return GreyScale.between(0, 1);
        }
        for (int bits : DEPTHS) {
            GreyScale full = GreyScale.full(bits);
            if (least >= 0 && greatest <= full.white()) {
                return whole ? full : GreyScale.between(0, full.white());
            }
        }
        double black = Math.min(0, least);
        return GreyScale.between(black, black + 1.02 * (greatest - black));
    }

    boolean stamped() {
        return timeColumn >= 0;
    }

    private void accept(CsvRecord row) {
        if (columns == 0) {
            header(row);
            return;
        }
        if (row.getFieldCount() != columns) {
            throw bad(row, "must have " + columns + " fields, got " + row.getFieldCount());
        }
        try {
            int frame = frameColumn >= 0 ? frame(row) : rows;
            double stampS = timeColumn >= 0 ? timeUnitS * number(row, timeColumn, "time") : Double.NaN;
            for (Map.Entry<Integer, GreySeries.Builder> lamp : series.entrySet()) {
                double grey = grey(row, lamp.getKey());
                whole &= grey == Math.rint(grey);
                least = Math.min(least, grey);
                greatest = Math.max(greatest, grey);
                lamp.getValue().add(frame, stampS, grey, 0);
            }
            rows++;
        } catch (IllegalArgumentException e) {
            throw bad(row, String.valueOf(e.getMessage()));
        }
    }

    private void header(CsvRecord row) {
        columns = row.getFieldCount();
        List<String> names = new ArrayList<>();
        for (int i = 0; i < columns; i++) {
            ColumnHead head = ColumnHead.of(row.getField(i));
            if (head.name().equalsIgnoreCase(FRAME) && frameColumn < 0) {
                frameColumn = i;
            } else if (head.seconds().isPresent() && timeColumn < 0) {
                timeColumn = i;
                timeUnitS = head.seconds().get();
            } else if (names.contains(head.name())) {
                throw bad(row, "two columns have the name \"" + head.name() + "\"");
            } else {
                names.add(head.name());
                if (wanted.isEmpty() || wanted.contains(head.name())) {
                    lamp(row, i, head.name());
                }
            }
        }
        wanted.stream().filter(name -> !names.contains(name)).findFirst().ifPresent(name -> {
            throw new InputException("--lamp: " + path + " has the columns " + String.join(", ", names)
                    + "; of a table give only the name of a column, got \"" + name + "\"");
        });
        if ((frameColumn < 0 && timeColumn < 0) || series.isEmpty()) {
            throw bad(
                    row,
                    "header must be \"frame\" or \"time_s\" (or time_ms, time [ms]) and the name of each lamp, got \""
                            + String.join(",", row.getFields()) + "\"");
        }
    }

    private void lamp(CsvRecord row, int column, String name) {
        try {
            series.put(column, GreySeries.of(LampRegion.named(name)));
        } catch (InputException e) {
            throw bad(row, String.valueOf(e.getMessage()));
        }
    }

    private int frame(CsvRecord row) {
        double number = number(row, frameColumn, FRAME);
        if (!(number >= 0 && number <= Integer.MAX_VALUE && number == Math.rint(number))) {
            throw bad(row, "frame must be a whole number from 0 on, got " + Numbers.text(number));
        }
        return (int) number;
    }

    private double grey(CsvRecord row, int column) {
        try {
            return number(row, column, "grey value");
        } catch (InputException e) {
            throw wanted.isEmpty() && rows == 0
                    ? new InputException(e.getMessage() + "; name the columns that are lamps by --lamp", e)
                    : e;
        }
    }

    private double number(CsvRecord row, int column, String what) {
        String text = row.getField(column).strip();
        if (!NUMBER.matcher(text).matches()) {
            throw bad(row, what + " must be a number, got \"" + text + "\"");
        }
        return Double.parseDouble(text.replace(',', '.'));
    }

    private InputException bad(CsvRecord row, String what) {
        return new InputException(path + ": line " + row.getStartingLineNumber() + ": " + what);
    }
}
