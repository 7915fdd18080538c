package io.github.stoplag.chance;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;

/**
 * A symmetric trapezoid between two values, its top a share of its base: between a rectangle, β = 1, and a triangle, β
 * = 0 (JCGM 100:2008, 4.3.9, u² = a² (1 + β²)/6, a half the base; JCGM 101:2008, 6.4.4; both from memory).
 *
 * @param lo the lowest value
 * @param hi the highest value
 * @param topRatio the top over the base, β, [0, 1]
 */
public record Trapezoidal(double lo, double hi, double topRatio) implements Distribution {
    /**
     * Checks order and ratio.
     *
     * @param lo the lowest value
     * @param hi the highest value
     * @param topRatio the top over the base
     * @throws IllegalArgumentException if lo is not below hi, one is not finite or the ratio is not in [0, 1]
     */
    public Trapezoidal {
        if (!(lo < hi && hi - lo < Double.POSITIVE_INFINITY && topRatio >= 0 && topRatio <= 1)) {
            throw new IllegalArgumentException(
                    "a trapezoidal distribution must have finite lo < hi and a top in [0, 1] of its base, got "
                            + Numbers.text(lo) + ", " + Numbers.text(hi) + " and " + Numbers.text(topRatio));
        }
    }

    @Override
    public double quantile(double probability) {
        Ranges.PROBABILITY.check(probability);
        return probability <= 0.5 ? lo + fromEnd(probability) : hi - fromEnd(1 - probability);
    }

    @Override
    public double upperQuantile(double exceedance) {
        Ranges.PROBABILITY.check(exceedance);
        return exceedance <= 0.5 ? hi - fromEnd(exceedance) : lo + fromEnd(1 - exceedance);
    }

    /** How far from its end the share of at most ½ reaches: under the slope a root, under the top a line. */
    private double fromEnd(double share) {
        double base = hi - lo;
        double slope = 0.5 * base * (1 - topRatio);
        double underSlope = 0.5 * (1 - topRatio) / (1 + topRatio);
        return share <= underSlope
                ? Math.sqrt(share * slope * base * (1 + topRatio))
                : slope + (share - underSlope) * 0.5 * base * (1 + topRatio);
    }

    @Override
    public double cdf(double value) {
        double fromLo = Math.min(hi, Math.max(lo, value)) - lo;
        double fromHi = hi - lo - fromLo;
        return fromLo <= fromHi ? below(fromLo) : fromHi <= fromLo ? 1 - below(fromHi) : Double.NaN;
    }

    private double below(double fromEnd) {
        double base = hi - lo;
        double slope = 0.5 * base * (1 - topRatio);
        return fromEnd <= slope
                ? fromEnd == 0 ? 0 : fromEnd / slope * (fromEnd / (base * (1 + topRatio)))
                : (2 * fromEnd - slope) / (base * (1 + topRatio));
    }

    @Override
    public String canonical() {
        return Distribution.canonical("trapezoidal", lo, hi, topRatio);
    }
}
