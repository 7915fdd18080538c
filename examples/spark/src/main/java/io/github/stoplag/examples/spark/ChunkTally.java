package io.github.stoplag.examples.spark;

import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.RowBlock;
import io.github.stoplag.sweep.Tally;
import java.util.List;

/** The statistics of one chunk, which also copies the chunk's rows into columns on their way to a file. */
final class ChunkTally implements Tally<ChunkTally> {
    private final PairTally pairs;
    private final List<String> names;
    private final double[][] columns;

    /**
     * Makes an empty tally.
     *
     * @param pairs where the statistics go
     * @param names the columns to copy
     * @param columns where they go, shared by the tallies of a run on one thread
     */
    ChunkTally(PairTally pairs, List<String> names, double[][] columns) {
        this.pairs = pairs;
        this.names = names;
        this.columns = columns;
    }

    PairTally pairs() {
        return pairs;
    }

    @Override
    public void add(RowBlock rows) {
        int at = (int) (rows.firstIndex() % Plan.CHUNK);
        for (int c = 0; c < columns.length; c++) {
            System.arraycopy(rows.column(names.get(c)), 0, columns[c], at, rows.count());
        }
        pairs.add(rows);
    }

    @Override
    public void absorb(ChunkTally later) {
        pairs.absorb(later.pairs);
    }

    @Override
    public void clear() {
        pairs.clear();
    }
}
