package io.github.stoplag.sight;

/**
 * The response of an eye carried along a flash that is straight between its nodes, in a fixed number of sums a node.
 *
 * <pre>
 *   i(t) = Σ r,   r(t + d) = r(t) e^(−p d) + w ∫ I(t + d − u) e^(−p u) du over u from 0 to d
 *   exponential eye, q = e^(−u/a)/a:  one term, p = w = 1/a, exact
 *   hyperbolic eye, q = a/(a + u)²:   p = e^x/a, w = h p e^(−a p) a p, x = k h, k whole
 * </pre>
 *
 * <p>a/(a + u)² = a ∫ p e^(−p (a + u)) dp, taken by the trapezoidal rule in x = ln(a p). The step h = 0.3 leaves a
 * relative error of 2 |Γ(2 + 2πi/h)| = 2.5e-12 at any u, and the cut ends of the sum at most 1e-12 each up to the
 * duration of the flash. The terms are positive and light is not negative, so the response has the kernel's relative
 * error: below 1e-11.
 *
 * <p>Symbols: i, I, r in cd; t, d, u in s; a time constant in s; p rate and w weight in 1/s. It remembers: one object a
 * flash.
 */
final class RunningResponse {
    private static final double STEP = 0.3;

    /** ln √(2e-12): below p = √(2e-12)/(a + u) the integral of a p dp is 1e-12 of a/(a + u)². */
    private static final double LOWEST = -13.5;

    /** ln 31: above a p = 31 the integral (1 + a p) e^(−a p) is 1e-12. */
    private static final double HIGHEST = 3.44;

    /** Below it the mean of u in the ramp term is taken from its series. */
    private static final double SMALL = 0.02;

    private final double[] ratePerS;
    private final double[] weightPerS;
    private final double[] partCd;

    private RunningResponse(double[] ratePerS, double[] weightPerS) {
        this.ratePerS = ratePerS;
        this.weightPerS = weightPerS;
        partCd = new double[ratePerS.length];
    }

    static RunningResponse exponential(double aS) {
        return new RunningResponse(new double[] {1 / aS}, new double[] {1 / aS});
    }

    static RunningResponse hyperbolic(double aS, double durationS) {
        int first = (int) Math.floor((LOWEST - Math.log1p(durationS / aS)) / STEP);
        int terms = (int) Math.ceil(HIGHEST / STEP) - first + 1;
        double[] rate = new double[terms];
        double[] weight = new double[terms];
        for (int k = 0; k < terms; k++) {
            double ap = Math.exp((first + k) * STEP);
            rate[k] = ap / aS;
            weight[k] = STEP * rate[k] * ap * Math.exp(-ap);
        }
        return new RunningResponse(rate, weight);
    }

    /** Carries on over a stretch in which the light goes in a straight line, and gives the response at its end. */
    double after(double stretchS, double fromCd, double toCd) {
        double sum = 0;
        for (int k = 0; k < partCd.length; k++) {
            double x = ratePerS[k] * stretchS;
            double loss = -Math.expm1(-x);
            double mean = loss / x;
            // the light at the end counts 1 − mean, that at the start mean − e^(−x), over p d
            double late = x < SMALL ? x * (0.5 - x / 6 * (1 - x / 4 * (1 - x / 5 * (1 - x / 6)))) : 1 - mean;
            double early = loss - late;
            partCd[k] += -partCd[k] * loss + weightPerS[k] / ratePerS[k] * (toCd * late + fromCd * early);
            sum += partCd[k];
        }
        return sum;
    }
}
