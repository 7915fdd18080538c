package io.github.stoplag.lamp;

import static java.util.Map.entry;

import io.github.stoplag.PublishedTableTest;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.LampSignal;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleSupplier;
import java.util.function.ToDoubleFunction;

/** Published figures of stop lamps against the model, every lamp from its rating and one eye for all. */
class PublishedLampFiguresTest extends PublishedTableTest {
    private static final FilamentLamp BULB = LaboratoryLamps.bulb();
    private static final FilamentOnset BENCH = BULB.switchOn(SupplyConditions.of(Voltage.volts(13.5)));
    private static final FilamentOnset LABORATORY = LaboratoryLamps.standard();
    private static final MeasuredLamp FAST = LaboratoryLamps.fast().onset();
    private static final LedLamp LED = LaboratoryLamps.led();
    private static final IntegratingEye EYE =
            IntegratingEye.of(LaboratoryLamps.EYE_TIME_CONSTANT, LaboratoryLamps.EYE_THRESHOLD);

    private static final FilamentLamp BARE_WIRE = FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26))
            .filamentTemperature(Temperature.kelvin(2500))
            .gasLossShare(0)
            .coilFactor(1)
            .build();

    @Override
    protected List<String> tables() {
        return List.of("published_lamp_figures.csv");
    }

    @Override
    protected double compute(Row row) {
        return compute(COMPUTED, row);
    }

    @Override
    protected Set<String> cases() {
        return COMPUTED.keySet();
    }

    private static final Map<String, DoubleSupplier> COMPUTED = Map.ofEntries(
            entry("first_light", () -> levelMs(BENCH, 0.01)),
            entry("light_90", () -> levelMs(BENCH, 0.9)),
            entry("inrush", BENCH::inrushRatio),
            entry("light_exponent", () -> exponent(BULB, FilamentOnset::relativeToRated)),
            entry(
                    "power_exponent",
                    () -> exponent(BULB, onset -> onset.steadyPower().inWatts())),
            entry(
                    "current_exponent",
                    () -> exponent(BULB, onset -> onset.steadyCurrent().inAmperes())),
            entry("light_exponent_2500", () -> exponent(BARE_WIRE, FilamentOnset::relativeToRated)),
            entry(
                    "power_exponent_2500",
                    () -> exponent(BARE_WIRE, onset -> onset.steadyPower().inWatts())),
            entry(
                    "current_exponent_2500",
                    () -> exponent(BARE_WIRE, onset -> onset.steadyCurrent().inAmperes())),
            entry(
                    "colour_temperature_exponent",
                    () -> VoltageRerating.of(BULB)
                            .row(VoltageRerating.Quantity.COLOUR_TEMPERATURE, Voltage.volts(12.8))
                            .physicsExponent()
                            .orElseThrow()),
            entry(
                    "colour_temperature",
                    () -> Photometry.colourTemperature(Temperature.kelvin(2800)).inKelvin()),
            entry("mains_settled", () -> {
                FilamentOnset mains = mains();
                return mains.currentAt(TimeSpan.millis(50)).inAmperes()
                        / mains.steadyCurrent().inAmperes();
            }),
            entry(
                    "flux",
                    () -> FilamentLamp.builder(Voltage.volts(13.5), Power.watts(25))
                            .build()
                            .predictedFlux()
                            .inLumens()),
            entry(
                    "flux_by_life",
                    () -> FilamentLamp.builder(Voltage.volts(13.5), Power.watts(25))
                            .lifeHours(250)
                            .build()
                            .predictedFlux()
                            .inLumens()),
            entry("tungsten_ratio", () -> Tungsten.resistivityOhmM(2800) / Tungsten.resistivityOhmM(300)),
            entry("melting_emissivity", () -> Tungsten.spectralEmissivityRatio(653, Tungsten.MELTING_POINT_K)),
            entry(
                    "platinum_luminance",
                    () -> Photometry.blackBody()
                                    .luminance(Temperature.kelvin(2042))
                                    .inCdPerM2()
                            / 1e4),
            entry("led_84", () -> seenMs(LED, 5) - seenMs(LED, 42)),
            entry("led_gain", () -> meanSeenMs(LABORATORY) - meanSeenMs(LED)),
            entry("fast_gain", () -> meanSeenMs(LABORATORY) - meanSeenMs(FAST)),
            entry("film_first", () -> levelMs(LABORATORY, 0.5)),
            entry("driver_notices", () -> meanSeenMs(LABORATORY)),
            entry("full_brightness", () -> levelMs(LABORATORY, 0.999)),
            entry("draw_major", () -> drawnW(12.8, 2.1, 12.6)),
            entry("draw_minor", () -> drawnW(14, 0.59, 13.5)),
            entry("led_current_low", () -> LABORATORY.steadyCurrent().inAmperes() / 20),
            entry("led_current_high", () -> LABORATORY.steadyCurrent().inAmperes() / 10));

    private static FilamentOnset mains() {
        return FilamentLamp.builder(Voltage.volts(230), Power.watts(100))
                .build()
                .switchOn(SupplyConditions.of(Voltage.volts(230)));
    }

    private static double levelMs(FilamentOnset onset, double level) {
        return 1000 * onset.timeToLevelS(level).orElseThrow();
    }

    private static double exponent(FilamentLamp lamp, ToDoubleFunction<FilamentOnset> quantity) {
        double high = quantity.applyAsDouble(lamp.switchOn(
                SupplyConditions.of(Voltage.volts(lamp.ratedVoltage().inVolts() * 1.02))));
        double low = quantity.applyAsDouble(lamp.switchOn(
                SupplyConditions.of(Voltage.volts(lamp.ratedVoltage().inVolts() * 0.98))));
        return Math.log(high / low) / Math.log(1.02 / 0.98);
    }

    private static double seenMs(OnsetCurve onset, double finalCd) {
        Detection detection = EYE.detect(LampSignal.of(onset, LuminousIntensity.candela(finalCd)));
        if (detection instanceof Detection.Seen seen) {
            return seen.at().inMillis();
        }
        throw new AssertionError(detection);
    }

    private static double meanSeenMs(OnsetCurve onset) {
        return (seenMs(onset, 42) + seenMs(onset, 5)) / 2;
    }

    private static double drawnW(double ratedV, double ratedA, double supplyV) {
        return FilamentLamp.builder(Voltage.volts(ratedV), Power.watts(ratedV * ratedA))
                .build()
                .switchOn(SupplyConditions.of(Voltage.volts(supplyV)))
                .steadyPower()
                .inWatts();
    }
}
