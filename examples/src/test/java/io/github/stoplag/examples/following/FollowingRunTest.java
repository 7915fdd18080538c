package io.github.stoplag.examples.following;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.examples.Program;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.Resource;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

/** The program following from scenario to files, and its refusals. */
class FollowingRunTest {
    @TempDir
    Path folder;

    private Path results() {
        return folder.resolve("results");
    }

    private Program run(String... more) {
        List<String> args =
                new ArrayList<>(List.of("following", "--out", results().toString()));
        args.addAll(Arrays.asList(more));
        return Program.run(args.toArray(String[]::new));
    }

    /** Writes a shipped scenario with some keys set to other values. */
    private Path scenario(String shipped, String... keysAndValues) {
        String text = Resource.text(shipped);
        for (int i = 0; i < keysAndValues.length; i += 2) {
            Matcher old = Pattern.compile("(?m)^" + Pattern.quote(keysAndValues[i]) + " = .*$")
                    .matcher(text);
            String entry = keysAndValues[i] + " = " + keysAndValues[i + 1];
            text = old.find() ? old.replaceAll(Matcher.quoteReplacement(entry)) : text + entry + "\n";
        }
        return Program.write(folder.resolve("scenario.properties"), text);
    }

    private List<NamedCsvRecord> events() throws IOException {
        try (CsvReader<NamedCsvRecord> rows =
                CsvReader.builder().ofNamedCsvRecord(results().resolve("events.csv"))) {
            return rows.stream().toList();
        }
    }

    private static double number(NamedCsvRecord row, String field) {
        return Double.parseDouble(row.getField(field));
    }

    /** Equal speeds and brakes: gap needed v T; contact after the leader stands at √(2 a (v T − g)). */
    @Test
    void shippedPairFollowsTheClosedForms() throws IOException {
        Program run = run();
        assertThat(run.exitCode()).isZero();
        double needed = 25 * (1.1 + 0.19);
        double gap = 25 * 1.25;
        double closing = Math.sqrt(2 * 6.5 * (needed - gap));
        assertThat(run.out())
                .contains("A van with filament stop lamps brakes, a car follows (invented data)")
                .contains("closing at 3.6 m/s (13 km/h)")
                .contains("Contact is avoided up to a lamp latency of 150 ms; it is 190 ms here.")
                .contains("contact avoided; gap needed: 4.25 m less")
                .contains("motion after a contact is not modelled", "No injury-risk curve is supplied");
        NamedCsvRecord contact = events().stream()
                .filter(row -> row.getField("event").equals("contact"))
                .findFirst()
                .orElseThrow();
        assertThat(number(contact, "closing_speed_mps")).isCloseTo(closing, within(1e-3));
        // momentum: 1400 kg into 2300 kg at restitution 0.1
        assertThat(number(contact, "speed_lost_mps")).isCloseTo(1.1 * closing * 2300 / 3700, within(1e-3));
        assertThat(number(contact, "speed_gained_ahead_mps")).isCloseTo(1.1 * closing * 1400 / 3700, within(1e-3));
        assertThat(number(contact, "gap_ahead_m")).isZero();
        assertThat(contact.getField("undisturbed")).isEqualTo("yes");
        try (Stream<Path> files = Files.list(results())) {
            assertThat(files.map(file -> String.valueOf(file.getFileName())))
                    .containsExactlyInAnyOrder("events.csv", "time_space.svg", "gap_time.svg");
        }
    }

    @Test
    void shippedChainListsEveryEventInOrder() throws IOException {
        Program run = run("--chain");
        assertThat(run.exitCode()).isZero();
        assertThat(run.out())
                .contains("2 of 4 gaps end in contact; first vehicle 3 into vehicle 2")
                .contains("on vehicle 2, contacts: 2 before, 1 with it.");
        List<NamedCsvRecord> events = events();
        assertThat(events.stream().map(row -> number(row, "time_s")).toList()).isSorted();
        // pedals: 1.29 s a vehicle, 0.5 s more before the tired driver
        assertThat(events.stream()
                        .filter(row -> row.getField("event").equals("pedal_pressed"))
                        .map(row -> row.getField("time_s"))
                        .toList())
                .containsExactly("0.0000", "1.2900", "2.5800", "4.3700", "5.6600");
        assertThat(events.stream().filter(row -> row.getField("event").equals("contact")))
                .hasSize(2);
        assertThat(events.stream().filter(row -> row.getField("event").equals("smallest_gap")))
                .hasSize(2);
        assertThat(events.stream().filter(row -> row.getField("event").equals("standstill")))
                .hasSize(5);
    }

    @Test
    void helpNamesEveryColumn() {
        Program run = Program.run("following", "--help");
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains(EventsCsv.HEADER).contains("--scenario", "--out", "--chain");
    }

    static Stream<String> keys() {
        return Stream.of(Heading.KEYS, FollowingScenario.OF_ALL, FollowingScenario.OF_A_VEHICLE)
                .flatMap(keys -> keys.names().stream());
    }

    @ParameterizedTest
    @MethodSource("keys")
    void shippedPairShowsEachKey(String key) {
        assertThat(Resource.text(FollowingScenario.PAIR)).containsPattern("(?m)^" + Pattern.quote(key) + " = \\S");
    }

    @Test
    void printedScenarioCanBeReadBack() {
        Program printed = Program.run("following", "--chain", "--print-scenario");
        assertThat(printed.out()).isEqualTo(Resource.text(FollowingScenario.CHAIN));
        Path copy = Program.write(folder.resolve("copy.properties"), printed.out());
        assertThat(run("--scenario", copy.toString()).out()).contains("2 of 4 gaps end in contact");
    }

    @Test
    void standingLeaderAndSilentFollowerAreNamed() {
        Path standing = scenario(
                FollowingScenario.PAIR, "vehicle.1.speed", "0 km/h", "vehicle.2.responds", "no", "gap", "100 m");
        Program run = run("--scenario", standing.toString());
        assertThat(run.exitCode()).isZero();
        assertThat(run.out())
                .contains("never", "none helps", "contact at 4.00 s, closing at 25.0 m/s (90 km/h)")
                .contains("The follower does not respond, so the lamp plays no part.");
    }

    @Test
    void vehiclesThatGoOnAreNamed() {
        Program run = run(
                "--scenario", scenario(FollowingScenario.PAIR, "responds", "no").toString());
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("does not brake: its lamp stays dark", "Nobody touches anybody.");
    }

    @ParameterizedTest
    @CsvSource({"time_space.svg, --chain", "gap_time.svg, --chain", "time_space.svg,", "gap_time.svg,"})
    void pictureIsWellFormedAndSaysWhatItShows(String name, String option) throws Exception {
        assertThat((option == null ? run() : run(option)).exitCode()).isZero();
        String svg = Files.readString(results().resolve(name));
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        Element root = factory.newDocumentBuilder()
                .parse(new InputSource(new StringReader(svg)))
                .getDocumentElement();
        assertThat(root.getAttribute("viewBox")).startsWith("0 0 640 ");
        assertThat(root.getElementsByTagNameNS("*", "title").item(0).getTextContent())
                .contains("invented data");
        assertThat(root.getElementsByTagNameNS("*", "desc").item(0).getTextContent())
                .contains("contact at", "closing at");
        assertThat(svg).contains("sl-cross", "time (s)", "invented data").doesNotContain("NaN", "Infinity");
        assertThat(svg.replace("http://www.w3.org/2000/svg", "")).doesNotContain("http:", "href=", "<script");
    }

    @Test
    void longChainIsCutInPicturesAndListButNotInTheTable() throws IOException {
        Path many = scenario(FollowingScenario.PAIR, "vehicles", "300");
        Program run = run("--scenario", many.toString());
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("... 275 more vehicles are in events.csv");
        assertThat(Files.readString(results().resolve("time_space.svg"))).contains("first 12 of 300 vehicles");
        assertThat(events().stream().map(row -> row.getField("vehicle")).distinct())
                .hasSize(300);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "speed | -5 km/h | speed = -5 km/h: speed must be in [0, 150] m/s, got -1.38889 m/s (allowed: [0, 150] m/s)",
                "speed | 600 km/h | speed = 600 km/h: speed must be in [0, 150] m/s, got 166.667 m/s",
                "speed | NaN | speed = NaN: ",
                "speed | 90 m | speed = 90 m: ",
                "gap | -1 m | gap = -1 m: must be in [0, 100000] m, got -1 m",
                "gap | far | gap = far: ",
                "reaction | 31 s | reaction = 31 s: must be in [0, 30] s, got 31 s",
                "mass | 0 kg | mass = 0 kg: ",
                "vehicle.1.mass | 1001 t | vehicle.1.mass = 1001 t: mass must be in (0, 1000000] kg, got 1001000 kg",
                "restitution | 1.5 | restitution = 1.5: must be in [0, 1], got 1.5",
                "vehicles | 1 | vehicles = 1: must be in [2, 1000], got 1",
                "vehicles | two | vehicles = two: not a whole number (allowed: [2, 1000])",
                "responds | perhaps | responds = perhaps: must be one of yes, no",
                "compare.vehicle | 3 | compare.vehicle = 3: there are only 2 vehicles",
                "vehicle.3.speed | 50 km/h | vehicle.3.speed = 50 km/h: is not used: there are 2 vehicles, and",
                "vehicle.1.gap | 5 m | vehicle.1.gap = 5 m: is not used: there are 2 vehicles, and the first has neither",
                "vehicle.0.speed | 50 km/h | vehicle.0.speed = 50 km/h: unknown key; the keys are title, invented,",
                "colour | red | colour = red: unknown key; the keys are title, invented, vehicles,"
            })
    void badInputIsOneLineAndWritesNothing(String key, String value, String message) {
        Path file = scenario(FollowingScenario.PAIR, key, value);
        Program run = run("--scenario", file.toString());
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).startsWith(file + ": " + message);
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.out()).isEmpty();
        assertThat(results()).doesNotExist();
    }

    @Test
    void failedRunLeavesEarlierResultsAlone() throws IOException {
        assertThat(run().exitCode()).isZero();
        String before = Files.readString(results().resolve("events.csv"));
        assertThat(run(
                                "--scenario",
                                scenario(FollowingScenario.PAIR, "speed", "fast")
                                        .toString())
                        .exitCode())
                .isEqualTo(2);
        assertThat(results().resolve("events.csv")).hasContent(before);
        Program both = run("--chain", "--scenario", "x");
        assertThat(both.exitCode()).isEqualTo(2);
        assertThat(both.err().strip()).isEqualTo("--chain and --scenario: give one of the two");
        Path missing = folder.resolve("missing.properties");
        assertThat(run("--scenario", missing.toString()).err().strip())
                .isEqualTo(missing + ": cannot be read: no such file");
    }
}
