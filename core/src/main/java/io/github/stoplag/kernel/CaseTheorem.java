package io.github.stoplag.kernel;

/**
 * Settles two standard stops without a search where the leader is first to start braking and first to brake fully, and
 * neither stops inside its build-up; see {@link GapKernel} for the argument. Full braking starts at onset + build-up.
 *
 * <p>A linear build-up acts like a step at its middle, save for a shift of a tᵣ²/24 in position. The parts below work
 * the same few terms out anew, which costs nothing once they are compiled into one.
 */
final class CaseTheorem {
    // inside these bounds no step overflows
    private static final double MOST = 1e9;
    private static final double LEAST_MPS2 = 1e-6;

    private CaseTheorem() {}

    static boolean holds(
            double leaderMps,
            double leaderOnsetS,
            double leaderBuildUpS,
            double leaderMps2,
            double followerMps,
            double followerOnsetS,
            double followerBuildUpS,
            double followerMps2) {
        return leaderMps > 0
                && leaderOnsetS >= 0
                && leaderBuildUpS >= 0
                && leaderMps2 >= LEAST_MPS2
                && followerMps > 0
                && followerBuildUpS >= 0
                && followerMps2 >= LEAST_MPS2
                && leaderOnsetS <= followerOnsetS
                && leaderOnsetS + leaderBuildUpS <= followerOnsetS + followerBuildUpS
                && leaderMps >= 0.5 * leaderMps2 * leaderBuildUpS
                && followerMps >= 0.5 * followerMps2 * followerBuildUpS;
    }

    /** The same free of branches for batches: 1 where it holds and nothing can overflow, else 0. */
    static int holdsBit(
            double leaderMps,
            double leaderOnsetS,
            double leaderBuildUpS,
            double leaderMps2,
            double followerMps,
            double followerOnsetS,
            double followerBuildUpS,
            double followerMps2,
            double gapM) {
        // NaN or beyond the bound if a value is, as none may be negative; the processor guesses this comparison right
        double sum = leaderMps
                + leaderOnsetS
                + leaderBuildUpS
                + leaderMps2
                + followerMps
                + followerOnsetS
                + followerBuildUpS
                + followerMps2
                + gapM;
        // the sign bit of the whole is set if one of the parts is below 0
        long signs = bits(leaderMps2 - LEAST_MPS2)
                | bits(followerMps2 - LEAST_MPS2)
                | bits(leaderMps - Double.MIN_VALUE)
                | bits(followerMps - Double.MIN_VALUE)
                | bits(leaderOnsetS)
                | bits(leaderBuildUpS)
                | bits(followerBuildUpS)
                | bits(gapM)
                | bits(followerOnsetS - leaderOnsetS)
                | bits(followerOnsetS + followerBuildUpS - (leaderOnsetS + leaderBuildUpS))
                | bits(leaderMps - 0.5 * leaderMps2 * leaderBuildUpS)
                | bits(followerMps - 0.5 * followerMps2 * followerBuildUpS);
        return (sum < MOST ? 1 : 0) & (int) (~signs >>> 63);
    }

    private static long bits(double x) {
        return Double.doubleToRawLongBits(x);
    }

    /** Fills the event and returns true, or returns false in the few cases that need the search. */
    static boolean settle(
            double leaderMps,
            double leaderOnsetS,
            double leaderBuildUpS,
            double leaderMps2,
            double followerMps,
            double followerOnsetS,
            double followerBuildUpS,
            double followerMps2,
            double gapM,
            GapEvent event) {
        return settleCommon(
                        leaderMps,
                        leaderOnsetS,
                        leaderBuildUpS,
                        leaderMps2,
                        followerMps,
                        followerOnsetS,
                        followerBuildUpS,
                        followerMps2,
                        gapM,
                        event)
                || EarlyEvent.settle(
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

    /** The cases without an event before the follower brakes fully. */
    static boolean settleCommon(
            double leaderMps,
            double leaderOnsetS,
            double leaderBuildUpS,
            double leaderMps2,
            double followerMps,
            double followerOnsetS,
            double followerBuildUpS,
            double followerMps2,
            double gapM,
            GapEvent event) {
        return leaderStopsFirst(
                        leaderMps,
                        leaderOnsetS,
                        leaderBuildUpS,
                        leaderMps2,
                        followerMps,
                        followerOnsetS,
                        followerBuildUpS,
                        followerMps2,
                        gapM,
                        event)
                || underFullBraking(
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

    /** Settles no contact, and contact with a standing leader under full braking, where the leader stops first. */
    private static boolean leaderStopsFirst(
            double leaderMps,
            double leaderOnsetS,
            double leaderBuildUpS,
            double leaderMps2,
            double followerMps,
            double followerOnsetS,
            double followerBuildUpS,
            double followerMps2,
            double gapM,
            GapEvent event) {
        double leaderMidS = leaderOnsetS + 0.5 * leaderBuildUpS;
        double followerMidS = followerOnsetS + 0.5 * followerBuildUpS;
        double leaderBrakingS = leaderMps / leaderMps2;
        double followerBrakingS = followerMps / followerMps2;
        double leaderStopS = leaderMidS + leaderBrakingS;
        double followerStopS = followerMidS + followerBrakingS;
        double leaderShiftM = leaderMps2 * leaderBuildUpS * leaderBuildUpS * (1.0 / 24);
        double followerShiftM = followerMps2 * followerBuildUpS * followerBuildUpS * (1.0 / 24);
        if (!(leaderStopS <= followerStopS)) {
            return false;
        }
        double finalGapM = gapM
                + (leaderMps * (leaderMidS + 0.5 * leaderBrakingS) - leaderShiftM)
                - (followerMps * (followerMidS + 0.5 * followerBrakingS) - followerShiftM);
        if (finalGapM >= -GapKernel.GRAZING_M) {
            event.setNoContact(finalGapM < gapM - GapKernel.TIE_M ? followerStopS : 0, Math.min(finalGapM, gapM));
            return true;
        }
        double followerAtContactMps = Math.sqrt(-2 * followerMps2 * finalGapM);
        double atS = followerStopS - followerAtContactMps / followerMps2;
        if (atS >= leaderStopS && atS >= followerOnsetS + followerBuildUpS) {
            event.setContact(atS, 0, followerAtContactMps, true);
            return true;
        }
        return false;
    }

    /** Settles what happens while both brake fully: the smallest gap where the follower stops first, and contact. */
    private static boolean underFullBraking(
            double leaderMps,
            double leaderOnsetS,
            double leaderBuildUpS,
            double leaderMps2,
            double followerMps,
            double followerOnsetS,
            double followerBuildUpS,
            double followerMps2,
            double gapM,
            GapEvent event) {
        double leaderMidS = leaderOnsetS + 0.5 * leaderBuildUpS;
        double leaderStopS = leaderMidS + leaderMps / leaderMps2;
        double followerStopS = followerOnsetS + 0.5 * followerBuildUpS + followerMps / followerMps2;
        // the gap and its rate when the follower reaches full braking
        double fullS = followerOnsetS + followerBuildUpS;
        double brakedS = fullS - leaderMidS;
        double rateMps = leaderMps - leaderMps2 * brakedS - (followerMps - 0.5 * followerMps2 * followerBuildUpS);
        if (!(fullS < leaderStopS && rateMps < 0)) {
            return false;
        }
        double fullGapM = gapM
                + (leaderMps - followerMps) * fullS
                - leaderMps2 * (0.5 * brakedS * brakedS + leaderBuildUpS * leaderBuildUpS * (1.0 / 24))
                + followerMps2 * followerBuildUpS * followerBuildUpS * (1.0 / 6);
        double bendMps2 = followerMps2 - leaderMps2;
        if (leaderStopS > followerStopS) {
            double smallestM = fullGapM - rateMps * rateMps / (2 * bendMps2);
            if (smallestM >= -GapKernel.GRAZING_M) {
                event.setNoContact(
                        smallestM < gapM - GapKernel.TIE_M ? fullS - rateMps / bendMps2 : 0, Math.min(smallestM, gapM));
                return true;
            }
        }
        double closingMps = Math.sqrt(rateMps * rateMps - 2 * bendMps2 * fullGapM);
        double afterS = 2 * fullGapM / (closingMps - rateMps);
        if (fullGapM > 0 && fullS + afterS < Math.min(leaderStopS, followerStopS)) {
            double leaderAtContactMps = leaderMps - leaderMps2 * (brakedS + afterS);
            event.setContact(fullS + afterS, leaderAtContactMps, leaderAtContactMps + closingMps, false);
            return true;
        }
        return false;
    }
}
