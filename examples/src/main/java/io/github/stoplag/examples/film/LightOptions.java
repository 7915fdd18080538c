package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Keys;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.quantity.LuminousIntensity;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Option;

/** How bright the lamps are, and by what they count as seen: a film tells shares of light, not candela. */
final class LightOptions {
    @Option(
            names = "--intensity",
            paramLabel = "[LAMP=]CD",
            description = "intensity of the lamps once fully lit, or of one, such as led=80 cd; default: 60 cd")
    private List<String> intensities = new ArrayList<>();

    @Option(
            names = "--criterion",
            paramLabel = "KEY=VALUE",
            description = "by what a lamp counts as seen, with the keys of a lamp-swap scenario, such as"
                    + " viewing.distance=80 m or tail.intensity=4 cd; once for each key")
    private List<String> keys = new ArrayList<>();

    /** Gives all criteria, as {@code lamp-swap} has them. */
    List<Criterion> criteria() {
        return Criterion.all(ScenarioFile.of("--criterion", String.join("\n", keys), Keys.vocabulary(Criterion.KEYS)));
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
