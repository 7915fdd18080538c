package io.github.stoplag.following;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.Optional;

/** The gap at time 0 with which follower and leader just do not touch. */
public sealed interface GapNeeded {
    /**
     * Gives the border.
     *
     * @return the gap needed, or nothing if no gap is enough
     */
    Optional<Distance> gap();

    /**
     * Gives the border where there must be one.
     *
     * @return the gap needed
     * @throws NoSuchElementException if no gap is enough; the message says why
     */
    Distance orElseThrow();

    /**
     * A gap avoids contact from this one on.
     *
     * @param border the exact gap; a larger gap leaves room, a smaller one ends in contact
     */
    record Finite(Distance border) implements GapNeeded {

        /**
         * Refuses nulls.
         *
         * @param border the exact gap; a larger gap leaves room, a smaller one ends in contact
         * @throws NullPointerException if one that is required is null
         */
        public Finite {
            Objects.requireNonNull(border, "border");
        }

        @Override
        public Optional<Distance> gap() {
            return Optional.of(border);
        }

        @Override
        public Distance orElseThrow() {
            return border;
        }

        /**
         * Gives the same border as a time gap: how long the follower takes to run the gap.
         *
         * <p>t = g / v; bumper to front, not front to front
         *
         * @param follower the follower's speed v at time 0, above 0
         * @return the time gap
         * @throws IllegalArgumentException if the follower stands, or is so slow that the time gap exceeds 1e6 s
         */
        public TimeSpan timeGap(Speed follower) {
            Objects.requireNonNull(follower, "follower");
            double speedMps = Ranges.MOVING.check("follower speed", follower.inMps());
            return TimeSpan.seconds(
                    Ranges.ELAPSED.check("time gap of " + border + " at " + follower, border.inMetres() / speedMps));
        }
    }

    /**
     * No gap is enough, or none up to 1e7 m.
     *
     * @param reason why not, with the values compared
     */
    record Unbounded(String reason) implements GapNeeded {

        /**
         * Refuses nulls.
         *
         * @param reason why not, with the values compared
         * @throws NullPointerException if one that is required is null
         */
        public Unbounded {
            Objects.requireNonNull(reason, "reason");
        }

        @Override
        public Optional<Distance> gap() {
            return Optional.empty();
        }

        @Override
        public Distance orElseThrow() {
            throw new NoSuchElementException("gap needed must be bounded, got none that is enough: " + reason);
        }
    }
}
