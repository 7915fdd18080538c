package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.sweep.ContactMap;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.RowBlock;
import io.github.stoplag.sweep.SavableTally;
import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;

/** What the program {@code sweep} gathers: statistics, a map of contacts, and rows on their way to files. */
final class SweepTally implements SavableTally<SweepTally> {
    private final PairTally pairs;
    private final ContactMap map;
    private final RowTally rows;

    SweepTally(PairModel model, ContactMap map, RowTally rows) {
        this.pairs = new PairTally(model);
        this.map = map;
        this.rows = rows;
    }

    PairTally pairs() {
        return pairs;
    }

    ContactMap map() {
        return map;
    }

    @Override
    public void add(RowBlock block) {
        pairs.add(block);
        map.add(block);
        rows.add(block);
    }

    @Override
    public void absorb(SweepTally later) {
        pairs.absorb(later.pairs);
        map.absorb(later.map);
        rows.absorb(later.rows);
    }

    @Override
    public void clear() {
        pairs.clear();
        map.clear();
        rows.clear();
    }

    @Override
    public void save(DataOutput out) throws IOException {
        pairs.save(out);
        map.save(out);
    }

    @Override
    public void restore(DataInput in) throws IOException {
        pairs.restore(in);
        map.restore(in);
    }
}
