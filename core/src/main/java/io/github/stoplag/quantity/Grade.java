package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * A road grade: rise over run, positive uphill in the direction of travel.
 *
 * <p>Symbol G; possible range [-1, 1]. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inRatio the grade in a plain ratio
 */
public record Grade(double inRatio) implements Comparable<Grade> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inRatio the grade in a plain ratio
     * @throws IllegalArgumentException if inRatio is not in [-1, 1]
     */
    public Grade {
        inRatio = Ranges.GRADE.check(inRatio) + 0.0;
    }

    /**
     * Makes a grade from rise over run.
     *
     * @param ratio the grade in rise over run
     * @return the grade
     * @throws IllegalArgumentException if it is not in [-1, 1]
     */
    public static Grade ratio(double ratio) {
        return new Grade(ratio);
    }

    /**
     * Makes a grade from percent.
     *
     * @param percent the grade in percent
     * @return the grade
     * @throws IllegalArgumentException if it is not in [-1, 1]
     */
    public static Grade percent(double percent) {
        return new Grade(percent / 100.0);
    }

    /**
     * Makes a grade from degrees of slope.
     *
     * @param degrees the grade in degrees of slope
     * @return the grade
     * @throws IllegalArgumentException if it is not in [-45, 45]°
     */
    public static Grade degrees(double degrees) {
        Ranges.SLOPE.check(degrees);
        return new Grade(Math.tan(Math.toRadians(degrees)));
    }

    /**
     * Gives the grade in percent.
     *
     * @return the grade in percent
     */
    public double inPercent() {
        return inRatio * 100.0;
    }

    /**
     * Gives the grade in degrees of slope.
     *
     * @return the grade in degrees of slope
     */
    public double inDegrees() {
        return Math.toDegrees(Math.atan(inRatio));
    }

    /**
     * Reads a grade such as {@code -3 %}; {@link Units#GRADE} has the units and says how numbers are written.
     *
     * @param text a number with a unit
     * @return the grade
     * @throws IllegalArgumentException if the number is malformed, the unit does not fit, or the
     *     grade out of range
     */
    public static Grade parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Grade(Units.GRADE.parseSi(text));
    }

    /**
     * Writes the grade with a fixed count of decimals, rounded half up, such as {@code -3.0 %}.
     *
     * @param unit a unit of {@link Units#GRADE} in any of its spellings, printed as given; empty for a plain number
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.GRADE.format(inRatio, unit, decimals);
    }

    /**
     * Says whether another grade is within a tolerance of this one.
     *
     * @param other the other grade
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Grade other, Grade tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inRatio - other.inRatio) <= tolerance.inRatio;
    }

    @Override
    public int compareTo(Grade other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inRatio, other.inRatio);
    }

    @Override
    public String toString() {
        return Numbers.text(inPercent()) + " %";
    }
}
