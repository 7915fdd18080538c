package io.github.stoplag.sweep;

import java.util.function.DoubleUnaryOperator;

/** The cubic through a function's values at the four Chebyshev points of a cell, for tables. */
final class CubicFit {
    static final int POINTS = 4;

    private CubicFit() {}

    /** Stores c₀ to c₃ of c₀ + c₁ x + c₂ x² + c₃ x³, x from 0 to 1 over the cell. */
    static void store(DoubleUnaryOperator function, double from, double width, double[] coefficients, int at) {
        double[] x = new double[POINTS];
        double[] divided = new double[POINTS];
        for (int k = 0; k < POINTS; k++) {
            x[k] = 0.5 - 0.5 * StrictMath.cos((2 * k + 1) * Math.PI / 8);
            divided[k] = function.applyAsDouble(from + width * x[k]);
        }
        for (int order = 1; order < POINTS; order++) {
            for (int k = POINTS - 1; k >= order; k--) {
                divided[k] = (divided[k] - divided[k - 1]) / (x[k] - x[k - order]);
            }
        }
        // Newton's form multiplied out, from the inside
        double[] c = {divided[3], 0, 0, 0};
        for (int k = 2; k >= 0; k--) {
            for (int j = 3; j > 0; j--) {
                c[j] = c[j - 1] - x[k] * c[j];
            }
            c[0] = divided[k] - x[k] * c[0];
        }
        System.arraycopy(c, 0, coefficients, at, POINTS);
    }
}
