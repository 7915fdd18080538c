package io.github.stoplag.film;

/**
 * Light as dark level plus switched light times its share, y = a + b φ + noise: the weighted sums of a regression, and
 * the likelihood with a, b or both integrated out: a flat beforehand, b as likely in one decade as in another.
 */
final class LevelFit {
    /** Where shares differ by less than this, nothing tells a from b. */
    private static final double SINGULAR = 1e-9;

    private final double most;
    private double s0;
    private double s1;
    private double s2;
    private double t0;
    private double t1;
    private double u;
    private double logVariance;

    /** Prepares for a switched light of at most so much. */
    LevelFit(double most) {
        this.most = most;
    }

    void clear() {
        s0 = 0;
        s1 = 0;
        s2 = 0;
        t0 = 0;
        t1 = 0;
        u = 0;
        logVariance = 0;
    }

    void add(double weight, double phi, double value) {
        s0 += weight;
        s1 += weight * phi;
        s2 += weight * phi * phi;
        t0 += weight * value;
        t1 += weight * phi * value;
        u += weight * value * value;
    }

    /** Adds what a group of equal light says beyond its mean: logarithms of variances, scatter over variance. */
    void addScatter(double logOfVariances, double scatter) {
        logVariance += logOfVariances;
        u += scatter;
    }

    /** The logarithm of the likelihood; a level that is NaN is integrated out. */
    double logLikelihood(double dark, double switched) {
        if (Double.isNaN(dark)) {
            return Double.isNaN(switched) ? bothFree() : darkFree(switched);
        }
        return Double.isNaN(switched) ? switchedFree(dark) : -0.5 * (logVariance + rest(dark, switched));
    }

    private double rest(double a, double b) {
        return u - 2 * a * t0 - 2 * b * t1 + a * a * s0 + 2 * a * b * s1 + b * b * s2;
    }

    private double bothFree() {
        double det = s0 * s2 - s1 * s1;
        double b = (s0 * t1 - s1 * t0) / det;
        if (!(det > SINGULAR * s0 * s2 && b > 0 && b <= most)) {
            return -1e300;
        }
        double a = (s2 * t0 - s1 * t1) / det;
        return -0.5 * (logVariance + Math.log(det) + u - a * t0 - b * t1) - Math.log(b);
    }

    private double darkFree(double b) {
        return s0 > 0 ? -0.5 * (logVariance + Math.log(s0) + rest((t0 - b * s1) / s0, b)) : -1e300;
    }

    private double switchedFree(double a) {
        double b = (t1 - a * s1) / s2;
        return s2 > 0 && b > 0 && b <= most ? -0.5 * (logVariance + Math.log(s2) + rest(a, b)) - Math.log(b) : -1e300;
    }

    /** The most likely levels, those given kept, then their covariance: a, b, var a, cov, var b. */
    double[] levels(double dark, double switched) {
        if (Double.isNaN(dark) && Double.isNaN(switched)) {
            double det = s0 * s2 - s1 * s1;
            return new double[] {(s2 * t0 - s1 * t1) / det, (s0 * t1 - s1 * t0) / det, s2 / det, -s1 / det, s0 / det};
        }
        if (Double.isNaN(dark)) {
            return new double[] {(t0 - switched * s1) / s0, switched, 1 / s0, 0, 0};
        }
        return Double.isNaN(switched)
                ? new double[] {dark, (t1 - dark * s1) / s2, 0, 0, 1 / s2}
                : new double[] {dark, switched, 0, 0, 0};
    }
}
