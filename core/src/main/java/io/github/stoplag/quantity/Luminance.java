package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * A luminance, here mostly of the background a lamp is seen against.
 *
 * <p>Symbol L; possible range [0, 1e+10] cd/m². Equality is exact; see {@link #isCloseTo}.
 *
 * @param inCdPerM2 the luminance in candela per square metre
 */
public record Luminance(double inCdPerM2) implements Comparable<Luminance> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inCdPerM2 the luminance in candela per square metre
     * @throws IllegalArgumentException if inCdPerM2 is not in [0, 1e+10] cd/m²
     */
    public Luminance {
        inCdPerM2 = Ranges.LUMINANCE.check(inCdPerM2) + 0.0;
    }

    /**
     * Makes a luminance from candela per square metre.
     *
     * @param cdPerM2 the luminance in candela per square metre
     * @return the luminance
     * @throws IllegalArgumentException if it is not in [0, 1e+10] cd/m²
     */
    public static Luminance cdPerM2(double cdPerM2) {
        return new Luminance(cdPerM2);
    }

    /**
     * Reads a luminance such as {@code 2 cd/m²}; {@link Units#LUMINANCE} has the units and says how numbers are
     * written.
     *
     * @param text a number with a unit
     * @return the luminance
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the luminance out of range
     */
    public static Luminance parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Luminance(Units.LUMINANCE.parseSi(text));
    }

    /**
     * Writes the luminance with a fixed count of decimals, rounded half up, such as {@code 2.0 cd/m²}.
     *
     * @param unit a unit of {@link Units#LUMINANCE} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.LUMINANCE.format(inCdPerM2, unit, decimals);
    }

    /**
     * Says whether another luminance is within a tolerance of this one.
     *
     * @param other the other luminance
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Luminance other, Luminance tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inCdPerM2 - other.inCdPerM2) <= tolerance.inCdPerM2;
    }

    @Override
    public int compareTo(Luminance other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inCdPerM2, other.inCdPerM2);
    }

    @Override
    public String toString() {
        return Numbers.text(inCdPerM2) + " cd/m²";
    }
}
