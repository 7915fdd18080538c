package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * A power.
 *
 * <p>Symbol P; possible range [0, 1e6] W. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inWatts the power in watts
 */
public record Power(double inWatts) implements Comparable<Power> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inWatts the power in watts
     * @throws IllegalArgumentException if inWatts is not in [0, 1e6] W
     */
    public Power {
        inWatts = Ranges.POWER.check(inWatts) + 0.0;
    }

    /**
     * Makes a power from watts.
     *
     * @param watts the power in watts
     * @return the power
     * @throws IllegalArgumentException if it is not in [0, 1e6] W
     */
    public static Power watts(double watts) {
        return new Power(watts);
    }

    /**
     * Reads a power such as {@code 21 W}; {@link Units#POWER} has the units and says how numbers are written.
     *
     * @param text a number with a unit
     * @return the power
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the power out of range
     */
    public static Power parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Power(Units.POWER.parseSi(text));
    }

    /**
     * Writes the power with a fixed count of decimals, rounded half up, such as {@code 21.0 W}.
     *
     * @param unit a unit of {@link Units#POWER} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.POWER.format(inWatts, unit, decimals);
    }

    /**
     * Says whether another power is within a tolerance of this one.
     *
     * @param other the other power
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Power other, Power tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inWatts - other.inWatts) <= tolerance.inWatts;
    }

    @Override
    public int compareTo(Power other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inWatts, other.inWatts);
    }

    @Override
    public String toString() {
        return Numbers.text(inWatts) + " W";
    }
}
