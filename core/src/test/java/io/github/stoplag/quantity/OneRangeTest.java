package io.github.stoplag.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
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

/** One quantity has one range: what stands in {@link Ranges} is not written out again, and no literal range stands twice. */
class OneRangeTest {
    private static final Path SOURCES = Path.of("src/main/java");
    private static final Pattern CHECK = Pattern.compile("Check\\.(inRange|above)\\(\\s*\"([^\"]+)\",\\s*"
            + "[^;]*?,\\s*(-?[0-9][0-9_.e+-]*),\\s*(-?[0-9][0-9_.e+-]*),\\s*\"([^\"]*)\"\\)");
    // the same bounds by chance: narrower than what is possible, for a reason said at the place
    private static final List<String> NARROWER = List.of("supply voltage", "current", "resistance", "mass", "distance");

    @Test
    void noNamedRangeIsWrittenOutAgain() {
        List<String> names = Stream.of(Ranges.class.getFields())
                .map(field -> {
                    try {
                        return ((Range) field.get(null)).name();
                    } catch (IllegalAccessException e) {
                        throw new IllegalStateException(e);
                    }
                })
                .filter(name -> !NARROWER.contains(name))
                .toList();
        assertThat(literals().entrySet().stream()
                        .filter(entry ->
                                names.stream().anyMatch(name -> entry.getKey().startsWith(name + " in")))
                        .map(Map.Entry::toString))
                .isEmpty();
    }

    @Test
    void noLiteralRangeStandsTwice() {
        Map<String, List<String>> twice = new TreeMap<>(literals());
        twice.values().removeIf(places -> places.stream().distinct().count() < 2);
        assertThat(twice).isEmpty();
        assertThat(literals()).as("checks read").hasSizeGreaterThan(60);
    }

    private static Map<String, List<String>> literals() {
        Map<String, List<String>> literals = new TreeMap<>();
        try (Stream<Path> files = Files.walk(SOURCES)) {
            for (Path file :
                    files.filter(path -> path.toString().endsWith(".java")).toList()) {
                Matcher check = CHECK.matcher(Files.readString(file));
                while (check.find()) {
                    String range = check.group(2) + " in " + (check.group(1).equals("above") ? "(" : "[")
                            + Double.parseDouble(check.group(3).replace("_", "")) + ", "
                            + Double.parseDouble(check.group(4).replace("_", "")) + "] " + check.group(5);
                    literals.computeIfAbsent(range, key -> new ArrayList<>()).add(String.valueOf(file.getFileName()));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return literals;
    }
}
