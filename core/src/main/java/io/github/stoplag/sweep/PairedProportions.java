package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Numbers;

/**
 * Two yes-no results on the same draws: common random numbers, so that only the draws where they differ speak for
 * either.
 *
 * @param both how often both held
 * @param firstOnly how often only the first held
 * @param secondOnly how often only the second held
 * @param neither how often neither held
 */
public record PairedProportions(long both, long firstOnly, long secondOnly, long neither) {
    /**
     * Checks the counts.
     *
     * @param both how often both held
     * @param firstOnly how often only the first held
     * @param secondOnly how often only the second held
     * @param neither how often neither held
     * @throws IllegalArgumentException if one is negative or all are 0
     */
    public PairedProportions {
        if (both < 0 || firstOnly < 0 || secondOnly < 0 || neither < 0 || both + firstOnly + secondOnly + neither < 1) {
            throw new IllegalArgumentException("counts must not be negative and not all 0, got " + both + ", "
                    + firstOnly + ", " + secondOnly + ", " + neither);
        }
    }

    /**
     * Gives the number of draws.
     *
     * @return the sum of the four counts
     */
    public long count() {
        return both + firstOnly + secondOnly + neither;
    }

    /**
     * Gives the share for which the first held.
     *
     * @return the proportion
     */
    public Proportion first() {
        return new Proportion(both + firstOnly, count());
    }

    /**
     * Gives the share for which the second held.
     *
     * @return the proportion
     */
    public Proportion second() {
        return new Proportion(both + secondOnly, count());
    }

    /**
     * Gives the difference of the shares.
     *
     * @return first less second
     */
    public double difference() {
        return (double) (firstOnly - secondOnly) / count();
    }

    /**
     * Gives an interval of the difference that knows the draws are common.
     *
     * <p>d ± z √(b + c − (b − c)²/n) / n with b = firstOnly + ½, c = secondOnly + ½, n = count + 2, d = (b − c)/n
     *
     * <p>Source: Wald's interval with the adjustment of Agresti &amp; Min, Statistics in Medicine 24, 2005 (from
     * memory; its coverage is tested by enumeration).
     *
     * @param confidence the confidence, [0.5, 1)
     * @return the interval, within [−1, 1]
     * @throws IllegalArgumentException if the confidence is out of range
     */
    public Interval differenceInterval(double confidence) {
        double z = Interval.z(confidence);
        double b = firstOnly + 0.5;
        double c = secondOnly + 0.5;
        double n = count() + 2.0;
        double d = (b - c) / n;
        double half = z * Math.sqrt(b + c - (b - c) * (b - c) / n) / n;
        return new Interval(Math.max(-1, d - half), Math.min(1, d + half), confidence);
    }

    @Override
    public String toString() {
        return "difference " + Numbers.text(difference(), 4) + ", " + differenceInterval(0.95);
    }
}
