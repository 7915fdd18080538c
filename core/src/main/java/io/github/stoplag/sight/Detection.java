package io.github.stoplag.sight;

import io.github.stoplag.quantity.TimeSpan;

/** The outcome of asking when a lamp is detected. */
public sealed interface Detection {
    /**
     * Names the criterion that gave this outcome.
     *
     * @return the criterion with its parameters
     */
    String criterion();

    /**
     * The lamp is seen.
     *
     * @param at the time since switch-on
     * @param criterion the criterion with its parameters
     */
    record Seen(TimeSpan at, String criterion) implements Detection {}

    /**
     * The lamp never meets the criterion.
     *
     * @param criterion the criterion with its parameters
     * @param reason why not, with the values compared
     */
    record NeverSeen(String criterion, String reason) implements Detection {}
}
