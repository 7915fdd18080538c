package io.github.stoplag.sweep;

import java.util.List;

/**
 * What a sweep gathered.
 *
 * @param plan what was to be computed
 * @param tally the total over the chunks counted, in their order
 * @param nextChunk the first chunk not counted; where a cut-off run goes on
 * @param scenarios how many scenarios were counted, rejected ones included
 * @param complete true if all chunks asked for were counted; false if the run was cancelled
 * @param rejects the scenarios with impossible inputs, by reason
 * @param <T> the tally
 */
public record SweepResult<T extends Tally<T>>(
        Plan plan, T tally, long nextChunk, long scenarios, boolean complete, List<Rejects.Entry> rejects) {
    /**
     * Copies the list.
     *
     * @param plan what was to be computed
     * @param tally the total over the chunks counted, in their order
     * @param nextChunk the first chunk not counted; where a cut-off run goes on
     * @param scenarios how many scenarios were counted, rejected ones included
     * @param complete true if all chunks asked for were counted; false if the run was cancelled
     * @param rejects the scenarios with impossible inputs, by reason
     */
    public SweepResult {
        rejects = List.copyOf(rejects);
    }

    /**
     * Gives the number of scenarios with impossible inputs.
     *
     * @return the count over all reasons
     */
    public long rejected() {
        return rejects.stream().mapToLong(Rejects.Entry::count).sum();
    }
}
