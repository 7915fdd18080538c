package io.github.stoplag.examples.lamps;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.SwitchingPattern;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
            }),
    SET(
            "lamps that signal together, joined by +, each with how many of it there are and how much later its circuit closes",
            "set 2 x led 40 ms, 30 ms, 40 cd + led 2 ms, 1 ms, 60 cd after 5 ms",
            line -> SetInput.of(parts(line), line.key));

    private static final Pattern PART = Pattern.compile("(?:([1-9]) x )?(.+?)(?: after (\\S+ \\S+))?");
    private static final Pattern FLASHING = Pattern.compile("(.+?) flashing (\\S+ Hz) for (\\S+ \\S+)");
    private static final int MOST_PARTS = 9;
    private static final double DUTY = 0.5;

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
        return read(file, key, file.text(key, null)).input;
    }

    private static OfKind read(ScenarioFile file, String key, String whole) {
        Matcher flashing = FLASHING.matcher(whole);
        boolean flashes = !whole.toLowerCase(Locale.ROOT).startsWith(SET.word() + " ") && flashing.matches();
        String text = flashes ? flashing.group(1) : whole;
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
        boolean counted = kind == SET || named || fields.size() == kind.count;
        if (!counted || fields.contains("")) {
            throw file.bad(key, text, "must be " + kind.fields + ", as in: " + kind.example);
        }
        LampInput lamp = kind.reader.apply(new Line(file, key, rest.strip(), fields));
        return new OfKind(kind, flashes ? flashing(file, key, kind, lamp, flashing) : lamp);
    }

    private static LampInput flashing(ScenarioFile file, String key, LampKind kind, LampInput lamp, Matcher words) {
        if (kind == FILMED) {
            throw file.bad(key, words.group(), "a filmed lamp has its own course and cannot be made to flash");
        }
        double hz = file.parse(Key.number(key, null, 0.5, 20, "Hz"), words.group(2));
        TimeSpan until = file.parse(Key.time(key, null, 0.01, 30), words.group(3));
        return lamp.flashing(SwitchingPattern.flashing(hz, DUTY), until);
    }

    private static List<SetInput.Part> parts(Line line) {
        List<SetInput.Part> parts = new ArrayList<>();
        for (String text : line.rest.split("\\s\\+(\\s|$)", -1)) {
            Matcher words = PART.matcher(text.strip());
            if (!words.matches() || text.strip().startsWith(SET.word() + " ")) {
                throw line.file.bad(line.key, text, "must be " + SET.fields + ", as in: " + SET.example);
            }
            OfKind lamp = read(line.file, line.key, words.group(2));
            TimeSpan after = words.group(3) == null
                    ? TimeSpan.seconds(0)
                    : line.file.parse(Key.time(line.key, null, 0, 10), words.group(3));
            int count = words.group(1) == null ? 1 : Integer.parseInt(words.group(1));
            for (int i = 0; i < count; i++) {
                parts.add(new SetInput.Part(lamp.kind.word() + " " + (parts.size() + 1), lamp.input, after));
            }
        }
        if (parts.size() > MOST_PARTS) {
            throw line.file.bad(
                    line.key, line.rest, "a set must have at most " + MOST_PARTS + " lamps, got " + parts.size());
        }
        return parts;
    }

    private record OfKind(LampKind kind, LampInput input) {}

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
    private record Line(ScenarioFile file, String key, String rest, List<String> fields) {
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
