package io.github.stoplag.examples.sweep.run;

/**
 * How many scenarios of a sweep go into files, from the first on, and in which form.
 *
 * @param format the form
 * @param count how many; more than the plan has means all
 */
public record SweepRows(RowFormat format, long count) {
    /**
     * Checks the count.
     *
     * @param format the form
     * @param count how many; more than the plan has means all
     * @throws IllegalArgumentException if it is negative
     */
    public SweepRows {
        if (count < 0) {
            throw new IllegalArgumentException("rows must be at least 0, got " + count);
        }
    }

    SweepRows within(long scenarios) {
        return new SweepRows(format, Math.min(count, scenarios));
    }

    @Override
    public String toString() {
        return count + " rows, " + format;
    }
}
