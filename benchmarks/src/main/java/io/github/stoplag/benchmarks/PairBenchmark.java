package io.github.stoplag.benchmarks;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.following.Pair;
import io.github.stoplag.following.PairOutcome;
import io.github.stoplag.kernel.GapEvent;
import io.github.stoplag.kernel.GapKernel;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One pair outcome per operation, walking through a set of typical pairs. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class PairBenchmark {
    private final PairSet set = new PairSet(7);
    private final GapEvent event = new GapEvent();
    private final SteppingRival stepping = new SteppingRival();
    private final IntegratorRival integrator = new IntegratorRival(IntegratorRival.CHECK_S);
    private final Trajectory[] leaders = new Trajectory[PairSet.SIZE];
    private final Trajectory[] followers = new Trajectory[PairSet.SIZE];
    private int next;

    /** Builds the motions that {@link #kernelTrajectories()} takes as given. */
    public PairBenchmark() {
        for (int i = 0; i < PairSet.SIZE; i++) {
            leaders[i] =
                    Trajectory.stop(set.leaderMps[i], set.leaderOnsetS[i], set.leaderBuildUpS[i], set.leaderMps2[i]);
            followers[i] = Trajectory.stop(
                    set.followerMps[i], set.followerOnsetS[i], set.followerBuildUpS[i], set.followerMps2[i]);
        }
    }

    private int index() {
        next = (next + 1) & (PairSet.SIZE - 1);
        return next;
    }

    /** Case theorem first, phases where it does not settle the pair. */
    @Benchmark
    public double kernelFast() {
        int i = index();
        set.pairEvent(i, event);
        return event.timeS();
    }

    /** Always by phases, the phases built anew in the event's scratch. */
    @Benchmark
    public double kernelByPhases() {
        int i = index();
        set.pairEventByPhases(i, event);
        return event.timeS();
    }

    /** The general form on two given motions. */
    @Benchmark
    public double kernelTrajectories() {
        int i = index();
        GapKernel.event(leaders[i], followers[i], set.gapM[i], event);
        return event.timeS();
    }

    /** The typed face, value objects made in the call. */
    @Benchmark
    public double typed() {
        int i = index();
        Pair pair = Pair.of(
                vehicle(set.leaderMps[i], 0, set.leaderOnsetS[i], set.leaderBuildUpS[i], set.leaderMps2[i]),
                vehicle(set.followerMps[i], set.followerOnsetS[i], 0, set.followerBuildUpS[i], set.followerMps2[i]),
                Distance.metres(set.gapM[i]),
                TimeSpan.seconds(0));
        PairOutcome outcome = pair.outcome();
        return outcome instanceof PairOutcome.Contact contact
                ? contact.at().inSeconds()
                : ((PairOutcome.NoContact) outcome).at().inSeconds();
    }

    private static BrakingVehicle vehicle(
            double speedMps, double reactionS, double deadS, double buildUpS, double decelMps2) {
        return BrakingVehicle.of(
                Speed.mps(speedMps),
                TimeSpan.seconds(reactionS),
                new BrakeResponse(TimeSpan.seconds(deadS), TimeSpan.seconds(buildUpS)),
                Deceleration.mps2(decelMps2));
    }

    /** Steps of 1 ms. */
    @Benchmark
    public double stepping1ms() {
        stepping.run(set, index());
        return stepping.timeS;
    }

    /** Commons Math's integrator with event detection at 1e-9. */
    @Benchmark
    public double integratorWithEvents() {
        integrator.run(set, index());
        return integrator.smallestGapM;
    }
}
