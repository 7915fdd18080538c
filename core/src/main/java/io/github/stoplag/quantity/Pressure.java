package io.github.stoplag.quantity;

/**
 * A gauge pressure, as tyres are inflated to.
 *
 * <p>Symbol p; possible range [0, 1e8] Pa. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inPascals the pressure in pascals
 */
public record Pressure(double inPascals) implements Comparable<Pressure> {
    /** Pascals in one pound-force per square inch, exact: 0.45359237 · 9.80665 / 0.0254². */
    public static final double PASCALS_PER_PSI = 0.45359237 * 9.80665 / (0.0254 * 0.0254);

    private static final double PASCALS_PER_BAR = 1e5;

    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inPascals the pressure in pascals
     * @throws IllegalArgumentException if inPascals is not in [0, 1e8] Pa
     */
    public Pressure {
        inPascals = Ranges.PRESSURE.check(inPascals) + 0.0;
    }

    /**
     * Makes a pressure from kilopascals.
     *
     * @param kPa the pressure in kilopascals
     * @return the pressure
     * @throws IllegalArgumentException if it is not in [0, 1e8] Pa
     */
    public static Pressure kPa(double kPa) {
        return new Pressure(kPa * 1000.0);
    }

    /**
     * Makes a pressure from pounds-force per square inch.
     *
     * @param psi the pressure in pounds-force per square inch
     * @return the pressure
     * @throws IllegalArgumentException if it is not in [0, 1e8] Pa
     */
    public static Pressure psi(double psi) {
        return new Pressure(psi * PASCALS_PER_PSI);
    }

    /**
     * Makes a pressure from bars.
     *
     * @param bar the pressure in bars
     * @return the pressure
     * @throws IllegalArgumentException if it is not in [0, 1e8] Pa
     */
    public static Pressure bar(double bar) {
        return new Pressure(bar * PASCALS_PER_BAR);
    }

    /**
     * Gives the pressure in kilopascals.
     *
     * @return the pressure in kilopascals
     */
    public double inKPa() {
        return inPascals / 1000.0;
    }

    /**
     * Gives the pressure in pounds-force per square inch.
     *
     * @return the pressure in pounds-force per square inch
     */
    public double inPsi() {
        return inPascals / PASCALS_PER_PSI;
    }

    /**
     * Gives the pressure in bars.
     *
     * @return the pressure in bars
     */
    public double inBar() {
        return inPascals / PASCALS_PER_BAR;
    }

    /**
     * Says whether another pressure is within a tolerance of this one.
     *
     * @param other the other pressure
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Pressure other, Pressure tolerance) {
        return Math.abs(inPascals - other.inPascals) <= tolerance.inPascals;
    }

    @Override
    public int compareTo(Pressure other) {
        return Double.compare(inPascals, other.inPascals);
    }

    @Override
    public String toString() {
        return Numbers.text(inKPa()) + " kPa";
    }
}
