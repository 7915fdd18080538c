package io.github.stoplag.following;

import io.github.stoplag.quantity.Distance;

/** The gap at time 0 with which follower and leader just do not touch. */
public sealed interface GapNeeded {
    /**
     * A gap avoids contact from this one on.
     *
     * @param gap the exact border; a larger gap leaves room, a smaller one ends in contact
     */
    record Finite(Distance gap) implements GapNeeded {}

    /**
     * No gap is enough.
     *
     * @param reason why not, with the values compared
     */
    record Unbounded(String reason) implements GapNeeded {}
}
