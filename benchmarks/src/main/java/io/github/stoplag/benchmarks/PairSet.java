package io.github.stoplag.benchmarks;

import io.github.stoplag.kernel.GapEvent;
import io.github.stoplag.kernel.GapKernel;
import java.util.SplittableRandom;

/** A fixed set of typical pairs as arrays, about two in five of them ending in contact. */
final class PairSet {
    static final int SIZE = 4096;

    final double[] leaderMps;
    final double[] leaderOnsetS;
    final double[] leaderBuildUpS;
    final double[] leaderMps2;
    final double[] followerMps;
    final double[] followerOnsetS;
    final double[] followerBuildUpS;
    final double[] followerMps2;
    final double[] gapM;

    PairSet(long seed) {
        this(seed, SIZE);
    }

    PairSet(long seed, int size) {
        leaderMps = new double[size];
        leaderOnsetS = new double[size];
        leaderBuildUpS = new double[size];
        leaderMps2 = new double[size];
        followerMps = new double[size];
        followerOnsetS = new double[size];
        followerBuildUpS = new double[size];
        followerMps2 = new double[size];
        gapM = new double[size];
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < size; i++) {
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

    void pairEvent(int i, GapEvent event) {
        GapKernel.pairEvent(
                leaderMps[i],
                leaderOnsetS[i],
                leaderBuildUpS[i],
                leaderMps2[i],
                followerMps[i],
                followerOnsetS[i],
                followerBuildUpS[i],
                followerMps2[i],
                gapM[i],
                event);
    }

    void pairEventByPhases(int i, GapEvent event) {
        GapKernel.pairEventByPhases(
                leaderMps[i],
                leaderOnsetS[i],
                leaderBuildUpS[i],
                leaderMps2[i],
                followerMps[i],
                followerOnsetS[i],
                followerBuildUpS[i],
                followerMps2[i],
                gapM[i],
                event);
    }
}
