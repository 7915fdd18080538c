package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * An electric resistance.
 *
 * <p>Symbol R; possible range [0, 1e9] Ω. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inOhms the resistance in ohms
 */
public record Resistance(double inOhms) implements Comparable<Resistance> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inOhms the resistance in ohms
     * @throws IllegalArgumentException if inOhms is not in [0, 1e9] Ω
     */
    public Resistance {
        inOhms = Ranges.RESISTANCE.check(inOhms) + 0.0;
    }

    /**
     * Makes a resistance from ohms.
     *
     * @param ohms the resistance in ohms
     * @return the resistance
     * @throws IllegalArgumentException if it is not in [0, 1e9] Ω
     */
    public static Resistance ohms(double ohms) {
        return new Resistance(ohms);
    }

    /**
     * Makes a resistance from milliohms.
     *
     * @param milliohms the resistance in milliohms
     * @return the resistance
     * @throws IllegalArgumentException if it is not in [0, 1e9] Ω
     */
    public static Resistance milliohms(double milliohms) {
        return new Resistance(milliohms / 1000.0);
    }

    /**
     * Gives the resistance in milliohms.
     *
     * @return the resistance in milliohms
     */
    public double inMilliohms() {
        return inOhms * 1000.0;
    }

    /**
     * Reads a resistance such as {@code 6.8 ohm}; {@link Units#RESISTANCE} has the units and says how numbers are
     * written.
     *
     * @param text a number with a unit
     * @return the resistance
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the resistance out of range
     */
    public static Resistance parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Resistance(Units.RESISTANCE.parseSi(text));
    }

    /**
     * Writes the resistance with a fixed count of decimals, rounded half up, such as {@code 6.8 Ω}.
     *
     * @param unit a unit of {@link Units#RESISTANCE} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.RESISTANCE.format(inOhms, unit, decimals);
    }

    /**
     * Says whether another resistance is within a tolerance of this one.
     *
     * @param other the other resistance
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Resistance other, Resistance tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inOhms - other.inOhms) <= tolerance.inOhms;
    }

    @Override
    public int compareTo(Resistance other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inOhms, other.inOhms);
    }

    @Override
    public String toString() {
        return Numbers.text(inOhms) + " Ω";
    }
}
