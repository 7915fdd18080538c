package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.quantity.Numbers;
import java.util.function.DoubleUnaryOperator;

/**
 * A quantile function as cubic pieces, for drawing by plain arithmetic: no logarithm, exponential, root or branch.
 *
 * <p>The tail t = min(u, 1 − u) from 2⁻⁵³ to ½ is cut into 52 octaves of 32 cells on either side, 3,328 in all, 104 kB;
 * in each the quantile is the cubic through four Chebyshev points of its cell.
 *
 * <p>Accuracy: measured against the exact function when the table is made, see {@link #largestRelativeError()}; a table
 * worse than 10⁻⁵ of the value's scale is refused. The exact path stays {@link Distribution#quantile(double)}.
 */
final class QuantileTable {
    private static final double LEAST = 0x1p-53;
    private static final int CELL_BITS = 5;
    private static final int OCTAVES = 52;
    private static final int CELLS = OCTAVES << CELL_BITS;
    private static final int SHIFT = 52 - CELL_BITS;
    private static final long LOWEST = Double.doubleToRawLongBits(LEAST) >>> SHIFT;
    private static final long POSITION = (1L << SHIFT) - 1;
    private static final double PER_CELL = 1.0 / (1L << SHIFT);
    private static final double WORST_ALLOWED = 1e-5;

    private final double[] coefficients;
    private final double largestRelativeError;

    private QuantileTable(Distribution distribution) {
        // one more cell on either side for t = ½ itself
        coefficients = new double[2 * CubicFit.POINTS * (CELLS + 1)];
        DoubleUnaryOperator lower = distribution.quantileFunction();
        DoubleUnaryOperator upper = distribution.upperQuantileFunction();
        double median = lower.applyAsDouble(0.5);
        double quartileRange = lower.applyAsDouble(0.75) - lower.applyAsDouble(0.25);
        double worst = 0;
        for (int side = 0; side < 2; side++) {
            for (int cell = 0; cell <= CELLS; cell++) {
                worst = Math.max(worst, fit(side == 0 ? lower : upper, side, cell, median, quartileRange));
            }
        }
        largestRelativeError = worst;
        if (!(worst <= WORST_ALLOWED)) {
            throw new IllegalArgumentException(
                    "quantile function of " + distribution + " is too sharp for a table: relative error " + worst);
        }
    }

    /**
     * Tabulates a distribution.
     *
     * @param distribution a distribution with a smooth quantile function
     * @return the table
     * @throws IllegalArgumentException if the table would be off by more than 10⁻⁵
     */
    public static QuantileTable of(Distribution distribution) {
        return new QuantileTable(distribution);
    }

    private double fit(DoubleUnaryOperator exact, int side, int cell, double median, double quartileRange) {
        double from = Double.longBitsToDouble((LOWEST + cell) << SHIFT);
        double width = Double.longBitsToDouble((LOWEST + cell + 1) << SHIFT) - from;
        CubicFit.store(exact, from, width, coefficients, CubicFit.POINTS * (side * (CELLS + 1) + cell));
        return worst(exact, side, from, width, median, quartileRange);
    }

    private double worst(
            DoubleUnaryOperator function, int side, double from, double width, double median, double quartileRange) {
        double worst = 0;
        for (int k = 0; k <= 4; k++) {
            double t = from + width * Math.min(0.25 * k, 0.999);
            if (t <= 0.5) {
                double exact = function.applyAsDouble(t);
                double scale = Math.max(Math.abs(exact), Math.max(Math.abs(exact - median), 0.01 * quartileRange));
                worst = Math.max(worst, Math.abs(at(side, t) - exact) / scale);
            }
        }
        return worst;
    }

    private double at(int side, double tail) {
        long bits = Double.doubleToRawLongBits(tail);
        int at = CubicFit.POINTS * (side * (CELLS + 1) + (int) ((bits >>> SHIFT) - LOWEST));
        double x = (bits & POSITION) * PER_CELL;
        double[] c = coefficients;
        return c[at] + x * (c[at + 1] + x * (c[at + 2] + x * c[at + 3]));
    }

    /**
     * Gives a quantile.
     *
     * @param probability the share below, [2⁻⁵³, 1 − 2⁻⁵³]
     * @return the value
     * @throws IllegalArgumentException if the probability is out of range
     */
    public double quantile(double probability) {
        if (!(probability >= LEAST && probability <= 1 - LEAST)) {
            throw new IllegalArgumentException(
                    "probability must be in [2^-53, 1 - 2^-53], got " + Numbers.text(probability));
        }
        return unchecked(probability);
    }

    private double unchecked(double probability) {
        // 1 where the probability exceeds one half
        int side = (int) (Double.doubleToRawLongBits(0.5 - probability) >>> 63);
        return at(side, Math.min(probability, 1 - probability));
    }

    /**
     * Turns uniform numbers into values in place.
     *
     * @param count how many
     * @param column uniform numbers in [2⁻⁵³, 1 − 2⁻⁵³], which is not checked, on entry; values on return
     */
    public void transform(int count, double[] column) {
        for (int i = 0; i < count; i++) {
            column[i] = unchecked(column[i]);
        }
    }

    /**
     * Gives the largest error found when the table was made, at five places of every cell, relative to the largest of
     * the value, its distance from the median and a hundredth of the interquartile range.
     *
     * @return the relative error
     */
    public double largestRelativeError() {
        return largestRelativeError;
    }
}
