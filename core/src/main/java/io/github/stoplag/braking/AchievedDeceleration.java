package io.github.stoplag.braking;

import io.github.stoplag.quantity.Deceleration;
import java.util.Objects;

/** What deceleration comes of a driver's demand, and what limits it. */
public sealed interface AchievedDeceleration {
    /** What sets the deceleration. */
    enum Limiter {
        /** The driver asks for no more. */
        DRIVER,
        /** The brakes give no more force. */
        BRAKES,
        /** The tyres find no more friction; locked wheels or anti-lock action follow. */
        ROAD,
        /** The upgrade alone slows the vehicle more than the driver asks. */
        GRADE
    }

    /**
     * Says what sets the deceleration.
     *
     * @return the limiter
     */
    Limiter limiter();

    /**
     * The vehicle slows down.
     *
     * @param deceleration the deceleration along the road, above 0
     * @param limiter what sets it
     */
    record Slows(Deceleration deceleration, Limiter limiter) implements AchievedDeceleration {

        /**
         * Refuses nulls.
         *
         * @param deceleration the deceleration along the road, above 0
         * @param limiter what sets it
         * @throws NullPointerException if one that is required is null
         */
        public Slows {
            Objects.requireNonNull(deceleration, "deceleration");
            Objects.requireNonNull(limiter, "limiter");
        }
    }

    /**
     * The vehicle does not slow down.
     *
     * @param reason why not, with the values compared
     * @param limiter what sets it
     */
    record DoesNotSlow(String reason, Limiter limiter) implements AchievedDeceleration {

        /**
         * Refuses nulls.
         *
         * @param reason why not, with the values compared
         * @param limiter what sets it
         * @throws NullPointerException if one that is required is null
         */
        public DoesNotSlow {
            Objects.requireNonNull(limiter, "limiter");
            Objects.requireNonNull(reason, "reason");
        }
    }
}
