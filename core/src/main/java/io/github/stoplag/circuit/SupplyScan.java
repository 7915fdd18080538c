package io.github.stoplag.circuit;

import java.util.function.DoubleUnaryOperator;

/** Searches a supply range for the place where a function of the supply is greatest. */
final class SupplyScan {
    private static final int FIRST_STEPS = 512;
    private static final int LATER_STEPS = 32;
    private static final int ROUNDS = 9;

    private SupplyScan() {}

    /**
     * Finds where a function is greatest: on 513 points, then ever closer around the best of them. A peak narrower than
     * a 512th of the range can be missed.
     */
    static double argMax(DoubleUnaryOperator f, double loV, double hiV) {
        double a = loV;
        double b = hiV;
        double best = loV;
        int steps = FIRST_STEPS;
        for (int round = 0; round < ROUNDS && b > a; round++) {
            double width = (b - a) / steps;
            for (int i = 0; i <= steps; i++) {
                double v = i == steps ? b : a + i * width;
                if (f.applyAsDouble(v) > f.applyAsDouble(best)) {
                    best = v;
                }
            }
            a = Math.max(loV, best - width);
            b = Math.min(hiV, best + width);
            steps = LATER_STEPS;
        }
        return best;
    }

    static double argMin(DoubleUnaryOperator f, double loV, double hiV) {
        return argMax(v -> -f.applyAsDouble(v), loV, hiV);
    }
}
