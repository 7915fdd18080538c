package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.sweep.Plan;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The first scenarios of a sweep as a series of part files, each of {@link #PART_CHUNKS} chunks, written in order. A
 * part is written under another name and moved once it is whole, so that a file with a part's name is never half.
 */
final class RowFiles implements Closeable {
    /** Chunks in a part file: 262,144 scenarios. */
    static final int PART_CHUNKS = 4;

    static final long PART_ROWS = (long) PART_CHUNKS * Plan.CHUNK;

    private static final String UNFINISHED = ".unfinished";

    private final Path folder;
    private final RowFormat format;
    private final List<String> columns;
    private final long rows;
    private final List<WholeFile> finished;
    private long next;
    private long part;
    private @Nullable PartWriter open;

    /**
     * Makes a series.
     *
     * @param rows how many scenarios to write
     * @param before the parts that are whole already
     * @param first the scenario that comes first after them
     */
    RowFiles(Path folder, RowFormat format, List<String> columns, long rows, List<WholeFile> before, long first) {
        this.folder = folder;
        this.format = format;
        this.columns = List.copyOf(columns);
        this.rows = rows;
        this.finished = new ArrayList<>(before);
        this.next = first;
    }

    List<String> columns() {
        return columns;
    }

    /** Lists the parts that are whole, in order. */
    List<WholeFile> finished() {
        return List.copyOf(finished);
    }

    /** How many of some scenarios are to be written. */
    static int wanted(long rows, long first, int count) {
        return (int) Math.max(0, Math.min(count, rows - first));
    }

    /** How many scenarios a part holds. */
    static long rowsOf(long part, long rows) {
        return Math.min(PART_ROWS, rows - part * PART_ROWS);
    }

    /** Lists the names of the parts that hold the first rows. */
    static List<String> names(RowFormat format, long rows) {
        return Stream.iterate(0L, part -> part * PART_ROWS < rows, part -> part + 1)
                .map(format::fileName)
                .toList();
    }

    /** Adds the scenarios that follow those before. */
    void write(long first, int count, double[][] values) throws IOException {
        if (first != next) {
            throw new IllegalStateException("scenario " + next + " must be written next, got " + first);
        }
        int wanted = wanted(rows, first, count);
        for (int row = 0; row < wanted; row++) {
            if (open == null) {
                part = next / PART_ROWS;
                Files.deleteIfExists(unfinished());
                open = PartWriter.open(format, unfinished(), columns);
            }
            open.write(next, values, row);
            next++;
            if (next % PART_ROWS == 0 || next == rows) {
                open.close();
                open = null;
                Path place = folder.resolve(format.fileName(part));
                WholeFile.place(unfinished(), place);
                finished.add(WholeFile.of(place));
            }
        }
    }

    private Path unfinished() {
        return folder.resolve(format.fileName(part) + UNFINISHED);
    }

    /** Gives up a part that is not whole. */
    @Override
    public void close() throws IOException {
        if (open != null) {
            open.close();
            open = null;
            Files.deleteIfExists(unfinished());
        }
    }

    /** Says whether a name is that of a part that was not finished. */
    static boolean isUnfinished(String name) {
        return name.endsWith(UNFINISHED) && RowFormat.isPart(name.substring(0, name.length() - UNFINISHED.length()));
    }
}
