package io.github.stoplag.driver;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import java.util.Objects;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A normal time of reaction, for sources that state one.
 *
 * <p>t ~ N(m, SD²)
 *
 * <p>t in s. It has no long upper tail and gives some drivers a time below zero; {@link #evidence} says how many.
 * Range: m and SD (0, 30] s.
 */
public final class NormalReaction extends ReactionDistribution {
    private static final double NEGLIGIBLE_SHARE = 1e-6;

    private final double meanS;
    private final double sdS;

    private NormalReaction(double meanS, double sdS) {
        super(
                new Distribution.TruncatedNormal(meanS, sdS, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY),
                NormalDistribution.of(meanS, sdS));
        this.meanS = meanS;
        this.sdS = sdS;
    }

    /**
     * Makes the distribution from mean and standard deviation.
     *
     * @param mean the mean m
     * @param standardDeviation the standard deviation SD
     * @return the distribution
     * @throws IllegalArgumentException if either is not in (0, 30] s
     */
    public static NormalReaction ofMeanAndSd(TimeSpan mean, TimeSpan standardDeviation) {
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(standardDeviation, "standardDeviation");
        return new NormalReaction(
                time("mean reaction time", mean), time("standard deviation of the reaction time", standardDeviation));
    }

    @Override
    public Distribution distribution() {
        return new Distribution.TruncatedNormal(meanS, sdS, 0, Double.POSITIVE_INFINITY);
    }

    @Override
    public TimeSpan mode() {
        return mean();
    }

    @Override
    public NormalReaction scaledBy(double timeRatio) {
        return new NormalReaction(ratio(timeRatio) * meanS, timeRatio * sdS);
    }

    /**
     * Says what the distribution rests on, and what share of drivers it lets react before the signal.
     *
     * @return the evidence, with a caveat for a share of one in a million or more
     */
    @Override
    public Evidence evidence() {
        double share = cdf(TimeSpan.seconds(0));
        return super.evidence()
                .withCaveatIf(
                        !(share < NEGLIGIBLE_SHARE),
                        "a normal reaction time with mean " + Numbers.text(meanS) + " s and SD " + Numbers.text(sdS)
                                + " s lies below zero for a share of " + Numbers.text(share, 3) + " of drivers");
    }

    @Override
    public String toString() {
        return "normal reaction time, mean " + Numbers.text(meanS) + " s, SD " + Numbers.text(sdS) + " s";
    }
}
