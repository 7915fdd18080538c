package io.github.stoplag.following;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;

/** What becomes of a follower behind a braking leader. */
public sealed interface PairOutcome {
    /**
     * The follower does not run into the leader.
     *
     * @param smallestGap the smallest gap of the whole motion
     * @param at when it is first reached
     * @param grazing true if the two just touch: a smallest gap within ±1e-9 m of 0
     */
    record NoContact(Distance smallestGap, TimeSpan at, boolean grazing) implements PairOutcome {}

    /**
     * The follower runs into the leader. The speeds are those just before the contact.
     *
     * @param at the moment of contact
     * @param closingSpeed the follower's speed less the leader's
     * @param leaderSpeed the leader's speed
     * @param followerSpeed the follower's speed
     * @param leaderStanding true if the leader had come to rest
     */
    record Contact(TimeSpan at, Speed closingSpeed, Speed leaderSpeed, Speed followerSpeed, boolean leaderStanding)
            implements PairOutcome {}
}
