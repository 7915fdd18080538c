package io.github.stoplag.sweep;

import io.github.stoplag.kernel.PairBatch;
import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Deceleration;
import java.util.List;

/** The pair model on one thread: checks and derives columns, then runs the batch kernel once for each lamp. */
final class PairEvaluator implements Model.Evaluator {
    private static final int LONGEST_BLOCK = RowBlock.ROWS;
    private static final int FIRST_LATENCY = PairModel.NEEDED.size();

    private final List<String> inputs;
    private final int lamps;
    private final PairBatch batch = new PairBatch();
    private final double[] zero = new double[LONGEST_BLOCK];
    private final double[] gapM = new double[LONGEST_BLOCK];
    private final double[] leaderMps2 = new double[LONGEST_BLOCK];
    private final double[] followerMps2 = new double[LONGEST_BLOCK];
    private final double[] followerOnsetS = new double[LONGEST_BLOCK];
    private final double[] leaderMps = new double[LONGEST_BLOCK];
    private final double[] followerMps = new double[LONGEST_BLOCK];
    private final double[] deadS = new double[LONGEST_BLOCK];
    private final double[] buildUpS = new double[LONGEST_BLOCK];
    private final double[] reactionS = new double[LONGEST_BLOCK];

    PairEvaluator(List<String> inputs, int lamps) {
        this.inputs = inputs;
        this.lamps = lamps;
    }

    private double[] column(double[][] columns, String name, double[] absent) {
        int at = inputs.indexOf(name);
        return at < 0 ? absent : columns[at];
    }

    @Override
    public void evaluate(int count, double[][] columns, double[][] outputs, Rejects rejects) {
        take(columns, "speed_mps", zero, leaderMps, 0, 150, "speed must be in [0, 150] m/s", count, rejects);
        take(
                columns,
                "follower_speed_mps",
                leaderMps,
                followerMps,
                0,
                150,
                "follower speed must be in [0, 150] m/s",
                count,
                rejects);
        take(columns, "reaction_s", zero, reactionS, 0, 30, "reaction time must be in [0, 30] s", count, rejects);
        take(columns, "brake_dead_time_s", zero, deadS, 0, 10, "brake dead time must be in [0, 10] s", count, rejects);
        take(
                columns,
                "brake_build_up_s",
                zero,
                buildUpS,
                0,
                10,
                "brake build-up time must be in [0, 10] s",
                count,
                rejects);
        take(
                columns,
                "follower_decel_mps2",
                zero,
                followerMps2,
                0,
                200,
                "follower deceleration must be in [0, 200] m/s²",
                count,
                rejects);
        take(
                columns,
                "leader_decel_mps2",
                followerMps2,
                leaderMps2,
                0,
                200,
                "leader deceleration must be in [0, 200] m/s²",
                count,
                rejects);
        gaps(columns, count, rejects);
        if (inputs.contains("friction_ratio")) {
            limitToRoad(columns, count, rejects);
        }
        for (int lamp = 0; lamp < lamps; lamp++) {
            run(columns[FIRST_LATENCY + lamp], lamp, count, outputs, rejects);
        }
    }

    /** Copies a column, or the one that stands for it, with 1 in place of what is rejected. */
    private void take(
            double[][] columns,
            String name,
            double[] absent,
            double[] to,
            double lo,
            double hi,
            String reason,
            int count,
            Rejects rejects) {
        double[] from = column(columns, name, absent);
        int good = 0;
        for (int i = 0; i < count; i++) {
            double x = from[i];
            to[i] = x;
            good += x >= lo && x <= hi ? 1 : 0;
        }
        for (int i = 0; good < count && i < count; i++) {
            if (!(to[i] >= lo && to[i] <= hi)) {
                rejects.reject(i, reason);
                to[i] = 1;
            }
        }
    }

    private void gaps(double[][] columns, int count, Rejects rejects) {
        if (inputs.contains("gap_m")) {
            take(columns, "gap_m", zero, gapM, 0, 1e5, "gap must be in [0, 1e5] m", count, rejects);
            return;
        }
        take(columns, "time_gap_s", zero, gapM, 0, 300, "time gap must be in [0, 300] s", count, rejects);
        for (int i = 0; i < count; i++) {
            gapM[i] *= followerMps[i];
        }
    }

    private void limitToRoad(double[][] columns, int count, Rejects rejects) {
        double[] friction = column(columns, "friction_ratio", zero);
        double[] grade = column(columns, "grade_ratio", zero);
        for (int i = 0; i < count; i++) {
            if (!(friction[i] > 0 && friction[i] <= 2)) {
                rejects.reject(i, "friction coefficient must be in (0, 2]");
            } else if (!(grade[i] >= -0.5 && grade[i] <= 0.5)) {
                rejects.reject(i, "grade must be in [-0.5, 0.5]");
            } else {
                double allowed = StopKernel.decelerationMps2(friction[i], grade[i], Deceleration.STANDARD_GRAVITY_MPS2);
                if (allowed > 0) {
                    leaderMps2[i] = Math.min(leaderMps2[i], allowed);
                    followerMps2[i] = Math.min(followerMps2[i], allowed);
                } else {
                    rejects.reject(i, "friction must outweigh the downgrade");
                }
            }
        }
    }

    private void run(double[] latencyS, int lamp, int count, double[][] outputs, Rejects rejects) {
        double[] contact = outputs[4 * lamp];
        double[] closingMps = outputs[4 * lamp + 1];
        for (int i = 0; i < count; i++) {
            if (!(latencyS[i] >= 0 && latencyS[i] <= 30)) {
                rejects.reject(i, "lamp latency must be in [0, 30] s");
                followerOnsetS[i] = 0;
            } else {
                followerOnsetS[i] = latencyS[i] + reactionS[i] + deadS[i];
            }
        }
        batch.outcomes(
                count,
                leaderMps,
                deadS,
                buildUpS,
                leaderMps2,
                followerMps,
                followerOnsetS,
                buildUpS,
                followerMps2,
                gapM,
                outputs[4 * lamp + 3],
                outputs[4 * lamp + 2],
                closingMps);
        for (int i = 0; i < count; i++) {
            contact[i] = closingMps[i] >= 0 ? 1 : 0;
        }
    }
}
