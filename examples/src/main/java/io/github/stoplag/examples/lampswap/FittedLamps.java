package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.Keys;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lamps.FilamentInput;
import io.github.stoplag.examples.lamps.FilmedCurves;
import io.github.stoplag.examples.lamps.FilmedInput;
import io.github.stoplag.examples.lamps.LampInput;
import io.github.stoplag.examples.lamps.LampKind;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * The lamps of a scenario: those of the keys {@code filament...} and {@code led...}, each if the file has one of its
 * keys, and {@code lamp.1}, {@code lamp.2}, ... A file without any {@code lamp.N} compares the former two, as files
 * always have.
 *
 * @param lamps the lamp fitted now, then the candidates
 */
record FittedLamps(List<Named> lamps) {
    private static final String FILM = ".film";
    static final Keys FILAMENT_KEYS = new Keys();
    private static final Key<LuminousIntensity> FILAMENT_INTENSITY =
            FILAMENT_KEYS.add(Key.intensity("filament.intensity", null, Ranges.SHINING));

    static {
        FilamentInput.RATING.names().forEach(FILAMENT_KEYS::add);
        FILAMENT_KEYS.add("filament" + FILM);
    }

    static final Keys LED_KEYS = new Keys();
    private static final Key<TimeSpan> LED_DELAY = LED_KEYS.add(Key.time("led.driver-delay", "0 s", Ranges.LED_DELAY));
    private static final Key<TimeSpan> LED_RISE = LED_KEYS.add(Key.time("led.rise-time", null, Ranges.LED_RISE));
    private static final Key<LuminousIntensity> LED_INTENSITY =
            LED_KEYS.add(Key.intensity("led.intensity", null, Ranges.SHINING));

    static {
        LED_KEYS.add("led" + FILM);
    }

    static final Keys KEYS = new Keys();
    private static final String PRESENT = KEYS.add("lamp.present");
    private static final String NAME = ".name";
    private static final Pattern NUMBERED = Pattern.compile("lamp\\.([1-9][0-9]?)(\\.name|\\.film)?");
    private static final int LONGEST_NAME = 16;
    private static final int MOST = 99;

    /** A lamp with its name in tables. */
    record Named(String name, LampInput input) {}

    FittedLamps {
        lamps = List.copyOf(lamps);
    }

    /** Says whether a key is that of a numbered lamp or its name. */
    static boolean numbered(String key) {
        return NUMBERED.matcher(key).matches();
    }

    /**
     * Reads the lamps, the one fitted now first.
     *
     * @throws InputException if one cannot be made, or two have the same name
     */
    static FittedLamps of(ScenarioFile file) {
        List<Named> lamps = new ArrayList<>();
        List<String> words = new ArrayList<>();
        boolean alone = IntStream.rangeClosed(1, MOST).noneMatch(number -> file.has("lamp." + number));
        if (alone || FILAMENT_KEYS.names().stream().anyMatch(file::has)) {
            words.add("filament");
            lamps.add(new Named("filament", filmed(file, "filament", filament(file))));
        }
        if (alone || LED_KEYS.names().stream().anyMatch(file::has)) {
            words.add("led");
            lamps.add(new Named("LED", filmed(file, "led", led(file))));
        }
        for (int number = 1; number <= MOST; number++) {
            String key = "lamp." + number;
            if (file.has(key)) {
                words.add(String.valueOf(number));
                lamps.add(new Named(name(file, key), filmed(file, key, LampKind.read(file, key))));
            }
        }
        List<String> names =
                lamps.stream().map(lamp -> lamp.name.toLowerCase(Locale.ROOT)).toList();
        for (int i = 0; i < names.size(); i++) {
            if (names.indexOf(names.get(i)) != i) {
                throw file.bad("lamp." + words.get(i) + NAME, lamps.get(i).name, "another lamp has this name");
            }
        }
        if (lamps.size() < 2) {
            throw new InputException(file.name() + ": lamp.1: must be two lamps or more to compare, got 1");
        }
        lamps.add(0, lamps.remove(words.indexOf(file.word(PRESENT, words.get(0), words))));
        return new FittedLamps(lamps);
    }

    /** Gives a lamp the rise that a film shows of it, if the file names one; its intensity stays what it was. */
    private static LampInput filmed(ScenarioFile file, String lamp, LampInput input) {
        String key = lamp + FILM;
        return file.has(key) ? input.filmedAs(FilmedInput.beside(file, key)) : input;
    }

    private static String name(ScenarioFile file, String key) {
        String name = file.has(key + NAME) ? file.text(key + NAME, null) : key.replace('.', ' ');
        if (name.length() > LONGEST_NAME) {
            throw file.bad(key + NAME, name, "must have 1 to " + LONGEST_NAME + " characters, got " + name.length());
        }
        return name;
    }

    private static LampInput filament(ScenarioFile file) {
        FilamentInput bulb = FilamentInput.modelled(file);
        return LampInput.ofBulb(file, bulb, file.get(FILAMENT_INTENSITY), FILAMENT_INTENSITY.name());
    }

    private static LampInput led(ScenarioFile file) {
        LedLamp lamp = file.making(
                List.of(LED_DELAY.name(), LED_RISE.name()), () -> LedLamp.of(file.get(LED_DELAY), file.get(LED_RISE)));
        return LampInput.led(lamp, file.get(LED_INTENSITY), LED_INTENSITY.name());
    }

    /** Puts a filmed lamp in the place of the one fitted now, with the intensity given for that one. */
    FittedLamps withFilmed(FilmedCurves film) {
        List<Named> changed = new ArrayList<>(lamps);
        changed.set(0, new Named("measured", lamps.get(0).input.filmedAs(film)));
        return new FittedLamps(changed);
    }

    /** Says whether one of the lamps follows its supply. */
    boolean followSupply() {
        return lamps.stream().anyMatch(lamp -> lamp.input.followsSupply());
    }
}
