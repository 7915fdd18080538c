package io.github.stoplag.quantity;

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
     * Says whether another deceleration is within a tolerance of this one.
     *
     * @param other the other deceleration
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Deceleration other, Deceleration tolerance) {
        return Math.abs(inMps2 - other.inMps2) <= tolerance.inMps2;
    }

    @Override
    public int compareTo(Deceleration other) {
        return Double.compare(inMps2, other.inMps2);
    }

    @Override
    public String toString() {
        return Numbers.text(inMps2) + " m/s²";
    }
}
