package io.github.stoplag.kernel;

import java.util.SplittableRandom;

/** A random pair of standard stops, all in SI units. */
public record Scenario(
        double leaderMps,
        double leaderOnsetS,
        double leaderBuildUpS,
        double leaderMps2,
        double followerMps,
        double followerOnsetS,
        double followerBuildUpS,
        double followerMps2,
        double gapM) {
    /** What traffic brings: similar speeds, a follower that reacts after the leader brakes. */
    public static Scenario typical(SplittableRandom random) {
        double speed = random.nextDouble(8, 38);
        return new Scenario(
                Math.max(0, speed + random.nextDouble(-3, 3)),
                random.nextDouble(0, 0.3),
                random.nextDouble(0, 0.6),
                random.nextDouble(3, 9),
                speed,
                random.nextDouble(0.3, 2.5),
                random.nextDouble(0, 0.6),
                random.nextDouble(3, 9),
                random.nextDouble(3, 60));
    }

    /** Anything that is possible: standing and racing vehicles, late or missing brakes, long build-ups, gap 0. */
    public static Scenario extreme(SplittableRandom random) {
        return new Scenario(
                extremeSpeed(random),
                extremeTime(random, 10),
                extremeTime(random, 5),
                extremeDeceleration(random),
                extremeSpeed(random),
                extremeTime(random, 10),
                extremeTime(random, 5),
                extremeDeceleration(random),
                random.nextInt(10) == 0 ? 0 : Math.exp(random.nextDouble(-7, 7)));
    }

    private static double extremeSpeed(SplittableRandom random) {
        return random.nextInt(8) == 0 ? 0 : Math.exp(random.nextDouble(-4, 5));
    }

    private static double extremeTime(SplittableRandom random, double most) {
        return random.nextInt(4) == 0 ? 0 : most * Math.pow(random.nextDouble(), 3);
    }

    private static double extremeDeceleration(SplittableRandom random) {
        return random.nextInt(8) == 0 ? 0 : Math.exp(random.nextDouble(-1, 5));
    }

    public void event(GapEvent event) {
        GapKernel.pairEvent(
                leaderMps,
                leaderOnsetS,
                leaderBuildUpS,
                leaderMps2,
                followerMps,
                followerOnsetS,
                followerBuildUpS,
                followerMps2,
                gapM,
                event);
    }

    void eventByPhases(GapEvent event) {
        GapKernel.pairEventByPhases(
                leaderMps,
                leaderOnsetS,
                leaderBuildUpS,
                leaderMps2,
                followerMps,
                followerOnsetS,
                followerBuildUpS,
                followerMps2,
                gapM,
                event);
    }

    double gapNeededM(GapEvent event) {
        return GapKernel.pairGapNeededM(
                leaderMps,
                leaderOnsetS,
                leaderBuildUpS,
                leaderMps2,
                followerMps,
                followerOnsetS,
                followerBuildUpS,
                followerMps2,
                event);
    }

    Scenario withGap(double newGapM) {
        return new Scenario(
                leaderMps,
                leaderOnsetS,
                leaderBuildUpS,
                leaderMps2,
                followerMps,
                followerOnsetS,
                followerBuildUpS,
                followerMps2,
                newGapM);
    }

    /** Writes the nine values into row {@code row} of nine columns, in the order of the kernel's arguments. */
    void put(double[][] columns, int row) {
        double[] values = {
            leaderMps,
            leaderOnsetS,
            leaderBuildUpS,
            leaderMps2,
            followerMps,
            followerOnsetS,
            followerBuildUpS,
            followerMps2,
            gapM
        };
        for (int c = 0; c < values.length; c++) {
            columns[c][row] = values[c];
        }
    }

    Trajectory leader() {
        return Trajectory.stop(leaderMps, leaderOnsetS, leaderBuildUpS, leaderMps2);
    }

    Trajectory follower() {
        return Trajectory.stop(followerMps, followerOnsetS, followerBuildUpS, followerMps2);
    }

    boolean settledByCaseTheorem(GapEvent event) {
        return CaseTheorem.holds(
                        leaderMps,
                        leaderOnsetS,
                        leaderBuildUpS,
                        leaderMps2,
                        followerMps,
                        followerOnsetS,
                        followerBuildUpS,
                        followerMps2)
                && CaseTheorem.settle(
                        leaderMps,
                        leaderOnsetS,
                        leaderBuildUpS,
                        leaderMps2,
                        followerMps,
                        followerOnsetS,
                        followerBuildUpS,
                        followerMps2,
                        gapM,
                        event);
    }
}
