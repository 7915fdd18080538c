package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Numbers;
import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.Arrays;

/**
 * Quantiles of a stream of numbers from counts in 256 cells per octave, mergeable; merging is exact and in any order.
 *
 * <p>Accuracy: a quantile is within 1/512 (0.2 %) of an exact order statistic if that is from 2⁻²⁰ (1e-6) to 2²⁴ (1.7e7) in size;
 * smaller values count as 0, larger ones are known by the extremes. NaN is passed over. Cells are cut out of the bits of the
 * double, without a logarithm.
 *
 * <p>Source: buckets of relative width as in Masson, Rim &amp; Lee, DDSketch, PVLDB 12, 2019 (from memory), with linear cells inside
 * an octave.
 */
public final class QuantileSketch {
    /** The largest relative error of a quantile. */
    public static final double RELATIVE_ERROR = 1.0 / 512;

    private static final int CELL_BITS = 8;
    private static final int SHIFT = 52 - CELL_BITS;
    private static final double SMALLEST = 0x1p-20;
    private static final double LARGEST = 0x1p24;
    private static final int LOWEST = (int) (Double.doubleToRawLongBits(SMALLEST) >>> SHIFT);
    private static final int CELLS = (int) (Double.doubleToRawLongBits(LARGEST) >>> SHIFT) - LOWEST;

    // negative values from the largest to the smallest in size, 0, positive values; beyond the range in the end cells
    private final long[] counts = new long[2 * CELLS + 3];
    private long count;
    private double min = Double.POSITIVE_INFINITY;
    private double max = Double.NEGATIVE_INFINITY;

    /** Makes an empty sketch of 180 kB. */
    public QuantileSketch() {}

    /**
     * Adds the first values of an array.
     *
     * @param values the values
     * @param length how many of them
     */
    public void add(double[] values, int length) {
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
        double size = Math.abs(value);
        int cell = 0;
        if (size >= SMALLEST) {
            cell = size >= LARGEST ? CELLS + 1 : (int) (Double.doubleToRawLongBits(size) >>> SHIFT) - LOWEST + 1;
        }
        counts[CELLS + 1 + (value < 0 ? -cell : cell)]++;
        count++;
        min = Math.min(min, value);
        max = Math.max(max, value);
    }

    /**
     * Adds another sketch.
     *
     * @param other the other sketch, unchanged
     */
    public void absorb(QuantileSketch other) {
        if (other.count == 0) {
            return;
        }
        for (int i = 0; i < counts.length; i++) {
            counts[i] += other.counts[i];
        }
        count += other.count;
        min = Math.min(min, other.min);
        max = Math.max(max, other.max);
    }

    /** Empties the sketch. */
    public void clear() {
        if (count > 0) {
            Arrays.fill(counts, 0);
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
            SavedState.counts(content, counts);
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
            SavedState.counts(content, counts);
            count = Arrays.stream(counts).sum();
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
        int cell = 0;
        for (long below = counts[0]; below < rank; below += counts[cell]) {
            cell++;
        }
        return Math.min(max, Math.max(min, middle(cell - CELLS - 1)));
    }

    private double middle(int signedCell) {
        int cell = Math.abs(signedCell);
        if (cell == 0) {
            return 0;
        }
        if (cell > CELLS) {
            return signedCell < 0 ? min : max;
        }
        double from = Double.longBitsToDouble((long) (LOWEST + cell - 1) << SHIFT);
        double to = Double.longBitsToDouble((long) (LOWEST + cell) << SHIFT);
        return Math.signum(signedCell) * 0.5 * (from + to);
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
        for (int cell = 0; cell < counts.length && middle(cell - CELLS - 1) <= bound; cell++) {
            below += counts[cell];
        }
        return (double) below / count;
    }
}
