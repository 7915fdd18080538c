package io.github.stoplag.film;

import io.github.stoplag.lamp.FilamentDecay;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Check;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;

/**
 * Any course of light before a simulated camera, over the light of full scale.
 *
 * <p>Light above 1 is too bright for the exposure: the camera clips it.
 */
public interface LightCourse {
    /**
     * Gives the light at a time.
     *
     * @param timeS the time in seconds
     * @return light over that of full scale, not negative
     */
    double lightRatio(double timeS);

    /**
     * Gives the times at which the light jumps or bends.
     *
     * @return the times in seconds, increasing
     */
    default double[] breakpointsS() {
        return new double[0];
    }

    /**
     * Makes the course of a lamp that comes on at time 0.
     *
     * @param onset how its light rises
     * @param beforeRatio the light before: stray light and a lit tail lamp together, [0, 100] of full scale
     * @param switchedRatio what the switched light adds in the end, [0, 100] of full scale
     * @return the course
     * @throws IllegalArgumentException if a light is out of range
     */
    static LightCourse onset(OnsetCurve onset, double beforeRatio, double switchedRatio) {
        Objects.requireNonNull(onset, "onset");
        return of(onset::relativeIntensity, onset.breakpointsS(), beforeRatio, switchedRatio);
    }

    /**
     * Makes the course of a filament lamp that goes out at time 0.
     *
     * @param decay how its light falls
     * @param afterRatio the light left: stray light and a lit tail lamp together, [0, 100] of full scale
     * @param switchedRatio what the switched light adds before, [0, 100] of full scale
     * @return the course
     * @throws IllegalArgumentException if a light is out of range
     */
    static LightCourse decay(FilamentDecay decay, double afterRatio, double switchedRatio) {
        Objects.requireNonNull(decay, "decay");
        return of(decay::relativeIntensity, new double[] {0}, afterRatio, switchedRatio);
    }

    /**
     * Makes a course from any relative light.
     *
     * @param relative the switched light over its largest, by the time in seconds
     * @param breakpointsS where it jumps or bends, in seconds
     * @param steadyRatio the light that stays, [0, 100] of full scale
     * @param switchedRatio the largest switched light, [0, 100] of full scale
     * @return the course
     * @throws IllegalArgumentException if a light is out of range
     */
    static LightCourse of(
            DoubleUnaryOperator relative, double[] breakpointsS, double steadyRatio, double switchedRatio) {
        Objects.requireNonNull(breakpointsS, "breakpointsS");
        Objects.requireNonNull(relative, "relative");
        Check.inRange("steady light over full scale", steadyRatio, 0, 100, "");
        Check.inRange("switched light over full scale", switchedRatio, 0, 100, "");
        double[] breaks = breakpointsS.clone();
        Arrays.sort(breaks);
        return new LightCourse() {
            @Override
            public double lightRatio(double timeS) {
                return steadyRatio + switchedRatio * relative.applyAsDouble(timeS);
            }

            @Override
            public double[] breakpointsS() {
                return breaks.clone();
            }
        };
    }
}
