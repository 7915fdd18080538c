package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Quantiles of a stream of numbers from counts in 256 cells per octave, mergeable; merging is exact and in any order.
 *
 * <p>Accuracy: a quantile is within 1/512 (0.2 %) of an exact order statistic over the whole range of doubles; sizes
 * below 2⁻¹⁰²² (2e-308) count as 0. Infinite values are counted as such, NaN is passed over. Cells are cut out of the
 * bits of the double, without a logarithm.
 *
 * <p>Memory: 2 kB for each octave met, of either sign: 16 kB for values that spread over a factor of 200, at most 8.4
 * MB.
 *
 * <p>Source: buckets of relative width as in Masson, Rim &amp; Lee, DDSketch, PVLDB 12, 2019 (from memory), with linear
 * cells inside an octave.
 */
public final class QuantileSketch {
    /** The largest relative error of a quantile. */
    public static final double RELATIVE_ERROR = 1.0 / 512;

    private static final int CELL_BITS = 8;
    private static final int CELLS = 1 << CELL_BITS;
    private static final int SHIFT = 52 - CELL_BITS;
    private static final int OCTAVES = 1 << 11;
    private static final int END = -1;

    // by sign and exponent, the first twelve bits of a double, in the order of the numbers: negative ones from the
    // largest size on
    private final long[] @Nullable [] octaves = new long[2 * OCTAVES][];
    private long count;
    private double min = Double.POSITIVE_INFINITY;
    private double max = Double.NEGATIVE_INFINITY;

    /** Makes an empty sketch. */
    public QuantileSketch() {}

    /**
     * Adds the first values of an array.
     *
     * @param values the values
     * @param length how many of them
     */
    public void add(double[] values, int length) {
        Objects.requireNonNull(values, "values");
        for (int i = 0; i < length; i++) {
            add(values[i]);
        }
    }

    /**
     * Adds one value.
     *
     * @param value the value
     */
    public void add(double value) {
        if (Double.isNaN(value)) {
            return;
        }
        int place = place(value);
        long[] cells = octaves[place >>> CELL_BITS];
        if (cells == null) {
            cells = octave(place >>> CELL_BITS);
        }
        cells[place & (CELLS - 1)]++;
        count++;
        min = Math.min(min, value);
        max = Math.max(max, value);
    }

    /** Numbers the cells in the order of their values; both zeros are in the first one of the positive numbers. */
    private static int place(double value) {
        int bits = (int) (Double.doubleToRawLongBits(value + 0.0) >>> SHIFT);
        int sign = OCTAVES << CELL_BITS;
        return bits < sign ? bits + sign : ~bits & (sign - 1);
    }

    /** The middle of a cell: the bits of its lower end and half a cell more. */
    private static double middle(int place) {
        int sign = OCTAVES << CELL_BITS;
        boolean negative = place < sign;
        long size = negative ? ~place & (sign - 1) : place - sign;
        if (size >>> CELL_BITS == 0) {
            return 0;
        }
        double middle = size >>> CELL_BITS == OCTAVES - 1
                ? Double.POSITIVE_INFINITY
                : Double.longBitsToDouble((size << SHIFT) | (1L << (SHIFT - 1)));
        return negative ? -middle : middle;
    }

    private long[] octave(int index) {
        long[] cells = octaves[index];
        if (cells == null) {
            cells = new long[CELLS];
            octaves[index] = cells;
        }
        return cells;
    }

    /**
     * Adds another sketch.
     *
     * @param other the other sketch, unchanged
     */
    public void absorb(QuantileSketch other) {
        Objects.requireNonNull(other, "other");
        if (other.count == 0) {
            return;
        }
        for (int i = 0; i < octaves.length; i++) {
            long[] more = other.octaves[i];
            if (more != null) {
                long[] cells = octave(i);
                for (int cell = 0; cell < CELLS; cell++) {
                    cells[cell] += more[cell];
                }
            }
        }
        count += other.count;
        min = Math.min(min, other.min);
        max = Math.max(max, other.max);
    }

    /** Empties the sketch. */
    public void clear() {
        // octaves met once are likely to be met again: kept
        for (int i = 0; count > 0 && i < octaves.length; i++) {
            long[] cells = octaves[i];
            if (cells != null) {
                Arrays.fill(cells, 0);
            }
        }
        count = 0;
        min = Double.POSITIVE_INFINITY;
        max = Double.NEGATIVE_INFINITY;
    }

    /**
     * Writes the content with all its bits.
     *
     * @param out where it goes
     * @throws IOException if it cannot be written
     */
    public void save(DataOutput out) throws IOException {
        SavedState.save(out, "quantiles", content -> {
            for (int i = 0; i < octaves.length; i++) {
                long[] cells = octaves[i];
                // one that was emptied is not written: the bytes tell of the values alone
                if (cells != null && Arrays.stream(cells).anyMatch(cell -> cell != 0)) {
                    content.writeShort(i);
                    SavedState.counts(content, cells);
                }
            }
            content.writeShort(END);
            content.writeDouble(min);
            content.writeDouble(max);
        });
    }

    /**
     * Replaces the content by one that was saved. After a failure the object must not be used.
     *
     * @param in where it comes from
     * @throws IOException if it cannot be read, ends too early, or holds something else
     */
    public void restore(DataInput in) throws IOException {
        SavedState.restore(in, "quantiles", content -> {
            Arrays.fill(octaves, null);
            count = 0;
            for (int i = content.readShort(); i != END; i = content.readShort()) {
                long[] cells = octave((int) SavedState.length(i, octaves.length - 1));
                SavedState.counts(content, cells);
                count += Arrays.stream(cells).sum();
            }
            min = content.readDouble();
            max = content.readDouble();
        });
    }

    /**
     * Gives the number of values.
     *
     * @return the count, NaN not counted
     */
    public long count() {
        return count;
    }

    /**
     * Gives a quantile: the order statistic of rank ⌈p n⌉ within {@link #RELATIVE_ERROR}; the extremes exactly.
     *
     * @param probability the share p at or below, [0, 1]
     * @return the quantile
     * @throws IllegalArgumentException if the sketch is empty or the share is out of range
     */
    public double quantile(double probability) {
        if (!(probability >= 0 && probability <= 1) || count == 0) {
            throw new IllegalArgumentException("a quantile needs at least 1 value and a probability in [0, 1], got "
                    + count + " values and " + Numbers.text(probability));
        }
        long rank = Math.max(1, (long) Math.ceil(probability * count));
        if (rank == 1) {
            return min;
        }
        if (rank >= count) {
            return max;
        }
        int place = -1;
        for (long below = 0; below < rank; ) {
            place++;
            long[] cells = octaves[place >>> CELL_BITS];
            if (cells == null) {
                place |= CELLS - 1;
            } else {
                below += cells[place & (CELLS - 1)];
            }
        }
        return Math.min(max, Math.max(min, middle(place)));
    }

    /**
     * Gives the share of values at or below a bound, to the cell the bound lies in.
     *
     * @param bound the bound
     * @return the share; off by at most the share of values within 0.4 % of the bound
     * @throws IllegalArgumentException if the sketch is empty
     */
    public double shareUpTo(double bound) {
        if (count == 0) {
            throw new IllegalArgumentException("a share needs at least 1 value, got 0");
        }
        long below = 0;
        for (int place = 0; place < octaves.length << CELL_BITS && middle(place) <= bound; place++) {
            long[] cells = octaves[place >>> CELL_BITS];
            if (cells == null) {
                // its last cell may lie above the bound: it holds nothing either way
                place |= CELLS - 1;
            } else {
                below += cells[place & (CELLS - 1)];
            }
        }
        return (double) below / count;
    }
    /**
     * Gives an interval of a quantile between two order statistics, free of any assumption about the distribution, and
     * widened by the error of the sketch.
     *
     * <pre>ranks n p − z √(n p (1 − p)), rounded down, and n p + z √(n p (1 − p)) + 1, rounded up</pre>
     *
     * <p>Source: the binomial distribution of the number of values below the quantile; David, Order Statistics (from
     * memory).
     *
     * @param share the share p below, [0, 1]
     * @param confidence the confidence, [0.5, 1)
     * @return the interval, or nothing if there are too few values for such ranks
     * @throws IllegalArgumentException if share or confidence is out of range
     */
    public Optional<Interval> interval(double share, double confidence) {
        long n = count();
        double half = Interval.z(confidence) * Math.sqrt(n * Ranges.PROBABILITY.check(share) * (1 - share));
        long lo = (long) Math.floor(n * share - half);
        long hi = (long) Math.ceil(n * share + half) + 1;
        return lo < 1 || hi > n
                ? Optional.empty()
                : Optional.of(
                        new Interval(rank(lo) * (1 - RELATIVE_ERROR), rank(hi) * (1 + RELATIVE_ERROR), confidence));
    }

    private double rank(long rank) {
        return quantile((rank - 0.5) / count());
    }
}
