package io.github.stoplag.following;

import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What a change along a chain does, link by link: for example one LED among filament lamps.
 *
 * <p>A faster lamp on vehicle i shortens the delay between i and the one behind; everyone further back brakes as much
 * earlier, with the same delays among themselves.
 *
 * @param contactsBefore how many links end in contact as it was, prescribed motions throughout
 * @param contactsAfter how many do with the change
 * @param firstBefore the earliest contact as it was, if any
 * @param firstAfter the earliest contact with the change, if any
 * @param changed the links whose gap needed or outcome the change touches, with the difference
 * @param origin what both chains rest on
 */
public record ChainDifference(
        int contactsBefore,
        int contactsAfter,
        Optional<ChainLink> firstBefore,
        Optional<ChainLink> firstAfter,
        List<LinkChange> changed,
        Evident origin)
        implements Evident {
    private static final double SAME_M = 1e-9;

    /**
     * Refuses nulls.
     *
     * @param contactsBefore how many links end in contact as it was, prescribed motions throughout
     * @param contactsAfter how many do with the change
     * @param firstBefore the earliest contact as it was, if any
     * @param firstAfter the earliest contact with the change, if any
     * @param changed the links whose gap needed or outcome the change touches, with the difference
     * @param origin what both chains rest on
     * @throws NullPointerException if one that is required is null
     */
    public ChainDifference {
        Objects.requireNonNull(changed, "changed");
        Objects.requireNonNull(firstAfter, "firstAfter");
        Objects.requireNonNull(firstBefore, "firstBefore");
        Objects.requireNonNull(origin, "origin");
    }

    /**
     * The difference at one link.
     *
     * @param follower the index of the vehicle behind
     * @param difference what changes
     */
    public record LinkChange(int follower, Difference difference) {

        /**
         * Refuses nulls.
         *
         * @param follower the index of the vehicle behind
         * @param difference what changes
         * @throws NullPointerException if one that is required is null
         */
        public LinkChange {
            Objects.requireNonNull(difference, "difference");
        }
    }

    static ChainDifference between(Chain before, Chain after) {
        int count = before.members().size();
        if (after.members().size() != count) {
            throw new IllegalArgumentException("chains compared must have one length, got " + count + " and "
                    + after.members().size() + " vehicles");
        }
        List<ChainLink> was = before.links();
        List<ChainLink> is = after.links();
        return new ChainDifference(
                contacts(was),
                contacts(is),
                ChainLink.earliest(was),
                ChainLink.earliest(is),
                IntStream.range(1, count)
                        .mapToObj(i -> new LinkChange(i, before.encounter(i).differenceTo(after.encounter(i))))
                        .filter(ChainDifference::matters)
                        .toList(),
                Evident.joined(before, after));
    }

    @Override
    public Evidence evidence() {
        return origin.evidence();
    }

    private static int contacts(List<ChainLink> links) {
        return (int) links.stream().filter(link -> link.contact().isPresent()).count();
    }

    private static boolean matters(LinkChange change) {
        Difference difference = change.difference();
        boolean sameNeed = difference
                .gapSaved()
                .map(saved -> Math.abs(saved.inMetres()) <= SAME_M)
                .orElse(difference.neededBefore().getClass()
                        == difference.neededAfter().getClass());
        boolean sameKind = difference.before().getClass() == difference.after().getClass();
        boolean sameGap = Math.abs(difference.smallestGapGained().inMetres()) <= SAME_M;
        boolean sameClosing = Math.abs(difference.closingSpeedSavedMps().orElse(0)) <= SAME_M;
        return !(sameNeed && sameKind && sameGap && sameClosing);
    }
}
