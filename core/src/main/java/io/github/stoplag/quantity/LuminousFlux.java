package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * A luminous flux.
 *
 * <p>Symbol Φ; possible range [0, 1e8] lm. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inLumens the luminous flux in lumens
 */
public record LuminousFlux(double inLumens) implements Comparable<LuminousFlux> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inLumens the luminous flux in lumens
     * @throws IllegalArgumentException if inLumens is not in [0, 1e8] lm
     */
    public LuminousFlux {
        inLumens = Ranges.FLUX.check(inLumens) + 0.0;
    }

    /**
     * Makes a luminous flux from lumens.
     *
     * @param lumens the luminous flux in lumens
     * @return the luminous flux
     * @throws IllegalArgumentException if it is not in [0, 1e8] lm
     */
    public static LuminousFlux lumens(double lumens) {
        return new LuminousFlux(lumens);
    }

    /**
     * Reads a luminous flux such as {@code 460 lm}; {@link Units#LUMINOUS_FLUX} has the units and says how numbers are
     * written.
     *
     * @param text a number with a unit
     * @return the luminous flux
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the luminous flux out of range
     */
    public static LuminousFlux parse(String text) {
        Objects.requireNonNull(text, "text");
        return new LuminousFlux(Units.LUMINOUS_FLUX.parseSi(text));
    }

    /**
     * Writes the luminous flux with a fixed count of decimals, rounded half up, such as {@code 460.0 lm}.
     *
     * @param unit a unit of {@link Units#LUMINOUS_FLUX} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.LUMINOUS_FLUX.format(inLumens, unit, decimals);
    }

    /**
     * Says whether another luminous flux is within a tolerance of this one.
     *
     * @param other the other luminous flux
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(LuminousFlux other, LuminousFlux tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inLumens - other.inLumens) <= tolerance.inLumens;
    }

    @Override
    public int compareTo(LuminousFlux other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inLumens, other.inLumens);
    }

    @Override
    public String toString() {
        return Numbers.text(inLumens) + " lm";
    }
}
