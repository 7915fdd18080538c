package io.github.stoplag.sight;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Luminance;
import java.util.Objects;

/**
 * Where the driver behind looks from, and against what.
 *
 * @param background the luminance around the lamp
 * @param distance from lamp to eye, (0, 1e5] m
 * @param atmosphere the air between
 * @param tailLit whether the tail lamp is lit, as at night
 */
public record ViewingConditions(Luminance background, Distance distance, Atmosphere atmosphere, boolean tailLit) {
    /**
     * Checks the distance.
     *
     * @param background the luminance around the lamp
     * @param distance from lamp to eye, (0, 1e5] m
     * @param atmosphere the air between
     * @param tailLit whether the tail lamp is lit, as at night
     * @throws IllegalArgumentException if the distance is out of range
     */
    public ViewingConditions {
        Objects.requireNonNull(atmosphere, "atmosphere");
        Objects.requireNonNull(background, "background");
        Atmosphere.checkDistanceM(distance);
    }

    /**
     * Views a lamp in clear air with the tail lamp dark.
     *
     * @param background the luminance around the lamp
     * @param distance from lamp to eye, (0, 1e5] m
     * @return the conditions
     * @throws IllegalArgumentException if the distance is out of range
     */
    public static ViewingConditions of(Luminance background, Distance distance) {
        Objects.requireNonNull(background, "background");
        return new ViewingConditions(background, distance, Atmosphere.CLEAR, false);
    }

    /**
     * Puts other air between lamp and eye.
     *
     * @param air the air
     * @return the changed conditions
     */
    public ViewingConditions through(Atmosphere air) {
        Objects.requireNonNull(air, "air");
        return new ViewingConditions(background, distance, air, tailLit);
    }

    /**
     * Lights the tail lamp.
     *
     * @return the changed conditions
     */
    public ViewingConditions withTailLit() {
        return new ViewingConditions(background, distance, atmosphere, true);
    }
}
