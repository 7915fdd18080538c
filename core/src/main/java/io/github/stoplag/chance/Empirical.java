package io.github.stoplag.chance;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import java.util.Arrays;
import java.util.Objects;

/**
 * What was observed, joined linearly: with x₁ ≤ … ≤ x_n and h = (n − 1) p, x(p) = x₍⌊h⌋₊₁₎ + (h − ⌊h⌋)(x₍⌊h⌋₊₂₎ −
 * x₍⌊h⌋₊₁₎). Nothing beyond the extremes is drawn.
 *
 * <p>Source: Hyndman &amp; Fan, The American Statistician 50, 1996, definition 7 (from memory).
 */
public final class Empirical implements Distribution {
    private final double[] sorted;

    private Empirical(double[] sorted) {
        this.sorted = sorted;
    }

    /**
     * Takes observations in any order.
     *
     * @param observations at least two finite values in the axis's unit, their range finite too
     * @return the distribution
     * @throws IllegalArgumentException if there are fewer than two, one is not finite or their range is not
     */
    public static Empirical of(double... observations) {
        Objects.requireNonNull(observations, "observations");
        int count = observations.length;
        if (count < 2) {
            throw new IllegalArgumentException("an empirical distribution needs at least 2 observations, got " + count);
        }
        for (int i = 0; i < count; i++) {
            if (!Double.isFinite(observations[i])) {
                throw new IllegalArgumentException("observations must be finite, got " + Numbers.text(observations[i])
                        + " as number " + (i + 1) + " of " + count);
            }
        }
        double[] sorted = observations.clone();
        Arrays.sort(sorted);
        if (!Double.isFinite(sorted[count - 1] - sorted[0])) {
            throw new IllegalArgumentException("observations must have a finite range, got " + Numbers.text(sorted[0])
                    + " to " + Numbers.text(sorted[count - 1]));
        }
        return new Empirical(sorted);
    }

    /**
     * Gives the observations.
     *
     * @return a copy, in ascending order
     */
    public double[] observations() {
        return sorted.clone();
    }

    @Override
    public String canonical() {
        return Distribution.canonical("empirical", sorted);
    }

    @Override
    public double quantile(double probability) {
        double h = Ranges.PROBABILITY.check(probability) * (sorted.length - 1);
        int below = Math.min((int) h, sorted.length - 2);
        return sorted[below] + (h - below) * (sorted[below + 1] - sorted[below]);
    }

    @Override
    public double cdf(double value) {
        if (!(value >= sorted[0])) {
            return Double.isNaN(value) ? Double.NaN : 0;
        }
        int last = sorted.length - 1;
        if (value >= sorted[last]) {
            return 1;
        }
        // the last observation at or below the value, so that equal ones are counted whole
        int at = 0;
        for (int above = last; above - at > 1; ) {
            int middle = (at + above) >>> 1;
            if (sorted[middle] <= value) {
                at = middle;
            } else {
                above = middle;
            }
        }
        return (at + (value - sorted[at]) / (sorted[at + 1] - sorted[at])) / last;
    }

    @Override
    public String toString() {
        return "Empirical[" + sorted.length + " observations, " + Numbers.text(sorted[0]) + " to "
                + Numbers.text(sorted[sorted.length - 1]) + "]";
    }
}
