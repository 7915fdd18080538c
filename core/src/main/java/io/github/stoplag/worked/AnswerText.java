package io.github.stoplag.worked;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads what a student writes: a number and a unit, in the spellings that keyboards and schools have.
 *
 * <p>A power of ten is written {@code 1.42×10^−14} or {@code 1.42e-14}. A comma is the decimal sign unless it could as well part
 * thousands: {@code 60,5} and {@code 0,125} are read, {@code 1,250} is refused.
 */
final class AnswerText {
    private static final int LONGEST = 100;
    private static final Pattern SPACES = Pattern.compile("[\\s\\u00a0\\u2009\\u202f]+");
    private static final Pattern TEXT =
            Pattern.compile("(?<number>[+-]?(?:\\d{1,3}(?: \\d{3})+|\\d+)(?:[.,]\\d*)?|[+-]?[.,]\\d+)"
                    + "(?:[eE](?<e>[+-]?\\d{1,2})| ?[×x*·] ?10 ?(?:\\^ ?(?<power>[+-]?\\d{1,2})|(?<raised>[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]{1,2})))?"
                    + "(?<unit>(?![\\d.,]).*|\\.)");
    private static final Pattern AMBIGUOUS = Pattern.compile("[+-]?[1-9]\\d{0,2},\\d{3}");
    private static final String RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻";
    private static final String PLAIN = "0123456789+-";

    /** Spellings in small letters, beside those of {@link Unit#of}. */
    private static final Map<String, String> WORDS = Map.ofEntries(
            Map.entry("metre per second", "m/s"),
            Map.entry("kilometre per hour", "km/h"),
            Map.entry("km per hour", "km/h"),
            Map.entry("km/hr", "km/h"),
            Map.entry("kmph", "km/h"),
            Map.entry("mile per hour", "mph"),
            Map.entry("miles/h", "mph"),
            Map.entry("foot per second", "ft/s"),
            Map.entry("feet per second", "ft/s"),
            Map.entry("m/s/s", "m/s²"),
            Map.entry("ft/s/s", "ft/s²"),
            Map.entry("kilometre", "km"),
            Map.entry("kilometer", "km"),
            Map.entry("millisecond", "ms"),
            Map.entry("msec", "ms"),
            Map.entry("volt", "V"),
            Map.entry("millivolt", "mV"),
            Map.entry("amp", "A"),
            Map.entry("ampere", "A"),
            Map.entry("watt", "W"),
            Map.entry("newton", "N"),
            Map.entry("joule", "J"),
            Map.entry("kelvin", "K"),
            Map.entry("c", "°C"),
            Map.entry("deg c", "°C"),
            Map.entry("degree c", "°C"),
            Map.entry("degree celsius", "°C"),
            Map.entry("celsius", "°C"),
            Map.entry("f", "°F"),
            Map.entry("deg f", "°F"),
            Map.entry("degree f", "°F"),
            Map.entry("degree fahrenheit", "°F"),
            Map.entry("fahrenheit", "°F"),
            Map.entry("per cent", "%"));

    /** Decimal parts of a metre that no solution is written in, by the power of ten. */
    private static final Map<String, Integer> OF_A_METRE =
            Map.of("cm", -2, "centimetre", -2, "centimeter", -2, "mm", -3, "millimetre", -3, "millimeter", -3);

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
        Integer ofMetre = OF_A_METRE.get(singular(unit.toLowerCase(Locale.ROOT)));
        BigDecimal value = new BigDecimal(
                        number.replace(" ", "").replace(',', '.').replaceFirst("\\.$", ""))
                .scaleByPowerOfTen(exponent(matcher) + (ofMetre == null ? 0 : ofMetre));
        return Amount.of(value.doubleValue(), ofMetre == null ? unit(unit) : Unit.METRE);
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

    private static Unit unit(String text) {
        String small = text.toLowerCase(Locale.ROOT);
        String symbol = WORDS.getOrDefault(small, WORDS.getOrDefault(singular(small), text));
        return listed(symbol)
                .or(() -> listed(small))
                .or(() -> Arrays.stream(Unit.values())
                        // a capital M before a unit stands for a million of it
                        .filter(each -> !(text.length() > 1
                                && text.startsWith("M")
                                && each.symbol().startsWith("m")))
                        .filter(each -> each.symbol().equalsIgnoreCase(text))
                        .findFirst())
                .orElseThrow(
                        () -> new IllegalArgumentException(
                                "unit \"" + shown(text)
                                        + "\" is not known here; write it as the question does, such as m, ft, km/h, mph, s, V, Ω, °C"));
    }

    private static Optional<Unit> listed(String text) {
        try {
            return Optional.of(Unit.of(text));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** Drops the s of a plural from the first word: metres per second, degrees C, volts. */
    private static String singular(String text) {
        return text.replaceFirst("^(\\p{L}{2,})s(?= |$)", "$1");
    }

    private static String shown(String text) {
        return text.length() > LONGEST ? text.substring(0, LONGEST) + "…" : text;
    }
}
