package io.github.stoplag.quantity;

import java.util.Objects;

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
     * Reads a friction coefficient such as {@code 0.7}; {@link Units#FRICTION_COEFFICIENT} has the units and says how
     * numbers are written.
     *
     * @param text a number without a unit
     * @return the friction coefficient
     * @throws IllegalArgumentException if the number is malformed, the unit does not fit, or the
     *     friction coefficient out of range
     */
    public static FrictionCoefficient parse(String text) {
        Objects.requireNonNull(text, "text");
        return new FrictionCoefficient(Units.FRICTION_COEFFICIENT.parseSi(text));
    }

    /**
     * Writes the friction coefficient with a fixed count of decimals, rounded half up, such as {@code 0.7}.
     *
     * @param unit a unit of {@link Units#FRICTION_COEFFICIENT} in any of its spellings, printed as given; empty for a
     *     plain number
     * @param decimals how many decimals to print, 0 to 15
     * @return the text
     * @throws IllegalArgumentException if the unit does not fit or decimals is out of range
     */
    public String format(String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        return Units.FRICTION_COEFFICIENT.format(inRatio, unit, decimals);
    }

    /**
     * Says whether another friction coefficient is within a tolerance of this one.
     *
     * @param other the other friction coefficient
     * @param tolerance the largest difference that still counts as close
     * @return true if the two differ by no more than the tolerance
     */
    public boolean isCloseTo(FrictionCoefficient other, FrictionCoefficient tolerance) {
        Objects.requireNonNull(other, "other");
        Objects.requireNonNull(tolerance, "tolerance");
        return Math.abs(inRatio - other.inRatio) <= tolerance.inRatio;
    }

    @Override
    public int compareTo(FrictionCoefficient other) {
        Objects.requireNonNull(other, "other");
        return Double.compare(inRatio, other.inRatio);
    }

    @Override
    public String toString() {
        return Numbers.text(inRatio);
    }
}
