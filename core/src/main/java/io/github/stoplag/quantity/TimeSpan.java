package io.github.stoplag.quantity;

import java.time.Duration;
import java.util.Objects;

/**
 * A span of time; negative where it is a difference that can go either way.
 *
 * <p>Symbol t; possible range [-1e6, 1e6] s. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inSeconds the time in seconds
 */
public record TimeSpan(double inSeconds) implements Comparable<TimeSpan> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inSeconds the time in seconds
     * @throws IllegalArgumentException if inSeconds is not in [-1e6, 1e6] s
     */
    public TimeSpan {
        inSeconds = Ranges.TIME.check(inSeconds) + 0.0;
    }

    /**
     * Makes a time from seconds.
     *
     * @param seconds the time in seconds
     * @return the time
     * @throws IllegalArgumentException if it is not in [-1e6, 1e6] s
     */
    public static TimeSpan seconds(double seconds) {
        return new TimeSpan(seconds);
    }

    /**
     * Makes a time from milliseconds.
     *
     * @param millis the time in milliseconds
     * @return the time
     * @throws IllegalArgumentException if it is not in [-1e6, 1e6] s
     */
    public static TimeSpan millis(double millis) {
        return new TimeSpan(millis / 1000.0);
    }

    /**
     * Makes a time from a JDK duration.
     *
     * @param duration the duration
     * @return the time
     * @throws IllegalArgumentException if it is not in [-1e6, 1e6] s
     */
    public static TimeSpan of(Duration duration) {
        return new TimeSpan(duration.getSeconds() + duration.getNano() * 1e-9);
    }

    /**
     * Gives the nearest JDK duration, in whole nanoseconds.
     *
     * @return the duration
     */
    public Duration toDuration() {
        return Duration.ofNanos(Math.round(inSeconds * 1e9));
    }

    /**
     * Gives the time in milliseconds.
     *
     * @return the time in milliseconds
     */
    public double inMillis() {
        return inSeconds * 1000.0;
    }

    /**
     * Reads a time such as {@code 200 ms}; {@link Units#TIME} has the units and says how numbers are written.
     *
     * @param text a number with a unit
     * @return the time
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the time out of range
     */
    public static TimeSpan parse(String text) {
        Objects.requireNonNull(text, "text");
        return new TimeSpan(Units.TIME.parseSi(text));
    }

    /**
     * Writes the time with a fixed count of decimals, rounded half up, such as {@code 0.2 s}.
     *
     * @param unit a unit of {@link Units#TIME} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.TIME.format(inSeconds, unit, decimals);
    }

    /**
     * Says whether another time is within a tolerance of this one.
     *
     * @param other the other time
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(TimeSpan other, TimeSpan tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inSeconds - other.inSeconds) <= tolerance.inSeconds;
    }

    @Override
    public int compareTo(TimeSpan other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inSeconds, other.inSeconds);
    }

    @Override
    public String toString() {
        return Numbers.text(inSeconds) + " s";
    }
}
