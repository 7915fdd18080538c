package io.github.stoplag.examples.spark;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.stoplag.examples.sweep.run.Plans;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.Sweep;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SparkSweepCommandTest {
    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        out.getBuffer().setLength(0);
        err.getBuffer().setLength(0);
        return SparkSweepCommand.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    @Test
    void printsTheFiguresOfALocalRunAndReplacesItsOwnResults() throws IOException {
        Path results = folder.resolve("results");
        assertThat(run("--scenarios=100000", "--out", results.toString(), "--partitions=2"))
                .isZero();
        PlanFile file = Plans.shipped().withScenarios(100_000);
        List<String> local =
                JobReport.lines(file, Sweep.of(file.plan(), file.model()).run(() -> new PairTally(file.pairModel())));
        assertThat(out.toString().lines()).startsWith(local.toArray(String[]::new));
        assertThat(out.toString())
                .contains("Data are invented.")
                .contains("not a crash rate")
                .contains(" in 2 tasks.\n");
        JsonNode manifest = new ObjectMapper()
                .readTree(results.resolve(ResultFolder.MANIFEST).toFile());
        assertThat(manifest.get("plan_sha256").asText()).isEqualTo(file.digest());
        assertThat(manifest.get("rows").get("columns"))
                .hasSize(1 + RowSchema.columns(file).size());
        byte[] statistics = Files.readAllBytes(results.resolve(ResultFolder.STATISTICS));
        assertThat(run("--scenarios=100000", "--out", results.toString(), "--partitions=1"))
                .isZero();
        assertThat(Files.readAllBytes(results.resolve(ResultFolder.STATISTICS))).isEqualTo(statistics);
        try (Stream<Path> parts = Files.list(results.resolve(ResultFolder.ROWS))) {
            assertThat(parts.filter(part -> part.toString().endsWith(".parquet")))
                    .hasSize(1);
        }
        Files.writeString(results.resolve("notes.txt"), "mine");
        assertThat(run("--scenarios=100000", "--out", results.toString())).isEqualTo(2);
        assertThat(err.toString())
                .isEqualTo("--out = " + results
                        + ": holds notes.txt, which this program did not write; name a new or empty folder\n");
        assertThat(results.resolve(ResultFolder.MANIFEST)).exists();
    }

    @Test
    void badOptionsEndWithOneLine() {
        assertThat(run("--partitions=0")).isEqualTo(2);
        assertThat(err.toString()).isEqualTo("--partitions must be at least 1, got 0\n");
        assertThat(run("--scenarios=0")).isEqualTo(2);
        assertThat(err.toString()).startsWith("--scenarios = 0: ").hasLineCount(1);
        Path missing = folder.resolve("no.properties");
        assertThat(run("--plan", missing.toString())).isEqualTo(2);
        assertThat(err.toString()).isEqualTo(missing + ": cannot be read: no such file\n");
        assertThat(run("--threads=3")).isEqualTo(2);
        assertThat(err.toString()).contains("--threads").endsWith(" (see --help)\n");
        assertThat(run("--help")).isZero();
        assertThat(out.toString()).contains("Started by spark-submit it runs where that says");
    }

    @Test
    void aPlanFileTravelsAsText() throws IOException {
        Path plan = folder.resolve("plan.properties");
        Files.writeString(plan, """
                title = invented test plan
                scenarios = 1000
                lamps = led
                speed = constant 25 m/s
                gap = constant 20 m
                reaction = log-normal 0.17, 0.44
                follower_decel = constant 7 m/s^2
                lamp_latency_led = constant 0 s
                """);
        PlanText text = PlanText.of(plan.toString(), Files.readString(plan)).withSeed(5);
        assertThat(text.plan().text()).isEqualTo(Plans.read(plan).withSeed(5).text());
    }
}
