package io.github.stoplag.examples.sweep;

import io.github.stoplag.sweep.Interval;
import io.github.stoplag.sweep.QuantileSketch;
import java.util.Optional;

/** Intervals of quantiles between two order statistics, free of any assumption about the distribution. */
final class QuantileInterval {
    // of the standard normal distribution, for an interval of 95 %
    private static final double SCORE = 1.959964;

    private QuantileInterval() {}

    /**
     * The interval of a quantile at 95 %, widened by the error of the sketch.
     *
     * <pre>ranks n p − z √(n p (1 − p)), rounded down, and n p + z √(n p (1 − p)) + 1, rounded up</pre>
     *
     * <p>Source: the binomial distribution of the number of values below the quantile; David, Order Statistics (from
     * memory).
     *
     * @return nothing if there are too few values for such ranks
     */
    static Optional<Interval> of(QuantileSketch sketch, double share) {
        long n = sketch.count();
        double half = SCORE * Math.sqrt(n * share * (1 - share));
        long lo = (long) Math.floor(n * share - half);
        long hi = (long) Math.ceil(n * share + half) + 1;
        if (lo < 1 || hi > n) {
            return Optional.empty();
        }
        return Optional.of(new Interval(
                rank(sketch, lo) * (1 - QuantileSketch.RELATIVE_ERROR),
                rank(sketch, hi) * (1 + QuantileSketch.RELATIVE_ERROR),
                SweepStudy.CONFIDENCE));
    }

    private static double rank(QuantileSketch sketch, long rank) {
        return sketch.quantile((rank - 0.5) / sketch.count());
    }
}
