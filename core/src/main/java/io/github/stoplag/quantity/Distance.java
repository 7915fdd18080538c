package io.github.stoplag.quantity;

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
     * Says whether another distance is within a tolerance of this one.
     *
     * @param other the other distance
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Distance other, Distance tolerance) {
        return Math.abs(inMetres - other.inMetres) <= tolerance.inMetres;
    }

    @Override
    public int compareTo(Distance other) {
        return Double.compare(inMetres, other.inMetres);
    }

    @Override
    public String toString() {
        return Numbers.text(inMetres) + " m";
    }
}
