package io.github.stoplag.examples.file;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.KeyValues;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The lines {@code key = value} of a scenario file, each key known and given once. Every complaint names file, key and
 * value.
 */
public final class ScenarioFile {
    private static final int LONGEST_TEXT = 1000;
    private final String name;
    private final Map<String, String> given;
    private final List<Used> used = new ArrayList<>();

    /**
     * A value that the scenario was made of.
     *
     * @param key the key
     * @param value its text
     * @param isDefault whether the file did not give it
     */
    public record Used(String key, String value, boolean isDefault) {}

    /**
     * The keys that a kind of scenario may have.
     *
     * @param has whether a key is one of them
     * @param listed all of them in words
     */
    public record Vocabulary(Predicate<String> has, String listed) {
        /**
         * Makes it of a list.
         *
         * @param keys the keys
         * @return the vocabulary
         */
        public static Vocabulary of(List<String> keys) {
            return new Vocabulary(keys::contains, String.join(", ", keys));
        }
    }

    private ScenarioFile(String name, Map<String, String> given) {
        this.name = name;
        this.given = given;
    }

    /**
     * Reads a file that comes with the programs.
     *
     * @param resource its name
     * @param vocabulary the keys it may have
     * @return its lines
     */
    public static ScenarioFile shipped(String resource, Vocabulary vocabulary) {
        return of(resource, Resource.text(resource), vocabulary);
    }

    /**
     * Reads a file.
     *
     * @param path where it is
     * @param vocabulary the keys it may have
     * @return its lines
     * @throws InputException if it is missing, not text, or has an unknown or repeated key
     */
    public static ScenarioFile read(Path path, Vocabulary vocabulary) {
        try (Reader reader = TextFile.open(path)) {
            return parse(path.toString(), reader, vocabulary);
        } catch (IOException e) {
            throw TextFile.unreadable(path, e);
        }
    }

    /**
     * Reads lines that were a file's, on another machine say.
     *
     * @param name the name they go by in complaints
     * @param text the lines
     * @param vocabulary the keys they may have
     * @return the lines
     * @throws InputException if they have an unknown or repeated key
     */
    public static ScenarioFile of(String name, String text, Vocabulary vocabulary) {
        try {
            return parse(name, new StringReader(text), vocabulary);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ScenarioFile parse(String name, Reader reader, Vocabulary vocabulary) throws IOException {
        try {
            return of(name, KeyValues.read(reader), vocabulary);
        } catch (IllegalArgumentException e) {
            throw new InputException(name + ": " + e.getMessage(), e);
        }
    }

    /**
     * Takes lines that were read already.
     *
     * @param name the name they go by in complaints
     * @param given the keys and their values
     * @param vocabulary the keys they may have
     * @return the lines
     * @throws InputException if they have an unknown key
     */
    public static ScenarioFile of(String name, NavigableMap<String, String> given, Vocabulary vocabulary) {
        given.forEach((key, value) -> {
            if (!vocabulary.has.test(key)) {
                throw new InputException(
                        name + ": " + key + " = " + value + ": unknown key; the keys are " + vocabulary.listed);
            }
        });
        return new ScenarioFile(name, new TreeMap<>(given));
    }

    /**
     * Gives the file's name.
     *
     * @return the path or resource it was read from
     */
    public String name() {
        return name;
    }

    /**
     * Says whether the file gives a key.
     *
     * @param key the key
     * @return true if it does
     */
    public boolean has(String key) {
        return given.containsKey(key);
    }

    /** Gives the values asked for so far, in the order of asking. */
    public List<Used> used() {
        return List.copyOf(used);
    }

    /** Gives a quantity that must be there or has a default. */
    public <T> T get(Key<T> key) {
        return parse(key, text(key.name(), key.fallback()));
    }

    /** Gives a quantity, or nothing if the file leaves it to the model. */
    public <T> Optional<T> find(Key<T> key) {
        String text = text(key.name(), key.fallback());
        return text.equals("model") ? Optional.empty() : Optional.of(parse(key, text));
    }

    /**
     * Reads one text as the value of a key.
     *
     * @param key the key
     * @param text the text
     * @param <T> the quantity
     * @return the value
     * @throws InputException if it is malformed or out of range
     */
    public <T> T parse(Key<T> key, String text) {
        T value;
        try {
            value = key.parse().apply(text);
        } catch (IllegalArgumentException e) {
            throw bad(key.name(), text, e.getMessage() + " (allowed: " + key.range() + ")");
        }
        double number = key.measure().applyAsDouble(value);
        if (!key.range().contains(number)) {
            throw bad(
                    key.name(),
                    text,
                    "must be in " + key.range() + ", got "
                            + (Numbers.text(number) + " " + key.range().unit()).strip());
        }
        return value;
    }

    /**
     * Gives a text.
     *
     * @param key the key
     * @param fallback the text if the file does not have the key; null if it must
     * @return the text
     * @throws InputException if it is missing, empty, too long or not printable
     */
    public String text(String key, @Nullable String fallback) {
        String value = given.get(key);
        String text = value == null ? fallback : value;
        if (text == null) {
            throw new InputException(name + ": " + key + ": key is missing and has no default");
        }
        if (text.isEmpty() || text.length() > LONGEST_TEXT || text.codePoints().anyMatch(ScenarioFile::unprintable)) {
            throw bad(key, text.replaceAll("\\P{Print}", "?"), "must be printable text, not empty");
        }
        Used entry = new Used(key, text, value == null);
        if (!used.contains(entry)) {
            used.add(entry);
        }
        return text;
    }

    /**
     * Gives one of a few words.
     *
     * @param key the key
     * @param fallback the word if the file does not have the key
     * @param allowed the words
     * @return the word
     * @throws InputException if it is another word
     */
    public String word(String key, String fallback, List<String> allowed) {
        String text = text(key, fallback).toLowerCase(Locale.ROOT);
        if (!allowed.contains(text)) {
            throw bad(key, text, "must be one of " + String.join(", ", allowed));
        }
        return text;
    }

    /**
     * Gives the texts of a list separated by commas.
     *
     * @param key the key
     * @return the texts
     * @throws InputException if the key is missing or there is nothing before or after a comma
     */
    public List<String> list(String key) {
        String text = text(key, null);
        List<String> entries = Stream.of(text.split(",", -1)).map(String::strip).toList();
        if (entries.contains("")) {
            throw bad(key, text, "has nothing before or after a comma");
        }
        return entries;
    }

    /**
     * Refuses keys that were given but never asked for, so that nobody believes they count.
     *
     * @param why why a key may not have been asked for
     * @throws InputException if there is one
     */
    public void refuseUnused(String why) {
        refuseUnused(key -> why);
    }

    /**
     * Refuses keys that were given but never asked for.
     *
     * @param why says of a key why it may not have been asked for
     * @throws InputException if there is one
     */
    public void refuseUnused(UnaryOperator<String> why) {
        Set<String> asked = used.stream().map(Used::key).collect(Collectors.toSet());
        given.forEach((key, value) -> {
            if (!asked.contains(key)) {
                throw bad(key, value, "is not used: " + why.apply(key));
            }
        });
    }

    /**
     * Makes something of the file's values.
     *
     * @throws InputException if they do not go together; it names the file and what was to be made
     */
    public <T> T making(String what, Supplier<T> maker) {
        try {
            return maker.get();
        } catch (IllegalArgumentException e) {
            throw new InputException(name + ": " + what + ": " + e.getMessage(), e);
        }
    }

    /**
     * Makes something of the values of some keys.
     *
     * @param keys the keys
     * @param maker what makes it
     * @param <T> what is made
     * @return what was made
     * @throws InputException if they do not go together; it names the file and each key with its value
     */
    public <T> T making(List<String> keys, Supplier<T> maker) {
        try {
            return maker.get();
        } catch (IllegalArgumentException e) {
            throw bad(keys, String.valueOf(e.getMessage()), e);
        }
    }

    /** Complains of the values of several keys, except those that leave the matter to the model. */
    public InputException bad(List<String> keys, String why, @Nullable Throwable cause) {
        String values = keys.stream()
                .flatMap(key -> used.stream().filter(entry -> entry.key.equals(key)))
                .filter(entry -> !entry.value.equals("model"))
                .map(entry -> entry.key + " = " + entry.value)
                .collect(Collectors.joining(", "));
        return new InputException(name + ": " + values + ": " + why, cause);
    }

    /**
     * Complains of a value.
     *
     * @param key the key
     * @param value its text
     * @param why what is wrong with it
     * @return the complaint
     */
    public InputException bad(String key, String value, String why) {
        return new InputException(name + ": " + key + " = " + value + ": " + why);
    }

    private static boolean unprintable(int codePoint) {
        int type = Character.getType(codePoint);
        return Character.isISOControl(codePoint)
                || type == Character.SURROGATE
                || type == Character.UNASSIGNED
                || type == Character.PRIVATE_USE;
    }
}
