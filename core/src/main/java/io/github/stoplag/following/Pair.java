package io.github.stoplag.following;

import io.github.stoplag.kernel.GapEvent;
import io.github.stoplag.kernel.GapKernel;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.RoadLoad;
import java.util.function.DoubleFunction;

/**
 * A leader that brakes and a follower that brakes on seeing the leader's stop lamp.
 *
 * <p>Time 0 is the moment the leader's stop-lamp circuit closes. The leader's deceleration starts at its reaction time (0 as
 * a rule) plus its brake dead time; the follower's at lamp latency + reaction time + brake dead time. The gap is measured
 * from the follower's front to the leader's rear: gap(t) = g + s_L(t) − s_F(t).
 *
 * <p>Range: gap in [0, 1e5] m, lamp latency in [0, 30] s. Straight lane, no steering away, constant deceleration after the
 * build-up.
 *
 * <p>Source: kinematics; see {@link GapKernel}.
 *
 * @param leader the vehicle ahead
 * @param follower the vehicle behind
 * @param gap the gap at time 0
 * @param lampLatency from the lamp's circuit closing to the moment its light can be detected
 */
public record Pair(BrakingVehicle leader, BrakingVehicle follower, Distance gap, TimeSpan lampLatency) {
    /**
     * Checks the ranges.
     *
     * @param leader the vehicle ahead
     * @param follower the vehicle behind
     * @param gap the gap at time 0
     * @param lampLatency from the lamp's circuit closing to the moment its light can be detected
     * @throws IllegalArgumentException if gap or lamp latency is out of range
     */
    public Pair {
        Check.inRange("gap", gap.inMetres(), 0, 1e5, "m");
        Check.inRange("lamp latency", lampLatency.inSeconds(), 0, 30, "s");
    }

    /**
     * Makes a pair.
     *
     * @param leader the vehicle ahead
     * @param follower the vehicle behind
     * @param gap the gap at time 0, in [0, 1e5] m
     * @param lampLatency from the lamp's circuit closing to the moment its light can be detected, in [0, 30] s
     * @return the pair
     * @throws IllegalArgumentException if gap or lamp latency is out of range
     */
    public static Pair of(BrakingVehicle leader, BrakingVehicle follower, Distance gap, TimeSpan lampLatency) {
        return new Pair(leader, follower, gap, lampLatency);
    }

    /**
     * Finds the outcome, exactly.
     *
     * @return no contact and the smallest gap, or contact, when and how fast
     * @throws IllegalArgumentException if the contact or the smallest gap comes later than 1e6 s
     */
    public PairOutcome outcome() {
        GapEvent event = new GapEvent();
        GapKernel.pairEvent(
                leader.speed().inMps(),
                leader.onsetS(),
                leader.response().buildUp().inSeconds(),
                leader.deceleration().inMps2(),
                follower.speed().inMps(),
                followerOnsetS(),
                follower.response().buildUp().inSeconds(),
                follower.deceleration().inMps2(),
                gap.inMetres(),
                event);
        return Encounter.outcomeOf(
                event, leader.speed().inMps(), follower.speed().inMps(), gap);
    }

    /**
     * Finds the gap with which the two just do not touch: −min over t of (s_L − s_F). The pair's own gap plays no part.
     *
     * @return the exact border, or that no gap up to 1e7 m is enough
     */
    public GapNeeded gapNeeded() {
        double neededM = GapKernel.pairGapNeededM(
                leader.speed().inMps(),
                leader.onsetS(),
                leader.response().buildUp().inSeconds(),
                leader.deceleration().inMps2(),
                follower.speed().inMps(),
                followerOnsetS(),
                follower.response().buildUp().inSeconds(),
                follower.deceleration().inMps2(),
                new GapEvent());
        if (Double.isInfinite(neededM)) {
            return new GapNeeded.Unbounded(
                    "the follower does not brake and goes on at " + follower.speed() + ", the leader "
                            + (leader.deceleration().inMps2() > 0 ? "stops" : "goes on at " + leader.speed()));
        }
        return Encounter.neededOf(
                neededM, leader.speed().inMps(), follower.speed().inMps());
    }

    /**
     * Gives the leader's motion, positions counted from its own start.
     *
     * @return the motion from time 0 on
     */
    public Trajectory leaderTrajectory() {
        return trajectory(leader, leader.onsetS());
    }

    /**
     * Gives the follower's motion, positions counted from its own start; its front starts one gap behind the leader's rear.
     *
     * @return the motion from time 0 on
     */
    public Trajectory followerTrajectory() {
        return followerTrajectory(lampLatency.inSeconds());
    }

    Trajectory followerTrajectory(double latencyS) {
        return trajectory(follower, latencyS + follower.onsetS());
    }

    /**
     * Gives both motions, for the time to collision and for comparisons with motions of other kinds.
     *
     * @return the encounter
     */
    public Encounter encounter() {
        return new Encounter(leaderTrajectory(), followerTrajectory(), gap);
    }

    /**
     * Gives the same pair with road load.
     *
     * @param leaderLoad the leader's rolling resistance and drag
     * @param followerLoad the follower's
     * @return the pair with drag
     */
    public DragPair withRoadLoad(RoadLoad leaderLoad, RoadLoad followerLoad) {
        return new DragPair(this, leaderLoad, followerLoad);
    }

    /**
     * Gives the same pair with another lamp.
     *
     * @param newLatency from the lamp's circuit closing to the moment its light can be detected, in [0, 30] s
     * @return the pair
     * @throws IllegalArgumentException if the latency is out of range
     */
    public Pair withLampLatency(TimeSpan newLatency) {
        return new Pair(leader, follower, gap, newLatency);
    }

    /**
     * Finds the largest lamp latency that still avoids contact, with everything else as it is.
     *
     * <p>With equal speeds and equal braking the gap needed is v T, so that the border is g/v less the follower's reaction
     * time; other cases by bisection on the gap needed, which never shrinks with the latency.
     *
     * @return the border, or that any or no latency does
     */
    public LatencyBorder largestLampLatency() {
        return largestLampLatency(
                latencyS -> new Encounter(leaderTrajectory(), followerTrajectory(latencyS), gap).gapNeeded());
    }

    LatencyBorder largestLampLatency(DoubleFunction<GapNeeded> neededAtLatencyS) {
        Trajectory unbraked = Trajectory.startingAt(follower.speed().inMps()).build();
        return LatencySearch.find(
                latencyS -> isEnough(neededAtLatencyS.apply(latencyS)),
                isEnough(new Encounter(leaderTrajectory(), unbraked, gap).gapNeeded()),
                "gap " + gap + ", follower " + follower.speed() + ", leader " + leader.speed());
    }

    private boolean isEnough(GapNeeded needed) {
        return needed instanceof GapNeeded.Finite finite
                && finite.gap().inMetres() <= gap.inMetres() + GapKernel.GRAZING_M;
    }

    private double followerOnsetS() {
        return lampLatency.inSeconds() + follower.onsetS();
    }

    private static Trajectory trajectory(BrakingVehicle vehicle, double onsetS) {
        return Trajectory.stop(
                vehicle.speed().inMps(),
                onsetS,
                vehicle.response().buildUp().inSeconds(),
                vehicle.deceleration().inMps2());
    }
}
