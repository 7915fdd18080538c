package io.github.stoplag.units;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.quantity.Speed;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
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

    /** Whoever adds a value type gives it a JSR-385 form. */
    @Test
    void everyValueTypeHasAQuantity() {
        List<String> names = Kind.all().stream().map(Kind::toString).toList();
        assertThat(Stream.of(Quantities.class.getMethods())
                        .filter(method -> method.getName().equals("toQuantity"))
                        .map(method -> method.getParameterTypes()[0]))
                .hasSameSizeAs(names)
                .allMatch(Record.class::isAssignableFrom);
        assertThat(names).hasSameSizeAs(Set.copyOf(names)).hasSize(17);
    }

    /** The unit of the table and the unit that others made turn each number into the same. */
    @Test
    void theTablesUnitsAreThoseOfTheUnitSystems() {
        same(
                io.github.stoplag.quantity.Units.SPEED,
                "Miles per hour",
                javax.measure.quantity.Speed.class,
                USCustomary.MILE_PER_HOUR);
        same(
                io.github.stoplag.quantity.Units.SPEED,
                "kmh",
                javax.measure.quantity.Speed.class,
                Units.KILOMETRE_PER_HOUR);
        same(io.github.stoplag.quantity.Units.SPEED, "knots", javax.measure.quantity.Speed.class, USCustomary.KNOT);
        same(io.github.stoplag.quantity.Units.DISTANCE, "feet", Length.class, USCustomary.FOOT);
        same(io.github.stoplag.quantity.Units.DISTANCE, "yd", Length.class, USCustomary.YARD);
        same(io.github.stoplag.quantity.Units.TIME, "min", Time.class, Units.MINUTE);
        same(io.github.stoplag.quantity.Units.MASS, "lbs", javax.measure.quantity.Mass.class, USCustomary.POUND);
        same(io.github.stoplag.quantity.Units.GRADE, "percent", Dimensionless.class, Units.PERCENT);
        same(io.github.stoplag.quantity.Units.TEMPERATURE, "degF", Temperature.class, USCustomary.FAHRENHEIT);
        same(io.github.stoplag.quantity.Units.TEMPERATURE, "celsius", Temperature.class, Units.CELSIUS);
    }

    private static <Q extends javax.measure.Quantity<Q>> void same(
            io.github.stoplag.quantity.Units table, String spelling, Class<Q> type, javax.measure.Unit<Q> other) {
        javax.measure.Unit<Q> unit = QuantityUnits.unit(table, spelling, type);
        for (double number : new double[] {0, 1, 7.25, 60}) {
            assertThat(unit.getConverterTo(other).convert(number))
                    .as("%s %s", number, spelling)
                    .isCloseTo(number, Offset.offset(1e-12));
        }
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
}
