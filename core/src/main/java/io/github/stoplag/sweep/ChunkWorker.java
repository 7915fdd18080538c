package io.github.stoplag.sweep;

import java.util.List;

/** One thread's arrays and evaluator. */
final class ChunkWorker {
    private final Plan plan;
    private final Scenarios scenarios;
    private final Model.Evaluator evaluator;
    private final Rejects rejects;
    private final RowBlock block;
    // the block's input arrays in the order the model wants them
    private final double[][] modelInputs;

    ChunkWorker(Plan plan, Scenarios scenarios, Model model) {
        this.plan = plan;
        this.scenarios = scenarios;
        evaluator = model.evaluator();
        int rows = (int) Math.min(RowBlock.ROWS, plan.size());
        rejects = new Rejects(plan.columns(), rows);
        block = new RowBlock(plan.columns(), model.outputs(), rows, rejects);
        modelInputs = model.inputs().stream()
                .map(column -> block.inputs()[plan.columns().indexOf(column)])
                .toArray(double[][]::new);
    }

    List<Rejects.Entry> compute(long index, Tally<?> tally) {
        long first = index * Plan.CHUNK;
        int count = plan.chunkSize(index);
        rejects.beginChunk();
        for (int row = 0; row < count; row += RowBlock.ROWS) {
            rows(first + row, Math.min(RowBlock.ROWS, count - row), tally);
        }
        return rejects.entries();
    }

    private void rows(long first, int count, Tally<?> tally) {
        block.begin(first, count);
        scenarios.fill(first, count, block.inputs());
        rejects.beginRows(first, block.inputs());
        try {
            evaluator.evaluate(count, modelInputs, block.outputs(), rejects);
        } catch (RuntimeException e) {
            throw named(first, count, e);
        }
        if (rejects.any()) {
            blankRejected(count);
        }
        tally.add(block);
    }

    private void blankRejected(int count) {
        for (double[] output : block.outputs()) {
            for (int i = 0; i < count; i++) {
                output[i] = rejects.isRejected(i) ? Double.NaN : output[i];
            }
        }
    }

    /** Computes the rows one by one to find the one that fails. */
    private IllegalStateException named(long first, int count, RuntimeException e) {
        double[][] in = new double[modelInputs.length][1];
        double[][] out = new double[block.outputs().length][1];
        for (int row = 0; row < count; row++) {
            for (int c = 0; c < in.length; c++) {
                in[c][0] = modelInputs[c][row];
            }
            try {
                evaluator.evaluate(1, in, out, new Rejects(plan.columns(), 1));
            } catch (RuntimeException single) {
                return new IllegalStateException(
                        "scenario " + (first + row) + " failed with "
                                + Rejects.describe(plan.columns(), block.inputs(), row) + ": " + single.getMessage(),
                        single);
            }
        }
        return new IllegalStateException(
                "scenarios " + first + " to " + (first + count - 1) + " failed together: " + e.getMessage(), e);
    }
}
