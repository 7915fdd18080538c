package io.github.stoplag.source;

import io.github.stoplag.quantity.Numbers;
import java.util.Map;
import java.util.Objects;

/**
 * A range that a source publishes for a figure; a single published figure has equal ends.
 *
 * @param id the name of the row, unique in its table
 * @param what what is measured and under which conditions
 * @param low the lower end
 * @param high the upper end, not below the lower
 * @param unit the unit of both, empty for a plain ratio
 * @param source who published it
 * @param note what to know before using it, possibly empty
 */
public record PublishedRange(String id, String what, double low, double high, String unit, Source source, String note) {
    /**
     * Checks the order of the ends.
     *
     * @param id the name of the row, unique in its table
     * @param what what is measured and under which conditions
     * @param low the lower end
     * @param high the upper end, not below the lower
     * @param unit the unit of both, empty for a plain ratio
     * @param source who published it
     * @param note what to know before using it, possibly empty
     * @throws IllegalArgumentException if low exceeds high or either is NaN
     */
    public PublishedRange {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(what, "what");
        if (!(low <= high)) {
            throw new IllegalArgumentException("published range " + id + " must have low <= high, got "
                    + Numbers.text(low) + " and " + Numbers.text(high));
        }
    }

    static PublishedRange of(Table table, Map<String, String> row) {
        return new PublishedRange(
                table.text(row, "id"),
                table.text(row, "what"),
                table.number(row, "low"),
                table.number(row, "high"),
                table.text(row, "unit"),
                table.source(row),
                table.text(row, "note"));
    }

    @Override
    public String toString() {
        String ends = low == high ? Numbers.text(low) : Numbers.text(low) + " to " + Numbers.text(high);
        return what + ": " + ends + (unit.isEmpty() ? "" : " " + unit) + ", " + source;
    }
}
