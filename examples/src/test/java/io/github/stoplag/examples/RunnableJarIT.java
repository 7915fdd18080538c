package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.jar.JarFile;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The one jar that holds all programs, as a user has it: alone, in a folder of the user's. */
class RunnableJarIT {
    private static final Path JAR = Path.of("target", "stoplag.jar").toAbsolutePath();
    private static final String LICENCES = "/META-INF/licenses/";

    @TempDir
    Path folder;

    private Program java(String... args) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", JAR.toString()));
        command.addAll(List.of(args));
        return process(command);
    }

    private Program process(List<String> command) throws IOException, InterruptedException {
        Path out = Files.createTempFile("stoplag", ".out");
        Path err = Files.createTempFile("stoplag", ".err");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile());
        builder.environment().keySet().removeAll(Set.of("JAVA_TOOL_OPTIONS", "JDK_JAVA_OPTIONS"));
        Process process = builder.start();
        assertThat(process.waitFor(2, TimeUnit.MINUTES)).as(command.toString()).isTrue();
        Program program = new Program(process.exitValue(), Files.readString(out), Files.readString(err));
        Files.delete(out);
        Files.delete(err);
        return program;
    }

    private List<String> written() throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file).toString().replace('\\', '/'))
                    .toList();
        }
    }

    @Test
    void runsTheMainJobInAFolderElsewhere() throws IOException, InterruptedException {
        Program run = java("lamp-swap");
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("earlier", "stoplag-results");
        assertThat(written())
                .contains("stoplag-results/lamp-swap/summary.csv", "stoplag-results/lamp-swap/report.html")
                .allMatch(name -> name.startsWith("stoplag-results/lamp-swap/"));
    }

    @Test
    void tellsItsVersionAndWhatIsWrong() throws IOException, InterruptedException {
        assertThat(java("--version").out()).startsWith("stoplag ").contains("on Java " + Runtime.version());
        Program wrong = java("onset", "--no-such-option");
        assertThat(wrong.exitCode()).isEqualTo(2);
        assertThat(wrong.err()).contains("--no-such-option").hasLineCount(1);
        assertThat(written()).isEmpty();
    }

    @Test
    void completesInAShell() throws IOException, InterruptedException {
        Path script = Files.writeString(
                folder.resolve("completion.sh"), java("completion").out());
        // bash says so where its completion is called by hand
        String ask = "source " + script + "; type -t stoplag; "
                + "COMP_WORDS=(stoplag lamp-s); COMP_CWORD=1; _complete_stoplag 2> /dev/null; echo \"${COMPREPLY[@]}\"; "
                + "COMP_WORDS=(stoplag sweep --see); COMP_CWORD=2; _complete_stoplag 2> /dev/null; echo \"${COMPREPLY[@]}\"; "
                + "stoplag --version";
        Program shell = process(List.of("bash", "--norc", "-c", ask));
        assertThat(shell.err()).isEmpty();
        assertThat(shell.out().lines())
                .satisfiesExactly(
                        kind -> assertThat(kind).isEqualTo("function"),
                        program -> assertThat(program).isEqualTo("lamp-swap"),
                        option -> assertThat(option).isEqualTo("--seed"),
                        version -> assertThat(version).startsWith("stoplag "));
    }

    /** Each program from the classes of the jar alone: nothing of this project's folders can be seen. */
    @Test
    void holdsAllThatEachProgramNeeds() throws ReflectiveOperationException, IOException {
        try (URLClassLoader jar =
                new URLClassLoader(new URL[] {JAR.toUri().toURL()}, ClassLoader.getPlatformClassLoader())) {
            Method run = jar.loadClass(Main.class.getName())
                    .getMethod("run", PrintWriter.class, PrintWriter.class, String[].class);
            Map<String, String> failed = new TreeMap<>();
            for (String line : List.of(
                    "circuit",
                    "onset",
                    "following",
                    "stopping-tables",
                    "worksheet",
                    "explain stop from 60 mph, 1.5 s, wet asphalt",
                    "sweep --scenarios 300 --rows 100 --threads 1",
                    "sweep --scenarios 300 --rows 100 --threads 1 --format csv",
                    "gallery --help",
                    "film --help")) {
                List<String> args = new ArrayList<>(Arrays.asList(line.split(" ")));
                args.addAll(1, List.of("--out", folder.resolve(args.get(0)).toString()));
                StringWriter err = new StringWriter();
                Object exitCode = run.invoke(
                        null,
                        new PrintWriter(new StringWriter()),
                        new PrintWriter(err, true),
                        args.toArray(new String[0]));
                if (!exitCode.equals(0)
                        || !err.toString().replaceAll("(?m)^\\d+ %:.*\\R?", "").isEmpty()) {
                    failed.put(line, exitCode + " " + err);
                }
            }
            assertThat(failed).isEmpty();
        }
        assertThat(written()).contains("sweep/part-00000.csv", "worksheet/sheet.html");
    }

    @Test
    void namesEachLibraryItCarriesWithItsLicence() throws IOException {
        try (FileSystem jar = FileSystems.newFileSystem(JAR)) {
            Set<String> listed = new TreeSet<>();
            for (NamedCsvRecord row :
                    CsvReader.builder().ofNamedCsvRecord(Files.readString(jar.getPath(LICENCES + "contents.csv")))) {
                String text = row.getField("text");
                Path place = jar.getPath(LICENCES + text).normalize();
                assertThat(Files.exists(place)).as(place.toString()).isTrue();
                listed.add(row.getField("artifact") + "-" + row.getField("version"));
            }
            assertThat(carried(jar)).isEqualTo(listed);
            assertThat(Files.readString(jar.getPath("/META-INF/LICENSE"))).contains("Apache License");
            assertThat(Files.readString(jar.getPath("/META-INF/NOTICE"))).startsWith("Stoplag");
            try (Stream<Path> texts = Files.walk(jar.getPath(LICENCES))) {
                assertThat(texts.filter(Files::isRegularFile).filter(file -> !file.endsWith("contents.csv")))
                        .allSatisfy(file -> assertThat(Files.readString(file)).isNotBlank());
            }
        }
    }

    /** The jars of the class path whose classes are inside; fails for a class that no jar has. */
    private static Set<String> carried(FileSystem jar) throws IOException {
        Map<String, String> jarByPackage = new TreeMap<>();
        for (String entry : System.getProperty("java.class.path").split(System.getProperty("path.separator"), -1)) {
            if (entry.endsWith(".jar")) {
                String name = Path.of(entry).getFileName().toString().replaceFirst("\\.jar$", "");
                try (JarFile file = new JarFile(entry)) {
                    file.stream()
                            .map(each -> each.getName())
                            .filter(each -> each.endsWith(".class"))
                            .forEach(each -> jarByPackage.putIfAbsent(each, name));
                }
            }
        }
        try (Stream<Path> classes = Files.walk(jar.getPath("/"))) {
            Set<String> jars = new TreeSet<>();
            classes.map(each -> each.toString().substring(1))
                    .filter(each -> each.endsWith(".class"))
                    .filter(each -> !each.startsWith("io/github/stoplag/"))
                    .forEach(each -> jars.add(jarByPackage.getOrDefault(each, "no jar has " + each)));
            return jars;
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    @Test
    void keepsTheServicesOfAllItsLibraries() throws IOException {
        Map<String, Set<String>> services = new TreeMap<>();
        for (String entry : System.getProperty("java.class.path").split(System.getProperty("path.separator"), -1)) {
            if (!entry.endsWith(".jar")) {
                continue;
            }
            try (JarFile file = new JarFile(entry)) {
                for (var each :
                        file.stream().filter(each -> isService(each.getName())).toList()) {
                    String text = new String(file.getInputStream(each).readAllBytes(), StandardCharsets.UTF_8);
                    services.computeIfAbsent(each.getName(), name -> new TreeSet<>())
                            .addAll(text.lines().filter(line -> !line.isBlank()).toList());
                }
            }
        }
        try (JarFile jar = new JarFile(JAR.toFile())) {
            List<String> names = jar.stream()
                    .map(each -> each.getName())
                    .filter(RunnableJarIT::isService)
                    .toList();
            assertThat(names).contains("META-INF/services/com.fasterxml.jackson.core.JsonFactory");
            for (String name : names) {
                String text =
                        new String(jar.getInputStream(jar.getJarEntry(name)).readAllBytes(), StandardCharsets.UTF_8);
                assertThat(text.lines().filter(line -> !line.isBlank()))
                        .as(name)
                        .containsExactlyInAnyOrderElementsOf(services.getOrDefault(name, Set.of()));
            }
        }
    }

    private static boolean isService(String name) {
        return name.startsWith("META-INF/services/") && !name.endsWith("/");
    }
}
