package io.github.stoplag.sight;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Illuminance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import java.util.Objects;

/**
 * Air between lamp and eye that takes the same share of light on every equal length: Allard's law.
 *
 * <p>E = I T^(d/d0)/d² = I e^(−σ d)/d², with e^(−σ V) = ε at the visibility V.
 *
 * <p>Symbols: E illuminance at the eye in lx; I luminous intensity in cd; d distance in m, (0, 1e5] m; T transmission
 * over the length d0, (0, 1]; σ extinction in 1/m; ε the contrast left at V, see {@link Convention}. Light scattered
 * towards the eye is left out.
 *
 * <p>Source: Allard's law and T^V = 0.05 in the IES lighting definitions (seen).
 */
public final class Atmosphere {
    /** Air that takes nothing: I/d² alone, good enough within a few hundred metres on a clear day. */
    public static final Atmosphere CLEAR = new Atmosphere(0, "clear air");

    private static final double FARTHEST_M = 1e5;

    /**
     * The contrast at which a black object is just told from the horizon; a stated visibility means nothing without it.
     */
    public enum Convention {
        /** 5 %: meteorological optical range, nominal range of lights (IES lighting definitions, seen). */
        FIVE_PER_CENT(0.05),
        /**
         * 2 %: the older visual range (Koschmieder, from memory); the French inland rule of 2008 fits it (0.76 per km,
         * 14.3 km).
         */
        TWO_PER_CENT(0.02);

        private final double contrastRatio;

        Convention(double contrastRatio) {
            this.contrastRatio = contrastRatio;
        }

        /**
         * Gives the contrast left at the visibility.
         *
         * @return ε
         */
        public double contrastRatio() {
            return contrastRatio;
        }
    }

    private final double extinctionPerM;
    private final String text;

    private Atmosphere(double extinctionPerM, String text) {
        this.extinctionPerM = extinctionPerM;
        this.text = text;
    }

    /**
     * Makes air from what it lets through over a length.
     *
     * @param transmissionRatio the transmission T, (0, 1]
     * @param length the length d0 it holds for, (0, 1e5] m
     * @return the air
     * @throws IllegalArgumentException if either is out of range
     */
    public static Atmosphere transmitting(double transmissionRatio, Distance length) {
        Objects.requireNonNull(length, "length");
        Check.above("transmission of the air", transmissionRatio, 0, 1, "");
        Check.above("length of the transmission", length.inMetres(), 0, FARTHEST_M, "m");
        return new Atmosphere(
                -Math.log(transmissionRatio) / length.inMetres(),
                "air transmitting " + Numbers.text(transmissionRatio) + " per " + length);
    }

    /**
     * Makes air from its visibility.
     *
     * @param visibility the visibility V, [1, 1e6] m
     * @param convention the contrast ε it is defined by
     * @return the air
     * @throws IllegalArgumentException if the visibility is out of range
     */
    public static Atmosphere visibility(Distance visibility, Convention convention) {
        Objects.requireNonNull(convention, "convention");
        Objects.requireNonNull(visibility, "visibility");
        Check.inRange("visibility", visibility.inMetres(), 1, 1e6, "m");
        return new Atmosphere(
                -Math.log(convention.contrastRatio) / visibility.inMetres(),
                "visibility " + visibility + " at " + Numbers.text(100 * convention.contrastRatio) + " % contrast");
    }

    /**
     * Gives the share of light that is left after a distance.
     *
     * @param distance the distance d, [0, 1e5] m
     * @return e^(−σ d)
     * @throws IllegalArgumentException if the distance is out of range
     */
    public double transmission(Distance distance) {
        return Math.exp(-extinctionPerM * Check.inRange("distance", distance.inMetres(), 0, FARTHEST_M, "m"));
    }

    /**
     * Gives the illuminance a lamp makes at the eye.
     *
     * @param intensity its luminous intensity I
     * @param distance the distance d, (0, 1e5] m
     * @return E = I e^(−σ d)/d²
     * @throws IllegalArgumentException if the distance is out of range, or so short that E exceeds 1e6 lx
     */
    public Illuminance illuminance(LuminousIntensity intensity, Distance distance) {
        return Illuminance.lux(intensity.inCandela() / candelaPerLux(distance));
    }

    /**
     * Gives the luminous intensity that makes an illuminance at the eye.
     *
     * @param illuminance the illuminance E
     * @param distance the distance d, (0, 1e5] m
     * @return I = E d² e^(σ d)
     * @throws IllegalArgumentException if the distance is out of range, or the intensity would exceed 1e7 cd
     */
    public LuminousIntensity intensityFor(Illuminance illuminance, Distance distance) {
        return LuminousIntensity.candela(illuminance.inLux() * candelaPerLux(distance));
    }

    /** Gives d² e^(σ d), infinite in the thickest fog. */
    double candelaPerLux(Distance distance) {
        double m = checkDistanceM(distance);
        return m * m * Math.exp(extinctionPerM * m);
    }

    static double checkDistanceM(Distance distance) {
        return Check.above("distance", distance.inMetres(), 0, FARTHEST_M, "m");
    }

    @Override
    public String toString() {
        return text;
    }
}
