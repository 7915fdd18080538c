package io.github.stoplag.examples.sweep.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.program.Build;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.SweepListener;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A run that was cut off, politely or by killing its process, ends with the bits of one that was not. */
class SweepJobTest {
    private static final int CHUNK = Plan.CHUNK;
    private static final String PLAN = """
            title = cut off
            scenarios = 720000
            seed = 11
            lamps = bulb, diode
            speed = truncated-normal 100 km/h, 10 km/h, 60 km/h, 140 km/h
            gap = uniform 5 m, 60 m
            reaction = log-normal 0.17, 0.44
            follower_decel = uniform 4 m/s^2, 9 m/s^2
            friction = uniform 0.1, 0.9
            grade = uniform -0.2, 0.2
            lamp_latency_bulb = constant 100 ms
            lamp_latency_diode = constant 1 ms
            """;
    // into the second part file, which is not whole
    private static final long ROWS = 270_000;

    @TempDir
    static Path shared;

    @TempDir
    Path folder;

    private static Map<String, String> whole = Map.of();

    private Path planPath = Path.of("");

    @BeforeAll
    static void runWhole() throws IOException {
        Path plan = Files.writeString(shared.resolve("plan.properties"), PLAN);
        Path run = shared.resolve("whole");
        whole = left(run, job(plan, run, ROWS, 2, 32).start((done, all) -> {}, () -> false));
    }

    @BeforeEach
    void planFile() throws IOException {
        planPath = Files.writeString(folder.resolve("plan.properties"), PLAN);
    }

    /** A job that is opened for each run and closed after it. */
    private record Job(Path plan, Path run, long rows, int threads, int checkpoint) {
        SweepJob open() {
            return SweepJob.open(Plans.read(plan), new SweepRows(RowFormat.CSV, rows), run, threads, checkpoint);
        }

        SweepOutcome start(SweepListener listener, BooleanSupplier cancelled) {
            try (SweepJob job = open()) {
                return job.start(listener, cancelled);
            }
        }

        SweepOutcome resume(SweepListener listener, BooleanSupplier cancelled) {
            try (SweepJob job = open()) {
                return job.resume(listener, cancelled);
            }
        }
    }

    private Job job(String name, long rows, int threads, int checkpoint) {
        return new Job(planPath, folder.resolve(name), rows, threads, checkpoint);
    }

    private static Job job(Path plan, Path run, long rows, int threads, int checkpoint) {
        return new Job(plan, run, rows, threads, checkpoint);
    }

    /** Everything a run leaves: its files, the statistics to the last bit, and the rejected scenarios. */
    private static Map<String, String> left(Path run, SweepOutcome outcome) throws IOException {
        assertThat(outcome.result().complete()).isTrue();
        Map<String, String> left = new TreeMap<>();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        outcome.result().tally().save(new DataOutputStream(bytes));
        outcome.map().save(new DataOutputStream(bytes));
        left.put("statistics", Sha256.of(HexFormat.of().formatHex(bytes.toByteArray())));
        left.put("rejects", outcome.result().rejects().toString());
        left.put("scenarios", Long.toString(outcome.result().scenarios()));
        try (Stream<Path> files = Files.list(run)) {
            for (Path file : files.toList()) {
                left.put(file.getFileName().toString(), Sha256.of(file));
            }
        }
        // written at other places on the way, and not a result
        left.remove(Checkpoint.FILE);
        return left;
    }

    private static BooleanSupplier after(AtomicLong done, long scenarios) {
        return () -> done.get() >= scenarios;
    }

    @ParameterizedTest
    @CsvSource({"1, 1, 1", "3, 100, 5", "2, 4, 8"})
    void cancelledRunGoesOnWithTheSameBits(int threads, int checkpoint, int cutAfterChunks) throws IOException {
        AtomicLong done = new AtomicLong();
        SweepOutcome cut = job("cut", ROWS, threads, checkpoint)
                .start((counted, all) -> done.set(counted), after(done, (long) cutAfterChunks * CHUNK));
        assertThat(cut.result().complete()).isFalse();
        assertThat(cut.result().scenarios() % CHUNK).isZero();
        assertThat(SweepJob.wasCutOff(folder.resolve("cut"))).isTrue();
        AtomicLong first = new AtomicLong(Long.MAX_VALUE);
        SweepOutcome resumed = job("cut", ROWS, 2, 32)
                .resume((counted, all) -> first.accumulateAndGet(counted, Math::min), () -> false);
        // the next whole chunk, nothing counted again
        assertThat(first.get()).isEqualTo(Math.min(720_000, cut.result().scenarios() + CHUNK));
        assertThat(left(folder.resolve("cut"), resumed)).isEqualTo(whole);
        assertThat(resumed.partNames()).containsExactly("part-00000.csv", "part-00001.csv");
    }

    @Test
    void missingAndDamagedPartsAreMadeAnewAndNothingElse() throws IOException {
        AtomicLong done = new AtomicLong();
        // all rows are in whole parts before the end
        job("cut", ROWS, 1, 1).start((counted, all) -> done.set(counted), after(done, 6L * CHUNK));
        Path run = folder.resolve("cut");
        Files.delete(run.resolve("part-00000.csv"));
        Path second = run.resolve("part-00001.csv");
        Files.writeString(second, Files.readString(second).replaceFirst("\n262144,", "\n262145,"));
        Files.writeString(run.resolve("part-00002.csv"), "left by another run");
        Files.writeString(run.resolve("part-00001.csv.unfinished"), "left by another run");
        AtomicLong first = new AtomicLong(Long.MAX_VALUE);
        try (SweepJob job = job("cut", ROWS, 2, 32).open()) {
            SweepOutcome resumed =
                    job.resume((counted, all) -> first.accumulateAndGet(counted, Math::min), () -> false);
            assertThat(job.remade()).containsExactly("part-00000.csv", "part-00001.csv");
            assertThat(first.get()).isEqualTo(7L * CHUNK);
            assertThat(left(run, resumed)).isEqualTo(whole);
        }
    }

    @Test
    void partChangedWhileTheRunGoesOnIsNotCertified() {
        Job job = job("changed", ROWS, 1, 1);
        Path part = folder.resolve("changed").resolve("part-00000.csv");
        SweepListener shortens = (counted, all) -> {
            if (counted == 7L * CHUNK) {
                try {
                    String text = Files.readString(part);
                    Files.writeString(part, text.substring(0, text.length() / 4));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
        };
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> job.start(shortens, () -> false))
                .withMessage(folder.resolve("changed") + ": cannot be written: part-00000.csv is not as it was written;"
                        + " --resume makes it anew");
    }

    @Test
    void twoJobsCannotHaveOneFolder() throws IOException {
        try (SweepJob first = job("shared", 100, 1, 1).open()) {
            assertThatExceptionOfType(InputException.class)
                    .isThrownBy(() -> job("shared", 100, 1, 1).open())
                    .withMessageStartingWith(folder.resolve("shared") + ": another run is at work there (process ");
            assertThat(first.start((done, all) -> {}, () -> false).result().complete())
                    .isTrue();
        }
        // given back, and no trace left beside the folder
        job("shared", 100, 1, 1).open().close();
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder("plan.properties", "shared");
        }
    }

    @ParameterizedTest
    @CsvSource({"1, 5", "3, 2"})
    void killedProcessGoesOnWithTheSameBits(int checkpoint, int standAfterChunks) throws Exception {
        Path run = folder.resolve("killed");
        Process child = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        CutOff.class.getName(),
                        planPath.toString(),
                        run.toString(),
                        Long.toString(ROWS),
                        Integer.toString(checkpoint),
                        Long.toString((long) standAfterChunks * CHUNK))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try (BufferedReader said = child.inputReader()) {
            assertThat(said.readLine()).isEqualTo(CutOff.REACHED);
            // while it lives the folder is its own
            assertThatExceptionOfType(InputException.class)
                    .isThrownBy(() -> job("killed", ROWS, 2, 32).resume((done, all) -> {}, () -> false))
                    .withMessageStartingWith(run + ": another run is at work there (process " + child.pid() + ")");
        } finally {
            child.destroyForcibly().waitFor();
        }
        assertThat(SweepJob.wasCutOff(run)).isTrue();
        SweepOutcome resumed = job("killed", ROWS, 2, 32).resume((done, all) -> {}, () -> false);
        assertThat(left(run, resumed)).isEqualTo(whole);
    }

    @Test
    void checkpointOfAnotherPlanOrOtherRowsIsRefused() throws IOException {
        AtomicLong done = new AtomicLong();
        job("cut", 100, 1, 1).start((counted, all) -> done.set(counted), after(done, CHUNK));
        Path checkpoint = folder.resolve("cut").resolve(Checkpoint.FILE);
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> job("cut", 200, 1, 1).resume((d, all) -> {}, () -> false))
                .withMessage(
                        "--resume: " + checkpoint
                                + ": cannot be used: it must be of the same --rows and --format (200 rows, CSV), got 100 rows, CSV");
        String before = Plans.read(planPath).digest();
        Files.writeString(planPath, PLAN.replace("seed = 11", "seed = 12"));
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> job("cut", 100, 1, 1).resume((d, all) -> {}, () -> false))
                .withMessage("--resume: " + checkpoint + ": cannot be used: it must be of the plan " + planPath + " ("
                        + Plans.read(planPath).digest() + "), got " + before);
    }

    @Test
    void checkpointOfAnotherVersionIsRefused() throws IOException {
        AtomicLong done = new AtomicLong();
        job("cut", 0, 1, 1).start((counted, all) -> done.set(counted), after(done, CHUNK));
        Path checkpoint = folder.resolve("cut").resolve(Checkpoint.FILE);
        String version = Build.stoplagVersion();
        String other = "9".repeat(version.length());
        String bytes = new String(Files.readAllBytes(checkpoint), StandardCharsets.ISO_8859_1);
        Files.writeString(checkpoint, bytes.replaceFirst(Pattern.quote(version), other), StandardCharsets.ISO_8859_1);
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> job("cut", 0, 1, 1).resume((d, all) -> {}, () -> false))
                .withMessage("--resume: " + checkpoint + ": cannot be used: it must be of this version of the library ("
                        + version + "), got " + other);
    }

    @Test
    void missingAndDamagedCheckpointsAreNamed() throws IOException {
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> job("none", 100, 1, 1).resume((d, all) -> {}, () -> false))
                .withMessage("--resume: " + folder.resolve("none") + ": there is no run that was cut off");
        AtomicLong done = new AtomicLong();
        job("cut", ROWS, 1, 1).start((counted, all) -> done.set(counted), after(done, 6L * CHUNK));
        Path checkpoint = folder.resolve("cut").resolve(Checkpoint.FILE);
        byte[] bytes = Files.readAllBytes(checkpoint);
        Files.write(checkpoint, Arrays.copyOf(bytes, bytes.length / 2));
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> job("cut", ROWS, 1, 1).resume((d, all) -> {}, () -> false))
                .withMessageStartingWith("--resume: " + checkpoint + ": cannot be used: ");
    }
}
