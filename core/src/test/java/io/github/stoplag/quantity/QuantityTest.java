package io.github.stoplag.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** All value types: ranges and their messages, NaN, infinities, minus zero, comparison, text, conversions. */
class QuantityTest {
    /**
     * What one value type promises.
     *
     * @param range the range as the message prints it, brackets and unit included
     * @param tooLow a value below the range or on its open end
     * @param lowest the lowest value allowed
     */
    record Type<T extends Comparable<T>>(
            String name,
            DoubleFunction<T> of,
            ToDoubleFunction<T> in,
            Closeness<T> closeness,
            String range,
            String unit,
            double tooLow,
            double lowest,
            double highest) {
        @Override
        public String toString() {
            return name;
        }
    }

    /** Says whether two values are close. */
    interface Closeness<T> {
        boolean test(T one, T other, double tolerance);
    }

    static Stream<Type<?>> types() {
        return Stream.of(
                new Type<>(
                        "speed",
                        Speed::mps,
                        Speed::inMps,
                        (a, b, t) -> a.isCloseTo(b, Speed.mps(t)),
                        "[0, 150] m/s",
                        " m/s",
                        -0.5,
                        0,
                        150),
                new Type<>(
                        "distance",
                        Distance::metres,
                        Distance::inMetres,
                        (a, b, t) -> a.isCloseTo(b, Distance.metres(t)),
                        "[-1e7, 1e7] m",
                        " m",
                        -2e7,
                        -1e7,
                        1e7),
                new Type<>(
                        "time",
                        TimeSpan::seconds,
                        TimeSpan::inSeconds,
                        (a, b, t) -> a.isCloseTo(b, TimeSpan.seconds(t)),
                        "[-1000000, 1000000] s",
                        " s",
                        -2e6,
                        -1e6,
                        1e6),
                new Type<>(
                        "deceleration",
                        Deceleration::mps2,
                        Deceleration::inMps2,
                        (a, b, t) -> a.isCloseTo(b, Deceleration.mps2(t)),
                        "[0, 200] m/s²",
                        " m/s²",
                        -0.5,
                        0,
                        200),
                new Type<>(
                        "friction coefficient",
                        FrictionCoefficient::of,
                        FrictionCoefficient::inRatio,
                        (a, b, t) -> a.isCloseTo(b, FrictionCoefficient.of(t)),
                        "[0, 2]",
                        "",
                        -0.5,
                        0,
                        2),
                new Type<>(
                        "grade",
                        Grade::ratio,
                        Grade::inRatio,
                        (a, b, t) -> a.isCloseTo(b, Grade.ratio(t)),
                        "[-1, 1]",
                        "",
                        -1.5,
                        -1,
                        1),
                new Type<>(
                        "mass",
                        Mass::kg,
                        Mass::inKg,
                        (a, b, t) -> a.isCloseTo(b, Mass.kg(t)),
                        "(0, 1000000] kg",
                        " kg",
                        0,
                        Double.MIN_VALUE,
                        1e6),
                new Type<>(
                        "voltage",
                        Voltage::volts,
                        Voltage::inVolts,
                        (a, b, t) -> a.isCloseTo(b, Voltage.volts(t)),
                        "[-1000, 1000] V",
                        " V",
                        -1001,
                        -1000,
                        1000),
                new Type<>(
                        "current",
                        Current::amperes,
                        Current::inAmperes,
                        (a, b, t) -> a.isCloseTo(b, Current.amperes(t)),
                        "[-100000, 100000] A",
                        " A",
                        -2e5,
                        -1e5,
                        1e5),
                new Type<>(
                        "resistance",
                        Resistance::ohms,
                        Resistance::inOhms,
                        (a, b, t) -> a.isCloseTo(b, Resistance.ohms(t)),
                        "[0, 1e9] Ω",
                        " Ω",
                        -0.5,
                        0,
                        1e9),
                new Type<>(
                        "power",
                        Power::watts,
                        Power::inWatts,
                        (a, b, t) -> a.isCloseTo(b, Power.watts(t)),
                        "[0, 1000000] W",
                        " W",
                        -0.5,
                        0,
                        1e6),
                new Type<>(
                        "temperature",
                        Temperature::kelvin,
                        Temperature::inKelvin,
                        (a, b, t) -> a.isCloseTo(b, t),
                        "(0, 20000] K",
                        " K",
                        0,
                        Double.MIN_VALUE,
                        20000),
                new Type<>(
                        "luminous intensity",
                        LuminousIntensity::candela,
                        LuminousIntensity::inCandela,
                        (a, b, t) -> a.isCloseTo(b, LuminousIntensity.candela(t)),
                        "[0, 1e7] cd",
                        " cd",
                        -0.5,
                        0,
                        1e7),
                new Type<>(
                        "luminous flux",
                        LuminousFlux::lumens,
                        LuminousFlux::inLumens,
                        (a, b, t) -> a.isCloseTo(b, LuminousFlux.lumens(t)),
                        "[0, 1e8] lm",
                        " lm",
                        -0.5,
                        0,
                        1e8),
                new Type<>(
                        "illuminance",
                        Illuminance::lux,
                        Illuminance::inLux,
                        (a, b, t) -> a.isCloseTo(b, Illuminance.lux(t)),
                        "[0, 1000000] lx",
                        " lx",
                        -0.5,
                        0,
                        1e6),
                new Type<>(
                        "luminance",
                        Luminance::cdPerM2,
                        Luminance::inCdPerM2,
                        (a, b, t) -> a.isCloseTo(b, Luminance.cdPerM2(t)),
                        "[0, 1e10] cd/m²",
                        " cd/m²",
                        -0.5,
                        0,
                        1e10));
    }

    @ParameterizedTest
    @MethodSource("types")
    <T extends Comparable<T>> void refusesWhatIsOutOfRangeByNameRangeAndValue(Type<T> type) {
        for (double bad : new double[] {
            type.tooLow, type.highest * 1.25, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY
        }) {
            assertThatThrownBy(() -> type.of.apply(bad))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage(type.name + " must be in " + type.range + ", got " + Numbers.text(bad) + type.unit);
        }
    }

    @ParameterizedTest
    @MethodSource("types")
    <T extends Comparable<T>> void takesBothEndsOfItsRange(Type<T> type) {
        assertThat(type.in.applyAsDouble(type.of.apply(type.lowest))).isEqualTo(type.lowest);
        assertThat(type.in.applyAsDouble(type.of.apply(type.highest))).isEqualTo(type.highest);
    }

    @ParameterizedTest
    @MethodSource("types")
    <T extends Comparable<T>> void minusZeroBecomesZero(Type<T> type) {
        if (type.lowest <= 0) {
            T zero = type.of.apply(-0.0);
            assertThat(Double.doubleToRawLongBits(type.in.applyAsDouble(zero))).isZero();
            assertThat(zero).isEqualTo(type.of.apply(0.0)).hasToString(expectedText("0", type));
        }
    }

    @ParameterizedTest
    @MethodSource("types")
    <T extends Comparable<T>> void comparesExactlyAndWithinATolerance(Type<T> type) {
        T low = type.of.apply(0.25);
        T high = type.of.apply(0.5);
        assertThat(low).isLessThan(high).isNotEqualTo(high).isEqualTo(type.of.apply(0.25));
        assertThat(low.hashCode()).isEqualTo(type.of.apply(0.25).hashCode());
        assertThat(type.closeness.test(low, high, 0.25)).isTrue();
        assertThat(type.closeness.test(high, low, 0.25)).isTrue();
        assertThat(type.closeness.test(low, high, 0.125)).isFalse();
    }

    @ParameterizedTest
    @MethodSource("types")
    <T extends Comparable<T>> void printsNumberAndUnit(Type<T> type) {
        String number = type.name.equals("grade") ? "12.3457" : "0.123457";
        assertThat(type.of.apply(0.123456789)).hasToString(expectedText(number, type));
    }

    private static String expectedText(String number, Type<?> type) {
        return type.name.equals("grade") ? number + " %" : number + type.unit;
    }

    @Test
    void conversionsGoThereAndBack() {
        assertThat(Speed.kmh(90).inMps()).isEqualTo(25);
        assertThat(Speed.mps(25).inKmh()).isEqualTo(90);
        assertThat(Speed.mph(55).inKmh()).isCloseTo(88.51392, within(1e-12));
        assertThat(Speed.mph(55).inMph()).isCloseTo(55, within(1e-13));
        assertThat(Speed.ftps(88).inMph()).isCloseTo(60, within(1e-13));
        assertThat(Speed.mph(15).inFtps()).isCloseTo(22, within(1e-13));
        assertThat(Distance.feetAndInches(8, 10).inInches()).isCloseTo(106, within(1e-12));
        assertThat(Distance.km(1.609344).inMiles()).isCloseTo(1, within(1e-15));
        assertThat(Distance.miles(1).inFeet()).isCloseTo(5280, within(1e-11));
        assertThat(Distance.metres(2500).inKm()).isEqualTo(2.5);
        assertThat(Deceleration.mps2(9.80665).inStandardGravities()).isEqualTo(1);
        assertThat(Deceleration.ftps2(11.2).inFtps2()).isCloseTo(11.2, within(1e-14));
        assertThat(Grade.percent(5).inRatio()).isEqualTo(0.05);
        assertThat(Grade.degrees(45).inPercent()).isCloseTo(100, within(1e-12));
        assertThat(Grade.ratio(1).inDegrees()).isCloseTo(45, within(1e-13));
        assertThat(Mass.tonnes(1.5).inKg()).isEqualTo(1500);
        assertThat(Mass.kg(1500).inTonnes()).isEqualTo(1.5);
        assertThat(Mass.kg(0.45359237).inPounds()).isEqualTo(1);
        assertThat(TimeSpan.millis(166).inSeconds()).isCloseTo(0.166, within(1e-16));
        assertThat(TimeSpan.seconds(0.166).inMillis()).isCloseTo(166, within(1e-12));
        assertThat(Voltage.millivolts(13_500).inVolts()).isEqualTo(13.5);
        assertThat(Voltage.volts(13.5).inMillivolts()).isEqualTo(13_500);
        assertThat(Resistance.milliohms(50).inOhms()).isEqualTo(0.05);
        assertThat(Resistance.ohms(0.05).inMilliohms()).isEqualTo(50);
        assertThat(Current.milliamperes(150).inAmperes()).isEqualTo(0.15);
        assertThat(Current.amperes(0.15).inMilliamperes()).isEqualTo(150);
        assertThat(Temperature.celsius(25).inKelvin()).isEqualTo(298.15);
        assertThat(Temperature.fahrenheit(212).inCelsius()).isCloseTo(100, within(1e-12));
        assertThat(Temperature.celsius(-40).inFahrenheit()).isCloseTo(-40, within(1e-12));
    }

    @Test
    void timeTakesAndGivesDurations() {
        assertThat(TimeSpan.of(Duration.ofMillis(-250)).inSeconds()).isEqualTo(-0.25);
        assertThat(TimeSpan.seconds(1.5).toDuration()).isEqualTo(Duration.ofMillis(1500));
    }

    @Test
    void feetAndInchesOfOppositeSignAreRefused() {
        assertThatThrownBy(() -> Distance.feetAndInches(8, -10))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("feet and inches must have the same sign, got 8 ft -10 in");
        assertThat(Distance.feetAndInches(-8, -10).inInches()).isCloseTo(-106, within(1e-12));
    }

    @Test
    void numbersPrintTheSameEverywhere() {
        assertThat(Numbers.text(1234567.89)).isEqualTo("1234570");
        assertThat(Numbers.text(1e-9)).isEqualTo("1e-9");
        assertThat(Numbers.text(-0.25)).isEqualTo("-0.25");
        assertThat(Numbers.text(13.888888888, 3)).isEqualTo("13.9");
        assertThat(Numbers.fixed(-0.04, 1)).isEqualTo("0.0");
        assertThat(Numbers.fixed(2.25, 1)).isEqualTo("2.3");
        assertThat(Numbers.text(Double.NaN)).isEqualTo("NaN");
    }
}
