package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * A fuse and the load it is asked to carry.
 *
 * <p>A load that stays on should not exceed a share of the rating, 75 % at 25 °C by a fuse maker's guide (seen) and by
 * common practice. Opening times are not computed.
 *
 * @param rating the rated current, in (0, 1000] A
 * @param continuousShareRatio the share of the rating a steady load may use, in (0, 1]
 */
public record Fuse(Current rating, double continuousShareRatio) {
    /** The usual share of the rating for a steady load at 25 °C. */
    public static final double USUAL_CONTINUOUS_SHARE = 0.75;

    /**
     * Checks the figures.
     *
     * @param rating the rated current, in (0, 1000] A
     * @param continuousShareRatio the share of the rating a steady load may use, in (0, 1]
     * @throws IllegalArgumentException if one is outside its range
     */
    public Fuse {
        Objects.requireNonNull(rating, "rating");
        Check.above("fuse rating", rating.inAmperes(), 0, 1000, "A");
        Check.above("continuous share", continuousShareRatio, 0, 1, "");
    }

    /**
     * Makes a fuse with the usual continuous share.
     *
     * @param rating the rated current, in (0, 1000] A
     * @return the fuse
     * @throws IllegalArgumentException if the rating is outside its range
     */
    public static Fuse of(Current rating) {
        Objects.requireNonNull(rating, "rating");
        return new Fuse(rating, USUAL_CONTINUOUS_SHARE);
    }

    /** What a fuse makes of a steady load. */
    public enum Outcome {
        /** Within the continuous share. */
        CARRIES,
        /** Above the continuous share, not above the rating: ages, may open when warm. */
        OVERWORKED,
        /** Above the rating: expected to open, sooner or later. */
        OVERLOADED
    }

    /**
     * The load of a fuse.
     *
     * @param outcome what the fuse makes of the steady load
     * @param load the steady current
     * @param continuousLimit the steady current the share allows
     * @param loadShareRatio the steady current over the rating
     * @param inrushShareRatio the inrush current over the rating
     * @param evidence what it rests on
     */
    public record Load(
            Outcome outcome,
            Current load,
            Current continuousLimit,
            double loadShareRatio,
            double inrushShareRatio,
            Evidence evidence)
            implements Evident {

        /**
         * Refuses nulls.
         *
         * @param outcome what the fuse makes of the steady load
         * @param load the steady current
         * @param continuousLimit the steady current the share allows
         * @param loadShareRatio the steady current over the rating
         * @param inrushShareRatio the inrush current over the rating
         * @param evidence what it rests on
         * @throws NullPointerException if one that is required is null
         */
        public Load {
            Objects.requireNonNull(continuousLimit, "continuousLimit");
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(load, "load");
            Objects.requireNonNull(outcome, "outcome");
        }
    }

    /**
     * Checks a steady load and its inrush.
     *
     * @param steady the steady current of all that hangs on the fuse, not negative
     * @param inrush the highest current at switch-on, not below the steady current
     * @return the load
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public Load carry(Current steady, Current inrush) {
        Objects.requireNonNull(inrush, "inrush");
        Objects.requireNonNull(steady, "steady");
        double load = Ranges.FORWARD_CURRENT.check("load current", steady.inAmperes());
        double peak = Check.inRange("inrush current", inrush.inAmperes(), load, Ranges.FORWARD_CURRENT.hi(), "A");
        double limit = rating.inAmperes() * continuousShareRatio;
        Outcome outcome;
        if (load <= limit) {
            outcome = Outcome.CARRIES;
        } else {
            outcome = load <= rating.inAmperes() ? Outcome.OVERWORKED : Outcome.OVERLOADED;
        }
        Evidence evidence = Evidence.of("fuse " + rating + ", steady load up to "
                        + Numbers.text(continuousShareRatio * 100)
                        + " % of it (common practice; a maker's guide, seen, gives"
                        + " 75 % at 25 °C)")
                .withCaveatIf(
                        peak > rating.inAmperes(),
                        "the inrush is " + Numbers.text(peak / rating.inAmperes(), 3)
                                + " times the rating; fuses bear a"
                                + " filament's inrush of some tens of milliseconds by common practice, the fuse maker's"
                                + " time-current curve decides")
                .withCaveat("a warm fuse box lowers what a fuse carries")
                .withCautions(Caution.FUSES, Caution.LICENSED_PRACTICE);
        return new Load(
                outcome,
                steady,
                Current.amperes(limit),
                load / rating.inAmperes(),
                peak / rating.inAmperes(),
                evidence);
    }
}
