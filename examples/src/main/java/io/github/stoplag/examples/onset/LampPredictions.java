package io.github.stoplag.examples.onset;

import static java.util.Map.entry;

import io.github.stoplag.lamp.BulbCatalogue;
import io.github.stoplag.lamp.BulbFilament;
import io.github.stoplag.lamp.BulbRating;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sweep.FilamentUncertainty;
import java.util.Map;
import java.util.function.DoubleSupplier;

/** What the lamp model says of light, current and power. */
final class LampPredictions {
    private LampPredictions() {}

    static Map<String, DoubleSupplier> computed() {
        FilamentOnset laboratory = LaboratoryLamps.standard();
        FilamentOnset clear = LaboratoryLamps.bulb().switchOn(SupplyConditions.of(Voltage.volts(13.5)));
        BulbRating combined = BulbCatalogue.published("1157");
        return Map.ofEntries(
                entry("first_light", () -> levelMs(clear, 0.01)),
                entry("light_90", () -> levelMs(laboratory, 0.9)),
                entry("light_90_clear", () -> levelMs(clear, 0.9)),
                entry("inrush_typical", clear::inrushRatio),
                entry("inrush_low", clear::inrushRatio),
                entry("inrush_high", clear::inrushRatio),
                entry(
                        "inrush_twice",
                        () -> twiceMs(BulbCatalogue.published("194").majorLamp().build())),
                entry(
                        "inrush_twice_small",
                        () -> twiceMs(FilamentLamp.builder(Voltage.volts(12), Power.watts(1.2))
                                .build())),
                entry("cold_low", () -> 1 / clear.inrushRatio()),
                entry("cold_high", () -> 1 / clear.inrushRatio()),
                entry("film_first", () -> levelMs(laboratory, 0.5)),
                entry("full_brightness", () -> levelMs(laboratory, 0.999)),
                entry("draw_major", () -> drawnW(combined.majorLamp().build())),
                entry("draw_minor", () -> drawnW(combined.minorLamp().build())),
                entry("draw_from_flux", LampPredictions::wattsFromFlux));
    }

    /** Which unknown of the laboratory's bulb moves its time to half of the light, and how far. */
    static FilamentUncertainty.Budget halfLight() {
        return FilamentUncertainty.of(LaboratoryLamps.bulb())
                .budget(
                        "time_to_half_s",
                        lamp -> lamp.switchOn(LaboratoryLamps.conditions())
                                .timeToLevelS(0.5)
                                .orElseThrow());
    }

    static double levelMs(OnsetCurve onset, double level) {
        return 1000 * onset.timeToLevelS(level).orElseThrow();
    }

    /** How fast the inrush is over hangs on the size of the lamp, which the published figure does not tell. */
    private static double twiceMs(FilamentLamp miniature) {
        return miniature
                .switchOn(SupplyConditions.of(miniature.ratedVoltage()))
                .inrush()
                .timeToMultiple(2)
                .inMillis();
    }

    private static double drawnW(FilamentLamp filament) {
        return filament.switchOn(SupplyConditions.of(Voltage.volts(12.8)))
                .steadyPower()
                .inWatts();
    }

    /** At one temperature the flux goes with the power. */
    private static double wattsFromFlux() {
        BulbFilament rated = BulbCatalogue.published("P21/5W").major();
        FilamentLamp usual =
                FilamentLamp.builder(rated.testVoltage(), rated.power()).build();
        return usual.ratedPower().inWatts()
                * rated.clearFlux().inLumens()
                / usual.predictedFlux().inLumens();
    }
}
