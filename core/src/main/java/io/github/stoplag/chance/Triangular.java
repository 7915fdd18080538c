package io.github.stoplag.chance;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;

/**
 * Triangular between two values with its peak at a third: what is known of the sum of two even rectangles when the peak
 * is in the middle (JCGM 100:2008, 4.3.9, u² = a²/6; JCGM 101:2008, 6.4.5; both from memory).
 *
 * @param lo the lowest value
 * @param peak the most likely value, [lo, hi]
 * @param hi the highest value
 */
public record Triangular(double lo, double peak, double hi) implements Distribution {
    /**
     * Checks the order.
     *
     * @param lo the lowest value
     * @param peak the most likely value
     * @param hi the highest value
     * @throws IllegalArgumentException if they are not finite with lo ≤ peak ≤ hi and lo &lt; hi
     */
    public Triangular {
        if (!(lo <= peak && peak <= hi && lo < hi && hi - lo < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "a triangular distribution must have finite lo ≤ peak ≤ hi, lo < hi, got " + Numbers.text(lo) + ", "
                            + Numbers.text(peak) + ", " + Numbers.text(hi));
        }
    }

    @Override
    public double quantile(double probability) {
        return at(probability, 1 - Ranges.PROBABILITY.check(probability));
    }

    @Override
    public double upperQuantile(double exceedance) {
        return at(1 - Ranges.PROBABILITY.check(exceedance), exceedance);
    }

    private double at(double below, double above) {
        double width = hi - lo;
        return below * width <= peak - lo
                ? lo + Math.sqrt(below * width * (peak - lo))
                : hi - Math.sqrt(above * width * (hi - peak));
    }

    @Override
    public double cdf(double value) {
        double width = hi - lo;
        if (value <= lo) {
            return 0;
        }
        if (value >= hi) {
            return 1;
        }
        return value <= peak
                ? (value - lo) / width * ((value - lo) / (peak - lo))
                : 1 - (hi - value) / width * ((hi - value) / (hi - peak));
    }

    @Override
    public String canonical() {
        return Distribution.canonical("triangular", lo, peak, hi);
    }
}
