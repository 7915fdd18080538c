package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Runs the examples in the core's Javadoc: a statement that ends in a comment gives what the comment says. */
class JavadocExamplesTest {
    private static final Path SOURCES = Path.of("..", "core", "src", "main", "java");
    private static final Pattern BLOCK = Pattern.compile("<pre>\\{@code\\n(.*?)\\n \\* }</pre>", Pattern.DOTALL);
    private static final Pattern TOLD = Pattern.compile("(?m)^([^ ].*(?:\\n {4,}.*)*?); // (.+)$");

    private static final String NEXT = "next example";

    record Example(String type, String code) {}

    /** Models no program, script or worked solution shows. */
    private static final List<String> WITHOUT_ANOTHER_DOOR = List.of(
            "BrakeRequirement",
            "BrakeSystem",
            "BrakingCapability",
            "CarefulDriver",
            "ChosenDeceleration",
            "PerceptionReaction",
            "ResponseEffect",
            "HeadwayRule",
            "LinearFollowing",
            "ResponsibilitySensitiveDistance",
            "SurrogateMeasures",
            "UnR157Gap",
            "LampOptics",
            "LedHeating",
            "OpenCircuitCutOut",
            "PointGrid",
            "PulseWidthDimming",
            "StopTailRatio",
            "FrictionEllipse",
            "Hydroplaning",
            "SlipCurve",
            "FormFactor",
            "OriginalAllard",
            "PieronLaw",
            "AutomaticBraking");

    @TestFactory
    Stream<DynamicTest> givesWhatTheCommentSays() throws IOException {
        List<Example> examples = examples();
        StringBuilder code = new StringBuilder(imports());
        List<List<String>> told = new ArrayList<>();
        for (Example example : examples) {
            told.add(TOLD.matcher(example.code())
                    .results()
                    .map(match -> match.group(2))
                    .toList());
            code.append("System.out.println(\"")
                    .append(NEXT)
                    .append("\");\n")
                    .append(TOLD.matcher(example.code()).replaceAll("System.out.println($1);"))
                    .append('\n');
        }
        // one shell for all: starting one takes longer than running an example
        String[] printed = DocumentedExamplesTest.run(code.toString()).split(NEXT + "\n", -1);
        return IntStream.range(0, examples.size())
                .mapToObj(i -> DynamicTest.dynamicTest(
                        examples.get(i).type(),
                        () -> check(printed[i + 1].lines().toList(), told.get(i))));
    }

    private static void check(List<String> printed, List<String> told) {
        assertThat(printed).hasSameSizeAs(told);
        for (int i = 0; i < told.size(); i++) {
            assertThat(asTold(printed.get(i), told.get(i))).isEqualTo(told.get(i));
        }
    }

    @Test
    void modelsWithoutAnotherDoorHaveOne() throws IOException {
        assertThat(examples().stream().map(Example::type)).containsAll(WITHOUT_ANOTHER_DOOR);
    }

    @Test
    void everyPackageHasOne() throws IOException {
        List<String> without = new ArrayList<>();
        try (Stream<Path> files = Files.walk(SOURCES)) {
            for (Path file :
                    files.filter(path -> path.endsWith("package-info.java")).toList()) {
                if (!TOLD.matcher(Files.readString(file).replaceAll("(?m)^ \\* ?", ""))
                        .find()) {
                    without.add(file.toString());
                }
            }
        }
        assertThat(without).isEmpty();
    }

    /** A bare number is printed with as many digits as the comment has. */
    private static String asTold(String printed, String told) {
        int point = told.indexOf('.');
        return point >= 0 && printed.matches("-?\\d+\\.\\d+(E-?\\d+)?") && told.matches("-?\\d+\\.\\d+")
                ? String.format(Locale.ROOT, "%." + (told.length() - point - 1) + "f", Double.valueOf(printed))
                : printed;
    }

    private static String imports() throws IOException {
        try (Stream<Path> files = Files.list(SOURCES.resolve("io/github/stoplag"))) {
            return files.filter(Files::isDirectory)
                    .map(folder -> "import io.github.stoplag." + folder.getFileName() + ".*;\n")
                    .sorted()
                    .collect(Collectors.joining());
        }
    }

    private static List<Example> examples() throws IOException {
        List<Example> found = new ArrayList<>();
        try (Stream<Path> files = Files.walk(SOURCES)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".java"))
                    .sorted()
                    .toList()) {
                Matcher block = BLOCK.matcher(Files.readString(file));
                while (block.find()) {
                    String code = block.group(1).replaceAll("(?m)^ \\* ?", "");
                    if (TOLD.matcher(code).find()) {
                        found.add(new Example(file.getFileName().toString().replace(".java", ""), code));
                    }
                }
            }
        }
        return found;
    }
}
