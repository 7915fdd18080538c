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
 * <p>A flash is straight between nodes, so i(t) = Σ ΔI W(t − s) + Σ ΔI' V(t − s) over its nodes s, with the jump ΔI and
 * the change of slope ΔI' at each, W = ∫ q and V = ∫ W: exact, no quadrature. The greatest i is looked for along the
 * flash with {@link RunningResponse}, whose work grows with the number of nodes only, and worked out exactly where it
 * was found.
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

        @Override
        RunningResponse running(double a, double durationS) {
            return RunningResponse.exponential(a);
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

        @Override
        RunningResponse running(double a, double durationS) {
            return RunningResponse.hyperbolic(a, durationS);
        }
    };

    /** Points tried in all before the greatest is refined, at least two a segment. */
    private static final int POINTS = 400;

    /** Gives W(u). */
    abstract double step(double u, double a);

    /** Gives V(u). */
    abstract double ramp(double u, double a);

    /** Gives the response along a flash of a duration, dark so far. */
    abstract RunningResponse running(double a, double durationS);

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
        int bestAt =
                greatestPoint(flash, perSegment, running(a, flash.duration().inSeconds()));
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
        return Math.max(responseCd(flash, pointS(flash, bestAt, perSegment), a), refined);
    }

    private static int greatestPoint(Flash flash, int perSegment, RunningResponse running) {
        double best = 0;
        int bestAt = 0;
        for (int node = 0; node < flash.nodes() - 1; node++) {
            double fromCd = flash.rightCd(node);
            double riseCd = flash.leftCd(node + 1) - fromCd;
            double partS = (flash.timeS(node + 1) - flash.timeS(node)) / perSegment;
            for (int part = 1; part <= perSegment; part++) {
                double cd = running.after(
                        partS, fromCd + riseCd * (part - 1) / perSegment, fromCd + riseCd * part / perSegment);
                if (cd > best) {
                    best = cd;
                    bestAt = node * perSegment + part;
                }
            }
        }
        return bestAt;
    }

    private static double pointS(Flash flash, int k, int perSegment) {
        int node = k / perSegment;
        int part = k % perSegment;
        double fromS = flash.timeS(node);
        return part == 0 ? fromS : fromS + (flash.timeS(node + 1) - fromS) * part / perSegment;
    }
}
