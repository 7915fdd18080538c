package io.github.stoplag.sweep;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;

/**
 * A polynomial through the values of a function at the Chebyshev points of a box, ends included.
 *
 * <p>p(x) = Σ c(j₁ … j_d) T_j₁(ξ₁) … T_j_d(ξ_d), ξ = (2 x − lo − hi)/(hi − lo); T_j the Chebyshev polynomials, the
 * values taken at ξ = cos(π i/n). Evaluated by Clenshaw's recurrence, axis by axis. The cosine is that of StrictMath:
 * the same bits everywhere.
 */
final class ChebyshevCell {
    private final double[] lo;
    private final double[] hi;
    private final int[] points;
    private final double[] coefficients;

    private ChebyshevCell(double[] lo, double[] hi, int[] points, double[] coefficients) {
        this.lo = lo;
        this.hi = hi;
        this.points = points;
        this.coefficients = coefficients;
    }

    /**
     * Interpolates.
     *
     * @param orders the degree along each axis
     * @return the polynomial; its coefficients are NaN if one of the values is
     */
    static ChebyshevCell of(double[] lo, double[] hi, int[] orders, ToDoubleFunction<double[]> function) {
        int[] points = Arrays.stream(orders).map(order -> order + 1).toArray();
        double[] values = new double[Arrays.stream(points).reduce(1, Math::multiplyExact)];
        double[] at = new double[lo.length];
        for (int i = 0; i < values.length; i++) {
            int rest = i;
            for (int axis = lo.length - 1; axis >= 0; axis--) {
                at[axis] = TableAxis.between(lo[axis], hi[axis], node(rest % points[axis], orders[axis]));
                rest /= points[axis];
            }
            values[i] = function.applyAsDouble(at);
        }
        int stride = values.length;
        for (int axis = 0; axis < lo.length; axis++) {
            stride /= points[axis];
            transform(values, points[axis], stride);
        }
        return new ChebyshevCell(lo.clone(), hi.clone(), points, values);
    }

    /** The coefficients of a function of one variable on [−1, 1]. */
    static double[] series(int order, ToDoubleFunction<Double> function) {
        double[] values = new double[order + 1];
        Arrays.setAll(values, i -> function.applyAsDouble(node(i, order)));
        transform(values, order + 1, 1);
        return values;
    }

    private static double node(int i, int order) {
        return order == 0 ? 0 : StrictMath.cos(Math.PI * i / order);
    }

    /** From values to coefficients along one axis: c_j = (2/n) Σ″ f_i cos(π i j/n), first and last halved. */
    private static void transform(double[] values, int points, int stride) {
        int order = points - 1;
        if (order == 0) {
            return;
        }
        double[] cosine = new double[2 * order];
        Arrays.setAll(cosine, i -> StrictMath.cos(Math.PI * i / order));
        double[] line = new double[points];
        for (int start = 0; start < values.length; start++) {
            if (start / stride % points != 0) {
                continue;
            }
            for (int i = 0; i < points; i++) {
                line[i] = (i == 0 || i == order ? 0.5 : 1) * values[start + i * stride];
            }
            for (int j = 0; j < points; j++) {
                double sum = 0;
                for (int i = 0; i < points; i++) {
                    sum += line[i] * cosine[i * j % (2 * order)];
                }
                values[start + j * stride] = (j == 0 || j == order ? 1.0 : 2.0) / order * sum;
            }
        }
    }

    int size() {
        return coefficients.length;
    }

    double[] coefficients() {
        return coefficients.clone();
    }

    /**
     * Evaluates.
     *
     * @param at a place in the box
     * @param scratch as long as {@link #size} at least
     */
    double value(double[] at, double[] scratch) {
        double[] from = coefficients;
        int rows = coefficients.length;
        for (int axis = points.length - 1; axis >= 0; axis--) {
            int n = points[axis];
            double xi = ((at[axis] - lo[axis]) - (hi[axis] - at[axis])) / (hi[axis] - lo[axis]);
            rows /= n;
            for (int row = 0; row < rows; row++) {
                // a row is read whole before its sum is written at or before its start
                scratch[row] = clenshaw(from, row * n, n, xi);
            }
            from = scratch;
        }
        return from[0];
    }

    private static double clenshaw(double[] c, int first, int n, double xi) {
        double twice = 2 * xi;
        double b1 = 0;
        double b2 = 0;
        for (int j = first + n - 1; j > first; j--) {
            double b = c[j] + twice * b1 - b2;
            b2 = b1;
            b1 = b;
        }
        return c[first] + xi * b1 - b2;
    }
}
