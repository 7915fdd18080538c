package io.github.stoplag.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import io.github.stoplag.source.Table;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.ValueSource;

/** The table of units under locales whose own numbers and letters look different. */
@ParameterizedClass
@ValueSource(strings = {"", "de-DE", "tr-TR", "ar-EG-u-nu-arab", "hi-IN-u-nu-deva"})
class UnitsTest {
    private static final Table SPELLINGS = Table.read(UnitsTest.class, "spellings.csv");
    private final String tag;
    private final Locale before = Locale.getDefault();

    UnitsTest(String tag) {
        this.tag = tag;
    }

    @BeforeEach
    void setLocale() {
        Locale.setDefault(Locale.forLanguageTag(tag));
    }

    @AfterEach
    void restoreLocale() {
        Locale.setDefault(before);
    }

    static Units named(String quantity) {
        return Units.all().stream()
                .filter(units -> units.quantity().equals(quantity))
                .findFirst()
                .orElseThrow(() -> new AssertionError(quantity));
    }

    @Test
    void textHasThePublishedValue() {
        Table table = Table.read(UnitsTest.class, "unit-values.csv");
        assertThat(table.rows()).hasSizeGreaterThan(90);
        for (Map<String, String> row : table.rows()) {
            double expected = table.number(row, "si_value");
            assertThat(named(table.text(row, "quantity")).parseSi(table.text(row, "text")))
                    .as("%s %s", row.get("quantity"), row.get("text"))
                    .isCloseTo(expected, Offset.offset(2 * Math.ulp(expected)));
        }
    }

    @Test
    void everySpellingIsReadAndNoOther() {
        for (Units units : Units.all()) {
            for (NamedUnit unit : units.list()) {
                if (unit.isLinear() && !unit.symbol().isEmpty()) {
                    Map<String, String> row = row(units, unit);
                    assertThat(all(unit.exactSpellings(), unit.looseSpellings(), List.of()))
                            .isEqualTo(all(list(row, "exact"), list(row, "any_case"), List.of(unit.symbol())));
                    assertThat(list(row, "any_case")).containsAll(unit.looseSpellings());
                }
            }
        }
    }

    private static Set<String> all(List<String> some, List<String> more, List<String> most) {
        return Stream.of(some, more, most).flatMap(List::stream).collect(Collectors.toSet());
    }

    private static Map<String, String> row(Units units, NamedUnit unit) {
        return SPELLINGS.rows().stream()
                .filter(row -> SPELLINGS.text(row, "quantity").equals(units.quantity())
                        && SPELLINGS.text(row, "unit").equals(unit.symbol()))
                .findFirst()
                .orElseThrow(() -> new AssertionError(units + " " + unit));
    }

    private static List<String> list(Map<String, String> row, String column) {
        String text = SPELLINGS.text(row, column);
        return text.isEmpty() ? List.of() : List.of(text.split(";"));
    }

    /** An answer has a unit and no kind, so a spelling may mean one size alone. */
    @Test
    void noSpellingMeansTwoThings() {
        Map<String, NamedUnit> seen = new HashMap<>();
        for (Units units : Units.all()) {
            for (NamedUnit unit : units.list()) {
                unit.exactSpellings().forEach(spelling -> once(seen, spelling, unit));
                unit.looseSpellings().forEach(spelling -> {
                    assertThat(spelling).isEqualTo(UnitText.small(spelling));
                    once(seen, spelling, unit);
                    once(seen, spelling.toUpperCase(Locale.ROOT), unit);
                });
            }
        }
    }

    private static void once(Map<String, NamedUnit> seen, String spelling, NamedUnit unit) {
        NamedUnit before = seen.putIfAbsent(spelling, unit);
        if (before != null) {
            assertThat(before.symbol()).as(spelling).isEqualTo(unit.symbol());
            assertThat(before.toSi(7)).as(spelling).isEqualTo(unit.toSi(7));
        }
    }

    @Test
    void eachQuantityHasItsSiUnitFirstOrAmongThem() {
        for (Units units : Units.all()) {
            assertThat(units.list())
                    .as(units.quantity())
                    .anyMatch(unit -> unit.isLinear() && unit.toSi(1.5) == 1.5 && unit.fromSi(1.5) == 1.5);
        }
    }

    @Test
    void valuesAreWrittenWithAPointAndPlainDigits() {
        Speed sixtyMph = Speed.mph(60);
        assertThat(sixtyMph.format("km/h", 1)).isEqualTo("96.6 km/h");
        assertThat(sixtyMph.format("mi/h", 0)).isEqualTo("60 mi/h");
        assertThat(Distance.km(1234.5).format("m", 2)).isEqualTo("1234500.00 m");
        assertThat(TimeSpan.parse("-0.0004 s").format("ms", 0)).isEqualTo("0 ms");
        assertThat(Grade.parse("-3 %").format("", 3)).isEqualTo("-0.030");
        assertThat(Temperature.parse("68 °F").format("°C", 1)).isEqualTo("20.0 °C");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Speed.mps(1).format("s", 1))
                .withMessage("speed: \"s\" is a unit of time; use one of m/s, km/h, mph, ft/s, kn");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Speed.mps(1).format("m/s", 16))
                .withMessage("decimals must be in [0, 15], got 16");
    }

    @Test
    void feetAndInchesCarryAndKeepTheSign() {
        assertThat(Distance.feetAndInches(8, 10).formatFeetAndInches()).isEqualTo("8 ft 10 in");
        assertThat(Distance.inches(95.6).formatFeetAndInches()).isEqualTo("8 ft 0 in");
        assertThat(Distance.feetAndInches(-8, -10).formatFeetAndInches()).isEqualTo("-8 ft 10 in");
        assertThat(Distance.inches(-0.4).formatFeetAndInches()).isEqualTo("0 ft 0 in");
        assertThat(Distance.metres(0).formatFeetAndInches()).isEqualTo("0 ft 0 in");
    }

    @Test
    void distancesAsPeopleWriteThem() {
        Map<String, Double> metres = Map.ofEntries(
                Map.entry("8 ft 10 in", 2.6924),
                Map.entry("8ft10in", 2.6924),
                Map.entry("8' 10\"", 2.6924),
                Map.entry("8'10\"", 2.6924),
                Map.entry("8′ 10.5″", 2.7051),
                Map.entry("8 Feet 10 Inches", 2.6924),
                Map.entry("-8 ft 10 in", -2.6924),
                Map.entry("8'", 2.4384),
                Map.entry("10\"", 0.254),
                Map.entry("−1.5 m", -1.5),
                Map.entry("+.5\u00a0m", 0.5),
                Map.entry("2e3\u202fmm", 2.0));
        metres.forEach((text, value) ->
                assertThat(Distance.parse(text).inMetres()).as(text).isCloseTo(value, Offset.offset(1e-15)));
    }
}
