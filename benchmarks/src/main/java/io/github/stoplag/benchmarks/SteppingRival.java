package io.github.stoplag.benchmarks;

/** The pair by fixed steps of 1 ms: the plain program a user would write first. */
final class SteppingRival {
    private static final double STEP_S = 1e-3;

    boolean contact;
    double timeS;
    double closingMps;
    double smallestGapM;

    void run(PairSet set, int i) {
        double leaderMps = set.leaderMps[i];
        double followerMps = set.followerMps[i];
        double gapM = set.gapM[i];
        double t = 0;
        smallestGapM = gapM;
        contact = false;
        while (followerMps > 0 || leaderMps > 0) {
            double middle = t + 0.5 * STEP_S;
            double leaderNext = Math.max(
                    0,
                    leaderMps
                            - STEP_S
                                    * decelMps2(middle, set.leaderOnsetS[i], set.leaderBuildUpS[i], set.leaderMps2[i]));
            double followerNext = Math.max(
                    0,
                    followerMps
                            - STEP_S
                                    * decelMps2(
                                            middle,
                                            set.followerOnsetS[i],
                                            set.followerBuildUpS[i],
                                            set.followerMps2[i]));
            gapM += 0.5 * STEP_S * (leaderMps + leaderNext - followerMps - followerNext);
            leaderMps = leaderNext;
            followerMps = followerNext;
            t += STEP_S;
            if (gapM < smallestGapM) {
                smallestGapM = gapM;
                timeS = t;
            }
            if (gapM <= 0) {
                contact = true;
                timeS = t;
                closingMps = followerMps - leaderMps;
                return;
            }
        }
    }

    static double decelMps2(double t, double onsetS, double buildUpS, double fullMps2) {
        return fullMps2 * Math.min(1, Math.max(0, (t - onsetS) / buildUpS));
    }
}
