package io.github.stoplag.worked;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * A number with the unit it was written in.
 *
 * <p>The value types of {@code quantity} forget the unit a value came in; a worked solution must show it.
 *
 * @param number the number as written
 * @param unit its unit
 */
public record Amount(BigDecimal number, Unit unit) {

    /**
     * Refuses nulls.
     *
     * @param number the number as written
     * @param unit its unit
     * @throws NullPointerException if one that is required is null
     */
    public Amount {
        Objects.requireNonNull(number, "number");
        Objects.requireNonNull(unit, "unit");
    }

    /**
     * Makes an amount.
     *
     * @param number the number, finite
     * @param unit its unit
     * @return the amount
     * @throws IllegalArgumentException if the number is not finite
     */
    public static Amount of(double number, Unit unit) {
        Objects.requireNonNull(unit, "unit");
        if (!(Math.abs(number) <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("number must be finite, got " + number);
        }
        BigDecimal written = BigDecimal.valueOf(number);
        return new Amount(written.signum() == 0 ? BigDecimal.ZERO : written.stripTrailingZeros(), unit);
    }

    /**
     * Reads an amount such as {@code 79.3 m}, {@code -3 %}, {@code 1.42×10^−14 m} or {@code 8 ft 10 in}; it reads what
     * {@link #toString()} writes.
     *
     * <p>The decimal sign is a point, or a comma where it cannot part thousands: {@code 60,5 m}, {@code 1.234,5 m}. A
     * fraction is read, {@code 8 6/7 m}, and words that hedge are passed over: {@code about 72 m}, {@code 23 m
     * (rounded)}. Units are those of
     * {@link Unit#of(String)}.
     *
     * @param text a number, possibly followed by a unit
     * @return the amount
     * @throws IllegalArgumentException if the text does not start with a number, its comma may part thousands, or its
     *     unit is not known
     */
    public static Amount parse(String text) {
        return AnswerText.read(text).amount();
    }

    /**
     * Gives the number in another unit.
     *
     * @param other a unit of the same kind
     * @return the number
     * @throws IllegalArgumentException if the units measure different things
     */
    public double in(Unit other) {
        Objects.requireNonNull(other, "other");
        return unit.convert(number.doubleValue(), other);
    }

    @Override
    public String toString() {
        return TextNotation.INSTANCE.render(new Expression.Num(number, unit));
    }
}
