package io.github.stoplag.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Field;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * One quantity has one range: what stands in {@link Ranges} is not written out again, and no literal range stands
 * twice.
 */
class OneRangeTest {
    private static final List<Path> SOURCES = Stream.of("core", "units-adapters", "examples")
            .map(module -> Path.of("..", module, "src", "main", "java"))
            .toList();
    private static final Pattern CHECK = Pattern.compile("Check\\.(inRange|above)\\(\\s*([^;]*?),\\s*"
            + "(-?[0-9][0-9_.e+-]*),\\s*(-?[0-9][0-9_.e+-]*),\\s*\"([^\"]*)\"\\)");

    /** Bounds and unit tell a range, but for times: there are so many that the name must be the same too. */
    @Test
    void noNamedRangeIsWrittenOutAgain() {
        List<String> again = new ArrayList<>();
        for (Range range : named()) {
            String bounds = bounds(range.lo(), range.hi(), range.unit());
            for (Literal literal : literals().keySet()) {
                boolean same = range.unit().equals("s")
                        ? (literal.name() + " ").startsWith(range.name() + " ")
                        : literal.bounds().equals(bounds) && !range.unit().isEmpty();
                if (same && !literal.name().startsWith("time ")) {
                    again.add(literal + " is Ranges' " + range.name());
                }
            }
        }
        assertThat(again).isEmpty();
    }

    @Test
    void noPlainRatioOfANameIsWrittenOutAgain() {
        List<String> named = named().stream()
                .filter(range -> range.unit().isEmpty())
                .map(Range::name)
                .toList();
        assertThat(literals().keySet().stream()
                        .filter(literal -> literal.unit().isEmpty() && named.contains(literal.name())))
                .isEmpty();
    }

    @Test
    void noLiteralRangeStandsTwice() {
        Map<String, List<String>> twice = new TreeMap<>();
        literals().forEach((literal, files) -> {
            if (files.stream().distinct().count() > 1) {
                twice.put(literal.toString(), files);
            }
        });
        assertThat(twice).isEmpty();
        assertThat(literals()).as("checks read").hasSizeGreaterThan(60);
    }

    @Test
    void everyNamedRangeIsUsed() throws IOException {
        StringBuilder all = new StringBuilder();
        for (Path file : sources()) {
            all.append(Files.readString(file));
        }
        assertThat(Stream.of(Ranges.class.getFields())
                        .map(Field::getName)
                        .filter(name -> !Pattern.compile("\\bRanges\\." + name + "\\b|= " + name + "\\.withoutLowerEnd")
                                .matcher(all)
                                .find()))
                .isEmpty();
    }

    private static List<Range> named() {
        return Stream.of(Ranges.class.getFields())
                .map(field -> {
                    try {
                        return (Range) field.get(null);
                    } catch (IllegalAccessException e) {
                        throw new IllegalStateException(e);
                    }
                })
                .toList();
    }

    /** A range written out in a check: what the message names, or the expression that makes the name. */
    private record Literal(String name, String bounds, String unit) implements Comparable<Literal> {
        @Override
        public int compareTo(Literal other) {
            return toString().compareTo(other.toString());
        }
    }

    private static String bounds(double lo, double hi, String unit) {
        return lo + " to " + hi + " " + unit;
    }

    private static Map<Literal, List<String>> literals() {
        Map<Literal, List<String>> literals = new TreeMap<>();
        try {
            for (Path file : sources()) {
                Matcher check = CHECK.matcher(Files.readString(file));
                while (check.find()) {
                    String name = check.group(2);
                    int end = name.startsWith("\"") ? name.indexOf('"', 1) : 0;
                    Literal literal = new Literal(
                            end > 0 ? name.substring(1, end) : name,
                            bounds(number(check.group(3)), number(check.group(4)), check.group(5)),
                            check.group(5));
                    literals.computeIfAbsent(literal, key -> new ArrayList<>()).add(String.valueOf(file.getFileName()));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return literals;
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace("_", ""));
    }

    private static List<Path> sources() throws IOException {
        List<Path> sources = new ArrayList<>();
        for (Path root : SOURCES) {
            try (Stream<Path> files = Files.walk(root)) {
                files.filter(path -> path.toString().endsWith(".java")).forEach(sources::add);
            }
        }
        return sources;
    }
}
