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

    PairEvaluator(List<String> inputs, List<String> lamps) {
        this.lamps = lamps.size();
        pair = new PairColumns(inputs, lamps);
        hasTimeGap = inputs.contains(PairColumn.TIME_GAP.column());
        gap = new CheckedColumn(inputs, PairColumn.GAP);
        timeGap = new CheckedColumn(inputs, PairColumn.TIME_GAP);
    }

    @Override
    public void evaluate(int count, double[][] columns, double[][] outputs, Rejects rejects) {
        pair.take(count, columns, rejects);
        double[] gapM = gaps(count, columns, rejects);
        pair.limit(count, columns, rejects);
        for (int lamp = 0; lamp < lamps; lamp++) {
            double[] contact = PairOutput.CONTACT.of(outputs, lamp);
            double[] closingMps = PairOutput.CLOSING_SPEED.of(outputs, lamp);
            double[] smallestGapM = PairOutput.SMALLEST_GAP.of(outputs, lamp);
            double[] timeS = PairOutput.EVENT_TIME.of(outputs, lamp);
            pair.outcomes(lamp, count, columns, gapM, timeS, smallestGapM, closingMps, rejects);
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
