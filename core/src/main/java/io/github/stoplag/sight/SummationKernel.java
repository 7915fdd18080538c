package io.github.stoplag.sight;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * How the eye weighs past light: i(t) = ∫ I(t − u) q(u) du with ∫ q du = 1.
 *
 * <p>A flash is straight between nodes, so i(t) = Σ ΔI W(t − s) + Σ ΔI' V(t − s) over its nodes s, with the jump ΔI and the
 * change of slope ΔI' at each, W = ∫ q and V = ∫ W: exact, no quadrature.
 *
 * <p>Symbols: i, I in cd; q in 1/s; W a plain ratio; V in s; a the time constant in s.
 */
enum SummationKernel {
    /** q = e^(−u/a)/a. */
    EXPONENTIAL {
        @Override
        double step(double u, double a) {
            return -Math.expm1(-u / a);
        }

        @Override
        double ramp(double u, double a) {
            return u + a * Math.expm1(-u / a);
        }
    },
    /** q = a/(a + u)². */
    HYPERBOLIC {
        @Override
        double step(double u, double a) {
            return u / (a + u);
        }

        @Override
        double ramp(double u, double a) {
            return u - a * Math.log1p(u / a);
        }
    };

    /** Points tried in all before the greatest is refined, at least two a segment. */
    private static final int POINTS = 400;

    /** Gives W(u). */
    abstract double step(double u, double a);

    /** Gives V(u). */
    abstract double ramp(double u, double a);

    double responseCd(Flash flash, double timeS, double a) {
        double sum = 0;
        for (int i = 0; i < flash.nodes() && flash.timeS(i) < timeS; i++) {
            double u = timeS - flash.timeS(i);
            sum += (flash.rightCd(i) - flash.leftCd(i)) * step(u, a);
            sum += (flash.slopeCdPerS(i) - flash.slopeCdPerS(i - 1)) * ramp(u, a);
        }
        return Math.max(0, sum); // rounding alone makes it negative
    }

    /** Gives max i(t); once the light is out the response only falls. */
    double greatestCd(Flash flash, double a) {
        int segments = flash.nodes() - 1;
        int perSegment = Math.max(2, POINTS / segments);
        int points = segments * perSegment;
        double best = 0;
        int bestAt = 0;
        for (int k = 1; k <= points; k++) {
            double cd = responseCd(flash, pointS(flash, k, perSegment), a);
            if (cd > best) {
                best = cd;
                bestAt = k;
            }
        }
        UnivariateFunction response = t -> responseCd(flash, t, a);
        double refined = new BrentOptimizer(1e-10, 1e-14)
                .optimize(
                        new MaxEval(500),
                        GoalType.MAXIMIZE,
                        new UnivariateObjectiveFunction(response),
                        new SearchInterval(
                                pointS(flash, Math.max(0, bestAt - 1), perSegment),
                                pointS(flash, Math.min(points, bestAt + 1), perSegment)))
                .getValue();
        return Math.max(best, refined);
    }

    private static double pointS(Flash flash, int k, int perSegment) {
        int node = k / perSegment;
        int part = k % perSegment;
        double fromS = flash.timeS(node);
        return part == 0 ? fromS : fromS + (flash.timeS(node + 1) - fromS) * part / perSegment;
    }
}
