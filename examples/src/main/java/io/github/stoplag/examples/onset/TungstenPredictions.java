package io.github.stoplag.examples.onset;

import static java.util.Map.entry;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.Photometry;
import io.github.stoplag.lamp.Tungsten;
import io.github.stoplag.lamp.VoltageRerating;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import java.util.Map;
import java.util.function.DoubleSupplier;

/** What the properties of tungsten and of the black body say. */
final class TungstenPredictions {
    private static final double STEFAN_BOLTZMANN_W_PER_M2_K4 = 5.670374419e-8;
    private static final double SQUARE_CM_PER_M2 = 1e4;

    private TungstenPredictions() {}

    static Map<String, DoubleSupplier> computed() {
        FilamentLamp bare = FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26))
                .filamentTemperature(Temperature.kelvin(2500))
                .gasLossShare(0)
                .coilFactor(1)
                .build();
        return Map.ofEntries(
                entry("light_exponent_2500", () -> exponent(bare, VoltageRerating.Quantity.LIGHT)),
                entry("power_exponent_2500", () -> exponent(bare, VoltageRerating.Quantity.POWER)),
                entry("current_exponent_2500", () -> exponent(bare, VoltageRerating.Quantity.CURRENT)),
                entry("tungsten_ratio", () -> Tungsten.resistivityOhmM(2800) / Tungsten.resistivityOhmM(300)),
                entry("w_2000", () -> idealWattsPerCm2(2000)),
                entry("w_2400", () -> idealWattsPerCm2(2400)),
                entry("w_2800", () -> idealWattsPerCm2(2800)),
                entry("melting_emissivity", () -> Tungsten.spectralEmissivityRatio(653, Tungsten.MELTING_POINT_K)),
                entry(
                        "platinum_luminance",
                        () -> Photometry.blackBody()
                                        .luminance(Temperature.kelvin(2042))
                                        .inCdPerM2()
                                / SQUARE_CM_PER_M2),
                entry(
                        "colour_temperature",
                        () -> Photometry.colourTemperature(Temperature.kelvin(2800))
                                .inKelvin()));
    }

    private static double exponent(FilamentLamp lamp, VoltageRerating.Quantity quantity) {
        return VoltageRerating.of(lamp)
                .row(quantity, lamp.ratedVoltage())
                .physicsExponent()
                .orElseThrow();
    }

    /** W' = W/(l d) = π ε σ T⁴ of a straight wire in vacuum, far from its cold surroundings. */
    private static double idealWattsPerCm2(double kelvin) {
        return Math.PI
                * Tungsten.totalEmissivityRatio(kelvin)
                * STEFAN_BOLTZMANN_W_PER_M2_K4
                * Math.pow(kelvin, 4)
                / SQUARE_CM_PER_M2;
    }
}
