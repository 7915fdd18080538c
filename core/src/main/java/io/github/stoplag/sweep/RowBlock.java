package io.github.stoplag.sweep;

import java.util.List;

/**
 * Up to 1024 consecutive rows of a chunk as columns, few enough to stay in the processor's cache; the arrays are reused
 * for later rows.
 */
public final class RowBlock {
    static final int ROWS = 1024;

    private final List<String> inputColumns;
    private final List<String> outputColumns;
    private final double[][] inputs;
    private final double[][] outputs;
    private final Rejects rejects;
    private long firstIndex;
    private int count;

    RowBlock(List<String> inputColumns, List<String> outputColumns, int rows, Rejects rejects) {
        this.inputColumns = inputColumns;
        this.outputColumns = outputColumns;
        this.rejects = rejects;
        inputs = new double[inputColumns.size()][rows];
        outputs = new double[outputColumns.size()][rows];
    }

    void begin(long newFirstIndex, int newCount) {
        firstIndex = newFirstIndex;
        count = newCount;
    }

    double[][] inputs() {
        return inputs;
    }

    double[][] outputs() {
        return outputs;
    }

    /**
     * Gives the scenario of row 0.
     *
     * @return its index in the plan
     */
    public long firstIndex() {
        return firstIndex;
    }

    /**
     * Gives the number of rows.
     *
     * @return how many elements of each column count
     */
    public int count() {
        return count;
    }

    /**
     * Gives a column by name.
     *
     * @param column an axis or an output of the model
     * @return its values, the first {@link #count()} of them; not to be changed or kept
     * @throws IllegalArgumentException if there is no such column
     */
    public double[] column(String column) {
        int input = inputColumns.indexOf(column);
        if (input >= 0) {
            return inputs[input];
        }
        int output = outputColumns.indexOf(column);
        if (output < 0) {
            throw new IllegalArgumentException(
                    "column must be one of " + inputColumns + " or " + outputColumns + ", got " + column);
        }
        return outputs[output];
    }

    /**
     * Says whether any row was rejected.
     *
     * @return true if at least one was
     */
    public boolean hasRejects() {
        return rejects.any();
    }

    /**
     * Says whether a row was rejected.
     *
     * @param row the row
     * @return true if its inputs are no possible combination
     */
    public boolean isRejected(int row) {
        return rejects.isRejected(row);
    }
}
