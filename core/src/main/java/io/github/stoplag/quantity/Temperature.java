package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * An absolute temperature.
 *
 * <p>Symbol T; possible range (0, 20000] K. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inKelvin the temperature in kelvin
 */
public record Temperature(double inKelvin) implements Comparable<Temperature> {
    /** Kelvin at zero degrees Celsius, exact. */
    public static final double ZERO_CELSIUS_K = 273.15;

    /** Degrees Fahrenheit from absolute zero to zero, exact: 273.15 · 1.8 - 32. */
    private static final double ZERO_FAHRENHEIT = 459.67;

    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inKelvin the temperature in kelvin
     * @throws IllegalArgumentException if inKelvin is not in (0, 20000] K
     */
    public Temperature {
        inKelvin = Ranges.TEMPERATURE.check(inKelvin) + 0.0;
    }

    /**
     * Makes a temperature from kelvin.
     *
     * @param kelvin the temperature in kelvin
     * @return the temperature
     * @throws IllegalArgumentException if it is not in (0, 20000] K
     */
    public static Temperature kelvin(double kelvin) {
        return new Temperature(kelvin);
    }

    /**
     * Makes a temperature from degrees Celsius.
     *
     * @param celsius the temperature in degrees Celsius
     * @return the temperature
     * @throws IllegalArgumentException if it is not in (0, 20000] K
     */
    public static Temperature celsius(double celsius) {
        return new Temperature(celsius + ZERO_CELSIUS_K);
    }

    /**
     * Makes a temperature from degrees Fahrenheit.
     *
     * @param fahrenheit the temperature in degrees Fahrenheit
     * @return the temperature
     * @throws IllegalArgumentException if it is not in (0, 20000] K
     */
    public static Temperature fahrenheit(double fahrenheit) {
        return new Temperature((fahrenheit + ZERO_FAHRENHEIT) / 1.8);
    }

    /**
     * Gives the temperature in degrees Celsius.
     *
     * @return the temperature in degrees Celsius
     */
    public double inCelsius() {
        return inKelvin - ZERO_CELSIUS_K;
    }

    /**
     * Gives the temperature in degrees Fahrenheit.
     *
     * @return the temperature in degrees Fahrenheit
     */
    public double inFahrenheit() {
        return inKelvin * 1.8 - ZERO_FAHRENHEIT;
    }

    /**
     * Reads a temperature such as {@code 20 °C}; {@link Units#TEMPERATURE} has the units and says how numbers are
     * written.
     *
     * @param text a number with a unit
     * @return the temperature
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the temperature out of range
     */
    public static Temperature parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Temperature(Units.TEMPERATURE.parseSi(text));
    }

    /**
     * Writes the temperature with a fixed count of decimals, rounded half up, such as {@code 20.0 °C}.
     *
     * @param unit a unit of {@link Units#TEMPERATURE} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.TEMPERATURE.format(inKelvin, unit, decimals);
    }

    /**
     * Says whether another temperature is within a tolerance of this one.
     *
     * @param other the other temperature
     * @param toleranceK the largest difference that still counts as close, in kelvin
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Temperature other, double toleranceK) {
        Objects.requireNonNull(other, "other");
        return Math.abs(inKelvin - other.inKelvin) <= toleranceK;
    }

    @Override
    public int compareTo(Temperature other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inKelvin, other.inKelvin);
    }

    @Override
    public String toString() {
        return Numbers.text(inKelvin) + " K";
    }
}
