package io.github.stoplag.examples.lamps;

import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.Keys;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Atmosphere;
import io.github.stoplag.sight.BackgroundLuminance;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.Detector;
import io.github.stoplag.sight.DetectorChooser;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.LampSet;
import io.github.stoplag.sight.LampSignal;
import io.github.stoplag.sight.ShareOfFinal;
import io.github.stoplag.sight.Threshold;
import io.github.stoplag.sight.ViewingConditions;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * A way to say when a lamp is seen.
 *
 * @param word its name in the file
 * @param meaning its name in tables
 * @param keys the keys that its moment depends on most
 * @param detector how it decides
 * @param tail the tail lamp that is lit already, 0 cd for none
 */
public record Criterion(String word, String meaning, List<String> keys, Detector detector, LuminousIntensity tail) {
    /** The keys of all criteria. */
    public static final Keys KEYS = new Keys();

    public static final String DETECTOR = KEYS.add("detector");
    private static final Key<Double> SHARE = KEYS.add(Key.ratio("detector.share.level", "10 %", 0.001, 0.999));
    private static final Key<TimeSpan> EYE_TIME =
            KEYS.add(Key.time("detector.eye.time-constant", LaboratoryLamps.EYE_TIME_CONSTANT.toString(), 0.001, 2));
    private static final Key<LuminousIntensity> EYE_THRESHOLD =
            KEYS.add(Key.intensity("detector.eye.threshold", LaboratoryLamps.EYE_THRESHOLD.toString(), Ranges.SHINING));
    private static final Key<Distance> DISTANCE = KEYS.add(Key.distance("viewing.distance", "50 m", 1, 2000));
    private static final Key<Distance> VISIBILITY = KEYS.add(Key.distance("viewing.visibility", "model", 10, 100_000));
    private static final Key<LuminousIntensity> TAIL =
            KEYS.add(Key.intensity("tail.intensity", "6 cd", Ranges.SHINING));

    /** Why the moments of different criteria are not of one kind. */
    public static final String SCALES =
            "Not one scale: \"cd\" is a threshold of the lamp's intensity, good for one distance;"
                    + " \"lamp\" looks at the lamp alone, not at an eye; \"lx\" is a threshold of light at the eye at the"
                    + " viewing distance. Compare lamps within a row.";

    private static final int LONGEST_BRIEF = 65;
    /** Where lamps half a metre apart are far from merging; how far they are decides nothing else. */
    private static final Distance APART_AT = Distance.metres(30);

    /**
     * All of them, the one used unless told otherwise first, then the one that charts compare it with. A new criterion
     * is one entry here, and its keys above.
     */
    private static final List<Kind> KINDS = List.of(
            new Kind(
                    "eye",
                    "eye with a threshold in candela",
                    List.of(EYE_TIME, EYE_THRESHOLD),
                    file -> IntegratingEye.of(file.get(EYE_TIME), file.get(EYE_THRESHOLD))),
            new Kind("share", "share of final light", List.of(SHARE), file -> ShareOfFinal.of(file.get(SHARE))),
            viewed("day", "bright day", BackgroundLuminance.DAY),
            viewed("dusk", "dusk", BackgroundLuminance.DUSK),
            viewed("night", "night, tail lamp dark", BackgroundLuminance.NIGHT),
            new Kind(
                    "tail",
                    "night, tail lamp lit",
                    List.of(DISTANCE, VISIBILITY, TAIL),
                    file -> DetectorChooser.choose(
                            conditions(file, BackgroundLuminance.NIGHT).withTailLit())));

    private static final List<String> WORDS = KINDS.stream().map(Kind::word).toList();
    /** What a first look needs beside the criterion that counts: by day, and by night as vehicles are lit. */
    private static final List<String> FIRST_LOOK = List.of("day", "tail");

    /** An entry of the list. */
    private record Kind(String word, String meaning, List<Key<?>> keys, Function<ScenarioFile, Detector> detector) {
        Criterion read(ScenarioFile file) {
            LuminousIntensity tail = keys.contains(TAIL) ? file.get(TAIL) : LuminousIntensity.candela(0);
            return new Criterion(word, meaning, keys.stream().map(Key::name).toList(), detector.apply(file), tail);
        }
    }

    private static Kind viewed(String word, String meaning, BackgroundLuminance background) {
        return new Kind(
                word,
                meaning,
                List.of(DISTANCE, VISIBILITY),
                file -> DetectorChooser.choose(conditions(file, background)));
    }

    private static ViewingConditions conditions(ScenarioFile file, BackgroundLuminance background) {
        Atmosphere air = file.find(VISIBILITY)
                .map(visibility -> Atmosphere.visibility(visibility, Atmosphere.Convention.FIVE_PER_CENT))
                .orElse(Atmosphere.CLEAR);
        return ViewingConditions.of(background.luminance(), file.get(DISTANCE)).through(air);
    }

    /**
     * Reads the criteria of a file.
     *
     * @return all of them, the one the file asks for first
     * @throws io.github.stoplag.examples.file.InputException if a value is impossible
     */
    public static List<Criterion> all(ScenarioFile file) {
        String asked = file.word(DETECTOR, WORDS.get(0), WORDS);
        return KINDS.stream()
                .sorted(Comparator.comparing(kind -> !kind.word.equals(asked)))
                .map(kind -> kind.read(file))
                .toList();
    }

    /**
     * Reads the criterion that a file asks for, and none of the others.
     *
     * @throws io.github.stoplag.examples.file.InputException if a value is impossible
     */
    public static Criterion asked(ScenarioFile file) {
        String asked = file.word(DETECTOR, WORDS.get(0), WORDS);
        return KINDS.stream()
                .filter(kind -> kind.word.equals(asked))
                .findFirst()
                .orElseThrow()
                .read(file);
    }

    /**
     * Reads the eye with a threshold in the short form of one key: {@code 0.1 s, 3 cd}.
     *
     * @throws io.github.stoplag.examples.file.InputException if a value is impossible
     */
    public static Criterion eye(ScenarioFile file, String key) {
        List<String> figures = file.list(key);
        if (figures.size() != 2) {
            throw file.bad(key, String.join(", ", figures), "must be time constant and threshold, as in: 0.1 s, 3 cd");
        }
        Kind eye = KINDS.get(0);
        Detector detector = IntegratingEye.of(
                file.parse(EYE_TIME.named(key), figures.get(0)), file.parse(EYE_THRESHOLD.named(key), figures.get(1)));
        return new Criterion(eye.word, eye.meaning, List.of(key), detector, LuminousIntensity.candela(0));
    }

    /** Gives the places of the criteria for a first look: the one that counts, then day and night. */
    public static List<Integer> firstLook(List<Criterion> criteria) {
        return Stream.iterate(0, i -> i < criteria.size(), i -> i + 1)
                .filter(i -> i == 0 || FIRST_LOOK.contains(criteria.get(i).word))
                .toList();
    }

    /** Says when a lamp is seen that comes on where the tail lamp of this criterion is lit. */
    public Detection detect(LampSignal signal) {
        return detector.detect(tail.inCandela() > 0 ? signal.withTailLit(tail) : signal);
    }

    /** Says when several lamps are seen that come on together, each beside a tail lamp where this criterion has one. */
    public LampSet.Outcome detect(LampSet lamps) {
        LampSet viewed = tail.inCandela() > 0
                ? LampSet.of(lamps.members().stream()
                        .map(m -> new LampSet.Member(
                                m.name(), m.signal().withTailLit(tail), m.delay(), m.lateralM(), m.heightM()))
                        .toList())
                : lamps;
        return viewed.detect(detector, APART_AT);
    }

    /** Says how much a mixed set keeps of what it would gain by its first lamp in every place. */
    public Optional<LampSet.Kept> kept(LampSet lamps) {
        return lamps.kept(detector, APART_AT);
    }

    /** The eye that sees a lamp go out: that of the first criterion, which must tell a share of the light too. */
    public static Detector fallEye(ScenarioFile file) {
        return IntegratingEye.of(
                file.get(EYE_TIME),
                Threshold.intensity(file.get(EYE_THRESHOLD)).withContrast(Threshold.SIGNAL_LAMP_CONTRAST));
    }

    /** The tail lamp that burns at night. */
    public static LuminousIntensity tailAtNight(ScenarioFile file) {
        return file.get(TAIL);
    }

    public String criterion() {
        return detector.criterion();
    }

    /** Names it with the scale of its threshold, see {@link #SCALES}. */
    public String scaled() {
        String withoutDistance = detector instanceof ShareOfFinal ? "lamp" : "cd";
        return (keys.contains(DISTANCE.name()) ? "lx" : withoutDistance) + ": " + meaning;
    }

    /** Names it with its parameters if they fit into a line, else in words. */
    public String brief() {
        return criterion().length() <= LONGEST_BRIEF ? criterion() : meaning;
    }
}
