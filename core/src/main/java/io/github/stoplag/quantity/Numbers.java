package io.github.stoplag.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as text for messages and reports: rounded to significant digits, the same in every locale. */
public final class Numbers {
    private static final int DEFAULT_DIGITS = 6;
    // enough for any double
    private static final int MOST_DIGITS = 17;

    private Numbers() {}

    /**
     * Prints a number to at most six significant digits without trailing zeros.
     *
     * @param value the number
     * @return its text, for example {@code 13.8889}, {@code -0.25} or {@code 1e-9}
     */
    public static String text(double value) {
        return text(value, DEFAULT_DIGITS);
    }

    /**
     * Prints a number to a given count of significant digits without trailing zeros, in plain notation from 1e-4 up to
     * 1e7 and with an exponent outside.
     *
     * @param value the number
     * @param significantDigits how many digits to keep, at least 1
     * @return its text
     */
    public static String text(double value, int significantDigits) {
        if (Double.isNaN(value) || Double.isInfinite(value)) {
            return Double.toString(value);
        }
        if (value == 0) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(value)
                .round(new MathContext(significantDigits, RoundingMode.HALF_EVEN))
                .stripTrailingZeros();
        int exponent = rounded.precision() - rounded.scale() - 1;
        if (exponent >= -4 && exponent < 7) {
            return rounded.toPlainString();
        }
        BigDecimal mantissa = rounded.movePointLeft(exponent).stripTrailingZeros();
        return mantissa.toPlainString() + "e" + exponent;
    }

    /**
     * Prints a number with as few digits as it takes to read the same bits back, the same on every JDK.
     *
     * @param value the number
     * @return its text, for example {@code 0.1}
     */
    public static String exact(double value) {
        int digits = 1;
        while (digits < MOST_DIGITS && Double.parseDouble(text(value, digits)) != value) {
            digits++;
        }
        return text(value, digits);
    }

    /**
     * Prints a number with a fixed count of decimals, half up on its decimal value.
     *
     * @param value the number, finite
     * @param decimals how many decimals to print
     * @return its text, never with a bare minus sign before zero
     */
    public static String fixed(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString();
    }
}
