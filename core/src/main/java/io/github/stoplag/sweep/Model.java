package io.github.stoplag.sweep;

import java.util.List;
import java.util.Objects;

/** What a sweep computes for each scenario: columns from columns. */
public interface Model {
    /**
     * Lists the columns it needs.
     *
     * @return names with units, in the order of the evaluator's inputs
     */
    List<String> inputs();

    /**
     * Lists the columns it gives.
     *
     * @return names with units, in the order of the evaluator's outputs
     */
    List<String> outputs();

    /**
     * Makes an evaluator with its own scratch, for one thread.
     *
     * @return the evaluator
     */
    Evaluator evaluator();

    /**
     * Gives the same model with a value where an output does not exist: a closing speed of 0 without contact, so that
     * its variance can be shared out over all scenarios.
     *
     * @param value the value in place of NaN
     * @return the model
     */
    default Model filledWith(double value) {
        return new FilledModel(this, value);
    }

    /** Computes rows; the same inputs must give the same bits. */
    @FunctionalInterface
    interface Evaluator {
        /**
         * Computes the first rows of a set of columns.
         *
         * @param count how many rows
         * @param inputs one array for each input column; not to be changed
         * @param outputs one array for each output column
         * @param rejects where rows whose inputs are no possible combination are reported; their outputs are then set
         *     to NaN
         */
        void evaluate(int count, double[][] inputs, double[][] outputs, Rejects rejects);
    }

    /** Computes one row. */
    @FunctionalInterface
    interface Row {
        /**
         * Computes one scenario.
         *
         * @param inputs one value for each input column
         * @param outputs where one value for each output column goes
         */
        void compute(double[] inputs, double[] outputs);
    }

    /**
     * Makes a model from a function of one scenario. Where the function throws IllegalArgumentException the row is
     * rejected, with the message up to {@code ", got"} as the reason. An output it leaves unset is NaN. NaN means that
     * the output does not exist in this scenario, as a closing speed without contact: statistics pass over it and it is
     * not counted as rejected.
     *
     * @param inputs the columns it needs
     * @param outputs the columns it gives
     * @param row the function, safe for several threads
     * @return the model
     */
    static Model ofRows(List<String> inputs, List<String> outputs, Row row) {
        Objects.requireNonNull(inputs, "inputs");
        Objects.requireNonNull(outputs, "outputs");
        Objects.requireNonNull(row, "row");
        return new RowModel(List.copyOf(inputs), List.copyOf(outputs), row);
    }
}
