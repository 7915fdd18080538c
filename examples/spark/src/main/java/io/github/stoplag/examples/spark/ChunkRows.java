package io.github.stoplag.examples.spark;

import io.github.stoplag.sweep.CheckpointFormat;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.Sweep;
import io.github.stoplag.sweep.SweepResult;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.function.BiConsumer;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;

/**
 * The rows of some chunks of a plan, computed chunk by chunk as they are asked for, each by {@link Sweep} as in a local
 * run. Holds the columns of one chunk.
 */
final class ChunkRows implements Iterator<Row> {
    private final Plan plan;
    private final Sweep sweep;
    private final CheckpointFormat format;
    private final Iterator<Long> chunks;
    private final BiConsumer<Long, byte[]> statistics;
    private final double[][] columns;
    private final List<String> names;
    private final PlanFile file;
    private long firstIndex;
    private int row;
    private int count;

    /**
     * Prepares to compute.
     *
     * @param file the plan
     * @param chunks the chunks' numbers
     * @param statistics is given each chunk's number and its result as {@link CheckpointFormat} writes it
     */
    ChunkRows(PlanFile file, Iterator<Long> chunks, BiConsumer<Long, byte[]> statistics) {
        this.file = file;
        this.plan = file.plan();
        this.sweep = Sweep.of(plan, file.model()).withThreads(1);
        this.format = CheckpointFormat.of(plan);
        this.chunks = chunks;
        this.statistics = statistics;
        this.names = RowSchema.columns(file);
        this.columns = new double[names.size()][(int) Math.min(Plan.CHUNK, plan.size())];
    }

    @Override
    public boolean hasNext() {
        while (row == count && chunks.hasNext()) {
            compute(chunks.next());
        }
        return row < count;
    }

    private void compute(long chunk) {
        SweepResult<ChunkTally> result = sweep.run(this::tally, tally(), chunk, chunk + 1);
        if (!result.complete()) {
            throw new IllegalStateException("chunk " + chunk + " was interrupted");
        }
        statistics.accept(chunk, bytes(result));
        firstIndex = chunk * Plan.CHUNK;
        row = 0;
        count = plan.chunkSize(chunk);
    }

    private ChunkTally tally() {
        return new ChunkTally(new PairTally(file.pairModel()), names, columns);
    }

    private byte[] bytes(SweepResult<ChunkTally> result) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            format.write(
                    new SweepResult<>(
                            plan,
                            result.tally().pairs(),
                            result.nextChunk(),
                            result.scenarios(),
                            true,
                            result.rejects()),
                    new DataOutputStream(bytes));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    @Override
    public Row next() {
        if (!hasNext()) {
            throw new NoSuchElementException("no rows are left");
        }
        Object[] values = new Object[columns.length + 1];
        values[0] = firstIndex + row;
        for (int c = 0; c < columns.length; c++) {
            double value = columns[c][row];
            values[c + 1] = Double.isNaN(value) ? null : value;
        }
        row++;
        return RowFactory.create(values);
    }
}
