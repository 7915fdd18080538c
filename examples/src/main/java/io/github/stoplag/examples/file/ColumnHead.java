package io.github.stoplag.examples.file;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The head of a table's column: a name, and a unit behind an underscore or in brackets, such as {@code time_s},
 * {@code time_ms}, {@code Time [ms]} or {@code light (%)}.
 *
 * @param name the name
 * @param unit the unit, empty if there is none
 */
public record ColumnHead(String name, String unit) {
    private static final Pattern BRACKETS = Pattern.compile("(.*?)\\s*[(\\[]\\s*([^)\\]]*?)\\s*[)\\]]");
    private static final Pattern TIME = Pattern.compile("time_(s|ms|us|min)");
    private static final Map<String, Double> SECONDS =
            Map.of("s", 1.0, "ms", 1e-3, "us", 1e-6, "µs", 1e-6, "min", 60.0);

    /** Reads one. */
    public static ColumnHead of(String text) {
        String head = text.strip();
        Matcher brackets = BRACKETS.matcher(head);
        Matcher time = TIME.matcher(head.toLowerCase(Locale.ROOT));
        if (brackets.matches()) {
            return new ColumnHead(brackets.group(1).strip(), brackets.group(2));
        }
        return time.matches() ? new ColumnHead("time", time.group(1)) : new ColumnHead(head, "");
    }

    /** Gives the seconds of its unit, if it is the head of a column of times. */
    public Optional<Double> seconds() {
        return name.equalsIgnoreCase("time") || name.equalsIgnoreCase("t")
                ? Optional.ofNullable(SECONDS.get(unit))
                : Optional.empty();
    }
}
