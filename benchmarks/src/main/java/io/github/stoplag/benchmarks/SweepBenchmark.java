package io.github.stoplag.benchmarks;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.kernel.GapEvent;
import io.github.stoplag.kernel.PairBatch;
import io.github.stoplag.sweep.Axis;
import io.github.stoplag.sweep.ConditionalContact;
import io.github.stoplag.sweep.ConditionalTally;
import io.github.stoplag.sweep.Design;
import io.github.stoplag.sweep.LampTally;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.Scenarios;
import io.github.stoplag.sweep.Sweep;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Batches of pairs and Monte Carlo with three drawn inputs; per scenario. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class SweepBenchmark {
    static final int DRAWS = 1 << 22;
    static final int ROWS = 1024;
    static final int PAIRS = 1 << 16;

    final PairSet set = new PairSet(11, PAIRS);
    final double[] timeS = new double[PAIRS];
    final double[] smallestGapM = new double[PAIRS];
    final double[] closingMps = new double[PAIRS];
    private final PairBatch batch = new PairBatch();
    private final GapEvent event = new GapEvent();
    private final Plan plan = plan();
    private final Scenarios scenarios = plan.scenarios();
    private final Scenarios exactScenarios = plan.withExactQuantiles().scenarios();
    private final PairModel model = PairModel.of(plan, "led");
    private final ConditionalContact conditional = ConditionalContact.of(plan, "led");
    private final double[][] columns = new double[plan.axes().size()][ROWS];

    static Plan plan() {
        return Plan.of(Design.random(DRAWS), 13)
                .axis(Axis.constant("speed", "mps", 25))
                .axis(Axis.constant("leader_decel", "mps2", 7))
                .axis(Axis.constant("brake_dead_time", "s", 0.1))
                .axis(Axis.constant("brake_build_up", "s", 0.25))
                .axis(Axis.constant("lamp_latency_led", "s", 0.01))
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(0.17, 0.44)))
                .axis(Axis.drawn("time_gap", "s", new Distribution.LogNormal(0.69, 0.47)))
                .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(7, 1, 2, 10)));
    }

    /** The batch of pairs, from and to the caller's arrays. */
    @Benchmark
    @OperationsPerInvocation(PAIRS)
    public double[] pairBatch() {
        batch.outcomes(
                PAIRS,
                set.leaderMps,
                set.leaderOnsetS,
                set.leaderBuildUpS,
                set.leaderMps2,
                set.followerMps,
                set.followerOnsetS,
                set.followerBuildUpS,
                set.followerMps2,
                set.gapM,
                timeS,
                smallestGapM,
                closingMps);
        return timeS;
    }

    /** The plain loop over the scalar kernel that the batch replaces. */
    @Benchmark
    @OperationsPerInvocation(PAIRS)
    public double[] pairLoop() {
        for (int i = 0; i < PAIRS; i++) {
            set.pairEvent(i, event);
            timeS[i] = event.timeS();
            smallestGapM[i] = event.smallestGapM();
            closingMps[i] = event.closingSpeedMps();
        }
        return timeS;
    }

    /** Three draws from tables and five constants, without a model. */
    @Benchmark
    @OperationsPerInvocation(DRAWS)
    public double[] draws() {
        return fill(scenarios);
    }

    /** The same with exact quantile functions. */
    @Benchmark
    @OperationsPerInvocation(DRAWS)
    public double[] drawsExact() {
        return fill(exactScenarios);
    }

    private double[] fill(Scenarios values) {
        for (int from = 0; from < DRAWS; from += ROWS) {
            values.fill(from, ROWS, columns);
        }
        return columns[5];
    }

    /** Draws, outcomes and all statistics on one thread. */
    @Benchmark
    @OperationsPerInvocation(DRAWS)
    public long monteCarlo() {
        return monteCarlo(1);
    }

    /** Draws, outcomes and all statistics on two threads; wall time. */
    @Benchmark
    @OperationsPerInvocation(DRAWS)
    public long monteCarloOnTwoThreads() {
        return monteCarlo(2);
    }

    /** Two draws, the gap integrated out, on one thread. */
    @Benchmark
    @OperationsPerInvocation(DRAWS)
    public double monteCarloWithoutGap() {
        return Sweep.of(conditional.plan(), conditional)
                .withThreads(1)
                .run(() -> new ConditionalTally(conditional))
                .tally()
                .contactProbability("led")
                .mean();
    }

    private long monteCarlo(int threads) {
        return statistics(threads).contactProbability().hits();
    }

    LampTally statistics(int threads) {
        return Sweep.of(plan, model)
                .withThreads(threads)
                .run(() -> new PairTally(model))
                .tally()
                .lamp("led");
    }
}
