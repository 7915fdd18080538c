package io.github.stoplag.examples.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.examples.Main;
import io.github.stoplag.examples.Pictures;
import io.github.stoplag.examples.Program;
import io.github.stoplag.examples.sweep.run.Manifest;
import io.github.stoplag.examples.sweep.run.Plans;
import io.github.stoplag.examples.sweep.run.RowFormat;
import io.github.stoplag.examples.sweep.run.SweepJob;
import io.github.stoplag.examples.sweep.run.SweepRows;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The program {@code sweep} as its user meets it. */
class SweepRunTest {
    private static final List<String> TABLES =
            List.of("summary.csv", "convergence.csv", "contacts.csv", "sensitivities.csv", "one_at_a_time.csv");

    @TempDir
    Path folder;

    private Path results() {
        return folder.resolve("results");
    }

    private Program run(String... more) {
        return Program.into(results(), "sweep", more);
    }

    private static Map<String, String> digests(Path results) throws Exception {
        Map<String, String> digests = new TreeMap<>();
        try (Stream<Path> files = Files.list(results)) {
            for (Path file : files.toList()) {
                digests.put(String.valueOf(file.getFileName()), sha256(Files.readAllBytes(file)));
            }
        }
        return digests;
    }

    private static String sha256(byte[] bytes) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    }

    /** The shipped plan with distributions that need no tables, which take most of the time of a short run. */
    private Path light(String... more) {
        List<String> changes = new ArrayList<>(List.of(
                "speed",
                "uniform 80 km/h, 140 km/h",
                "leader_decel",
                "uniform 3 m/s^2, 8 m/s^2",
                "follower_decel",
                "uniform 4 m/s^2, 9 m/s^2",
                "supply",
                "uniform 11.5 V, 14.4 V"));
        changes.addAll(List.of(more));
        return Program.changed(folder, Plans.SHIPPED, changes.toArray(String[]::new));
    }

    private static double value(Path results, String quantity, String lamp, String field) {
        NamedCsvRecord row = Program.summary(results).stream()
                .filter(r -> r.getField("quantity").equals(quantity)
                        && r.getField("lamp").equals(lamp))
                .findFirst()
                .orElseThrow();
        return Double.parseDouble(row.getField(field));
    }

    @Test
    void everyFileHasTheSameBytesOnAnyThreadCount() throws Exception {
        Map<String, String> one = Map.of();
        String plan = light("scenarios", "140000").toString();
        for (String threads : List.of("1", "2", "3")) {
            Program run = run("--plan", plan, "--rows", "100", "--threads", threads);
            assertThat(run.exitCode()).as(run.err()).isZero();
            one = one.isEmpty() ? digests(results()) : one;
            assertThat(digests(results())).isEqualTo(one);
        }
        assertThat(one.keySet())
                .containsAll(TABLES)
                .contains(
                        "manifest.json",
                        "report.html",
                        "part-00000.parquet",
                        "contact_by_gap.svg",
                        "contact_by_gap_and_speed.svg",
                        "closing_speed.svg",
                        "variance_shares.svg",
                        "one_axis_held.svg")
                .hasSize(14);
        assertThat(results().resolveSibling("results.unfinished")).doesNotExist();
    }

    /** Non-regression: our own output, so that one JDK is held against another. */
    @Test
    void tablesAndRowsHaveTheSameBytesOnEveryJdk() throws Exception {
        assertThat(run("--scenarios", "70000", "--rows", "1000", "--format", "csv")
                        .exitCode())
                .isZero();
        StringBuilder all = new StringBuilder();
        for (String table : TABLES) {
            all.append(Files.readString(results().resolve(table)));
        }
        all.append(Files.readString(results().resolve("part-00000.csv")));
        assertThat(sha256(all.toString().getBytes(StandardCharsets.UTF_8)))
                .isEqualTo("c422113fda259a37a4daab74ebad24a11c9202dbdca828685b9cd3ec6baa22d6");
    }

    /** Equal braking and no other lag: contact if and only if reaction exceeds the time gap, both log-normal. */
    @Test
    void contactProbabilityIsThatOfTwoLogNormals() throws IOException {
        Path plan = Program.write(folder.resolve("oracle.properties"), """
                title = oracle
                scenarios = 200000
                seed = 5
                lamps = lamp
                speed = uniform 20 m/s, 40 m/s
                time_gap = log-normal 0.2055, 0.3798
                reaction = study koppa-1997-surprise
                follower_decel = uniform 3 m/s^2, 9 m/s^2
                lamp_latency_lamp = constant 0 s
                """);
        Program run = run("--plan", plan.toString(), "--rows", "none");
        assertThat(run.exitCode()).as(run.err()).isZero();
        double exact = NormalDistribution.of(0, 1).cumulativeProbability((0.17 - 0.2055) / Math.hypot(0.44, 0.3798));
        double found = value(results(), "contact_probability", "lamp", "value");
        // four standard errors; the interval of 95 % may miss
        assertThat(found).isCloseTo(exact, offset(4 * Math.sqrt(exact * (1 - exact) / 200_000)));
        double half = (value(results(), "contact_probability", "lamp", "interval_hi")
                        - value(results(), "contact_probability", "lamp", "interval_lo"))
                / 2;
        assertThat(half).isCloseTo(1.959964 * Math.sqrt(exact * (1 - exact) / 200_000), offset(1e-5));
        double integrated = value(results(), "contact_probability_gap_integrated", "lamp", "value");
        // its scatter is at most that of the plain share
        assertThat(integrated).isCloseTo(exact, offset(4 * Math.sqrt(exact * (1 - exact) / 200_000)));
        assertThat(run.out())
                .doesNotContain("Data are invented.")
                .contains("oracle", "200,000 scenarios, random design, seed 5")
                .contains("No single scenarios are in files");
    }

    @Test
    void reportSaysWhatTheNumbersAreAndAreNot() throws Exception {
        Program run = run("--scenarios", "10000", "--rows", "10");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("Data are invented.")
                .containsIgnoringWhitespaces("Only 72 % of the drivers respond to the lamp, the other 28 % never brake")
                .containsIgnoringWhitespaces("Intervals cover sampling alone, the scatter of so many draws")
                .containsIgnoringWhitespaces(
                        "filament: series resistance, ambient temperature, coil factor, gas-loss share held")
                .containsIgnoringWhitespaces("It is not a crash rate and no proof of safety.")
                .contains("filament less led, on the same draws:", "95 % interval")
                .contains("each quantile within 0.2 % of an exact one")
                .contains("Leading sensitivities with the filament lamp")
                .contains("with the gap integrated out instead of drawn, over 10,000 independent draws")
                .contains("Convergence of the contact probability")
                .contains("No scenario was rejected.")
                .contains("the first 10 of them are in part-00000.parquet");
        assertThat(run.err()).contains("100 %: 10,000 of 10,000 scenarios");
        for (String picture : List.of(
                "contact_by_gap", "contact_by_gap_and_speed", "closing_speed", "variance_shares", "one_axis_held")) {
            Pictures.assertGood(Files.readString(results().resolve(picture + ".svg")));
        }
        String page = Files.readString(results().resolve("report.html"));
        Pictures.assertSelfContained(page);
        Pictures.parse(page.replace("<!DOCTYPE html>", ""));
        assertThat(page).contains("invented data", "not a crash rate", "reaction = study sivak-1982");
        JsonNode manifest =
                new ObjectMapper().readTree(results().resolve(Manifest.FILE).toFile());
        JsonNode result =
                new ObjectMapper().readTree(results().resolve("result.json").toFile());
        assertThat(result.get("responding_share_ratio").asDouble()).isCloseTo(0.72, offset(1e-12));
        assertThat(result.get("interval_covers").asText()).startsWith("Intervals cover sampling alone");
        for (JsonNode lamp : result.get("lamps")) {
            double p = lamp.get("contact_probability_ratio").asDouble();
            assertThat(p)
                    .isCloseTo(
                            value(
                                    results(),
                                    "contact_probability",
                                    lamp.get("lamp").asText(),
                                    "value"),
                            offset(1e-8));
            // all who do not respond are in it
            assertThat(p)
                    .isBetween(
                            lamp.get("sampling_interval_low_ratio").asDouble(),
                            lamp.get("sampling_interval_high_ratio").asDouble())
                    .isGreaterThan(0.28);
        }
        assertThat(result.get("differences")
                        .get(0)
                        .get("contact_probability_difference_ratio")
                        .asDouble())
                .isPositive();
        assertThat(manifest.get("complete").asBoolean()).isTrue();
        assertThat(manifest.get("assumptions")).isNotEmpty();
        assertThat(manifest.get("sources_and_caveats").toString())
                .contains("reaction_s: Sivak, Olson & Farmer", "a share of 0.28 did not respond within 3 s");
        for (JsonNode file : manifest.get("files")) {
            byte[] bytes = Files.readAllBytes(results().resolve(file.get("name").asText()));
            assertThat(file.get("sha256").asText()).isEqualTo(sha256(bytes));
        }
        assertThat(manifest.get("files")).hasSize(13);
    }

    @Test
    void rejectedScenariosAreCountedAndReported() {
        Path plan = light("grade", "constant -120 %", "scenarios", "2000");
        assertThat(run("--plan", plan.toString()).err()).startsWith(plan + ": grade = -120 %: ");
        plan = light("grade", "constant -50 %", "scenarios", "2000");
        Program run = run("--plan", plan.toString());
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("scenarios were rejected:", "x friction must outweigh the downgrade, first scenario");
        assertThat(value(results(), "rejected", "all", "value")).isBetween(100.0, 1300.0);
    }

    @Test
    void planWithoutAnyPossibleScenarioSaysSo() {
        Path plan = Program.changed(
                folder, Plans.SHIPPED, "grade", "constant -50 %", "friction", "constant 0.3", "scenarios", "500");
        Program run = run("--plan", plan.toString());
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out()).contains("500 scenarios were rejected:").doesNotContain("probability  95 %");
    }

    @Test
    void sharesOfVarianceSayHowManyBaseScenariosTheyLeaveOut() {
        Path plan = light("grade", "uniform -46 %, 0 %", "scenarios", "1000");
        assertThat(run("--plan", plan.toString()).out())
                .containsPattern("\\(32,768 base\nscenarios, drawn apart; [0-9,]+ of them left out, because");
        plan = light("grade", "constant -50 %", "scenarios", "1000");
        assertThat(run("--plan", plan.toString()).out())
                .containsPattern(
                        "No shares of variance: in [0-9]+ of 32768 base scenarios they or a mixture of two are");
    }

    @Test
    void gridWithoutDrawsHasNoIntervals() {
        Path plan = Program.write(folder.resolve("grid.properties"), """
                title = grid
                design = grid
                lamps = lamp
                speed = list 20 m/s, 30 m/s
                gap = range 5 m, 60 m, 12
                reaction = constant 1.2 s
                follower_decel = list 5 m/s^2, 7 m/s^2
                leader_decel = constant 6 m/s^2
                lamp_latency_lamp = constant 0.1 s
                """);
        Program run = run("--plan", plan.toString());
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("No intervals: the grid draws nothing")
                .contains("with one axis held at its lowest and highest level, the others drawn:")
                .doesNotContain("95 % interval", "gap integrated out");
        assertThat(Program.summary(results())).allSatisfy(row -> {
            assertThat(row.getField("interval_lo")).isEmpty();
            assertThat(row.getField("interval_hi")).isEmpty();
        });
    }

    @Test
    void planWithCorrelationHasNoSharesOfVariance() {
        Path plan = light("correlations", "speed time_gap 0.4", "scenarios", "3000");
        Program run = run("--plan", plan.toString(), "--rows", "0");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("No shares of variance: shares of variance need independent axes.")
                .containsIgnoringWhitespaces("one that is correlated with it given the held value:")
                .doesNotContain("gap integrated out");
        assertThat(results().resolve("variance_shares.svg")).doesNotExist();
    }

    @Test
    void cutOffRunIsNotOverwrittenAndGoesOn() throws Exception {
        String plan = light("scenarios", "140000").toString();
        String[] options = {"--plan", plan, "--rows", "70000", "--format", "csv"};
        assertThat(run(options).exitCode()).isZero();
        Map<String, String> whole = digests(results());
        Path work = folder.resolve("results.unfinished");
        AtomicLong done = new AtomicLong();
        try (SweepJob job =
                SweepJob.open(Plans.read(Path.of(plan)), new SweepRows(RowFormat.CSV, 70_000), work, 1, 1)) {
            job.start((counted, all) -> done.set(counted), () -> done.get() > 0);
            for (String option : List.of("--resume", "--restart", "--rows=70000")) {
                Program intruder = run(option, "--plan", plan);
                assertThat(intruder.exitCode()).isEqualTo(2);
                assertThat(intruder.err().strip())
                        .isEqualTo(work + ": another run is at work there (process "
                                + ProcessHandle.current().pid()
                                + "); wait until it ends or name another folder with --out");
            }
        }
        assertThat(run(options).err().strip())
                .isEqualTo(work + ": holds a run that was cut off; go on with --resume or discard it with --restart");
        assertThat(run("--resume", "--plan", plan, "--seed", "3", "--rows", "70000", "--format", "csv")
                        .err())
                .startsWith("--resume: " + work.resolve("checkpoint.bin") + ": cannot be used: it must be of the plan");
        assertThat(digests(results())).isEqualTo(whole);
        Program resumed = run("--resume", "--plan", plan, "--rows", "70000", "--format", "csv", "--threads", "2");
        assertThat(resumed.exitCode()).as(resumed.err()).isZero();
        assertThat(digests(results())).isEqualTo(whole);
        assertThat(work).doesNotExist();
    }

    /** What a process leaves that is killed after its last scenario and before its folder is in place. */
    @Test
    void runCutOffBeforeItsFolderIsInPlaceOnlyMovesIt() throws Exception {
        String plan = light("scenarios", "3000").toString();
        String[] options = {"--plan", plan, "--rows", "2000", "--format", "csv"};
        assertThat(run(options).exitCode()).isZero();
        Map<String, String> whole = digests(results());
        Path work = folder.resolve("results.unfinished");
        try (SweepJob job = SweepJob.open(Plans.read(Path.of(plan)), new SweepRows(RowFormat.CSV, 2000), work, 1, 1)) {
            job.start((counted, all) -> {}, () -> false);
        }
        // left by an attempt with other tables or parts; not to be shipped
        Files.writeString(work.resolve("part-00007.csv"), "stale");
        Files.writeString(work.resolve("variance_shares.svg"), "stale");
        for (String table : TABLES) {
            Files.copy(results().resolve(table), work.resolve(table));
        }
        Files.copy(results().resolve(Manifest.FILE), work.resolve(Manifest.FILE));
        assertThat(run(options).err()).contains("holds a run that was cut off; go on with --resume");
        Program resumed = run("--resume", "--plan", plan, "--rows", "2000", "--format", "csv");
        assertThat(resumed.exitCode()).as(resumed.err()).isZero();
        assertThat(digests(results())).isEqualTo(whole);
        assertThat(work).doesNotExist();
    }

    @Test
    void gridOfTooManyScenariosIsOneLine() {
        Path plan = light("design", "grid", "speed", "list 80 km/h, 100 km/h, 120 km/h");
        Program run = run("--plan", plan.toString(), "--scenarios", "281474976710656");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err())
                .startsWith("--scenarios = 281474976710656: a grid must have at most 2^48 scenarios, got more");
        assertThat(run.err().lines()).hasSize(1);
        assertThat(results()).doesNotExist();
    }

    /** Gives the next line that is the program's own: later JDKs warn of what the Parquet library does. */
    private static String line(BufferedReader said) throws IOException {
        String line = said.readLine();
        while (line != null && (line.isEmpty() || line.startsWith("WARNING: "))) {
            line = said.readLine();
        }
        return String.valueOf(line);
    }

    @Test
    void politeKillLeavesAStateThatGoesOn() throws Exception {
        Process child = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Main.class.getName(),
                        "sweep",
                        "--out",
                        results().toString(),
                        "--scenarios",
                        "200000000000",
                        "--rows",
                        "100",
                        "--threads",
                        "1")
                .redirectErrorStream(true)
                .start();
        try (BufferedReader said = child.inputReader()) {
            assumeTrue(child.supportsNormalTermination(), "this system can only kill a process, not ask it to end");
            assertThat(line(said)).isEqualTo("  0 %: 65,536 of 200,000,000,000 scenarios");
            // Process.destroy would close the stream
            child.toHandle().destroy();
            assertThat(line(said)).matches("Cut off after [0-9,]+ of 200,000,000,000 scenarios; --resume goes on\\.");
        } finally {
            child.destroyForcibly().waitFor();
        }
        Path work = folder.resolve("results.unfinished");
        assertThat(SweepJob.wasCutOff(work)).isTrue();
        JsonNode manifest =
                new ObjectMapper().readTree(work.resolve(Manifest.FILE).toFile());
        assertThat(manifest.get("complete").asBoolean()).isFalse();
        assertThat(manifest.get("scenarios_counted").asLong() % 65_536).isZero();
        assertThat(manifest.get("files").get(0).get("name").asText()).isEqualTo("part-00000.parquet");
        assertThat(results()).doesNotExist();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --rows      | -1    | --rows = -1: must be a whole number of at least 0, all or none
            --rows      | some  | --rows = some: must be a whole number of at least 0, all or none
            --format    | xml   | --format = xml: must be csv or parquet
            --threads   | 0     | --threads = 0: must be in [1, 1024]
            --checkpoint | 0    | --checkpoint = 0: must be in [1, 1000000]
            --scenarios | 0     | --scenarios = 0: scenarios of a RANDOM design must be in [1, 281474976710656], got 0
            --plan      | none.properties | none.properties: cannot be read: no such file
            """)
    void badOptionIsOneLineAndWritesNothing(String option, String value, String complaint) {
        Program run = run(option, value);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).isEqualTo(complaint + System.lineSeparator());
        assertThat(run.out()).isEmpty();
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void folderWithOtherFilesIsLeftAlone() throws IOException {
        Files.createDirectories(results());
        Files.writeString(results().resolve("cat.jpg"), "precious");
        assertThat(run().err())
                .startsWith("--out = " + results() + ": holds cat.jpg, which this program did not write");
        assertThat(run("--resume", "--restart").exitCode()).isEqualTo(2);
        assertThat(results().resolve("cat.jpg")).hasContent("precious");
    }

    @Test
    void printedPlanCanBeReadBackAndHelpNamesTheFiles() {
        Program printed = Program.run("sweep", "--print-plan");
        Path copy = Program.write(folder.resolve("copy.properties"), printed.out());
        assertThat(Plans.read(copy).digest()).isEqualTo(Plans.shipped().digest());
        Program help = Program.run("sweep", "--help");
        assertThat(help.exitCode()).isZero();
        assertThat(help.out()).contains(TABLES).contains("manifest.json", "--resume", "--rows", "Not a crash rate");
    }
}
