package io.github.stoplag.braking;

import io.github.stoplag.quantity.Check;
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
}
