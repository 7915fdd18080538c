package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.Empirical;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

class CheckpointTest {
    private static final Plan PLAN = plan(250_000, 67);
    private static final PairModel MODEL = PairModel.of(PLAN, "filament", "led");

    /** A plan in which one gap in five is impossible. */
    private static Plan plan(long count, long seed) {
        return Plan.of(Design.random(count), seed)
                .axis(Axis.drawn("speed", "mps", new Distribution.Uniform(8, 38)))
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.17, 0.44)))
                .axis(Axis.drawn("gap", "m", new Distribution.Uniform(-10, 40)))
                .axis(Axis.drawn("leader_decel", "mps2", new Distribution.TruncatedNormal(7, 1.5, 2, 10)))
                .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(7, 1.5, 2, 10)))
                .axis(Axis.constant("lamp_latency_filament", "s", 0.2))
                .axis(Axis.constant("lamp_latency_led", "s", 0.0));
    }

    private static PairTally tally() {
        return new PairTally(MODEL);
    }

    @FunctionalInterface
    private interface Saving {
        void to(DataOutputStream out) throws IOException;
    }

    private static byte[] bytes(Saving saving) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            saving.to(new DataOutputStream(bytes));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static DataInputStream in(byte[] bytes) {
        return new DataInputStream(new ByteArrayInputStream(bytes));
    }

    private static <T extends SavableTally<T>> byte[] whole(SweepResult<T> result) {
        return bytes(out -> CheckpointFormat.of(result.plan()).write(result, out));
    }

    @Test
    void aSavedCutOffRunGoesOnWithTheSameBits() throws IOException {
        Sweep sweep = Sweep.of(PLAN, MODEL).withThreads(2);
        byte[] straight = whole(sweep.run(CheckpointTest::tally));
        for (long chunks : new long[] {0, 3}) {
            AtomicLong asked = new AtomicLong();
            SweepResult<PairTally> cut =
                    sweep.withCancel(() -> asked.incrementAndGet() > chunks).run(CheckpointTest::tally);
            assertThat(cut.nextChunk()).isEqualTo(chunks);
            SweepResult<PairTally> read = CheckpointFormat.of(PLAN).read(in(whole(cut)), tally());
            assertThat(read.rejects()).isEqualTo(cut.rejects());
            SweepResult<PairTally> resumed = sweep.resume(CheckpointTest::tally, read);
            assertThat(resumed.scenarios()).isEqualTo(250_000);
            assertThat(resumed.rejected()).isBetween(49_000L, 51_000L);
            assertThat(whole(resumed)).isEqualTo(straight);
        }
    }

    @Test
    void savedChunksAbsorbedInOrderHaveTheBitsOfOneRun() throws IOException {
        Sweep sweep = Sweep.of(PLAN, MODEL).withThreads(1);
        CheckpointFormat format = CheckpointFormat.of(PLAN);
        byte[][] chunks = new byte[(int) PLAN.chunks()][];
        for (int chunk = chunks.length - 1; chunk >= 0; chunk--) {
            chunks[chunk] = whole(sweep.run(CheckpointTest::tally, tally(), chunk, chunk + 1L));
        }
        SweepResult<PairTally> total = SweepResult.none(PLAN, tally());
        for (byte[] chunk : chunks) {
            assertThat(total.complete()).isFalse();
            total = total.absorb(format.read(in(chunk), tally()));
        }
        assertThat(whole(total)).isEqualTo(whole(sweep.run(CheckpointTest::tally)));
        assertThat(total.complete()).isTrue();
        SweepResult<PairTally> all = total;
        SweepResult<PairTally> last = format.read(in(chunks[3]), tally());
        assertThatThrownBy(() -> all.absorb(last))
                .hasMessage("chunk 4 of 4 must be next, whole and alone, got 53392 scenarios up to before chunk 4");
        assertThatThrownBy(() -> SweepResult.none(PLAN, tally()).absorb(last))
                .hasMessageStartingWith("chunk 0 of 4 must be next, whole and alone");
    }

    /** Many kinds of rejected scenarios: more than are told apart. */
    @Test
    void rejectsOfManyKindsSurvive() throws IOException {
        Plan plan = Plan.of(Design.grid(), 1).axis(Axis.range("x", "", 0, 139_999, 140_000));
        Model model = new RejectingModel();
        Supplier<ColumnTally> tally = () -> new ColumnTally("y");
        Sweep sweep = Sweep.of(plan, model);
        SweepResult<ColumnTally> straight = sweep.run(tally);
        assertThat(straight.rejects()).hasSize(51);
        assertThat(straight.rejected()).isEqualTo(140_000);
        SweepResult<ColumnTally> total = SweepResult.none(plan, tally.get());
        for (long chunk = 0; chunk < 3; chunk++) {
            byte[] saved = whole(sweep.run(tally, tally.get(), chunk, chunk + 1));
            total = total.absorb(CheckpointFormat.of(plan).read(in(saved), tally.get()));
        }
        assertThat(total.rejects()).isEqualTo(straight.rejects());
        SweepResult<ColumnTally> half = sweep.run(tally, tally.get(), 0, 2);
        assertThat(sweep.resume(tally, CheckpointFormat.of(plan).read(in(whole(half)), tally.get()))
                        .rejects())
                .isEqualTo(straight.rejects());
    }

    /** Rejects every row for one of 63 reasons. */
    private static final class RejectingModel implements Model {
        private static final List<String> KINDS =
                IntStream.range(0, 63).mapToObj(i -> "kind " + i).toList();

        @Override
        public List<String> inputs() {
            return List.of("x");
        }

        @Override
        public List<String> outputs() {
            return List.of("y");
        }

        @Override
        public Evaluator evaluator() {
            return (count, inputs, outputs, rejects) -> {
                for (int row = 0; row < count; row++) {
                    double x = inputs[0][row];
                    rejects.reject(row, KINDS.get((int) (x % 53 + (x < 70_000 ? 0 : 10))));
                }
            };
        }
    }

    @Property(tries = 100, seed = "73")
    void restoredStatisticsGoOnWithTheSameBits(@ForAll long seed, @ForAll @IntRange(max = 300) int before)
            throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        double[] first = values(random, before);
        double[] second = values(random, random.nextInt(300));
        Moments moments = new Moments();
        QuantileSketch sketch = new QuantileSketch();
        Histogram histogram = Histogram.of(-3, 5, 37);
        moments.add(first, before);
        sketch.add(first, before);
        histogram.add(first, before);
        Moments moments2 = new Moments();
        QuantileSketch sketch2 = new QuantileSketch();
        Histogram histogram2 = Histogram.of(-3, 5, 37);
        // what they hold is to be replaced
        moments2.add(second, second.length);
        sketch2.add(second, second.length);
        histogram2.add(second, second.length);
        moments2.restore(in(bytes(moments::save)));
        sketch2.restore(in(bytes(sketch::save)));
        histogram2.restore(in(bytes(histogram::save)));
        for (Moments some : List.of(moments, moments2)) {
            some.add(second, second.length);
        }
        for (QuantileSketch some : List.of(sketch, sketch2)) {
            some.add(second, second.length);
        }
        for (Histogram some : List.of(histogram, histogram2)) {
            some.add(second, second.length);
        }
        assertThat(bytes(moments2::save)).isEqualTo(bytes(moments::save));
        assertThat(bytes(sketch2::save)).isEqualTo(bytes(sketch::save));
        assertThat(bytes(histogram2::save)).isEqualTo(bytes(histogram::save));
        assertThat(moments2.toString()).isEqualTo(moments.toString());
        assertThat(histogram2.counts()).isEqualTo(histogram.counts());
        assertThat(histogram2.below() + histogram2.above()).isEqualTo(histogram.below() + histogram.above());
        if (sketch.count() > 0) {
            double p = random.nextDouble();
            assertThat(sketch2.quantile(p)).isEqualTo(sketch.quantile(p));
            assertThat(Double.valueOf(moments2.mean())).isEqualTo(Double.valueOf(moments.mean()));
        }
    }

    /** Values of all sizes, with NaN, zeros and infinities. */
    private static double[] values(SplittableRandom random, int count) {
        double[] values = random.doubles(count)
                .map(u -> Math.scalb(u - 0.4, random.nextInt(-40, 40)))
                .toArray();
        for (int i = 0; i + 20 < count; i += 20) {
            values[i] = Double.NaN;
            values[i + 1] = 0;
            values[i + 2] = random.nextInt(9) == 0 ? Double.POSITIVE_INFINITY : -0.0;
        }
        return values;
    }

    @Test
    void aStreamCutAnywhereOrWithAnyByteChangedIsRefused() {
        Plan plan = plan(2000, 5);
        PairModel model = PairModel.of(plan, "filament", "led");
        byte[] saved = whole(Sweep.of(plan, model).run(() -> new PairTally(model)));
        CheckpointFormat format = CheckpointFormat.of(plan);
        for (int length = 0; length < saved.length; length += 1 + length / 40) {
            byte[] cut = Arrays.copyOf(saved, length);
            assertThatThrownBy(() -> format.read(in(cut), new PairTally(model)))
                    .isInstanceOf(IOException.class)
                    .hasMessage("the saved results of a sweep end too early");
        }
        for (int place = 0; place < saved.length; place += 1 + place / 40) {
            byte[] damaged = saved.clone();
            damaged[place] ^= 0x10;
            assertThatThrownBy(() -> format.read(in(damaged), new PairTally(model)))
                    .isInstanceOf(IOException.class)
                    .hasMessageContaining("saved results of a sweep");
        }
    }

    @Test
    void foreignBytesAreRefusedByName() {
        byte[] foreign = "scenario,speed_mps\n0,12.5\n".getBytes(StandardCharsets.UTF_8);
        assertRefused(
                () -> new Moments().restore(in(foreign)),
                "these bytes are no saved moments: they must start with 53544c47, got 7363656e");
        byte[] moments = bytes(new Moments()::save);
        assertRefused(
                () -> new QuantileSketch().restore(in(moments)),
                "these bytes must be saved quantiles, got saved moments");
        byte[] newer = moments.clone();
        newer[5] = 9;
        assertRefused(() -> new Moments().restore(in(newer)), "saved moments must be of format 2, got format 9");
        byte[] histogram = bytes(Histogram.of(0, 1, 10)::save);
        assertRefused(
                () -> Histogram.of(0, 1, 20).restore(in(histogram)),
                "a saved histogram must have 20 bins from 0 to 1, got 10 bins from 0 to 1");
        byte[] column = bytes(new ColumnTally("x_m")::save);
        assertRefused(
                () -> new ColumnTally("y_m").restore(in(column)), "saved statistics must be of column y_m, got x_m");
        byte[] lamps = bytes(tally()::save);
        assertRefused(
                () -> new PairTally(PairModel.of(PLAN, "led")).restore(in(lamps)),
                "saved statistics must be of the lamps [led], got 2 lamps");
        assertRefused(
                () -> new PairTally(PairModel.of(PLAN, "led", "filament")).restore(in(lamps)),
                "saved statistics must be of lamp led, got filament");
    }

    @Test
    void resultsThatNoPlanCanHaveAreRefused() {
        assertThatThrownBy(() -> new SweepResult<>(PLAN, tally(), 5, 0, false, List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a result must have a next chunk in [0, 4] and scenarios in [0, 250000], got 5 and 0");
        assertThatThrownBy(() -> new SweepResult<>(PLAN, tally(), -1, 0, false, List.of()))
                .hasMessageEndingWith(", got -1 and 0");
        assertThatThrownBy(() -> new SweepResult<>(PLAN, tally(), 4, 250_001, true, List.of()))
                .hasMessageEndingWith(", got 4 and 250001");
    }

    @Test
    void anotherPlansResultsAreRefused() {
        byte[] saved = whole(SweepResult.none(PLAN, tally()));
        assertRefused(
                () -> CheckpointFormat.of(PLAN.withSeed(68)).read(in(saved), tally()),
                "the saved results must be of the plan " + PLAN.withSeed(68) + ", got those of another plan");
        assertThatThrownBy(() -> CheckpointFormat.of(PLAN.withSeed(68))
                        .write(SweepResult.none(PLAN, tally()), new DataOutputStream(new ByteArrayOutputStream())))
                .hasMessage("the result must be of the plan " + PLAN.withSeed(68) + ", got one of " + PLAN);
        assertThatThrownBy(() -> Sweep.of(PLAN, MODEL)
                        .resume(CheckpointTest::tally, SweepResult.none(PLAN.withSeed(68), tally())))
                .hasMessageStartingWith("the result must be of the plan ");
        // these two plans read alike, yet are not
        Plan one = Plan.of(Design.grid(), 1).axis(Axis.list("x", "", 1, 2, 3, 4, 5, 6, 7, 8, 9));
        Plan other = Plan.of(Design.grid(), 1).axis(Axis.list("x", "", 1, 2, 3, 4, 5.5, 6, 7, 8, 9));
        assertThat(other).hasToString(one.toString());
        byte[] ones = whole(SweepResult.none(one, new ColumnTally("x")));
        assertRefused(
                () -> CheckpointFormat.of(other).read(in(ones), new ColumnTally("x")),
                "the saved results must be of the plan " + other + ", got those of another plan");
    }

    /** Plans whose texts are the same and that differ in one value, or in a flag: no two are taken for each other. */
    @Test
    void plansThatReadAlikeAreToldApart() {
        double[] observations = new SplittableRandom(7).doubles(100_000).toArray();
        Plan plan = Plan.of(Design.random(1000), 1)
                .axis(Axis.list("x", "", 1, 2, 3, 4, 5, 6, 7, 8, 9, 10))
                .axis(Axis.drawn("y", "", Empirical.of(observations)));
        Arrays.sort(observations);
        observations[50_001] = observations[50_002];
        Plan otherObservations = Plan.of(Design.random(1000), 1)
                .axis(plan.axes().get(0))
                .axis(Axis.drawn("y", "", Empirical.of(observations)));
        Plan otherLevels = Plan.of(Design.random(1000), 1)
                .axis(Axis.list("x", "", 1, 2, 3, 4, 5.25, 6, 7, 8, 9, 10))
                .axis(plan.axes().get(1));
        Model model = Model.ofRows(List.of("x", "y"), List.of("z"), (in, out) -> out[0] = in[0] + in[1]);
        for (Plan other : List.of(otherObservations, otherLevels)) {
            assertThat(other).hasToString(plan.toString());
            assertThat(other.digest()).isNotEqualTo(plan.digest());
            SweepResult<ColumnTally> ofOther = SweepResult.none(other, new ColumnTally("z"));
            assertThatThrownBy(() -> Sweep.of(plan, model).resume(() -> new ColumnTally("z"), ofOther))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("the result must be of the plan " + plan + ", got one of " + plan
                            + " with other levels or observations");
            assertThatThrownBy(
                            () -> SweepResult.none(plan, new ColumnTally("z")).absorb(ofOther))
                    .hasMessageEndingWith(" with other levels or observations");
            assertRefused(
                    () -> CheckpointFormat.of(plan).read(in(whole(ofOther)), new ColumnTally("z")),
                    "the saved results must be of the plan " + plan + ", got those of another plan");
        }
        assertThat(plan.withExactQuantiles().digest()).isNotEqualTo(plan.digest());
        assertThat(plan.withSeed(2).digest()).isNotEqualTo(plan.digest());
        assertThat(plan.withSeed(2).withSeed(1).digest())
                .isEqualTo(plan.digest())
                .matches("[0-9a-f]{64}");
    }

    private static void assertRefused(ThrowingCallable restoring, String message) {
        assertThatThrownBy(restoring).isInstanceOf(IOException.class).hasMessage(message);
    }
}
