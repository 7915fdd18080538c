package io.github.stoplag.units;

import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text cut into its number and the unit behind it.
 *
 * @param number the number
 * @param unit the unit, empty if there is none
 */
record NumberAndUnit(double number, String unit) {
    // typeset text carries no-break and thin spaces
    private static final Pattern SPACES = Pattern.compile("[\\s\\u00a0\\u2009\\u202f]+");
    private static final Pattern LEADING_NUMBER =
            Pattern.compile("([+-]?(?:[0-9]+(?:\\.[0-9]+)?|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?) ?(.*)");
    private static final Pattern FEET_AND_INCHES =
            Pattern.compile("([+-]?)([0-9.]+) ?(?:ft ?([0-9.]+) ?in|['′] ?([0-9.]+) ?[\"″]?)");
    private static final Pattern NO_UNIT_BEGINS_SO = Pattern.compile("[0-9.,+-].*");

    /**
     * Cuts a text in two; feet with inches come back in inches.
     *
     * @param text the text
     * @param failure makes the exception from a reason
     * @return the number and the unit
     */
    static NumberAndUnit split(String text, Function<String, IllegalArgumentException> failure) {
        String plain = SPACES.matcher(text).replaceAll(" ").strip().replace('−', '-');
        if (plain.isEmpty()) {
            throw failure.apply("no value given");
        }
        Matcher both = FEET_AND_INCHES.matcher(plain);
        if (both.matches()) {
            return feetAndInches(both, failure);
        }
        if (plain.indexOf(',') >= 0) {
            throw failure.apply("a comma is not allowed; write a decimal point, and no mark between thousands");
        }
        Matcher one = LEADING_NUMBER.matcher(plain);
        if (!one.matches() || NO_UNIT_BEGINS_SO.matcher(one.group(2)).matches()) {
            throw failure.apply("not a number followed by a unit; write it like 1.5 or 1.5e-3");
        }
        return new NumberAndUnit(Double.parseDouble(one.group(1)), one.group(2));
    }

    private static NumberAndUnit feetAndInches(Matcher parts, Function<String, IllegalArgumentException> failure) {
        String inchText = parts.group(3) == null ? parts.group(4) : parts.group(3);
        if (!parts.group(2).matches("[0-9]+") || inchText == null || !inchText.matches("[0-9]+(\\.[0-9]+)?")) {
            throw failure.apply("feet beside inches must be a whole number, and inches like 10 or 10.5");
        }
        double inches = Double.parseDouble(inchText);
        if (!(inches < 12.0)) {
            throw failure.apply("inches beside feet must be in [0, 12), got " + inchText);
        }
        double magnitude = Double.parseDouble(parts.group(2)) * 12.0 + inches;
        return new NumberAndUnit(parts.group(1).equals("-") ? -magnitude : magnitude, "in");
    }
}
