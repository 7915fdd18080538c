package io.github.stoplag.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each value type of the package, found there, reads and writes each of its units in each spelling. */
class ValueTypeTextTest {
    private static final List<String> LOCALES = List.of("", "de-DE", "tr-TR", "ar-EG-u-nu-arab", "hi-IN-u-nu-deva");
    private final Locale before = Locale.getDefault();

    static List<ValueTypes> types() {
        return ValueTypes.all();
    }

    @AfterEach
    void restoreLocale() {
        Locale.setDefault(before);
    }

    @Test
    void theyAreFound() {
        assertThat(types()).hasSizeGreaterThanOrEqualTo(17).anyMatch(each -> each.type() == Pressure.class);
    }

    @ParameterizedTest
    @MethodSource("types")
    void everyUnitInEverySpellingGoesToTextAndBack(ValueTypes each) {
        for (String tag : LOCALES) {
            Locale.setDefault(Locale.forLanguageTag(tag));
            for (NamedUnit unit : each.units().list()) {
                double number = unit.symbol().isEmpty() ? 0.25 : 12.25;
                double si = each.si(each.parse(number + " " + unit.symbol()));
                assertThat(si).isEqualTo(unit.toSi(number));
                for (String spelling : spellings(unit)) {
                    Object value = each.parse(number + spelling);
                    assertThat(each.si(value)).as("%s in %s", each, spelling).isEqualTo(si);
                    assertThat(each.format(value, spelling, 2)).isEqualTo((number + " " + spelling).strip());
                    assertThat(each.parse(each.format(value, spelling, 2))).isEqualTo(value);
                }
            }
        }
    }

    /** The text that a value prints is one that is read, rounded as it is. */
    @ParameterizedTest
    @MethodSource("types")
    void whatAValuePrintsIsRead(ValueTypes each) {
        for (NamedUnit unit : each.units().list()) {
            for (String number : List.of("0.125", "1", "1e-3")) {
                Object value = each.parse(number + unit.symbol());
                double si = each.si(value);
                assertThat(Math.abs(each.si(each.parse(value.toString())) - si))
                        .isLessThanOrEqualTo(5e-6 * Math.abs(si));
            }
        }
    }

    private static List<String> spellings(NamedUnit unit) {
        List<String> all = new ArrayList<>(unit.exactSpellings());
        for (String spelling : unit.looseSpellings()) {
            all.add(spelling);
            all.add(spelling.toUpperCase(Locale.ROOT));
            all.add(spelling.substring(0, 1).toUpperCase(Locale.ROOT) + spelling.substring(1));
        }
        return all;
    }

    /** Text and factories are two ways to one value: to the last bit. */
    @Test
    void factoriesHaveTheSizesOfTheTable() {
        for (double x : new double[] {0.3, 7.1, 12.7, 33.3}) {
            assertThat(Speed.parse(x + "km/h")).isEqualTo(Speed.kmh(x));
            assertThat(Speed.parse(x + "mph")).isEqualTo(Speed.mph(x));
            assertThat(Speed.parse(x + "ft/s")).isEqualTo(Speed.ftps(x));
            assertThat(Distance.parse(x + "km")).isEqualTo(Distance.km(x));
            assertThat(Distance.parse(x + "ft")).isEqualTo(Distance.feet(x));
            assertThat(Distance.parse(x + "in")).isEqualTo(Distance.inches(x));
            assertThat(Distance.parse(x + "mi")).isEqualTo(Distance.miles(x));
            assertThat(TimeSpan.parse(x + "ms")).isEqualTo(TimeSpan.millis(x));
            assertThat(Deceleration.parse(x / 5 + "ft/s²")).isEqualTo(Deceleration.ftps2(x / 5));
            assertThat(Deceleration.parse(x / 5 + "g")).isEqualTo(Deceleration.standardGravities(x / 5));
            assertThat(Grade.parse(x + "%")).isEqualTo(Grade.percent(x));
            assertThat(Grade.parse(x + "deg")).isEqualTo(Grade.degrees(x));
            assertThat(Mass.parse(x + "t")).isEqualTo(Mass.tonnes(x));
            assertThat(Mass.parse(x + "lb")).isEqualTo(Mass.pounds(x));
            assertThat(Voltage.parse(x + "mV")).isEqualTo(Voltage.millivolts(x));
            assertThat(Current.parse(x + "mA")).isEqualTo(Current.milliamperes(x));
            assertThat(Resistance.parse(x + "mohm")).isEqualTo(Resistance.milliohms(x));
            assertThat(Temperature.parse(x + "°C")).isEqualTo(Temperature.celsius(x));
            assertThat(Temperature.parse(x + "°F")).isEqualTo(Temperature.fahrenheit(x));
            assertThat(Pressure.parse(x + "kPa")).isEqualTo(Pressure.kPa(x));
            assertThat(Pressure.parse(x + "psi")).isEqualTo(Pressure.psi(x));
            assertThat(Pressure.parse(x + "bar")).isEqualTo(Pressure.bar(x));
        }
    }
}
