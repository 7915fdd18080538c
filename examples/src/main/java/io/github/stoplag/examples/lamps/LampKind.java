package io.github.stoplag.examples.lamps;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A kind of lamp that a line of a file may describe: its word, then its fields separated by commas, as in {@code led 2
 * ms, 1 ms, 60 cd}. Every program that reads lamps reads this list: a new kind is one entry here.
 */
public enum LampKind {
    FILAMENT("design voltage, power drawn there, intensity there", "filament 13.5 V, 26 W, 60 cd", line -> {
        Voltage voltage = line.field(0, Key.voltage("voltage", null, Ranges.RATED_VOLTAGE));
        Power power = line.field(1, Key.power("power", null, Ranges.LAMP_POWER));
        LuminousIntensity intensity = line.intensity(2);
        return LampInput.ofBulb(
                line.file, FilamentInput.modelled(line.file, line.key, voltage, power), intensity, line.key);
    }),
    BULB("a bulb of the catalogue, intensity at its design voltage", "bulb P21W, 60 cd", line -> {
        LuminousIntensity intensity = line.intensity(1);
        return LampInput.ofBulb(
                line.file, FilamentInput.modelled(line.file, line.key, line.fields.get(0)), intensity, line.key);
    }),
    LED(
            "delay until current flows, rise from 10 % to 90 %, intensity",
            "led 2 ms, 1 ms, 60 cd", line -> {
                TimeSpan delay = line.field(0, Key.time("delay", null, Ranges.LED_DELAY));
                TimeSpan rise = line.field(1, Key.time("rise", null, Ranges.LED_RISE));
                LuminousIntensity intensity = line.intensity(2);
                return LampInput.led(
                        line.file.making(List.of(line.key), () -> LedLamp.of(delay, rise)), intensity, line.key);
            }),
    FILMED(
            "a table time_s,relative_brightness, or a folder of the program film and its lamp, intensity",
            "filmed lamp.csv, 60 cd",
            line -> {
                int last = line.fields.size() - 1;
                LuminousIntensity intensity = line.intensity(last);
                Optional<String> lamp = last == 1 ? Optional.empty() : Optional.of(line.fields.get(1));
                return LampInput.filmed(
                        FilmedInput.read(line.path(0), lamp, line.file.get(FilmedInput.ZERO_DELAY)),
                        intensity,
                        line.key);
            });

    private final String fields;
    private final String example;
    private final int count;

    @SuppressWarnings("ImmutableEnumChecker") // the readers hold no state
    private final Function<Line, LampInput> reader;

    LampKind(String fields, String example, Function<Line, LampInput> reader) {
        this.fields = fields;
        this.example = example;
        this.count = example.split(",").length;
        this.reader = reader;
    }

    /**
     * Reads the lamp of a key. Figures without a kind are a filament's, as plans have always had them.
     *
     * @throws InputException if there is no such kind or a field cannot be used
     */
    public static LampInput read(ScenarioFile file, String key) {
        String text = file.text(key, null);
        String word = text.split("\\s", 2)[0];
        boolean figures = Character.isDigit(text.charAt(0));
        LampKind kind = figures
                ? FILAMENT
                : Stream.of(values())
                        .filter(known -> known.word().equalsIgnoreCase(word))
                        .findFirst()
                        .orElseThrow(() -> file.bad(key, text, "must start with one of " + words()));
        String rest = figures ? text : text.substring(word.length());
        List<String> fields = Stream.of(rest.split(",", -1)).map(String::strip).toList();
        boolean named = kind == FILMED && fields.size() == kind.count + 1;
        if ((fields.size() != kind.count && !named) || fields.contains("")) {
            throw file.bad(key, text, "must be " + kind.fields + ", as in: " + kind.example);
        }
        return kind.reader.apply(new Line(file, key, fields));
    }

    /** Gives its word in a file. */
    public String word() {
        return example.substring(0, example.indexOf(' '));
    }

    /** Gives a line of its kind. */
    String example() {
        return example;
    }

    private static String words() {
        return Stream.of(values()).map(LampKind::word).collect(Collectors.joining(", "));
    }

    /** The fields of one line. */
    private record Line(ScenarioFile file, String key, List<String> fields) {
        <T> T field(int at, Key<T> kind) {
            return file.parse(kind.named(key), fields.get(at));
        }

        LuminousIntensity intensity(int at) {
            return field(at, Key.intensity("intensity", null, Ranges.SHINING));
        }

        /** A file beside this one. */
        Path path(int at) {
            try {
                return Path.of(file.name()).resolveSibling(fields.get(at));
            } catch (InvalidPathException e) {
                throw file.bad(key, fields.get(at), "not a file's name");
            }
        }
    }
}
