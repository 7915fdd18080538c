package io.github.stoplag.kernel;

/**
 * Settles two standard stops without a search where the leader brakes fully before the follower starts to brake and neither
 * stops inside its build-up; see {@link GapKernel} for the argument. Times: L leader, F follower; full braking starts at
 * onset + build-up.
 */
final class CaseTheorem {
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
                && leaderMps2 > 0
                && followerMps > 0
                && followerBuildUpS >= 0
                && followerMps2 > 0
                && leaderOnsetS + leaderBuildUpS <= followerOnsetS
                && leaderMps >= 0.5 * leaderMps2 * leaderBuildUpS
                && followerMps >= 0.5 * followerMps2 * followerBuildUpS;
    }

    /** Fills the event and returns true, or returns false where the contact falls outside full braking. */
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
        // a linear build-up acts like a step at its middle, save for a shift of a tᵣ²/24 in position
        double leaderMidS = leaderOnsetS + 0.5 * leaderBuildUpS;
        double followerMidS = followerOnsetS + 0.5 * followerBuildUpS;
        double leaderStopS = leaderMidS + leaderMps / leaderMps2;
        double followerStopS = followerMidS + followerMps / followerMps2;
        double leaderShiftM = leaderMps2 * leaderBuildUpS * leaderBuildUpS * (1.0 / 24);
        double followerShiftM = followerMps2 * followerBuildUpS * followerBuildUpS * (1.0 / 24);

        if (leaderStopS <= followerStopS) {
            double finalGapM = gapM
                    + (leaderMps * (leaderMidS + 0.5 * leaderMps / leaderMps2) - leaderShiftM)
                    - (followerMps * (followerMidS + 0.5 * followerMps / followerMps2) - followerShiftM);
            if (finalGapM >= -GapKernel.GRAZING_M) {
                event.setNoContact(finalGapM < gapM - GapKernel.TIE_M ? followerStopS : 0, Math.min(finalGapM, gapM));
                return true;
            }
            double followerAtContactMps = Math.sqrt(-2 * followerMps2 * finalGapM);
            double atS = followerStopS - followerAtContactMps / followerMps2;
            if (atS >= leaderStopS && atS >= followerOnsetS + followerBuildUpS) {
                event.clear(GapKernel.GRAZING_M);
                event.setContact(atS, 0, followerAtContactMps, true);
                return true;
            }
        }
        // the gap and its rate when the follower reaches full braking
        double fullS = followerOnsetS + followerBuildUpS;
        double brakedS = fullS - leaderMidS;
        double halfS = 0.5 * followerBuildUpS;
        double rateMps = leaderMps - leaderMps2 * brakedS - (followerMps - followerMps2 * halfS);
        double fullGapM = gapM
                + (leaderMps - followerMps) * fullS
                - (0.5 * leaderMps2 * brakedS * brakedS + leaderShiftM)
                + (0.5 * followerMps2 * halfS * halfS + followerShiftM);
        if (!(fullS < leaderStopS && rateMps < 0)) {
            return contactBeforeBraking(
                    leaderMps,
                    leaderOnsetS + leaderBuildUpS,
                    leaderMidS,
                    leaderShiftM,
                    leaderStopS,
                    leaderMps2,
                    followerMps,
                    followerOnsetS,
                    gapM,
                    event);
        }
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
        if (!(fullGapM > 0 && fullS + afterS < Math.min(leaderStopS, followerStopS))) {
            return contactBeforeBraking(
                    leaderMps,
                    leaderOnsetS + leaderBuildUpS,
                    leaderMidS,
                    leaderShiftM,
                    leaderStopS,
                    leaderMps2,
                    followerMps,
                    followerOnsetS,
                    gapM,
                    event);
        }
        double leaderAtContactMps = leaderMps - leaderMps2 * (brakedS + afterS);
        event.clear(GapKernel.GRAZING_M);
        event.setContact(fullS + afterS, leaderAtContactMps, leaderAtContactMps + closingMps, false);
        return true;
    }

    /**
     * Settles a contact between the leader's full braking and the follower's onset: the gap is concave up to the onset, so it crosses 0
     * once if it is above 0 at both time 0 and the leader's full braking, and below at the onset.
     */
    private static boolean contactBeforeBraking(
            double leaderMps,
            double leaderFullS,
            double leaderMidS,
            double leaderShiftM,
            double leaderStopS,
            double leaderMps2,
            double followerMps,
            double followerOnsetS,
            double gapM,
            GapEvent event) {
        double halfS = leaderFullS - leaderMidS;
        double fullGapM =
                gapM + (leaderMps - followerMps) * leaderFullS - (0.5 * leaderMps2 * halfS * halfS + leaderShiftM);
        double rateMps = leaderMps - leaderMps2 * halfS - followerMps;
        double leftS = followerOnsetS - leaderFullS;
        double onsetGapM = fullGapM + leftS * (rateMps - 0.5 * leaderMps2 * leftS);
        if (!(gapM > 0 && fullGapM > 0 && followerOnsetS <= leaderStopS && onsetGapM < -GapKernel.GRAZING_M)) {
            return false;
        }
        double root = Math.sqrt(rateMps * rateMps + 2 * leaderMps2 * fullGapM);
        double afterS = rateMps <= 0 ? 2 * fullGapM / (root - rateMps) : (rateMps + root) / leaderMps2;
        event.clear(GapKernel.GRAZING_M);
        // rounding must not let the leader reverse
        event.setContact(leaderFullS + afterS, Math.max(0, followerMps - root), followerMps, false);
        return true;
    }
}
