package io.github.stoplag.quantity;

/**
 * A luminance, here mostly of the background a lamp is seen against.
 *
 * <p>Symbol L; possible range [0, 1e+10] cd/m². Equality is exact; see {@link #isCloseTo}.
 *
 * @param inCdPerM2 the luminance in candela per square metre
 */
public record Luminance(double inCdPerM2) implements Comparable<Luminance> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inCdPerM2 the luminance in candela per square metre
     * @throws IllegalArgumentException if inCdPerM2 is not in [0, 1e+10] cd/m²
     */
    public Luminance {
        inCdPerM2 = Ranges.LUMINANCE.check(inCdPerM2) + 0.0;
    }

    /**
     * Makes a luminance from candela per square metre.
     *
     * @param cdPerM2 the luminance in candela per square metre
     * @return the luminance
     * @throws IllegalArgumentException if it is not in [0, 1e+10] cd/m²
     */
    public static Luminance cdPerM2(double cdPerM2) {
        return new Luminance(cdPerM2);
    }

    /**
     * Says whether another luminance is within a tolerance of this one.
     *
     * @param other the other luminance
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(Luminance other, Luminance tolerance) {
        return Math.abs(inCdPerM2 - other.inCdPerM2) <= tolerance.inCdPerM2;
    }

    @Override
    public int compareTo(Luminance other) {
        return Double.compare(inCdPerM2, other.inCdPerM2);
    }

    @Override
    public String toString() {
        return Numbers.text(inCdPerM2) + " cd/m²";
    }
}
