package io.github.stoplag.examples.lamps;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.LuminousIntensity;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * A lamp as a file describes it, before it is switched on.
 *
 * @param intensityKey the key that gives how bright it is
 * @param given that intensity, at the design voltage of a bulb
 * @param bulb the bulb, if it is a filament lamp: its light follows the supply
 * @param switchedOn its light on a supply
 */
public record LampInput(
        String intensityKey,
        LuminousIntensity given,
        Optional<FilamentLamp> bulb,
        Function<SupplyConditions, Light> switchedOn) {

    /**
     * A lamp's light after its circuit closes.
     *
     * @param onset how it rises
     * @param intensity how bright it is at the level 1 of its onset
     * @param notes what the intensity rests on
     */
    public record Light(OnsetCurve onset, LuminousIntensity intensity, List<String> notes) {
        public Light {
            notes = List.copyOf(notes);
        }

        /** Gives how bright it ends up, which for a film that ends early is less than its full intensity. */
        public double endCd() {
            return intensity.inCandela() * onset.relativeIntensity(Double.POSITIVE_INFINITY);
        }
    }

    /** A filament lamp with its intensity at the design voltage. */
    public static LampInput ofBulb(
            ScenarioFile file, FilamentInput bulb, LuminousIntensity atRated, String intensityKey) {
        List<String> keys = Stream.concat(
                        SupplyInput.KEYS.names().stream(), bulb.keys().stream().limit(1))
                .toList();
        return new LampInput(
                intensityKey,
                atRated,
                Optional.of(bulb.lamp()),
                supply -> filament(file.making(keys, () -> bulb.lamp().switchOn(supply)), atRated, bulb.origin()));
    }

    private static Light filament(FilamentOnset onset, LuminousIntensity atRated, String origin) {
        LuminousIntensity intensity = LuminousIntensity.candela(atRated.inCandela() * onset.relativeToRated());
        return new Light(
                onset,
                intensity,
                List.of(
                        origin + ".",
                        Text.digits(intensity.inCandela()) + " cd = " + atRated + " at design voltage, given, times "
                                + Text.digits(onset.relativeToRated()) + ", the model's light on this supply.",
                        Text.digits(onset.steadyCurrent().inAmperes()) + " A and "
                                + Text.digits(onset.steadyPower().inWatts()) + " W once hot, "
                                + Text.digits(onset.inrushCurrent().inAmperes()) + " A at switch-on."));
    }

    /** An LED lamp. */
    public static LampInput led(LedLamp lamp, LuminousIntensity intensity, String intensityKey) {
        Light light = new Light(lamp, intensity, List.of(intensity + ", given."));
        return new LampInput(intensityKey, intensity, Optional.empty(), supply -> light);
    }

    /** A filmed lamp: the film gives the shape of the rise, the file its intensity. */
    public static LampInput filmed(OnsetCurve lamp, LuminousIntensity intensity, String intensityKey) {
        Light light = filmed(lamp, intensity, intensity.toString(), intensityKey);
        return new LampInput(intensityKey, intensity, Optional.empty(), supply -> light);
    }

    /**
     * This lamp filmed: the film gives the shape of the rise; how bright it ends up stays what it was, for a bulb the
     * intensity at design voltage times the model's light on the supply.
     */
    public LampInput filmedAs(OnsetCurve lamp) {
        if (bulb.isEmpty()) {
            return filmed(lamp, given, intensityKey);
        }
        return new LampInput(intensityKey, given, bulb, supply -> {
            LuminousIntensity onSupply = switchedOn.apply(supply).intensity();
            String origin = Text.digits(onSupply.inCandela()) + " cd, which is " + given
                    + " at design voltage times the model's light on this supply,";
            return filmed(lamp, onSupply, origin, intensityKey);
        });
    }

    private static Light filmed(OnsetCurve lamp, LuminousIntensity intensity, String origin, String intensityKey) {
        double end = lamp.relativeIntensity(Double.POSITIVE_INFINITY);
        return new Light(
                lamp,
                intensity,
                List.of((end < 1 ? Text.digits(intensity.inCandela() * end) + " cd = " : "") + origin
                        + (end < 1 ? " times " + Text.digits(end) + ", where the film ends" : "")
                        + "; the candela are the scenario's " + intensityKey
                        + ", the film gives the shape of the rise only."));
    }
}
