package io.github.stoplag.braking;

import io.github.stoplag.quantity.Distance;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Objects;

/**
 * How a published table rounds: each part to a step, halves up; then the sum of the parts as printed to a step of its
 * own.
 *
 * @param partStep the step of each part; 0 for parts that are not rounded
 * @param totalStep the step of the total; 0 for a total that is the plain sum of the parts
 * @param totalMode how the total goes to its step: {@code HALF_UP}, {@code CEILING} or {@code FLOOR}
 */
public record TableRounding(Distance partStep, Distance totalStep, RoundingMode totalMode) {
    /** No rounding. */
    public static final TableRounding NONE =
            new TableRounding(Distance.metres(0), Distance.metres(0), RoundingMode.HALF_UP);

    // a length that went through metres comes back as 55.12499999999999; ties need the 55.125
    private static final MathContext AS_WRITTEN = new MathContext(10);

    /**
     * Refuses nulls.
     *
     * @param partStep the step of each part; 0 for parts that are not rounded
     * @param totalStep the step of the total; 0 for a total that is the plain sum of the parts
     * @param totalMode how the total goes to its step: {@code HALF_UP}, {@code CEILING} or {@code FLOOR}
     * @throws NullPointerException if one that is required is null
     */
    public TableRounding {
        Objects.requireNonNull(partStep, "partStep");
        Objects.requireNonNull(totalMode, "totalMode");
        Objects.requireNonNull(totalStep, "totalStep");
    }

    /**
     * Makes a rounding of the parts alone.
     *
     * @param step the step of each part
     * @return the rounding
     */
    public static TableRounding ofParts(Distance step) {
        Objects.requireNonNull(step, "step");
        return new TableRounding(step, Distance.metres(0), RoundingMode.HALF_UP);
    }

    /**
     * Gives the same rounding of the parts with a rounding of the total.
     *
     * @param step the step of the total
     * @param mode {@code HALF_UP}, {@code CEILING} or {@code FLOOR}
     * @return the rounding
     */
    public TableRounding withTotal(Distance step, RoundingMode mode) {
        Objects.requireNonNull(mode, "mode");
        Objects.requireNonNull(step, "step");
        return new TableRounding(partStep, step, mode);
    }

    /**
     * Rounds the parts.
     *
     * @param exact the parts as computed
     * @return the parts as printed; their total is the sum of the printed parts
     */
    public StoppingRule.Parts parts(StoppingRule.Parts exact) {
        Objects.requireNonNull(exact, "exact");
        return new StoppingRule.Parts(
                rounded(exact.lag(), partStep, RoundingMode.HALF_UP),
                rounded(exact.braking(), partStep, RoundingMode.HALF_UP));
    }

    /**
     * Rounds the total.
     *
     * @param exact the parts as computed
     * @return the sum of the printed parts, rounded to the step of the total
     */
    public Distance total(StoppingRule.Parts exact) {
        Objects.requireNonNull(exact, "exact");
        return rounded(parts(exact).total(), totalStep, totalMode);
    }

    private static Distance rounded(Distance distance, Distance step, RoundingMode mode) {
        if (step.inMetres() == 0) {
            return distance;
        }
        BigDecimal steps = new BigDecimal(distance.inMetres() / step.inMetres())
                .round(AS_WRITTEN)
                .setScale(0, mode);
        return Distance.metres(steps.doubleValue() * step.inMetres());
    }
}
