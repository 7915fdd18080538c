package io.github.stoplag.examples.file;

import io.github.stoplag.lamp.BulbCatalogue;
import io.github.stoplag.lamp.BulbRating;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Voltage;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * The filament bulb of a scenario: a bulb of the catalogue, or what it draws at its design voltage.
 *
 * @param lamp the bulb
 * @param origin where its rating comes from
 * @param key the key that gives its design voltage
 */
public record FilamentInput(FilamentLamp lamp, String origin, String key) {
    private static final String BULB = "filament.bulb";
    private static final String NO_BULB = "none";
    public static final Key<Voltage> DESIGN_VOLTAGE = Key.voltage("filament.design-voltage", null, 1, 60);
    public static final Key<Power> DESIGN_POWER = Key.power("filament.design-power", null, 1, 100);

    public static final List<String> KEYS = List.of(BULB, DESIGN_VOLTAGE.name(), DESIGN_POWER.name());
    private static final List<String> MODEL =
            List.of(Key.FILAMENT_TEMPERATURE.name(), Key.GAS_LOSS.name(), Key.COIL_FACTOR.name());
    private static final List<String> GIVEN = Stream.concat(
                    Stream.of(DESIGN_VOLTAGE.name(), DESIGN_POWER.name()), MODEL.stream())
            .toList();
    private static final List<String> CATALOGUED =
            Stream.concat(Stream.of(BULB), MODEL.stream()).toList();
    public static final String RATING_UNUSED = BULB + " names a bulb of the catalogue, which has its own rating";

    /**
     * Reads a bulb and lets more be set.
     *
     * @throws InputException if no such bulb can be made
     */
    public static FilamentInput of(ScenarioFile file, UnaryOperator<FilamentLamp.Builder> more) {
        String bulb = file.text(BULB, NO_BULB);
        if (bulb.equals(NO_BULB)) {
            Voltage voltage = file.get(DESIGN_VOLTAGE);
            Power power = file.get(DESIGN_POWER);
            return new FilamentInput(
                    file.making(
                            GIVEN,
                            () -> more.apply(FilamentLamp.builder(voltage, power))
                                    .build()),
                    power + " at " + voltage + ", given",
                    DESIGN_VOLTAGE.name());
        }
        BulbRating rating = catalogued(file, bulb);
        return new FilamentInput(
                file.making(CATALOGUED, () -> more.apply(rating.majorLamp()).build()),
                rating + ", " + rating.major().power() + " (" + rating.major().powerRule() + ") and "
                        + rating.major().clearFlux() + " at " + rating.major().testVoltage() + ": "
                        + rating.major().source(),
                BULB);
    }

    /** Finds {@code P21W} for 12 V, or {@code P21/5W 24 V}. */
    private static BulbRating catalogued(ScenarioFile file, String bulb) {
        String[] words = bulb.split("\\s+", 2);
        try {
            return words.length == 1
                    ? BulbCatalogue.published(words[0])
                    : BulbCatalogue.published(words[0], Voltage.parse(words[1]));
        } catch (IllegalArgumentException e) {
            throw file.bad(BULB, bulb, e.getMessage() + "; or " + NO_BULB + " to give the rating yourself");
        }
    }
}
