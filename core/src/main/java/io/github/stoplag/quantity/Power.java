package io.github.stoplag.quantity;

/**
 * A power.
 *
 * <p>Symbol P; possible range [0, 1e6] W. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inWatts the power in watts
 */
public record Power(double inWatts) implements Comparable<Power> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inWatts the power in watts
     * @throws IllegalArgumentException if inWatts is not in [0, 1e6] W
     */
    public Power {
        inWatts = Ranges.POWER.check(inWatts) + 0.0;
    }

    /**
     * Makes a power from watts.
     *
     * @param watts the power in watts
     * @return the power
     * @throws IllegalArgumentException if it is not in [0, 1e6] W
     */
    public static Power watts(double watts) {
        return new Power(watts);
    }

    /**
     * Says whether another power is within a tolerance of this one.
     *
     * @param other the other power
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Power other, Power tolerance) {
        return Math.abs(inWatts - other.inWatts) <= tolerance.inWatts;
    }

    @Override
    public int compareTo(Power other) {
        return Double.compare(inWatts, other.inWatts);
    }

    @Override
    public String toString() {
        return Numbers.text(inWatts) + " W";
    }
}
