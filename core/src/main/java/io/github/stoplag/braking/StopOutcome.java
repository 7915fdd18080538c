package io.github.stoplag.braking;

import io.github.stoplag.source.Evident;
import java.util.NoSuchElementException;
import java.util.Optional;

/** What becomes of a braking vehicle: it stops, or it never does. */
public sealed interface StopOutcome extends Evident permits Stop, NeverStops {
    /**
     * Gives the stop.
     *
     * @return the stop, or nothing if the vehicle never stops
     */
    Optional<Stop> stop();

    /**
     * Gives the stop of a vehicle that must stop.
     *
     * @return the stop
     * @throws NoSuchElementException if the vehicle never stops; the message says why
     */
    Stop orElseThrow();
}
