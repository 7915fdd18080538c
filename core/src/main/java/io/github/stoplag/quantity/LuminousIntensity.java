package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * A luminous intensity in one direction.
 *
 * <p>Symbol I; possible range [0, 1e7] cd. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inCandela the luminous intensity in candela
 */
public record LuminousIntensity(double inCandela) implements Comparable<LuminousIntensity> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inCandela the luminous intensity in candela
     * @throws IllegalArgumentException if inCandela is not in [0, 1e7] cd
     */
    public LuminousIntensity {
        inCandela = Ranges.INTENSITY.check(inCandela) + 0.0;
    }

    /**
     * Makes a luminous intensity from candela.
     *
     * @param candela the luminous intensity in candela
     * @return the luminous intensity
     * @throws IllegalArgumentException if it is not in [0, 1e7] cd
     */
    public static LuminousIntensity candela(double candela) {
        return new LuminousIntensity(candela);
    }

    /**
     * Reads a luminous intensity such as {@code 60 cd}; {@link Units#LUMINOUS_INTENSITY} has the units and says how
     * numbers are written.
     *
     * @param text a number with a unit
     * @return the luminous intensity
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the luminous intensity out of range
     */
    public static LuminousIntensity parse(String text) {
        Objects.requireNonNull(text, "text");
        return new LuminousIntensity(Units.LUMINOUS_INTENSITY.parseSi(text));
    }

    /**
     * Writes the luminous intensity with a fixed count of decimals, rounded half up, such as {@code 60.0 cd}.
     *
     * @param unit a unit of {@link Units#LUMINOUS_INTENSITY} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.LUMINOUS_INTENSITY.format(inCandela, unit, decimals);
    }

    /**
     * Says whether another luminous intensity is within a tolerance of this one.
     *
     * @param other the other luminous intensity
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(LuminousIntensity other, LuminousIntensity tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inCandela - other.inCandela) <= tolerance.inCandela;
    }

    @Override
    public int compareTo(LuminousIntensity other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inCandela, other.inCandela);
    }

    @Override
    public String toString() {
        return Numbers.text(inCandela) + " cd";
    }
}
