package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.RowBlock;
import io.github.stoplag.sweep.Tally;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The rows of one chunk on their way to a file; as a total, the way into the file. */
final class RowTally implements Tally<RowTally> {
    private final List<String> columns;
    private final long rows;
    private final @Nullable RowFiles files;
    private double[][] values = new double[0][];
    private long first;
    private int count;

    private RowTally(List<String> columns, long rows, @Nullable RowFiles files) {
        this.columns = columns;
        this.rows = rows;
        this.files = files;
    }

    static RowTally ofChunk(List<String> columns, long rows) {
        return new RowTally(columns, rows, null);
    }

    static RowTally into(RowFiles files, long rows) {
        return new RowTally(files.columns(), rows, files);
    }

    @Override
    public void add(RowBlock block) {
        if (count == 0) {
            first = block.firstIndex();
        }
        int wanted = RowFiles.wanted(rows, block.firstIndex(), block.count());
        if (wanted > 0 && values.length == 0) {
            values = new double[columns.size()][(int) Math.min(Plan.CHUNK, rows)];
        }
        for (int c = 0; wanted > 0 && c < values.length; c++) {
            System.arraycopy(block.column(columns.get(c)), 0, values[c], count, wanted);
        }
        count += wanted;
    }

    @Override
    public void absorb(RowTally later) {
        if (files != null && later.count > 0) {
            try {
                files.write(later.first, later.count, later.values);
            } catch (IOException e) {
                throw new UncheckedIOException("rows cannot be written: " + e.getMessage(), e);
            }
        }
    }

    @Override
    public void clear() {
        count = 0;
    }
}
