package io.github.stoplag.following;

import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;

/** The largest lamp latency with which follower and leader do not come into contact. */
public sealed interface LatencyBorder {
    /**
     * Contact is avoided up to this latency.
     *
     * @param latency the border, to 1e-9 s; a larger latency ends in contact
     */
    record UpTo(TimeSpan latency) implements LatencyBorder {

        /**
         * Refuses nulls.
         *
         * @param latency the border, to 1e-9 s; a larger latency ends in contact
         * @throws NullPointerException if one that is required is null
         */
        public UpTo {
            Objects.requireNonNull(latency, "latency");
        }
    }

    /**
     * The latency does not matter: there is no contact even if the lamp is never seen.
     *
     * @param reason why not, with the values compared
     */
    record Any(String reason) implements LatencyBorder {

        /**
         * Refuses nulls.
         *
         * @param reason why not, with the values compared
         * @throws NullPointerException if one that is required is null
         */
        public Any {
            Objects.requireNonNull(reason, "reason");
        }
    }

    /**
     * There is contact even if the lamp is seen at once.
     *
     * @param reason why, with the values compared
     */
    record None(String reason) implements LatencyBorder {

        /**
         * Refuses nulls.
         *
         * @param reason why, with the values compared
         * @throws NullPointerException if one that is required is null
         */
        public None {
            Objects.requireNonNull(reason, "reason");
        }
    }
}
