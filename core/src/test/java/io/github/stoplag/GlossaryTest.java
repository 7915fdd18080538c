package io.github.stoplag;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every type and member that the glossary of DEVELOPERS.md names is there. */
class GlossaryTest {
    private static final Path GUIDE = Path.of("..", "DEVELOPERS.md");
    private static final Path SOURCES = Path.of("src", "main", "java");
    private static final Pattern NAME = Pattern.compile("`([A-Z][A-Za-z0-9]*(?:\\.[A-Za-z_][A-Za-z0-9_]*)*)`");

    @Test
    void everyIdentifierOfTheGlossaryExists() throws IOException {
        String text = Files.readString(GUIDE);
        String glossary = text.substring(text.indexOf("## Glossary"), text.indexOf("## Habits"));
        List<String> names = NAME.matcher(glossary)
                .results()
                .map(MatchResult::group)
                .map(name -> name.replace("`", ""))
                .toList();
        assertThat(names).hasSizeGreaterThan(80);
        assertThat(names)
                .allSatisfy(name -> assertThat(isThere(List.of(name.split("\\.", -1))))
                        .as(name)
                        .isTrue());
    }

    private static boolean isThere(List<String> name) throws IOException {
        Optional<Class<?>> type = topLevel(name.get(0));
        for (String part : name.subList(1, name.size())) {
            if (type.isEmpty()) {
                return false;
            }
            Class<?> outer = type.get();
            type = Arrays.stream(outer.getDeclaredClasses())
                    .filter(inner -> inner.getSimpleName().equals(part))
                    .<Class<?>>map(inner -> inner)
                    .findFirst();
            if (type.isEmpty() && part.equals(name.get(name.size() - 1))) {
                return hasMember(outer, part);
            }
        }
        return type.isPresent();
    }

    private static Optional<Class<?>> topLevel(String simpleName) throws IOException {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            return files.filter(file -> file.endsWith(simpleName + ".java"))
                    .<Class<?>>map(file -> load(SOURCES.relativize(file)))
                    .findFirst();
        }
    }

    private static Class<?> load(Path file) {
        String name = file.toString().replaceAll("[/\\\\]", ".");
        try {
            String type = name.substring(0, name.length() - ".java".length());
            return Class.forName(type, false, GlossaryTest.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new AssertionError(e);
        }
    }

    private static boolean hasMember(Class<?> type, String name) {
        return Stream.of(type.getMethods(), type.getDeclaredMethods(), type.getDeclaredFields())
                .flatMap(Arrays::stream)
                .anyMatch(member -> member.getName().equals(name));
    }
}
