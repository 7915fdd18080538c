package io.github.stoplag.following;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;

/** The gap at time 0 with which follower and leader just do not touch. */
public sealed interface GapNeeded {
    /**
     * A gap avoids contact from this one on.
     *
     * @param gap the exact border; a larger gap leaves room, a smaller one ends in contact
     */
    record Finite(Distance gap) implements GapNeeded {
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
            double speedMps = Check.above("follower speed", follower.inMps(), 0, 150, "m/s");
            return TimeSpan.seconds(
                    Check.inRange("time gap of " + gap + " at " + follower, gap.inMetres() / speedMps, 0, 1e6, "s"));
        }
    }

    /**
     * No gap is enough, or none up to 1e7 m.
     *
     * @param reason why not, with the values compared
     */
    record Unbounded(String reason) implements GapNeeded {}
}
