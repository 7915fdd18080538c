package io.github.stoplag.sight;

import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.Optional;

/**
 * The outcome of asking when a lamp is detected.
 *
 * <p>Its evidence holds that of the light as well as that of the criterion: whoever has only the result has every
 * reservation.
 */
public sealed interface Detection extends Evident {
    /**
     * Names the criterion that gave this outcome.
     *
     * @return the criterion with its parameters
     */
    String criterion();

    /**
     * Gives the moment of detection.
     *
     * @return the time since switch-on, or nothing if the lamp is never seen
     */
    Optional<TimeSpan> time();

    /**
     * Gives the moment of detection of a lamp that must be seen.
     *
     * @return the time since switch-on
     * @throws NoSuchElementException if the lamp is never seen; the message names criterion and reason
     */
    TimeSpan orElseThrow();

    /**
     * Gives the same outcome under another name of the criterion.
     *
     * @param name the criterion with its parameters
     * @return the outcome
     */
    Detection by(String name);

    /**
     * The lamp is seen.
     *
     * @param at the time since switch-on
     * @param criterion the criterion with its parameters
     * @param evidence what light and criterion rest on
     */
    record Seen(TimeSpan at, String criterion, Evidence evidence) implements Detection {

        /**
         * Refuses nulls.
         *
         * @param at the time since switch-on
         * @param criterion the criterion with its parameters
         * @param evidence what light and criterion rest on
         * @throws NullPointerException if one that is required is null
         */
        public Seen {
            Objects.requireNonNull(at, "at");
            Objects.requireNonNull(criterion, "criterion");
            Objects.requireNonNull(evidence, "evidence");
        }

        @Override
        public Optional<TimeSpan> time() {
            return Optional.of(at);
        }

        @Override
        public TimeSpan orElseThrow() {
            return at;
        }

        @Override
        public Seen by(String name) {
            Objects.requireNonNull(name, "name");
            return new Seen(at, name, evidence);
        }
    }

    /**
     * The lamp never meets the criterion.
     *
     * @param criterion the criterion with its parameters
     * @param reason why not, with the values compared
     * @param evidence what light and criterion rest on
     */
    record NeverSeen(String criterion, String reason, Evidence evidence) implements Detection {

        /**
         * Refuses nulls.
         *
         * @param criterion the criterion with its parameters
         * @param reason why not, with the values compared
         * @param evidence what light and criterion rest on
         * @throws NullPointerException if one that is required is null
         */
        public NeverSeen {
            Objects.requireNonNull(criterion, "criterion");
            Objects.requireNonNull(evidence, "evidence");
            Objects.requireNonNull(reason, "reason");
        }

        @Override
        public Optional<TimeSpan> time() {
            return Optional.empty();
        }

        @Override
        public TimeSpan orElseThrow() {
            throw new NoSuchElementException(
                    "lamp must be seen to have a time of detection, got never seen by " + criterion + ": " + reason);
        }

        @Override
        public NeverSeen by(String name) {
            Objects.requireNonNull(name, "name");
            return new NeverSeen(name, reason, evidence);
        }
    }
}
