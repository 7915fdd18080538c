package io.github.stoplag.following;

import io.github.stoplag.braking.StopEvidence;
import io.github.stoplag.source.Evidence;

/**
 * What the outcome of a {@link Pair} rests on, made on demand from the pair: outcomes carry numbers only, so that
 * computing millions of them costs nothing.
 */
final class PairEvidence {
    private static final double QUICKEST_DRIVER_S = 0.2;

    private PairEvidence() {}

    /**
     * Gives model, inputs and reservations of a pair's outcome, gap needed and largest lamp latency.
     *
     * @param pair the pair
     * @return the evidence; with a caveat if the follower's reaction is quicker than a driver's, or if a deceleration
     *     asks for a friction above 1 on the level
     */
    static Evidence of(Pair pair) {
        double reactionS = pair.follower().reaction().inSeconds();
        return vehicle("leader", pair.leader())
                .with(vehicle("follower", pair.follower()))
                .with(Evidence.of(
                        "gap " + pair.gap()
                                + " from the follower's front to the leader's rear when the leader's stop-lamp"
                                + " circuit closes; lamp latency " + pair.lampLatency()
                                + " before the follower's reaction time, as given",
                        "assumed: one straight lane, no steering away, the follower brakes for the lamp alone"))
                .withCaveatIf(
                        reactionS < QUICKEST_DRIVER_S,
                        "the follower's reaction time of " + pair.follower().reaction()
                                + " is below 0.2 s, quicker than a driver's simple reaction (common practice, no source)");
    }

    private static Evidence vehicle(String who, BrakingVehicle vehicle) {
        return StopEvidence.of(who, vehicle.speed(), vehicle.reaction(), vehicle.response(), vehicle.deceleration());
    }
}
