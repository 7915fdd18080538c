package io.github.stoplag.quantity;

/**
 * The coefficient of friction between tyre and road: friction force over normal force.
 *
 * <p>Symbol μ; possible range [0, 2]. Equality is exact; see {@link #isCloseTo}.
 *
 * @param inRatio the friction coefficient in a plain ratio
 */
public record FrictionCoefficient(double inRatio) implements Comparable<FrictionCoefficient> {
    /**
     * Checks the range and turns -0.0 into 0.0.
     *
     * @param inRatio the friction coefficient in a plain ratio
     * @throws IllegalArgumentException if inRatio is not in [0, 2]
     */
    public FrictionCoefficient {
        inRatio = Ranges.FRICTION.check(inRatio) + 0.0;
    }

    /**
     * Makes a friction coefficient from a ratio of friction force to normal force.
     *
     * @param ratio the friction coefficient as a ratio of friction force to normal force
     * @return the friction coefficient
     * @throws IllegalArgumentException if it is not in [0, 2]
     */
    public static FrictionCoefficient of(double ratio) {
        return new FrictionCoefficient(ratio);
    }

    /**
     * Says whether another friction coefficient is within a tolerance of this one.
     *
     * @param other the other friction coefficient
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(FrictionCoefficient other, FrictionCoefficient tolerance) {
        return Math.abs(inRatio - other.inRatio) <= tolerance.inRatio;
    }

    @Override
    public int compareTo(FrictionCoefficient other) {
        return Double.compare(inRatio, other.inRatio);
    }

    @Override
    public String toString() {
        return Numbers.text(inRatio);
    }
}
