package io.github.stoplag.examples.file;

import java.util.HashSet;
import java.util.Properties;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Java's own reader of {@code key = value} files, except that it remembers keys given more than once. */
final class UniqueProperties extends Properties {
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

    boolean isRepeated(String key) {
        return repeated.contains(key);
    }
}
