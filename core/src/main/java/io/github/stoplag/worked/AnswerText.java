package io.github.stoplag.worked;

import io.github.stoplag.quantity.Units;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads what a student writes: a number and a unit, in the spellings that keyboards and schools have.
 *
 * <p>Units are those of {@link Units}, feet with inches too. A power of ten is written {@code 1.42×10^−14} or
 * {@code 1.42e-14}, a fraction {@code 60/7} or {@code 8 6/7}. A comma is the decimal sign unless it could as well part
 * thousands: {@code 60,5}, {@code 0,125}, {@code 1,234.5} and {@code 1.234,5} are read, {@code 1,250} is refused. Words
 * that hedge, {@code about}, {@code ~}, {@code (rounded)}, and a symbol with an equals sign, {@code s =}, are passed
 * over.
 */
final class AnswerText {
    /**
     * What was read.
     *
     * @param amount the number with its unit
     * @param written the number with the digits it was written with
     * @param exact whether it was written as a fraction, which is not rounded
     */
    record Reading(Amount amount, BigDecimal written, boolean exact) {
        static Reading of(Amount amount) {
            return new Reading(amount, amount.number(), false);
        }
    }

    private static final int LONGEST = 100;
    private static final Pattern SPACES = Pattern.compile("[\\s\\u00a0\\u2009\\u202f]+");
    private static final Pattern HEDGE = Pattern.compile(
            "(?i)^(?:(?:it is|it's|is|the answer is|answer|ans|result)[ :]+)?"
                    + "(?:[\\p{L}Δ]{1,5}(?:_?[\\p{L}0-9]{1,3})? ?[=≈] ?)?[=:]? ?"
                    + "(?:(?:about|approx\\.?|approximately|roughly|around|circa|ca\\.?|c\\.|nearly|almost|some)(?= ?[+.,0-9-]) ?|[~≈≃±] ?)?");
    private static final Pattern AFTERWARDS = Pattern.compile(
            "(?i)(?: ?(?:\\((?:rounded|approx\\.?|approximately|about|ca\\.?|[1-6] ?(?:s\\.? ?f\\.?|sig\\.? ?figs?\\.?|d\\.? ?p\\.?))\\)"
                    + "|,? ?(?:rounded|approximately|approx\\.?|or so))[.!]?|[!?]+)$");
    private static final Pattern TEXT =
            Pattern.compile("(?<number>[+-]?(?:\\d{1,3}(?: \\d{3})+|\\d+)(?:[.,]\\d*)?|[+-]?[.,]\\d+)"
                    + "(?:[eE](?<e>[+-]?\\d{1,2})| ?[×x*·] ?10 ?(?:\\^ ?(?<power>[+-]?\\d{1,2})|(?<raised>[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]{1,2})))?"
                    + "(?<unit>(?![\\d.,]).*|\\.)");
    private static final Pattern FRACTION = Pattern.compile(
            "(?<sign>[+-]?)(?:(?<whole>\\d{1,6})[ -])?(?<top>\\d{1,6}) ?[/⁄] ?(?<bottom>[1-9]\\d{0,5})(?<unit>(?![\\d.,/]).*)");
    private static final Pattern AMBIGUOUS = Pattern.compile("[+-]?[1-9]\\d{0,2},\\d{3}");
    private static final Pattern ENGLISH_THOUSANDS = Pattern.compile(
            "^([+-]?[1-9]\\d{0,2}(?:,\\d{3})+)(?=\\.\\d)|^([+-]?[1-9]\\d{0,2}(?:,\\d{3}){2,})(?!\\d|,)");
    private static final Pattern GERMAN_THOUSANDS = Pattern.compile("^([+-]?[1-9]\\d{0,2}(?:\\.\\d{3})+),(?=\\d)");
    private static final Pattern FEET_AND_INCHES = Pattern.compile("(?i)(?:ft|foot|feet|['′]) ?[.0-9]");
    private static final String RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻";
    private static final String PLAIN = "0123456789+-";

    private AnswerText() {}

    static Reading read(String text) {
        String spaced = SPACES.matcher(text).replaceAll(" ").strip().replace('\u2212', '-');
        if (spaced.length() > LONGEST) {
            throw unreadable(text);
        }
        String bare = AFTERWARDS.matcher(spaced).replaceFirst("");
        String plain = thousands(HEDGE.matcher(bare).replaceFirst("").strip());
        Matcher fraction = FRACTION.matcher(plain);
        if (fraction.matches()) {
            return fraction(fraction);
        }
        Matcher matcher = TEXT.matcher(plain);
        if (!matcher.matches()) {
            throw unreadable(text);
        }
        String number = matcher.group("number");
        if (AMBIGUOUS.matcher(number).matches()) {
            throw new IllegalArgumentException("the comma in \"" + number
                    + "\" may be a decimal sign or part thousands; write a decimal point, or no comma");
        }
        String unit = unit(matcher.group("unit"));
        // ft2/s2 is a unit and no two inches
        if (Units.having(unit).isEmpty() && FEET_AND_INCHES.matcher(plain).find()) {
            Units.Reading length = Units.DISTANCE.read(plain);
            return Reading.of(Amount.of(length.number(), Unit.of(length.unit().symbol())));
        }
        BigDecimal value = new BigDecimal(
                        number.replace(" ", "").replace(',', '.').replaceFirst("\\.$", ""))
                .scaleByPowerOfTen(exponent(matcher));
        return new Reading(Amount.of(value.doubleValue(), Unit.of(unit)), value, false);
    }

    private static IllegalArgumentException unreadable(String text) {
        return new IllegalArgumentException(
                "an answer must be a number and a unit, such as 79.3 m, got \"" + shown(text) + "\"");
    }

    private static String unit(String text) {
        return text.strip().replaceFirst("\\.$", "");
    }

    /** Takes the marks between thousands out where the other mark says which is which. */
    private static String thousands(String text) {
        Matcher english = ENGLISH_THOUSANDS.matcher(text);
        if (english.find()) {
            return english.group().replace(",", "") + text.substring(english.end());
        }
        Matcher german = GERMAN_THOUSANDS.matcher(text);
        return german.find() ? german.group(1).replace(".", "") + "." + text.substring(german.end()) : text;
    }

    private static Reading fraction(Matcher parts) {
        BigDecimal whole =
                new BigDecimal(Optional.ofNullable(parts.group("whole")).orElse("0"));
        BigDecimal value = new BigDecimal(parts.group("top"))
                .divide(new BigDecimal(parts.group("bottom")), MathContext.DECIMAL64)
                .add(whole);
        BigDecimal signed = parts.group("sign").equals("-") ? value.negate() : value;
        return new Reading(Amount.of(signed.doubleValue(), Unit.of(unit(parts.group("unit")))), signed, true);
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
