package io.github.stoplag.source;

import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Published things under names: listed in the order of their table, found by name, read once.
 *
 * <p>A class that publishes rows keeps one in a static field and shows it as {@code published()}, the list, and {@code
 * published(String id)}, the look-up. A name that is not there is answered with the names nearest to it.
 *
 * <p>Internal: it is public for the library's other packages; users call those two methods.
 *
 * @param <T> what is published
 */
public final class Catalogue<T> {
    private static final int OFFERED = 8;

    private final String what;
    private final Map<String, T> byId = new LinkedHashMap<>();
    private final List<T> entries;

    private Catalogue(String what, List<T> entries, Function<? super T, String> id) {
        this.what = what;
        this.entries = List.copyOf(entries);
        for (T entry : this.entries) {
            if (byId.put(id.apply(entry), entry) != null) {
                throw new IllegalArgumentException(
                        "each " + what + " must have a name of its own, got \"" + id.apply(entry) + "\" twice");
            }
        }
    }

    /**
     * Makes a catalogue of things at hand.
     *
     * @param <T> what is published
     * @param what what one entry is, as a message shall name it, for example {@code surface}
     * @param entries the entries in order
     * @param id the name of an entry
     * @return the catalogue
     * @throws IllegalArgumentException if two entries have the same name
     */
    public static <T> Catalogue<T> of(String what, List<T> entries, Function<? super T, String> id) {
        return new Catalogue<>(what, entries, id);
    }

    /**
     * Reads a catalogue from a table, one entry a row.
     *
     * @param <T> what is published
     * @param what what one entry is, as a message shall name it, for example {@code surface}
     * @param owner the class beside which the table lies
     * @param resource its file name
     * @param row makes an entry of the table and one of its rows
     * @param id the name of an entry
     * @return the catalogue
     * @throws IllegalArgumentException if there is no such table or two entries have the same name
     */
    public static <T> Catalogue<T> read(
            String what,
            Class<?> owner,
            String resource,
            BiFunction<Table, Map<String, String>, T> row,
            Function<? super T, String> id) {
        Table table = Table.read(owner, resource);
        return of(
                what,
                table.rows().stream().map(fields -> row.apply(table, fields)).toList(),
                id);
    }

    /**
     * Reads ranges from a table with columns id, what, low, high, unit, document, place, standing, note.
     *
     * @param whatOne what one range is, as a message shall name it
     * @param owner the class beside which the resource lies
     * @param resource the file name
     * @return the ranges
     * @throws IllegalArgumentException if the resource is missing or a row is not of this form
     */
    public static Catalogue<PublishedRange> readRanges(String whatOne, Class<?> owner, String resource) {
        return read(whatOne, owner, resource, PublishedRange::of, PublishedRange::id);
    }

    /**
     * Lists the entries.
     *
     * @return all of them, in order
     */
    public List<T> list() {
        return entries;
    }

    /**
     * Lists the entries of a kind.
     *
     * @param kind which to list
     * @return those, in order
     */
    public List<T> list(Predicate<? super T> kind) {
        return entries.stream().filter(kind).toList();
    }

    /**
     * Finds an entry by its name.
     *
     * @param id the name, exactly as the table writes it
     * @return the entry
     * @throws IllegalArgumentException if there is none of this name; the message offers the nearest names, for example
     *     {@code surface must be one of ice-1994, ice-2007, snow-1994 and 25 more, got "ise-1994"}
     */
    public T get(String id) {
        T entry = byId.get(id);
        if (entry == null) {
            throw new IllegalArgumentException(what + " must be one of " + nearest(id) + ", got \"" + id + "\"");
        }
        return entry;
    }

    private String nearest(String asked) {
        Map<String, Integer> pairs = pairs(asked);
        String offered = byId.keySet().stream()
                .sorted(Comparator.comparingDouble((String id) -> -likenessRatio(pairs, pairs(id))))
                .limit(OFFERED)
                .collect(Collectors.joining(", "));
        return byId.size() > OFFERED ? offered + " and " + (byId.size() - OFFERED) + " more" : offered;
    }

    /**
     * Twice the neighbouring pairs of characters that two names share, over all pairs of both: it forgives a slip of
     * the pen, another order of words and a missing end alike.
     */
    private static double likenessRatio(Map<String, Integer> a, Map<String, Integer> b) {
        int shared = a.entrySet().stream()
                .mapToInt(pair -> Math.min(pair.getValue(), b.getOrDefault(pair.getKey(), 0)))
                .sum();
        return 2.0 * shared / (count(a) + count(b));
    }

    private static int count(Map<String, Integer> pairs) {
        return pairs.values().stream().mapToInt(Integer::intValue).sum();
    }

    /** The neighbouring pairs of letters and digits of a name with their counts; a blank at both ends counts too. */
    private static Map<String, Integer> pairs(String name) {
        String words = " " + name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", " ") + " ";
        Map<String, Integer> pairs = new HashMap<>();
        for (int i = 1; i < words.length(); i++) {
            pairs.merge(words.substring(i - 1, i + 1), 1, Integer::sum);
        }
        return Collections.unmodifiableMap(pairs);
    }
}
