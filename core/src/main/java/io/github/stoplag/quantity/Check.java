package io.github.stoplag.quantity;

import java.util.Collection;
import java.util.List;
import java.util.Objects;

/**
 * Range checks for bounds that stand in one place only, with the same form of message as {@link Range}: quantity, range
 * with unit, value got.
 *
 * <p>Every check is written so that NaN fails it.
 *
 * <p>Internal: it is public for the library's other packages, not for
 * users.
 */
public final class Check {
    private Check() {}

    /**
     * Requires a value in a closed range.
     *
     * @param name what the value is, as the message shall name it
     * @param value the value
     * @param lo the lowest value allowed
     * @param hi the highest value allowed
     * @param unit the unit of all three, empty for a plain ratio
     * @return the value
     * @throws IllegalArgumentException if the value is outside the range or NaN, for example {@code reaction time must
     *     be in [0, 30] s, got -1.2 s}
     */
    public static double inRange(String name, double value, double lo, double hi, String unit) {
        if (!(value >= lo && value <= hi)) {
            throw Range.outside(name, value, false, lo, hi, unit);
        }
        return value;
    }

    /**
     * Requires a value above a bound that is itself not allowed, up to one that is.
     *
     * @param name what the value is, as the message shall name it
     * @param value the value
     * @param lo the bound the value must exceed
     * @param hi the highest value allowed
     * @param unit the unit of all three, empty for a plain ratio
     * @return the value
     * @throws IllegalArgumentException if the value is outside the range or NaN
     */
    public static double above(String name, double value, double lo, double hi, String unit) {
        if (!(value > lo && value <= hi)) {
            throw Range.outside(name, value, true, lo, hi, unit);
        }
        return value;
    }

    /**
     * Copies a list, naming it where it is null or holds one.
     *
     * @param name the parameter's name
     * @param elements what it holds
     * @param <T> what its elements are
     * @return the copy, which nobody can change
     * @throws NullPointerException if the list or an element is null
     */
    public static <T> List<T> copyOf(String name, Collection<? extends T> elements) {
        Objects.requireNonNull(elements, name);
        for (T each : elements) {
            Objects.requireNonNull(each, () -> name + " must not hold null");
        }
        return List.copyOf(elements);
    }
}
