package io.github.stoplag.worked;

import io.github.stoplag.quantity.Units;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads what a student writes: a number and a unit, in the spellings that keyboards and schools have.
 *
 * <p>Units are those of {@link Units}, feet with inches too. A power of ten is written {@code 1.42×10^−14} or
 * {@code 1.42e-14}. A comma is the decimal sign unless it could as well part thousands: {@code 60,5} and {@code 0,125}
 * are read, {@code 1,250} is refused.
 */
final class AnswerText {
    private static final int LONGEST = 100;
    private static final Pattern SPACES = Pattern.compile("[\\s\\u00a0\\u2009\\u202f]+");
    private static final Pattern TEXT =
            Pattern.compile("(?<number>[+-]?(?:\\d{1,3}(?: \\d{3})+|\\d+)(?:[.,]\\d*)?|[+-]?[.,]\\d+)"
                    + "(?:[eE](?<e>[+-]?\\d{1,2})| ?[×x*·] ?10 ?(?:\\^ ?(?<power>[+-]?\\d{1,2})|(?<raised>[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]{1,2})))?"
                    + "(?<unit>(?![\\d.,]).*|\\.)");
    private static final Pattern AMBIGUOUS = Pattern.compile("[+-]?[1-9]\\d{0,2},\\d{3}");
    private static final Pattern FEET_AND_INCHES = Pattern.compile("(?i)(?:ft|foot|feet|['′]) ?[.0-9]");
    private static final String RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻";
    private static final String PLAIN = "0123456789+-";

    private AnswerText() {}

    static Amount read(String text) {
        String plain = SPACES.matcher(text).replaceAll(" ").strip().replace('\u2212', '-');
        Matcher matcher = TEXT.matcher(plain);
        if (plain.length() > LONGEST || !matcher.matches()) {
            throw new IllegalArgumentException(
                    "an answer must be a number and a unit, such as 79.3 m, got \"" + shown(text) + "\"");
        }
        String number = matcher.group("number");
        if (AMBIGUOUS.matcher(number).matches()) {
            throw new IllegalArgumentException("the comma in \"" + number
                    + "\" may be a decimal sign or part thousands; write a decimal point, or no comma");
        }
        String unit = matcher.group("unit").strip().replaceFirst("\\.$", "");
        // ft2/s2 is a unit and no two inches
        if (Units.having(unit).isEmpty() && FEET_AND_INCHES.matcher(plain).find()) {
            Units.Reading length = Units.DISTANCE.read(plain);
            return Amount.of(length.number(), Unit.of(length.unit().symbol()));
        }
        BigDecimal value = new BigDecimal(
                        number.replace(" ", "").replace(',', '.').replaceFirst("\\.$", ""))
                .scaleByPowerOfTen(exponent(matcher));
        return Amount.of(value.doubleValue(), Unit.of(unit));
    }

    private static int exponent(Matcher matcher) {
        String written = Optional.ofNullable(matcher.group("e"))
                .or(() -> Optional.ofNullable(matcher.group("power")))
                .or(() -> Optional.ofNullable(matcher.group("raised")))
                .orElse("0");
        StringBuilder digits = new StringBuilder();
        for (int i = 0; i < written.length(); i++) {
            char each = written.charAt(i);
            int raised = RAISED.indexOf(each);
            digits.append(raised < 0 ? each : PLAIN.charAt(raised));
        }
        return Integer.parseInt(digits.toString());
    }

    private static String shown(String text) {
        return text.length() > LONGEST ? text.substring(0, LONGEST) + "…" : text;
    }
}
