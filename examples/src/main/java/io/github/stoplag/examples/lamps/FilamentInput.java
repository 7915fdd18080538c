package io.github.stoplag.examples.lamps;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.Keys;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.lamp.BulbCatalogue;
import io.github.stoplag.lamp.BulbFilament;
import io.github.stoplag.lamp.BulbRating;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * The filament bulb of a scenario: a bulb of the catalogue, or what it draws at its design voltage.
 *
 * @param lamp the bulb
 * @param mostPower the most a bulb of its rating draws at its design voltage
 * @param mostFrom where that comes from
 * @param origin where its rating comes from
 * @param keys the keys that decide it, that of its design voltage first
 */
public record FilamentInput(FilamentLamp lamp, Power mostPower, String mostFrom, String origin, List<String> keys) {
    private static final String NO_BULB = "none";

    /** What a bulb is rated. */
    public static final Keys RATING = new Keys();

    private static final String BULB = RATING.add("filament.bulb");
    private static final Key<Voltage> DESIGN_VOLTAGE =
            RATING.add(Key.voltage("filament.design-voltage", null, Ranges.RATED_VOLTAGE));
    private static final Key<Power> DESIGN_POWER =
            RATING.add(Key.power("filament.design-power", null, Ranges.LAMP_POWER));

    /** What the model of a bulb can be told beyond its rating. */
    public static final Keys MODEL = new Keys();

    private static final Key<Temperature> TEMPERATURE =
            MODEL.add(Key.kelvin("filament.temperature", "model", 2200, 3200));
    private static final Key<LuminousFlux> FLUX = MODEL.add(Key.flux("filament.flux", "model", 0.5, 20_000));
    private static final Key<Double> GAS_LOSS = MODEL.add(Key.ratio("filament.gas-loss-share", "model", 0, 0.5));
    private static final Key<Double> COIL_FACTOR = MODEL.add(Key.ratio("filament.coil-factor", "model", 0.5, 1));

    public static final String RATING_UNUSED = BULB + " names a bulb of the catalogue, which has its own rating";

    public FilamentInput {
        keys = List.copyOf(keys);
    }

    /**
     * Reads a bulb by its keys: its rating alone.
     *
     * @throws InputException if no such bulb can be made
     */
    public static FilamentInput rated(ScenarioFile file) {
        return of(file, UnaryOperator.identity());
    }

    /**
     * Reads a bulb by its keys: its rating, and what the file tells its model.
     *
     * @throws InputException if no such bulb can be made
     */
    public static FilamentInput modelled(ScenarioFile file) {
        return of(file, lamp -> told(file, lamp));
    }

    private static FilamentInput of(ScenarioFile file, UnaryOperator<FilamentLamp.Builder> more) {
        String bulb = file.text(BULB, NO_BULB);
        return bulb.equals(NO_BULB)
                ? given(
                        file,
                        file.get(DESIGN_VOLTAGE),
                        file.get(DESIGN_POWER),
                        List.of(DESIGN_VOLTAGE.name(), DESIGN_POWER.name()),
                        more)
                : catalogued(file, BULB, bulb, more);
    }

    /** A bulb of which the design voltage and the power drawn there are known. */
    static FilamentInput modelled(ScenarioFile file, String key, Voltage voltage, Power power) {
        return given(file, voltage, power, List.of(key), lamp -> told(file, lamp));
    }

    /** A bulb of the catalogue. */
    static FilamentInput modelled(ScenarioFile file, String key, String bulb) {
        return catalogued(file, key, bulb, lamp -> told(file, lamp));
    }

    private static FilamentLamp.Builder told(ScenarioFile file, FilamentLamp.Builder lamp) {
        file.find(TEMPERATURE).ifPresent(lamp::filamentTemperature);
        file.find(FLUX).ifPresent(lamp::ratedFlux);
        file.find(GAS_LOSS).ifPresent(lamp::gasLossShare);
        file.find(COIL_FACTOR).ifPresent(lamp::coilFactor);
        return lamp;
    }

    private static FilamentInput given(
            ScenarioFile file,
            Voltage voltage,
            Power power,
            List<String> keys,
            UnaryOperator<FilamentLamp.Builder> more) {
        FilamentLamp lamp = file.making(
                withModel(keys),
                () -> more.apply(FilamentLamp.builder(voltage, power)).build());
        double tolerance = BulbFilament.usualToleranceRatio(power);
        return new FilamentInput(
                lamp,
                Power.watts(power.inWatts() * (1 + tolerance)),
                "+" + Numbers.text(100 * tolerance) + " %, as older editions of UN R37 allow (assumed)",
                power + " at " + voltage + ", given",
                keys);
    }

    private static FilamentInput catalogued(
            ScenarioFile file, String key, String bulb, UnaryOperator<FilamentLamp.Builder> more) {
        BulbRating rating = published(file, key, bulb);
        FilamentLamp lamp = file.making(
                withModel(List.of(key)), () -> more.apply(rating.majorLamp()).build());
        return new FilamentInput(
                lamp,
                rating.major().mostPower(),
                "most that " + rating + " draws, " + rating.major().powerRule(),
                rating + ", " + rating.major().power() + " (" + rating.major().powerRule() + ") and "
                        + rating.major().clearFlux() + " at " + rating.major().testVoltage() + ": "
                        + rating.major().source(),
                List.of(key));
    }

    private static List<String> withModel(List<String> keys) {
        return Stream.concat(keys.stream(), MODEL.names().stream()).toList();
    }

    /** Finds {@code P21W} for 12 V, or {@code P21/5W 24 V}. */
    private static BulbRating published(ScenarioFile file, String key, String bulb) {
        String[] words = bulb.split("\\s+", 2);
        try {
            return words.length == 1
                    ? BulbCatalogue.published(words[0])
                    : BulbCatalogue.published(words[0], Voltage.parse(words[1]));
        } catch (IllegalArgumentException e) {
            String otherwise = key.equals(BULB) ? "; or " + NO_BULB + " to give the rating yourself" : "";
            throw file.bad(key, bulb, e.getMessage() + otherwise);
        }
    }
}
