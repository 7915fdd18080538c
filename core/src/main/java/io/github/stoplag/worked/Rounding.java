package io.github.stoplag.worked;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Objects;

/**
 * How the result of a step is rounded.
 *
 * @param mode which way
 * @param step the step to round to; for {@link Mode#DIGITS} the count of significant digits
 */
public record Rounding(Mode mode, BigDecimal step) {
    /** Which way to round. */
    public enum Mode {
        /** To a count of significant digits, halves up. */
        DIGITS,
        /** To the nearest multiple of the step, halves up. */
        NEAREST,
        /** To the next multiple of the step upwards. */
        UP,
        /** To the next multiple of the step downwards. */
        DOWN
    }

    private static final MathContext CLEAN = new MathContext(13, RoundingMode.HALF_EVEN);

    /**
     * Checks the step.
     *
     * @param mode which way
     * @param step the step to round to; for {@link Mode#DIGITS} the count of significant digits
     * @throws IllegalArgumentException if the step is not above 0
     */
    public Rounding {
        Objects.requireNonNull(step, "step");
        Objects.requireNonNull(mode, "mode");
        if (step.signum() <= 0) {
            throw new IllegalArgumentException("rounding step must be above 0, got " + step.toPlainString());
        }
    }

    /**
     * Rounds to significant digits, halves up.
     *
     * @param digits how many, at least 1
     * @return the rounding
     */
    public static Rounding digits(int digits) {
        return new Rounding(Mode.DIGITS, BigDecimal.valueOf(digits));
    }

    /**
     * Rounds to the nearest multiple, halves up.
     *
     * @param step the step, for example {@code 0.1}
     * @return the rounding
     */
    public static Rounding nearest(String step) {
        Objects.requireNonNull(step, "step");
        return new Rounding(Mode.NEAREST, new BigDecimal(step));
    }

    /**
     * Rounds to the next multiple upwards.
     *
     * @param step the step, for example {@code 5}
     * @return the rounding
     */
    public static Rounding up(String step) {
        Objects.requireNonNull(step, "step");
        return new Rounding(Mode.UP, new BigDecimal(step));
    }

    /**
     * Rounds to the next multiple downwards.
     *
     * @param step the step, for example {@code 5}
     * @return the rounding
     */
    public static Rounding down(String step) {
        Objects.requireNonNull(step, "step");
        return new Rounding(Mode.DOWN, new BigDecimal(step));
    }

    /** Rounds; the last digits of the double, which no reader sees, are dropped first. */
    BigDecimal apply(double value) {
        BigDecimal clean = BigDecimal.valueOf(value).round(CLEAN);
        if (mode != Mode.DIGITS) {
            return clean.divide(step, 0, way()).multiply(step);
        }
        if (clean.signum() == 0) {
            return BigDecimal.ZERO;
        }
        int digits = step.intValueExact();
        BigDecimal rounded = clean.round(new MathContext(digits, RoundingMode.HALF_UP));
        int scale = digits - (rounded.precision() - rounded.scale());
        return scale > 0 ? rounded.setScale(scale, RoundingMode.UNNECESSARY) : rounded;
    }

    private RoundingMode way() {
        return switch (mode) {
            case UP -> RoundingMode.CEILING;
            case DOWN -> RoundingMode.FLOOR;
            default -> RoundingMode.HALF_UP;
        };
    }

    /** The words that go behind a result rounded by rule; none for plain digits. */
    String note() {
        return switch (mode) {
            case DIGITS -> "";
            case NEAREST -> "rounded to the nearest " + step.toPlainString() + ", halves up";
            case UP -> "raised to the next multiple of " + step.toPlainString();
            case DOWN -> "lowered to the next multiple of " + step.toPlainString();
        };
    }
}
