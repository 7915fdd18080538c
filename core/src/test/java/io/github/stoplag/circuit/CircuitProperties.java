package io.github.stoplag.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.circuit.OutageVerdict.Outcome;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Source;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** What must hold for any parts, whatever their values. */
final class CircuitProperties {
    private static CurrentDraw lamp(int kind, double amperes) {
        return switch (kind) {
            case 0 -> CurrentDraw.ledRegulated(Current.amperes(amperes), Voltage.volts(9.7));
            case 1 -> CurrentDraw.ledWithResistor(Voltage.volts(8.5), Resistance.ohms(5 / (amperes + 0.01)));
            case 2 -> CurrentDraw.open();
            default ->
                CurrentDraw.measured("switching LED lamp", new double[] {8, 9.1, 12, 16}, new double[] {
                    amperes * 0.2, amperes, amperes * 0.7, amperes * 0.5
                });
        };
    }

    @Property(tries = 300, seed = "42")
    void sizedResistorKeepsTheMonitorContentAtEverySupplyWithinItsTolerance(
            @ForAll @IntRange(max = 3) int kind,
            @ForAll @DoubleRange(min = 0, max = 0.6) double ledA,
            @ForAll @DoubleRange(min = 0.05, max = 3) double thresholdA,
            @ForAll @DoubleRange(min = 0, max = 0.5) double monitorTolerance,
            @ForAll @DoubleRange(min = 0, max = 0.2) double resistorTolerance,
            @ForAll @DoubleRange(min = 6, max = 12) double lowV,
            @ForAll @DoubleRange(min = 0, max = 20) double spanV) {
        OutageMonitor monitor = OutageMonitor.of(
                Current.amperes(thresholdA), monitorTolerance, Voltage.volts(lowV), Voltage.volts(lowV + spanV));
        CurrentDraw led = lamp(kind, ledA);
        double ohms = LoadSizing.of(monitor, led, resistorTolerance) instanceof LoadSizing.Needed needed
                ? needed.greatest().inOhms()
                : Double.POSITIVE_INFINITY;
        double healthyA = thresholdA * (1 + monitorTolerance);
        for (int i = 0; i <= 2000; i++) {
            double v = lowV + spanV * i / 2000;
            for (double worst : new double[] {1 - resistorTolerance, 1, 1 + resistorTolerance}) {
                double drawn =
                        led.current(Voltage.volts(Math.min(v, lowV + spanV))).inAmperes() + v / (ohms * worst);
                assertThat(drawn).isGreaterThanOrEqualTo(healthyA * (1 - 1e-12));
            }
        }
    }

    @Property(tries = 200, seed = "42")
    void sizedResistorIsNotSmallerThanNeeded(
            @ForAll @IntRange(max = 3) int kind,
            @ForAll @DoubleRange(min = 0, max = 0.5) double ledA,
            @ForAll @DoubleRange(min = 0.6, max = 3) double thresholdA) {
        OutageMonitor monitor = OutageMonitor.of(Current.amperes(thresholdA), 0.1, Voltage.volts(9), Voltage.volts(16));
        CurrentDraw led = lamp(kind, ledA);
        if (LoadSizing.of(monitor, led, 0.05) instanceof LoadSizing.Needed needed) {
            Resistance larger = Resistance.ohms(needed.greatest().inOhms() * 1.05 * (1 + 1e-4));
            assertThat(monitor.judge(led.plus(CurrentDraw.resistive(larger))).outcome())
                    .isNotEqualTo(Outcome.REPORTS_HEALTHY);
        }
    }

    @Property(tries = 200, seed = "42")
    void dissipationGoesWithTheSquareOfTheSupply(
            @ForAll @DoubleRange(min = 1, max = 50) double ohms,
            @ForAll @DoubleRange(min = 0.5, max = 16) double volts) {
        LoadResistor resistor =
                LoadResistor.of(Resistance.ohms(ohms), 0.05, ResistorRating.aluminiumHoused50WOnStandardSink());
        double once = resistor.power(Voltage.volts(volts)).inWatts();
        assertThat(resistor.power(Voltage.volts(2 * volts)).inWatts() / once).isCloseTo(4, within(1e-9));
        HeatCheck heat = resistor.heat(Voltage.volts(volts), Temperature.celsius(30));
        assertThat(heat.whileOn().inWatts()).isCloseTo(once / 0.95, within(1e-9 * once));
        assertThat(heat.surface().inKelvin())
                .isGreaterThan(Temperature.celsius(30).inKelvin());
    }

    @Property(tries = 200, seed = "42")
    void wireResistanceGrowsWithLengthAndTemperatureAndFallsWithArea(
            @ForAll @DoubleRange(min = 0.2, max = 10) double area,
            @ForAll @DoubleRange(min = 0, max = 50) double metres,
            @ForAll @DoubleRange(min = 0.01, max = 10) double more,
            @ForAll @DoubleRange(min = -40, max = 120) double celsius) {
        double r = ohms(area, metres, celsius);
        assertThat(ohms(area, metres + more, celsius)).isGreaterThan(r);
        assertThat(ohms(area, metres + more, celsius + more)).isGreaterThan(ohms(area, metres + more, celsius));
        assertThat(ohms(area + more, metres + more, celsius)).isLessThan(ohms(area, metres + more, celsius));
        assertThat(ohms(area, 2 * metres, celsius)).isCloseTo(2 * r, within(1e-12));
    }

    private static double ohms(double area, double metres, double celsius) {
        return WireRun.of(Wire.ofArea(area), Distance.metres(metres), WireRun.Return.OWN_WIRE)
                .at(Temperature.celsius(celsius))
                .resistance()
                .inOhms();
    }

    @Property(tries = 200, seed = "42")
    void diodeGoesThereAndBack(
            @ForAll @DoubleRange(min = -12, max = -4) double logSaturation,
            @ForAll @DoubleRange(min = 1, max = 2) double n,
            @ForAll @DoubleRange(min = 0, max = 1) double series,
            @ForAll @DoubleRange(min = -6, max = 1) double logCurrent) {
        ShockleyDiode diode = ShockleyDiode.of(
                Current.amperes(Math.pow(10, logSaturation)),
                n,
                Resistance.ohms(series),
                Temperature.celsius(25),
                Source.assumed("invented"));
        double amperes = Math.pow(10, logCurrent);
        assertThat(diode.currentA(diode.voltageV(amperes)) / amperes).isCloseTo(1, within(1e-9));
        assertThat(diode.voltageV(amperes * 1.01)).isGreaterThan(diode.voltageV(amperes));
    }

    @Property(tries = 200, seed = "42")
    void everyVoltOfTheSupplyIsAccountedFor(
            @ForAll @IntRange(max = 3) int kind,
            @ForAll @DoubleRange(min = 0, max = 2) double ledA,
            @ForAll @DoubleRange(min = 0, max = 5) double wiring,
            @ForAll @DoubleRange(min = 0, max = 30) double supply) {
        LampFeed.Point p = LampFeed.of(Resistance.ohms(wiring)).operate(lamp(kind, ledA), Voltage.volts(supply));
        assertThat(p.lampVoltage().inVolts()
                        + p.wiringDrop().inVolts()
                        + p.diodeDrop().inVolts())
                .isCloseTo(supply, within(1e-8));
    }

    @Property(tries = 100, seed = "42")
    void higherThresholdNeverJudgesMilder(
            @ForAll @DoubleRange(min = 0.05, max = 2) double thresholdA,
            @ForAll @DoubleRange(min = 1, max = 60) double watts) {
        CurrentDraw bulb = CurrentDraw.filament(Voltage.volts(13.5), Power.watts(watts));
        Outcome low = monitor(thresholdA).judge(bulb).outcome();
        Outcome high = monitor(thresholdA * 1.5).judge(bulb).outcome();
        if (low == Outcome.REPORTS_FAILED) {
            assertThat(high).isEqualTo(Outcome.REPORTS_FAILED);
        }
        if (high == Outcome.REPORTS_HEALTHY) {
            assertThat(low).isEqualTo(Outcome.REPORTS_HEALTHY);
        }
    }

    private static OutageMonitor monitor(double thresholdA) {
        return OutageMonitor.of(Current.amperes(thresholdA), 0.2, Voltage.volts(9), Voltage.volts(16));
    }
}
