package io.github.stoplag.chance;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;

/**
 * U-shaped between two values, as a quantity that swings like a sine: a temperature under cyclic control (JCGM
 * 100:2008, H.1.3.4; JCGM 101:2008, 6.4.6; both from memory). Standard deviation a/√2, a half the width.
 *
 * <p>x(p) = m − a cos(π p), m the middle.
 *
 * @param lo the lowest value
 * @param hi the highest value
 */
public record ArcSine(double lo, double hi) implements Distribution {
    /**
     * Checks the order of the bounds.
     *
     * @param lo the lowest value
     * @param hi the highest value
     * @throws IllegalArgumentException if lo is not below hi or one is not finite
     */
    public ArcSine {
        if (!(lo < hi && hi - lo < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("an arcsine distribution must have finite lo < hi, got "
                    + Numbers.text(lo) + " and " + Numbers.text(hi));
        }
    }

    @Override
    public double quantile(double probability) {
        double sine = StrictMath.sin(0.5 * Math.PI * Ranges.PROBABILITY.check(probability));
        return probability == 1 ? hi : lo + (hi - lo) * sine * sine;
    }

    @Override
    public double upperQuantile(double exceedance) {
        double sine = StrictMath.sin(0.5 * Math.PI * Ranges.PROBABILITY.check(exceedance));
        return exceedance == 1 ? lo : hi - (hi - lo) * sine * sine;
    }

    @Override
    public double cdf(double value) {
        double share = (Math.min(hi, Math.max(lo, value)) - lo) / (hi - lo);
        return 2 / Math.PI * StrictMath.asin(Math.sqrt(share));
    }

    @Override
    public String canonical() {
        return Distribution.canonical("arcsine", lo, hi);
    }
}
