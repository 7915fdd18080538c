package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.sight.BackgroundLuminance;
import io.github.stoplag.sight.Detector;
import io.github.stoplag.sight.DetectorChooser;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.ShareOfFinal;
import io.github.stoplag.sight.ViewingConditions;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Option;

/** By what a lamp counts as seen, and how bright the lamps are: a film tells shares of light, not candela. */
final class FilmCriteria {
    private static final double SHARE = 0.1;
    private static final LuminousIntensity DARK = LuminousIntensity.candela(0);

    @Option(
            names = "--intensity",
            paramLabel = "[LAMP=]CD",
            description = "intensity of the lamps once fully lit, or of one, such as led=80 cd; default: 60 cd")
    private List<String> intensities = new ArrayList<>();

    @Option(
            names = "--tail-intensity",
            paramLabel = "CD",
            defaultValue = "6 cd",
            description = "intensity of the lit tail lamp in the criterion \"tail\"; default: ${DEFAULT-VALUE}")
    private String tail = "";

    @Option(
            names = "--viewing-distance",
            paramLabel = "LENGTH",
            defaultValue = "50 m",
            description = "how far the viewer is; default: ${DEFAULT-VALUE}")
    private String distance = "";

    /**
     * One of them.
     *
     * @param word its name in tables
     * @param meaning what it stands for
     * @param detector how it decides
     * @param tail the lit tail lamp beside it
     */
    record Criterion(String word, String meaning, Detector detector, LuminousIntensity tail) {}

    List<Criterion> all() {
        try {
            Distance far = Distance.parse(distance);
            LuminousIntensity tailLamp = LuminousIntensity.parse(tail);
            IntegratingEye eye = IntegratingEye.of(LaboratoryLamps.EYE_TIME_CONSTANT, LaboratoryLamps.EYE_THRESHOLD);
            ViewingConditions night = ViewingConditions.of(BackgroundLuminance.NIGHT.luminance(), far);
            return List.of(
                    new Criterion("eye", "eye with a threshold in candela", eye, DARK),
                    new Criterion("share", "10 % of the final light", ShareOfFinal.of(SHARE), DARK),
                    chosen("day", "bright day", ViewingConditions.of(BackgroundLuminance.DAY.luminance(), far), DARK),
                    chosen("dusk", "dusk", ViewingConditions.of(BackgroundLuminance.DUSK.luminance(), far), DARK),
                    chosen("night", "night, tail lamp dark", night, DARK),
                    chosen("tail", "night, tail lamp lit", night.withTailLit(), tailLamp));
        } catch (IllegalArgumentException e) {
            throw new InputException("--viewing-distance or --tail-intensity: " + e.getMessage(), e);
        }
    }

    private static Criterion chosen(String word, String meaning, ViewingConditions view, LuminousIntensity tailLamp) {
        return new Criterion(word, meaning, DetectorChooser.choose(view), tailLamp);
    }

    /** Gives the intensity of each lamp. */
    Map<String, LuminousIntensity> intensities(List<String> lamps) {
        Map<String, LuminousIntensity> given = new HashMap<>();
        lamps.forEach(lamp -> given.put(lamp, LuminousIntensity.candela(60)));
        for (String text : intensities) {
            int sign = text.indexOf('=');
            String lamp = sign < 0 ? "" : text.substring(0, sign).strip();
            if (sign >= 0 && !lamps.contains(lamp)) {
                throw new InputException(
                        "--intensity: there is no lamp \"" + lamp + "\"; the film has " + String.join(", ", lamps));
            }
            try {
                LuminousIntensity value =
                        LuminousIntensity.parse(text.substring(sign + 1).strip());
                (sign < 0 ? lamps : List.of(lamp)).forEach(name -> given.put(name, value));
            } catch (IllegalArgumentException e) {
                throw new InputException("--intensity: " + e.getMessage(), e);
            }
        }
        return given;
    }
}
