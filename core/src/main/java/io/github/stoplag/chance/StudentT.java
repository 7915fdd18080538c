package io.github.stoplag.chance;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Ranges;

/**
 * Student's t, scaled and shifted: (X − m)/s has a t-distribution with ν degrees of freedom, as what is known of a mean
 * of few readings (s their standard deviation over √n, ν = n − 1; JCGM 101:2008, 6.4.9, from memory).
 *
 * <p>F(x) = 1 − ½ I_w(ν/2, ½) above m, w = ν/(ν + t²), by the continued fraction of the incomplete beta function; the
 * quantile by Newton's method. Standard deviation s √(ν/(ν − 2)), infinite up to ν = 2.
 *
 * @param mean the middle m
 * @param scale the scale s, above 0
 * @param degreesOfFreedom the degrees of freedom ν, [1, 1e6]
 */
public record StudentT(double mean, double scale, double degreesOfFreedom) implements Distribution {
    private static final int MOST_STEPS = 200;
    private static final double CENTRAL = 0.3;
    private static final double LN_SQRT_TWO_PI = 0.9189385332046728;

    /**
     * Checks the ranges.
     *
     * @param mean the middle m
     * @param scale the scale s
     * @param degreesOfFreedom the degrees of freedom ν
     * @throws IllegalArgumentException if one is out of range
     */
    public StudentT {
        Check.inRange("mean of Student's t", mean, -1e12, 1e12, "");
        Check.above("scale of Student's t", scale, 0, 1e12, "");
        Check.inRange("degrees of freedom", degreesOfFreedom, 1, 1e6, "");
    }

    @Override
    public double quantile(double probability) {
        Ranges.PROBABILITY.check(probability);
        return probability < 0.5 ? mean - scale * upperT(probability) : mean + scale * upperT(1 - probability);
    }

    @Override
    public double upperQuantile(double exceedance) {
        Ranges.PROBABILITY.check(exceedance);
        return exceedance < 0.5 ? mean + scale * upperT(exceedance) : mean - scale * upperT(1 - exceedance);
    }

    @Override
    public double cdf(double value) {
        double t = (value - mean) / scale;
        return t < 0 ? tail(-t) : 1 - tail(t);
    }

    @Override
    public String canonical() {
        return Distribution.canonical("Student's t", mean, scale, degreesOfFreedom);
    }

    @Override
    public boolean tabulated() {
        return true;
    }

    /** P(T > t) for t ≥ 0. */
    private double tail(double t) {
        double nu = degreesOfFreedom;
        if (t == Double.POSITIVE_INFINITY) {
            return 0;
        }
        double w = nu / (nu + t * t);
        double v = t * t / (nu + t * t);
        double front = StrictMath.exp(0.5 * nu * StrictMath.log(w) + 0.5 * StrictMath.log(v) - logBeta(nu));
        // the fraction converges fast below the mean of the beta law, its complement above
        return w < (0.5 * nu + 1) / (0.5 * nu + 2.5)
                ? 0.5 * front * fraction(0.5 * nu, 0.5, w) / (0.5 * nu)
                : 0.5 - 0.5 * front * fraction(0.5, 0.5 * nu, v) / 0.5;
    }

    /** The continued fraction of I_x(a, b) a B(a, b)/(xᵃ (1 − x)ᵇ), by the method of Lentz. */
    private static double fraction(double a, double b, double x) {
        double tiny = 1e-300;
        double c = 1;
        double d = 1 / nonZero(1 - (a + b) * x / (a + 1), tiny);
        double result = d;
        for (int m = 1; m <= MOST_STEPS; m++) {
            double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
            d = 1 / nonZero(1 + even * d, tiny);
            c = nonZero(1 + even / c, tiny);
            result *= d * c;
            double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
            d = 1 / nonZero(1 + odd * d, tiny);
            c = nonZero(1 + odd / c, tiny);
            result *= d * c;
            if (Math.abs(d * c - 1) < 1e-16) {
                break;
            }
        }
        return result;
    }

    private static double nonZero(double value, double tiny) {
        return Math.abs(value) < tiny ? tiny : value;
    }

    /** ln B(ν/2, ½) = ln √π + ln Γ(ν/2) − ln Γ((ν + 1)/2). */
    private static double logBeta(double nu) {
        return 0.5 * StrictMath.log(Math.PI) + logGamma(0.5 * nu) - logGamma(0.5 * nu + 0.5);
    }

    /** ln Γ(x) by Stirling's series, after Γ(x) = Γ(x + n)/(x (x + 1) … (x + n − 1)). */
    private static double logGamma(double x) {
        double product = 1;
        double at = x;
        while (at < 12) {
            product *= at;
            at++;
        }
        double r = 1 / (at * at);
        double series = (1.0 / 12 - r * (1.0 / 360 - r * (1.0 / 1260 - r * (1.0 / 1680 - r / 1188)))) / at;
        return (at - 0.5) * StrictMath.log(at) - at + LN_SQRT_TWO_PI + series - StrictMath.log(product);
    }

    /** The t that is exceeded with a probability of at most ½; infinite at 0. */
    private double upperT(double exceedance) {
        if (exceedance <= 0) {
            return Double.POSITIVE_INFINITY;
        }
        double nu = degreesOfFreedom;
        double z = StandardNormal.upperQuantile(exceedance);
        double t = z * (1 + (z * z + 1) / (4 * nu));
        double density = StrictMath.exp(-logBeta(nu)) / Math.sqrt(nu);
        for (int step = 0; step < MOST_STEPS; step++) {
            double tail = tail(t);
            double slope = density * StrictMath.exp(-0.5 * (nu + 1) * StrictMath.log1p(t * t / nu));
            // the logarithm of the tail is nearly linear in that of t far out, the tail itself in t near the middle
            double next = exceedance > CENTRAL
                    ? t + (tail - exceedance) / slope
                    : t * StrictMath.exp(StrictMath.log(tail / exceedance) * tail / (slope * t));
            boolean done = Math.abs(next - t) <= 1e-14 * Math.abs(next);
            t = next;
            if (done) {
                break;
            }
        }
        return t;
    }
}
