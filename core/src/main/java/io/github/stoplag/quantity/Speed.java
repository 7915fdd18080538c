package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * A vehicle speed: the magnitude along the road.
 *
 * <p>Symbol v; possible range [0, 150] m/s. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inMps the speed in metres per second
 */
public record Speed(double inMps) implements Comparable<Speed> {
    /** Metres per second in one mile per hour, exact: 1609.344 / 3600. */
    public static final double MPS_PER_MPH = 0.44704;

    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inMps the speed in metres per second
     * @throws IllegalArgumentException if inMps is not in [0, 150] m/s
     */
    public Speed {
        inMps = Ranges.SPEED.check(inMps) + 0.0;
    }

    /**
     * Makes a speed from metres per second.
     *
     * @param mps the speed in metres per second
     * @return the speed
     * @throws IllegalArgumentException if it is not in [0, 150] m/s
     */
    public static Speed mps(double mps) {
        return new Speed(mps);
    }

    /**
     * Makes a speed from kilometres per hour.
     *
     * @param kmh the speed in kilometres per hour
     * @return the speed
     * @throws IllegalArgumentException if it is not in [0, 150] m/s
     */
    public static Speed kmh(double kmh) {
        return new Speed(kmh / 3.6);
    }

    /**
     * Makes a speed from miles per hour.
     *
     * @param mph the speed in miles per hour
     * @return the speed
     * @throws IllegalArgumentException if it is not in [0, 150] m/s
     */
    public static Speed mph(double mph) {
        return new Speed(mph * MPS_PER_MPH);
    }

    /**
     * Makes a speed from feet per second.
     *
     * @param ftps the speed in feet per second
     * @return the speed
     * @throws IllegalArgumentException if it is not in [0, 150] m/s
     */
    public static Speed ftps(double ftps) {
        return new Speed(ftps * Distance.METRES_PER_FOOT);
    }

    /**
     * Gives the speed in kilometres per hour.
     *
     * @return the speed in kilometres per hour
     */
    public double inKmh() {
        return inMps * 3.6;
    }

    /**
     * Gives the speed in miles per hour.
     *
     * @return the speed in miles per hour
     */
    public double inMph() {
        return inMps / MPS_PER_MPH;
    }

    /**
     * Gives the speed in feet per second.
     *
     * @return the speed in feet per second
     */
    public double inFtps() {
        return inMps / Distance.METRES_PER_FOOT;
    }

    /**
     * Reads a speed such as {@code 60 mph}; {@link Units#SPEED} has the units and says how numbers are written.
     *
     * @param text a number with a unit
     * @return the speed
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the speed out of range
     */
    public static Speed parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Speed(Units.SPEED.parseSi(text));
    }

    /**
     * Writes the speed with a fixed count of decimals, rounded half up, such as {@code 96.6 km/h}.
     *
     * @param unit a unit of {@link Units#SPEED} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.SPEED.format(inMps, unit, decimals);
    }

    /**
     * Says whether another speed is within a tolerance of this one.
     *
     * @param other the other speed
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Speed other, Speed tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inMps - other.inMps) <= tolerance.inMps;
    }

    @Override
    public int compareTo(Speed other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inMps, other.inMps);
    }

    @Override
    public String toString() {
        return Numbers.text(inMps) + " m/s";
    }
}
