package io.github.stoplag.worked;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number with the unit it was written in.
 *
 * <p>The value types of {@code quantity} forget the unit a value came in; a worked solution must show it.
 *
 * @param number the number as written
 * @param unit its unit
 */
public record Amount(BigDecimal number, Unit unit) {
    private static final Pattern TEXT =
            Pattern.compile("\\s*([+\u2212-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d{1,2})?)\\s*(.*?)\\s*");

    /**
     * Makes an amount.
     *
     * @param number the number, finite
     * @param unit its unit
     * @return the amount
     * @throws IllegalArgumentException if the number is not finite
     */
    public static Amount of(double number, Unit unit) {
        if (!(Math.abs(number) <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("number must be finite, got " + number);
        }
        BigDecimal written = BigDecimal.valueOf(number);
        return new Amount(written.signum() == 0 ? BigDecimal.ZERO : written.stripTrailingZeros(), unit);
    }

    /**
     * Reads an amount such as {@code 79.3 m} or {@code -3 %}; the decimal sign is a point.
     *
     * @param text a number, possibly followed by a unit of the list
     * @return the amount
     * @throws IllegalArgumentException if the text does not start with a number or its unit is not of the list
     */
    public static Amount parse(String text) {
        Matcher matcher = TEXT.matcher(text);
        if (text.length() > 100 || !matcher.matches() || matcher.group(2).startsWith(",")) {
            throw new IllegalArgumentException(
                    "an answer must be a number with a decimal point and a unit, such as 79.3 m, got \"" + shown(text)
                            + "\"");
        }
        return of(Double.parseDouble(matcher.group(1).replace('\u2212', '-')), Unit.of(matcher.group(2)));
    }

    private static String shown(String text) {
        return text.length() > 100 ? text.substring(0, 100) + "…" : text;
    }

    /**
     * Gives the number in another unit.
     *
     * @param other a unit of the same kind
     * @return the number
     * @throws IllegalArgumentException if the units measure different things
     */
    public double in(Unit other) {
        return unit.convert(number.doubleValue(), other);
    }

    @Override
    public String toString() {
        return TextNotation.INSTANCE.render(new Expression.Num(number, unit));
    }
}
