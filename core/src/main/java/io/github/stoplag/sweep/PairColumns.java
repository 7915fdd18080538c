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

    PairColumns(List<String> inputs, List<String> lamps) {
        frictionAt = inputs.indexOf(PairColumn.FRICTION.column());
        gradeAt = inputs.indexOf(PairColumn.GRADE.column());
        respondsAt = inputs.indexOf(PairColumn.RESPONDS.column());
        speed = new CheckedColumn(inputs, PairColumn.SPEED);
        followerSpeed = new CheckedColumn(inputs, PairColumn.FOLLOWER_SPEED);
        reaction = new CheckedColumn(inputs, PairColumn.REACTION);
        deadTime = new CheckedColumn(inputs, PairColumn.DEAD_TIME);
        buildUp = new CheckedColumn(inputs, PairColumn.BUILD_UP);
        followerDecel = new CheckedColumn(inputs, PairColumn.FOLLOWER_DECEL);
        leaderDecel = new CheckedColumn(inputs, PairColumn.LEADER_DECEL);
        latency = lamps.stream()
                .map(lamp -> new CheckedColumn(inputs, PairColumn.LATENCY, lamp))
                .toArray(CheckedColumn[]::new);
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

    /**
     * Tells the rows whose follower never brakes behind a leader that does, for which every gap is too short, and lets
     * them brake like the leader: the kernel need not look for a contact 100 km away.
     *
     * @return whether there are any
     */
    boolean takeOutNonBraking(int count, boolean[] never) {
        boolean any = false;
        for (int i = 0; i < count; i++) {
            never[i] = followerMps2[i] == 0 && followerMps[i] > 0 && leaderMps2[i] > 0;
            any |= never[i];
        }
        if (any) {
            for (int i = 0; i < count; i++) {
                followerLimitedMps2[i] = never[i] ? leaderMps2[i] : followerMps2[i];
            }
            followerMps2 = followerLimitedMps2;
        }
        return any;
    }

    private void limitToRoad(int count, double[][] columns, Rejects rejects) {
        if (frictionAt < 0) {
            return;
        }
        double[] friction = columns[frictionAt];
        double[] grade = gradeAt < 0 ? zero : columns[gradeAt];
        for (int i = 0; i < count; i++) {
            double allowedMps2 = Double.POSITIVE_INFINITY;
            if (!PairColumn.FRICTION.range().contains(friction[i])) {
                rejects.reject(i, PairColumn.FRICTION.refusal());
            } else if (!PairColumn.GRADE.range().contains(grade[i])) {
                rejects.reject(i, PairColumn.GRADE.refusal());
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
