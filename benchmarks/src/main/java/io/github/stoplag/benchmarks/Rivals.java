package io.github.stoplag.benchmarks;

import io.github.stoplag.kernel.GapEvent;
import io.github.stoplag.sweep.Axis;
import io.github.stoplag.sweep.LampTally;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/**
 * The library's side of the comparison with C++ and numpy: {@code write FOLDER} stores the scenarios and outcomes that
 * the rivals check themselves against, one file of little-endian doubles a column; {@code time} prints the CPU time of
 * each operation. The rivals and the script that runs all in turns are in the folder rivals of this module.
 */
public final class Rivals {
    // the cells of a quantile table, see QuantileTable
    private static final int CELL_BITS = 5;
    private static final int CELLS = 52 << CELL_BITS;
    private static final int SHIFT = 52 - CELL_BITS;
    private static final double SMALLEST_TAIL = 0x1p-53;

    private final Path folder;

    private Rivals(Path folder) {
        this.folder = folder;
    }

    /**
     * Writes or times.
     *
     * @param args {@code write} and the folder, or {@code time}
     * @throws IOException if the folder cannot be written
     */
    public static void main(String[] args) throws IOException {
        if (args.length == 2 && args[0].equals("write")) {
            new Rivals(Files.createDirectories(Path.of(args[1]))).write();
        } else if (args.length == 1 && args[0].equals("time")) {
            time();
        } else {
            throw new IllegalArgumentException("arguments must be: write FOLDER, or: time");
        }
    }

    private void write() throws IOException {
        StopBenchmark stop = new StopBenchmark();
        stop.batchDistanceAndTime();
        store("stop_speed_mps", stop.speedMps);
        store("stop_onset_s", stop.onsetS);
        store("stop_build_up_s", stop.buildUpS);
        store("stop_decel_mps2", stop.decelMps2);
        store("stop_distance_m", stop.distanceM);
        store("stop_time_s", stop.timeS);
        SweepBenchmark sweep = new SweepBenchmark();
        sweep.pairBatch();
        PairSet set = sweep.set;
        store("pair_leader_speed_mps", set.leaderMps);
        store("pair_leader_onset_s", set.leaderOnsetS);
        store("pair_leader_build_up_s", set.leaderBuildUpS);
        store("pair_leader_decel_mps2", set.leaderMps2);
        store("pair_follower_speed_mps", set.followerMps);
        store("pair_follower_onset_s", set.followerOnsetS);
        store("pair_follower_build_up_s", set.followerBuildUpS);
        store("pair_follower_decel_mps2", set.followerMps2);
        store("pair_gap_m", set.gapM);
        store("pair_time_s", sweep.timeS);
        store("pair_smallest_gap_m", sweep.smallestGapM);
        store("pair_closing_mps", sweep.closingMps);
        for (Axis axis : SweepBenchmark.plan().axes()) {
            if (axis.distribution().isPresent()) {
                String column = axis.column();
                store("table_" + column.substring(0, column.lastIndexOf('_')), quantiles(axis));
            }
        }
        LampTally lamp = sweep.statistics(1);
        store("monte_carlo", new double[] {
            SweepBenchmark.DRAWS,
            lamp.contactProbability().hits(),
            lamp.closingSpeedMps().mean(),
            lamp.smallestGapM().mean()
        });
    }

    private void store(String name, double[] values) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(values.length * Double.BYTES).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asDoubleBuffer().put(values);
        Files.write(folder.resolve(name + ".f64"), bytes.array());
    }

    /** The exact quantiles at the four Chebyshev points of each cell: a rival fits its own table. */
    private static double[] quantiles(Axis axis) {
        DoubleUnaryOperator lower = axis.distribution().orElseThrow().quantileFunction();
        DoubleUnaryOperator upper = axis.distribution().orElseThrow().upperQuantileFunction();
        double[] values = new double[2 * 4 * (CELLS + 1)];
        long lowest = Double.doubleToRawLongBits(SMALLEST_TAIL) >>> SHIFT;
        int at = 0;
        for (DoubleUnaryOperator quantile : List.of(lower, upper)) {
            for (int cell = 0; cell <= CELLS; cell++) {
                double from = Double.longBitsToDouble((lowest + cell) << SHIFT);
                double width = Double.longBitsToDouble((lowest + cell + 1) << SHIFT) - from;
                for (int k = 0; k < 4; k++) {
                    double x = 0.5 - 0.5 * StrictMath.cos((2 * k + 1) * Math.PI / 8);
                    values[at++] = quantile.applyAsDouble(from + width * x);
                }
            }
        }
        return values;
    }

    private static void time() {
        StopBenchmark stop = new StopBenchmark();
        SweepBenchmark sweep = new SweepBenchmark();
        List<InterleavedRatios.Timed> operations = List.of(
                timed("stop batch distance", stop.speedMps.length, () -> stop.batchDistance()[7]),
                timed("stop batch both", stop.speedMps.length, () -> stop.batchDistanceAndTime()[7]),
                timed("pair loop", SweepBenchmark.PAIRS, () -> sweep.pairLoop()[7]),
                timed("pair batch", SweepBenchmark.PAIRS, () -> sweep.pairBatch()[7]),
                timed("pair phases", SweepBenchmark.PAIRS, () -> byPhases(sweep.set)),
                timed("draws", SweepBenchmark.DRAWS, () -> sweep.draws()[7]),
                timed("monte carlo", SweepBenchmark.DRAWS, sweep::monteCarlo),
                timed("monte carlo without gap", SweepBenchmark.DRAWS, sweep::monteCarloWithoutGap));
        InterleavedRatios.run(operations);
        for (InterleavedRatios.Timed operation : operations) {
            System.out.printf(Locale.ROOT, "%s\t%.4f%n", operation.name(), operation.medianNs());
        }
    }

    private interface Call {
        double run();
    }

    private static InterleavedRatios.Timed timed(String name, int perCall, Call call) {
        return new InterleavedRatios.Timed(name, perCall, calls -> {
            double sum = 0;
            for (int i = 0; i < calls; i++) {
                sum += call.run();
            }
            return sum;
        });
    }

    private static double byPhases(PairSet set) {
        GapEvent event = new GapEvent();
        double sum = 0;
        for (int i = 0; i < set.gapM.length; i++) {
            set.pairEventByPhases(i, event);
            sum += event.timeS();
        }
        return sum;
    }
}
