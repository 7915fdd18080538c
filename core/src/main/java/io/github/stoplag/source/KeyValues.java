package io.github.stoplag.source;

import java.io.IOException;
import java.io.Reader;
import java.util.HashSet;
import java.util.NavigableMap;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Lines {@code key = value} as Java's own properties files have them, except that a key may stand only once.
 *
 * <p>Internal: it is public for the library's other packages, not for users.
 */
public final class KeyValues {
    private KeyValues() {}

    /**
     * Reads lines.
     *
     * @param reader where they come from
     * @return each key with its value, without white space at its ends
     * @throws IOException if the reader fails
     * @throws IllegalArgumentException if they are no such lines or a key stands twice
     */
    public static NavigableMap<String, String> read(Reader reader) throws IOException {
        Unique lines = new Unique();
        try {
            lines.load(reader);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("not a file of lines \"key = value\": " + e.getMessage(), e);
        }
        NavigableMap<String, String> given = new TreeMap<>();
        for (String key : lines.stringPropertyNames()) {
            String value = lines.getProperty(key).strip();
            if (lines.repeated.contains(key)) {
                throw new IllegalArgumentException(key + " = " + value + ": key is given twice");
            }
            given.put(key, value);
        }
        return given;
    }

    /** Remembers keys given more than once. */
    private static final class Unique extends Properties {
        private static final long serialVersionUID = 1L;
        private final transient Set<Object> repeated = new HashSet<>();

        @Override
        public synchronized @Nullable Object put(Object key, Object value) {
            Object before = super.put(key, value);
            if (before != null) {
                repeated.add(key);
            }
            return before;
        }
    }
}
