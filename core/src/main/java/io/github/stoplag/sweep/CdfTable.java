package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import java.util.function.DoubleUnaryOperator;

/**
 * A cumulative distribution function as cubic pieces over equal cells of each octave of x, for sweeps.
 *
 * <p>Accuracy: cells are halved until the error measured at five places of every cell is at most 10⁻⁹. Below the first
 * whole cell, above the last one, and where no table of 16,384 cells is that good, the exact function answers.
 */
final class CdfTable {
    private static final double WORST_ALLOWED = 1e-9;
    private static final int FEWEST_BITS = 5;
    private static final int MOST_CELLS = 1 << 14;
    private static final double TAIL = 0x1p-53;
    private static final double SMALLEST_SHARE_OF_LARGEST = 0x1p-60;

    private final DoubleUnaryOperator exact;
    private final int shift;
    private final double perCell;
    private final long first;
    private final int cells;
    private final double[] coefficients;

    private CdfTable(DoubleUnaryOperator exact, int bits, double from, double to) {
        this.exact = exact;
        shift = 52 - bits;
        perCell = 1.0 / (1L << shift);
        // whole cells only: a truncated distribution has kinks at its ends
        first = (Double.doubleToRawLongBits(from) >>> shift) + 1;
        cells = (int) Math.max(0, Math.min((Double.doubleToRawLongBits(to) >>> shift) - first, MOST_CELLS + 1));
        coefficients = new double[CubicFit.POINTS * cells];
    }

    /** Tabulates a distribution, or wraps its exact function where that is cheap or no table is good enough. */
    static CdfTable of(Distribution distribution) {
        DoubleUnaryOperator exact = distribution.cdfFunction();
        double to = distribution.upperQuantile(TAIL);
        if (distribution.tabulated() && to > 0) {
            double from = Math.max(distribution.quantile(TAIL), to * SMALLEST_SHARE_OF_LARGEST);
            for (int bits = FEWEST_BITS; ; bits++) {
                CdfTable table = new CdfTable(exact, bits, from, to);
                if (table.cells > MOST_CELLS) {
                    break;
                }
                if (table.fill() <= WORST_ALLOWED) {
                    return table;
                }
            }
        }
        return new CdfTable(exact, FEWEST_BITS, 1, 1);
    }

    /** Has the exact function answer everywhere: a table's error of 10⁻⁹ is too much for what is rarer. */
    static CdfTable exact(Distribution distribution) {
        return new CdfTable(distribution.cdfFunction(), FEWEST_BITS, 1, 1);
    }

    private double fill() {
        double worst = 0;
        for (int cell = 0; cell < cells && worst <= WORST_ALLOWED; cell++) {
            double from = Double.longBitsToDouble((first + cell) << shift);
            double width = Double.longBitsToDouble((first + cell + 1) << shift) - from;
            CubicFit.store(exact, from, width, coefficients, CubicFit.POINTS * cell);
            for (int k = 0; k <= 4; k++) {
                double x = from + width * Math.min(0.25 * k, 0.999);
                worst = Math.max(worst, Math.abs(cdf(x) - exact.applyAsDouble(x)));
            }
        }
        return worst;
    }

    /** F(x) within 10⁻⁹; 0 for x ≤ 0 only if F says so. */
    double cdf(double x) {
        long bits = Double.doubleToRawLongBits(x);
        long cell = (bits >>> shift) - first;
        if (cell < 0 || cell >= cells) {
            return exact.applyAsDouble(x);
        }
        double t = (bits & ((1L << shift) - 1)) * perCell;
        int at = CubicFit.POINTS * (int) cell;
        double[] c = coefficients;
        return c[at] + t * (c[at + 1] + t * (c[at + 2] + t * c[at + 3]));
    }
}
