package io.github.stoplag.benchmarks;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * The same operations as the JMH benchmarks, timed in turns by the thread's CPU time: for ratios on a machine that
 * others use too. Prints the median and the spread of the rounds in nanoseconds per operation.
 */
public final class InterleavedRatios {
    private static final int ROUNDS = 15;
    private static final long ROUND_NS = 60_000_000;
    private static final long WARM_UP_NS = 1_500_000_000;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private InterleavedRatios() {}

    /** A number of calls of one operation; each is a loop of its own, so that the JIT compiles each by itself. */
    interface Loop {
        double run(int calls);
    }

    static final class Timed {
        private final String name;
        private final int perCall;
        private final Loop loop;
        private final double[] roundNs = new double[ROUNDS];

        Timed(String name, int perCall, Loop loop) {
            this.name = name;
            this.perCall = perCall;
            this.loop = loop;
        }

        String name() {
            return name;
        }

        double medianNs() {
            double[] sorted = roundNs.clone();
            Arrays.sort(sorted);
            return sorted[ROUNDS / 2];
        }
    }

    /**
     * Runs all operations.
     *
     * @param args not used
     */
    public static void main(String[] args) {
        List<Timed> operations = operations(new StopBenchmark(), new PairBenchmark(), new SweepBenchmark());
        double checksum = run(operations);
        for (Timed operation : operations) {
            double[] sorted = operation.roundNs.clone();
            Arrays.sort(sorted);
            System.out.printf(
                    Locale.ROOT,
                    "%-32s median %12.2f  min %12.2f  upper quartile %12.2f ns/op%n",
                    operation.name,
                    sorted[ROUNDS / 2],
                    sorted[0],
                    sorted[ROUNDS * 3 / 4]);
        }
        System.out.println("warm-up sum " + checksum);
    }

    /** Warms all operations up, then takes their rounds in turns. */
    static double run(List<Timed> operations) {
        double checksum = 0;
        for (Timed operation : operations) {
            checksum += measure(operation, WARM_UP_NS);
        }
        for (int round = 0; round < ROUNDS; round++) {
            for (Timed operation : operations) {
                operation.roundNs[round] = measure(operation, ROUND_NS);
            }
        }
        return checksum;
    }

    private static double measure(Timed operation, long leastNs) {
        long calls = 0;
        double sum = 0;
        int block = 1;
        long start = THREADS.getCurrentThreadCpuTime();
        long spent;
        do {
            sum += operation.loop.run(block);
            calls += block;
            spent = THREADS.getCurrentThreadCpuTime() - start;
            if (spent < leastNs / 16 && block < 1 << 20) {
                block *= 2;
            }
        } while (spent < leastNs);
        if (Double.isNaN(sum)) {
            throw new IllegalStateException(operation.name + " gave NaN");
        }
        return (double) spent / calls / operation.perCall;
    }

    private static List<Timed> operations(StopBenchmark stop, PairBenchmark pair, SweepBenchmark sweep) {
        return List.of(
                new Timed("stop kernel, distance", 1, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += stop.kernelDistance();
                    }
                    return sum;
                }),
                new Timed("stop kernel, distance and time", 1, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += stop.kernelDistanceAndTime();
                    }
                    return sum;
                }),
                new Timed("stop batch, distance", PairSet.SIZE, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += stop.batchDistance()[7];
                    }
                    return sum;
                }),
                new Timed("stop batch, distance and time", PairSet.SIZE, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += stop.batchDistanceAndTime()[7];
                    }
                    return sum;
                }),
                new Timed("stop typed, distance", 1, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += stop.typed();
                    }
                    return sum;
                }),
                new Timed("stop 1 ms stepping", 1, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += stop.stepping1ms();
                    }
                    return sum;
                }),
                new Timed("stop integrator with events", 1, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += stop.integratorWithEvents();
                    }
                    return sum;
                }),
                new Timed("pair kernel, fast", 1, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += pair.kernelFast();
                    }
                    return sum;
                }),
                new Timed("pair kernel, by phases", 1, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += pair.kernelByPhases();
                    }
                    return sum;
                }),
                new Timed("pair kernel, given trajectories", 1, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += pair.kernelTrajectories();
                    }
                    return sum;
                }),
                new Timed("pair typed", 1, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += pair.typed();
                    }
                    return sum;
                }),
                new Timed("pair 1 ms stepping", 1, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += pair.stepping1ms();
                    }
                    return sum;
                }),
                new Timed("pair integrator with events", 1, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += pair.integratorWithEvents();
                    }
                    return sum;
                }),
                new Timed("pair batch", SweepBenchmark.PAIRS, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += sweep.pairBatch()[7];
                    }
                    return sum;
                }),
                new Timed("pair loop over scalar kernel", SweepBenchmark.PAIRS, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += sweep.pairLoop()[7];
                    }
                    return sum;
                }),
                new Timed("draws, three from tables", SweepBenchmark.DRAWS, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += sweep.draws()[7];
                    }
                    return sum;
                }),
                new Timed("draws, three exact", SweepBenchmark.DRAWS, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += sweep.drawsExact()[7];
                    }
                    return sum;
                }),
                new Timed("monte carlo, one thread", SweepBenchmark.DRAWS, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += sweep.monteCarlo();
                    }
                    return sum;
                }),
                new Timed("monte carlo, gap integrated out", SweepBenchmark.DRAWS, calls -> {
                    double sum = 0;
                    for (int i = 0; i < calls; i++) {
                        sum += sweep.monteCarloWithoutGap();
                    }
                    return sum;
                }));
    }
}
