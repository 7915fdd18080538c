package io.github.stoplag.kernel;

/**
 * Settles what the case theorem leaves to the time before the follower brakes fully: contact while he still cruises or
 * while his deceleration builds up, and a smallest gap in the build-up. Holds where {@link CaseTheorem} holds and the
 * leader brakes fully before the follower starts to.
 *
 * <p>Up to the onset the gap is concave, so it is above 0 between two moments at which it is. In the build-up it is a
 * cubic whose rate is convex.
 */
final class EarlyEvent {
    private EarlyEvent() {}

    /** Fills the event and returns true, or returns false. */
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
        double leaderFullS = leaderOnsetS + leaderBuildUpS;
        double halfS = 0.5 * leaderBuildUpS;
        double leaderStopS = leaderOnsetS + halfS + leaderMps / leaderMps2;
        double fullGapM = gapM
                + (leaderMps - followerMps) * leaderFullS
                - leaderMps2 * leaderBuildUpS * leaderBuildUpS * (1.0 / 6);
        // an onset that is not finite is left to the search, which refuses it
        boolean apart = gapM > GapKernel.TIE_M && fullGapM > GapKernel.TIE_M;
        if (!(apart && leaderFullS <= followerOnsetS && followerOnsetS < Double.POSITIVE_INFINITY)) {
            return false;
        }
        double fullRateMps = leaderMps - leaderMps2 * halfS - followerMps;
        double leftS = Math.min(followerOnsetS, leaderStopS) - leaderFullS;
        double endGapM = fullGapM + leftS * (fullRateMps - 0.5 * leaderMps2 * leftS);
        if (endGapM < -GapKernel.GRAZING_M) {
            double root = Math.sqrt(fullRateMps * fullRateMps + 2 * leaderMps2 * fullGapM);
            double afterS = fullRateMps <= 0 ? 2 * fullGapM / (root - fullRateMps) : (fullRateMps + root) / leaderMps2;
            // rounding must not let the leader reverse
            event.setContact(leaderFullS + afterS, Math.max(0, followerMps - root), followerMps, false);
            return true;
        }
        if (!(endGapM > 0)) {
            return false;
        }
        if (leaderStopS <= followerOnsetS) {
            double onsetGapM = endGapM - followerMps * (followerOnsetS - leaderStopS);
            if (onsetGapM < -GapKernel.GRAZING_M) {
                event.setContact(leaderStopS + endGapM / followerMps, 0, followerMps, true);
                return true;
            }
            return inBuildUp(
                    onsetGapM, 0, 0, followerMps, followerOnsetS, followerBuildUpS, followerMps2, Double.NaN, event);
        }
        if (!(leaderStopS >= followerOnsetS + followerBuildUpS)) {
            return false;
        }
        double followerStopS = followerOnsetS + 0.5 * followerBuildUpS + followerMps / followerMps2;
        return inBuildUp(
                endGapM,
                leaderMps - leaderMps2 * (halfS + leftS),
                leaderMps2,
                followerMps,
                followerOnsetS,
                followerBuildUpS,
                followerMps2,
                leaderStopS > followerStopS ? gapM : Double.NaN,
                event);
    }

    /**
     * Settles a contact or the smallest gap while the follower's deceleration builds up and the leader's is constant.
     *
     * @param onsetGapM the gap at the follower's onset
     * @param leaderMps the leader's speed then, 0 if it stands
     * @param leaderMps2 its deceleration, 0 if it stands
     * @param firstGapM the gap at time 0 if a minimum in the build-up is the only one, NaN if the gap falls again later
     */
    private static boolean inBuildUp(
            double onsetGapM,
            double leaderMps,
            double leaderMps2,
            double followerMps,
            double onsetS,
            double buildUpS,
            double followerMps2,
            double firstGapM,
            GapEvent event) {
        if (!(onsetGapM > 0 && buildUpS > Phases.SHORTEST_S)) {
            return false;
        }
        double jerkMps3 = followerMps2 / buildUpS;
        double rateMps = leaderMps - followerMps;
        double lowS = buildUpS;
        if (rateMps - leaderMps2 * buildUpS + 0.5 * followerMps2 * buildUpS >= 0) {
            // the gap grows again: w = w₀ − a_L τ + k τ²/2 passes 0 at the later root
            double square = leaderMps2 * leaderMps2 - 2 * jerkMps3 * rateMps;
            if (!(square > 0)) {
                return false;
            }
            lowS = Math.min(buildUpS, (leaderMps2 + Math.sqrt(square)) / jerkMps3);
        }
        double lowGapM = RelativeMotion.at(lowS, onsetGapM, rateMps, -leaderMps2, jerkMps3);
        if (lowGapM >= -GapKernel.GRAZING_M) {
            boolean only = lowS < buildUpS && firstGapM >= 0;
            if (only) {
                event.setNoContact(
                        lowGapM < firstGapM - GapKernel.TIE_M ? onsetS + lowS : 0, Math.min(lowGapM, firstGapM));
            }
            return only;
        }
        double tauS = RelativeMotion.bracketedRoot(
                0, onsetGapM, lowS, lowGapM, onsetS, onsetGapM, rateMps, -leaderMps2, jerkMps3);
        event.setContact(
                onsetS + tauS,
                Math.max(0, leaderMps - leaderMps2 * tauS),
                followerMps - 0.5 * jerkMps3 * tauS * tauS,
                leaderMps2 == 0);
        return true;
    }
}
