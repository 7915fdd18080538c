package io.github.stoplag.worked;

import java.util.Objects;

/**
 * A quantity a problem starts from, and where it comes from.
 *
 * @param amount the number with its unit
 * @param from where it comes from, for example {@code data sheet}
 */
public record Given(Amount amount, String from) {

    /**
     * Refuses nulls.
     *
     * @param amount the number with its unit
     * @param from where it comes from, for example {@code data sheet}
     * @throws NullPointerException if one that is required is null
     */
    public Given {
        Objects.requireNonNull(amount, "amount");
        Objects.requireNonNull(from, "from");
    }

    /**
     * Makes a given quantity that the problem itself states.
     *
     * @param number the number, finite
     * @param unit its unit
     * @return the given quantity
     * @throws IllegalArgumentException if the number is not finite
     */
    public static Given of(double number, Unit unit) {
        Objects.requireNonNull(unit, "unit");
        return of(number, unit, "stated");
    }

    /**
     * Makes a given quantity.
     *
     * @param number the number, finite
     * @param unit its unit
     * @param from where it comes from
     * @return the given quantity
     * @throws IllegalArgumentException if the number is not finite
     */
    public static Given of(double number, Unit unit, String from) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(unit, "unit");
        return new Given(Amount.of(number, unit), from);
    }

    /** The number in another unit of the same kind. */
    double in(Unit unit) {
        return amount.in(unit);
    }

    @Override
    public String toString() {
        return amount + " (" + from + ")";
    }
}
