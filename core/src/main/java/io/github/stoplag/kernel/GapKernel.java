package io.github.stoplag.kernel;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;

/**
 * The exact outcome for a follower behind a leader: no contact and the smallest gap, or contact, when and how fast.
 *
 * <pre>
 *   gap(t) = g + s_L(t) − s_F(t)
 * </pre>
 *
 * <p>Symbols: g gap at time 0 from the follower's front to the leader's rear [m], s_L and s_F distances run [m].
 * Between the phase changes of either vehicle the gap is a cubic in time, so its extrema and roots are found without
 * stepping.
 *
 * <p><b>Grazing.</b> Contact means that the gap would go below −{@link #GRAZING_M}; it is dated to the moment the gap
 * passed 0 on that way down. A smallest gap within ±{@link #GRAZING_M} of 0 is a touch without a push: no contact,
 * grazing.
 *
 * <p><b>Standard stops</b> (cruise to the onset, linear build-up, constant deceleration to rest) are mostly settled
 * without a search. If the leader is first to start braking and first to brake fully, the relative speed gap′ does not
 * grow up to some moment not later than the follower's full braking and is convex after it until he stands. So if the
 * leader stops first the smallest gap is the smaller of the first and the last one; if the follower stops first there
 * is at most one interior minimum. The other cases go by phases.
 *
 * <p>Source: kinematics and the convexity argument above; tested against numerical integration with event detection.
 */
public final class GapKernel {
    /** How close to 0 a smallest gap counts as a touch, in metres. */
    public static final double GRAZING_M = 1e-9;

    /** How much lower a later gap must be to count as smaller than an earlier one. */
    static final double TIE_M = 1e-12;

    private GapKernel() {}

    /**
     * Finds the outcome for two arbitrary motions.
     *
     * @param leader the leader's motion
     * @param follower the follower's motion
     * @param gapM the gap at time 0, in [0, 1e5] m
     * @param event where the outcome goes
     * @throws IllegalArgumentException if the gap is out of range
     */
    public static void event(Trajectory leader, Trajectory follower, double gapM, GapEvent event) {
        scan(leader.buffer(), follower.buffer(), checkedGapM(gapM), GRAZING_M, event);
    }

    /**
     * Finds the gap at time 0 that just avoids contact for two arbitrary motions: −min over t of (s_L − s_F).
     *
     * @param leader the leader's motion
     * @param follower the follower's motion
     * @param event scratch; afterwards its time says when the two come closest
     * @return the gap in m, at least 0; positive infinity if no gap is enough
     */
    public static double gapNeededM(Trajectory leader, Trajectory follower, GapEvent event) {
        scan(leader.buffer(), follower.buffer(), 0, Double.POSITIVE_INFINITY, event);
        return 0 - event.smallestGapM;
    }

    /**
     * Finds the outcome for two standard stops, by the case theorem where it holds and by phases elsewhere.
     *
     * @param leaderSpeedMps the leader's speed in m/s
     * @param leaderOnsetS when the leader's deceleration starts, in s
     * @param leaderBuildUpS how long it takes to build up, in s
     * @param leaderDecelMps2 the leader's deceleration after that, in m/s²; 0 never brakes
     * @param followerSpeedMps the follower's speed in m/s
     * @param followerOnsetS when the follower's deceleration starts, in s
     * @param followerBuildUpS how long it takes to build up, in s
     * @param followerDecelMps2 the follower's deceleration after that, in m/s²; 0 never brakes
     * @param gapM the gap at time 0, in [0, 1e5] m
     * @param event where the outcome goes
     * @throws IllegalArgumentException if the gap is out of range or another argument is negative or not finite
     */
    public static void pairEvent(
            double leaderSpeedMps,
            double leaderOnsetS,
            double leaderBuildUpS,
            double leaderDecelMps2,
            double followerSpeedMps,
            double followerOnsetS,
            double followerBuildUpS,
            double followerDecelMps2,
            double gapM,
            GapEvent event) {
        boolean settled = CaseTheorem.holds(
                        leaderSpeedMps,
                        leaderOnsetS,
                        leaderBuildUpS,
                        leaderDecelMps2,
                        followerSpeedMps,
                        followerOnsetS,
                        followerBuildUpS,
                        followerDecelMps2)
                && CaseTheorem.settle(
                        leaderSpeedMps,
                        leaderOnsetS,
                        leaderBuildUpS,
                        leaderDecelMps2,
                        followerSpeedMps,
                        followerOnsetS,
                        followerBuildUpS,
                        followerDecelMps2,
                        checkedGapM(gapM),
                        event);
        if (!settled) {
            pairEventByPhases(
                    leaderSpeedMps,
                    leaderOnsetS,
                    leaderBuildUpS,
                    leaderDecelMps2,
                    followerSpeedMps,
                    followerOnsetS,
                    followerBuildUpS,
                    followerDecelMps2,
                    gapM,
                    event);
        }
    }

    /**
     * Finds the outcome of the common cases alone: no contact, or contact while the follower brakes fully, where the
     * case theorem holds. Small enough for a caller's JIT to take in, so that an event made for this one call costs no
     * memory; {@link #pairEvent} finds every outcome.
     *
     * @param leaderSpeedMps the leader's speed in m/s
     * @param leaderOnsetS when the leader's deceleration starts, in s
     * @param leaderBuildUpS how long it takes to build up, in s
     * @param leaderDecelMps2 the leader's deceleration after that, in m/s²; 0 never brakes
     * @param followerSpeedMps the follower's speed in m/s
     * @param followerOnsetS when the follower's deceleration starts, in s
     * @param followerBuildUpS how long it takes to build up, in s
     * @param followerDecelMps2 the follower's deceleration after that, in m/s²; 0 never brakes
     * @param gapM the gap at time 0, in [0, 1e5] m
     * @param event where the outcome goes
     * @return true if the event holds the outcome; false if it is none of these cases, and the event has not been
     *     touched
     * @throws IllegalArgumentException if the gap is out of range
     */
    public static boolean commonPairEvent(
            double leaderSpeedMps,
            double leaderOnsetS,
            double leaderBuildUpS,
            double leaderDecelMps2,
            double followerSpeedMps,
            double followerOnsetS,
            double followerBuildUpS,
            double followerDecelMps2,
            double gapM,
            GapEvent event) {
        return CaseTheorem.holds(
                        leaderSpeedMps,
                        leaderOnsetS,
                        leaderBuildUpS,
                        leaderDecelMps2,
                        followerSpeedMps,
                        followerOnsetS,
                        followerBuildUpS,
                        followerDecelMps2)
                && CaseTheorem.settleCommon(
                        leaderSpeedMps,
                        leaderOnsetS,
                        leaderBuildUpS,
                        leaderDecelMps2,
                        followerSpeedMps,
                        followerOnsetS,
                        followerBuildUpS,
                        followerDecelMps2,
                        checkedGapM(gapM),
                        event);
    }

    /**
     * Finds the outcome for two standard stops always by phases: the reference for {@link #pairEvent}, and what it
     * falls back on.
     *
     * @param leaderSpeedMps the leader's speed in m/s
     * @param leaderOnsetS when the leader's deceleration starts, in s
     * @param leaderBuildUpS how long it takes to build up, in s
     * @param leaderDecelMps2 the leader's deceleration after that, in m/s²; 0 never brakes
     * @param followerSpeedMps the follower's speed in m/s
     * @param followerOnsetS when the follower's deceleration starts, in s
     * @param followerBuildUpS how long it takes to build up, in s
     * @param followerDecelMps2 the follower's deceleration after that, in m/s²; 0 never brakes
     * @param gapM the gap at time 0, in [0, 1e5] m
     * @param event where the outcome goes
     * @throws IllegalArgumentException if the gap is out of range or another argument is negative or not finite
     */
    public static void pairEventByPhases(
            double leaderSpeedMps,
            double leaderOnsetS,
            double leaderBuildUpS,
            double leaderDecelMps2,
            double followerSpeedMps,
            double followerOnsetS,
            double followerBuildUpS,
            double followerDecelMps2,
            double gapM,
            GapEvent event) {
        Phases leader = event.leaderScratch();
        Phases follower = event.followerScratch();
        fill(leader, "leader", leaderSpeedMps, leaderOnsetS, leaderBuildUpS, leaderDecelMps2);
        fill(follower, "follower", followerSpeedMps, followerOnsetS, followerBuildUpS, followerDecelMps2);
        scan(leader, follower, checkedGapM(gapM), GRAZING_M, event);
    }

    /**
     * Finds the gap at time 0 that just avoids contact for two standard stops.
     *
     * @param leaderSpeedMps the leader's speed in m/s
     * @param leaderOnsetS when the leader's deceleration starts, in s
     * @param leaderBuildUpS how long it takes to build up, in s
     * @param leaderDecelMps2 the leader's deceleration after that, in m/s²; 0 never brakes
     * @param followerSpeedMps the follower's speed in m/s
     * @param followerOnsetS when the follower's deceleration starts, in s
     * @param followerBuildUpS how long it takes to build up, in s
     * @param followerDecelMps2 the follower's deceleration after that, in m/s²; 0 never brakes
     * @param event scratch; afterwards its time says when the two come closest
     * @return the gap in m, at least 0; positive infinity if no gap is enough
     * @throws IllegalArgumentException if an argument is negative or not finite
     */
    public static double pairGapNeededM(
            double leaderSpeedMps,
            double leaderOnsetS,
            double leaderBuildUpS,
            double leaderDecelMps2,
            double followerSpeedMps,
            double followerOnsetS,
            double followerBuildUpS,
            double followerDecelMps2,
            GapEvent event) {
        Phases leader = event.leaderScratch();
        Phases follower = event.followerScratch();
        fill(leader, "leader", leaderSpeedMps, leaderOnsetS, leaderBuildUpS, leaderDecelMps2);
        fill(follower, "follower", followerSpeedMps, followerOnsetS, followerBuildUpS, followerDecelMps2);
        scan(leader, follower, 0, Double.POSITIVE_INFINITY, event);
        return 0 - event.smallestGapM;
    }

    private static void scan(Phases leader, Phases follower, double gapM, double contactDepthM, GapEvent event) {
        event.clear(contactDepthM);
        event.smallestGapM = gapM;
        int i = 0;
        int j = 0;
        double startS = 0;
        while (true) {
            double leaderEndS = i + 1 < leader.count ? leader.startS[i + 1] : Double.POSITIVE_INFINITY;
            double followerEndS = j + 1 < follower.count ? follower.startS[j + 1] : Double.POSITIVE_INFINITY;
            double endS = Math.min(leaderEndS, followerEndS);
            double leaderTauS = startS - leader.startS[i];
            double followerTauS = startS - follower.startS[j];
            boolean closes = RelativeMotion.closes(
                    event,
                    startS,
                    endS - startS,
                    gapM + (leader.positionAtM(i, startS) - follower.positionAtM(j, startS)),
                    leader.speedAtMps(i, startS) - follower.speedAtMps(j, startS),
                    follower.decelMps2[j]
                            + followerTauS * follower.jerkMps3[j]
                            - (leader.decelMps2[i] + leaderTauS * leader.jerkMps3[i]),
                    follower.jerkMps3[j] - leader.jerkMps3[i]);
            if (closes) {
                setContact(leader, i, follower, j, event);
                return;
            }
            if (endS == Double.POSITIVE_INFINITY) {
                return;
            }
            startS = endS;
            i += leaderEndS <= endS ? 1 : 0;
            j += followerEndS <= endS ? 1 : 0;
        }
    }

    private static void setContact(Phases leader, int leaderPhase, Phases follower, int followerPhase, GapEvent event) {
        double atS = event.crossedAtS;
        int i = leaderPhase;
        int j = followerPhase;
        // a touch within the grazing band may have begun in an earlier phase
        while (i > 0 && atS < leader.startS[i]) {
            i--;
        }
        while (j > 0 && atS < follower.startS[j]) {
            j--;
        }
        double leaderMps = Math.max(0, leader.speedAtMps(i, atS));
        double followerMps = Math.max(0, follower.speedAtMps(j, atS));
        event.setContact(atS, leaderMps, followerMps, atS >= leader.restS);
    }

    private static void fill(
            Phases phases, String who, double speedMps, double onsetS, double buildUpS, double decelMps2) {
        requireFinite(who, "speed", speedMps, "m/s");
        requireFinite(who, "brake onset", onsetS, "s");
        requireFinite(who, "brake build-up", buildUpS, "s");
        requireFinite(who, "deceleration", decelMps2, "m/s²");
        phases.fillStop(speedMps, onsetS, buildUpS, decelMps2);
    }

    private static void requireFinite(String who, String what, double value, String unit) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    who + " " + what + " must be finite and not negative, got " + Numbers.text(value) + " " + unit);
        }
    }

    private static double checkedGapM(double gapM) {
        return Ranges.GAP.check(gapM) + 0.0;
    }
}
