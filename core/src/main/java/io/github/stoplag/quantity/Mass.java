package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * A mass.
 *
 * <p>Symbol m; possible range (0, 1e6] kg. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inKg the mass in kilograms
 */
public record Mass(double inKg) implements Comparable<Mass> {
    /** Kilograms in one avoirdupois pound, exact. */
    public static final double KG_PER_POUND = 0.45359237;

    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inKg the mass in kilograms
     * @throws IllegalArgumentException if inKg is not in (0, 1e6] kg
     */
    public Mass {
        inKg = Ranges.MASS.check(inKg) + 0.0;
    }

    /**
     * Makes a mass from kilograms.
     *
     * @param kg the mass in kilograms
     * @return the mass
     * @throws IllegalArgumentException if it is not in (0, 1e6] kg
     */
    public static Mass kg(double kg) {
        return new Mass(kg);
    }

    /**
     * Makes a mass from tonnes.
     *
     * @param tonnes the mass in tonnes
     * @return the mass
     * @throws IllegalArgumentException if it is not in (0, 1e6] kg
     */
    public static Mass tonnes(double tonnes) {
        return new Mass(tonnes * 1000.0);
    }

    /**
     * Makes a mass from avoirdupois pounds.
     *
     * @param pounds the mass in avoirdupois pounds
     * @return the mass
     * @throws IllegalArgumentException if it is not in (0, 1e6] kg
     */
    public static Mass pounds(double pounds) {
        return new Mass(pounds * KG_PER_POUND);
    }

    /**
     * Gives the mass in tonnes.
     *
     * @return the mass in tonnes
     */
    public double inTonnes() {
        return inKg / 1000.0;
    }

    /**
     * Gives the mass in avoirdupois pounds.
     *
     * @return the mass in avoirdupois pounds
     */
    public double inPounds() {
        return inKg / KG_PER_POUND;
    }

    /**
     * Reads a mass such as {@code 2.4 t}; {@link Units#MASS} has the units and says how numbers are written.
     *
     * @param text a number with a unit
     * @return the mass
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the mass out of range
     */
    public static Mass parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Mass(Units.MASS.parseSi(text));
    }

    /**
     * Writes the mass with a fixed count of decimals, rounded half up, such as {@code 2400.0 kg}.
     *
     * @param unit a unit of {@link Units#MASS} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.MASS.format(inKg, unit, decimals);
    }

    /**
     * Says whether another mass is within a tolerance of this one.
     *
     * @param other the other mass
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Mass other, Mass tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inKg - other.inKg) <= tolerance.inKg;
    }

    @Override
    public int compareTo(Mass other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inKg, other.inKg);
    }

    @Override
    public String toString() {
        return Numbers.text(inKg) + " kg";
    }
}
