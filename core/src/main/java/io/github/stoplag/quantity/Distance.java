package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * A length along the road; negative where it is a difference that can go either way.
 *
 * <p>Symbol s; possible range [-1e7, 1e7] m. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inMetres the distance in metres
 */
public record Distance(double inMetres) implements Comparable<Distance> {
    /** Metres in one international foot, exact. */
    public static final double METRES_PER_FOOT = 0.3048;

    /** Metres in one inch, exact. */
    public static final double METRES_PER_INCH = 0.0254;

    /** Metres in one statute mile, exact. */
    public static final double METRES_PER_MILE = 1609.344;

    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inMetres the distance in metres
     * @throws IllegalArgumentException if inMetres is not in [-1e7, 1e7] m
     */
    public Distance {
        inMetres = Ranges.DISTANCE.check(inMetres) + 0.0;
    }

    /**
     * Makes a distance from metres.
     *
     * @param metres the distance in metres
     * @return the distance
     * @throws IllegalArgumentException if it is not in [-1e7, 1e7] m
     */
    public static Distance metres(double metres) {
        return new Distance(metres);
    }

    /**
     * Makes a distance from kilometres.
     *
     * @param km the distance in kilometres
     * @return the distance
     * @throws IllegalArgumentException if it is not in [-1e7, 1e7] m
     */
    public static Distance km(double km) {
        return new Distance(km * 1000.0);
    }

    /**
     * Makes a distance from international feet.
     *
     * @param feet the distance in international feet
     * @return the distance
     * @throws IllegalArgumentException if it is not in [-1e7, 1e7] m
     */
    public static Distance feet(double feet) {
        return new Distance(feet * METRES_PER_FOOT);
    }

    /**
     * Makes a distance from inches.
     *
     * @param inches the distance in inches
     * @return the distance
     * @throws IllegalArgumentException if it is not in [-1e7, 1e7] m
     */
    public static Distance inches(double inches) {
        return new Distance(inches * METRES_PER_INCH);
    }

    /**
     * Makes a distance from statute miles.
     *
     * @param miles the distance in statute miles
     * @return the distance
     * @throws IllegalArgumentException if it is not in [-1e7, 1e7] m
     */
    public static Distance miles(double miles) {
        return new Distance(miles * METRES_PER_MILE);
    }

    /**
     * Makes a distance from feet and inches, as drivers say it: 8 ft 10 in.
     *
     * @param feet the feet
     * @param inches the inches beyond them, of the same sign
     * @return the distance
     * @throws IllegalArgumentException if it is not in [-1e7, 1e7] m, or the two parts have opposite signs
     */
    public static Distance feetAndInches(double feet, double inches) {
        if (feet * inches < 0) {
            throw new IllegalArgumentException("feet and inches must have the same sign, got " + Numbers.text(feet)
                    + " ft " + Numbers.text(inches) + " in");
        }
        return new Distance(feet * METRES_PER_FOOT + inches * METRES_PER_INCH);
    }

    /**
     * Gives the distance in kilometres.
     *
     * @return the distance in kilometres
     */
    public double inKm() {
        return inMetres / 1000.0;
    }

    /**
     * Gives the distance in international feet.
     *
     * @return the distance in international feet
     */
    public double inFeet() {
        return inMetres / METRES_PER_FOOT;
    }

    /**
     * Gives the distance in inches.
     *
     * @return the distance in inches
     */
    public double inInches() {
        return inMetres / METRES_PER_INCH;
    }

    /**
     * Gives the distance in statute miles.
     *
     * @return the distance in statute miles
     */
    public double inMiles() {
        return inMetres / METRES_PER_MILE;
    }

    /**
     * Reads a distance such as {@code 8 ft 10 in}; {@link Units#DISTANCE} has the units and says how numbers are
     * written.
     *
     * @param text a number with a unit
     * @return the distance
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the distance out of range
     */
    public static Distance parse(String text) {
        Objects.requireNonNull(text, "text");
        return new Distance(Units.DISTANCE.parseSi(text));
    }

    /**
     * Writes the distance with a fixed count of decimals, rounded half up, such as {@code 2.7 m}.
     *
     * @param unit a unit of {@link Units#DISTANCE} in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.DISTANCE.format(inMetres, unit, decimals);
    }

    /**
     * Writes the distance in feet and inches as drivers say it, such as {@code 8 ft 10 in}, to the nearest inch.
     *
     * <p>Half an inch rounds away from zero; twelve inches carry into the feet; a negative distance has one minus sign
     * in front. {@link #parse} reads it back to within half an inch.
     *
     * @return the text
     */
    public String formatFeetAndInches() {
        long inches = Math.round(Math.abs(inInches()));
        String sign = inMetres < 0 && inches > 0 ? "-" : "";
        return sign + inches / 12 + " ft " + inches % 12 + " in";
    }

    /**
     * Says whether another distance is within a tolerance of this one.
     *
     * @param other the other distance
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Distance other, Distance tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inMetres - other.inMetres) <= tolerance.inMetres;
    }

    @Override
    public int compareTo(Distance other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inMetres, other.inMetres);
    }

    @Override
    public String toString() {
        return Numbers.text(inMetres) + " m";
    }
}
