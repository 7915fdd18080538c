package io.github.stoplag.consumer;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A project outside the build compiles against the jars it gets and runs with them, with the JDK in use and each other
 * one from 17 on in the folder beside it.
 */
class ConsumerIT {
    private static final Path SOURCES = Path.of("src", "consumer").toAbsolutePath();
    private static final Path LIB = Path.of("target", "lib").toAbsolutePath();
    private static final int PATTERN_SWITCHES = 21;

    @TempDir
    Path folder;

    record Jdk(Path home, int release) {
        static Stream<Jdk> of(Path home) {
            Properties told = new Properties();
            try (var in = Files.newBufferedReader(home.resolve("release"))) {
                told.load(in);
            } catch (IOException e) {
                return Stream.empty();
            }
            String version = told.getProperty("JAVA_VERSION", "0").replace("\"", "");
            int release = Integer.parseInt(version.split("[.+-]")[0]);
            return Files.exists(home.resolve("bin/javac")) ? Stream.of(new Jdk(home, release)) : Stream.empty();
        }

        @Override
        public String toString() {
            return "JDK " + release;
        }
    }

    static List<Jdk> jdks() throws IOException {
        Path inUse = Path.of(System.getProperty("java.home")).toRealPath();
        Set<Integer> releases = new TreeSet<>();
        List<Jdk> all = new ArrayList<>(Jdk.of(inUse).toList());
        try (Stream<Path> beside = Files.list(inUse.getParent())) {
            all.addAll(beside.flatMap(Jdk::of).toList());
        }
        return all.stream()
                .filter(jdk -> jdk.release() >= 17 && releases.add(jdk.release()))
                .toList();
    }

    private String run(Jdk jdk, String tool, Object... args) throws IOException, InterruptedException {
        List<String> command =
                new ArrayList<>(List.of(jdk.home().resolve("bin").resolve(tool).toString()));
        Arrays.stream(args).map(Object::toString).forEach(command::add);
        Path said = folder.resolve("said");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(said.toFile());
        builder.environment().keySet().removeAll(Set.of("JAVA_TOOL_OPTIONS", "JDK_JAVA_OPTIONS", "CLASSPATH"));
        Process process = builder.start();
        assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
        String text = Files.readString(said);
        assertThat(process.exitValue()).as("%s: %s", command, text).isZero();
        return text;
    }

    private static void assertOutcome(String said) {
        assertThat(said.lines())
                .satisfiesExactly(
                        outcome -> assertThat(outcome).startsWith("Contact[at="),
                        speed -> assertThat(speed).isEqualTo("26.8224 m/s"));
    }

    @ParameterizedTest
    @MethodSource("jdks")
    void runsOnTheClassPath(Jdk jdk) throws IOException, InterruptedException {
        run(
                jdk,
                "javac",
                "-Xlint:all",
                "-Werror",
                "-cp",
                LIB + "/*",
                "-d",
                folder,
                SOURCES.resolve("program/consumer/Consumer.java"));
        assertOutcome(run(jdk, "java", "-cp", folder + File.pathSeparator + LIB + "/*", "consumer.Consumer"));
    }

    @ParameterizedTest
    @MethodSource("jdks")
    void runsOnTheModulePath(Jdk jdk) throws IOException, InterruptedException {
        run(
                jdk,
                "javac",
                "-p",
                LIB,
                "-d",
                folder.resolve("consumer"),
                SOURCES.resolve("modulepath/module-info.java"),
                SOURCES.resolve("program/consumer/Consumer.java"));
        assertOutcome(run(
                jdk,
                "java",
                "-p",
                LIB + File.pathSeparator + folder.resolve("consumer"),
                "-m",
                "consumer/consumer.Consumer"));
    }

    @ParameterizedTest
    @MethodSource("jdks")
    void switchesOverOutcomesByType(Jdk jdk) throws IOException, InterruptedException {
        Assumptions.assumeTrue(jdk.release() >= PATTERN_SWITCHES);
        run(
                jdk,
                "javac",
                "-Xlint:all",
                "-Werror",
                "-cp",
                LIB + "/*",
                "-d",
                folder,
                SOURCES.resolve("patterns/consumer/Outcomes.java"));
        String said = run(jdk, "java", "-cp", folder + File.pathSeparator + LIB + "/*", "consumer.Outcomes");
        // equal brakes: the follower needs v t_r = 20 m and has 10 m of 30 m left
        assertThat(said.lines()).containsExactly("stays clear by 10 m", "needs 20 m");
    }

    @Test
    void getsTheLibrariesThatStoplagIsTestedWith() throws IOException {
        String classPath = Files.readString(Path.of("..", "target", "runtime-classpath.txt"));
        Set<String> tested = Arrays.stream(classPath.trim().split(File.pathSeparator))
                .map(entry -> Path.of(entry).getFileName().toString())
                .filter(name -> !name.startsWith("stoplag-") && !name.equals("classes"))
                .collect(Collectors.toCollection(TreeSet::new));
        try (Stream<Path> jars = Files.list(LIB)) {
            Set<String> got = jars.map(jar -> jar.getFileName().toString())
                    .filter(name -> !name.startsWith("stoplag-"))
                    .collect(Collectors.toCollection(TreeSet::new));
            assertThat(got).isEqualTo(tested).anyMatch(name -> name.startsWith("commons-rng-client-api-1.7"));
        }
    }
}
