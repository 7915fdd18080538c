package io.github.stoplag.circuit;

import java.util.function.DoubleUnaryOperator;

/** Searches a range, of supplies or of currents, for the place where a function is greatest or least. */
final class Extremum {
    private static final int FIRST_STEPS = 512;
    private static final int LATER_STEPS = 32;
    private static final int ROUNDS = 9;

    private Extremum() {}

    /**
     * Finds where a function is greatest: on 513 points and the knots, then ever closer around the best of them. A
     * smooth peak narrower than a 512th of the range can be missed; one at a knot cannot.
     *
     * @param knots places where the function may turn sharply; those outside the range are passed over
     */
    static double argMax(DoubleUnaryOperator f, double lo, double hi, double... knots) {
        double a = lo;
        double b = hi;
        double best = lo;
        for (double knot : knots) {
            if (knot > lo && knot <= hi && f.applyAsDouble(knot) > f.applyAsDouble(best)) {
                best = knot;
            }
        }
        int steps = FIRST_STEPS;
        for (int round = 0; round < ROUNDS && b > a; round++) {
            double width = (b - a) / steps;
            for (int i = 0; i <= steps; i++) {
                double x = i == steps ? b : a + i * width;
                if (f.applyAsDouble(x) > f.applyAsDouble(best)) {
                    best = x;
                }
            }
            a = Math.max(lo, best - width);
            b = Math.min(hi, best + width);
            steps = LATER_STEPS;
        }
        return best;
    }

    static double argMin(DoubleUnaryOperator f, double lo, double hi, double... knots) {
        return argMax(x -> -f.applyAsDouble(x), lo, hi, knots);
    }
}
