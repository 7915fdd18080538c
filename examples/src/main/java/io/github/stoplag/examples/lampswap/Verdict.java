package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.following.Pair;
import io.github.stoplag.following.PairOutcome;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import java.util.Optional;

/**
 * How a following ends, taken apart for tables.
 *
 * @param word one of {@code no contact}, {@code grazing}, {@code contact}, {@code never seen}
 * @param smallestGap the gap left, without contact
 * @param closingSpeed the difference of both speeds at contact
 * @param endS the time of the smallest gap or of the contact, since the leader's lamp circuit closed
 * @param gapNeeded the gap from which on there is no contact
 */
record Verdict(
        String word,
        Optional<Distance> smallestGap,
        Optional<Speed> closingSpeed,
        Optional<Double> endS,
        Optional<Distance> gapNeeded) {
    static final String NEVER_SEEN = "never seen";

    /** Takes apart how a pair ends, if the lamp is seen at all. */
    static Verdict of(Optional<Pair> seen) {
        return seen.map(Verdict::of)
                .orElseGet(() -> new Verdict(
                        NEVER_SEEN, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty()));
    }

    private static Verdict of(Pair pair) {
        Optional<Distance> needed = pair.gapNeeded().gap();
        PairOutcome outcome = pair.outcome();
        if (outcome instanceof PairOutcome.Contact contact) {
            return new Verdict(
                    "contact",
                    Optional.empty(),
                    Optional.of(contact.closingSpeed()),
                    Optional.of(contact.at().inSeconds()),
                    needed);
        }
        PairOutcome.NoContact clear = (PairOutcome.NoContact) outcome;
        return new Verdict(
                clear.grazing() ? "grazing" : "no contact",
                Optional.of(clear.smallestGap()),
                Optional.empty(),
                Optional.of(clear.at().inSeconds()),
                needed);
    }

    /** Gives the decisive figure alone, the speed in km/h or the gap in metres. */
    Optional<Double> figure() {
        return closingSpeed.map(Speed::inKmh).or(() -> smallestGap.map(Distance::inMetres));
    }

    /** Says it in one phrase with the decisive figure. */
    String phrase() {
        return closingSpeed
                .map(speed -> word + ", closing at " + Text.speed(speed))
                .orElseGet(() -> smallestGap
                        .map(gap -> word + ", " + Text.distance(gap) + " left")
                        .orElse(word));
    }
}
