package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Range;
import java.util.Objects;

/**
 * One unknown of a {@link LatencyTable}: a column and the interval it is tabulated over.
 *
 * @param column the column's name with its unit, for example {@code supply_v}
 * @param range the interval, with the quantity's name and unit for messages
 */
public record TableAxis(String column, Range range) {
    /**
     * Checks that the interval is closed and finite.
     *
     * @param column the column's name with its unit
     * @param range the interval
     * @throws IllegalArgumentException if the interval is half open or endless
     */
    public TableAxis {
        Objects.requireNonNull(column, "column");
        if (range.open() || !(range.hi() - range.lo() < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    range.name() + " must be tabulated over a closed, finite interval, got " + range);
        }
    }

    /** The value at a place of [−1, 1] of a part of the interval; its ends exactly. */
    static double between(double lo, double hi, double at) {
        return at <= -1 ? lo : at >= 1 ? hi : 0.5 * (lo + hi) + 0.5 * (hi - lo) * at;
    }
}
