package io.github.stoplag.examples.spark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.stoplag.sweep.CheckpointFormat;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.RowBlock;
import io.github.stoplag.sweep.Sweep;
import io.github.stoplag.sweep.SweepResult;
import io.github.stoplag.sweep.Tally;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SparkSweepTest {
    private static final int SCENARIOS = 2 * Plan.CHUNK + 3000;
    // gaps and frictions of which some cannot be: rejected rows and their NaN travel too
    private static final PlanText PLAN = PlanText.of("test.properties", """
            title = invented test plan
            invented = yes
            scenarios = %d
            seed = 71
            lamps = filament, led
            speed = uniform 8 m/s, 38 m/s
            time_gap = log-normal 0.2, 0.38
            reaction = log-normal 0.17, 0.44
            leader_decel = truncated-normal 7 m/s^2, 1.5 m/s^2, 2 m/s^2, 10 m/s^2
            follower_decel = truncated-normal 7 m/s^2, 1.5 m/s^2, 2 m/s^2, 10 m/s^2
            friction = uniform 0.02, 0.9
            grade = constant -5 %%
            lamp_latency_filament = constant 0.2 s
            lamp_latency_led = constant 0 s
            """.formatted(SCENARIOS));

    private static SparkSession spark;
    private static double[][] localRows;
    private static byte[] localStatistics;

    @TempDir
    private Path folder;

    /** Copies every row of a run on one thread. */
    private static final class AllRows implements Tally<AllRows> {
        private final List<String> names;
        private final double[][] all;

        AllRows(List<String> names, double[][] all) {
            this.names = names;
            this.all = all;
        }

        @Override
        public void add(RowBlock rows) {
            for (int c = 0; c < names.size(); c++) {
                System.arraycopy(rows.column(names.get(c)), 0, all[c], (int) rows.firstIndex(), rows.count());
            }
        }

        @Override
        public void absorb(AllRows later) {}

        @Override
        public void clear() {}
    }

    @BeforeAll
    static void begin() {
        spark = Sessions.local(2);
        PlanFile file = PLAN.plan();
        Sweep sweep = Sweep.of(file.plan(), file.model());
        List<String> names = RowSchema.columns(file);
        localRows = new double[names.size()][SCENARIOS];
        sweep.withThreads(1).run(() -> new AllRows(names, localRows));
        localStatistics = bytes(sweep.withThreads(2).run(() -> new PairTally(file.pairModel())));
    }

    @AfterAll
    static void end() {
        spark.stop();
    }

    private static byte[] bytes(SweepResult<PairTally> result) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            CheckpointFormat.of(result.plan()).write(result, new DataOutputStream(bytes));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return bytes.toByteArray();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 7})
    void rowsAndStatisticsHaveTheBitsOfALocalRun(int partitions) throws IOException {
        Path rows = folder.resolve("rows");
        SweepResult<PairTally> result = new SparkSweep(spark, PLAN, partitions).run(rows.toString());
        assertThat(bytes(result)).isEqualTo(localStatistics);
        assertThat(result.rejected()).isPositive();
        assertThat(result.tally().lamp("led").contactProbability().hits()).isPositive();
        try (Stream<Path> files = Files.list(rows)) {
            assertThat(files.filter(file -> file.toString().endsWith(".parquet")))
                    .hasSizeBetween(Math.min(partitions, 3), partitions);
        }
        List<String> names = RowSchema.columns(PLAN.plan());
        assertSameRows(spark.read().parquet(rows.toString()).collectAsList(), names);
    }

    private static void assertSameRows(List<Row> read, List<String> names) {
        assertThat(read).hasSize(SCENARIOS);
        assertThat(List.of(read.get(0).schema().fieldNames()).subList(1, names.size() + 1))
                .isEqualTo(names);
        BitSet seen = new BitSet();
        for (Row row : read) {
            int scenario = Math.toIntExact(row.getLong(0));
            seen.set(scenario);
            for (int c = 0; c < names.size(); c++) {
                double value = row.isNullAt(c + 1) ? Double.NaN : row.getDouble(c + 1);
                // one assertion object for each of millions of values would take minutes
                if (Double.doubleToLongBits(value) != Double.doubleToLongBits(localRows[c][scenario])) {
                    throw new AssertionError(names.get(c) + " of scenario " + scenario + " must be "
                            + localRows[c][scenario] + ", got " + value);
                }
            }
        }
        assertThat(seen.cardinality()).isEqualTo(SCENARIOS);
    }

    @Test
    void aRepeatedChunkCountsOnceAndAMissingOneIsNoticed() {
        PlanFile file = PLAN.plan();
        Map<Long, byte[]> chunks = new TreeMap<>();
        ChunkRows rows = new ChunkRows(file, Stream.of(1L, 0L, 1L).iterator(), chunks::put);
        long count = 0;
        while (rows.hasNext()) {
            assertThat(rows.next().getLong(0)).isBetween(0L, 2L * Plan.CHUNK);
            count++;
        }
        assertThat(count).isEqualTo(3L * Plan.CHUNK);
        assertThat(chunks.keySet()).containsExactly(0L, 1L);
        assertThatThrownBy(rows::next).hasMessage("no rows are left");
        assertThatThrownBy(() -> SparkSweep.absorbed(file, chunks))
                .hasMessage("the job gave the statistics of 2 chunks of 3");
        assertThat(new ChunkRows(file, Stream.of(2L).iterator(), chunks::put)).hasNext();
        assertThat(bytes(SparkSweep.absorbed(file, chunks))).isEqualTo(localStatistics);
        chunks.remove(1L);
        assertThatThrownBy(() -> SparkSweep.absorbed(file, chunks))
                .hasMessageStartingWith("chunk 1 of 3 must be next, whole and alone");
        ChunkStatistics twice = new ChunkStatistics();
        twice.add(Map.entry(0L, new byte[] {1}));
        ChunkStatistics again = twice.copy();
        again.add(Map.entry(1L, new byte[] {2}));
        twice.merge(again);
        assertThat(twice.value().keySet()).containsExactly(0L, 1L);
        twice.reset();
        assertThat(twice.isZero()).isTrue();
    }
}
