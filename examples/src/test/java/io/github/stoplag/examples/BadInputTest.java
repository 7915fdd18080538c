package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.examples.file.Resource;
import io.github.stoplag.examples.lampswap.Scenario;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every bad input ends with exit code 2 and one line, and leaves earlier results alone. */
class BadInputTest {
    @TempDir
    Path folder;

    private Path results = Path.of("");

    @BeforeEach
    void earlierResults() throws IOException {
        results = Files.createDirectory(folder.resolve("results"));
        Files.writeString(results.resolve("summary.csv"), "from an earlier run");
    }

    private void assertRefused(Program run, String line) throws IOException {
        assertThat(run.err()).isEqualTo(line + System.lineSeparator());
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(results.resolve("summary.csv")).hasContent("from an earlier run");
        try (Stream<Path> files = Files.list(results)) {
            assertThat(files).hasSize(1);
        }
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.filter(path -> String.valueOf(path.getFileName()).startsWith(".")))
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        follower.reaction | -1 s        | must be in [0, 30] s, got -1 s
        follower.reaction | 45 s        | must be in [0, 30] s, got 45 s
        follower.reaction | 1.1         | time "1.1": missing unit; use one of s, ms, min, h (allowed: [0, 30] s)
        follower.reaction | 1.1 m       | time "1.1 m": "m" is a unit of distance; use one of s, ms, min, h (allowed: [0, 30] s)
        follower.reaction | soon        | time "soon": not a number followed by a unit; write it like 1.5 or 1.5e-3; use one of s, ms, min, h (allowed: [0, 30] s)
        speeds            | 30 mph, 0 km/h   | must be in (0, 150] m/s, got 0 m/s
        speeds            | 30 mph, 30 mph   | the same speed is given twice
        following.gap     | 400 s       | must be in [0, 300] s, got 400 s
        following.gap     | -5 m        | must be in [0, 100000] m, got -5 m; or a time gap such as 1.5 s, in [0, 300] s
        following.gap     | 20 m, 30 m  | must be one gap for all speeds or one for each of the 6 speeds, got 2
        leader.deceleration | 0 m/s^2   | must be in (0, 200] m/s², got 0 m/s²
        filament.lens     | blue        | must be one of red, clear
        filament.coil-factor | 0.2      | must be in [0.5, 1], got 0.2
        filament.coil-factor | half     | share "half": not a number followed by a unit; write it like 1.5 or 1.5e-3; use % or a plain number (allowed: [0.5, 1])
        supply.voltage    | 0 V         | must be in (0, 1000] V, got 0 V
        detector          | nose        | must be one of eye, share, day, dusk, night, tail
        detector.share.level | 100 %    | must be in [0.001, 0.999], got 1
        invented          | perhaps     | must be one of yes, no
        road.friction     | 0.8         | is not used: neither vehicle's deceleration is "road"
        """)
    void badValueNamesFileKeyValueAndRange(String key, String value, String complaint) throws IOException {
        Path scenario = Program.scenario(folder, key, value);
        Program run = Program.lampSwap(results, "--scenario", scenario.toString());
        String shown = value.contains(",") && complaint.contains("m/s") ? "0 km/h" : value;
        assertRefused(run, scenario + ": " + key + " = " + shown + ": " + complaint);
    }

    @Test
    void gapWithoutUnitNamesBothKindsOfGap() throws IOException {
        Path scenario = Program.scenario(folder, "following.gap", "20");
        Program run = Program.lampSwap(results, "--scenario", scenario.toString());
        assertRefused(
                run,
                scenario
                        + ": following.gap = 20: distance \"20\": missing unit; use one of m, km, cm, mm, ft, in, yd,"
                        + " mi (allowed: [0, 100000] m); or a time gap such as 1.5 s, in [0, 300] s");
    }

    @Test
    void roadThatCannotHoldTheVehicleIsNamed() throws IOException {
        Path scenario =
                Program.scenario(folder, "leader.deceleration", "road", "road.friction", "0.1", "road.grade", "-20 %");
        Program run = Program.lampSwap(results, "--scenario", scenario.toString());
        assertThat(run.err())
                .startsWith(scenario + ": leader.deceleration = road: ")
                .contains("0.1");
        assertRefused(run, run.err().strip());
    }

    @Test
    void supplyThatWouldMeltTheFilamentIsNamed() throws IOException {
        Path scenario = Program.scenario(folder, "supply.voltage", "48 V");
        Program run = Program.lampSwap(results, "--scenario", scenario.toString());
        assertThat(run.err())
                .startsWith(scenario + ": supply.voltage = 48 V, supply.series-resistance = 0.15 ohm,")
                .contains(", filament.design-voltage = 13.5 V: ", "3600 K");
        assertRefused(run, run.err().strip());
    }

    @Test
    void unknownKeyIsNamedWithTheKnownOnes() throws IOException {
        Path scenario = Program.scenario(folder, "follower.mood", "calm");
        Program run = Program.lampSwap(results, "--scenario", scenario.toString());
        assertRefused(
                run, scenario + ": follower.mood = calm: unknown key; the keys are " + Scenario.VOCABULARY.listed());
    }

    @Test
    void repeatedAndMissingKeysAreNamed() throws IOException {
        Path twice = Program.write(
                folder.resolve("twice.properties"), Resource.text(Scenario.SHIPPED) + "led.rise-time = 3 ms\n");
        assertRefused(
                Program.lampSwap(results, "--scenario", twice.toString()),
                twice + ": led.rise-time = 3 ms: key is given twice");
        Path without = Program.write(
                folder.resolve("without.properties"),
                Resource.text(Scenario.SHIPPED).replace("led.rise-time = 1 ms", ""));
        assertRefused(
                Program.lampSwap(results, "--scenario", without.toString()),
                without + ": led.rise-time: key is missing and has no default");
    }

    @Test
    void missingFileFolderAndBinaryFileAreNamed() throws IOException {
        Path missing = folder.resolve("missing.properties");
        assertRefused(
                Program.lampSwap(results, "--scenario", missing.toString()),
                missing + ": cannot be read: no such file");
        assertRefused(
                Program.lampSwap(results, "--measured", missing.toString()),
                missing + ": cannot be read: no such file");
        Path latin = folder.resolve("latin.properties");
        Files.write(latin, "title = caf\u00e9".getBytes(StandardCharsets.ISO_8859_1));
        assertRefused(
                Program.lampSwap(results, "--scenario", latin.toString()),
                latin + ": cannot be read: not UTF-8 text; save it as UTF-8 (a spreadsheet may have saved UTF-16 or"
                        + " Windows-1252)");
    }

    @Test
    void controlCharactersAndMalformedEscapesAreRefused() throws IOException {
        Path bell = Program.scenario(folder, "title", "ring \\u0007 ring");
        assertRefused(
                Program.lampSwap(results, "--scenario", bell.toString()),
                bell + ": title = ring ? ring: must be printable text, not empty");
        Path escape = Program.scenario(folder, "title", "\\uzzzz");
        assertRefused(
                Program.lampSwap(results, "--scenario", escape.toString()),
                escape + ": not a file of lines \"key = value\": Malformed \\uxxxx encoding.");
    }

    @Test
    void folderWithOtherFilesIsLeftAlone() throws IOException {
        Path photos = Files.createDirectory(folder.resolve("photos"));
        Files.writeString(photos.resolve("cat.jpg"), "precious");
        assertRefused(
                Program.lampSwap(photos),
                "--out = " + photos + ": holds cat.jpg, which this program did not write; name a new or empty folder");
        assertThat(photos.resolve("cat.jpg")).hasContent("precious");
        Path file = Files.writeString(folder.resolve("file"), "precious");
        assertRefused(Program.lampSwap(file), "--out = " + file + ": is a file, must be a folder");
    }

    @Test
    void unknownOptionAndProgramAreNamed() throws IOException {
        assertRefused(Program.run("lamp-swap", "--speed=3"), "Unknown option: '--speed=3' (see --help)");
        Program run = Program.run("lamp-swab");
        assertThat(run.err()).startsWith("Unmatched argument at index 0: 'lamp-swab'");
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.exitCode()).isEqualTo(2);
    }

    @Test
    void lampSeenTooLateIsNamedWithTheKeysThatMakeItSo() throws IOException {
        Path scenario = Program.scenario(
                folder,
                "detector.eye.threshold",
                "59.99999 cd",
                "detector.eye.time-constant",
                "2 s",
                "detector",
                "eye");
        Program run = Program.lampSwap(results, "--scenario", scenario.toString());
        assertThat(run.err())
                .matches("(?s)"
                        + Pattern.quote(scenario + ": led.intensity = 60 cd, detector.eye.time-constant = 2 s,"
                                + " detector.eye.threshold = 59.99999 cd: the LED lamp is seen ")
                        + "31\\.[0-9]+ s after switch-on, must be in \\[0, 30\\] s: its light hardly exceeds what it"
                        + " takes to be seen\\R");
        assertRefused(run, run.err().strip());
    }

    @Test
    void emptyEntryOfAListIsNamedWithTheWholeList() throws IOException {
        Path scenario = Program.scenario(folder, "speeds", "30 mph, 40 mph,");
        assertRefused(
                Program.lampSwap(results, "--scenario", scenario.toString()),
                scenario + ": speeds = 30 mph, 40 mph,: has nothing before or after a comma");
    }

    @Test
    void folderThatCannotBeMadeIsOneLineToo() throws IOException {
        Path below = results.resolve("summary.csv").resolve("below");
        assertRefused(Program.lampSwap(below), "--out = " + below + ": cannot be written: a folder above it is a file");
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void folderWhereNoneCanBeMadeIsNamedAsGiven() throws IOException {
        assertRefused(
                Program.lampSwap(Path.of("/proc/x")),
                "--out = /proc/x: cannot be written: no folder can be made there");
    }
}
