package io.github.stoplag.braking;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.PublishedRange;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * How a brake system answers the pedal: a dead time without deceleration, then a linear build-up.
 *
 * <p>Ranges: dead time and build-up time in [0, 10] s. Two responses are equal if both times are.
 */
public final class BrakeResponse {
    /** Full deceleration at the instant the pedal is touched, as most textbook formulas assume. */
    public static final BrakeResponse INSTANT = new BrakeResponse(TimeSpan.seconds(0), TimeSpan.seconds(0));

    // plain doubles, so that the JIT can take the caller's value objects apart
    private final double deadS;
    private final double buildUpS;

    /**
     * Makes a response.
     *
     * @param deadTime the time from the pedal to the first deceleration, in [0, 10] s
     * @param buildUp the time of the linear build-up to the full deceleration, in [0, 10] s
     * @throws IllegalArgumentException if a time is not in [0, 10] s
     */
    public BrakeResponse(TimeSpan deadTime, TimeSpan buildUp) {
        Objects.requireNonNull(buildUp, "buildUp");
        Objects.requireNonNull(deadTime, "deadTime");
        deadS = Ranges.DEAD_TIME.check(deadTime.inSeconds());
        buildUpS = Ranges.BUILD_UP.check(buildUp.inSeconds());
    }

    /**
     * Gives the time from the pedal to the first deceleration.
     *
     * @return the dead time
     */
    public TimeSpan deadTime() {
        return TimeSpan.seconds(deadS);
    }

    /**
     * Gives the time of the linear build-up to the full deceleration.
     *
     * @return the build-up time
     */
    public TimeSpan buildUp() {
        return TimeSpan.seconds(buildUpS);
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
        Objects.requireNonNull(deadTime, "deadTime");
        Check.above("jerk", jerkMps3, 0, 1000, "m/s³");
        return new BrakeResponse(deadTime, TimeSpan.seconds(deceleration.inMps2() / jerkMps3));
    }

    /**
     * Gives the time at constant speed that costs the same distance, up to the small term a t_b²/24: t_d + t_b/2.
     *
     * @return the equivalent lag
     */
    public TimeSpan equivalentLag() {
        return TimeSpan.seconds(deadS + 0.5 * buildUpS);
    }

    /**
     * Lists published figures about brake response that are no response by themselves: release times, jerk limits. For
     * published responses see {@link BrakeSystem}.
     *
     * @return the rows of the table in order
     */
    public static List<PublishedRange> published() {
        return Figures.PUBLISHED.list();
    }

    /**
     * Finds a published figure about brake response.
     *
     * @param id the name of the row
     * @return the figure
     * @throws IllegalArgumentException if no row has this name; the message offers the nearest
     */
    public static PublishedRange published(String id) {
        Objects.requireNonNull(id, "id");
        return Figures.PUBLISHED.get(id);
    }

    /** Read when first asked for: a response is made in many a run that needs no table. */
    private static final class Figures {
        static final Catalogue<PublishedRange> PUBLISHED =
                Catalogue.readRanges("brake figure", BrakeResponse.class, "brake_figures.csv");
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof BrakeResponse that && deadS == that.deadS && buildUpS == that.buildUpS;
    }

    @Override
    public int hashCode() {
        return Objects.hash(deadS, buildUpS);
    }

    @Override
    public String toString() {
        return "BrakeResponse[deadTime=" + deadTime() + ", buildUp=" + buildUp() + "]";
    }
}
