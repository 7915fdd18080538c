package io.github.stoplag.driver;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.PublishedRange;
import io.github.stoplag.source.Source;
import java.util.List;
import java.util.Objects;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TruncatedNormalDistribution;

/**
 * The deceleration drivers choose, as a normal distribution cut off at zero and at what the road and the brakes allow.
 *
 * <p>a ~ N(m, SD²) given 0 ≤ a ≤ a_max
 *
 * <p>a in m/s². Range: m and SD (0, 15] m/s², a_max (0, 200] m/s². The mean of the cut distribution lies below m where
 * the upper cut bites. At least 0.001 of the normal must be left.
 *
 * <pre>{@code
 * ChosenDeceleration chosen = ChosenDeceleration.ofQuantiles(0.15, Deceleration.mps2(3), 0.85,
 *         Deceleration.mps2(5), Deceleration.mps2(9), Source.assumed("invented example"));
 * chosen.quantile(0.5); // 4.00002 m/s²
 * }</pre>
 */
public final class ChosenDeceleration {
    private static final Catalogue<PublishedRange> PUBLISHED =
            Catalogue.readRanges("chosen deceleration", ChosenDeceleration.class, "chosen_decelerations.csv");

    private final Distribution.TruncatedNormal law;
    private final Source source;

    private ChosenDeceleration(double meanMps2, double sdMps2, double mostMps2, Source source) {
        Check.above("mean deceleration", meanMps2, 0, 15, "m/s²");
        Check.above("standard deviation of the deceleration", sdMps2, 0, 15, "m/s²");
        Ranges.BRAKING.check("largest deceleration possible", mostMps2);
        this.law = new Distribution.TruncatedNormal(meanMps2, sdMps2, 0, mostMps2);
        this.source = source;
    }

    /**
     * Makes the distribution from mean and standard deviation before it is cut.
     *
     * @param mean the mean m
     * @param standardDeviation the standard deviation SD
     * @param most the largest deceleration that road and brakes allow a_max
     * @param source where the figures come from
     * @return the distribution
     * @throws IllegalArgumentException if a figure is out of range
     */
    public static ChosenDeceleration ofMeanAndSd(
            Deceleration mean, Deceleration standardDeviation, Deceleration most, Source source) {
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(most, "most");
        Objects.requireNonNull(standardDeviation, "standardDeviation");
        Objects.requireNonNull(source, "source");
        return new ChosenDeceleration(mean.inMps2(), standardDeviation.inMps2(), most.inMps2(), source);
    }

    /**
     * Makes the distribution from two quantiles of it before it is cut.
     *
     * <p>SD = (a₂ − a₁) / (z₂ − z₁), m = a₁ − SD z₁
     *
     * @param lowerProbability the lower share p₁ of drivers
     * @param lower the deceleration a₁ they do not exceed
     * @param upperProbability the higher share p₂
     * @param upper the deceleration a₂ they do not exceed
     * @param most the largest deceleration that road and brakes allow a_max
     * @param source where the figures come from
     * @return the distribution
     * @throws IllegalArgumentException if a figure is out of range or the upper quantile does not exceed the lower
     */
    public static ChosenDeceleration ofQuantiles(
            double lowerProbability,
            Deceleration lower,
            double upperProbability,
            Deceleration upper,
            Deceleration most,
            Source source) {
        Objects.requireNonNull(most, "most");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(upper, "upper");
        NormalDistribution standard = NormalDistribution.of(0, 1);
        double z1 = standard.inverseCumulativeProbability(
                ReactionDistribution.probability("lower probability", lowerProbability));
        double z2 = standard.inverseCumulativeProbability(
                ReactionDistribution.probability("upper probability", upperProbability));
        if (!(z2 > z1 && upper.compareTo(lower) > 0)) {
            throw new IllegalArgumentException(
                    "the upper quantile must exceed the lower in probability and deceleration, got " + lower + " at "
                            + Numbers.text(lowerProbability) + " and " + upper + " at "
                            + Numbers.text(upperProbability));
        }
        double sd = (upper.inMps2() - lower.inMps2()) / (z2 - z1);
        return new ChosenDeceleration(lower.inMps2() - sd * z1, sd, most.inMps2(), source);
    }

    /**
     * Lists single published figures of chosen decelerations: means, percentiles, ranges. For published distributions
     * see {@link DecelerationStudy}.
     *
     * @return the rows of the table in order
     */
    public static List<PublishedRange> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a published figure of chosen decelerations.
     *
     * @param id the name of the row
     * @return the figure
     * @throws IllegalArgumentException if no row has this name; the message offers the nearest
     */
    public static PublishedRange published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    /**
     * Gives the deceleration that a share of drivers does not exceed.
     *
     * @param probability the share, (0, 1) without its ends
     * @return the quantile
     * @throws IllegalArgumentException if the share is not between 0 and 1
     */
    public Deceleration quantile(double probability) {
        return Deceleration.mps2(law.quantile(ReactionDistribution.probability("probability", probability)));
    }

    /**
     * Gives the share of drivers who brake at most this hard.
     *
     * @param deceleration the deceleration
     * @return the share, 0 to 1
     */
    public double cdf(Deceleration deceleration) {
        return law.cdf(deceleration.inMps2());
    }

    /**
     * Gives the law of the deceleration in m/s², for an axis of a sweep say.
     *
     * @return the same distribution, bit by bit
     */
    public Distribution distribution() {
        return law;
    }

    /**
     * Gives the mean of the cut distribution.
     *
     * @return the mean
     */
    public Deceleration mean() {
        return Deceleration.mps2(TruncatedNormalDistribution.of(law.mean(), law.standardDeviation(), law.lo(), law.hi())
                .getMean());
    }

    /**
     * Gives where the figures come from.
     *
     * @return the source
     */
    public Source source() {
        return source;
    }

    @Override
    public String toString() {
        return "chosen deceleration, normal with mean " + Numbers.text(law.mean()) + " m/s², SD "
                + Numbers.text(law.standardDeviation())
                + " m/s², cut to " + Numbers.text(law.lo()) + " to "
                + Numbers.text(law.hi()) + " m/s²";
    }
}
