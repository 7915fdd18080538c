package io.github.stoplag.sweep;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * Writes down how far a sweep of a plan has come, and reads it back with the same bits: tally, next chunk, counts and
 * rejected scenarios. What another plan's sweep wrote is refused.
 *
 * <p>Example: {@code format.write(cut, out)}, later {@code sweep.resume(newTally, format.read(in, newTally.get()))}.
 * Immutable.
 */
public final class CheckpointFormat {
    private static final String KIND = "results of a sweep";

    private final Plan plan;
    private final byte[] digest;

    private CheckpointFormat(Plan plan, byte[] digest) {
        this.plan = plan;
        this.digest = digest;
    }

    /**
     * Makes the format for a plan.
     *
     * @param plan the plan
     * @return the format
     */
    public static CheckpointFormat of(Plan plan) {
        return new CheckpointFormat(plan, PlanDigest.of(plan));
    }

    /**
     * Writes a result.
     *
     * @param result what a run of the plan gave, complete or not
     * @param out where it goes
     * @param <T> what is gathered
     * @throws IOException if it cannot be written
     * @throws IllegalArgumentException if the result is of another plan
     */
    public <T extends SavableTally<T>> void write(SweepResult<T> result, DataOutput out) throws IOException {
        Objects.requireNonNull(out, "out");
        result.requirePlan(plan);
        SavedState.save(out, KIND, content -> {
            content.write(digest);
            content.writeLong(result.nextChunk());
            content.writeLong(result.scenarios());
            content.writeBoolean(result.complete());
            content.writeInt(result.rejects().size());
            for (Rejects.Entry entry : result.rejects()) {
                SavedState.text(content, entry.reason());
                content.writeLong(entry.count());
                content.writeLong(entry.firstIndex());
                SavedState.text(content, entry.firstInputs());
            }
            result.tally().save(content);
        });
    }

    /**
     * Reads a result.
     *
     * @param in where it comes from
     * @param tally a tally made as for the run; its content is replaced
     * @param <T> what is gathered
     * @return the result, with the tally given
     * @throws IOException if it cannot be read, ends too early, is damaged, or was written for another plan or tally
     */
    public <T extends SavableTally<T>> SweepResult<T> read(DataInput in, T tally) throws IOException {
        Objects.requireNonNull(tally, "tally");
        List<SweepResult<T>> results = new ArrayList<>();
        SavedState.restore(in, KIND, content -> {
            byte[] found = new byte[digest.length];
            content.readFully(found);
            if (!Arrays.equals(found, digest)) {
                throw new IOException("the saved results must be of the plan " + plan + ", got those of another plan");
            }
            long nextChunk = SavedState.length(content.readLong(), plan.chunks());
            long scenarios = SavedState.length(content.readLong(), plan.size());
            boolean complete = content.readBoolean();
            List<Rejects.Entry> rejects = rejects(content);
            tally.restore(content);
            results.add(new SweepResult<>(plan, tally, nextChunk, scenarios, complete, rejects));
        });
        return results.get(0);
    }

    private static List<Rejects.Entry> rejects(DataInput in) throws IOException {
        List<Rejects.Entry> rejects = new ArrayList<>();
        for (int left = in.readInt(); left > 0; left--) {
            rejects.add(new Rejects.Entry(SavedState.text(in), in.readLong(), in.readLong(), SavedState.text(in)));
        }
        return rejects;
    }
}
