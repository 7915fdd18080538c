package io.github.stoplag.kernel;

import java.util.Objects;

/**
 * Outcomes of many pairs of standard stops, arrays in and arrays out, with the same bits as
 * {@link GapKernel#pairEvent}.
 *
 * <p>Blocks of 512 pairs go through small loops: first what every pair needs, then the sorting of rows into lists by
 * case without branches (a wrong guess of the processor costs as much as the arithmetic of a pair), then one loop per
 * case of the case theorem, then the few with an event before the follower brakes fully, and last those that need the
 * search by phases. Nothing is allocated in a call.
 *
 * <p>An instance is scratch for one thread. Formulas and range: see {@link GapKernel}.
 */
public final class PairBatch {
    private static final int BLOCK = 512;

    private final StopColumns leader = new StopColumns(BLOCK);
    private final StopColumns follower = new StopColumns(BLOCK);
    private final double[] finalGapM = new double[BLOCK];
    private final double[] fullGapM = new double[BLOCK];
    private final double[] rateMps = new double[BLOCK];
    private final int[] clear = new int[BLOCK];
    private final int[] standing = new int[BLOCK];
    private final int[] followerFirst = new int[BLOCK];
    private final int[] moving = new int[2 * BLOCK];
    private final int[] early = new int[2 * BLOCK];
    private final int[] open = new int[2 * BLOCK];
    private final GapEvent event = new GapEvent();
    private int movingCount;
    private int earlyCount;
    private int openCount;

    private double[] leaderMps = {};
    private double[] leaderOnsetS = {};
    private double[] leaderBuildUpS = {};
    private double[] leaderMps2 = {};
    private double[] followerMps = {};
    private double[] followerOnsetS = {};
    private double[] followerBuildUpS = {};
    private double[] followerMps2 = {};
    private double[] gapM = {};
    private double[] timeS = {};
    private double[] smallestGapM = {};
    private double[] closingMps = {};

    /** Makes scratch for one thread, about 84 kB. */
    public PairBatch() {}

    /**
     * Finds the outcomes of the first pairs of the arrays.
     *
     * @param count how many pairs
     * @param leaderSpeedMps the leaders' speeds in m/s
     * @param leaderOnsetS when the leaders' decelerations start, in s
     * @param leaderBuildUpS how long they take to build up, in s
     * @param leaderDecelMps2 the leaders' decelerations after that, in m/s²; 0 never brakes
     * @param followerSpeedMps the followers' speeds in m/s
     * @param followerOnsetS when the followers' decelerations start, in s
     * @param followerBuildUpS how long they take to build up, in s
     * @param followerDecelMps2 the followers' decelerations after that, in m/s²; 0 never brakes
     * @param gapM the gaps at time 0, in [0, 1e5] m
     * @param timeS where the moment of contact, or of the smallest gap, goes
     * @param smallestGapM where the smallest gap goes, 0 on contact
     * @param closingSpeedMps where the closing speed goes, NaN without contact
     * @throws IllegalArgumentException if a value is out of range, naming the row
     */
    public void outcomes(
            int count,
            double[] leaderSpeedMps,
            double[] leaderOnsetS,
            double[] leaderBuildUpS,
            double[] leaderDecelMps2,
            double[] followerSpeedMps,
            double[] followerOnsetS,
            double[] followerBuildUpS,
            double[] followerDecelMps2,
            double[] gapM,
            double[] timeS,
            double[] smallestGapM,
            double[] closingSpeedMps) {
        Objects.requireNonNull(followerBuildUpS, "followerBuildUpS");
        Objects.requireNonNull(followerDecelMps2, "followerDecelMps2");
        Objects.requireNonNull(followerOnsetS, "followerOnsetS");
        Objects.requireNonNull(followerSpeedMps, "followerSpeedMps");
        Objects.requireNonNull(gapM, "gapM");
        Objects.requireNonNull(leaderBuildUpS, "leaderBuildUpS");
        Objects.requireNonNull(leaderDecelMps2, "leaderDecelMps2");
        Objects.requireNonNull(leaderOnsetS, "leaderOnsetS");
        Objects.requireNonNull(leaderSpeedMps, "leaderSpeedMps");
        Objects.requireNonNull(timeS, "timeS");
        Objects.requireNonNull(closingSpeedMps, "closingSpeedMps");
        Objects.requireNonNull(smallestGapM, "smallestGapM");
        leaderMps = leaderSpeedMps;
        this.leaderOnsetS = leaderOnsetS;
        this.leaderBuildUpS = leaderBuildUpS;
        leaderMps2 = leaderDecelMps2;
        followerMps = followerSpeedMps;
        this.followerOnsetS = followerOnsetS;
        this.followerBuildUpS = followerBuildUpS;
        followerMps2 = followerDecelMps2;
        this.gapM = gapM;
        this.timeS = timeS;
        this.smallestGapM = smallestGapM;
        closingMps = closingSpeedMps;
        for (int from = 0; from < count; from += BLOCK) {
            block(from, Math.min(BLOCK, count - from));
        }
    }

    private void block(int from, int n) {
        leader.fill(from, n, leaderMps, leaderOnsetS, leaderBuildUpS, leaderMps2);
        follower.fill(from, n, followerMps, followerOnsetS, followerBuildUpS, followerMps2);
        gaps(from, n);
        sort(from, n);
        movingContacts(from);
        earlyEvents(from);
        byPhases(from);
    }

    private void gaps(int from, int n) {
        System.arraycopy(gapM, from, finalGapM, 0, n);
        double[] leaderM = leader.distanceM;
        double[] followerM = follower.distanceM;
        for (int i = 0; i < n; i++) {
            finalGapM[i] = finalGapM[i] + leaderM[i] - followerM[i];
        }
    }

    /** Sorts the rows of a block and finishes the cases with a standing leader or no contact. */
    private void sort(int from, int n) {
        int clearCount = 0;
        int standingCount = 0;
        int followerFirstCount = 0;
        openCount = 0;
        movingCount = 0;
        earlyCount = 0;
        for (int i = 0; i < n; i++) {
            int holds = holds(from + i);
            int leaderFirst = 1 - negative(follower.stopS[i] - leader.stopS[i]);
            int touches = negative(finalGapM[i] + GapKernel.GRAZING_M);
            clear[clearCount] = i;
            clearCount += holds & leaderFirst & (1 - touches);
            standing[standingCount] = i;
            standingCount += holds & leaderFirst & touches;
            followerFirst[followerFirstCount] = i;
            followerFirstCount += holds & (1 - leaderFirst);
            open[openCount] = i;
            openCount += 1 - holds;
        }
        for (int c = 0; c < clearCount; c++) {
            int i = clear[c];
            int k = from + i;
            double finalM = finalGapM[i];
            timeS[k] = finalM < gapM[k] - GapKernel.TIE_M ? follower.stopS[i] : 0;
            smallestGapM[k] = Math.min(finalM, gapM[k]);
            closingMps[k] = Double.NaN;
        }
        standingContacts(from, standingCount);
        followerStopsFirst(from, followerFirstCount);
    }

    private int holds(int k) {
        return CaseTheorem.holdsBit(
                leaderMps[k],
                leaderOnsetS[k],
                leaderBuildUpS[k],
                leaderMps2[k],
                followerMps[k],
                followerOnsetS[k],
                followerBuildUpS[k],
                followerMps2[k],
                gapM[k]);
    }

    /** The sign bit, free of branches; of NaN it may be either. */
    private static int negative(double x) {
        return (int) (Double.doubleToRawLongBits(x) >>> 63);
    }

    private void standingContacts(int from, int count) {
        for (int c = 0; c < count; c++) {
            int i = standing[c];
            int k = from + i;
            double fa = followerMps2[k];
            double atContactMps = Math.sqrt(-2 * fa * finalGapM[i]);
            double atS = follower.stopS[i] - atContactMps / fa;
            timeS[k] = atS;
            smallestGapM[k] = 0;
            closingMps[k] = atContactMps;
            int late = negative(atS - leader.stopS[i]) | negative(atS - (followerOnsetS[k] + followerBuildUpS[k]));
            moving[movingCount] = i;
            movingCount += late;
        }
        for (int c = 0; c < movingCount; c++) {
            fullBraking(from, moving[c]);
        }
    }

    /** The gap and its rate when the follower reaches full braking. */
    private void fullBraking(int from, int i) {
        int k = from + i;
        double la = leaderMps2[k];
        double fa = followerMps2[k];
        double buildUpS = followerBuildUpS[k];
        double fullS = followerOnsetS[k] + buildUpS;
        double brakedS = fullS - leader.midS[i];
        rateMps[i] = leaderMps[k] - la * brakedS - (followerMps[k] - 0.5 * fa * buildUpS);
        fullGapM[i] = gapM[k]
                + (leaderMps[k] - followerMps[k]) * fullS
                - la * (0.5 * brakedS * brakedS + leaderBuildUpS[k] * leaderBuildUpS[k] * (1.0 / 24))
                + fa * buildUpS * buildUpS * (1.0 / 6);
    }

    private void followerStopsFirst(int from, int count) {
        for (int c = 0; c < count; c++) {
            fullBraking(from, followerFirst[c]);
        }
        for (int c = 0; c < count; c++) {
            int i = followerFirst[c];
            int k = from + i;
            double fullS = followerOnsetS[k] + followerBuildUpS[k];
            double bendMps2 = followerMps2[k] - leaderMps2[k];
            double smallestM = fullGapM[i] - rateMps[i] * rateMps[i] / (2 * bendMps2);
            timeS[k] = smallestM < gapM[k] - GapKernel.TIE_M ? fullS - rateMps[i] / bendMps2 : 0;
            smallestGapM[k] = Math.min(smallestM, gapM[k]);
            closingMps[k] = Double.NaN;
            // a contact, or else a minimum that is not under full braking
            moving[movingCount] = i;
            movingCount += smallestM >= -GapKernel.GRAZING_M && fullS < leader.stopS[i] && rateMps[i] < 0 ? 0 : 1;
        }
    }

    private void movingContacts(int from) {
        for (int c = 0; c < movingCount; c++) {
            int i = moving[c];
            int k = from + i;
            double bendMps2 = followerMps2[k] - leaderMps2[k];
            double rate = rateMps[i];
            double fullM = fullGapM[i];
            double fullS = followerOnsetS[k] + followerBuildUpS[k];
            double closing = Math.sqrt(rate * rate - 2 * bendMps2 * fullM);
            double afterS = 2 * fullM / (closing - rate);
            double leaderAtContactMps = leaderMps[k] - leaderMps2[k] * (fullS - leader.midS[i] + afterS);
            timeS[k] = fullS + afterS;
            smallestGapM[k] = 0;
            closingMps[k] = Math.max(0, leaderAtContactMps + closing - leaderAtContactMps);
            boolean underFullBraking = fullS < leader.stopS[i]
                    && rate < 0
                    && fullM > 0
                    && fullS + afterS < Math.min(leader.stopS[i], follower.stopS[i]);
            early[earlyCount] = i;
            earlyCount += underFullBraking ? 0 : 1;
        }
    }

    private void earlyEvents(int from) {
        for (int c = 0; c < earlyCount; c++) {
            int i = early[c];
            int k = from + i;
            boolean settled = EarlyEvent.settle(
                    leaderMps[k],
                    leaderOnsetS[k],
                    leaderBuildUpS[k],
                    leaderMps2[k],
                    followerMps[k],
                    followerOnsetS[k],
                    followerBuildUpS[k],
                    followerMps2[k],
                    gapM[k],
                    event);
            if (settled) {
                put(k);
            } else {
                open[openCount] = i;
                openCount++;
            }
        }
    }

    private void put(int k) {
        timeS[k] = event.timeS();
        smallestGapM[k] = event.smallestGapM();
        closingMps[k] = event.closingSpeedMps();
    }

    private void byPhases(int from) {
        for (int c = 0; c < openCount; c++) {
            int k = from + open[c];
            try {
                GapKernel.pairEvent(
                        leaderMps[k],
                        leaderOnsetS[k],
                        leaderBuildUpS[k],
                        leaderMps2[k],
                        followerMps[k],
                        followerOnsetS[k],
                        followerBuildUpS[k],
                        followerMps2[k],
                        gapM[k],
                        event);
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException("row " + k + ": " + e.getMessage(), e);
            }
            put(k);
        }
    }
}
