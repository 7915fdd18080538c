package io.github.stoplag.driver;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * Drivers of whom a share reacts, with a distribution of its time, and the rest does not.
 *
 * <p>P(reacted by t) = r F(t); the time within which a share p of all drivers reacts is F⁻¹(p / r) for p &lt; r
 *
 * <p>r responding share; F distribution over those who react. A share beyond r is the named outcome {@link
 * Quantile.NoResponse}, not an infinite time.
 *
 * @param reaction the distribution F over drivers who react
 * @param respondingShare the share r of drivers who react, (0, 1]
 */
public record DriverResponse(ReactionDistribution reaction, double respondingShare) {
    /**
     * Checks the share.
     *
     * @param reaction the distribution F over drivers who react
     * @param respondingShare the share r of drivers who react, (0, 1]
     * @throws IllegalArgumentException if the responding share is not in (0, 1]
     */
    public DriverResponse {
        Objects.requireNonNull(reaction, "reaction");
        Check.above("responding share of drivers", respondingShare, 0, 1, "");
    }

    /** The time within which a share of all drivers reacts. */
    public sealed interface Quantile {
        /**
         * That many drivers react.
         *
         * @param time the time within which they do
         * @param evidence what it rests on, with a caveat where it lies before the signal
         */
        record Responds(TimeSpan time, Evidence evidence) implements Quantile, Evident {

            /**
             * Refuses nulls.
             *
             * @param time the time within which they do
             * @param evidence what it rests on, with a caveat where it lies before the signal
             * @throws NullPointerException if one that is required is null
             */
            public Responds {
                Objects.requireNonNull(evidence, "evidence");
                Objects.requireNonNull(time, "time");
            }
        }

        /**
         * Fewer drivers than that react at all.
         *
         * @param reason the share asked for and the share that responds
         */
        record NoResponse(String reason) implements Quantile {

            /**
             * Refuses nulls.
             *
             * @param reason the share asked for and the share that responds
             * @throws NullPointerException if one that is required is null
             */
            public NoResponse {
                Objects.requireNonNull(reason, "reason");
            }
        }
    }

    /**
     * Makes a population in which every driver reacts.
     *
     * @param reaction the distribution of the time
     * @return the population
     */
    public static DriverResponse ofAll(ReactionDistribution reaction) {
        Objects.requireNonNull(reaction, "reaction");
        return new DriverResponse(reaction, 1);
    }

    /**
     * Gives the time within which a share of all drivers reacts.
     *
     * @param probability the share p of all drivers, (0, 1) without its ends
     * @return the time, or no response
     * @throws IllegalArgumentException if the share is not between 0 and 1
     */
    public Quantile quantile(double probability) {
        ReactionDistribution.probability("probability", probability);
        if (probability >= respondingShare) {
            return new Quantile.NoResponse("a share of " + Numbers.text(probability)
                    + " of drivers does not react at any time: only " + Numbers.text(respondingShare) + " respond");
        }
        TimeSpan time = reaction.quantile(probability / respondingShare);
        return new Quantile.Responds(
                time,
                reaction.evidence()
                        .withCaveatIf(
                                time.inSeconds() < 0,
                                "a reaction time of " + time
                                        + " lies before the signal: the law has no meaning there"));
    }

    /**
     * Gives the share of all drivers who have reacted by a time.
     *
     * @param time the time
     * @return r F(t), at most the responding share
     */
    public double shareResponded(TimeSpan time) {
        return respondingShare * reaction.cdf(time);
    }

    /**
     * Gives the same drivers with all times multiplied.
     *
     * @param timeRatio the factor, [0.1, 10]
     * @return the population
     * @throws IllegalArgumentException if the factor is not in [0.1, 10]
     */
    public DriverResponse scaledBy(double timeRatio) {
        return new DriverResponse(reaction.scaledBy(timeRatio), respondingShare);
    }
}
