package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * A deceleration as a positive magnitude.
 *
 * <p>Symbol a; possible range [0, 200] m/s². Equality is exact; see {@link #isCloseTo}.
 *
 * @param inMps2 the deceleration in metres per second squared
 */
public record Deceleration(double inMps2) implements Comparable<Deceleration> {
    /** Standard gravity in metres per second squared, exact (3rd CGPM, 1901). */
    public static final double STANDARD_GRAVITY_MPS2 = 9.80665;

    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inMps2 the deceleration in metres per second squared
     * @throws IllegalArgumentException if inMps2 is not in [0, 200] m/s²
     */
    public Deceleration {
        inMps2 = Ranges.DECELERATION.check(inMps2) + 0.0;
    }

    /**
     * Makes a deceleration from metres per second squared.
     *
     * @param mps2 the deceleration in metres per second squared
     * @return the deceleration
     * @throws IllegalArgumentException if it is not in [0, 200] m/s²
     */
    public static Deceleration mps2(double mps2) {
        return new Deceleration(mps2);
    }

    /**
     * Makes a deceleration from feet per second squared.
     *
     * @param ftps2 the deceleration in feet per second squared
     * @return the deceleration
     * @throws IllegalArgumentException if it is not in [0, 200] m/s²
     */
    public static Deceleration ftps2(double ftps2) {
        return new Deceleration(ftps2 * Distance.METRES_PER_FOOT);
    }

    /**
     * Makes a deceleration from multiples of standard gravity.
     *
     * @param standardGravities the deceleration in multiples of standard gravity
     * @return the deceleration
     * @throws IllegalArgumentException if it is not in [0, 200] m/s²
     */
    public static Deceleration standardGravities(double standardGravities) {
        return new Deceleration(standardGravities * STANDARD_GRAVITY_MPS2);
    }

    /**
     * Gives the deceleration in feet per second squared.
     *
     * @return the deceleration in feet per second squared
     */
    public double inFtps2() {
        return inMps2 / Distance.METRES_PER_FOOT;
    }

    /**
     * Gives the deceleration in multiples of standard gravity.
     *
     * @return the deceleration in multiples of standard gravity
     */
    public double inStandardGravities() {
        return inMps2 / STANDARD_GRAVITY_MPS2;
    }

    /**
     * Reads a deceleration such as {@code 0.7 g}; {@link Units#DECELERATION} has the units and says how numbers are
     * written.
     *
     * @param text a number with a unit
     * @return the deceleration
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the deceleration out of range
     */
    public static Deceleration parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Deceleration(Units.DECELERATION.parseSi(text));
    }

    /**
     * Writes the deceleration with a fixed count of decimals, rounded half up, such as {@code 6.9 m/s²}.
     *
     * @param unit a unit of {@link Units#DECELERATION} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.DECELERATION.format(inMps2, unit, decimals);
    }

    /**
     * Says whether another deceleration is within a tolerance of this one.
     *
     * @param other the other deceleration
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Deceleration other, Deceleration tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inMps2 - other.inMps2) <= tolerance.inMps2;
    }

    @Override
    public int compareTo(Deceleration other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inMps2, other.inMps2);
    }

    @Override
    public String toString() {
        return Numbers.text(inMps2) + " m/s²";
    }
}
