package io.github.stoplag.sweep;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.Objects;

/** Mean, variance, extremes and quantiles of one column. */
public final class ColumnTally implements SavableTally<ColumnTally> {
    private final String column;
    private final Moments moments = new Moments();
    private final QuantileSketch quantiles = new QuantileSketch();

    /**
     * Makes an empty tally.
     *
     * @param column an axis or an output of the model
     */
    public ColumnTally(String column) {
        Objects.requireNonNull(column, "column");
        this.column = column;
    }

    @Override
    public void add(RowBlock rows) {
        Objects.requireNonNull(rows, "rows");
        double[] values = rows.column(column);
        moments.add(values, rows.count());
        quantiles.add(values, rows.count());
    }

    @Override
    public void absorb(ColumnTally later) {
        Objects.requireNonNull(later, "later");
        moments.absorb(later.moments);
        quantiles.absorb(later.quantiles);
    }

    @Override
    public void clear() {
        moments.clear();
        quantiles.clear();
    }

    @Override
    public void save(DataOutput out) throws IOException {
        SavedState.save(out, "column statistics", content -> {
            SavedState.text(content, column);
            moments.save(content);
            quantiles.save(content);
        });
    }

    @Override
    public void restore(DataInput in) throws IOException {
        SavedState.restore(in, "column statistics", content -> {
            String saved = SavedState.text(content);
            if (!saved.equals(column)) {
                throw new IOException("saved statistics must be of column " + column + ", got " + saved);
            }
            moments.restore(content);
            quantiles.restore(content);
        });
    }

    /**
     * Gives count, mean, variance and extremes.
     *
     * @return the moments, in the column's unit
     */
    public Moments moments() {
        return moments;
    }

    /**
     * Gives the quantiles.
     *
     * @return the sketch, in the column's unit
     */
    public QuantileSketch quantiles() {
        return quantiles;
    }
}
