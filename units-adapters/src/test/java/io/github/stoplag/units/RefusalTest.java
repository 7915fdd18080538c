package io.github.stoplag.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import io.github.stoplag.quantity.Speed;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.LuminousIntensity;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import systems.uom.common.USCustomary;
import tech.units.indriya.unit.Units;

/** What must not be read, and the line that says so. */
class RefusalTest {
    private static final String SPEEDS = "use one of m/s, km/h, mph, ft/s, kn";
    private static final String COMMA = "a comma is not allowed; write a decimal point, and no mark between thousands";
    private static final String NUMBER = "not a number followed by a unit; write it like 1.5 or 1.5e-3";

    @Test
    void unitsThatDoNotFitAreNamed() {
        refuses(UnitTable.SPEED, "60 mhp", "speed \"60 mhp\": unknown unit \"mhp\"; " + SPEEDS);
        refuses(UnitTable.SPEED, "60", "speed \"60\": missing unit; " + SPEEDS);
        refuses(UnitTable.SPEED, "60 ft", "speed \"60 ft\": \"ft\" is a unit of distance; " + SPEEDS);
        refuses(UnitTable.SPEED, "60 MPH", "speed \"60 MPH\": unknown unit \"MPH\"; " + SPEEDS);
        refuses(UnitTable.POWER, "21", "power \"21\": missing unit; use W");
        refuses(
                UnitTable.GRADE,
                "5 m",
                "grade \"5 m\": \"m\" is a unit of distance; use one of %, deg or a plain number");
        refuses(
                UnitTable.FRICTION_COEFFICIENT,
                "70 %",
                "friction coefficient \"70 %\": \"%\" is a unit of grade; use a plain number");
        refuses(
                UnitTable.LUMINOUS_INTENSITY,
                "5 lm",
                "luminous intensity \"5 lm\": \"lm\" is a unit of luminous flux; use cd");
    }

    @Test
    void numbersThatCouldBeMisreadAreRefused() {
        refuses(UnitTable.DISTANCE, "1,5 m", "distance \"1,5 m\": " + COMMA);
        refuses(UnitTable.DISTANCE, "1,500 m", "distance \"1,500 m\": " + COMMA);
        refuses(UnitTable.DISTANCE, "1 500 m", "distance \"1 500 m\": " + NUMBER);
        refuses(UnitTable.DISTANCE, "1.5.2 m", "distance \"1.5.2 m\": " + NUMBER);
        refuses(UnitTable.DISTANCE, "5. m", "distance \"5. m\": " + NUMBER);
        refuses(UnitTable.DISTANCE, "fast", "distance \"fast\": " + NUMBER);
        refuses(UnitTable.DISTANCE, "NaN m", "distance \"NaN m\": " + NUMBER);
        refuses(UnitTable.DISTANCE, "١٥ m", "distance \"١٥ m\": " + NUMBER);
        refuses(UnitTable.DISTANCE, "1\n2\tm", "distance \"1 2 m\": " + NUMBER);
        refuses(UnitTable.DISTANCE, " ", "distance \" \": no value given");
    }

    @Test
    void javaNumberSuffixesAreNotNumbers() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QuantityText.parseTimeSpan("60d"))
                .withMessage("time \"60d\": unknown unit \"d\"; use one of s, ms, min");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QuantityText.parseTimeSpan("0x1p3 s"))
                .withMessage("time \"0x1p3 s\": unknown unit \"x1p3 s\"; use one of s, ms, min");
    }

    @Test
    void feetBesideInchesAreStrict() {
        refuses(
                UnitTable.DISTANCE,
                "8 ft 12 in",
                "distance \"8 ft 12 in\": inches beside feet must be in [0, 12), got 12");
        refuses(
                UnitTable.DISTANCE,
                "8.5 ft 10 in",
                "distance \"8.5 ft 10 in\": feet beside inches must be a whole number, and inches like 10 or 10.5");
        refuses(UnitTable.SPEED, "8 ft 10 in", "speed \"8 ft 10 in\": \"in\" is a unit of distance; " + SPEEDS);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "8 ft 10 in | 2.6924",
                "8ft10in | 2.6924",
                "8' 10\" | 2.6924",
                "8'10 | 2.6924",
                "8′ 10.5″ | 2.7051",
                "-8 ft 10 in | -2.6924",
                "8' | 2.4384",
                "10\" | 0.254",
                "−1.5 m | -1.5",
                "+.5\u00a0m | 0.5",
                "2e3\u202fmm | 2"
            })
    void distancesAsPeopleWriteThem(String text, double metres) {
        assertThat(QuantityText.parseDistance(text).inMetres()).isCloseTo(metres, Offset.offset(1e-15));
    }

    @Test
    void valuesOutOfRangeKeepTheCoresMessage() {
        refuses(UnitTable.SPEED, "600 mph", "speed must be in [0, 150] m/s, got 268.224 m/s");
        refuses(UnitTable.SPEED, "1e999 m/s", "speed must be in [0, 150] m/s, got Infinity m/s");
        refuses(UnitTable.GRADE, "5", "grade must be in [-1, 1], got 5");
        refuses(UnitTable.GRADE, "180 deg", "grade must be in [-45, 45] deg, got 180 deg");
    }

    @Test
    void formatRefusesUnitsAndDecimals() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QuantityText.format(Speed.mps(1), "s", 1))
                .withMessage("speed: \"s\" is a unit of time; " + SPEEDS);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> QuantityText.format(Speed.mps(1), "m/s", 16))
                .withMessage("decimals must be in [0, 15], got 16");
    }

    @Test
    void aQuantityOfAnotherDimensionIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.speed(disguised(60, Units.KILOGRAM)))
                .withMessage("speed must be in a unit that converts to m/s, got 60 kg");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.speed(disguised(new BigDecimal("1e400"), Units.METRE_PER_SECOND)))
                .withMessage("speed must be finite, got Infinity m/s");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.speed(disguised(600, USCustomary.MILE_PER_HOUR)))
                .withMessage("speed must be in [0, 150] m/s, got 268.224 m/s");
    }

    @Test
    void anglesAreNoRatiosAndLumensNoCandelas() {
        Quantity<Dimensionless> degrees = disguised(5, USCustomary.DEGREE_ANGLE);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.grade(degrees))
                .withMessage("grade must be in a unit that converts to one, got 5 deg");
        Quantity<LuminousIntensity> lumens = disguised(5, Units.LUMEN);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.luminousIntensity(lumens))
                .withMessage("luminous intensity must be in a unit that converts to cd, got 5 lm");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.luminance(disguised(5, Units.LUX)))
                .withMessage("luminance must be in a unit that converts to cd/m², got 5 lx");
    }

    @Test
    void aTemperatureDifferenceIsNoTemperature() {
        var difference = tech.units.indriya.quantity.Quantities.getQuantity(20, Units.CELSIUS, Quantity.Scale.RELATIVE);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quantities.temperature(difference))
                .withMessage("temperature must be absolute, got 20 ℃ on the relative scale");
    }

    /** Text must be read the same whatever unit system has been loaded, so it may load none. */
    @Test
    void textNeedsNoUnitLibrary() throws Exception {
        Class<?> alone = new WithoutUnitLibrary().loadClass(QuantityText.class.getName());
        assertThat(alone).isNotSameAs(QuantityText.class);
        assertThat(alone.getMethod("parseSpeed", String.class).invoke(null, "60 mph"))
                .isEqualTo(Speed.mph(60));
    }

    private static <V> void refuses(UnitTable<V> table, String text, String message) {
        assertThatIllegalArgumentException().isThrownBy(() -> table.parse(text)).withMessage(message);
    }

    /** A quantity whose type parameter lies, as raw types and unchecked casts let it. */
    @SuppressWarnings({"unchecked", "TypeParameterUnusedInFormals"})
    private static <Q extends Quantity<Q>> Quantity<Q> disguised(Number value, Unit<?> unit) {
        return tech.units.indriya.quantity.Quantities.getQuantity(value, (Unit<Q>) unit);
    }

    private static final class WithoutUnitLibrary extends ClassLoader {
        WithoutUnitLibrary() {
            super(RefusalTest.class.getClassLoader());
        }

        @Override
        protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
            if (name.startsWith("javax.measure.")
                    || name.startsWith("tech.units.")
                    || name.startsWith("systems.uom.")) {
                throw new ClassNotFoundException(name);
            }
            if (!name.startsWith("io.github.stoplag.units.")) {
                return super.loadClass(name, resolve);
            }
            Class<?> loaded = findLoadedClass(name);
            return loaded == null ? define(name) : loaded;
        }

        private Class<?> define(String name) throws ClassNotFoundException {
            try (InputStream in = getResourceAsStream(name.replace('.', '/') + ".class")) {
                if (in == null) {
                    throw new ClassNotFoundException(name);
                }
                byte[] bytes = in.readAllBytes();
                return defineClass(name, bytes, 0, bytes.length);
            } catch (IOException e) {
                throw new ClassNotFoundException(name, e);
            }
        }
    }
}
