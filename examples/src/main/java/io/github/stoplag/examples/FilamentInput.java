package io.github.stoplag.examples;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Voltage;
import java.util.List;
import java.util.function.Function;

/** The filament bulb of a scenario: a bulb of the catalogue, or what it draws at its design voltage. */
final class FilamentInput {
    private static final Key<Voltage> DESIGN_VOLTAGE = Key.voltage("filament.design-voltage", null, 1, 60);
    private static final Key<Power> DESIGN_POWER = Key.power("filament.design-power", null, 1, 100);

    static final List<String> KEYS = List.of(DESIGN_VOLTAGE.name(), DESIGN_POWER.name());

    private FilamentInput() {}

    /** Starts the bulb. */
    private static FilamentLamp.Builder rated(ScenarioFile file) {
        return FilamentLamp.builder(file.get(DESIGN_VOLTAGE), file.get(DESIGN_POWER));
    }

    /**
     * Reads a bulb and lets more be set.
     *
     * @throws InputException if no such bulb can be made
     */
    static FilamentLamp of(ScenarioFile file, Function<FilamentLamp.Builder, FilamentLamp.Builder> more) {
        try {
            return more.apply(rated(file)).build();
        } catch (IllegalArgumentException e) {
            throw new InputException(file.name() + ": filament lamp: " + e.getMessage(), e);
        }
    }
}
