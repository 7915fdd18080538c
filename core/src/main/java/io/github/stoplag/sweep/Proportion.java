package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Numbers;

/**
 * How many of a number of independent draws had a property.
 *
 * @param hits how many had it
 * @param count how many there were
 */
public record Proportion(long hits, long count) {
    /**
     * Checks the counts.
     *
     * @param hits how many had it
     * @param count how many there were
     * @throws IllegalArgumentException if hits is not in [0, count] or count is not positive
     */
    public Proportion {
        if (count < 1 || hits < 0 || hits > count) {
            throw new IllegalArgumentException(
                    "a proportion needs 0 <= hits <= count and count > 0, got " + hits + " of " + count);
        }
    }

    /**
     * Gives the share.
     *
     * @return hits over count
     */
    public double value() {
        return (double) hits / count;
    }

    /**
     * Gives Wilson's score interval.
     *
     * <p>(p + z²/2n ± z √(p(1−p)/n + z²/4n²)) / (1 + z²/n), z the two-sided normal quantile
     *
     * <p>For independent draws; of a Latin hypercube or a Sobol sequence it is too wide as a rule. Source: Wilson,
     * Journal of the American Statistical Association 22, 1927 (from memory).
     *
     * @param confidence the confidence, [0.5, 1)
     * @return the interval, within [0, 1]
     * @throws IllegalArgumentException if the confidence is out of range
     */
    public Interval wilson(double confidence) {
        double z = Interval.z(confidence);
        double p = value();
        double square = z * z / count;
        double centre = p + square / 2;
        double half = z * Math.sqrt(p * (1 - p) / count + square / (4 * count));
        double lo = hits == 0 ? 0 : (centre - half) / (1 + square);
        double hi = hits == count ? 1 : (centre + half) / (1 + square);
        return new Interval(lo, hi, confidence);
    }

    @Override
    public String toString() {
        return Numbers.text(value(), 4) + " (" + hits + " of " + count + "), " + wilson(0.95);
    }
}
