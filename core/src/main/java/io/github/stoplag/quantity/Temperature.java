package io.github.stoplag.quantity;

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
        return new Temperature((fahrenheit - 32.0) / 1.8 + ZERO_CELSIUS_K);
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
        return (inKelvin - ZERO_CELSIUS_K) * 1.8 + 32.0;
    }

    /**
     * Says whether another temperature is within a tolerance of this one.
     *
     * @param other the other temperature
     * @param toleranceK the largest difference that still counts as close, in kelvin
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Temperature other, double toleranceK) {
        return Math.abs(inKelvin - other.inKelvin) <= toleranceK;
    }

    @Override
    public int compareTo(Temperature other) {
        return Double.compare(inKelvin, other.inKelvin);
    }

    @Override
    public String toString() {
        return Numbers.text(inKelvin) + " K";
    }
}
