package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Numbers;
import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.Arrays;
import java.util.Objects;

/**
 * Counts in equal bins [lo + i w, lo + (i + 1) w), with what lies below and above counted apart; mergeable. NaN is
 * passed over.
 */
public final class Histogram {
    private static final int MOST_BINS = 100_000;

    private final double lo;
    private final double hi;
    private final long[] bins;
    private long below;
    private long above;

    private Histogram(double lo, double hi, int bins) {
        this.lo = lo;
        this.hi = hi;
        this.bins = new long[bins];
    }

    /**
     * Makes an empty histogram.
     *
     * @param lo the lower end of the first bin
     * @param hi the upper end of the last bin
     * @param bins how many bins, [1, 100000]
     * @return the histogram
     * @throws IllegalArgumentException if lo is not below hi, one is not finite, or the number of bins is out of range
     */
    public static Histogram of(double lo, double hi, int bins) {
        if (!(lo < hi && hi - lo < Double.POSITIVE_INFINITY && bins >= 1 && bins <= MOST_BINS)) {
            throw new IllegalArgumentException("a histogram must have finite lo < hi and 1 to 100000 bins, got "
                    + Numbers.text(lo) + " to " + Numbers.text(hi) + " in " + bins);
        }
        return new Histogram(lo, hi, bins);
    }

    /**
     * Adds the first values of an array.
     *
     * @param values the values
     * @param length how many of them
     */
    public void add(double[] values, int length) {
        Objects.requireNonNull(values, "values");
        double perBin = bins.length / (hi - lo);
        for (int i = 0; i < length; i++) {
            double x = values[i];
            if (x >= lo && x < hi) {
                bins[Math.min(bins.length - 1, (int) ((x - lo) * perBin))]++;
            } else if (x < lo) {
                below++;
            } else if (x >= hi) {
                above++;
            }
        }
    }

    /**
     * Adds another histogram.
     *
     * @param other one with the same bins, unchanged
     * @throws IllegalArgumentException if its bins differ
     */
    public void absorb(Histogram other) {
        Objects.requireNonNull(other, "other");
        if (!sameBins(other)) {
            throw new IllegalArgumentException("histograms must have the same bins, got " + this + " and " + other);
        }
        for (int i = 0; i < bins.length; i++) {
            bins[i] += other.bins[i];
        }
        below += other.below;
        above += other.above;
    }

    private boolean sameBins(Histogram other) {
        return other.lo == lo && other.hi == hi && other.bins.length == bins.length;
    }

    /** Empties the histogram. */
    public void clear() {
        Arrays.fill(bins, 0);
        below = 0;
        above = 0;
    }

    /**
     * Writes the content with all its bits.
     *
     * @param out where it goes
     * @throws IOException if it cannot be written
     */
    public void save(DataOutput out) throws IOException {
        SavedState.save(out, "histogram counts", content -> {
            content.writeDouble(lo);
            content.writeDouble(hi);
            content.writeInt(bins.length);
            SavedState.counts(content, bins);
            content.writeLong(below);
            content.writeLong(above);
        });
    }

    /**
     * Replaces the content by one that was saved from a histogram with the same bins. After a failure the object must
     * not be used.
     *
     * @param in where it comes from
     * @throws IOException if it cannot be read, ends too early, or holds something else
     */
    public void restore(DataInput in) throws IOException {
        SavedState.restore(in, "histogram counts", content -> {
            Histogram saved = new Histogram(
                    content.readDouble(),
                    content.readDouble(),
                    Math.toIntExact(SavedState.length(content.readInt(), MOST_BINS)));
            if (!sameBins(saved)) {
                throw new IOException("a saved histogram must have " + this + ", got " + saved);
            }
            SavedState.counts(content, bins);
            below = SavedState.length(content.readLong(), Long.MAX_VALUE);
            above = SavedState.length(content.readLong(), Long.MAX_VALUE);
        });
    }

    /**
     * Gives the counts.
     *
     * @return a copy, one for each bin
     */
    public long[] counts() {
        return bins.clone();
    }

    /**
     * Gives the lower end of a bin; of bin number n, the upper end of the last.
     *
     * @param bin the bin
     * @return the bound
     */
    public double edge(int bin) {
        return lo + bin * ((hi - lo) / bins.length);
    }

    /**
     * Gives the count below the first bin.
     *
     * @return how many
     */
    public long below() {
        return below;
    }

    /**
     * Gives the count at or above the end of the last bin.
     *
     * @return how many
     */
    public long above() {
        return above;
    }

    @Override
    public String toString() {
        return bins.length + " bins from " + Numbers.text(lo) + " to " + Numbers.text(hi);
    }
}
