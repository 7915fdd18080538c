package io.github.stoplag.sweep;

import java.util.List;
import java.util.NavigableMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The lines of a plan file; every complaint names file, key and value. */
record PlanLines(String name, NavigableMap<String, String> given) {
    boolean has(String key) {
        return given.containsKey(key);
    }

    /** Gives the text of a key that must be there or has a fallback. */
    String text(String key, @Nullable String fallback) {
        String text = given.getOrDefault(key, fallback);
        if (text == null) {
            throw new IllegalArgumentException(name + ": " + key + ": key is missing and has no default");
        }
        if (text.isEmpty() || text.codePoints().anyMatch(PlanLines::unprintable)) {
            throw bad(key, text.replaceAll("\\P{Print}", "?"), "must be printable text, not empty");
        }
        return text;
    }

    List<String> list(String key) {
        String text = text(key, null);
        List<String> entries = Stream.of(text.split(",", -1)).map(String::strip).toList();
        if (entries.contains("")) {
            throw bad(key, text, "has nothing before or after a comma");
        }
        return entries;
    }

    String word(String key, String fallback, List<String> allowed) {
        String word = text(key, fallback);
        if (!allowed.contains(word)) {
            throw bad(key, word, "must be one of " + String.join(", ", allowed));
        }
        return word;
    }

    long whole(String key, @Nullable String fallback) {
        String text = text(key, fallback);
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    bad(key, text, "not a whole number; write it like 1000000").getMessage(), e);
        }
    }

    /** Makes something of the values of some keys. */
    <T> T making(List<String> keys, Supplier<T> maker) {
        try {
            return maker.get();
        } catch (IllegalArgumentException e) {
            String values = keys.stream()
                    .filter(given::containsKey)
                    .map(key -> key + " = " + given.get(key))
                    .collect(Collectors.joining(", "));
            throw new IllegalArgumentException(name + ": " + values + ": " + e.getMessage(), e);
        }
    }

    IllegalArgumentException bad(String key, String value, String why) {
        return new IllegalArgumentException(name + ": " + key + " = " + value + ": " + why);
    }

    private static boolean unprintable(int codePoint) {
        int type = Character.getType(codePoint);
        return Character.isISOControl(codePoint)
                || type == Character.SURROGATE
                || type == Character.UNASSIGNED
                || type == Character.PRIVATE_USE;
    }
}
