package io.github.stoplag.quantity;

/**
 * A luminous intensity in one direction.
 *
 * <p>Symbol I; possible range [0, 1e7] cd. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inCandela the luminous intensity in candela
 */
public record LuminousIntensity(double inCandela) implements Comparable<LuminousIntensity> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inCandela the luminous intensity in candela
     * @throws IllegalArgumentException if inCandela is not in [0, 1e7] cd
     */
    public LuminousIntensity {
        inCandela = Ranges.INTENSITY.check(inCandela) + 0.0;
    }

    /**
     * Makes a luminous intensity from candela.
     *
     * @param candela the luminous intensity in candela
     * @return the luminous intensity
     * @throws IllegalArgumentException if it is not in [0, 1e7] cd
     */
    public static LuminousIntensity candela(double candela) {
        return new LuminousIntensity(candela);
    }

    /**
     * Says whether another luminous intensity is within a tolerance of this one.
     *
     * @param other the other luminous intensity
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(LuminousIntensity other, LuminousIntensity tolerance) {
        return Math.abs(inCandela - other.inCandela) <= tolerance.inCandela;
    }

    @Override
    public int compareTo(LuminousIntensity other) {
        return Double.compare(inCandela, other.inCandela);
    }

    @Override
    public String toString() {
        return Numbers.text(inCandela) + " cd";
    }
}
