package io.github.stoplag.following;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A vehicle of a chain and the one ahead of it.
 *
 * @param follower the index of the vehicle behind; the one ahead has the index below
 * @param outcome what becomes of the two under their prescribed motions
 * @param undisturbed true if neither of the two takes part in an earlier contact of the prescribed motions, or without
 *     a contact of their own in any. An undisturbed contact comes as found unless a vehicle next to it, thrown off its
 *     motion by a contact of its own, gets there sooner; the chain's earliest contact comes as found without reserve.
 *     A disturbed link says only what would have become of the two had nothing happened to either before.
 */
public record ChainLink(int follower, PairOutcome outcome, boolean undisturbed) {

    /**
     * Refuses nulls.
     *
     * @param follower the index of the vehicle behind; the one ahead has the index below
     * @param outcome what becomes of the two under their prescribed motions
     * @param undisturbed true if neither of the two takes part in an earlier contact of the prescribed motions, or
     *     without
     *     a contact of their own in any. An undisturbed contact comes as found unless a vehicle next to it, thrown
     *     off its
     *     motion by a contact of its own, gets there sooner; the chain's earliest contact comes as found without
     *     reserve.
     *     A disturbed link says only what would have become of the two had nothing happened to either before.
     * @throws NullPointerException if one that is required is null
     */
    public ChainLink {
        Objects.requireNonNull(outcome, "outcome");
    }

    /**
     * Gives the contact, if there is one.
     *
     * @return the contact
     */
    public Optional<PairOutcome.Contact> contact() {
        return outcome.contact();
    }

    static Optional<ChainLink> earliest(List<ChainLink> links) {
        return links.stream()
                .filter(link -> link.outcome instanceof PairOutcome.Contact)
                .min(Comparator.comparing(link -> link.contact().orElseThrow().at()));
    }
}
