package io.github.stoplag.quantity;

/**
 * Range checks with one form of message: quantity, range with unit, value got.
 *
 * <p>Every check is written so that NaN fails it.
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
     * @throws IllegalArgumentException if the value is outside the range or NaN, for example {@code reaction time must be
     *     in [0, 30] s, got -1.2 s}
     */
    public static double inRange(String name, double value, double lo, double hi, String unit) {
        if (!(value >= lo && value <= hi)) {
            throw outside(name, value, "[", lo, hi, unit);
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
            throw outside(name, value, "(", lo, hi, unit);
        }
        return value;
    }

    private static IllegalArgumentException outside(
            String name, double value, String open, double lo, double hi, String unit) {
        String suffix = unit.isEmpty() ? "" : " " + unit;
        return new IllegalArgumentException(name + " must be in " + open + Numbers.text(lo) + ", " + Numbers.text(hi)
                + "]" + suffix + ", got " + Numbers.text(value) + suffix);
    }
}
