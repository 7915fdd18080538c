package io.github.stoplag.film;

import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.apache.commons.math3.util.Pair;

/**
 * The parameters within bounds for which a sum of squares is least, by Levenberg-Marquardt with differences on both
 * sides, and the matrix (JᵀJ)⁻¹: their covariance where each residual has variance 1.
 *
 * <p>Source: Levenberg-Marquardt as in Moré, Lecture Notes in Mathematics 630 (1978) 105 (from memory); checked against
 * certified sets.
 */
final class LeastSquares {
    /** What is made small. */
    @FunctionalInterface
    interface Residuals {
        double[] of(double[] parameters);
    }

    /** The least sum of squares, where it lies and the derivatives of the residuals there. */
    record Solution(RealVector point, double sumOfSquares, RealMatrix jacobian) {
        /** {@return (JᵀJ)⁻¹} */
        RealMatrix covariance() {
            RealMatrix inverse =
                    new SingularValueDecomposition(jacobian).getSolver().getInverse();
            return inverse.multiply(inverse.transpose());
        }
    }

    private static final int MOST = 5000;

    private LeastSquares() {}

    /** Solves from a start; the residuals are differentiated over the steps given. */
    static Solution solve(Residuals residuals, double[] start, double[] step, double[] lo, double[] hi) {
        MultivariateJacobianFunction model = point -> {
            double[] at = point.toArray();
            return new Pair<>(new ArrayRealVector(residuals.of(at), false), jacobian(residuals, at, step, lo, hi));
        };
        try {
            Optimum optimum = new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(1e-14)
                    .withParameterRelativeTolerance(1e-12)
                    .optimize(new LeastSquaresBuilder()
                            .start(start)
                            .model(model)
                            .target(new double[residuals.of(start).length])
                            .parameterValidator(point -> clamped(point, lo, hi))
                            .maxEvaluations(MOST)
                            .maxIterations(MOST)
                            .build());
            double cost = optimum.getCost();
            return new Solution(optimum.getPoint(), cost * cost, optimum.getJacobian());
        } catch (MathIllegalStateException e) {
            throw new IllegalStateException("the fit does not settle within " + MOST + " steps from its start", e);
        }
    }

    private static RealVector clamped(RealVector point, double[] lo, double[] hi) {
        RealVector inside = point.copy();
        for (int k = 0; k < lo.length; k++) {
            inside.setEntry(k, Math.min(hi[k], Math.max(lo[k], point.getEntry(k))));
        }
        return inside;
    }

    private static RealMatrix jacobian(Residuals residuals, double[] at, double[] step, double[] lo, double[] hi) {
        double[][] columns = new double[at.length][];
        for (int k = 0; k < at.length; k++) {
            double[] point = at.clone();
            point[k] = Math.min(hi[k], at[k] + step[k]);
            double upper = point[k];
            double[] above = residuals.of(point);
            point[k] = Math.max(lo[k], at[k] - step[k]);
            double width = upper - point[k];
            double[] below = residuals.of(point);
            columns[k] = new double[above.length];
            for (int i = 0; i < above.length; i++) {
                // a parameter without room moves nothing
                columns[k][i] = width > 0 ? (above[i] - below[i]) / width : 0;
            }
        }
        return new Array2DRowRealMatrix(columns, false).transpose();
    }
}
