package io.github.stoplag.examples.file;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** The keys of one part of a file: each is registered where it is declared, so that no second list needs keeping. */
public final class Keys {
    private final List<String> names = new ArrayList<>();
    private final List<Key<?>> quantities = new ArrayList<>();

    /** Registers a key that holds a quantity, and gives it back. */
    public <T> Key<T> add(Key<T> key) {
        if (!names.contains(key.name())) {
            names.add(key.name());
        }
        quantities.add(key);
        return key;
    }

    /** Registers a key that holds words or a list, and gives its name back. */
    public String add(String name) {
        names.add(name);
        return name;
    }

    /** Gives the keys that hold a quantity, in the order of their declaration. */
    public List<Key<?>> quantities() {
        return List.copyOf(quantities);
    }

    /** Gives the names of all keys, in the order of their declaration. */
    public List<String> names() {
        return List.copyOf(names);
    }

    /** Says whether a key is one of these. */
    public boolean has(String name) {
        return names.contains(name);
    }

    /** The vocabulary of a file made of parts. */
    public static ScenarioFile.Vocabulary vocabulary(Keys... parts) {
        return ScenarioFile.Vocabulary.of(
                Stream.of(parts).flatMap(part -> part.names.stream()).toList());
    }

    /** The vocabulary of a file made of parts, and of keys that carry a number or a name. */
    public static ScenarioFile.Vocabulary vocabulary(Predicate<String> more, String moreInWords, Keys... parts) {
        ScenarioFile.Vocabulary fixed = vocabulary(parts);
        return new ScenarioFile.Vocabulary(fixed.has().or(more), fixed.listed() + ", " + moreInWords);
    }
}
