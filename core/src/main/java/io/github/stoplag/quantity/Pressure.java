package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * A gauge pressure, as tyres are inflated to.
 *
 * <p>Symbol p; possible range [0, 1e8] Pa. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inPascals the pressure in pascals
 */
public record Pressure(double inPascals) implements Comparable<Pressure> {
    // 0.45359237 kg · 9.80665 m/s² over (0.0254 m)², both exact
    private static final double NEWTONS_PER_POUND_FORCE = 4.4482216152605;
    private static final double M2_PER_SQUARE_INCH = 0.00064516;

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
        return new Pressure(psi * NEWTONS_PER_POUND_FORCE / M2_PER_SQUARE_INCH);
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
        return inPascals * M2_PER_SQUARE_INCH / NEWTONS_PER_POUND_FORCE;
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
     * Reads a pressure such as {@code 2.2 bar}; {@link Units#PRESSURE} has the units and says how numbers are written.
     *
     * @param text a number with a unit
     * @return the pressure
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the pressure out of range
     */
    public static Pressure parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Pressure(Units.PRESSURE.parseSi(text));
    }

    /**
     * Writes the pressure with a fixed count of decimals, rounded half up, such as {@code 220.0 kPa}.
     *
     * @param unit a unit of {@link Units#PRESSURE} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.PRESSURE.format(inPascals, unit, decimals);
    }

    /**
     * Says whether another pressure is within a tolerance of this one.
     *
     * @param other the other pressure
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Pressure other, Pressure tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inPascals - other.inPascals) <= tolerance.inPascals;
    }

    @Override
    public int compareTo(Pressure other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inPascals, other.inPascals);
    }

    @Override
    public String toString() {
        return Numbers.text(inKPa()) + " kPa";
    }
}
