package io.github.stoplag.examples.gallery;

import io.github.stoplag.examples.file.Resource;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The text of methods as it stands in the source, which the build copies beside the classes. */
final class MethodText {
    private static final String INDENT = "    ";
    private static final String END = INDENT + "}";

    private MethodText() {}

    /**
     * Gives the methods of some names, overloaded ones included, in the order of the file.
     *
     * @throws IllegalStateException if the source is missing or a name is not found
     */
    static String of(Class<?> type, List<String> names) {
        List<String> lines =
                Resource.text(type, type.getSimpleName() + ".java").lines().toList();
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            if (names.stream().anyMatch(name -> declares(line, name))) {
                int from = withComment(lines, i);
                int end = lines.subList(i, lines.size()).indexOf(END) + i;
                texts.add(lines.subList(from, end + 1).stream()
                        .map(text -> text.startsWith(INDENT) ? text.substring(INDENT.length()) : text)
                        .collect(Collectors.joining("\n")));
            }
        }
        String text = String.join("\n\n", texts);
        for (String name : names) {
            if (!text.contains(" " + name + "(")) {
                throw new IllegalStateException("no method " + name + " in the source of " + type.getSimpleName());
            }
        }
        return text;
    }

    private static boolean declares(String line, String name) {
        return line.matches(INDENT + "((public|private) )?static [\\w.<>, ]+ " + Pattern.quote(name) + "\\(.*");
    }

    private static int withComment(List<String> lines, int declaration) {
        int from = declaration;
        while (lines.get(from - 1).matches(INDENT + " ?/?\\*.*")) {
            from--;
        }
        return from;
    }
}
