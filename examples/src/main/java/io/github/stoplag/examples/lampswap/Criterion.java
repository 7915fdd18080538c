package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.sight.Atmosphere;
import io.github.stoplag.sight.BackgroundLuminance;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.Detector;
import io.github.stoplag.sight.DetectorChooser;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.LampSignal;
import io.github.stoplag.sight.ShareOfFinal;
import io.github.stoplag.sight.ViewingConditions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A way to say when a lamp is seen.
 *
 * @param word its name in the scenario file
 * @param meaning its name in tables
 * @param detector how it decides
 * @param tail the tail lamp that is lit already, 0 cd for none
 */
record Criterion(String word, String meaning, Detector detector, LuminousIntensity tail) {
    private static final int LONGEST_BRIEF = 65;
    private static final LuminousIntensity DARK = LuminousIntensity.candela(0);
    private static final String EYE = "eye";
    private static final String SHARE = "share";
    private static final String DAY = "day";
    private static final String DUSK = "dusk";
    private static final String NIGHT = "night";
    private static final String TAIL = "tail";
    /** All of them; the one used for comparison comes first, or second if it is the one asked for. */
    private static final List<String> WORDS = List.of(EYE, SHARE, DAY, DUSK, NIGHT, TAIL);

    /**
     * Reads the criteria of a scenario.
     *
     * @return all of them, the one the scenario asks for first
     * @throws InputException if a value is impossible
     */
    static List<Criterion> all(ScenarioFile file) {
        String asked = file.word(Key.DETECTOR, EYE, WORDS);
        LuminousIntensity tail = file.get(Key.TAIL_INTENSITY);
        Distance distance = file.get(Key.VIEWING_DISTANCE);
        Atmosphere air = file.find(Key.VISIBILITY)
                .map(visibility -> Atmosphere.visibility(visibility, Atmosphere.Convention.FIVE_PER_CENT))
                .orElse(Atmosphere.CLEAR);
        List<Criterion> all = new ArrayList<>();
        all.add(new Criterion(
                EYE,
                "eye with a threshold in candela",
                IntegratingEye.of(file.get(Key.EYE_TIME), file.get(Key.EYE_THRESHOLD)),
                DARK));
        all.add(new Criterion(SHARE, "share of final light", ShareOfFinal.of(file.get(Key.SHARE)), DARK));
        all.add(viewed(DAY, "bright day", BackgroundLuminance.DAY, distance, air));
        all.add(viewed(DUSK, "dusk", BackgroundLuminance.DUSK, distance, air));
        all.add(viewed(NIGHT, "night, tail lamp dark", BackgroundLuminance.NIGHT, distance, air));
        ViewingConditions lit =
                conditions(BackgroundLuminance.NIGHT, distance, air).withTailLit();
        all.add(new Criterion(TAIL, "night, tail lamp lit", DetectorChooser.choose(lit), tail));
        all.sort(Comparator.comparing(criterion -> !criterion.word.equals(asked)));
        return List.copyOf(all);
    }

    private static Criterion viewed(
            String word, String meaning, BackgroundLuminance background, Distance distance, Atmosphere air) {
        return new Criterion(word, meaning, DetectorChooser.choose(conditions(background, distance, air)), DARK);
    }

    private static ViewingConditions conditions(BackgroundLuminance background, Distance distance, Atmosphere air) {
        return ViewingConditions.of(background.luminance(), distance).through(air);
    }

    /** Says when a lamp is seen that comes on where the tail lamp of this criterion is lit. */
    Detection detect(LampSignal signal) {
        return detector.detect(tail.inCandela() > 0 ? signal.withTailLit(tail) : signal);
    }

    String criterion() {
        return detector.criterion();
    }

    /** Gives the keys that its moment depends on most. */
    List<String> keys() {
        return switch (word) {
            case EYE -> List.of(Key.EYE_TIME.name(), Key.EYE_THRESHOLD.name());
            case SHARE -> List.of(Key.SHARE.name());
            case TAIL -> List.of(Key.VIEWING_DISTANCE.name(), Key.VISIBILITY.name(), Key.TAIL_INTENSITY.name());
            default -> List.of(Key.VIEWING_DISTANCE.name(), Key.VISIBILITY.name());
        };
    }

    /** Names it with its parameters if they fit into a line, else in words. */
    String brief() {
        return criterion().length() <= LONGEST_BRIEF ? criterion() : meaning;
    }
}
