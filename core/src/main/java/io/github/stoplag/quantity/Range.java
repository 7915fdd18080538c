package io.github.stoplag.quantity;

import java.util.Objects;

/**
 * The values that one quantity may take, with the quantity's name and unit: one range for every door it comes in by.
 *
 * <p>The check is a comparison; its message is made only for a value that fails. NaN fails. {@link Ranges} names the
 * ranges of the library.
 *
 * @param name what the value is, as the message shall name it
 * @param lo the lower bound
 * @param open true if the lower bound itself is not allowed
 * @param hi the highest value allowed
 * @param unit the unit of value and bounds, empty for a plain ratio
 */
public record Range(String name, double lo, boolean open, double hi, String unit) {
    /**
     * Checks the bounds.
     *
     * @param name what the value is, as the message shall name it
     * @param lo the lower bound
     * @param open true if the lower bound itself is not allowed
     * @param hi the highest value allowed
     * @param unit the unit of value and bounds, empty for a plain ratio
     * @throws IllegalArgumentException if the lower bound is not below the upper
     */
    public Range {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(unit, "unit");
        if (!(lo < hi)) {
            throw new IllegalArgumentException(
                    "range of " + name + " must have lo < hi, got " + Numbers.text(lo) + " and " + Numbers.text(hi));
        }
    }

    /**
     * Makes a range with both ends in it.
     *
     * @param name what the value is
     * @param lo the lowest value allowed
     * @param hi the highest value allowed
     * @param unit the unit of both, empty for a plain ratio
     * @return [lo, hi]
     */
    public static Range closed(String name, double lo, double hi, String unit) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(unit, "unit");
        return new Range(name, lo, false, hi, unit);
    }

    /**
     * Makes a range without its lower end.
     *
     * @param name what the value is
     * @param lo the bound a value must exceed
     * @param hi the highest value allowed
     * @param unit the unit of both, empty for a plain ratio
     * @return (lo, hi]
     */
    public static Range above(String name, double lo, double hi, String unit) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(unit, "unit");
        return new Range(name, lo, true, hi, unit);
    }

    /**
     * Gives the same range without its lower end, for a quantity that must not be zero.
     *
     * @return (lo, hi]
     */
    public Range withoutLowerEnd() {
        return new Range(name, lo, true, hi, unit);
    }

    /**
     * Gives the same range of the quantity under another name: one quantity stands in many places.
     *
     * @param newName the name for messages, for example {@code follower speed}
     * @return the range
     */
    public Range as(String newName) {
        Objects.requireNonNull(newName, "newName");
        return new Range(newName, lo, open, hi, unit);
    }

    /**
     * Says whether a value is in the range.
     *
     * @param value the value
     * @return true if it is; false for NaN
     */
    public boolean contains(double value) {
        return (open ? value > lo : value >= lo) && value <= hi;
    }

    /**
     * Requires a value in the range.
     *
     * @param value the value
     * @return the value
     * @throws IllegalArgumentException if the value is outside the range or NaN, for example {@code reaction time must
     *     be in [0, 30] s, got -1.2 s}
     */
    public double check(double value) {
        return check(name, value);
    }

    /**
     * Requires a value in the range, under another name: one quantity stands in many places.
     *
     * @param as the name for the message, for example {@code risk evaluation time}
     * @param value the value
     * @return the value
     * @throws IllegalArgumentException if the value is outside the range or NaN
     */
    public double check(String as, double value) {
        Objects.requireNonNull(as, "as");
        if (!contains(value)) {
            throw outside(as, value, open, lo, hi, unit);
        }
        return value;
    }

    static IllegalArgumentException outside(String as, double value, boolean open, double lo, double hi, String unit) {
        return new IllegalArgumentException(as + " must be in " + text(open, lo, hi, unit) + ", got "
                + Numbers.text(value) + (unit.isEmpty() ? "" : " " + unit));
    }

    private static String text(boolean open, double lo, double hi, String unit) {
        return (open ? "(" : "[") + Numbers.text(lo) + ", " + Numbers.text(hi) + "]"
                + (unit.isEmpty() ? "" : " " + unit);
    }

    @Override
    public String toString() {
        return text(open, lo, hi, unit);
    }
}
