package io.github.stoplag.braking;

import io.github.stoplag.source.Evidence;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.Optional;

/**
 * The vehicle never comes to rest.
 *
 * @param reason why not, with the values compared
 * @param evidence what this rests on
 */
public record NeverStops(String reason, Evidence evidence) implements StopOutcome {

    /**
     * Refuses nulls.
     *
     * @param reason why not, with the values compared
     * @param evidence what this rests on
     * @throws NullPointerException if one that is required is null
     */
    public NeverStops {
        Objects.requireNonNull(evidence, "evidence");
        Objects.requireNonNull(reason, "reason");
    }

    @Override
    public Optional<Stop> stop() {
        return Optional.empty();
    }

    @Override
    public Stop orElseThrow() {
        throw new NoSuchElementException("vehicle must stop to have a stopping distance, got never stops: " + reason);
    }
}
