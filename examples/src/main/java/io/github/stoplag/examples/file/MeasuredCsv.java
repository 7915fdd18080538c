package io.github.stoplag.examples.file;

import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.quantity.Numbers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Reads a filmed lamp: a CSV file with the header {@code time_s,relative_brightness}, time in seconds since the lamp's
 * circuit closed, brightness in a linear measure with 0 for the dark and 1 for the fully lit lamp; other units of time
 * and per cent as {@link ColumnHead} has them. Lines that start with {@code #} are comments.
 */
public final class MeasuredCsv {
    static final List<String> HEADER = List.of("time_s", "relative_brightness");
    /** Decimal notation alone; the language behind would also read 0x1p-2 or 1f. */
    private static final Pattern NUMBER = Pattern.compile("[+-]?([0-9]+([.,][0-9]+)?|[.,][0-9]+)([eE][+-]?[0-9]+)?");

    private static final double LATEST_S = 60;
    private static final double OVERSHOOT = 0.2;
    private final String file;
    private final List<double[]> samples = new ArrayList<>();
    private boolean begun;
    private double timeUnitS = 1;
    private double brightnessUnit = 1;

    private MeasuredCsv(String file) {
        this.file = file;
    }

    /**
     * Reads a lamp.
     *
     * @throws InputException if the file is missing or a row cannot be used; the message names the line
     */
    public static MeasuredLamp read(Path path) {
        MeasuredCsv csv = new MeasuredCsv(path.toString());
        TextFile.rowsOfSpreadsheet(path, csv::accept);
        return csv.lamp(String.valueOf(path.getFileName()));
    }

    private void accept(CsvRecord row) {
        long line = row.getStartingLineNumber();
        if (!begun) {
            begun = true;
            if (!isHeader(row)) {
                throw bad(line, "header must be \"" + String.join(",", HEADER) + "\", got \"" + text(row) + "\"");
            }
            return;
        }
        if (row.getFieldCount() != HEADER.size()) {
            throw bad(
                    line,
                    "must have 2 fields (" + String.join(", ", HEADER) + "), got " + row.getFieldCount() + " in \""
                            + text(row) + "\"");
        }
        double timeS = number(line, row, 0, timeUnitS, -LATEST_S, LATEST_S);
        double brightness = number(line, row, 1, brightnessUnit, -OVERSHOOT, 1 + OVERSHOOT);
        if (!samples.isEmpty() && !(timeS > samples.get(samples.size() - 1)[0])) {
            throw bad(
                    line,
                    "time_s must be later than in the row before, " + Numbers.text(samples.get(samples.size() - 1)[0])
                            + " s, got " + Numbers.text(timeS) + " s");
        }
        samples.add(new double[] {timeS, brightness});
    }

    /** The time in any of its units, and the brightness as a share or in per cent. */
    private boolean isHeader(CsvRecord row) {
        if (row.getFieldCount() != HEADER.size()) {
            return false;
        }
        ColumnHead time = ColumnHead.of(row.getField(0));
        ColumnHead brightness = ColumnHead.of(row.getField(1));
        timeUnitS = time.seconds().orElse(Double.NaN);
        brightnessUnit = brightness.unit().equals("%") ? 0.01 : 1;
        return time.seconds().isPresent() && brightness.name().equals(HEADER.get(1));
    }

    private double number(long line, CsvRecord row, int column, double unit, double lo, double hi) {
        String text = row.getField(column).strip();
        double value = NUMBER.matcher(text).matches() ? unit * Double.parseDouble(text.replace(',', '.')) : Double.NaN;
        if (!(value >= lo && value <= hi)) {
            throw bad(
                    line,
                    HEADER.get(column) + " must be a number in [" + Numbers.text(lo) + ", " + Numbers.text(hi)
                            + "], got \"" + text + "\"");
        }
        return value;
    }

    private MeasuredLamp lamp(String label) {
        try {
            return MeasuredLamp.of(
                    "measured lamp (" + label + ")",
                    samples.stream().mapToDouble(s -> s[0]).toArray(),
                    samples.stream().mapToDouble(s -> s[1]).toArray());
        } catch (IllegalArgumentException e) {
            throw new InputException(file + ": " + e.getMessage(), e);
        }
    }

    private InputException bad(long line, String what) {
        return new InputException(file + ": line " + line + ": " + what);
    }

    private static String text(CsvRecord row) {
        return String.join(",", row.getFields());
    }
}
