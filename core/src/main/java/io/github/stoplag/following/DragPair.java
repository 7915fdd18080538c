package io.github.stoplag.following;

import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.RoadLoad;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * A pair of which road load slows each vehicle from the moment its brakes act; until then the engine holds the speed.
 *
 * <p>The motions come from {@link RoadLoadMotion}; without road load every result is that of the pair itself. A vehicle
 * that does not brake goes on at constant speed.
 *
 * @param pair the pair as its brakes alone would move it
 * @param leaderLoad the leader's rolling resistance and drag
 * @param followerLoad the follower's
 */
public record DragPair(Pair pair, RoadLoad leaderLoad, RoadLoad followerLoad) implements Evident {

    /**
     * Refuses nulls.
     *
     * @param pair the pair as its brakes alone would move it
     * @param leaderLoad the leader's rolling resistance and drag
     * @param followerLoad the follower's
     * @throws NullPointerException if one that is required is null
     */
    public DragPair {
        Objects.requireNonNull(followerLoad, "followerLoad");
        Objects.requireNonNull(leaderLoad, "leaderLoad");
        Objects.requireNonNull(pair, "pair");
    }

    /**
     * Gives both motions.
     *
     * @return the encounter, for outcome, gap needed and time to collision
     */
    public Encounter encounter() {
        return encounter(pair.lampLatency().inSeconds());
    }

    @Override
    public Evidence evidence() {
        return pair.evidence()
                .with(Evidence.of("road load slows each vehicle once its brakes act: leader " + leaderLoad
                        + ", follower " + followerLoad));
    }

    private Encounter encounter(double latencyS) {
        BrakingVehicle leader = pair.leader();
        BrakingVehicle follower = pair.follower();
        return new Encounter(
                slowed(leader, pair.leaderTrajectory(), leader.onsetS(), leaderLoad),
                slowed(follower, pair.followerTrajectory(latencyS), latencyS + follower.onsetS(), followerLoad),
                pair.gap(),
                this);
    }

    /**
     * Finds the outcome.
     *
     * @return no contact and the smallest gap, or contact, when and how fast
     * @throws IllegalArgumentException if the contact or the smallest gap comes later than 1e6 s
     */
    public PairOutcome outcome() {
        return encounter().outcome();
    }

    /**
     * Finds the gap with which the two just do not touch.
     *
     * @return the border, or that no gap up to 1e7 m is enough
     */
    public GapNeeded gapNeeded() {
        return encounter().gapNeeded();
    }

    /**
     * Finds the largest lamp latency that still avoids contact.
     *
     * @return the border, or that any or no latency does
     */
    public LatencyBorder largestLampLatency() {
        return pair.largestLampLatency(latencyS -> encounter(latencyS).gapNeeded());
    }

    private static Trajectory slowed(BrakingVehicle vehicle, Trajectory motion, double onsetS, RoadLoad load) {
        boolean brakes = vehicle.deceleration().inMps2() > 0;
        return brakes ? RoadLoadMotion.of(motion, load, TimeSpan.seconds(onsetS)) : motion;
    }
}
