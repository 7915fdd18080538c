package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * An electric current.
 *
 * <p>Symbol I; possible range [-100000, 100000] A. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inAmperes the current in amperes
 */
public record Current(double inAmperes) implements Comparable<Current> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inAmperes the current in amperes
     * @throws IllegalArgumentException if inAmperes is not in [-100000, 100000] A
     */
    public Current {
        inAmperes = Ranges.CURRENT.check(inAmperes) + 0.0;
    }

    /**
     * Makes a current from amperes.
     *
     * @param amperes the current in amperes
     * @return the current
     * @throws IllegalArgumentException if it is not in [-100000, 100000] A
     */
    public static Current amperes(double amperes) {
        return new Current(amperes);
    }

    /**
     * Makes a current from milliamperes.
     *
     * @param milliamperes the current in milliamperes
     * @return the current
     * @throws IllegalArgumentException if it is not in [-100000, 100000] A
     */
    public static Current milliamperes(double milliamperes) {
        return new Current(milliamperes / 1000.0);
    }

    /**
     * Gives the current in milliamperes.
     *
     * @return the current in milliamperes
     */
    public double inMilliamperes() {
        return inAmperes * 1000.0;
    }

    /**
     * Reads a current such as {@code 350 mA}; {@link Units#CURRENT} has the units and says how numbers are written.
     *
     * @param text a number with a unit
     * @return the current
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the current out of range
     */
    public static Current parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Current(Units.CURRENT.parseSi(text));
    }

    /**
     * Writes the current with a fixed count of decimals, rounded half up, such as {@code 0.4 A}.
     *
     * @param unit a unit of {@link Units#CURRENT} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.CURRENT.format(inAmperes, unit, decimals);
    }

    /**
     * Says whether another current is within a tolerance of this one.
     *
     * @param other the other current
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Current other, Current tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inAmperes - other.inAmperes) <= tolerance.inAmperes;
    }

    @Override
    public int compareTo(Current other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inAmperes, other.inAmperes);
    }

    @Override
    public String toString() {
        return Numbers.text(inAmperes) + " A";
    }
}
