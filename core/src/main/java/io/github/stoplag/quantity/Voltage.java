package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * An electric voltage.
 *
 * <p>Symbol U; possible range [-1000, 1000] V. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inVolts the voltage in volts
 */
public record Voltage(double inVolts) implements Comparable<Voltage> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inVolts the voltage in volts
     * @throws IllegalArgumentException if inVolts is not in [-1000, 1000] V
     */
    public Voltage {
        inVolts = Ranges.VOLTAGE.check(inVolts) + 0.0;
    }

    /**
     * Makes a voltage from volts.
     *
     * @param volts the voltage in volts
     * @return the voltage
     * @throws IllegalArgumentException if it is not in [-1000, 1000] V
     */
    public static Voltage volts(double volts) {
        return new Voltage(volts);
    }

    /**
     * Makes a voltage from millivolts.
     *
     * @param millivolts the voltage in millivolts
     * @return the voltage
     * @throws IllegalArgumentException if it is not in [-1000, 1000] V
     */
    public static Voltage millivolts(double millivolts) {
        return new Voltage(millivolts / 1000.0);
    }

    /**
     * Gives the voltage in millivolts.
     *
     * @return the voltage in millivolts
     */
    public double inMillivolts() {
        return inVolts * 1000.0;
    }

    /**
     * Reads a voltage such as {@code 13.5 V}; {@link Units#VOLTAGE} has the units and says how numbers are written.
     *
     * @param text a number with a unit
     * @return the voltage
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the voltage out of range
     */
    public static Voltage parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Voltage(Units.VOLTAGE.parseSi(text));
    }

    /**
     * Writes the voltage with a fixed count of decimals, rounded half up, such as {@code 13.5 V}.
     *
     * @param unit a unit of {@link Units#VOLTAGE} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.VOLTAGE.format(inVolts, unit, decimals);
    }

    /**
     * Says whether another voltage is within a tolerance of this one.
     *
     * @param other the other voltage
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Voltage other, Voltage tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inVolts - other.inVolts) <= tolerance.inVolts;
    }

    @Override
    public int compareTo(Voltage other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inVolts, other.inVolts);
    }

    @Override
    public String toString() {
        return Numbers.text(inVolts) + " V";
    }
}
