package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Runs each Java block of README.md and DEVELOPERS.md that has a printed output below it and compares the two. */
class DocumentedExamplesTest {
    private static final Path ROOT = Path.of("..").toAbsolutePath().normalize();
    private static final Pattern EXAMPLE =
            Pattern.compile("```java\\n(.*?)```\\s+[^`]*?```text\\n(.*?)```", Pattern.DOTALL);

    record Example(String file, String code, String output) {
        @Override
        public String toString() {
            return file + ": " + code.lines().findFirst().orElse("");
        }
    }

    static Stream<Example> examples() throws IOException {
        List<Example> found = new ArrayList<>();
        for (String file : List.of("README.md", "DEVELOPERS.md")) {
            Matcher matcher = EXAMPLE.matcher(Files.readString(ROOT.resolve(file)));
            while (matcher.find()) {
                found.add(new Example(file, matcher.group(1), matcher.group(2)));
            }
        }
        return found.stream();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void printsWhatTheTextSays(Example example) {
        assertThat(run(example.code())).isEqualTo(example.output());
    }

    /** Runs statements in a Java shell of this process and gives what they printed. */
    static String run(String code) {
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        try (JShell shell = JShell.builder()
                .executionEngine("local")
                .out(new PrintStream(printed, true, StandardCharsets.UTF_8))
                .build()) {
            String rest = code;
            PrintStream before = System.out;
            System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
            try {
                while (!rest.isBlank()) {
                    CompletionInfo next = shell.sourceCodeAnalysis().analyzeCompletion(rest);
                    String source = next.source();
                    assertThat(source).as("complete statement in %s", rest).isNotNull();
                    for (SnippetEvent event : shell.eval(source)) {
                        assertThat(event.status())
                                .as(
                                        "%s: %s",
                                        source,
                                        shell.diagnostics(event.snippet()).toList())
                                .isIn(Snippet.Status.VALID, Snippet.Status.OVERWRITTEN);
                        assertThat(event.exception()).as(source).isNull();
                    }
                    rest = next.remaining();
                }
            } finally {
                System.setOut(before);
            }
        }
        return printed.toString(StandardCharsets.UTF_8);
    }
}
