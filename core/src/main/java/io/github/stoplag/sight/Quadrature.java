package io.github.stoplag.sight;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Gauss-Legendre on panels that are halved until they agree to a tolerance, and the crossing of a rising function. */
final class Quadrature {
    /** Largest change on halving a panel, relative to the final light; the error left is some 2⁻²⁰ of it. */
    static final double TOLERANCE = 1e-9;

    /** The longest a criterion waits for light to gather. */
    static final double LONGEST_S = 3600;

    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(10);
    private static final int DEEPEST_HALVING = 30;

    private Quadrature() {}

    static double integral(DoubleUnaryOperator f, double from, double to, double tolerance) {
        return halved(f, from, to, gauss(f, from, to), tolerance, DEEPEST_HALVING);
    }

    private static double halved(
            DoubleUnaryOperator f, double from, double to, double whole, double tolerance, int depth) {
        double mid = (from + to) / 2;
        double left = gauss(f, from, mid);
        double right = gauss(f, mid, to);
        if (depth == 0 || Math.abs(left + right - whole) <= tolerance) {
            return left + right;
        }
        return halved(f, from, mid, left, tolerance, depth - 1) + halved(f, mid, to, right, tolerance, depth - 1);
    }

    private static double gauss(DoubleUnaryOperator f, double from, double to) {
        double half = (to - from) / 2;
        double mid = (to + from) / 2;
        return half * RULE.integrate(x -> f.applyAsDouble(mid + half * x));
    }

    /** Finds where a function that never falls reaches a level, looking ahead in doubling steps. */
    static OptionalDouble firstAtS(DoubleUnaryOperator rising, double level, double fromS, double stepS) {
        double loS = fromS;
        if (rising.applyAsDouble(loS) >= level) {
            return OptionalDouble.of(loS);
        }
        for (double step = stepS; loS < LONGEST_S; step *= 2) {
            double hiS = Math.min(fromS + step, LONGEST_S);
            if (rising.applyAsDouble(hiS) >= level) {
                return OptionalDouble.of(
                        new BrentSolver(1e-15, 1e-12).solve(200, t -> rising.applyAsDouble(t) - level, loS, hiS));
            }
            loS = hiS;
        }
        return OptionalDouble.empty();
    }
}
