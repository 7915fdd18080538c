package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Numbers;
import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.Objects;

/**
 * Count, mean, variance and extremes of a stream of numbers, mergeable. NaN is passed over.
 *
 * <p>Merging: δ = m₂ − m₁, m = m₁ + δ n₂/n, M = M₁ + M₂ + δ² n₁ n₂/n, M the sum of squared deviations. Source: Chan,
 * Golub &amp; LeVeque, The American Statistician 37, 1983 (from memory). Not for sharing between threads.
 */
public final class Moments {
    private long count;
    private double mean;
    private double squares;
    private double min = Double.POSITIVE_INFINITY;
    private double max = Double.NEGATIVE_INFINITY;

    /** Makes an empty stream. */
    public Moments() {}

    /**
     * Adds the first values of an array, in two passes.
     *
     * @param values the values
     * @param length how many of them
     */
    public void add(double[] values, int length) {
        Objects.requireNonNull(values, "values");
        double lo = Double.POSITIVE_INFINITY;
        double hi = Double.NEGATIVE_INFINITY;
        double even = 0;
        double odd = 0;
        // two sums, so that one addition need not wait for the other
        for (int i = 0; i + 1 < length; i += 2) {
            double x = values[i];
            double y = values[i + 1];
            even += x;
            odd += y;
            lo = x < lo ? x : lo;
            lo = y < lo ? y : lo;
            hi = x > hi ? x : hi;
            hi = y > hi ? y : hi;
        }
        if ((length & 1) == 1) {
            double x = values[length - 1];
            even += x;
            lo = Math.min(lo, x);
            hi = Math.max(hi, x);
        }
        double sum = even + odd;
        if (Double.isNaN(sum)) {
            for (int i = 0; i < length; i++) {
                add(values[i]);
            }
        } else if (length > 0) {
            merge(length, sum / length, squares(values, length, sum / length), lo, hi);
        }
    }

    private static double squares(double[] values, int length, double centre) {
        double even = 0;
        double odd = 0;
        for (int i = 0; i + 1 < length; i += 2) {
            even += (values[i] - centre) * (values[i] - centre);
            odd += (values[i + 1] - centre) * (values[i + 1] - centre);
        }
        if ((length & 1) == 1) {
            even += (values[length - 1] - centre) * (values[length - 1] - centre);
        }
        return even + odd;
    }

    /**
     * Adds one value.
     *
     * @param value the value
     */
    public void add(double value) {
        if (!Double.isNaN(value)) {
            merge(1, value, 0, value, value);
        }
    }

    /**
     * Adds another stream.
     *
     * @param later the other stream, unchanged
     */
    public void absorb(Moments later) {
        Objects.requireNonNull(later, "later");
        merge(later.count, later.mean, later.squares, later.min, later.max);
    }

    private void merge(long n, double m, double squared, double lo, double hi) {
        if (n == 0) {
            return;
        }
        if (count == 0) {
            mean = m;
            squares = squared;
        } else {
            double total = (double) count + n;
            double delta = m - mean;
            mean += delta * (n / total);
            squares += squared + delta * delta * (count / total * n);
        }
        count += n;
        min = Math.min(min, lo);
        max = Math.max(max, hi);
    }

    /** Empties the stream. */
    public void clear() {
        count = 0;
        mean = 0;
        squares = 0;
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
        SavedState.save(out, "moments", content -> {
            content.writeLong(count);
            content.writeDouble(mean);
            content.writeDouble(squares);
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
        SavedState.restore(in, "moments", content -> {
            count = SavedState.length(content.readLong(), Long.MAX_VALUE);
            mean = content.readDouble();
            squares = content.readDouble();
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
     * Gives the mean.
     *
     * @return the mean
     * @throws IllegalArgumentException if the stream is empty
     */
    public double mean() {
        needs(1);
        return mean;
    }

    /**
     * Gives the variance, with n − 1 below.
     *
     * @return the variance
     * @throws IllegalArgumentException if there are fewer than two values
     */
    public double variance() {
        needs(2);
        return squares / (count - 1);
    }

    /**
     * Gives the standard deviation.
     *
     * @return the root of the variance
     * @throws IllegalArgumentException if there are fewer than two values
     */
    public double standardDeviation() {
        return Math.sqrt(variance());
    }

    /**
     * Gives the smallest value.
     *
     * @return the minimum
     * @throws IllegalArgumentException if the stream is empty
     */
    public double min() {
        needs(1);
        return min;
    }

    /**
     * Gives the largest value.
     *
     * @return the maximum
     * @throws IllegalArgumentException if the stream is empty
     */
    public double max() {
        needs(1);
        return max;
    }

    /**
     * Gives a normal-theory interval of the mean for independent values: m ± z s/√n.
     *
     * <p>It needs enough values for their mean to be nearly normal. Where few values make up most of the mean, as with
     * rare events, it covers far less often than it says; {@link #boundedMeanInterval} is for that.
     *
     * @param confidence the confidence, [0.5, 1)
     * @return the interval
     * @throws IllegalArgumentException if there are fewer than two values or the confidence is out of range
     */
    public Interval meanInterval(double confidence) {
        double half = Interval.z(confidence) * standardDeviation() / Math.sqrt((double) count);
        return new Interval(mean - half, mean + half, confidence);
    }

    /**
     * Gives an interval of the mean of independent values in [lo, hi] that also holds where few of them make up most of
     * the mean:
     *
     * <pre>
     *   (y + z²/2n ± z √(s²/n + z²/4n²)) / (1 + z²/n)   for y = (x − lo)/(hi − lo),
     * </pre>
     *
     * <p>widened to the normal-theory interval where that reaches further, within [lo, hi]. It is Wilson's form with
     * the variance found, s², in place of the largest possible, y (1 − y): as narrow as the normal one for many values,
     * and never narrower than z²/n (hi − lo). Source: our own combination; its coverage is tested on probabilities from
     * 10⁻⁴ up. Where nearly all of a mean comes from values too rare to be among those drawn, no interval from the
     * draws alone can know it.
     *
     * @param confidence the confidence, [0.5, 1)
     * @param lo the least value there can be
     * @param hi the largest value there can be
     * @return the interval, within [lo, hi]
     * @throws IllegalArgumentException if lo is not below hi or one is not finite, there are fewer than two values, one
     *     is outside [lo, hi], or the confidence is out of range
     */
    public Interval boundedMeanInterval(double confidence, double lo, double hi) {
        if (!(lo < hi && hi - lo < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "bounds must be finite lo < hi, got " + Numbers.text(lo) + " and " + Numbers.text(hi));
        }
        Interval normal = meanInterval(confidence);
        if (!(min >= lo && max <= hi)) {
            throw new IllegalArgumentException("values must be in [" + Numbers.text(lo) + ", " + Numbers.text(hi)
                    + "], got " + Numbers.text(min) + " to " + Numbers.text(max));
        }
        double z = Interval.z(confidence);
        double square = z * z / count;
        double range = hi - lo;
        double share = (mean - lo) / range;
        double half = Math.sqrt(square * (squares / count / (range * range) + square / 4));
        double from = lo + range * (share + square / 2 - half) / (1 + square);
        double to = lo + range * (share + square / 2 + half) / (1 + square);
        return new Interval(
                Math.max(lo, Math.min(from, normal.lo())), Math.min(hi, Math.max(to, normal.hi())), confidence);
    }

    private void needs(long least) {
        if (count < least) {
            throw new IllegalArgumentException("statistics need at least " + least + " values, got " + count);
        }
    }

    @Override
    public String toString() {
        return count == 0
                ? "no values"
                : count + " values, mean " + Numbers.text(mean) + ", " + Numbers.text(min) + " to " + Numbers.text(max);
    }
}
