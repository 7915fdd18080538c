package io.github.stoplag.benchmarks;

import com.sun.management.OperatingSystemMXBean;
import com.sun.management.ThreadMXBean;
import io.github.stoplag.sweep.Design;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.Sweep;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryMXBean;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.util.Locale;

/**
 * Cost and memory of the Monte Carlo against its size: for each size wall and CPU time per scenario, heap still in use
 * after a collection, the highest sum of the heap pools' peaks, and what the calling thread allocated.
 */
public final class SweepScale {
    private static final int WARM_UP = 1 << 22;
    private static final int WARM_UP_ROUNDS = 5;

    private SweepScale() {}

    /**
     * Runs the sizes in rising order.
     *
     * @param args the number of threads and the decimal exponents of the smallest and the largest size
     */
    public static void main(String[] args) {
        if (args.length != 3) {
            throw new IllegalArgumentException("arguments must be: THREADS SMALLEST_EXPONENT LARGEST_EXPONENT");
        }
        int threads = Integer.parseInt(args[0]);
        for (int round = 0; round < WARM_UP_ROUNDS; round++) {
            run(WARM_UP, threads);
        }
        System.out.println(
                "threads " + threads + ", largest heap " + (Runtime.getRuntime().maxMemory() >> 20) + " MB");
        System.out.println(
                "scenarios   wall s   CPU ns/scenario      contacts  heap after MB  heap peak MB  allocated MB");
        for (int exponent = Integer.parseInt(args[1]); exponent <= Integer.parseInt(args[2]); exponent++) {
            report(Math.round(Math.pow(10, exponent)), threads);
        }
    }

    private static void report(long size, int threads) {
        System.gc();
        ManagementFactory.getMemoryPoolMXBeans().forEach(MemoryPoolMXBean::resetPeakUsage);
        ThreadMXBean thread = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long allocatedBefore = thread.getCurrentThreadAllocatedBytes();
        OperatingSystemMXBean process = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        long start = System.nanoTime();
        double cpuNs = -process.getProcessCpuTime();
        long hits = run(size, threads);
        cpuNs += process.getProcessCpuTime();
        double wallNs = System.nanoTime() - start;
        double allocated = thread.getCurrentThreadAllocatedBytes() - allocatedBefore;
        long peak = ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == MemoryType.HEAP)
                .mapToLong(pool -> pool.getPeakUsage().getUsed())
                .sum();
        System.gc();
        MemoryMXBean memory = ManagementFactory.getMemoryMXBean();
        System.out.printf(
                Locale.ROOT,
                "%9.0e  %7.3f  %16.1f  %12d  %13.1f  %12.1f  %12.2f%n",
                (double) size,
                wallNs * 1e-9,
                cpuNs / size,
                hits,
                memory.getHeapMemoryUsage().getUsed() / 1048576.0,
                peak / 1048576.0,
                allocated / 1048576.0);
    }

    private static long run(long size, int threads) {
        Plan plan = SweepBenchmark.plan().withDesign(Design.random(size));
        PairModel model = PairModel.of(plan, "led");
        return Sweep.of(plan, model)
                .withThreads(threads)
                .run(() -> new PairTally(model))
                .tally()
                .lamp("led")
                .contactProbability()
                .hits();
    }
}
