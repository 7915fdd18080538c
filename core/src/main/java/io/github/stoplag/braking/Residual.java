package io.github.stoplag.braking;

import io.github.stoplag.quantity.Numbers;
import java.util.Objects;

/**
 * A printed figure beside what its rule computes.
 *
 * @param row the printed figure
 * @param computed the rule's value in the row's unit
 */
public record Residual(PublishedRow row, double computed) {
    // the last bits of unit conversions
    private static final double SLACK = 1e-7;

    /**
     * Refuses nulls.
     *
     * @param row the printed figure
     * @param computed the rule's value in the row's unit
     * @throws NullPointerException if one that is required is null
     */
    public Residual {
        Objects.requireNonNull(row, "row");
    }

    /**
     * Gives published minus computed.
     *
     * @return the residual in the row's unit
     */
    public double value() {
        return row.published() - computed;
    }

    /**
     * Says whether the figure agrees with the rule as far as its printed digits go.
     *
     * @return true if the residual does not exceed half a unit of the last printed digit
     */
    public boolean withinPrint() {
        return Math.abs(value()) <= row.halfDigit() + SLACK;
    }

    /**
     * Says whether the figure agrees with the rule or its note says why not.
     *
     * @return false for a disagreement without an explanation
     */
    public boolean explained() {
        return withinPrint() || !row.note().isEmpty();
    }

    /**
     * Gives the residual as text with its sign, to two digits more than the figure was printed with.
     *
     * @return its text, for example {@code -0.015} or {@code 0}
     */
    public String text() {
        double steps = Math.pow(10, row.decimals() + 2);
        double rounded = Math.rint(value() * steps) / steps;
        return (rounded > 0 ? "+" : "") + Numbers.text(rounded);
    }

    @Override
    public String toString() {
        return row.condition() + ": published " + row.printed() + " " + row.unit() + ", computed "
                + Numbers.text(computed) + " " + row.unit();
    }
}
