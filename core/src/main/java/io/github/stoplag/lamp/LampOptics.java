package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;

/**
 * What a lamp's reflector and lens make of a source's flux on the axis: I = k Φ.
 *
 * <p>From a beam: k = η/Ω, with the share η of the flux that leaves within the solid angle Ω, spread evenly; a bare
 * source that shines evenly all around has k = 1/(4π). From a known lamp: k = I/Φ.
 *
 * <p>Symbols: I luminous intensity in cd; Φ the source's flux in lm; k in cd/lm, (0, 1000].
 *
 * <pre>{@code
 * LampOptics optics = LampOptics.measured(LuminousIntensity.candela(60), LuminousFlux.lumens(400));
 * optics.intensity(LuminousFlux.lumens(300)); // 45 cd
 * }</pre>
 *
 * @param candelaPerLumen k in cd/lm
 */
public record LampOptics(double candelaPerLumen) {
    /**
     * Checks the range.
     *
     * @param candelaPerLumen k in cd/lm
     * @throws IllegalArgumentException if it is not in (0, 1000] cd/lm
     */
    public LampOptics {
        Check.above("intensity per flux", candelaPerLumen, 0, 1000, "cd/lm");
    }

    /**
     * Spreads a share of the flux evenly over a solid angle.
     *
     * @param efficiencyRatio the share η of the source's flux, (0, 1]
     * @param solidAngleSr Ω in steradians, (0, 4π]
     * @return the optics
     * @throws IllegalArgumentException if either is out of range
     */
    public static LampOptics beam(double efficiencyRatio, double solidAngleSr) {
        Check.above("optical efficiency", efficiencyRatio, 0, 1, "");
        Check.above("solid angle of the beam", solidAngleSr, 0, 4 * Math.PI, "sr");
        return new LampOptics(efficiencyRatio / solidAngleSr);
    }

    /**
     * Takes the optics from a lamp known to give an intensity with a flux.
     *
     * @param intensity the intensity on the axis
     * @param flux the source's flux, above 0 lm
     * @return the optics
     * @throws IllegalArgumentException if the quotient is not in (0, 1000] cd/lm
     */
    public static LampOptics measured(LuminousIntensity intensity, LuminousFlux flux) {
        return new LampOptics(intensity.inCandela() / Check.above("flux of the source", flux.inLumens(), 0, 1e7, "lm"));
    }

    /**
     * Gives the intensity on the axis.
     *
     * @param flux the source's flux
     * @return I = k Φ
     */
    public LuminousIntensity intensity(LuminousFlux flux) {
        return LuminousIntensity.candela(candelaPerLumen * flux.inLumens());
    }

    @Override
    public String toString() {
        return Numbers.text(candelaPerLumen) + " cd/lm";
    }
}
