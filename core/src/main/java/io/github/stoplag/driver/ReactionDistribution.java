package io.github.stoplag.driver;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import org.apache.commons.statistics.distribution.ContinuousDistribution;

/** How a time of reaction spreads over drivers who do react. */
public abstract sealed class ReactionDistribution implements Evident permits LogNormalReaction, NormalReaction {
    private final Distribution law;
    private final ContinuousDistribution moments;

    /** Takes the law, and a library's form of it for density, mean and variance. */
    ReactionDistribution(Distribution law, ContinuousDistribution moments) {
        this.law = law;
        this.moments = moments;
    }

    @Override
    public Evidence evidence() {
        return Evidence.of(toString());
    }

    /**
     * Gives the law of the time in seconds, for an axis of a sweep say; a normal one, which gives some drivers a time
     * below zero, is cut there.
     *
     * @return the same log-normal, bit by bit, or the normal given that the time is positive
     */
    public Distribution distribution() {
        return law;
    }

    /**
     * Gives the time within which a share of drivers has reacted.
     *
     * @param probability the share, (0, 1) without its ends
     * @return the quantile
     * @throws IllegalArgumentException if the share is not between 0 and 1 or the time is beyond 1e6 s
     */
    public TimeSpan quantile(double probability) {
        return TimeSpan.seconds(law.quantile(probability("probability", probability)));
    }

    /**
     * Gives the share of drivers who have reacted by a time.
     *
     * @param time the time
     * @return the share, 0 to 1
     */
    public double cdf(TimeSpan time) {
        return law.cdf(time.inSeconds());
    }

    /**
     * Gives the probability density at a time.
     *
     * @param time the time
     * @return the density in 1/s
     */
    public double densityPerS(TimeSpan time) {
        return moments.density(time.inSeconds());
    }

    /**
     * Gives the mean.
     *
     * @return the mean
     */
    public TimeSpan mean() {
        return TimeSpan.seconds(moments.getMean());
    }

    /**
     * Gives the standard deviation.
     *
     * @return the standard deviation
     */
    public TimeSpan standardDeviation() {
        return TimeSpan.seconds(Math.sqrt(moments.getVariance()));
    }

    /**
     * Gives the median.
     *
     * @return the time by which half have reacted
     */
    public TimeSpan median() {
        return quantile(0.5);
    }

    /**
     * Gives the mode.
     *
     * @return the most frequent time
     */
    public abstract TimeSpan mode();

    /**
     * Gives the distribution with all times multiplied, as by a factor of surprise or distraction.
     *
     * @param timeRatio the factor, [0.1, 10]
     * @return the distribution of the multiplied time
     * @throws IllegalArgumentException if the factor is not in [0.1, 10]
     */
    public abstract ReactionDistribution scaledBy(double timeRatio);

    static double probability(String name, double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException(name + " must be in (0, 1), got " + Numbers.text(probability));
        }
        return probability;
    }

    static double time(String name, TimeSpan time) {
        return Ranges.REACTING.check(name, time.inSeconds());
    }

    static double ratio(double timeRatio) {
        return Check.inRange("factor on the reaction time", timeRatio, 0.1, 10, "");
    }
}
