package io.github.stoplag.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.circuit.OutageVerdict.Outcome;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Source;
import org.junit.jupiter.api.Test;

/**
 * The whole electrical side of one lamp swap on an invented 12 V minibus: two 21 W stop lamps become LED lamps; an
 * added high-level filament lamp is fed from the stop circuit. Expected numbers are worked by hand in the comments.
 */
final class LampSwapWalkTest {
    private static final Voltage NOMINAL = Voltage.volts(13.5);
    private static final Voltage LOWEST = Voltage.volts(9);
    private static final Voltage HIGHEST = Voltage.volts(16);

    private static final CurrentDraw BULB = CurrentDraw.filament(NOMINAL, Power.watts(26.5));
    private static final CurrentDraw LED = CurrentDraw.ledRegulated(Current.amperes(0.22), Voltage.volts(8));
    private static final OutageMonitor MONITOR = OutageMonitor.of(Current.amperes(0.9), 0.25, LOWEST, HIGHEST);

    private static LoadResistor resistor(ResistorRating rating) {
        return LoadResistor.of(Resistance.ohms(8.2), 0.05, rating);
    }

    private static LoadResistor onStandardSink() {
        return resistor(ResistorRating.aluminiumHoused50WOnStandardSink());
    }

    @Test
    void monitorIsContentWithTheBulbAndReportsTheLed() {
        OutageVerdict bulb = MONITOR.judge(BULB);
        // by the power law 26.5/13.5 (9/13.5)^0.55 = 1.963 x 0.8001 = 1.571 A, by heat balance 1 % more; threshold
        // 0.675 to 1.125 A
        assertThat(bulb.outcome()).isEqualTo(Outcome.REPORTS_HEALTHY);
        assertThat(bulb.deciding().supply()).isEqualTo(LOWEST);
        assertThat(bulb.deciding().current().inAmperes()).isCloseTo(1.571, within(0.02));

        OutageVerdict led = MONITOR.judge(LED);
        assertThat(led.outcome()).isEqualTo(Outcome.REPORTS_FAILED);
        assertThat(led)
                .hasToString(
                        "monitor reports a failed lamp: the load draws 0.22 A at 9 V; failed below 0.675 A, healthy from 1.125 A");
        assertThat(led.evidence().cautions()).contains(Caution.LAMP_LAW, Caution.LICENSED_PRACTICE);
    }

    @Test
    void loadResistorIsSizedAtTheLowestSupplyAndHidesADeadLed() {
        LoadSizing sizing = LoadSizing.of(MONITOR, LED, 0.05);
        assertThat(sizing).isInstanceOfSatisfying(LoadSizing.Needed.class, needed -> {
            // 9 V / (1.125 - 0.22) A / 1.05 = 9.471 Ω
            assertThat(needed.greatest().inOhms()).isCloseTo(9.471, within(0.001));
            assertThat(needed.decidingSupply()).isEqualTo(LOWEST);
            assertThat(needed.toDraw().inAmperes()).isCloseTo(0.905, within(1e-9));
            assertThat(needed.preferred(ESeries.E12).inOhms()).isEqualTo(8.2);
            assertThat(needed.lampAlone().outcome()).isEqualTo(Outcome.REPORTS_FAILED);
        });
        LoadResistor.Watch watch = onStandardSink().watch(MONITOR, LED);
        assertThat(watch.lampAlive().outcome()).isEqualTo(Outcome.REPORTS_HEALTHY);
        // dead LED: 9 V / 7.79 Ω = 1.155 A, still healthy to the monitor
        assertThat(watch.lampDead().outcome()).isEqualTo(Outcome.REPORTS_HEALTHY);
        assertThat(watch.stillWatchesLamp()).isFalse();
        assertThat(watch.evidence().caveats())
                .contains(new Caveat("with this resistor the monitor may not report a dead LED: the driver loses the"
                        + " outage warning"));
        assertThat(LoadSizing.of(MONITOR, BULB, 0.05)).isInstanceOf(LoadSizing.NotNeeded.class);
    }

    @Test
    void resistorIsHotUnderAHeldBrakeAndTooHotWithoutItsSink() {
        // 16²/(8.2 x 0.95) = 32.86 W; 50 + 3.5 x 32.86 = 165 °C; allowed 50 (200 - 50)/175 = 42.9 W
        HeatCheck onSink = onStandardSink().heat(HIGHEST, Temperature.celsius(50));
        assertThat(onSink.whileOn().inWatts()).isCloseTo(32.86, within(0.01));
        assertThat(onSink.surface().inCelsius()).isCloseTo(165, within(0.1));
        assertThat(onSink.allowed().inWatts()).isCloseTo(42.86, within(0.01));
        assertThat(onSink.withinRating()).isTrue();
        assertThat(onSink.evidence().cautions())
                .anySatisfy(c ->
                        assertThat(c.text()).startsWith("The surface of the load resistor is estimated at 165 °C."));
        assertThat(onSink.evidence().caveats())
                .anySatisfy(c -> assertThat(c.text()).contains("exceeds 85 °C"));

        // 4 + 13 K/W in free air: allowed (200 - 50)/17 = 8.8 W
        ResistorRating freeAir =
                new ResistorRating(Power.watts(40), Temperature.celsius(25), Temperature.celsius(200), 4, 13);
        HeatCheck inAir = resistor(freeAir).heat(HIGHEST, Temperature.celsius(50));
        assertThat(inAir.withinRating()).isFalse();
        assertThat(inAir.allowed().inWatts()).isCloseTo(8.82, within(0.01));
        assertThat(inAir.element().inCelsius() - inAir.surface().inCelsius()).isCloseTo(4 * 32.86, within(0.1));

        // flashing at half duty on a slow body: half the rise
        HeatCheck flashing = resistor(freeAir)
                .heat(
                        HIGHEST,
                        Temperature.celsius(50),
                        Duty.flashing(FlashRate.perMinute(90), 0.5),
                        TimeSpan.seconds(300));
        assertThat(flashing.average().inWatts()).isCloseTo(16.43, within(0.01));
        assertThat(flashing.governing().inWatts()).isBetween(16.43, 16.5);
        assertThat(flashing.evidence().caveats())
                .anySatisfy(c -> assertThat(c.text()).contains("a held brake or a stuck flasher"));
    }

    @Test
    void resistorEatsWhatTheLedSaves() {
        SwapEnergy with = SwapEnergy.of(BULB, LED, CurrentDraw.resistive(Resistance.ohms(8.2)), NOMINAL, 120);
        // 26.5 - 0.22 x 13.5 - 13.5²/8.2 = 26.5 - 2.97 - 22.226 = 1.304 Wh an hour
        assertThat(with.savedPerBrakingHourWh()).isCloseTo(1.304, within(0.001));
        assertThat(with.savedPerYearWh()).isCloseTo(156.5, within(0.1));
        assertThat(with.wastedPerYearWh()).isCloseTo(2667, within(1.0));
        SwapEnergy without = SwapEnergy.of(BULB, LED, CurrentDraw.open(), NOMINAL, 120);
        assertThat(without.savedPerBrakingHourWh()).isCloseTo(23.53, within(1e-9));
        assertThat(without.wastedPerYearWh()).isZero();
    }

    @Test
    void addedLampBehindADiodeIsDimmerAndLater() {
        Diode diode = Diode.builder(TabledDiode.of(
                        new double[] {3, 9.4},
                        new double[] {0.525, 0.95},
                        Source.seen("data sheet of a 1N5822", "highest forward voltages")))
                .forward(Current.amperes(3))
                .reverse(Voltage.volts(40), Current.milliamperes(20))
                .thermal(40, Temperature.celsius(125))
                .build();
        WireRun run = WireRun.of(
                        Wire.ofStandard(Wire.Standard.IEC_60228_CLASS_5, 0.75),
                        Distance.metres(6),
                        WireRun.Return.OWN_WIRE)
                .at(Temperature.celsius(20));
        // 2 x 6 m x 26 mΩ/m = 0.312 Ω, 1.963 A: 0.6125 V, more than 0.5 V
        WireRun.Drop thin = run.drop(BULB.current(NOMINAL), NOMINAL, Voltage.volts(0.5));
        assertThat(thin.drop().inVolts()).isCloseTo(0.6124, within(0.0005));
        assertThat(thin.withinAllowable()).isFalse();
        WireRun thick = WireRun.of(
                Wire.ofStandard(Wire.Standard.IEC_60228_CLASS_5, 1.5), Distance.metres(6), WireRun.Return.OWN_WIRE);
        assertThat(thick.drop(BULB.current(NOMINAL), NOMINAL, Voltage.volts(0.5))
                        .withinAllowable())
                .isTrue();

        LampFeed feed = LampFeed.of(thick.resistance()).withDiode(diode);
        LampFeed.Point point = feed.operate(BULB, NOMINAL);
        assertThat(point.lampVoltage().inVolts()).isBetween(12.8, 12.95);
        // about 1.9 A x 0.175 V/A x 1.9 A = 0.64 W; 40 K/W
        Diode.Conduction conduction = diode.conduct(point.current(), Temperature.celsius(60));
        assertThat(conduction.junction().inCelsius()).isCloseTo(60 + 40 * 0.64, within(1.0));
        assertThat(conduction.withinCurrent() && conduction.withinTemperature()).isTrue();
        assertThat(conduction.evidence().cautions())
                .contains(Caution.hotSurface("diode, taken as hot as its junction,", conduction.junction()));

        FilamentLamp added = FilamentLamp.builder(NOMINAL, Power.watts(26.5)).build();
        FeedOnset onset = feed.onset(added, SupplyConditions.of(NOMINAL));
        assertThat(onset.delayByDiode(0.5).earliest().inMillis()).isPositive();
        // light goes with V^3.4 near the rating: 0.33 V of 13.2 V less costs about 8 %
        assertThat(onset.lightAgainstDirectRatio()).isBetween(0.90, 0.94);
        assertThat(onset.lampVoltage().inVolts()).isCloseTo(point.lampVoltage().inVolts(), within(0.02));

        Diode.Blocking blocking = diode.block(HIGHEST, Voltage.volts(0));
        assertThat(blocking.blocks()).isTrue();
        assertThat(blocking.evidence().caveats())
                .anySatisfy(c -> assertThat(c.text()).contains("can make an LED lamp on the feeding side glow"))
                .anySatisfy(c -> assertThat(c.text())
                        .isEqualTo(
                                "the leakage is the one given, whatever the temperature; in a hotter diode it about doubles"
                                        + " every 10 K (common practice, no source): give the data sheet's value at the hottest"
                                        + " junction"));
        assertThat(diode.block(Voltage.volts(87), Voltage.volts(0)).blocks()).isFalse();
    }

    @Test
    void fuseCarriesTheLampsAndItsLimitIsNamed() {
        FilamentLamp lamp = FilamentLamp.builder(NOMINAL, Power.watts(26.5)).build();
        double inrush =
                lamp.switchOn(SupplyConditions.of(NOMINAL)).inrushCurrent().inAmperes();
        Fuse fuse = Fuse.of(Current.amperes(10));
        // three bulbs 5.89 A of 7.5 A
        Fuse.Load bulbs = fuse.carry(Current.amperes(5.89), Current.amperes(3 * inrush));
        assertThat(bulbs.outcome()).isEqualTo(Fuse.Outcome.CARRIES);
        assertThat(bulbs.continuousLimit().inAmperes()).isEqualTo(7.5);
        assertThat(bulbs.evidence().caveats())
                .anySatisfy(c -> assertThat(c.text()).matches("the inrush is [\\d.]+ times the rating; .*"));
        assertThat(fuse.carry(Current.amperes(8), Current.amperes(8)).outcome()).isEqualTo(Fuse.Outcome.OVERWORKED);
        assertThat(fuse.carry(Current.amperes(11), Current.amperes(11)).outcome())
                .isEqualTo(Fuse.Outcome.OVERLOADED);
        assertThat(bulbs.evidence().cautions()).contains(Caution.FUSES);
        // a chafed wire: 13.5 V over 0.16 Ω
        double fault =
                LampFeed.of(Resistance.ohms(0.16)).shortCircuitCurrent(NOMINAL).inAmperes();
        assertThat(fuse.carry(Current.amperes(fault), Current.amperes(fault)).loadShareRatio())
                .isCloseTo(8.44, within(0.01));
    }

    @Test
    void flashersAnswerLedLampsEachInTheirWay() {
        // common practice, no source: healthy from about 3 A for two 21 W lamps, twice the rate on error
        OutageMonitor threshold = OutageMonitor.of(Current.amperes(2.4), 0.15, LOWEST, HIGHEST);
        Flasher electronic = Flasher.loadMeasuring(threshold, FlashRate.perMinute(85), FlashRate.perMinute(170));
        Flasher.Report bulbs = electronic.with(BULB.plus(BULB), FlashRate.UN_R48);
        assertThat(bulbs.behaviour()).isEqualTo(Flasher.Behaviour.NORMAL);
        assertThat(bulbs.withinBand()).isTrue();
        Flasher.Report leds = electronic.with(LED.plus(LED), FlashRate.UN_R48);
        assertThat(leds.behaviour()).isEqualTo(Flasher.Behaviour.ERROR_RATE);
        assertThat(leds.rate()).contains(FlashRate.perMinute(170));
        assertThat(leds.withinBand()).isFalse();
        // one bulb, one LED: 1.79 A at 9 V and 2.38 A at 16 V against 2.04 to 2.76 A
        assertThat(electronic.with(BULB.plus(LED), FlashRate.UN_R48).behaviour())
                .isEqualTo(Flasher.Behaviour.MAY_DO_EITHER);

        Flasher.Report thermal =
                Flasher.thermal(threshold, FlashRate.perMinute(85)).with(LED.plus(LED), FlashRate.UN_R48);
        assertThat(thermal.behaviour()).hasToString("does not flash");
        assertThat(thermal.rate()).isEmpty();
        assertThat(thermal.withinBand()).isFalse();

        Flasher.Report own =
                Flasher.loadIndependent(FlashRate.perMinute(90)).with(CurrentDraw.open(), FlashRate.UN_R48);
        assertThat(own.behaviour()).isEqualTo(Flasher.Behaviour.NORMAL);
        assertThat(own.verdict()).isEmpty();
        assertThat(own.evidence().caveats())
                .anySatisfy(c -> assertThat(c.text()).contains("nothing about a dead lamp"));
    }
}
