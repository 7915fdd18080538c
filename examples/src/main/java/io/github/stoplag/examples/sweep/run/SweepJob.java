package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.sweep.Model;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.Sweep;
import io.github.stoplag.sweep.SweepListener;
import io.github.stoplag.sweep.SweepResult;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * A run of a plan file in a folder of its own, which writes down every so many chunks how far it has come: killed at any moment it can be
 * taken up again, and then gives the same bits, in the statistics and in the row files.
 */
public final class SweepJob {
    /** How many chunks are computed between two checkpoints unless told otherwise. */
    public static final int CHECKPOINT_CHUNKS = 32;

    private final PlanFile plan;
    private final SweepRows rows;
    private final Path folder;
    private final int threads;
    private final int checkpointChunks;
    private final List<String> columns;
    private final Checkpoint checkpoint;

    private SweepJob(PlanFile plan, SweepRows rows, Path folder, int threads, int checkpointChunks) {
        this.plan = plan;
        this.rows = rows.within(plan.plan().size());
        this.folder = folder;
        this.threads = threads;
        this.checkpointChunks = checkpointChunks;
        this.columns = Stream.concat(plan.plan().columns().stream(), plan.model().outputs().stream())
                .toList();
        this.checkpoint = new Checkpoint(folder, plan, this.rows);
    }

    /**
     * Makes a job.
     *
     * @param plan the plan
     * @param rows which scenarios to write
     * @param folder where rows and checkpoint go; nothing else should be there
     * @param threads how many threads compute, at least 1
     * @param checkpointChunks how many chunks between two checkpoints, at least 1
     * @return the job
     */
    public static SweepJob of(PlanFile plan, SweepRows rows, Path folder, int threads, int checkpointChunks) {
        return new SweepJob(plan, rows, folder, threads, checkpointChunks);
    }

    /**
     * Says whether a folder holds a run that was cut off.
     *
     * @param folder the folder of a job
     * @return true if it has a checkpoint
     */
    public static boolean wasCutOff(Path folder) {
        return Checkpoint.isIn(folder);
    }

    /**
     * Says whether a job may have written a file.
     *
     * @param name the file's name
     * @return true for parts and checkpoints, finished or not
     */
    public static boolean isOwn(String name) {
        return RowFormat.isPart(name) || RowFiles.isUnfinished(name) || Checkpoint.isName(name);
    }

    /**
     * Deletes the checkpoint of a run whose results are in place.
     *
     * @param folder the folder of a job
     * @throws IOException if it cannot be deleted
     */
    public static void forget(Path folder) throws IOException {
        Files.deleteIfExists(folder.resolve(Checkpoint.FILE));
    }

    /**
     * Runs the plan from its first scenario.
     *
     * @param listener told of progress
     * @param cancelled true from when the run shall end
     * @return what was gathered; incomplete if cancelled, and then {@link #resume} goes on
     * @throws InputException if files cannot be written
     * @throws IllegalStateException if the model fails, naming the scenario and its inputs
     */
    public SweepOutcome start(SweepListener listener, BooleanSupplier cancelled) {
        return running(() -> {
            Files.createDirectories(folder);
            try (RowFiles files = rowFiles(List.of(), 0)) {
                SweepTally total = tally(RowTally.into(files, rows.count()));
                SweepResult<SweepTally> none = SweepResult.none(plan.plan(), total);
                checkpoint.write(none, List.of());
                return goOn(none, files, listener, cancelled);
            }
        });
    }

    /**
     * Takes up a run that was cut off, at the first chunk that its checkpoint does not count.
     *
     * @param listener told of progress
     * @param cancelled true from when the run shall end
     * @return what was gathered since the very start; incomplete if cancelled again
     * @throws InputException if there is no checkpoint, it is of another version, another plan or other rows, a part file is not as it
     *     was written, or files cannot be read or written
     * @throws IllegalStateException if the model fails, naming the scenario and its inputs
     */
    public SweepOutcome resume(SweepListener listener, BooleanSupplier cancelled) {
        if (!wasCutOff(folder)) {
            throw new InputException("--resume: " + folder + ": there is no run that was cut off");
        }
        return running(() -> {
            Checkpoint.Content left = checkpoint.read(tally(chunkRows()));
            long nextChunk = left.result().nextChunk();
            long firstChunk = nextChunk - nextChunk % RowFiles.PART_CHUNKS;
            long firstRow = nextChunk * Plan.CHUNK >= rows.count() ? rows.count() : firstChunk * Plan.CHUNK;
            requireParts(left.parts(), firstRow);
            try (RowFiles files = rowFiles(left.parts(), firstRow)) {
                RowTally into = RowTally.into(files, rows.count());
                if (firstRow < rows.count()) {
                    // the rows of the part that was open; they are not counted again
                    Sweep.of(plan.plan(), plan.model())
                            .withThreads(threads)
                            .run(this::chunkRows, into, firstChunk, nextChunk);
                }
                return goOn(checkpoint.read(tally(into)).result(), files, listener, cancelled);
            }
        });
    }

    private void requireParts(List<WholeFile> parts, long written) throws IOException {
        List<String> names = parts.stream().map(WholeFile::name).toList();
        if (!names.equals(RowFiles.names(rows.format(), written))) {
            throw new IOException("the checkpoint must name the part files of " + written + " rows, got " + names);
        }
        for (WholeFile part : parts) {
            Path file = folder.resolve(part.name());
            if (!Files.exists(file)) {
                throw new InputException("--resume: " + file + ": is missing");
            }
            WholeFile found = WholeFile.of(file);
            if (!found.equals(part)) {
                throw new InputException("--resume: " + file + ": must be as it was written, " + part.bytes()
                        + " bytes with SHA-256 " + part.sha256() + ", got " + found.bytes() + " bytes with "
                        + found.sha256() + "; --restart starts anew");
            }
        }
    }

    private SweepOutcome goOn(
            SweepResult<SweepTally> before, RowFiles files, SweepListener listener, BooleanSupplier cancelled)
            throws IOException {
        Model model = plan.model();
        Supplier<SweepTally> empty = () -> tally(chunkRows());
        SweepResult<SweepTally> result = before;
        while (!result.complete() && !cancelled.getAsBoolean()) {
            AtomicLong done = new AtomicLong();
            long pause = (result.nextChunk() + checkpointChunks) * Plan.CHUNK;
            result = Sweep.of(plan.plan(), model)
                    .withThreads(threads)
                    .withCancel(() -> cancelled.getAsBoolean() || done.get() >= pause)
                    .withListener((counted, all) -> {
                        done.set(counted);
                        listener.progress(counted, all);
                    })
                    .resume(empty, result);
            checkpoint.write(result, files.finished());
        }
        SweepTally tally = result.tally();
        return new SweepOutcome(
                plan,
                new SweepResult<>(
                        result.plan(),
                        tally.pairs(),
                        result.nextChunk(),
                        result.scenarios(),
                        result.complete(),
                        result.rejects()),
                tally.map(),
                rows,
                columns);
    }

    private RowFiles rowFiles(List<WholeFile> before, long first) {
        return new RowFiles(folder, rows.format(), columns, rows.count(), before, first);
    }

    private RowTally chunkRows() {
        return RowTally.ofChunk(columns, rows.count());
    }

    private SweepTally tally(RowTally into) {
        return new SweepTally(plan.pairModel(), ContactMap.of(plan.plan(), plan.lamps()), into);
    }

    /** Something that reads or writes files. */
    private interface FileWork<T> {
        T run() throws IOException;
    }

    private <T> T running(FileWork<T> work) {
        try {
            return work.run();
        } catch (IOException e) {
            throw unwritable(e);
        } catch (IllegalStateException e) {
            if (e.getCause() instanceof RuntimeException failure && failure.getCause() instanceof IOException cause) {
                throw unwritable(cause);
            }
            throw e;
        }
    }

    private InputException unwritable(IOException e) {
        return new InputException(folder + ": cannot be written: " + e.getMessage(), e);
    }
}
