package io.github.stoplag.following;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What becomes of a follower behind a braking leader. */
public sealed interface PairOutcome {
    /**
     * Gives the contact.
     *
     * @return the contact, or nothing if there is none
     */
    default Optional<Contact> contact() {
        return this instanceof Contact contact ? Optional.of(contact) : Optional.empty();
    }

    /**
     * Gives the outcome without contact.
     *
     * @return the smallest gap and its moment, or nothing if there is a contact
     */
    default Optional<NoContact> noContact() {
        return this instanceof NoContact none ? Optional.of(none) : Optional.empty();
    }

    /** The follower does not run into the leader. Two are equal if all their values are. */
    final class NoContact implements PairOutcome {
        // plain doubles, so that finding an outcome makes one object only
        private final double smallestGapM;
        private final double atS;
        private final boolean grazing;

        /**
         * Makes an outcome without contact.
         *
         * @param smallestGap the smallest gap of the whole motion
         * @param at when it is first reached
         * @param grazing true if the two just touch: a smallest gap within ±1e-9 m of 0
         * @return the outcome
         */
        public static NoContact of(Distance smallestGap, TimeSpan at, boolean grazing) {
            Objects.requireNonNull(at, "at");
            Objects.requireNonNull(smallestGap, "smallestGap");
            return new NoContact(smallestGap.inMetres(), at.inSeconds(), grazing);
        }

        NoContact(double smallestGapM, double atS, boolean grazing) {
            // two that graze touch: a gap below 0 by rounding is none
            this.smallestGapM = grazing && smallestGapM < 0 ? 0 : smallestGapM;
            this.atS = atS;
            this.grazing = grazing;
        }

        /**
         * Gives the smallest gap of the whole motion.
         *
         * @return the gap
         */
        public Distance smallestGap() {
            return Distance.metres(smallestGapM);
        }

        /**
         * Gives the moment at which the smallest gap is first reached.
         *
         * @return the time since time 0
         */
        public TimeSpan at() {
            return TimeSpan.seconds(atS);
        }

        /**
         * Says whether the two just touch.
         *
         * @return true for a smallest gap within ±1e-9 m of 0
         */
        public boolean grazing() {
            return grazing;
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof NoContact that
                    && smallestGap().equals(that.smallestGap())
                    && at().equals(that.at())
                    && grazing == that.grazing;
        }

        @Override
        public int hashCode() {
            return Objects.hash(smallestGap(), at(), grazing);
        }

        @Override
        public String toString() {
            return "NoContact[smallestGap=" + smallestGap() + ", at=" + at() + ", grazing=" + grazing + "]";
        }
    }

    /**
     * The follower runs into the leader. The speeds are those just before the contact. Two are equal if all their
     * values are.
     */
    final class Contact implements PairOutcome {
        private final double atS;
        private final double closingMps;
        private final double leaderMps;
        private final double followerMps;
        private final boolean leaderStanding;

        /**
         * Makes a contact.
         *
         * @param at the moment of contact
         * @param closingSpeed the follower's speed less the leader's
         * @param leaderSpeed the leader's speed
         * @param followerSpeed the follower's speed
         * @param leaderStanding true if the leader had come to rest
         * @return the contact
         */
        public static Contact of(
                TimeSpan at, Speed closingSpeed, Speed leaderSpeed, Speed followerSpeed, boolean leaderStanding) {
            Objects.requireNonNull(at, "at");
            Objects.requireNonNull(closingSpeed, "closingSpeed");
            Objects.requireNonNull(followerSpeed, "followerSpeed");
            Objects.requireNonNull(leaderSpeed, "leaderSpeed");
            return new Contact(
                    at.inSeconds(), closingSpeed.inMps(), leaderSpeed.inMps(), followerSpeed.inMps(), leaderStanding);
        }

        Contact(double atS, double closingMps, double leaderMps, double followerMps, boolean leaderStanding) {
            this.atS = atS;
            this.closingMps = closingMps;
            this.leaderMps = leaderMps;
            this.followerMps = followerMps;
            this.leaderStanding = leaderStanding;
        }

        /**
         * Gives the moment of contact.
         *
         * @return the time since time 0
         */
        public TimeSpan at() {
            return TimeSpan.seconds(atS);
        }

        /**
         * Gives the follower's speed less the leader's.
         *
         * @return the closing speed
         */
        public Speed closingSpeed() {
            return Speed.mps(closingMps);
        }

        /**
         * Gives the leader's speed.
         *
         * @return the speed just before the contact
         */
        public Speed leaderSpeed() {
            return Speed.mps(leaderMps);
        }

        /**
         * Gives the follower's speed.
         *
         * @return the speed just before the contact
         */
        public Speed followerSpeed() {
            return Speed.mps(followerMps);
        }

        /**
         * Says whether the leader had come to rest.
         *
         * @return true if it stood
         */
        public boolean leaderStanding() {
            return leaderStanding;
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Contact that
                    && at().equals(that.at())
                    && closingSpeed().equals(that.closingSpeed())
                    && leaderSpeed().equals(that.leaderSpeed())
                    && followerSpeed().equals(that.followerSpeed())
                    && leaderStanding == that.leaderStanding;
        }

        @Override
        public int hashCode() {
            return Objects.hash(at(), closingSpeed(), leaderSpeed(), followerSpeed(), leaderStanding);
        }

        @Override
        public String toString() {
            return "Contact[at=" + at() + ", closingSpeed=" + closingSpeed() + ", leaderSpeed=" + leaderSpeed()
                    + ", followerSpeed=" + followerSpeed() + ", leaderStanding=" + leaderStanding + "]";
        }
    }
}
