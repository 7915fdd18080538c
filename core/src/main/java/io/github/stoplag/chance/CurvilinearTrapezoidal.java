package io.github.stoplag.chance;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;

/**
 * A rectangle whose limits are not exactly known: half its width is uniform within ± d of its stated value (JCGM
 * 101:2008, 6.4.3, from memory). Standard deviation √(w²/3 + d²/9).
 *
 * <p>Density ln((w + d)/max(|x − m|, w − d))/(4 d) up to |x − m| = w + d; m the middle, w half the stated width.
 *
 * @param lo the stated lowest value
 * @param hi the stated highest value
 * @param inexactness how far the limits may be off, d, (0, (hi − lo)/2)
 */
public record CurvilinearTrapezoidal(double lo, double hi, double inexactness) implements Distribution {
    private static final int MOST_STEPS = 100;

    /**
     * Checks the order of the bounds.
     *
     * @param lo the stated lowest value
     * @param hi the stated highest value
     * @param inexactness how far the limits may be off, d
     * @throws IllegalArgumentException if lo is not below hi, one is not finite, or d is not in (0, (hi − lo)/2)
     */
    public CurvilinearTrapezoidal {
        if (!(lo < hi && hi - lo < Double.POSITIVE_INFINITY && inexactness > 0 && 2 * inexactness < hi - lo)) {
            throw new IllegalArgumentException("a curvilinear trapezoid must have finite lo < hi and limits off by less"
                    + " than half its width, got " + Numbers.text(lo) + ", " + Numbers.text(hi) + " and "
                    + Numbers.text(inexactness));
        }
    }

    private double middle() {
        return 0.5 * (lo + hi);
    }

    private double reach() {
        return 0.5 * (hi - lo) + inexactness;
    }

    @Override
    public double quantile(double probability) {
        Ranges.PROBABILITY.check(probability);
        return probability <= 0.5 ? middle() - exceeded(probability) : middle() + exceeded(1 - probability);
    }

    @Override
    public double upperQuantile(double exceedance) {
        Ranges.PROBABILITY.check(exceedance);
        return exceedance <= 0.5 ? middle() + exceeded(exceedance) : middle() - exceeded(1 - exceedance);
    }

    @Override
    public double cdf(double value) {
        double off = value - middle();
        return off < 0 ? tail(-off) : 1 - tail(off);
    }

    /** P(X − m > y) for y ≥ 0: (r − y − y ln(r/y))/(4 d) under the slope, r = w + d; straight under the top. */
    private double tail(double y) {
        double r = reach();
        double top = r - 2 * inexactness;
        if (y >= r) {
            return 0;
        }
        if (y <= top) {
            return 0.5 - y * StrictMath.log(r / top) / (4 * inexactness);
        }
        double e = (r - y) / r;
        // Σ eᵏ/(k (k − 1)) near the end, where the difference would be rounding alone
        double sum = e < 0.01
                ? e * e * (1.0 / 2 + e * (1.0 / 6 + e * (1.0 / 12 + e * (1.0 / 20 + e * (1.0 / 30 + e / 42)))))
                : e + (1 - e) * StrictMath.log1p(-e);
        return r * sum / (4 * inexactness);
    }

    /** The y ≥ 0 that X − m exceeds with a probability of at most ½. */
    private double exceeded(double probability) {
        double r = reach();
        double top = r - 2 * inexactness;
        double density = StrictMath.log(r / top) / (4 * inexactness);
        double straight = (0.5 - probability) / density;
        if (probability <= 0) {
            return r;
        }
        if (straight <= top) {
            return straight;
        }
        // Newton's method from the middle of the slope side, kept between what is known to be too near and too far
        double near = top;
        double far = r;
        double y = r - Math.sqrt(8 * inexactness * r * probability);
        for (int step = 0; step < MOST_STEPS; step++) {
            y = y > near && y < far ? y : 0.5 * (near + far);
            double over = tail(y) - probability;
            near = over > 0 ? y : near;
            far = over > 0 ? far : y;
            double next = y + over * 4 * inexactness / StrictMath.log(r / y);
            if (!(Math.abs(next - y) > 1e-15 * r)) {
                return Math.min(r, Math.max(top, y));
            }
            y = next;
        }
        return 0.5 * (near + far);
    }

    @Override
    public String canonical() {
        return Distribution.canonical("curvilinear trapezoid", lo, hi, inexactness);
    }
}
