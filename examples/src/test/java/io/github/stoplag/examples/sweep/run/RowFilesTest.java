package io.github.stoplag.examples.sweep.run;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.RowBlock;
import io.github.stoplag.sweep.Sweep;
import io.github.stoplag.sweep.Tally;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Row files read back by an independent reader, value by value. */
class RowFilesTest {
    private static final int CHUNK = Plan.CHUNK;
    private static final String PLAN = """
            title = rows
            scenarios = 270000
            seed = 3
            lamps = bulb
            speed = list 20 m/s, 160 km/h
            time_gap = uniform 0.5 s, 3 s
            reaction = log-normal 0.17, 0.44
            follower_decel = truncated-normal 6 m/s^2, 1 m/s^2, 3 m/s^2, 9 m/s^2
            friction = uniform 0.1, 0.9
            grade = constant -0.2
            lamp_latency_bulb = constant 100 ms
            """;

    @TempDir
    Path folder;

    /** Every column of every scenario, kept in memory by the sweep itself. */
    private static final class Kept implements Tally<Kept> {
        private final List<String> columns;
        private final List<double[]> rows = new ArrayList<>();

        Kept(List<String> columns) {
            this.columns = columns;
        }

        @Override
        public void add(RowBlock block) {
            for (int i = 0; i < block.count(); i++) {
                double[] row = new double[columns.size()];
                for (int c = 0; c < row.length; c++) {
                    row[c] = block.column(columns.get(c))[i];
                }
                rows.add(row);
            }
        }

        @Override
        public void absorb(Kept later) {
            rows.addAll(later.rows);
        }

        @Override
        public void clear() {
            rows.clear();
        }
    }

    private PlanFile plan() throws IOException {
        return Plans.read(Files.writeString(folder.resolve("plan.properties"), PLAN));
    }

    private SweepOutcome run(PlanFile plan, SweepRows rows) {
        return run(plan, rows, "run", 2);
    }

    private SweepOutcome run(PlanFile plan, SweepRows rows, String name, int threads) {
        try (SweepJob job = SweepJob.open(plan, rows, folder.resolve(name), threads, 2)) {
            return job.start((done, all) -> {}, () -> false);
        }
    }

    /** Compares every step-th row and returns how many there were. */
    private int assertSameRows(Path file, RowFormat format, Kept kept, long first, int step) throws SQLException {
        String reader = format == RowFormat.CSV
                ? "read_csv('%s', header = true, all_varchar = false, sample_size = -1)"
                : "read_parquet('%s')";
        int rows = 0;
        try (Connection duck = DriverManager.getConnection("jdbc:duckdb:");
                Statement ask = duck.createStatement();
                ResultSet read = ask.executeQuery("select * from " + String.format(Locale.ROOT, reader, file)
                        + " where scenario % " + step + " = 0")) {
            assertThat(read.getMetaData().getColumnName(1)).isEqualTo("scenario");
            for (int c = 0; c < kept.columns.size(); c++) {
                assertThat(read.getMetaData().getColumnName(c + 2)).isEqualTo(kept.columns.get(c));
            }
            while (read.next()) {
                long scenario = read.getLong(1);
                assertThat(scenario).isEqualTo(first + (long) rows * step);
                double[] wanted = kept.rows.get((int) scenario);
                for (int c = 0; c < wanted.length; c++) {
                    double value = read.getDouble(c + 2);
                    double found = read.wasNull() ? Double.NaN : value;
                    if (Double.doubleToLongBits(found) != Double.doubleToLongBits(wanted[c])) {
                        assertThat(found)
                                .as("%s of %d", kept.columns.get(c), scenario)
                                .isEqualTo(wanted[c]);
                    }
                }
                rows++;
            }
        }
        return rows;
    }

    @ParameterizedTest
    @EnumSource(RowFormat.class)
    void independentReaderGetsEveryBitBack(RowFormat format) throws Exception {
        PlanFile plan = plan();
        SweepOutcome outcome = run(plan, new SweepRows(format, Long.MAX_VALUE));
        Kept kept = Sweep.of(plan.plan(), plan.model())
                .withThreads(1)
                .run(() -> new Kept(outcome.columns()))
                .tally();
        // two parts, rejected rows and rows without contact among them
        assertThat(outcome.partNames()).hasSize(2);
        assertThat(outcome.result().rejected()).isPositive();
        Path run = folder.resolve("run");
        String second = outcome.partNames().get(1);
        assertThat(second).isEqualTo("part-00001." + format.toString().toLowerCase(Locale.ROOT));
        assertThat(assertSameRows(run.resolve(outcome.partNames().get(0)), format, kept, 0, 16))
                .isEqualTo(4 * CHUNK / 16);
        assertThat(assertSameRows(run.resolve(second), format, kept, 4L * CHUNK, 1))
                .isEqualTo(270_000 - 4 * CHUNK);
    }

    @ParameterizedTest
    @EnumSource(RowFormat.class)
    void writesNoMoreThanAskedAndTheSameBytesOnAnyThreadCount(RowFormat format) throws IOException {
        PlanFile plan = plan();
        SweepRows some = new SweepRows(format, CHUNK + 7);
        byte[] one = null;
        for (int threads = 1; threads <= 3; threads++) {
            Path at = folder.resolve("run" + threads);
            SweepOutcome outcome = run(plan, some, "run" + threads, threads);
            assertThat(outcome.rowsWritten()).isEqualTo(CHUNK + 7);
            assertThat(outcome.partNames()).hasSize(1);
            byte[] bytes = Files.readAllBytes(at.resolve(outcome.partNames().get(0)));
            one = one == null ? bytes : one;
            assertThat(bytes).isEqualTo(one);
        }
        SweepOutcome none = run(plan, new SweepRows(format, 0));
        assertThat(none.partNames()).isEmpty();
        try (var files = Files.list(folder.resolve("run"))) {
            assertThat(files.map(file -> file.getFileName().toString())).containsExactly("checkpoint.bin");
        }
    }

    @Test
    void textIsTheFewestDigitsThatReadBack() {
        // 2.0E-3 and 1.0E23 are printed with other digits by Double.toString of some JDKs
        assertThat(ExactText.of(2e-3)).isEqualTo("0.002");
        assertThat(ExactText.of(Double.parseDouble("1e23"))).isEqualTo("1.0E23");
        assertThat(ExactText.of(Double.MIN_NORMAL)).isEqualTo("2.2250738585072014E-308");
        assertThat(Double.parseDouble(ExactText.of(0.1 + 0.2))).isEqualTo(0.1 + 0.2);
    }

    @Test
    void manifestListsFilesWithTheirDigests() throws Exception {
        PlanFile plan = plan();
        SweepOutcome outcome = run(plan, new SweepRows(RowFormat.CSV, 100));
        Path run = folder.resolve("run");
        Manifest.write(outcome, run, outcome.partNames());
        JsonNode json = new ObjectMapper().readTree(run.resolve(Manifest.FILE).toFile());
        assertThat(json.get("statement").asText()).contains("It is not a crash rate and no proof of safety.");
        assertThat(json.get("plan_sha256").asText()).isEqualTo(plan.digest());
        assertThat(json.get("seed").asLong()).isEqualTo(3);
        assertThat(json.get("complete").asBoolean()).isTrue();
        assertThat(json.get("scenarios_counted").asLong()).isEqualTo(270_000);
        assertThat(json.get("rejected").get(0).get("reason").asText())
                .isEqualTo("friction must outweigh the downgrade");
        assertThat(json.get("rejected").get(0).get("scenarios").asLong())
                .isEqualTo(outcome.result().rejected());
        assertThat(json.get("stoplag_version").asText()).matches("[0-9]+\\.[0-9]+\\.[0-9]+.*");
        byte[] part = Files.readAllBytes(run.resolve("part-00000.csv"));
        JsonNode file = json.get("files").get(0);
        assertThat(file.get("bytes").asLong()).isEqualTo(part.length);
        assertThat(file.get("sha256").asText())
                .isEqualTo(HexFormat.of()
                        .formatHex(MessageDigest.getInstance("SHA-256").digest(part)));
        String text = Files.readString(run.resolve(Manifest.FILE));
        Manifest.write(outcome, run, outcome.partNames());
        assertThat(run.resolve(Manifest.FILE)).hasContent(text);
    }
}
