package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import java.util.Objects;
import java.util.Optional;

/**
 * How a filament lamp is switched on: a step of constant supply voltage through switch and harness.
 *
 * <p>A filament starts as cold as its surroundings unless it is given a temperature of its own, before or after them.
 *
 * @param supply the voltage before the series resistance, [0, 1000] V
 * @param seriesResistance switch, connectors and harness together, [0, 100] Ω
 * @param ambientTemperature the surroundings into which the filament loses heat, [200, 500] K
 * @param ownTemperature the filament's temperature at switch-on where it is not that of the surroundings, [200, 3600] K
 * @param lens what the light passes
 */
public record SupplyConditions(
        Voltage supply,
        Resistance seriesResistance,
        Temperature ambientTemperature,
        Optional<Temperature> ownTemperature,
        Lens lens) {
    private static final Temperature ROOM = Temperature.kelvin(300);

    /**
     * Checks the ranges.
     *
     * @param supply the voltage before the series resistance
     * @param seriesResistance switch, connectors and harness together
     * @param ambientTemperature the surroundings
     * @param ownTemperature the filament's temperature at switch-on where it is not that of the surroundings
     * @param lens what the light passes
     * @throws IllegalArgumentException if the supply is not in [0, 1000] V, the series resistance not in [0, 100] Ω,
     *     the ambient temperature not in [200, 500] K or the filament's own temperature not in [200, 3600] K
     */
    public SupplyConditions {
        Objects.requireNonNull(ambientTemperature, "ambientTemperature");
        Objects.requireNonNull(ownTemperature, "ownTemperature");
        Objects.requireNonNull(seriesResistance, "seriesResistance");
        Objects.requireNonNull(supply, "supply");
        Objects.requireNonNull(lens, "lens");
        Ranges.SUPPLY.check(supply.inVolts());
        Ranges.SERIES_RESISTANCE.check(seriesResistance.inOhms());
        Ranges.AMBIENT.check(ambientTemperature.inKelvin());
        ownTemperature.ifPresent(own -> Check.inRange(
                "initial filament temperature", own.inKelvin(), Tungsten.LOWEST_K, FilamentWire.HIGHEST_K, "K"));
    }

    /**
     * Switches a cold lamp (300 K, in surroundings of 300 K) on to a stiff supply, behind a clear lens.
     *
     * @param supply the supply voltage
     * @return the conditions
     * @throws IllegalArgumentException if the supply is not in [0, 1000] V
     */
    public static SupplyConditions of(Voltage supply) {
        Objects.requireNonNull(supply, "supply");
        return new SupplyConditions(supply, Resistance.ohms(0), ROOM, Optional.empty(), Lens.CLEAR);
    }

    /** {@return the filament's temperature at switch-on: its own, or that of the surroundings} */
    public Temperature initialTemperature() {
        return ownTemperature.orElse(ambientTemperature);
    }

    /**
     * Changes the supply and keeps all else.
     *
     * @param newSupply the supply voltage, [0, 1000] V
     * @return the changed conditions
     * @throws IllegalArgumentException if it is out of range
     */
    public SupplyConditions withSupply(Voltage newSupply) {
        Objects.requireNonNull(newSupply, "newSupply");
        return new SupplyConditions(newSupply, seriesResistance, ambientTemperature, ownTemperature, lens);
    }

    /**
     * Puts switch and harness in series with the lamp.
     *
     * @param resistance their resistance, [0, 100] Ω
     * @return the changed conditions
     * @throws IllegalArgumentException if it is out of range
     */
    public SupplyConditions withSeriesResistance(Resistance resistance) {
        return new SupplyConditions(supply, resistance, ambientTemperature, ownTemperature, lens);
    }

    /**
     * Sets the surroundings; a filament without a temperature of its own starts as cold as they are.
     *
     * @param ambient the surroundings, [200, 500] K
     * @return the changed conditions
     * @throws IllegalArgumentException if it is out of range
     */
    public SupplyConditions withAmbientTemperature(Temperature ambient) {
        Objects.requireNonNull(ambient, "ambient");
        return new SupplyConditions(supply, seriesResistance, ambient, ownTemperature, lens);
    }

    /**
     * Sets the filament's own temperature at switch-on: a lamp still warm, or kept preheated.
     *
     * @param initial the filament's temperature, [200, 3600] K
     * @return the changed conditions
     * @throws IllegalArgumentException if it is out of range
     */
    public SupplyConditions withInitialTemperature(Temperature initial) {
        Objects.requireNonNull(initial, "initial");
        return new SupplyConditions(supply, seriesResistance, ambientTemperature, Optional.of(initial), lens);
    }

    /**
     * Puts a lens before the lamp.
     *
     * @param newLens the lens
     * @return the changed conditions
     */
    public SupplyConditions withLens(Lens newLens) {
        Objects.requireNonNull(newLens, "newLens");
        return new SupplyConditions(supply, seriesResistance, ambientTemperature, ownTemperature, newLens);
    }
}
