package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.sweep.ContactMap;
import io.github.stoplag.sweep.Model;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.Sweep;
import io.github.stoplag.sweep.SweepListener;
import io.github.stoplag.sweep.SweepResult;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * A run of a plan file in a folder of its own, which writes down every so many chunks how far it has come: killed at
 * any moment it can be taken up again, and then gives the same bits, in the statistics and in the row files. Until it
 * is closed no other job can have the folder.
 */
public final class SweepJob implements Closeable {
    /** How many chunks are computed between two checkpoints unless told otherwise. */
    public static final int CHECKPOINT_CHUNKS = 32;

    private final PlanFile plan;
    private final SweepRows rows;
    private final Path folder;
    private final int threads;
    private final int checkpointChunks;
    private final List<String> columns;
    private final Checkpoint checkpoint;
    private final FolderLock lock;
    private final List<String> remade = new ArrayList<>();

    private SweepJob(PlanFile plan, SweepRows rows, Path folder, int threads, int checkpointChunks, FolderLock lock) {
        this.plan = plan;
        this.rows = rows.within(plan.plan().size());
        this.folder = folder;
        this.threads = threads;
        this.checkpointChunks = checkpointChunks;
        this.columns = Stream.concat(plan.plan().columns().stream(), plan.model().outputs().stream())
                .toList();
        this.checkpoint = new Checkpoint(folder, plan, this.rows);
        this.lock = lock;
    }

    /**
     * Makes a job and takes its folder.
     *
     * @param plan the plan
     * @param rows which scenarios to write
     * @param folder where rows and checkpoint go; nothing else should be there
     * @param threads how many threads compute, at least 1
     * @param checkpointChunks how many chunks between two checkpoints, at least 1
     * @return the job
     * @throws InputException if another job has the folder, in this process or another
     */
    public static SweepJob open(PlanFile plan, SweepRows rows, Path folder, int threads, int checkpointChunks) {
        return new SweepJob(plan, rows, folder, threads, checkpointChunks, FolderLock.of(folder));
    }

    /** Leaves the folder to others. */
    @Override
    public void close() {
        try {
            lock.close();
        } catch (IOException e) {
            throw unwritable(e);
        }
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
     * Says whether a file tells how far a run has come.
     *
     * @param name the file's name
     * @return true for a checkpoint
     */
    public static boolean isState(String name) {
        return name.equals(Checkpoint.FILE);
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
            clear(SweepJob::isOwn);
            try (RowFiles files = rowFiles(List.of(), 0)) {
                SweepTally total = tally(RowTally.into(files, rows.count()));
                SweepResult<SweepTally> none = SweepResult.none(plan.plan(), total);
                checkpoint.write(none, List.of());
                return goOn(none, files, listener, cancelled);
            }
        });
    }

    /**
     * Takes up a run that was cut off, at the first chunk that its checkpoint does not count. A part file that is
     * missing or not as it was written is made anew, see {@link #remade}.
     *
     * @param listener told of progress
     * @param cancelled true from when the run shall end
     * @return what was gathered since the very start; incomplete if cancelled again
     * @throws InputException if there is no checkpoint, it is of another version, another plan or other rows, or files
     *     cannot be read or written
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
            mend(left.parts(), firstRow);
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

    /**
     * Lists the part files that a resumed run found missing or damaged and made anew.
     *
     * @return their names
     */
    public List<String> remade() {
        return List.copyOf(remade);
    }

    /** Makes the folder's parts those the checkpoint counts. */
    private void mend(List<WholeFile> parts, long written) throws IOException {
        List<String> names = parts.stream().map(WholeFile::name).toList();
        if (!names.equals(RowFiles.names(rows.format(), written))) {
            throw new IOException("the checkpoint must name the part files of " + written + " rows, got " + names);
        }
        clear(name -> RowFiles.isUnfinished(name) || (RowFormat.isPart(name) && !names.contains(name)));
        for (int part = 0; part < parts.size(); part++) {
            if (!parts.get(part).isIn(folder)) {
                remake(part, parts.get(part));
            }
        }
    }

    private void remake(long part, WholeFile wanted) throws IOException {
        long firstChunk = part * RowFiles.PART_CHUNKS;
        long end = part * RowFiles.PART_ROWS + RowFiles.rowsOf(part, rows.count());
        try (RowFiles files = new RowFiles(folder, rows.format(), columns, end, List.of(), part * RowFiles.PART_ROWS)) {
            Sweep.of(plan.plan(), plan.model())
                    .withThreads(threads)
                    .run(this::chunkRows, RowTally.into(files, end), firstChunk, (end - 1) / Plan.CHUNK + 1);
        }
        if (!wanted.isIn(folder)) {
            throw new IOException(wanted.name() + " was made anew and should have SHA-256 " + wanted.sha256() + ", got "
                    + WholeFile.of(folder.resolve(wanted.name())).sha256());
        }
        remade.add(wanted.name());
    }

    private void clear(Predicate<String> unwanted) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                if (unwanted.test(String.valueOf(file.getFileName()))) {
                    Files.delete(file);
                }
            }
        }
    }

    /** Reads the finished parts again: each must be as it was written and hold the rows it should. */
    private void verify(List<WholeFile> parts) throws IOException {
        for (int part = 0; part < parts.size(); part++) {
            WholeFile file = parts.get(part);
            if (!file.isIn(folder)) {
                throw new IOException(file.name() + " is not as it was written; --resume makes it anew");
            }
            long wanted = RowFiles.rowsOf(part, rows.count());
            long found = rows.format().rowsIn(folder.resolve(file.name()));
            if (found != wanted) {
                throw new IOException(file.name() + " must hold " + wanted + " rows, got " + found);
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
        verify(files.finished());
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
