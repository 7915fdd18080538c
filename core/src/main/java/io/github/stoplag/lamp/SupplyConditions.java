package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;

/**
 * How a filament lamp is switched on: a step of constant supply voltage through switch and harness.
 *
 * @param supply the voltage before the series resistance, [0, 1000] V
 * @param seriesResistance switch, connectors and harness together, [0, 100] Ω
 * @param ambientTemperature the surroundings into which the filament loses heat, [200, 500] K
 * @param initialTemperature the filament's temperature at switch-on, [200, 3600] K
 * @param lens what the light passes
 */
public record SupplyConditions(
        Voltage supply,
        Resistance seriesResistance,
        Temperature ambientTemperature,
        Temperature initialTemperature,
        Lens lens) {
    private static final Temperature ROOM = Temperature.kelvin(300);

    /**
     * Checks the ranges.
     *
     * @param supply the voltage before the series resistance
     * @param seriesResistance switch, connectors and harness together
     * @param ambientTemperature the surroundings
     * @param initialTemperature the filament's temperature at switch-on
     * @param lens what the light passes
     * @throws IllegalArgumentException if the supply is not in [0, 1000] V, the series resistance not in [0, 100] Ω, the
     *     ambient temperature not in [200, 500] K or the initial temperature not in [200, 3600] K
     */
    public SupplyConditions {
        Ranges.SUPPLY.check(supply.inVolts());
        Ranges.SERIES_RESISTANCE.check(seriesResistance.inOhms());
        Check.inRange("ambient temperature", ambientTemperature.inKelvin(), Tungsten.LOWEST_K, 500, "K");
        Check.inRange(
                "initial filament temperature",
                initialTemperature.inKelvin(),
                Tungsten.LOWEST_K,
                FilamentWire.HIGHEST_K,
                "K");
    }

    /**
     * Switches a cold lamp (300 K, in surroundings of 300 K) on to a stiff supply, behind a clear lens.
     *
     * @param supply the supply voltage
     * @return the conditions
     * @throws IllegalArgumentException if the supply is not in [0, 1000] V
     */
    public static SupplyConditions of(Voltage supply) {
        return new SupplyConditions(supply, Resistance.ohms(0), ROOM, ROOM, Lens.CLEAR);
    }

    /**
     * Changes the supply and keeps all else.
     *
     * @param newSupply the supply voltage, [0, 1000] V
     * @return the changed conditions
     * @throws IllegalArgumentException if it is out of range
     */
    public SupplyConditions withSupply(Voltage newSupply) {
        return new SupplyConditions(newSupply, seriesResistance, ambientTemperature, initialTemperature, lens);
    }

    /**
     * Puts switch and harness in series with the lamp.
     *
     * @param resistance their resistance, [0, 100] Ω
     * @return the changed conditions
     * @throws IllegalArgumentException if it is out of range
     */
    public SupplyConditions withSeriesResistance(Resistance resistance) {
        return new SupplyConditions(supply, resistance, ambientTemperature, initialTemperature, lens);
    }

    /**
     * Sets the surroundings and lets a lamp that has been off for long start at their temperature.
     *
     * @param ambient the surroundings, [200, 500] K
     * @return the changed conditions
     * @throws IllegalArgumentException if it is out of range
     */
    public SupplyConditions withAmbientTemperature(Temperature ambient) {
        return new SupplyConditions(supply, seriesResistance, ambient, ambient, lens);
    }

    /**
     * Sets the filament's own temperature at switch-on: a lamp still warm, or kept preheated.
     *
     * @param initial the filament's temperature, [200, 3600] K
     * @return the changed conditions
     * @throws IllegalArgumentException if it is out of range
     */
    public SupplyConditions withInitialTemperature(Temperature initial) {
        return new SupplyConditions(supply, seriesResistance, ambientTemperature, initial, lens);
    }

    /**
     * Puts a lens before the lamp.
     *
     * @param newLens the lens
     * @return the changed conditions
     */
    public SupplyConditions withLens(Lens newLens) {
        return new SupplyConditions(supply, seriesResistance, ambientTemperature, initialTemperature, newLens);
    }
}
