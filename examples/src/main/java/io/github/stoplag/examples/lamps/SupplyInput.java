package io.github.stoplag.examples.lamps;

import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.Keys;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import java.util.List;

/** What feeds the lamps of a scenario, and the lens their light passes. */
public final class SupplyInput {
    public static final Keys KEYS = new Keys();
    private static final Key<Voltage> VOLTAGE = KEYS.add(Key.voltage("supply.voltage", null, Ranges.LIVE_SUPPLY));
    private static final Key<Resistance> WIRING =
            KEYS.add(Key.resistance("supply.series-resistance", "0 ohm", Ranges.SERIES_RESISTANCE));
    private static final Key<Temperature> AMBIENT = KEYS.add(Key.ambient("ambient.temperature", "27 °C"));

    /** The lens alone: it decides how a filament's light is weighed. */
    public static final Keys LENS_KEYS = new Keys();

    private static final String LENS = LENS_KEYS.add("filament.lens");

    private SupplyInput() {}

    /**
     * Reads it.
     *
     * @throws io.github.stoplag.examples.file.InputException if a value is missing or impossible
     */
    public static SupplyConditions of(ScenarioFile file) {
        return SupplyConditions.of(file.get(VOLTAGE))
                .withSeriesResistance(file.get(WIRING))
                .withAmbientTemperature(file.get(AMBIENT))
                .withLens(file.word(LENS, "red", List.of("red", "clear")).equals("red") ? Lens.RED : Lens.CLEAR);
    }
}
