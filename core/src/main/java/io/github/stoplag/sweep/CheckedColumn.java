package io.github.stoplag.sweep;

import java.util.Arrays;
import java.util.List;

/** One input of a pair on one thread: the plan's column with 1 in place of what is rejected. */
final class CheckedColumn {
    private final int at;
    private final double lo;
    private final double hi;
    private final String reason;
    private final double[] values = new double[RowBlock.ROWS];
    // how many of the values are known to be in range
    private int known;

    /** Takes a column that lamps share. */
    CheckedColumn(List<String> inputs, PairColumn column) {
        this(inputs, column, "");
    }

    /** Takes a column of a lamp. */
    CheckedColumn(List<String> inputs, PairColumn column, String lamp) {
        at = inputs.indexOf(column.column(lamp));
        lo = column.range().open()
                ? Math.nextUp(column.range().lo())
                : column.range().lo();
        hi = column.range().hi();
        reason = column.refusal();
    }

    /** Checks rows and gives them, or what stands for an input that is absent; not to be changed. */
    double[] take(double[][] columns, double[] absent, int count, Rejects rejects) {
        if (at < 0) {
            return absent;
        }
        double[] from = columns[at];
        // rows with the bits of the last ones, as constants have, need no second check
        if (count > known || !Arrays.equals(from, 0, count, values, 0, count)) {
            check(from, count, rejects);
        }
        return values;
    }

    private void check(double[] from, int count, Rejects rejects) {
        int good = 0;
        for (int i = 0; i < count; i++) {
            double x = from[i];
            values[i] = x;
            good += x >= lo && x <= hi ? 1 : 0;
        }
        known = good == count ? count : 0;
        for (int i = 0; good < count && i < count; i++) {
            if (!(values[i] >= lo && values[i] <= hi)) {
                rejects.reject(i, reason);
                values[i] = 1;
            }
        }
    }
}
