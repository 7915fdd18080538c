package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.Empirical;
import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Non-regression: digests of our own results, each bit of every row and of the statistics. They are the same on JDK 17
 * and 25 and on any processor; they change only if a plan's draws or the physics change.
 */
class BitsTest {
    private static Plan plan(Design design) {
        return Plan.of(design, 79)
                .axis(Axis.drawn("speed", "mps", new Distribution.TruncatedNormal(30, 4, 20, 40)))
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.17, 0.44)))
                .axis(Axis.drawn("time_gap", "s", new Distribution.LogNormal(0.2, 0.38)))
                .axis(Axis.drawn("leader_decel", "mps2", new Distribution.Uniform(4, 9)))
                .axis(Axis.drawn("follower_decel", "mps2", Empirical.of(4.5, 6.1, 6.3, 7.2, 8.8)))
                .axis(Axis.constant("brake_dead_time", "s", 0.1))
                .axis(Axis.constant("brake_build_up", "s", 0.25))
                .axis(Axis.range("friction", "ratio", 0.02, 0.9, 5))
                .axis(Axis.list("grade", "ratio", -0.05, 0, 0.03))
                .axis(Axis.drawn("lamp_latency_filament", "s", new Distribution.TruncatedNormal(0.12, 0.02, 0.08, 0.2)))
                .axis(Axis.constant("lamp_latency_led", "s", 0.0))
                .correlate("speed_mps", "time_gap_s", 0.3);
    }

    /** Digests each row as it comes; only for one thread. */
    private static final class RowDigest implements Tally<RowDigest> {
        private final Plan plan;
        private final PairModel model;
        private final DataOutputStream out;

        RowDigest(Plan plan, PairModel model, DataOutputStream out) {
            this.plan = plan;
            this.model = model;
            this.out = out;
        }

        @Override
        public void add(RowBlock rows) {
            double[][] columns = Stream.concat(plan.columns().stream(), model.outputs().stream())
                    .map(rows::column)
                    .toArray(double[][]::new);
            try {
                for (int row = 0; row < rows.count(); row++) {
                    out.writeLong(rows.firstIndex() + row);
                    for (double[] column : columns) {
                        out.writeDouble(column[row]);
                    }
                }
            } catch (IOException e) {
                throw new AssertionError(e);
            }
        }

        @Override
        public void absorb(RowDigest later) {}

        @Override
        public void clear() {}
    }

    private interface Writing {
        void to(DataOutputStream out) throws IOException;
    }

    private static String digest(Writing writing) throws IOException {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            try (DataOutputStream out = new DataOutputStream(
                    new BufferedOutputStream(new DigestOutputStream(OutputStream.nullOutputStream(), sha)))) {
                writing.to(out);
            }
            return HexFormat.of().formatHex(sha.digest()).substring(0, 16);
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError(e);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "RANDOM, 70000, 3e6fcd53f0e4c529, 1a42e6790bde7f92",
        "LATIN_HYPERCUBE, 3000, df1cae6848a55af3, bee9d1194d3909c6",
        "SOBOL, 2048, b54e0fbf535d6ecf, 29431c91c32f3493",
        "GRID, 200, 2433ab2408bb7436, 7e358d6e043cea77"
    })
    void everyBitStays(Design.Kind kind, long count, String rows, String statistics) throws IOException {
        Plan plan = plan(new Design(kind, count));
        PairModel model = PairModel.of(plan, "filament", "led");
        Sweep sweep = Sweep.of(plan, model);
        SweepResult<PairTally> result = sweep.withThreads(2).run(() -> new PairTally(model));
        assertThat(result.rejected()).isPositive();
        String rowDigest = digest(out -> sweep.withThreads(1).run(() -> new RowDigest(plan, model, out)));
        String statisticsDigest = digest(out -> {
            result.tally().save(out);
            for (Rejects.Entry entry : result.rejects()) {
                out.writeUTF(entry.toString());
            }
        });
        assertThat(rowDigest + " " + statisticsDigest).isEqualTo(rows + " " + statistics);
    }
}
