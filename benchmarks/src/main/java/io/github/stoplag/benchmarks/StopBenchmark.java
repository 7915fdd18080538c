package io.github.stoplag.benchmarks;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.braking.Stop;
import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
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

/** One stopping distance (and time) per operation; about one in twenty stops inside the build-up. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class StopBenchmark {
    private static final int SIZE = 4096;

    final double[] speedMps = new double[SIZE];
    final double[] onsetS = new double[SIZE];
    final double[] buildUpS = new double[SIZE];
    final double[] decelMps2 = new double[SIZE];
    final double[] distanceM = new double[SIZE];
    final double[] timeS = new double[SIZE];
    private int next;

    /** Draws the set from a fixed seed. */
    public StopBenchmark() {
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < SIZE; i++) {
            decelMps2[i] = random.nextDouble(3, 10);
            buildUpS[i] = random.nextDouble(0, 0.6);
            onsetS[i] = random.nextDouble(0.4, 2.5);
            speedMps[i] = random.nextInt(20) == 0
                    ? random.nextDouble(0, 0.5) * decelMps2[i] * buildUpS[i]
                    : random.nextDouble(4, 40);
        }
    }

    private int index() {
        next = (next + 1) & (SIZE - 1);
        return next;
    }

    /** Distance alone. */
    @Benchmark
    public double kernelDistance() {
        int i = index();
        return StopKernel.stoppingDistanceM(speedMps[i], onsetS[i], buildUpS[i], decelMps2[i]);
    }

    /** Distance and time, added so that both are needed. */
    @Benchmark
    public double kernelDistanceAndTime() {
        int i = index();
        return StopKernel.stoppingDistanceM(speedMps[i], onsetS[i], buildUpS[i], decelMps2[i])
                + StopKernel.stoppingTimeS(speedMps[i], onsetS[i], buildUpS[i], decelMps2[i]);
    }

    /** A batch of distances, per element. */
    @Benchmark
    @OperationsPerInvocation(SIZE)
    public double[] batchDistance() {
        StopKernel.stoppingDistances(speedMps, onsetS, buildUpS, decelMps2, distanceM);
        return distanceM;
    }

    /** A batch of distances and one of times, per element. */
    @Benchmark
    @OperationsPerInvocation(SIZE)
    public double[] batchDistanceAndTime() {
        StopKernel.stoppingDistancesAndTimes(speedMps, onsetS, buildUpS, decelMps2, distanceM, timeS);
        return timeS;
    }

    /** The typed face, value objects made in the call. */
    @Benchmark
    public double typed() {
        int i = index();
        Stop stop = (Stop) Stop.of(
                Speed.mps(speedMps[i]),
                TimeSpan.seconds(onsetS[i]),
                new BrakeResponse(TimeSpan.seconds(0), TimeSpan.seconds(buildUpS[i])),
                Deceleration.mps2(decelMps2[i]));
        return stop.stoppingDistance().inMetres();
    }

    /** Steps of 1 ms. */
    @Benchmark
    public double stepping1ms() {
        int i = index();
        double v = speedMps[i];
        double s = 0;
        for (double t = 0; v > 0; t += 1e-3) {
            double after =
                    v - 1e-3 * SteppingRival.decelMps2(t + 5e-4, onsetS[i], Math.max(buildUpS[i], 1e-9), decelMps2[i]);
            s += 0.5e-3 * (v + Math.max(0, after));
            v = after;
        }
        return s;
    }

    /** Commons Math's integrator with event detection at 1e-9, split at the kinks. */
    @Benchmark
    public double integratorWithEvents() {
        int i = index();
        double[] state = {0, speedMps[i]};
        double t = 0;
        for (double end : new double[] {onsetS[i], onsetS[i] + buildUpS[i], 100}) {
            if (end > t && state[1] > 1e-9) {
                DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-8, 1, 1e-9, 1e-9);
                integrator.addEventHandler(new Rest(), 0.1, 1e-10, 100);
                t = integrator.integrate(new Motion(onsetS[i], buildUpS[i], decelMps2[i]), t, state, end, state);
            }
        }
        return state[0];
    }

    private record Motion(double onsetS, double buildUpS, double decelMps2) implements FirstOrderDifferentialEquations {
        @Override
        public int getDimension() {
            return 2;
        }

        @Override
        public void computeDerivatives(double t, double[] y, double[] rate) {
            rate[0] = y[1];
            rate[1] = -SteppingRival.decelMps2(t, onsetS, Math.max(buildUpS, 1e-9), decelMps2);
        }
    }

    private static final class Rest implements EventHandler {
        @Override
        public void init(double t0, double[] y0, double t) {}

        @Override
        public double g(double t, double[] y) {
            return y[1];
        }

        @Override
        public Action eventOccurred(double t, double[] y, boolean increasing) {
            return Action.STOP;
        }

        @Override
        public void resetState(double t, double[] y) {
            throw new IllegalStateException("no event resets the state");
        }
    }
}
