package io.github.stoplag.units;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Table;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.ValueSource;
import systems.uom.common.USCustomary;
import tech.units.indriya.unit.Units;

/** Published unit values, under locales whose own numbers look different. */
@ParameterizedClass
@ValueSource(strings = {"en-US", "de-DE", "ar-EG-u-nu-arab"})
class UnitValuesTest {
    private final String tag;
    private final Locale before = Locale.getDefault();

    UnitValuesTest(String tag) {
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

    @Test
    void textHasThePublishedValue() {
        Map<String, Kind<?, ?>> kinds =
                Kind.all().stream().collect(Collectors.toMap(Kind::toString, Function.identity()));
        Table table = Table.read(UnitValuesTest.class, "unit-values.csv");
        assertThat(table.rows()).hasSizeGreaterThan(50);
        for (Map<String, String> row : table.rows()) {
            double expected = table.number(row, "si_value");
            double parsed = requireNonNull(kinds.get(row.get("kind"))).parsed(requireNonNull(row.get("text")));
            assertThat(parsed)
                    .as("%s %s", row.get("kind"), row.get("text"))
                    .isCloseTo(expected, Offset.offset(2 * Math.ulp(expected)));
        }
    }

    @Test
    void valuesAreWrittenWithAPointAndPlainDigits() {
        Speed sixtyMph = Speed.mph(60);
        assertThat(QuantityText.format(sixtyMph, "km/h", 1)).isEqualTo("96.6 km/h");
        assertThat(QuantityText.format(sixtyMph, "mi/h", 0)).isEqualTo("60 mi/h");
        assertThat(QuantityText.format(Distance.km(1234.5), "m", 2)).isEqualTo("1234500.00 m");
        assertThat(QuantityText.format(QuantityText.parseTimeSpan("-0.0004 s"), "ms", 0))
                .isEqualTo("0 ms");
        assertThat(UnitTable.GRADE.format(QuantityText.parseGrade("-3 %"), "", 3))
                .isEqualTo("-0.030");
        assertThat(UnitTable.TEMPERATURE.format(QuantityText.parseTemperature("68 °F"), "°C", 1))
                .isEqualTo("20.0 °C");
    }

    @Test
    void feetAndInchesCarryAndKeepTheSign() {
        assertThat(QuantityText.feetAndInches(Distance.feetAndInches(8, 10))).isEqualTo("8 ft 10 in");
        assertThat(QuantityText.feetAndInches(Distance.inches(95.6))).isEqualTo("8 ft 0 in");
        assertThat(QuantityText.feetAndInches(Distance.feetAndInches(-8, -10))).isEqualTo("-8 ft 10 in");
        assertThat(QuantityText.feetAndInches(Distance.inches(-0.4))).isEqualTo("0 ft 0 in");
        assertThat(QuantityText.feetAndInches(Distance.metres(0))).isEqualTo("0 ft 0 in");
    }

    @Test
    void quantitiesInCommonUnitsAreExact() {
        assertThat(Quantities.speed(quantity(60, USCustomary.MILE_PER_HOUR)).inMps())
                .isEqualTo(26.8224);
        assertThat(Quantities.speed(quantity(60, USCustomary.MILE_PER_HOUR))).isEqualTo(Speed.mph(60));
        assertThat(Quantities.speed(quantity(90, Units.KILOMETRE_PER_HOUR)).inMps())
                .isEqualTo(25);
        assertThat(Quantities.speed(quantity(3600 / 16.0, USCustomary.KNOT)).inMps())
                .isEqualTo(1852 / 16.0);
        assertThat(Quantities.distance(quantity(1, USCustomary.FOOT)).inMetres())
                .isEqualTo(0.3048);
        assertThat(Quantities.distance(quantity(1, USCustomary.MILE)).inMetres())
                .isEqualTo(1609.344);
        assertThat(Quantities.mass(quantity(1, USCustomary.POUND)).inKg()).isEqualTo(0.45359237);
        assertThat(Quantities.grade(quantity(7, Units.PERCENT)).inRatio()).isEqualTo(0.07);
        assertThat(Quantities.temperature(quantity(20, Units.CELSIUS)).inKelvin())
                .isEqualTo(293.15);
        assertThat(Quantities.temperature(quantity(212, USCustomary.FAHRENHEIT)).inKelvin())
                .isEqualTo(373.15);
        assertThat(Quantities.toQuantity(Speed.mps(25))
                        .to(Units.KILOMETRE_PER_HOUR)
                        .getValue()
                        .doubleValue())
                .isEqualTo(90);
    }

    private static <Q extends javax.measure.Quantity<Q>> javax.measure.Quantity<Q> quantity(
            Number value, javax.measure.Unit<Q> unit) {
        return tech.units.indriya.quantity.Quantities.getQuantity(value, unit);
    }

    @Test
    void shortFormsReadTheirOwnKind() {
        assertThat(Stream.of(
                                QuantityText.parseSpeed("10 m/s"),
                                QuantityText.parseDistance("10 m"),
                                QuantityText.parseTimeSpan("10 s"),
                                QuantityText.parseDeceleration("10 m/s²"),
                                QuantityText.parseFrictionCoefficient("0.5"),
                                QuantityText.parseGrade("10 %"),
                                QuantityText.parseMass("10 kg"),
                                QuantityText.parseVoltage("10 V"),
                                QuantityText.parseCurrent("10 A"),
                                QuantityText.parseResistance("10 Ω"),
                                QuantityText.parsePower("10 W"),
                                QuantityText.parseTemperature("10 K"),
                                QuantityText.parseLuminousIntensity("10 cd"),
                                QuantityText.parseLuminousFlux("10 lm"),
                                QuantityText.parseIlluminance("10 lx"),
                                QuantityText.parseLuminance("10 cd/m²"))
                        .map(Object::toString))
                .containsExactly(
                        "10 m/s",
                        "10 m",
                        "10 s",
                        "10 m/s²",
                        "0.5",
                        "10 %",
                        "10 kg",
                        "10 V",
                        "10 A",
                        "10 Ω",
                        "10 W",
                        "10 K",
                        "10 cd",
                        "10 lm",
                        "10 lx",
                        "10 cd/m²");
    }
}
