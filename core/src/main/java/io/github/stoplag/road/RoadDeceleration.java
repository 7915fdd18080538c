package io.github.stoplag.road;

import io.github.stoplag.quantity.Deceleration;
import java.util.NoSuchElementException;
import java.util.Objects;

/** The deceleration a road allows with locked or fully used tyres, or that it allows none. */
public sealed interface RoadDeceleration {
    /**
     * Gives the deceleration of a road that must slow the vehicle.
     *
     * @return the deceleration
     * @throws NoSuchElementException if the road cannot slow it; the message says why
     */
    Deceleration orElseThrow();

    /**
     * The road slows the vehicle.
     *
     * @param deceleration the deceleration, above 0
     */
    record Holds(Deceleration deceleration) implements RoadDeceleration {

        /**
         * Refuses nulls.
         *
         * @param deceleration the deceleration, above 0
         * @throws NullPointerException if one that is required is null
         */
        public Holds {
            Objects.requireNonNull(deceleration, "deceleration");
        }

        @Override
        public Deceleration orElseThrow() {
            return deceleration;
        }
    }

    /**
     * The road cannot slow the vehicle: friction does not outweigh the downgrade.
     *
     * @param reason why not, with the values compared
     */
    record CannotHold(String reason) implements RoadDeceleration {

        /**
         * Refuses nulls.
         *
         * @param reason why not, with the values compared
         * @throws NullPointerException if one that is required is null
         */
        public CannotHold {
            Objects.requireNonNull(reason, "reason");
        }

        @Override
        public Deceleration orElseThrow() {
            throw new NoSuchElementException("road must slow the vehicle to allow a deceleration, got: " + reason);
        }
    }
}
