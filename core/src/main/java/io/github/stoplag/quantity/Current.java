package io.github.stoplag.quantity;

/**
 * An electric current.
 *
 * <p>Symbol I; possible range [-100000, 100000] A. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inAmperes the current in amperes
 */
public record Current(double inAmperes) implements Comparable<Current> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inAmperes the current in amperes
     * @throws IllegalArgumentException if inAmperes is not in [-100000, 100000] A
     */
    public Current {
        inAmperes = Ranges.CURRENT.check(inAmperes) + 0.0;
    }

    /**
     * Makes a current from amperes.
     *
     * @param amperes the current in amperes
     * @return the current
     * @throws IllegalArgumentException if it is not in [-100000, 100000] A
     */
    public static Current amperes(double amperes) {
        return new Current(amperes);
    }

    /**
     * Makes a current from milliamperes.
     *
     * @param milliamperes the current in milliamperes
     * @return the current
     * @throws IllegalArgumentException if it is not in [-100000, 100000] A
     */
    public static Current milliamperes(double milliamperes) {
        return new Current(milliamperes / 1000.0);
    }

    /**
     * Gives the current in milliamperes.
     *
     * @return the current in milliamperes
     */
    public double inMilliamperes() {
        return inAmperes * 1000.0;
    }

    /**
     * Says whether another current is within a tolerance of this one.
     *
     * @param other the other current
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Current other, Current tolerance) {
        return Math.abs(inAmperes - other.inAmperes) <= tolerance.inAmperes;
    }

    @Override
    public int compareTo(Current other) {
        return Double.compare(inAmperes, other.inAmperes);
    }

    @Override
    public String toString() {
        return Numbers.text(inAmperes) + " A";
    }
}
