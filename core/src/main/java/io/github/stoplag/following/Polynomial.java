package io.github.stoplag.following;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Real roots of low polynomials, coefficients from the constant up. */
final class Polynomial {
    private static final int MOST_EVALUATIONS = 500;

    private Polynomial() {}

    /** The ends 0 and length with the points inside, ascending. */
    static double[] cuts(double length, double... points) {
        DoubleStream inside = Arrays.stream(points).filter(point -> point > 0 && point < length);
        return DoubleStream.concat(DoubleStream.of(0, length), inside).sorted().toArray();
    }

    /** The real roots of p₀ + p₁ x + p₂ x², written without cancellation. */
    static double[] quadraticRoots(double p0, double p1, double p2) {
        if (p2 == 0) {
            return p1 == 0 ? new double[0] : new double[] {-p0 / p1};
        }
        double square = p1 * p1 - 4 * p0 * p2;
        if (!(square >= 0)) {
            return new double[0];
        }
        double q = -0.5 * (p1 + Math.copySign(Math.sqrt(square), p1));
        return q == 0 ? new double[] {0} : new double[] {q / p2, p0 / q};
    }

    /** The root between two points if the sign changes there; the polynomial is monotone between them. */
    static DoubleStream crossing(double[] p, double from, double to) {
        DoubleUnaryOperator value = x -> p[0] + x * (p[1] + x * (p[2] + x * p[3]));
        boolean changes = value.applyAsDouble(from) < 0 != value.applyAsDouble(to) < 0;
        return changes ? DoubleStream.of(root(value, from, to)) : DoubleStream.empty();
    }

    /** A root of a continuous function between two points at which it has different signs or is 0. */
    static double root(DoubleUnaryOperator function, double from, double to) {
        double middle = 0.5 * (from + to);
        if (!(middle > from && middle < to)) {
            return from;
        }
        return new BrentSolver(1e-14, 1e-15).solve(MOST_EVALUATIONS, function::applyAsDouble, from, to);
    }
}
