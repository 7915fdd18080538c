package io.github.stoplag.sight;

import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caveat;
import java.util.List;

/**
 * The outcome of asking when a lamp is detected.
 *
 * <p>Its caveats are those of the criterion; the onset curve keeps its own.
 */
public sealed interface Detection {
    /**
     * Names the criterion that gave this outcome.
     *
     * @return the criterion with its parameters
     */
    String criterion();

    /**
     * Tells where the criterion was used outside the range it was validated in.
     *
     * @return the caveats, empty if there are none
     */
    List<Caveat> caveats();

    /**
     * The lamp is seen.
     *
     * @param at the time since switch-on
     * @param criterion the criterion with its parameters
     * @param caveats where the criterion was used outside its validated range
     */
    record Seen(TimeSpan at, String criterion, List<Caveat> caveats) implements Detection {
        /**
         * Copies the caveats.
         *
         * @param at the time since switch-on
         * @param criterion the criterion with its parameters
         * @param caveats where the criterion was used outside its validated range
         */
        public Seen {
            caveats = List.copyOf(caveats);
        }

        /**
         * Makes an outcome without caveats.
         *
         * @param at the time since switch-on
         * @param criterion the criterion with its parameters
         */
        public Seen(TimeSpan at, String criterion) {
            this(at, criterion, List.of());
        }
    }

    /**
     * The lamp never meets the criterion.
     *
     * @param criterion the criterion with its parameters
     * @param reason why not, with the values compared
     * @param caveats where the criterion was used outside its validated range
     */
    record NeverSeen(String criterion, String reason, List<Caveat> caveats) implements Detection {
        /**
         * Copies the caveats.
         *
         * @param criterion the criterion with its parameters
         * @param reason why not, with the values compared
         * @param caveats where the criterion was used outside its validated range
         */
        public NeverSeen {
            caveats = List.copyOf(caveats);
        }

        /**
         * Makes an outcome without caveats.
         *
         * @param criterion the criterion with its parameters
         * @param reason why not, with the values compared
         */
        public NeverSeen(String criterion, String reason) {
            this(criterion, reason, List.of());
        }
    }
}
