package io.github.stoplag.following;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a change of lamp, tyres, road, driver or speed buys: two encounters compared.
 *
 * <p>A positive saving speaks for the second encounter. It holds only if the follower's driver responds as supposed:
 * metres of a calculation are not crashes avoided.
 *
 * @param before the outcome as it was
 * @param after the outcome with the change
 * @param neededBefore the gap needed as it was
 * @param neededAfter the gap needed with the change
 * @param speedBeforeMps the follower's speed at time 0 as it was, in m/s
 * @param speedAfterMps the follower's speed at time 0 with the change, in m/s
 * @param origin what both encounters come from
 */
public record Difference(
        PairOutcome before,
        PairOutcome after,
        GapNeeded neededBefore,
        GapNeeded neededAfter,
        double speedBeforeMps,
        double speedAfterMps,
        Evident origin)
        implements Evident {

    /**
     * Refuses nulls.
     *
     * @param before the outcome as it was
     * @param after the outcome with the change
     * @param neededBefore the gap needed as it was
     * @param neededAfter the gap needed with the change
     * @param speedBeforeMps the follower's speed at time 0 as it was, in m/s
     * @param speedAfterMps the follower's speed at time 0 with the change, in m/s
     * @param origin what both encounters come from
     * @throws NullPointerException if one that is required is null
     */
    public Difference {
        Objects.requireNonNull(after, "after");
        Objects.requireNonNull(before, "before");
        Objects.requireNonNull(neededAfter, "neededAfter");
        Objects.requireNonNull(neededBefore, "neededBefore");
        Objects.requireNonNull(origin, "origin");
    }

    /** How the outcome changes. */
    public enum Change {
        /** There was a contact and is none any more. */
        CONTACT_AVOIDED("contact avoided"),
        /** There was no contact and now is one. */
        CONTACT_CAUSED("contact caused"),
        /** There is a contact both ways. */
        CONTACT_BOTH_WAYS("contact both ways"),
        /** There is none either way. */
        NO_CONTACT_EITHER_WAY("no contact either way");

        private final String text;

        Change(String text) {
            this.text = text;
        }

        @Override
        public String toString() {
            return text;
        }
    }

    static Difference between(Encounter before, Encounter after) {
        return new Difference(
                before.outcome(),
                after.outcome(),
                before.gapNeeded(),
                after.gapNeeded(),
                before.follower().speedAtMps(0),
                after.follower().speedAtMps(0),
                Evident.joined(before, after));
    }

    @Override
    public Evidence evidence() {
        return origin.evidence();
    }

    /**
     * Says how the outcome changes.
     *
     * @return one of the four ways
     */
    public Change change() {
        boolean hit = before instanceof PairOutcome.Contact;
        boolean hits = after instanceof PairOutcome.Contact;
        if (hit) {
            return hits ? Change.CONTACT_BOTH_WAYS : Change.CONTACT_AVOIDED;
        }
        return hits ? Change.CONTACT_CAUSED : Change.NO_CONTACT_EITHER_WAY;
    }

    /**
     * Gives how much less gap is needed.
     *
     * @return the saving, negative if more is needed; nothing if no gap is enough one way
     */
    public Optional<Distance> gapSaved() {
        if (neededBefore instanceof GapNeeded.Finite was && neededAfter instanceof GapNeeded.Finite is) {
            return Optional.of(
                    Distance.metres(was.border().inMetres() - is.border().inMetres()));
        }
        return Optional.empty();
    }

    /**
     * Gives how much less time gap is needed, each gap divided by its follower's own speed.
     *
     * @return the saving, negative if more is needed; nothing if no gap is enough or the follower stands one way
     */
    public Optional<TimeSpan> timeGapSaved() {
        boolean moving = speedBeforeMps > 0 && speedAfterMps > 0;
        if (moving && neededBefore instanceof GapNeeded.Finite was && neededAfter instanceof GapNeeded.Finite is) {
            return Optional.of(TimeSpan.seconds(
                    was.border().inMetres() / speedBeforeMps - is.border().inMetres() / speedAfterMps));
        }
        return Optional.empty();
    }

    /**
     * Gives how much lower the closing speed at contact is, no contact counting as 0.
     *
     * @return the saving in m/s, negative if it is higher; nothing without a contact either way
     */
    public OptionalDouble closingSpeedSavedMps() {
        return change() == Change.NO_CONTACT_EITHER_WAY
                ? OptionalDouble.empty()
                : OptionalDouble.of(closingMps(before) - closingMps(after));
    }

    /**
     * Gives how much larger the smallest gap is, contact counting as 0.
     *
     * @return the gain, negative if it is smaller
     */
    public Distance smallestGapGained() {
        return Distance.metres(smallestM(after) - smallestM(before));
    }

    private static double closingMps(PairOutcome outcome) {
        return outcome instanceof PairOutcome.Contact contact
                ? contact.closingSpeed().inMps()
                : 0;
    }

    private static double smallestM(PairOutcome outcome) {
        return outcome instanceof PairOutcome.NoContact none
                ? none.smallestGap().inMetres()
                : 0;
    }

    /**
     * Gives the comparison in words, one line a finding, rounded to what it is worth.
     *
     * @return the lines
     */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(change().toString());
        gapSaved().ifPresent(gap -> lines.add("gap needed: " + less(gap.inMetres(), "m")));
        timeGapSaved().ifPresent(time -> lines.add("time gap needed: " + less(time.inSeconds(), "s")));
        closingSpeedSavedMps().ifPresent(speed -> lines.add("closing speed at contact: " + less(speed, "m/s")));
        double gained = smallestGapGained().inMetres();
        lines.add("smallest gap: " + Numbers.text(Math.abs(gained), 3) + " m " + (gained < 0 ? "less" : "more"));
        return lines;
    }

    private static String less(double saving, String unit) {
        return Numbers.text(Math.abs(saving), 3) + " " + unit + (saving < 0 ? " more" : " less");
    }
}
