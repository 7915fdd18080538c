package io.github.stoplag.sweep;

import java.util.Objects;
import java.util.Optional;

/**
 * The contact probabilities of a plan by a second method: the gap is integrated out instead of drawn.
 *
 * @param tally the probabilities
 * @param draws how many times the other axes were drawn
 */
public record GapIntegrated(ConditionalTally tally, long draws) {
    private static final long MOST_DRAWS = 1 << 20;

    /**
     * Refuses nulls.
     *
     * @param tally the probabilities
     * @param draws how many times the other axes were drawn
     * @throws NullPointerException if one that is required is null
     */
    public GapIntegrated {
        Objects.requireNonNull(tally, "tally");
    }

    /**
     * Computes them, from independent draws whatever the plan's design.
     *
     * @param file the plan
     * @param threads how many threads
     * @return the probabilities; nothing if the gap is not drawn independently of the other axes, or no scenario is
     *     possible
     */
    public static Optional<GapIntegrated> of(PlanFile file, int threads) {
        String gap = PairColumn.gapOf(file.plan()).column();
        boolean drawn = ContactMap.axis(file.plan(), gap).distribution().isPresent();
        boolean correlated = file.plan().correlations().stream()
                .anyMatch(c -> c.first().equals(gap) || c.second().equals(gap));
        if (!drawn || correlated) {
            return Optional.empty();
        }
        ConditionalContact contact = file.conditional();
        Plan plan = file.plan()
                .without(gap)
                .withDesign(Design.random(Math.min(MOST_DRAWS, file.plan().size())));
        ConditionalTally tally = Sweep.of(plan, file.following(contact))
                .withThreads(threads)
                .run(() -> new ConditionalTally(contact))
                .tally();
        long draws = tally.contactProbability(file.pairModel().reference()).count();
        return draws < 2 ? Optional.empty() : Optional.of(new GapIntegrated(tally, draws));
    }
}
