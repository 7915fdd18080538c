package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * An illuminance, here mostly at the eye.
 *
 * <p>Symbol E; possible range [0, 1e6] lx. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inLux the illuminance in lux
 */
public record Illuminance(double inLux) implements Comparable<Illuminance> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inLux the illuminance in lux
     * @throws IllegalArgumentException if inLux is not in [0, 1e6] lx
     */
    public Illuminance {
        inLux = Ranges.ILLUMINANCE.check(inLux) + 0.0;
    }

    /**
     * Makes a illuminance from lux.
     *
     * @param lux the illuminance in lux
     * @return the illuminance
     * @throws IllegalArgumentException if it is not in [0, 1e6] lx
     */
    public static Illuminance lux(double lux) {
        return new Illuminance(lux);
    }

    /**
     * Reads an illuminance such as {@code 10 lx}; {@link Units#ILLUMINANCE} has the units and says how numbers are
     * written.
     *
     * @param text a number with a unit
     * @return the illuminance
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the illuminance out of range
     */
    public static Illuminance parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Illuminance(Units.ILLUMINANCE.parseSi(text));
    }

    /**
     * Writes the illuminance with a fixed count of decimals, rounded half up, such as {@code 10.0 lx}.
     *
     * @param unit a unit of {@link Units#ILLUMINANCE} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.ILLUMINANCE.format(inLux, unit, decimals);
    }

    /**
     * Says whether another illuminance is within a tolerance of this one.
     *
     * @param other the other illuminance
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Illuminance other, Illuminance tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inLux - other.inLux) <= tolerance.inLux;
    }

    @Override
    public int compareTo(Illuminance other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inLux, other.inLux);
    }

    @Override
    public String toString() {
        return Numbers.text(inLux) + " lx";
    }
}
