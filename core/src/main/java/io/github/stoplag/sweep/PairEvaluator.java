package io.github.stoplag.sweep;

import java.util.List;

/** The pair model on one thread: checks and derives columns, then runs the batch kernel once for each lamp. */
final class PairEvaluator implements Model.Evaluator {
    private final int lamps;
    private final boolean hasTimeGap;
    private final PairColumns pair;
    private final CheckedColumn gap;
    private final CheckedColumn timeGap;
    private final double[] none = new double[RowBlock.ROWS];
    private final double[] derivedGapM = new double[RowBlock.ROWS];

    PairEvaluator(List<String> inputs, int lamps) {
        this.lamps = lamps;
        pair = new PairColumns(inputs, lamps);
        hasTimeGap = inputs.contains("time_gap_s");
        gap = new CheckedColumn(inputs, "gap_m", 0, PairModel.LARGEST_GAP_M, "gap must be in [0, 1e5] m");
        timeGap = new CheckedColumn(
                inputs, "time_gap_s", 0, PairModel.LARGEST_TIME_GAP_S, "time gap must be in [0, 300] s");
    }

    @Override
    public void evaluate(int count, double[][] columns, double[][] outputs, Rejects rejects) {
        pair.take(count, columns, rejects);
        double[] gapM = gaps(count, columns, rejects);
        pair.limit(count, columns, rejects);
        for (int lamp = 0; lamp < lamps; lamp++) {
            double[] contact = outputs[4 * lamp];
            double[] closingMps = outputs[4 * lamp + 1];
            pair.outcomes(
                    lamp, count, columns, gapM, outputs[4 * lamp + 3], outputs[4 * lamp + 2], closingMps, rejects);
            for (int i = 0; i < count; i++) {
                // an int first, which needs no branch for the processor to guess
                int hit = closingMps[i] >= 0 ? 1 : 0;
                contact[i] = hit;
            }
        }
    }

    private double[] gaps(int count, double[][] columns, Rejects rejects) {
        if (!hasTimeGap) {
            return gap.take(columns, none, count, rejects);
        }
        double[] timeGapS = timeGap.take(columns, none, count, rejects);
        double[] followerMps = pair.followerMps();
        for (int i = 0; i < count; i++) {
            derivedGapM[i] = timeGapS[i] * followerMps[i];
        }
        return derivedGapM;
    }
}
