package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.kernel.GapEvent;
import io.github.stoplag.kernel.GapKernel;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class SweepTest {
    private static final Plan PLAN = plan(Design.random(700_000));

    private static Plan plan(Design design) {
        return Plan.of(design, 61)
                .axis(Axis.drawn("speed", "mps", new Distribution.Uniform(8, 38)))
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.17, 0.44)))
                .axis(Axis.drawn("time_gap", "s", new Distribution.LogNormal(0.2, 0.38)))
                .axis(Axis.drawn("leader_decel", "mps2", new Distribution.TruncatedNormal(7, 1.5, 2, 10)))
                .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(7, 1.5, 2, 10)))
                .axis(Axis.constant("brake_build_up", "s", 0.3))
                .axis(Axis.constant("lamp_latency_filament", "s", 0.2))
                .axis(Axis.constant("lamp_latency_led", "s", 0.0));
    }

    private static SweepResult<PairTally> run(Plan plan, int threads) {
        PairModel model = PairModel.of(plan, "filament", "led");
        return Sweep.of(plan, model).withThreads(threads).run(() -> new PairTally(model));
    }

    private static void assertSameBits(PairTally a, PairTally b) {
        for (String lamp : List.of("filament", "led")) {
            LampTally x = a.lamp(lamp);
            LampTally y = b.lamp(lamp);
            assertThat(x.contactProbability()).isEqualTo(y.contactProbability());
            assertThat(x.closingSpeedMps().mean()).isEqualTo(y.closingSpeedMps().mean());
            assertThat(x.closingSpeedMps().variance())
                    .isEqualTo(y.closingSpeedMps().variance());
            assertThat(x.smallestGapM().mean()).isEqualTo(y.smallestGapM().mean());
            assertThat(x.smallestGapM().variance()).isEqualTo(y.smallestGapM().variance());
            assertThat(x.closingSpeedHistogramMps().counts())
                    .isEqualTo(y.closingSpeedHistogramMps().counts());
            assertThat(x.closingSpeedQuantilesMps().quantile(0.95))
                    .isEqualTo(y.closingSpeedQuantilesMps().quantile(0.95));
        }
        assertThat(a.compare("filament", "led")).isEqualTo(b.compare("filament", "led"));
        assertThat(a.trace()).isEqualTo(b.trace());
    }

    @Test
    void anyNumberOfThreadsGivesTheSameBits() {
        SweepResult<PairTally> one = run(PLAN, 1);
        assertThat(one.complete()).isTrue();
        assertThat(one.scenarios()).isEqualTo(700_000);
        assertThat(one.nextChunk()).isEqualTo(11);
        assertSameBits(one.tally(), run(PLAN, 2).tally());
        assertSameBits(one.tally(), run(PLAN, 8).tally());
        PairTally tally = one.tally();
        assertThat(tally.trace())
                .extracting(PairTally.TracePoint::scenarios)
                .containsExactly(65_536L, 131_072L, 262_144L, 524_288L, 700_000L);
        assertThat(tally.compare("filament", "led").difference()).isPositive();
        assertThat(tally.compare("led", "filament").difference())
                .isEqualTo(-tally.compare("filament", "led").difference());
        assertThat(tally.toString())
                .startsWith("filament: contact probability 0.")
                .contains("not a crash rate");
    }

    /** Non-regression: our own figures, the same on JDK 17 and 25; they change only if a plan's draws change. */
    @Test
    void bitsDoNotDependOnTheJdk() {
        Plan plan = Plan.of(Design.random(200_000), 13)
                .axis(Axis.constant("speed", "mps", 25))
                .axis(Axis.constant("leader_decel", "mps2", 7))
                .axis(Axis.constant("brake_dead_time", "s", 0.1))
                .axis(Axis.constant("brake_build_up", "s", 0.25))
                .axis(Axis.constant("lamp_latency_led", "s", 0.01))
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.17, 0.44)))
                .axis(Axis.drawn("time_gap", "s", new Distribution.LogNormal(0.69, 0.47)))
                .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(7, 1, 2, 10)));
        PairModel model = PairModel.of(plan, "led");
        LampTally led =
                Sweep.of(plan, model).run(() -> new PairTally(model)).tally().lamp("led");
        assertThat(led.contactProbability()).isEqualTo(new Proportion(46_397, 200_000));
        assertThat(led.closingSpeedMps().mean()).isEqualTo(0x1.64c39661697ddp3);
    }

    @Test
    void modelEqualsTheScalarKernelRowByRow() {
        Plan plan = plan(Design.sobol(1024));
        PairModel model = PairModel.of(plan, "filament", "led");
        double[][] columns = new double[8][1024];
        plan.scenarios().fill(0, 1024, columns);
        double[][] inputs = model.inputs().stream()
                .map(column -> columns[plan.columns().indexOf(column)])
                .toArray(double[][]::new);
        double[][] outputs = new double[8][1024];
        model.evaluator().evaluate(1024, inputs, outputs, new Rejects(plan.columns(), 1024));
        GapEvent event = new GapEvent();
        int contacts = 0;
        for (int i = 0; i < 1024; i++) {
            double speed = columns[0][i];
            double onset = columns[6][i] + columns[1][i];
            GapKernel.pairEvent(
                    speed, 0, 0.3, columns[3][i], speed, onset, 0.3, columns[4][i], columns[2][i] * speed, event);
            contacts += event.contact() ? 1 : 0;
            assertThat(outputs[0][i]).isEqualTo(event.contact() ? 1 : 0);
            assertThat(Double.compare(outputs[1][i], event.closingSpeedMps())).isZero();
            assertThat(outputs[2][i]).isEqualTo(event.smallestGapM());
            assertThat(outputs[3][i]).isEqualTo(event.timeS());
        }
        assertThat(contacts).isBetween(100, 900);
    }

    @Test
    void aCutOffRunGoesOnWithTheSameBits() {
        PairModel model = PairModel.of(PLAN, "filament", "led");
        AtomicLong asked = new AtomicLong();
        Sweep sweep = Sweep.of(PLAN, model).withThreads(2);
        SweepResult<PairTally> cut =
                sweep.withCancel(() -> asked.incrementAndGet() > 5).run(() -> new PairTally(model));
        assertThat(cut.complete()).isFalse();
        assertThat(cut.nextChunk()).isEqualTo(5);
        assertThat(cut.scenarios()).isEqualTo(5L * Plan.CHUNK);
        SweepResult<PairTally> rest =
                sweep.run(() -> new PairTally(model), cut.tally(), cut.nextChunk(), PLAN.chunks());
        assertThat(rest.complete()).isTrue();
        assertSameBits(run(PLAN, 1).tally(), rest.tally());
    }

    @Test
    void chunksComputedApartInAnyOrderGiveTheSameBits() {
        PairModel model = PairModel.of(PLAN, "filament", "led");
        Sweep sweep = Sweep.of(PLAN, model).withThreads(1);
        PairTally[] parts = new PairTally[(int) PLAN.chunks()];
        for (int chunk = parts.length - 1; chunk >= 0; chunk--) {
            parts[chunk] = sweep.run(() -> new PairTally(model), new PairTally(model), chunk, chunk + 1L)
                    .tally();
        }
        PairTally total = new PairTally(model);
        for (PairTally part : parts) {
            total.absorb(part);
        }
        assertSameBits(run(PLAN, 2).tally(), total);
    }

    @Test
    void progressRisesToTheWhole() {
        List<Long> done = new ArrayList<>();
        PairModel model = PairModel.of(PLAN, "filament", "led");
        Sweep.of(PLAN, model)
                .withThreads(2)
                .withListener((d, total) -> {
                    assertThat(total).isEqualTo(700_000);
                    done.add(d);
                })
                .run(() -> new PairTally(model));
        assertThat(done).hasSize(11).isSorted().endsWith(700_000L);
    }

    @Test
    void interruptCancelsAndIsKept() {
        PairModel model = PairModel.of(PLAN, "filament", "led");
        Thread.currentThread().interrupt();
        SweepResult<PairTally> result = Sweep.of(PLAN, model).withThreads(1).run(() -> new PairTally(model));
        assertThat(Thread.interrupted()).isTrue();
        assertThat(result.complete()).isFalse();
        assertThat(result.scenarios()).isZero();
    }

    @Test
    void impossibleCombinationsAreCountedByReason() {
        Plan plan = Plan.of(Design.grid(), 1)
                .axis(Axis.list("speed", "mps", 20, 200))
                .axis(Axis.list("reaction", "s", 1, -1))
                .axis(Axis.constant("gap", "m", 30))
                .axis(Axis.constant("follower_decel", "mps2", 8))
                .axis(Axis.list("friction", "ratio", 0.7, 0.05))
                .axis(Axis.list("grade", "ratio", 0, -0.1))
                .axis(Axis.constant("lamp_latency_led", "s", 0));
        PairModel model = PairModel.of(plan, "led");
        SweepResult<PairTally> result = Sweep.of(plan, model).run(() -> new PairTally(model));
        assertThat(result.rejects())
                .extracting(Rejects.Entry::reason)
                .containsExactly(
                        "friction must outweigh the downgrade",
                        "reaction time must be in [0, 30] s",
                        "speed must be in [0, 150] m/s");
        assertThat(result.rejects()).extracting(Rejects.Entry::count).containsExactly(1L, 4L, 8L);
        assertThat(result.rejects()).extracting(Rejects.Entry::firstIndex).containsExactly(3L, 4L, 8L);
        assertThat(result.rejects().get(0).toString())
                .isEqualTo("1 x friction must outweigh the downgrade, first scenario 3: speed_mps=20, reaction_s=1,"
                        + " gap_m=30, follower_decel_mps2=8, friction_ratio=0.05, grade_ratio=-0.1,"
                        + " lamp_latency_led_s=0");
        assertThat(result.rejected()).isEqualTo(13);
        assertThat(result.tally().lamp("led").contactProbability().count()).isEqualTo(3);
    }

    @Test
    void aFailingModelNamesTheScenarioAndItsInputs() {
        Plan plan = Plan.of(Design.grid(), 1).axis(Axis.range("x", "", 0, 99_999, 100_000));
        Model model = Model.ofRows(List.of("x"), List.of("y"), (in, out) -> {
            if (in[0] == 70_001) {
                throw new ArithmeticException("no root");
            }
            out[0] = Math.sqrt(in[0]);
        });
        for (int threads : new int[] {1, 2}) {
            assertThatThrownBy(() -> Sweep.of(plan, model).withThreads(threads).run(() -> new ColumnTally("y")))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessage("scenario 70001 failed with x=70001: no root")
                    .hasRootCauseInstanceOf(ArithmeticException.class);
        }
    }

    @Test
    void aFailingListenerOrTallyIsTheCause() {
        Plan plan = Plan.of(Design.grid(), 1).axis(Axis.range("x", "", 0, 99_999, 100_000));
        Model model = Model.ofRows(List.of("x"), List.of("y"), (in, out) -> out[0] = in[0]);
        NullPointerException failure = new NullPointerException();
        for (int threads : new int[] {1, 2}) {
            Sweep sweep = Sweep.of(plan, model).withThreads(threads).withListener((done, total) -> {
                throw failure;
            });
            assertThatThrownBy(() -> sweep.run(() -> new ColumnTally("y")))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessage("java.lang.NullPointerException")
                    .hasCause(failure);
            assertThatThrownBy(() -> sweep.run(() -> new ColumnTally("z")))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessage("column must be one of [x] or [y], got z")
                    .hasCauseInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void talliesInStoreDoNotGrowWithThreadsBeyondTheProcessors() {
        assertThat(OrderedRun.ahead(16, 16)).isEqualTo(18);
        assertThat(OrderedRun.ahead(16, 2)).isEqualTo(4);
        assertThat(OrderedRun.ahead(1, 8)).isEqualTo(3);
        AtomicLong made = new AtomicLong();
        Plan plan = Plan.of(Design.random(60L * Plan.CHUNK), 1).axis(Axis.constant("x", "", 1));
        Model model = Model.ofRows(List.of("x"), List.of("y"), (in, out) -> out[0] = in[0]);
        SweepResult<ColumnTally> result = Sweep.of(plan, model).withThreads(64).run(() -> {
            made.incrementAndGet();
            return new ColumnTally("y");
        });
        assertThat(result.tally().moments().count()).isEqualTo(plan.size());
        // the total and those of the chunks
        assertThat(made.get())
                .isLessThanOrEqualTo(
                        1 + OrderedRun.ahead(64, Runtime.getRuntime().availableProcessors()));
    }

    @Test
    void rowsThatRefuseTheirInputsAreRejectedNotFailed() {
        Plan plan = Plan.of(Design.grid(), 1).axis(Axis.range("x", "", -5, 4, 10));
        Model model = Model.ofRows(List.of("x"), List.of("y"), (in, out) -> {
            if (in[0] < 0) {
                throw new IllegalArgumentException("x must be in [0, 4], got " + in[0]);
            }
            out[0] = in[0];
        });
        SweepResult<ColumnTally> result = Sweep.of(plan, model).run(() -> new ColumnTally("y"));
        assertThat(result.rejects()).containsExactly(new Rejects.Entry("x must be in [0, 4]", 5, 0, "x=-5"));
        assertThat(result.tally().moments().mean()).isEqualTo(2);
        assertThat(result.tally().moments().count()).isEqualTo(5);
    }

    @Test
    void anOutputThatIsNotSetIsNaNAndNotTheLastRows() {
        Plan plan = Plan.of(Design.grid(), 1).axis(Axis.range("x", "", 0, 9, 10));
        Model model = Model.ofRows(List.of("x"), List.of("y"), (in, out) -> {
            if (in[0] < 3) {
                out[0] = in[0];
            }
        });
        SweepResult<ColumnTally> result = Sweep.of(plan, model).run(() -> new ColumnTally("y"));
        assertThat(result.tally().moments().count()).isEqualTo(3);
        assertThat(result.tally().moments().max()).isEqualTo(2);
        assertThat(result.rejected()).isZero();
    }

    @Test
    void badSweepsAreNamed() {
        Plan plan = Plan.of(Design.grid(), 1).axis(Axis.constant("x", "", 1));
        Model model = Model.ofRows(List.of("z"), List.of("y"), (in, out) -> {});
        assertThatThrownBy(() -> Sweep.of(plan, model))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the plan must have an axis for each of [z] and no other, got [x]");
        assertThatThrownBy(() -> PairModel.of(plan, "led"))
                .hasMessageStartingWith("a pair needs at least one lamp, the columns [speed_mps, reaction_s,"
                        + " follower_decel_mps2, lamp_latency_led_s], one of gap_m and time_gap_s");
        assertThatThrownBy(() -> PairModel.of(PLAN, "led", "led"))
                .hasMessage("lamps must have different names, got [led, led]");
        assertThatThrownBy(() -> Sweep.of(plan, Model.ofRows(List.of("x"), List.of("y", "x"), (in, out) -> {})))
                .hasMessage("the model's outputs must differ from each other and from the axes [x], got [y, x]");
        assertThatThrownBy(() -> Sweep.of(plan, Model.ofRows(List.of("x"), List.of("y", "y"), (in, out) -> {})))
                .hasMessage("the model's outputs must differ from each other and from the axes [x], got [y, y]");
        PairModel pair = PairModel.of(PLAN, "filament", "led");
        assertThatThrownBy(() -> Sweep.of(PLAN, pair).withThreads(0)).hasMessage("threads must be in [1, 1024], got 0");
        assertThatThrownBy(() -> Sweep.of(PLAN, pair).run(() -> new PairTally(pair), new PairTally(pair), 3, 12))
                .hasMessage("chunks must satisfy 0 <= from <= end <= 11, got from 3 to 12");
        assertThat(pair.assumptions()).contains(PairModel.STATEMENT, "Both vehicles have the same speed.");
    }
}
