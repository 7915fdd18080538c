package io.github.stoplag.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.stoplag.circuit.OutageVerdict.Outcome;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Source;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Impossible input is refused with the quantity, the range and the value; open and short circuits have their answers.
 */
final class BadInputTest {
    private static final Source INVENTED = Source.assumed("invented");
    private static final double[] NONE = {};

    private static Voltage v(double volts) {
        return Voltage.volts(volts);
    }

    private static Current a(double amperes) {
        return Current.amperes(amperes);
    }

    private static Resistance ohms(double value) {
        return Resistance.ohms(value);
    }

    private static Diode.Builder diode() {
        return Diode.builder(TabledDiode.of(new double[] {1}, new double[] {0.9}, INVENTED))
                .forward(a(1))
                .reverse(v(50), a(0))
                .thermal(50, Temperature.celsius(150));
    }

    private static Arguments refused(String message, ThrowingCallable call) {
        return Arguments.of(message, call);
    }

    static Stream<Arguments> badCalls() {
        Temperature at25 = Temperature.celsius(25);
        ResistorRating rating = ResistorRating.aluminiumHoused50WOnStandardSink();
        Wire wire = Wire.ofArea(1);
        WireRun run = WireRun.of(wire, Distance.metres(1), WireRun.Return.BODY);
        return Stream.of(
                refused(
                        "monitor threshold must be in (0, 1000] A, got 0 A",
                        () -> OutageMonitor.of(a(0), 0.1, v(9), v(16))),
                refused(
                        "monitor tolerance must be in [0, 1), got NaN",
                        () -> OutageMonitor.of(a(1), Double.NaN, v(9), v(16))),
                refused("monitor tolerance must be in [0, 1), got 1.0", () -> OutageMonitor.of(a(1), 1, v(9), v(16))),
                refused("lowest supply must be in (0, 9] V, got 16 V", () -> OutageMonitor.of(a(1), 0.1, v(16), v(9))),
                refused("lowest supply must be in (0, 16] V, got 0 V", () -> OutageMonitor.of(a(1), 0.1, v(0), v(16))),
                refused(
                        "failure current must be in [0, 0.03] A, got 0.04 A",
                        () -> OutageMonitor.between(a(0.04), a(0.03), v(9), v(16))),
                refused(
                        "a load of 0 Ω is a short circuit: only the wiring limits its current, see"
                                + " LampFeed.shortCircuitCurrent",
                        () -> CurrentDraw.resistive(ohms(0))),
                refused(
                        "voltage across the load must be in [0, 1000] V, got -12 V",
                        () -> CurrentDraw.open().current(v(-12))),
                refused(
                        "rated power must be in [0.1, 1000] W, got 0 W",
                        () -> CurrentDraw.filament(v(12), Power.watts(0))),
                refused(
                        "a measured load needs as many currents as voltages and at least one, got 2 voltages and 1 currents",
                        () -> CurrentDraw.measured("x", new double[] {1, 2}, new double[] {1})),
                refused(
                        "voltage 1 must be in (12, 1000] V, got 12 V",
                        () -> CurrentDraw.measured("x", new double[] {12, 12}, new double[] {1, 1})),
                refused(
                        "current 0 must be in [0, 100000] A, got NaN A",
                        () -> CurrentDraw.measured("x", new double[] {12}, new double[] {Double.NaN})),
                refused(
                        "resistor tolerance must be in [0, 0.5], got -0.1",
                        () -> LoadResistor.of(ohms(6), -0.1, rating)),
                refused(
                        "load resistance must be in (0, 1000000] Ω, got 0 Ω",
                        () -> LoadResistor.of(ohms(0), 0.1, rating)),
                refused(
                        "temperature limit must be in (25, 1500] °C, got 20 °C",
                        () -> new ResistorRating(Power.watts(5), at25, Temperature.celsius(20), 0, 1)),
                refused(
                        "thermal resistance surface to ambient must be in (0, 1000] K/W, got 0 K/W",
                        () -> new ResistorRating(Power.watts(5), at25, Temperature.celsius(200), 0, 0)),
                refused(
                        "time on must be in (0, 1000000] s, got 0 s",
                        () -> new Duty(TimeSpan.seconds(0), TimeSpan.seconds(1))),
                refused(
                        "share of time on must be in (0, 1], got 1.5",
                        () -> Duty.flashing(FlashRate.perMinute(90), 1.5)),
                refused(
                        "thermal time constant must be in (0, 1000000] s, got 0 s",
                        () -> Duty.CONTINUOUS.peakShare(TimeSpan.seconds(0))),
                refused("flash rate must be in (0, 6000] per minute, got 0 per minute", () -> FlashRate.perMinute(0)),
                refused(
                        "a flash rate is averaged over at least 3 cycles, got 1",
                        () -> FlashRate.meanOfCycles(List.of(TimeSpan.seconds(1)))),
                refused(
                        "braking hours per year must be in [0, 8784] h, got 9000 h",
                        () -> SwapEnergy.of(CurrentDraw.open(), CurrentDraw.open(), CurrentDraw.open(), v(12), 9000)),
                refused("cross-section must be in (0, 500] mm², got 0 mm²", () -> Wire.ofArea(0)),
                refused("wire gauge must be in [-3, 40] AWG, got 41 AWG", () -> Wire.ofAwg(41)),
                refused(
                        "cross-section of ISO 6722 must be one of 0.13, 0.22, 0.35, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10 mm², got 0.6 mm²",
                        () -> Wire.ofStandard(Wire.Standard.ISO_6722, 0.6)),
                refused(
                        "wire length must be in [0, 1000] m, got -1 m",
                        () -> wire.resistance(Distance.metres(-1), at25)),
                refused(
                        "wire temperature must be in [-100, 400] °C, got 500 °C",
                        () -> wire.resistance(Distance.metres(1), Temperature.celsius(500))),
                refused("supply must be in (0, 1000] V, got -12 V", () -> run.drop(a(1), v(-12), v(0.5))),
                refused("allowable drop must be in [0, 12] V, got 13 V", () -> run.drop(a(1), v(12), v(13))),
                refused(
                        "saturation current must be in (0, 1] A, got 0 A",
                        () -> ShockleyDiode.of(a(0), 1, ohms(0), at25, INVENTED)),
                refused(
                        "diode current must be in [0, 100000] A, got -1 A",
                        () -> ShockleyDiode.of(a(1e-9), 1, ohms(0), at25, INVENTED)
                                .voltageV(-1)),
                refused(
                        "forward voltage must be in [0, 1000] V, got -5 V",
                        () -> ShockleyDiode.of(a(1e-9), 1, ohms(0), at25, INVENTED)
                                .currentA(-5)),
                refused(
                        "diode current must be in [0, 100000] A, got Infinity A",
                        () -> ShockleyDiode.of(a(1e-9), 1, ohms(0), at25, INVENTED)
                                .currentA(100)),
                refused(
                        "a diode table needs as many voltages as currents and at least one, got 0 currents and 0 voltages",
                        () -> TabledDiode.of(NONE, NONE, INVENTED)),
                refused(
                        "forward voltage 1 must be in (0.5, 1000] V, got 0.4 V",
                        () -> TabledDiode.of(new double[] {1, 2}, new double[] {0.5, 0.4}, INVENTED)),
                refused(
                        "rated reverse voltage must be in (0, 1000] V, got 0 V",
                        () -> Diode.builder(TabledDiode.of(new double[] {1}, new double[] {1}, INVENTED))
                                .forward(a(1))
                                .build()),
                refused(
                        "voltage before the blocking diode must be in [0, 12] V, got 13 V",
                        () -> diode().build().block(v(12), v(13))),
                refused(
                        "voltage behind the diode must be in [0, 1000] V, got -12 V",
                        () -> diode().build().block(v(-12), v(0))),
                refused(
                        "supply must be in [0, 1000] V, got -14 V",
                        () -> LampFeed.of(ohms(0.1)).operate(CurrentDraw.open(), v(-14))),
                refused(
                        "a short circuit behind a wiring resistance of 0 Ω draws an unbounded current; give the wiring's"
                                + " resistance",
                        () -> LampFeed.of(ohms(0)).shortCircuitCurrent(v(12))),
                refused("fuse rating must be in (0, 1000] A, got 0 A", () -> Fuse.of(a(0))),
                refused(
                        "inrush current must be in [5, 100000] A, got 4 A",
                        () -> Fuse.of(a(10)).carry(a(5), a(4))),
                refused("resistance must be in [1e-6, 1e8] Ω, got 0 Ω", () -> ESeries.E12.atMost(ohms(0))),
                refused(
                        "a caution must have a topic and a text, got \"heat\" and \" \"",
                        () -> new Caution("heat", " ")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("badCalls")
    void isRefusedWithAClearMessage(String message, ThrowingCallable call) {
        assertThatThrownBy(call).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
    }

    @Test
    void openCircuitDrawsNothingAndIsReported() {
        OutageMonitor monitor = OutageMonitor.of(a(0.5), 0.2, v(9), v(16));
        assertThat(monitor.judge(CurrentDraw.open()).outcome()).isEqualTo(Outcome.REPORTS_FAILED);
        LampFeed.Point point = LampFeed.of(ohms(1)).operate(CurrentDraw.open(), v(12));
        assertThat(point.lampVoltage()).isEqualTo(v(12));
        assertThat(point.current()).isEqualTo(a(0));
    }

    @Test
    void nearlyShortedLoadIsSolvedWithACaveat() {
        LampFeed.Point point = LampFeed.of(ohms(0.2)).operate(CurrentDraw.resistive(ohms(0.01)), v(12));
        assertThat(point.evidence().caveats())
                .anySatisfy(c -> assertThat(c.text()).startsWith("less than half the supply reaches the load"));
    }

    @Test
    void runOfZeroLengthHasOnlyItsContacts() {
        WireRun run = WireRun.of(Wire.ofAwg(18), Distance.metres(0), WireRun.Return.OWN_WIRE)
                .withContacts(Resistance.milliohms(20));
        WireRun.Drop drop = run.drop(a(2), v(12), v(0.5));
        assertThat(drop.drop().isCloseTo(v(0.04), v(1e-12))).isTrue();
        assertThat(drop.withinAllowable()).isTrue();
        assertThat(WireRun.of(Wire.ofAwg(18), Distance.metres(0), WireRun.Return.BODY)
                        .resistance())
                .isEqualTo(ohms(0));
    }

    @Test
    void impossibleDropAndOddTemperatureCarryCaveats() {
        WireRun run = WireRun.of(Wire.ofArea(0.5), Distance.metres(50), WireRun.Return.BODY)
                .at(Temperature.celsius(200));
        WireRun.Drop drop = run.drop(a(20), v(12), v(0.5));
        assertThat(drop.drop().inVolts()).isGreaterThan(12);
        assertThat(drop.evidence().caveats())
                .extracting(c -> c.text())
                .anySatisfy(t -> assertThat(t).startsWith("the drop exceeds the supply"))
                .anySatisfy(t -> assertThat(t).startsWith("the return through the body"))
                .anySatisfy(t -> assertThat(t)
                        .startsWith("wire temperature 200 °C is outside the validated range [-40, 150] °C"));
    }

    @Test
    void resistorAllowsNothingAtItsLimit() {
        ResistorRating rating = ResistorRating.aluminiumHoused50WOnStandardSink();
        assertThat(rating.allowed(Temperature.celsius(250))).isEqualTo(Power.watts(0));
        assertThat(rating.allowed(Temperature.celsius(-40))).isEqualTo(Power.watts(50));
        HeatCheck heat = LoadResistor.of(ohms(6), 0, rating).heat(v(13.5), Temperature.celsius(210));
        assertThat(heat.withinRating()).isFalse();
    }

    @Test
    void measuredLoadRunsStraightBetweenItsPoints() {
        CurrentDraw load = CurrentDraw.measured("invented LED lamp", new double[] {8, 12}, new double[] {0.4, 0.3});
        assertThat(load.current(v(10)).isCloseTo(a(0.35), a(1e-12))).isTrue();
        assertThat(load.current(v(4)).isCloseTo(a(0.2), a(1e-12))).isTrue();
        assertThat(load.current(v(16))).isEqualTo(a(0.3));
        assertThat(load.evidence().caveats())
                .singleElement()
                .satisfies(c -> assertThat(c.text())
                        .isEqualTo(
                                "the current of invented LED lamp was measured from 8 to 12 V and is a guess outside"));
    }
}
