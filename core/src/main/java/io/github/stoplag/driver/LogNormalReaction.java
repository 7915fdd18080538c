package io.github.stoplag.driver;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A log-normal time of reaction: its logarithm is normal, which gives the long upper tail that is measured.
 *
 * <p>ln t ~ N(μ, σ²); median e<sup>μ</sup>, mean e<sup>μ + σ²/2</sup>, mode e<sup>μ − σ²</sup>, SD = mean
 * √(e<sup>σ²</sup> − 1), quantile e<sup>μ + σ z_p</sup>
 *
 * <p>t in s; z_p the standard normal quantile. Range: μ [−7, 4], σ (0, 3]; times (0, 30] s. Taoka 1989 and Koppa 1997
 * use it for brake reaction (from memory).
 */
public final class LogNormalReaction extends ReactionDistribution {
    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

    private final double mu;
    private final double sigma;

    private LogNormalReaction(double mu, double sigma) {
        super(
                new Distribution.LogNormal(
                        Check.inRange("mean of the logarithm of seconds", mu, -7, 4, ""),
                        Check.above("standard deviation of the logarithm of seconds", sigma, 0, 3, "")),
                LogNormalDistribution.of(mu, sigma));
        this.mu = mu;
        this.sigma = sigma;
    }

    /**
     * Makes the distribution from the mean and standard deviation of ln(t / 1 s).
     *
     * @param mu the mean μ of the logarithm
     * @param sigma the standard deviation σ of the logarithm
     * @return the distribution
     * @throws IllegalArgumentException if μ is not in [−7, 4] or σ not in (0, 3]
     */
    public static LogNormalReaction ofLogParameters(double mu, double sigma) {
        return new LogNormalReaction(mu, sigma);
    }

    /**
     * Makes the distribution from mean and standard deviation of the time.
     *
     * <p>σ² = ln(1 + (SD/m)²), μ = ln m − σ²/2
     *
     * @param mean the mean m
     * @param standardDeviation the standard deviation SD
     * @return the distribution
     * @throws IllegalArgumentException if either is not in (0, 30] s
     */
    public static LogNormalReaction ofMeanAndSd(TimeSpan mean, TimeSpan standardDeviation) {
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(standardDeviation, "standardDeviation");
        double m = time("mean reaction time", mean);
        double spread = time("standard deviation of the reaction time", standardDeviation) / m;
        double variance = Math.log1p(spread * spread);
        return new LogNormalReaction(Math.log(m) - variance / 2, Math.sqrt(variance));
    }

    /**
     * Makes the distribution from two quantiles.
     *
     * <p>σ = ln(t₂/t₁) / (z₂ − z₁), μ = ln t₁ − σ z₁
     *
     * @param lowerProbability the lower share p₁
     * @param lower the time t₁ within which it reacts
     * @param upperProbability the higher share p₂
     * @param upper the time t₂ within which it reacts
     * @return the distribution
     * @throws IllegalArgumentException if a share is not between 0 and 1, p₂ does not exceed p₁, or t₂ does not exceed
     *     t₁
     */
    public static LogNormalReaction ofQuantiles(
            double lowerProbability, TimeSpan lower, double upperProbability, TimeSpan upper) {
        Objects.requireNonNull(lower, "lower");
        Objects.requireNonNull(upper, "upper");
        double z1 = STANDARD.inverseCumulativeProbability(probability("lower probability", lowerProbability));
        double z2 = STANDARD.inverseCumulativeProbability(probability("upper probability", upperProbability));
        double t1 = time("lower quantile", lower);
        double t2 = time("upper quantile", upper);
        if (!(z2 > z1 && t2 > t1)) {
            throw new IllegalArgumentException("the upper quantile must exceed the lower in probability and time, got "
                    + Numbers.text(t1) + " s at " + Numbers.text(lowerProbability) + " and " + Numbers.text(t2)
                    + " s at " + Numbers.text(upperProbability));
        }
        double sigma = Math.log(t2 / t1) / (z2 - z1);
        return new LogNormalReaction(Math.log(t1) - sigma * z1, sigma);
    }

    /**
     * Makes the distribution from its mean and one quantile.
     *
     * <p>σ² − 2 z σ + 2 ln(t/m) = 0, so σ = z − √(z² − 2 ln(t/m)) where t exceeds m, z + √(…) where it does not; μ = ln
     * m − σ²/2
     *
     * <p>A quantile above the mean is met by two log-normals; the one with the smaller spread is taken.
     *
     * @param mean the mean m
     * @param probability the share p
     * @param quantile the time t within which it reacts
     * @return the distribution
     * @throws IllegalArgumentException if no log-normal has this mean and quantile: t exceeds m e<sup>z²/2</sup>, or is
     *     not below m while p ≤ 0.5; or if an input is out of range
     */
    public static LogNormalReaction ofMeanAndQuantile(TimeSpan mean, double probability, TimeSpan quantile) {
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(quantile, "quantile");
        double m = time("mean reaction time", mean);
        double t = time("quantile", quantile);
        double z = STANDARD.inverseCumulativeProbability(probability("probability", probability));
        double twoLog = 2 * Math.log(t / m);
        double discriminant = z * z - twoLog;
        if (!(discriminant >= 0) || (twoLog >= 0 && z <= 0)) {
            throw new IllegalArgumentException("no log-normal with mean " + Numbers.text(m) + " s has its "
                    + Numbers.text(probability) + " quantile at " + Numbers.text(t) + " s; the quantile must be "
                    + (z <= 0 ? "below the mean" : "at most " + Numbers.text(m * Math.exp(z * z / 2)) + " s"));
        }
        double root = Math.sqrt(discriminant);
        // 2 ln(t/m) / (z + root) is z − root without its cancellation
        double sigma = twoLog > 0 ? twoLog / (z + root) : z + root;
        return new LogNormalReaction(Math.log(m) - sigma * sigma / 2, sigma);
    }

    @Override
    public TimeSpan mode() {
        return TimeSpan.seconds(Math.exp(mu - sigma * sigma));
    }

    @Override
    public LogNormalReaction scaledBy(double timeRatio) {
        return new LogNormalReaction(mu + Math.log(ratio(timeRatio)), sigma);
    }

    /**
     * Gives the mean of ln(t / 1 s).
     *
     * @return μ
     */
    public double mu() {
        return mu;
    }

    /**
     * Gives the standard deviation of ln(t / 1 s).
     *
     * @return σ
     */
    public double sigma() {
        return sigma;
    }

    @Override
    public String toString() {
        return "log-normal reaction time, median " + Numbers.text(Math.exp(mu)) + " s, sigma " + Numbers.text(sigma);
    }
}
