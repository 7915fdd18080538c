package io.github.stoplag.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Source;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The same numbers by another way: bisection, marching in time, analytic dividers, brute force. */
final class SecondMethodTest {
    private static final Source INVENTED = Source.assumed("invented");

    private static ShockleyDiode shockley(double saturationA, double n, double seriesOhm) {
        return ShockleyDiode.of(
                Current.amperes(saturationA), n, Resistance.ohms(seriesOhm), Temperature.kelvin(300), INVENTED);
    }

    private static double bisect(DoubleUnaryOperator rising, double lo, double hi) {
        double a = lo;
        double b = hi;
        for (int i = 0; i < 200; i++) {
            double m = (a + b) / 2;
            if (rising.applyAsDouble(m) < 0) {
                a = m;
            } else {
                b = m;
            }
        }
        return (a + b) / 2;
    }

    @ParameterizedTest
    @CsvSource({
        "31.7e-6, 1.373, 0.051",
        "7.02e-9, 1.8, 0.034",
        "90e-12, 1.4, 0.040",
        "1e-14, 1.0, 1e-6",
        "1e-3, 2.0, 10"
    })
    void closedFormOfTheDiodeCurrentAgreesWithBisection(double saturationA, double n, double seriesOhm) {
        ShockleyDiode diode = shockley(saturationA, n, seriesOhm);
        double vt = 1.380649e-23 * 300 / 1.602176634e-19;
        for (double u : new double[] {1e-6, 0.01, 0.1, 0.3, 0.45, 0.6, 0.72}) {
            // the implicit form, written for the current
            double byBisection =
                    bisect(i -> i - saturationA * Math.expm1((u - i * seriesOhm) / (n * vt)), 0, 1e4 + u / seriesOhm);
            assertThat(diode.currentA(u) / byBisection).as("U = %s V", u).isCloseTo(1, within(1e-9));
        }
    }

    @Test
    void diodeWithoutSeriesResistanceIsPlainExponential() {
        ShockleyDiode diode = shockley(1e-9, 1.5, 0);
        double u = diode.voltageV(0.7);
        assertThat(diode.currentA(u)).isCloseTo(0.7, within(1e-12));
        assertThat(diode.voltageV(0)).isZero();
        // a thousandth of a volt against the limit of vanishing series resistance
        assertThat(shockley(1e-9, 1.5, 1e-9).currentA(u)).isCloseTo(0.7, within(1e-6));
    }

    @Test
    void tabledDiodeGoesBothWays() {
        TabledDiode diode = TabledDiode.of(new double[] {3, 9.4}, new double[] {0.525, 0.95}, INVENTED);
        for (double i : new double[] {0, 1.5, 3, 5, 9.4, 20}) {
            assertThat(diode.currentA(diode.voltageV(i))).isCloseTo(i, within(1e-12));
        }
        assertThat(diode.voltageV(3)).isEqualTo(0.525);
        assertThat(diode.evidence(20).caveats())
                .anySatisfy(c -> assertThat(c.text()).isEqualTo("diode current 20 A is outside the table, 3 to 9.4 A"));
        assertThat(diode.evidence(5).caveats()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0.333, 0.333, 5", "0.4, 0.6, 0.5", "10, 50, 30", "2, 0, 7"})
    void peakAndMeanOfADutyAgreeWithMarchingInTime(double onS, double offS, double tauS) {
        Duty duty = new Duty(TimeSpan.seconds(onS), TimeSpan.seconds(offS));
        double period = onS + offS;
        int stepsPerPeriod = 20_000;
        double dt = period / stepsPerPeriod;
        double x = 0;
        double peak = 0;
        double mean = 0;
        int periods = (int) Math.ceil(20 * tauS / period) + 5;
        for (int p = 0; p < periods; p++) {
            peak = 0;
            mean = 0;
            for (int k = 0; k < stepsPerPeriod; k++) {
                double drive = (k + 0.5) * dt < onS ? 1 : 0;
                x += (drive - x) * dt / tauS;
                peak = Math.max(peak, x);
                mean += drive / stepsPerPeriod;
            }
        }
        assertThat(duty.peakShare(TimeSpan.seconds(tauS))).isCloseTo(peak, within(1e-3));
        assertThat(duty.ratio()).isCloseTo(mean, within(1e-4));
    }

    @Test
    void dutyHasItsLimits() {
        Duty flashing = Duty.flashing(FlashRate.perMinute(90), 0.5);
        assertThat(flashing.on().inSeconds()).isCloseTo(1 / 3.0, within(1e-12));
        assertThat(flashing.peakShare(TimeSpan.seconds(1e5))).isCloseTo(0.5, within(1e-5));
        assertThat(flashing.peakShare(TimeSpan.millis(1))).isCloseTo(1, within(1e-12));
        assertThat(Duty.CONTINUOUS.peakShare(TimeSpan.seconds(30))).isEqualTo(1);
    }

    @Test
    void resistiveLoadBehindWiringIsAVoltageDivider() {
        LampFeed.Point point = LampFeed.of(Resistance.ohms(0.5))
                .operate(CurrentDraw.resistive(Resistance.ohms(5.5)), Voltage.volts(12));
        assertThat(point.lampVoltage().inVolts()).isCloseTo(11, within(1e-9));
        assertThat(point.current().inAmperes()).isCloseTo(2, within(1e-9));
        assertThat(point.wiringDrop().inVolts()).isCloseTo(1, within(1e-9));
        assertThat(point.diodeDrop().inVolts()).isZero();
    }

    @Test
    void filamentBehindDiodeAndWiringAgreesWithBisection() {
        ShockleyDiode shockley = shockley(7.02e-9, 1.8, 0.034);
        LampFeed feed = LampFeed.of(Resistance.ohms(0.2)).withDiode(diode(shockley));
        CurrentDraw lamp = CurrentDraw.filament(Voltage.volts(13.5), Power.watts(26.5));
        double amperes = bisect(
                i -> i
                        - lamp.current(Voltage.volts(13.5 - 0.2 * i - shockley.voltageV(i)))
                                .inAmperes(),
                0,
                10);
        LampFeed.Point point = feed.operate(lamp, Voltage.volts(13.5));
        assertThat(point.current().inAmperes()).isCloseTo(amperes, within(1e-9));
        assertThat(point.lampVoltage().inVolts()
                        + point.wiringDrop().inVolts()
                        + point.diodeDrop().inVolts())
                .isCloseTo(13.5, within(1e-9));
        assertThat(feed.seenFromSupply(lamp).current(Voltage.volts(13.5)).inAmperes())
                .isCloseTo(amperes, within(1e-9));
    }

    @Test
    void shortCircuitCurrentIsLimitedByWiringAndDiode() {
        LampFeed bare = LampFeed.of(Resistance.milliohms(100));
        assertThat(bare.shortCircuitCurrent(Voltage.volts(12)).inAmperes()).isCloseTo(120, within(1e-9));
        ShockleyDiode shockley = shockley(7.02e-9, 1.8, 0.034);
        double amperes = bisect(i -> 0.1 * i + shockley.voltageV(i) - 12, 0, 120);
        assertThat(bare.withDiode(diode(shockley))
                        .shortCircuitCurrent(Voltage.volts(12))
                        .inAmperes())
                .isCloseTo(amperes, within(1e-9));
        assertThat(bare.shortCircuitCurrent(Voltage.volts(0)).inAmperes()).isZero();
    }

    private static Diode diode(ForwardCharacteristic characteristic) {
        return Diode.builder(characteristic)
                .forward(Current.amperes(3))
                .reverse(Voltage.volts(100), Current.milliamperes(0.05))
                .thermal(30, Temperature.celsius(150))
                .build();
    }

    @Test
    void scanFindsTheTopOfASmoothAndOfABrokenFunction() {
        assertThat(Extremum.argMax(v -> -(v - 12.345) * (v - 12.345), 9, 16)).isCloseTo(12.345, within(1e-6));
        assertThat(Extremum.argMax(v -> -Math.abs(v - 9.001), 9, 16)).isCloseTo(9.001, within(1e-9));
        assertThat(Extremum.argMin(v -> v, 9, 16)).isEqualTo(9);
        assertThat(Extremum.argMax(v -> v, 9, 16)).isEqualTo(16);
        assertThat(Extremum.argMax(v -> v, 12, 12)).isEqualTo(12);
    }

    @Test
    void preferredValuesAreNearTheGeometricSeries() {
        // IEC 60063: the values are 10^(k/n), rounded; in E24 some differ by up to 5 %
        double value = 0.999;
        for (int k = 24; k >= 1; k--) {
            value = ESeries.E24
                    .atMost(Resistance.ohms(k == 24 ? 9.99 : value - 1e-6))
                    .inOhms();
            assertThat(value / Math.pow(10, (k - 1) / 24.0)).isCloseTo(1, within(0.05));
        }
        assertThat(value).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({
        "E24, 6.0, 5.6, 6.2", "E12, 6.0, 5.6, 5.6", "E6, 6.0, 4.7, 6.8", "E24, 10, 10, 10", "E24, 0.56, 0.56, 0.56",
        "E12, 0.99, 0.82, 1.0", "E6, 1e6, 1e6, 1e6", "E24, 95.3, 91, 91", "E24, 95.5, 91, 100", "E24, 5.6, 5.6, 5.6"
    })
    void preferredValueIsTakenByRule(ESeries series, double ohms, double atMost, double nearest) {
        assertThat(series.atMost(Resistance.ohms(ohms)).inOhms()).isEqualTo(atMost);
        assertThat(series.nearest(Resistance.ohms(ohms)).inOhms()).isEqualTo(nearest);
    }

    @Test
    void wiresAgreeWithOhmsLawByHand() {
        // 4 m of 0.5 mm² there and back at 1.9 A: 0.017241 x 8 / 0.5 = 0.275856 Ω, 0.5241264 V, 0.9958 W
        WireRun.Drop drop = WireRun.of(Wire.ofArea(0.5), Distance.metres(4), WireRun.Return.OWN_WIRE)
                .drop(Current.amperes(1.9), Voltage.volts(13.5), Voltage.volts(0.5));
        assertThat(drop.resistance().inOhms()).isCloseTo(0.275856, within(1e-9));
        assertThat(drop.drop().inVolts()).isCloseTo(0.5241264, within(1e-9));
        assertThat(drop.heat().inWatts()).isCloseTo(0.99584, within(1e-5));
        assertThat(drop.shareOfSupplyRatio()).isCloseTo(0.038824, within(1e-6));
        assertThat(drop.withinAllowable()).isFalse();
    }
}
