package io.github.stoplag.following;

import io.github.stoplag.kernel.GapEvent;
import io.github.stoplag.kernel.GapKernel;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.RoadLoad;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * A leader that brakes and a follower that brakes on seeing the leader's stop lamp.
 *
 * <p>Time 0 is the moment the leader's stop-lamp circuit closes. The leader's deceleration starts at its reaction time
 * (0 as a rule) plus its brake dead time; the follower's at lamp latency + reaction time + brake dead time. The gap is
 * measured from the follower's front to the leader's rear: gap(t) = g + s_L(t) − s_F(t).
 *
 * <p>Range: gap in [0, 1e5] m, lamp latency in [0, 30] s. Straight lane, no steering away, constant deceleration after
 * the build-up.
 *
 * <p>Source: kinematics; see {@link GapKernel}.
 *
 * <p>Two pairs are equal if all their values are.
 */
public final class Pair implements Evident {
    // plain doubles, so that the JIT can take the caller's value objects apart
    private final double leaderMps;
    private final double leaderReactionS;
    private final double leaderDeadS;
    private final double leaderBuildUpS;
    private final double leaderMps2;
    private final double followerMps;
    private final double followerReactionS;
    private final double followerDeadS;
    private final double followerBuildUpS;
    private final double followerMps2;
    private final double gapM;
    private final double latencyS;
    private final Evidence leaderOrigin;
    private final Evidence followerOrigin;
    private final Evidence lampOrigin;

    private Pair(
            BrakingVehicle leader, BrakingVehicle follower, Distance gap, TimeSpan lampLatency, Evidence lampOrigin) {
        leaderMps = leader.speedMps;
        leaderReactionS = leader.reactionS;
        leaderDeadS = leader.deadS;
        leaderBuildUpS = leader.buildUpS;
        leaderMps2 = leader.decelMps2;
        followerMps = follower.speedMps;
        followerReactionS = follower.reactionS;
        followerDeadS = follower.deadS;
        followerBuildUpS = follower.buildUpS;
        followerMps2 = follower.decelMps2;
        gapM = Ranges.GAP.check(gap.inMetres());
        latencyS = Ranges.LATENCY.check(lampLatency.inSeconds());
        leaderOrigin = leader.origin;
        followerOrigin = follower.origin;
        this.lampOrigin = lampOrigin;
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
        Objects.requireNonNull(follower, "follower");
        Objects.requireNonNull(gap, "gap");
        Objects.requireNonNull(lampLatency, "lampLatency");
        Objects.requireNonNull(leader, "leader");
        return new Pair(leader, follower, gap, lampLatency, Evidence.none());
    }

    /**
     * Makes a pair whose lamp was asked when it is seen; what comes of it carries the lamp's evidence and caveats.
     *
     * @param leader the vehicle ahead
     * @param follower the vehicle behind
     * @param gap the gap at time 0, in [0, 1e5] m
     * @param lamp when the lamp is seen
     * @return the pair
     * @throws java.util.NoSuchElementException if the lamp is never seen
     * @throws IllegalArgumentException if the gap is out of range or the lamp is seen later than after 30 s
     */
    public static Pair of(BrakingVehicle leader, BrakingVehicle follower, Distance gap, Detection lamp) {
        Objects.requireNonNull(follower, "follower");
        Objects.requireNonNull(gap, "gap");
        Objects.requireNonNull(lamp, "lamp");
        Objects.requireNonNull(leader, "leader");
        Evidence seen = lamp.evidence().with(Evidence.of("lamp latency by " + lamp.criterion()));
        return new Pair(leader, follower, gap, lamp.orElseThrow(), seen);
    }

    /**
     * Gives the vehicle ahead.
     *
     * @return the leader
     */
    public BrakingVehicle leader() {
        return new BrakingVehicle(leaderMps, leaderReactionS, leaderDeadS, leaderBuildUpS, leaderMps2, leaderOrigin);
    }

    /**
     * Gives the vehicle behind.
     *
     * @return the follower
     */
    public BrakingVehicle follower() {
        return new BrakingVehicle(
                followerMps, followerReactionS, followerDeadS, followerBuildUpS, followerMps2, followerOrigin);
    }

    /**
     * Gives the gap at time 0.
     *
     * @return the gap from the follower's front to the leader's rear
     */
    public Distance gap() {
        return Distance.metres(gapM);
    }

    /**
     * Gives the time from the lamp's circuit closing to the moment its light can be detected.
     *
     * @return the lamp latency
     */
    public TimeSpan lampLatency() {
        return TimeSpan.seconds(latencyS);
    }

    /**
     * Finds the outcome, exactly.
     *
     * @return no contact and the smallest gap, or contact, when and how fast
     * @throws IllegalArgumentException if the contact or the smallest gap comes later than 1e6 s
     */
    public PairOutcome outcome() {
        GapEvent event = new GapEvent();
        boolean common = GapKernel.commonPairEvent(
                leaderMps,
                leaderOnsetS(),
                leaderBuildUpS,
                leaderMps2,
                followerMps,
                followerOnsetS(latencyS),
                followerBuildUpS,
                followerMps2,
                gapM,
                event);
        // an event of its own for the rest, so that the JIT can do without the common one
        return common
                ? Encounter.outcomeOf(event, leaderMps, followerMps, gapM)
                : Encounter.outcomeOf(anyEvent(), leaderMps, followerMps, gapM);
    }

    private GapEvent anyEvent() {
        GapEvent event = new GapEvent();
        GapKernel.pairEvent(
                leaderMps,
                leaderOnsetS(),
                leaderBuildUpS,
                leaderMps2,
                followerMps,
                followerOnsetS(latencyS),
                followerBuildUpS,
                followerMps2,
                gapM,
                event);
        return event;
    }

    /**
     * Finds the gap with which the two just do not touch: −min over t of (s_L − s_F). The pair's own gap plays no part.
     *
     * @return the exact border, or that no gap up to 1e7 m is enough
     */
    public GapNeeded gapNeeded() {
        double neededM = GapKernel.pairGapNeededM(
                leaderMps,
                leaderOnsetS(),
                leaderBuildUpS,
                leaderMps2,
                followerMps,
                followerOnsetS(latencyS),
                followerBuildUpS,
                followerMps2,
                new GapEvent());
        if (Double.isInfinite(neededM)) {
            return new GapNeeded.Unbounded("the follower does not brake and goes on at " + Speed.mps(followerMps)
                    + ", the leader " + (leaderMps2 > 0 ? "stops" : "goes on at " + Speed.mps(leaderMps)));
        }
        return Encounter.neededOf(neededM, leaderMps, followerMps);
    }

    /**
     * Gives the leader's motion, positions counted from its own start.
     *
     * @return the motion from time 0 on
     */
    public Trajectory leaderTrajectory() {
        return Trajectory.stop(leaderMps, leaderOnsetS(), leaderBuildUpS, leaderMps2);
    }

    /**
     * Gives the follower's motion, positions counted from its own start; its front starts one gap behind the leader's
     * rear.
     *
     * @return the motion from time 0 on
     */
    public Trajectory followerTrajectory() {
        return followerTrajectory(latencyS);
    }

    Trajectory followerTrajectory(double otherLatencyS) {
        return Trajectory.stop(followerMps, followerOnsetS(otherLatencyS), followerBuildUpS, followerMps2);
    }

    /**
     * Gives both motions, for the time to collision and for comparisons with motions of other kinds.
     *
     * @return the encounter
     */
    public Encounter encounter() {
        return new Encounter(leaderTrajectory(), followerTrajectory(), gap(), this);
    }

    /**
     * Gives the same pair with road load.
     *
     * @param leaderLoad the leader's rolling resistance and drag
     * @param followerLoad the follower's
     * @return the pair with drag
     */
    public DragPair withRoadLoad(RoadLoad leaderLoad, RoadLoad followerLoad) {
        Objects.requireNonNull(followerLoad, "followerLoad");
        Objects.requireNonNull(leaderLoad, "leaderLoad");
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
        Objects.requireNonNull(newLatency, "newLatency");
        return of(leader(), follower(), gap(), newLatency);
    }

    /**
     * Gives the same pair with a lamp that was asked when it is seen; what comes of it carries the lamp's evidence and
     * caveats.
     *
     * @param lamp when the lamp is seen
     * @return the pair
     * @throws java.util.NoSuchElementException if the lamp is never seen
     * @throws IllegalArgumentException if it is seen later than after 30 s
     */
    public Pair withLamp(Detection lamp) {
        Objects.requireNonNull(lamp, "lamp");
        return of(leader(), follower(), gap(), lamp);
    }

    /**
     * Finds the largest lamp latency that still avoids contact, with everything else as it is.
     *
     * <p>With equal speeds and equal braking the gap needed is v T, so that the border is g/v less the follower's
     * reaction time; other cases by bisection on the gap needed, which never shrinks with the latency.
     *
     * @return the border, or that any or no latency does
     */
    public LatencyBorder largestLampLatency() {
        return largestLampLatency(otherS -> Encounter.of(leaderTrajectory(), followerTrajectory(otherS), gap())
                .gapNeeded());
    }

    LatencyBorder largestLampLatency(DoubleFunction<GapNeeded> neededAtLatencyS) {
        Trajectory unbraked = Trajectory.startingAt(followerMps).build();
        return LatencySearch.find(
                otherS -> isEnough(neededAtLatencyS.apply(otherS)),
                isEnough(Encounter.of(leaderTrajectory(), unbraked, gap()).gapNeeded()),
                "gap " + gap() + ", follower " + Speed.mps(followerMps) + ", leader " + Speed.mps(leaderMps));
    }

    private boolean isEnough(GapNeeded needed) {
        return needed instanceof GapNeeded.Finite finite && finite.border().inMetres() <= gapM + GapKernel.GRAZING_M;
    }

    /**
     * Says what the outcome, the gap needed and the largest lamp latency rest on.
     *
     * @return model, inputs and reservations, those of a road and of a lamp's detection among them; made anew by each
     *     call
     */
    @Override
    public Evidence evidence() {
        return PairEvidence.of(this).with(leaderOrigin).with(followerOrigin).with(lampOrigin);
    }

    private double leaderOnsetS() {
        return leaderReactionS + leaderDeadS;
    }

    private double followerOnsetS(double otherLatencyS) {
        return otherLatencyS + (followerReactionS + followerDeadS);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Pair that
                && leader().equals(that.leader())
                && follower().equals(that.follower())
                && gapM == that.gapM
                && latencyS == that.latencyS;
    }

    @Override
    public int hashCode() {
        return Objects.hash(leader(), follower(), gapM, latencyS);
    }

    @Override
    public String toString() {
        return "Pair[leader=" + leader() + ", follower=" + follower() + ", gap=" + gap() + ", lampLatency="
                + lampLatency() + "]";
    }
}
