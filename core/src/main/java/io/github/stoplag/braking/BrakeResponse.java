package io.github.stoplag.braking;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.TimeSpan;

/**
 * How a brake system answers the pedal: a dead time without deceleration, then a linear build-up.
 *
 * @param deadTime the time from the pedal to the first deceleration, in [0, 10] s
 * @param buildUp the time of the linear build-up to the full deceleration, in [0, 10] s
 */
public record BrakeResponse(TimeSpan deadTime, TimeSpan buildUp) {
    /** Full deceleration at the instant the pedal is touched, as most textbook formulas assume. */
    public static final BrakeResponse INSTANT = new BrakeResponse(TimeSpan.seconds(0), TimeSpan.seconds(0));

    /**
     * Checks the ranges.
     *
     * @param deadTime the time from the pedal to the first deceleration, in [0, 10] s
     * @param buildUp the time of the linear build-up to the full deceleration, in [0, 10] s
     * @throws IllegalArgumentException if a time is not in [0, 10] s
     */
    public BrakeResponse {
        Check.inRange("brake dead time", deadTime.inSeconds(), 0, 10, "s");
        Check.inRange("brake build-up time", buildUp.inSeconds(), 0, 10, "s");
    }

    /**
     * Makes the response of a deceleration that rises with a known jerk: t_b = a/j.
     *
     * @param deadTime the time from the pedal to the first deceleration, in [0, 10] s
     * @param deceleration the full deceleration a
     * @param jerkMps3 the rate j at which it rises, above 0 m/s³
     * @return the response
     * @throws IllegalArgumentException if the jerk is not above 0 or a time is out of range
     */
    public static BrakeResponse ofJerk(TimeSpan deadTime, Deceleration deceleration, double jerkMps3) {
        Check.above("jerk", jerkMps3, 0, 1000, "m/s³");
        return new BrakeResponse(deadTime, TimeSpan.seconds(deceleration.inMps2() / jerkMps3));
    }

    /**
     * Gives the time at constant speed that costs the same distance, up to the small term a t_b²/24: t_d + t_b/2.
     *
     * @return the equivalent lag
     */
    public TimeSpan equivalentLag() {
        return TimeSpan.seconds(deadTime.inSeconds() + 0.5 * buildUp.inSeconds());
    }
}
