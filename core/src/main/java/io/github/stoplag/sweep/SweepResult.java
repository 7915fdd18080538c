package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Check;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

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
     * Checks the counts and copies the list.
     *
     * @param plan what was to be computed
     * @param tally the total over the chunks counted, in their order
     * @param nextChunk the first chunk not counted; where a cut-off run goes on
     * @param scenarios how many scenarios were counted, rejected ones included
     * @param complete true if all chunks asked for were counted; false if the run was cancelled
     * @param rejects the scenarios with impossible inputs, by reason
     * @throws IllegalArgumentException if the plan has no such chunk, or not so many scenarios
     */
    public SweepResult {
        Objects.requireNonNull(rejects, "rejects");
        Objects.requireNonNull(tally, "tally");
        if (nextChunk < 0 || nextChunk > plan.chunks() || scenarios < 0 || scenarios > plan.size()) {
            throw new IllegalArgumentException("a result must have a next chunk in [0, " + plan.chunks()
                    + "] and scenarios in [0, " + plan.size() + "], got " + nextChunk + " and " + scenarios);
        }
        rejects = Check.copyOf("rejects", rejects);
    }

    /**
     * Gives the number of scenarios with impossible inputs.
     *
     * @return the count over all reasons
     */
    public long rejected() {
        return rejects.stream().mapToLong(Rejects.Entry::count).sum();
    }

    /**
     * Gives the result before the first chunk, for {@link #absorb}.
     *
     * @param plan what is to be computed
     * @param tally an empty tally
     * @param <T> the tally
     * @return a result with no scenarios
     */
    public static <T extends Tally<T>> SweepResult<T> none(Plan plan, T tally) {
        Objects.requireNonNull(tally, "tally");
        return new SweepResult<>(plan, tally, 0, 0, plan.chunks() == 0, List.of());
    }

    /**
     * Adds the next chunk, computed apart: {@code Sweep.run(tally, tally.get(), chunk, chunk + 1)}, here or on another
     * machine. The chunks of a plan absorbed one by one have the bits of one run.
     *
     * @param chunk the result of the chunk {@link #nextChunk} alone
     * @return the result with it; the tally is this one's, changed
     * @throws IllegalArgumentException if it is of another plan, of another chunk, or of several
     */
    public SweepResult<T> absorb(SweepResult<T> chunk) {
        Objects.requireNonNull(chunk, "chunk");
        chunk.requirePlan(plan);
        if (nextChunk >= plan.chunks()
                || chunk.nextChunk != nextChunk + 1
                || chunk.scenarios != plan.chunkSize(nextChunk)) {
            throw new IllegalArgumentException("chunk " + nextChunk + " of " + plan.chunks()
                    + " must be next, whole and alone, got " + chunk.scenarios + " scenarios up to before chunk "
                    + chunk.nextChunk);
        }
        tally.absorb(chunk.tally);
        Rejects together = new Rejects(plan.columns(), 0);
        together.resume(rejects);
        together.absorb(chunk.rejects);
        return new SweepResult<>(
                plan,
                tally,
                chunk.nextChunk,
                scenarios + chunk.scenarios,
                chunk.nextChunk == plan.chunks(),
                together.entries());
    }

    void requirePlan(Plan wanted) {
        if (plan != wanted && !Arrays.equals(PlanDigest.of(plan), PlanDigest.of(wanted))) {
            String alike = plan.toString().equals(wanted.toString()) ? " with other levels or observations" : "";
            throw new IllegalArgumentException(
                    "the result must be of the plan " + wanted + ", got one of " + plan + alike);
        }
    }
}
