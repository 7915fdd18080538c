package io.github.stoplag.sweep;

import java.util.Arrays;
import java.util.List;

/** A model that computes row by row. */
record RowModel(List<String> inputs, List<String> outputs, Row row) implements Model {
    @Override
    public Evaluator evaluator() {
        double[] in = new double[inputs.size()];
        double[] out = new double[outputs.size()];
        return (count, inputColumns, outputColumns, rejects) -> {
            for (int i = 0; i < count; i++) {
                for (int c = 0; c < in.length; c++) {
                    in[c] = inputColumns[c][i];
                }
                // an output that is not set must not keep the last row's value
                Arrays.fill(out, Double.NaN);
                try {
                    row.compute(in, out);
                } catch (IllegalArgumentException e) {
                    rejects.reject(i, reason(e));
                }
                for (int c = 0; c < out.length; c++) {
                    outputColumns[c][i] = out[c];
                }
            }
        };
    }

    private static String reason(IllegalArgumentException e) {
        String message = String.valueOf(e.getMessage());
        int got = message.indexOf(", got");
        return got < 0 ? message : message.substring(0, got);
    }
}
