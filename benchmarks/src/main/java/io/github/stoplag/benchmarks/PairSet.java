package io.github.stoplag.benchmarks;

import java.util.SplittableRandom;

/** A fixed set of typical pairs as arrays, about two in five of them ending in contact. */
final class PairSet {
    static final int SIZE = 4096;

    final double[] leaderMps = new double[SIZE];
    final double[] leaderOnsetS = new double[SIZE];
    final double[] leaderBuildUpS = new double[SIZE];
    final double[] leaderMps2 = new double[SIZE];
    final double[] followerMps = new double[SIZE];
    final double[] followerOnsetS = new double[SIZE];
    final double[] followerBuildUpS = new double[SIZE];
    final double[] followerMps2 = new double[SIZE];
    final double[] gapM = new double[SIZE];

    PairSet(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < SIZE; i++) {
            double speedMps = random.nextDouble(8, 38);
            leaderMps[i] = speedMps + random.nextDouble(-2, 2);
            leaderOnsetS[i] = random.nextDouble(0.05, 0.2);
            leaderBuildUpS[i] = random.nextDouble(0.1, 0.5);
            leaderMps2[i] = random.nextDouble(4, 9);
            followerMps[i] = speedMps;
            followerOnsetS[i] = random.nextDouble(0.5, 2.2);
            followerBuildUpS[i] = random.nextDouble(0.1, 0.5);
            followerMps2[i] = random.nextDouble(4, 9);
            gapM[i] = speedMps * random.nextDouble(0.5, 2.2);
        }
    }
}
