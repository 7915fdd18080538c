package io.github.stoplag.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.source.Table;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/**
 * Texts right, nearly right and wrong against a second reader: regular expressions, a table of spellings kept by hand
 * and decimal arithmetic. Both must refuse, or both read the same value.
 *
 * <p>{@code -Dstoplag.fuzz.texts=5000} reads five thousand texts in each of the thousand tries instead of twenty.
 */
class UnitTextProperties {
    private static final int TEXTS = Integer.getInteger("stoplag.fuzz.texts", 20);
    private static final List<String> LOCALES = List.of("", "de-DE", "tr-TR", "ar-EG-u-nu-arab", "hi-IN-u-nu-deva");
    private static final List<String> JUNK = List.of(
            "", " ", " ", "  ", "\u00a0", "\u202f", ",", ".", "-", "+", "−", "e", "E3", "e-2", "0", "7", "10", "'",
            "\"", "°", "·", "/", "²", "\u212a", "ı", "İ", "١", "१", "µ", "Ω", "s", "M", "k", "per", "a", "of", "x10",
            "_", "\u200b", "½", "#");
    private static final List<String> NUMBERS = List.of(
            "0",
            "1",
            "60",
            "8",
            "12",
            "11.99",
            "0.5",
            ".5",
            "5.",
            "1e3",
            "1E-3",
            "-3",
            "+4",
            "−2.5",
            "1,5",
            "1,500",
            "1.500,0",
            "1 500",
            "007",
            "1.5.2",
            "1e",
            "1e+",
            "0x10",
            "١٥",
            "99999999999999999999",
            "1e400",
            "1e-400",
            "");
    private static final Map<String, List<Sized>> SPELLINGS = spellings();
    private static final Pattern ONE =
            Pattern.compile("([+-]?(?:[0-9]+(?:\\.[0-9]+)?|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?) ?([^0-9.+-].*|)");
    private static final Pattern TWO = Pattern.compile(
            "([+-]?)([0-9]+) ?(?:(?i:ft|foot|feet)|['′]) ?([0-9]+(?:\\.[0-9]+)?|\\.[0-9]+) ?(?:(?i:in|inch|inches)|[\"″])");

    private record Sized(String spelling, boolean anyCase, BigDecimal top, BigDecimal bottom, BigDecimal zero) {
        boolean fits(String text) {
            return anyCase
                    ? text.chars().allMatch(c -> c < 128 || spelling.indexOf(c) >= 0)
                            && text.toLowerCase(Locale.ROOT).equals(spelling)
                    : text.equals(spelling);
        }

        double si(String number) {
            // a number with an exponent of hundreds of digits overflows or vanishes in either reader
            double plain = Double.parseDouble(number);
            if (!(Math.abs(plain) < 1e100) || Math.abs(plain) < 1e-100) {
                return (plain + zero.doubleValue()) * top.doubleValue() / bottom.doubleValue();
            }
            return new BigDecimal(number)
                    .add(zero)
                    .multiply(top)
                    .divide(bottom, MathContext.DECIMAL128)
                    .doubleValue();
        }
    }

    private static Map<String, List<Sized>> spellings() {
        Table table = Table.read(UnitTextProperties.class, "spellings.csv");
        Map<String, List<Sized>> all = new HashMap<>();
        for (Map<String, String> row : table.rows()) {
            List<Sized> of = all.computeIfAbsent(table.text(row, "quantity"), key -> new ArrayList<>());
            BigDecimal top = new BigDecimal(table.text(row, "top"));
            BigDecimal bottom = new BigDecimal(table.text(row, "bottom"));
            BigDecimal zero = new BigDecimal(table.text(row, "zero"));
            for (String column : List.of("exact", "any_case")) {
                for (String spelling : table.text(row, column).split(";", -1)) {
                    if (!spelling.isEmpty()) {
                        of.add(new Sized(spelling, column.equals("any_case"), top, bottom, zero));
                    }
                }
            }
        }
        for (String plain : List.of("number", "friction coefficient", "grade", "share")) {
            all.computeIfAbsent(plain, key -> new ArrayList<>())
                    .add(new Sized("", false, BigDecimal.ONE, BigDecimal.ONE, BigDecimal.ZERO));
        }
        return all;
    }

    /** What the second reader makes of a text; nothing if it refuses. */
    private static Optional<Double> second(String quantity, String text) {
        String plain = text.replaceAll("[\\s\\p{Z}]+", " ").strip().replace('−', '-');
        Matcher two = TWO.matcher(plain);
        if (two.matches()) {
            BigDecimal inches = new BigDecimal(two.group(3));
            if (!quantity.equals("distance") || inches.compareTo(BigDecimal.valueOf(12)) >= 0) {
                return Optional.empty();
            }
            BigDecimal metres = new BigDecimal(two.group(2))
                    .multiply(new BigDecimal("0.3048"))
                    .add(inches.multiply(new BigDecimal("0.0254")));
            return Optional.of((two.group(1).equals("-") ? metres.negate() : metres).doubleValue());
        }
        Matcher one = ONE.matcher(plain);
        return plain.contains(",") || !one.matches()
                ? Optional.empty()
                : SPELLINGS.getOrDefault(quantity, List.of()).stream()
                        .filter(sized -> sized.fits(one.group(2)))
                        .findFirst()
                        .map(sized -> sized.si(one.group(1)));
    }

    @Property(tries = 1000, seed = "42")
    void noTextIsMisread(@ForAll long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Locale before = Locale.getDefault();
        Locale.setDefault(Locale.forLanguageTag(LOCALES.get(random.nextInt(LOCALES.size()))));
        try {
            for (int i = 0; i < TEXTS; i++) {
                Units units = Units.all().get(random.nextInt(Units.all().size()));
                bothReadTheSame(units, text(units, random));
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    private static void bothReadTheSame(Units units, String text) {
        Optional<Double> expected = second(units.quantity(), text);
        double got;
        try {
            Units.Reading reading = units.read(text);
            if (!reading.unit().isLinear()) {
                assertThat(text.replaceAll("[^a-zA-Z]", "").toLowerCase(Locale.ROOT))
                        .matches("e?(deg|degrees?)");
                return;
            }
            got = reading.si();
        } catch (IllegalArgumentException e) {
            assertThat(expected).as("refused: %s %s", units, text).isEmpty();
            assertThat(e.getMessage()).startsWith(units.quantity() + " \"").containsPattern("\": .{6}");
            return;
        }
        assertThat(expected).as("read: %s \"%s\" as %s", units, text, got).isPresent();
        double wanted = expected.orElseThrow();
        // a thermometer far below zero cancels digits
        double size = Math.abs(wanted) + (units == Units.TEMPERATURE ? 600.0 : 0.0);
        assertThat(got == wanted || Math.abs(got - wanted) <= 3 * Math.ulp(size))
                .as("%s \"%s\": %s and %s", units, text, got, wanted)
                .isTrue();
    }

    private static String text(Units units, SplittableRandom random) {
        StringBuilder text = new StringBuilder(number(random));
        text.append(random.nextInt(4) == 0 ? JUNK.get(random.nextInt(JUNK.size())) : random.nextBoolean() ? " " : "");
        text.append(unit(units, random));
        if (random.nextInt(4) == 0) {
            text.append(random.nextBoolean() ? " " : "")
                    .append(number(random))
                    .append(' ')
                    .append(unit(units, random));
        }
        for (int edits = random.nextInt(3); edits > 0 && random.nextBoolean(); edits--) {
            int at = random.nextInt(text.length() + 1);
            text.insert(at, JUNK.get(random.nextInt(JUNK.size())));
            if (random.nextBoolean()) {
                text.deleteCharAt(random.nextInt(text.length() + 1 - 1 + (text.length() == 0 ? 1 : 0)));
            }
        }
        return text.toString();
    }

    private static String number(SplittableRandom random) {
        return switch (random.nextInt(3)) {
            case 0 -> NUMBERS.get(random.nextInt(NUMBERS.size()));
            case 1 -> String.valueOf(random.nextInt(2000) / 10.0);
            default -> String.valueOf(Double.longBitsToDouble(random.nextLong()));
        };
    }

    private static String unit(Units units, SplittableRandom random) {
        Units from = random.nextInt(8) == 0
                ? Units.all().get(random.nextInt(Units.all().size()))
                : units;
        NamedUnit unit = from.list().get(random.nextInt(from.list().size()));
        List<String> all = new ArrayList<>(unit.exactSpellings());
        all.addAll(unit.looseSpellings());
        String spelling = all.get(random.nextInt(all.size()));
        return switch (random.nextInt(6)) {
            case 0 -> spelling.toUpperCase(Locale.ROOT);
            case 1 -> spelling.toLowerCase(Locale.ROOT);
            case 2 -> flipped(spelling, random);
            default -> spelling;
        };
    }

    private static String flipped(String spelling, SplittableRandom random) {
        StringBuilder flipped = new StringBuilder(spelling);
        for (int i = 0; i < flipped.length(); i++) {
            char c = flipped.charAt(i);
            if (random.nextBoolean()) {
                flipped.setCharAt(i, Character.isUpperCase(c) ? Character.toLowerCase(c) : Character.toUpperCase(c));
            }
        }
        return flipped.toString();
    }
}
