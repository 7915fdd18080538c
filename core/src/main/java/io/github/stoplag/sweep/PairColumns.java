package io.github.stoplag.sweep;

import io.github.stoplag.kernel.PairBatch;
import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Deceleration;
import java.util.List;

/**
 * What the models of a pair share on one thread: the two vehicles' checked columns, without the gap, and the batch
 * kernel.
 */
final class PairColumns {
    static final int FIRST_LATENCY = PairModel.NEEDED.size();
    private static final int ROWS = RowBlock.ROWS;

    private final int frictionAt;
    private final int gradeAt;
    private final CheckedColumn speed;
    private final CheckedColumn followerSpeed;
    private final CheckedColumn reaction;
    private final CheckedColumn deadTime;
    private final CheckedColumn buildUp;
    private final CheckedColumn followerDecel;
    private final CheckedColumn leaderDecel;
    private final int respondsAt;
    private final CheckedColumn[] latency;
    private final PairBatch batch = new PairBatch();
    private final double[] zero = new double[ROWS];
    private final double[] followerOnsetS = new double[ROWS];
    private final double[] leaderLimitedMps2 = new double[ROWS];
    private final double[] followerLimitedMps2 = new double[ROWS];
    private double[] leaderMps = zero;
    private double[] followerMps = zero;
    private double[] reactionS = zero;
    private double[] deadS = zero;
    private double[] buildUpS = zero;
    private double[] leaderMps2 = zero;
    private double[] followerMps2 = zero;

    PairColumns(List<String> inputs, int lamps) {
        frictionAt = inputs.indexOf("friction_ratio");
        gradeAt = inputs.indexOf("grade_ratio");
        respondsAt = inputs.indexOf(PairModel.RESPONDS);
        speed = new CheckedColumn(inputs, "speed_mps", 0, 150, "speed must be in [0, 150] m/s");
        followerSpeed =
                new CheckedColumn(inputs, "follower_speed_mps", 0, 150, "follower speed must be in [0, 150] m/s");
        reaction = new CheckedColumn(inputs, "reaction_s", 0, 30, "reaction time must be in [0, 30] s");
        deadTime = new CheckedColumn(inputs, "brake_dead_time_s", 0, 10, "brake dead time must be in [0, 10] s");
        buildUp = new CheckedColumn(inputs, "brake_build_up_s", 0, 10, "brake build-up time must be in [0, 10] s");
        followerDecel = new CheckedColumn(
                inputs, "follower_decel_mps2", 0, 200, "follower deceleration must be in [0, 200] m/s²");
        leaderDecel =
                new CheckedColumn(inputs, "leader_decel_mps2", 0, 200, "leader deceleration must be in [0, 200] m/s²");
        latency = new CheckedColumn[lamps];
        for (int lamp = 0; lamp < lamps; lamp++) {
            latency[lamp] = new CheckedColumn(
                    inputs, inputs.get(FIRST_LATENCY + lamp), 0, 30, "lamp latency must be in [0, 30] s");
        }
    }

    /** Checks and derives all columns but the gap, in this order, and the latencies. */
    void take(int count, double[][] columns, Rejects rejects) {
        leaderMps = speed.take(columns, zero, count, rejects);
        followerMps = followerSpeed.take(columns, leaderMps, count, rejects);
        reactionS = reaction.take(columns, zero, count, rejects);
        deadS = deadTime.take(columns, zero, count, rejects);
        buildUpS = buildUp.take(columns, zero, count, rejects);
        followerMps2 = followerDecel.take(columns, zero, count, rejects);
        leaderMps2 = leaderDecel.take(columns, followerMps2, count, rejects);
    }

    double[] followerMps() {
        return followerMps;
    }

    /** Limits both decelerations to what the road allows and takes that of a driver who does not respond away. */
    void limit(int count, double[][] columns, Rejects rejects) {
        limitToRoad(count, columns, rejects);
        if (respondsAt < 0) {
            return;
        }
        double[] responds = columns[respondsAt];
        for (int i = 0; i < count; i++) {
            if (responds[i] != 0 && responds[i] != 1) {
                rejects.reject(i, "responds must be 0 or 1");
            }
            followerLimitedMps2[i] = responds[i] == 0 ? 0 : followerMps2[i];
        }
        followerMps2 = followerLimitedMps2;
    }

    private void limitToRoad(int count, double[][] columns, Rejects rejects) {
        if (frictionAt < 0) {
            return;
        }
        double[] friction = columns[frictionAt];
        double[] grade = gradeAt < 0 ? zero : columns[gradeAt];
        for (int i = 0; i < count; i++) {
            double allowedMps2 = Double.POSITIVE_INFINITY;
            if (!(friction[i] > 0 && friction[i] <= 2)) {
                rejects.reject(i, "friction coefficient must be in (0, 2]");
            } else if (!(grade[i] >= -0.5 && grade[i] <= 0.5)) {
                rejects.reject(i, "grade must be in [-0.5, 0.5]");
            } else {
                allowedMps2 = StopKernel.decelerationMps2(friction[i], grade[i], Deceleration.STANDARD_GRAVITY_MPS2);
                if (!(allowedMps2 > 0)) {
                    rejects.reject(i, "friction must outweigh the downgrade");
                    allowedMps2 = Double.POSITIVE_INFINITY;
                }
            }
            leaderLimitedMps2[i] = Math.min(leaderMps2[i], allowedMps2);
            followerLimitedMps2[i] = Math.min(followerMps2[i], allowedMps2);
        }
        leaderMps2 = leaderLimitedMps2;
        followerMps2 = followerLimitedMps2;
    }

    /** Runs the batch kernel for one lamp. */
    void outcomes(
            int lamp,
            int count,
            double[][] columns,
            double[] gapM,
            double[] timeS,
            double[] smallestGapM,
            double[] closingMps,
            Rejects rejects) {
        double[] latencyS = latency[lamp].take(columns, zero, count, rejects);
        for (int i = 0; i < count; i++) {
            followerOnsetS[i] = latencyS[i] + reactionS[i] + deadS[i];
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
                timeS,
                smallestGapM,
                closingMps);
    }
}
