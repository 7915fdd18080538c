package io.github.stoplag.chance;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

/**
 * How values spread, those of a sweep's axis say, given by the quantile function x(p) with P(X ≤ x(p)) = p and the
 * inverse of that, the cumulative distribution function F(x). Values are in one unit, the axis's.
 *
 * <p>Those of the library use {@code StrictMath} and plain arithmetic: the same bits on every JDK. A law of one's own
 * needs {@link #quantile}, {@link #cdf} and {@link #canonical}; it should keep to the same arithmetic if its draws are
 * to be repeated elsewhere.
 */
public interface Distribution {
    /**
     * Gives a quantile.
     *
     * @param probability the share below, [0, 1]
     * @return the value x(p); at 0 and 1 the ends of the distribution, infinite where it is open
     * @throws IllegalArgumentException if the probability is outside [0, 1]
     */
    double quantile(double probability);

    /**
     * Gives the quantile of 1 − q without the rounding of that difference.
     *
     * @param exceedance the share q above, [0, 1]
     * @return the value x(1 − q); at 0 and 1 the ends of the distribution, infinite where it is open
     * @throws IllegalArgumentException if the share is outside [0, 1]
     */
    default double upperQuantile(double exceedance) {
        return quantile(1 - share(exceedance));
    }

    private static double share(double share) {
        return Ranges.PROBABILITY.check(share);
    }

    /**
     * Gives {@link #quantile(double)} for many calls, with what does not depend on the probability worked out before.
     *
     * @return the function, with the same bits
     */
    default DoubleUnaryOperator quantileFunction() {
        return this::quantile;
    }

    /**
     * Gives {@link #upperQuantile(double)} for many calls.
     *
     * @return the function, with the same bits
     */
    default DoubleUnaryOperator upperQuantileFunction() {
        return this::upperQuantile;
    }

    /**
     * Gives the share at or below a value, F(x) = P(X ≤ x).
     *
     * @param value the value x
     * @return the share, [0, 1]; NaN for NaN
     */
    double cdf(double value);

    /**
     * Gives {@link #cdf(double)} for many calls.
     *
     * @return the function, with the same bits
     */
    default DoubleUnaryOperator cdfFunction() {
        return this::cdf;
    }

    /**
     * Gives all that decides its values as text, the same on every JDK: the name of the law and each parameter with all
     * its bits, see {@link #canonical(String, double...)}. Two plans are the same only if these texts are.
     *
     * @return the text
     */
    String canonical();

    /**
     * Makes a canonical text.
     *
     * @param law the name of the law
     * @param parameters its parameters
     * @return the name and each parameter as a hexadecimal floating-point number
     */
    static String canonical(String law, double... parameters) {
        Objects.requireNonNull(parameters, "parameters");
        Objects.requireNonNull(law, "law");
        return law
                + DoubleStream.of(parameters)
                        .mapToObj(x -> " " + Double.toHexString(x))
                        .collect(Collectors.joining());
    }

    /**
     * Says whether the quantile function bends smoothly and costs enough to be worth a table.
     *
     * @return true for the log-normal and the truncated normal
     */
    default boolean tabulated() {
        return false;
    }

    /**
     * A log-normal: ln X ~ N(μ, σ²), x(p) = exp(μ + σ z_p).
     *
     * @param mu the mean of the logarithm of the value in the axis's unit, [−50, 50]
     * @param sigma the standard deviation of the logarithm, (0, 5]
     */
    record LogNormal(double mu, double sigma) implements Distribution {
        /**
         * Checks the ranges.
         *
         * @param mu the mean of the logarithm of the value in the axis's unit, [−50, 50]
         * @param sigma the standard deviation of the logarithm, (0, 5]
         * @throws IllegalArgumentException if one is out of range
         */
        public LogNormal {
            Check.inRange("mean of the logarithm", mu, -50, 50, "");
            Check.above("standard deviation of the logarithm", sigma, 0, 5, "");
        }

        /**
         * Makes it from mean and standard deviation of the value: σ² = ln(1 + (SD/m)²), μ = ln m − σ²/2.
         *
         * @param mean the mean m, above 0
         * @param standardDeviation the standard deviation SD, above 0
         * @return the log-normal
         * @throws IllegalArgumentException if one is not above 0, or μ or σ is out of range
         */
        public static LogNormal ofMeanAndSd(double mean, double standardDeviation) {
            if (!(mean > 0 && standardDeviation > 0)) {
                throw new IllegalArgumentException("mean and standard deviation must be above 0, got "
                        + Numbers.text(mean) + " and " + Numbers.text(standardDeviation));
            }
            double spread = standardDeviation / mean;
            double variance = StrictMath.log1p(spread * spread);
            return new LogNormal(StrictMath.log(mean) - variance / 2, StrictMath.sqrt(variance));
        }

        @Override
        public double quantile(double probability) {
            return StrictMath.exp(mu + sigma * StandardNormal.quantile(share(probability)));
        }

        @Override
        public double upperQuantile(double exceedance) {
            return StrictMath.exp(mu + sigma * StandardNormal.upperQuantile(share(exceedance)));
        }

        @Override
        public String canonical() {
            return Distribution.canonical("log-normal", mu, sigma);
        }

        @Override
        public double cdf(double value) {
            return value <= 0 ? 0 : StandardNormal.cdf((StrictMath.log(value) - mu) / sigma);
        }

        @Override
        public boolean tabulated() {
            return true;
        }
    }

    /**
     * A normal kept to an interval by rejection: X ~ N(m, s²) given lo ≤ X ≤ hi. What lies outside is not drawn at all
     * and not moved to the ends; mean and standard deviation of what is drawn therefore differ from m and s.
     *
     * <p>x(p) = m + s Φ⁻¹(Φ(α) + p (Φ(β) − Φ(α))), α = (lo − m)/s, β = (hi − m)/s
     *
     * @param mean the mean m before truncation
     * @param standardDeviation the standard deviation s before truncation, above 0
     * @param lo the lowest value; may be −∞
     * @param hi the highest value; may be ∞
     */
    record TruncatedNormal(double mean, double standardDeviation, double lo, double hi) implements Distribution {
        private static final double LEAST_SHARE = 1e-3;

        /**
         * Checks that a share worth drawing from is left.
         *
         * @param mean the mean m before truncation
         * @param standardDeviation the standard deviation s before truncation, above 0
         * @param lo the lowest value
         * @param hi the highest value
         * @throws IllegalArgumentException if s is not above 0, lo not below hi, or [lo, hi] holds less than 0.001 of
         *     the normal
         */
        public TruncatedNormal {
            Check.inRange("mean", mean, -1e9, 1e9, "");
            Check.above("standard deviation", standardDeviation, 0, 1e9, "");
            double kept = StandardNormal.cdf((hi - mean) / standardDeviation)
                    - StandardNormal.cdf((lo - mean) / standardDeviation);
            if (!(lo < hi && kept >= LEAST_SHARE)) {
                throw new IllegalArgumentException("[" + Numbers.text(lo) + ", " + Numbers.text(hi)
                        + "] must hold at least 0.001 of the normal with mean " + Numbers.text(mean)
                        + " and standard deviation " + Numbers.text(standardDeviation) + ", got " + Numbers.text(kept));
            }
        }

        @Override
        public double quantile(double probability) {
            return quantileFunction().applyAsDouble(share(probability));
        }

        @Override
        public double upperQuantile(double exceedance) {
            return upperQuantileFunction().applyAsDouble(share(exceedance));
        }

        @Override
        public DoubleUnaryOperator quantileFunction() {
            double below = StandardNormal.cdf((lo - mean) / standardDeviation);
            double kept = StandardNormal.cdf((hi - mean) / standardDeviation) - below;
            return p -> p <= 0 || p >= 1
                    ? end(p)
                    : within(mean + standardDeviation * StandardNormal.quantile(below + p * kept));
        }

        @Override
        public DoubleUnaryOperator upperQuantileFunction() {
            double above = StandardNormal.cdf((mean - hi) / standardDeviation);
            double kept = StandardNormal.cdf((mean - lo) / standardDeviation) - above;
            return q -> q <= 0 || q >= 1
                    ? end(1 - q)
                    : within(mean + standardDeviation * StandardNormal.upperQuantile(above + q * kept));
        }

        @Override
        public String canonical() {
            return Distribution.canonical("truncated normal", mean, standardDeviation, lo, hi);
        }

        @Override
        public double cdf(double value) {
            return cdfFunction().applyAsDouble(value);
        }

        @Override
        public DoubleUnaryOperator cdfFunction() {
            double below = StandardNormal.cdf((lo - mean) / standardDeviation);
            double kept = StandardNormal.cdf((hi - mean) / standardDeviation) - below;
            return x -> {
                double within = Math.min(hi, Math.max(lo, x));
                return (StandardNormal.cdf((within - mean) / standardDeviation) - below) / kept;
            };
        }

        private double end(double probability) {
            return probability > 0 ? hi : lo;
        }

        // rounding alone can lead outside
        private double within(double value) {
            return Math.min(hi, Math.max(lo, value));
        }

        @Override
        public boolean tabulated() {
            return true;
        }
    }

    /**
     * Uniform between two values: x(p) = lo + p (hi − lo).
     *
     * @param lo the lowest value
     * @param hi the highest value
     */
    record Uniform(double lo, double hi) implements Distribution {
        /**
         * Checks the order of the bounds.
         *
         * @param lo the lowest value
         * @param hi the highest value
         * @throws IllegalArgumentException if lo is not below hi or one is not finite
         */
        public Uniform {
            if (!(lo < hi && hi - lo < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("a uniform distribution must have finite lo < hi, got "
                        + Numbers.text(lo) + " and " + Numbers.text(hi));
            }
        }

        @Override
        public double quantile(double probability) {
            return lo + share(probability) * (hi - lo);
        }

        @Override
        public String canonical() {
            return Distribution.canonical("uniform", lo, hi);
        }

        @Override
        public double cdf(double value) {
            return (Math.min(hi, Math.max(lo, value)) - lo) / (hi - lo);
        }
    }

    /**
     * Yes or no: 1 with a probability and 0 otherwise, x(p) = 0 for p ≤ 1 − r, else 1.
     *
     * @param probability the probability r of 1
     */
    record Bernoulli(double probability) implements Distribution {
        /**
         * Checks the range.
         *
         * @param probability the probability r of 1
         * @throws IllegalArgumentException if it is not in [0, 1]
         */
        public Bernoulli {
            share(probability);
        }

        @Override
        public double quantile(double share) {
            return Distribution.share(share) <= 1 - probability && probability < 1 ? 0 : 1;
        }

        @Override
        public String canonical() {
            return Distribution.canonical("yes or no", probability);
        }

        @Override
        public double cdf(double value) {
            return value >= 1 ? 1 : value >= 0 ? 1 - probability : value < 0 ? 0 : Double.NaN;
        }
    }
}
