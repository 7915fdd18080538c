package io.github.stoplag.film;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.math3.special.Erf;

/**
 * How likely a film is, given a course of light: each frame is the mean of the course over its exposure, plus noise
 * that grows with the light.
 *
 * <pre>
 *   Lᵢ = a + b φᵢ + noise,   φᵢ = mean of x over the exposure (1 − x for a lamp that goes out)
 *   variance = vd + (vl − vd) φᵢ + rounding² + (b φ'ᵢ jitter)²
 *   point: t of the middle level; ln rise time; ln vd; ln vl; the shape's patterns; [exposure over interval]; [ln b]
 * </pre>
 *
 * <p>Dark level a and switched light b are integrated out in closed form with a flat prior; where frames are clipped b
 * is a coordinate, and a clipped frame says only that the light was at least that. Frames wholly before or after the
 * change share one rounding error.
 */
final class CourseTarget implements TemperedSampler.Target {
    private static final int TIME = 0;
    private static final int RISE = 1;
    private static final int DARK = 2;
    private static final int LIT = 3;
    private static final int PATTERNS = 4;
    private static final double NOISE_SPREAD = 1.2;
    private static final double NOISE_REACH = 3;
    /**
     * Where the lit frames are clipped their noise shows only in the rise: several times that of the dark, or as much.
     */
    private static final double HIDDEN_NOISE = Math.log(8);

    private static final double HIDDEN_FACTOR = 1.7;
    /** How much brighter than the end of the scale, on a scale of logarithms, a clipped lamp is beforehand. */
    private static final double OVEREXPOSED = 0.7;

    private static final double SETTLED = 1 - 1e-6;
    private static final double BRIGHTEST = Math.log(30);

    private final FilmedLight film;
    private final ShapeFamily family;
    private final double exposureS;
    private final double jitterS;
    private final int exposureAt;
    private final int amplitudeAt;
    private final int dimension;
    private final double logShortest;
    private final double logLongest;
    private final double logLeastAmplitude;
    private final double[] logNoise;
    private final double litFactor;
    private final double[] logSpeed = new double[RiseShape.LEVELS.length];
    private final RiseShape shape = new RiseShape();
    private final double[] offset;
    private final double base;
    private final double[] sum;
    private final double[] sumSquares;
    private final int[] free;
    private final double[] share;

    // sums of the weighted regression of the last point
    private double s0;
    private double s1;
    private double s2;
    private double t0;
    private double t1;
    private double u;
    private double logVariance;

    CourseTarget(FilmedLight film, Camera camera, ShapeFamily family) {
        this.film = film;
        this.family = family;
        jitterS = camera.jitter().inSeconds();
        exposureS = camera.exposure().map(e -> e.inSeconds()).orElse(Double.NaN);
        int next = PATTERNS + family.patternCount();
        exposureAt = Double.isNaN(exposureS) ? next++ : -1;
        amplitudeAt = film.anyBound ? next++ : -1;
        dimension = next;
        logShortest = Math.log(family.shortestS());
        logLongest = Math.log(family.longestS());
        logNoise = new double[] {Math.log(film.scatterVariance[0]), Math.log(film.scatterVariance[1])};
        if (!film.rising) {
            double swap = logNoise[0];
            logNoise[0] = logNoise[1];
            logNoise[1] = swap;
        }
        if (film.brightBound) {
            logNoise[1] = logNoise[0] + HIDDEN_NOISE;
        }
        litFactor = film.brightBound ? HIDDEN_FACTOR : 1;
        base = Arrays.stream(film.light).min().orElseThrow();
        logLeastAmplitude = Math.log(0.97 * (Arrays.stream(film.light).max().orElseThrow() - base));
        offset = Arrays.stream(film.light).map(l -> l - base).toArray();
        sum = new double[film.size + 1];
        sumSquares = new double[film.size + 1];
        free = new int[film.size + 1];
        share = new double[film.size];
        for (int i = 0; i < film.size; i++) {
            double value = film.bound[i] ? 0 : offset[i];
            sum[i + 1] = sum[i] + value;
            sumSquares[i + 1] = sumSquares[i] + value * value;
            free[i + 1] = free[i] + (film.bound[i] ? 0 : 1);
        }
    }

    @Override
    public int dimension() {
        return dimension;
    }

    @Override
    public void drawPrior(SplittableRandom random, double[] point) {
        point[TIME] = film.earliestS + (film.latestS - film.earliestS) * random.nextDouble();
        point[RISE] = logShortest + (logLongest - logShortest) * random.nextDouble();
        point[DARK] = logNoise[0] + drawNoise(random);
        point[LIT] = logNoise[1] + litFactor * drawNoise(random);
        for (int j = 0; j < family.patternCount(); j++) {
            point[PATTERNS + j] = random.nextGaussian();
        }
        if (exposureAt >= 0) {
            point[exposureAt] = 0.02 + 0.98 * random.nextDouble();
        }
        if (amplitudeAt >= 0) {
            double most = -Math.expm1(-BRIGHTEST / OVEREXPOSED);
            point[amplitudeAt] = logLeastAmplitude - OVEREXPOSED * Math.log1p(-most * random.nextDouble());
        }
    }

    private static double drawNoise(SplittableRandom random) {
        double z = random.nextGaussian();
        while (Math.abs(NOISE_SPREAD * z) > NOISE_REACH) {
            z = random.nextGaussian();
        }
        return NOISE_SPREAD * z;
    }

    @Override
    public double logPrior(double[] p) {
        boolean possible = p[TIME] >= film.earliestS
                && p[TIME] <= film.latestS
                && p[RISE] >= logShortest
                && p[RISE] <= logLongest
                && Math.abs(p[DARK] - logNoise[0]) <= NOISE_REACH
                && Math.abs(p[LIT] - logNoise[1]) <= litFactor * NOISE_REACH
                && (exposureAt < 0 || (p[exposureAt] >= 0.02 && p[exposureAt] <= 1))
                && (amplitudeAt < 0
                        || (p[amplitudeAt] >= logLeastAmplitude && p[amplitudeAt] <= logLeastAmplitude + BRIGHTEST));
        if (!possible) {
            return Double.NEGATIVE_INFINITY;
        }
        double dark = (p[DARK] - logNoise[0]) / NOISE_SPREAD;
        double lit = (p[LIT] - logNoise[1]) / (litFactor * NOISE_SPREAD);
        double squares = dark * dark + lit * lit;
        for (int j = 0; j < family.patternCount(); j++) {
            squares += p[PATTERNS + j] * p[PATTERNS + j];
        }
        return -squares / 2 - (amplitudeAt < 0 ? 0 : (p[amplitudeAt] - logLeastAmplitude) / OVEREXPOSED);
    }

    /** The shape of a point, for keeping. */
    RiseShape shape(double[] point) {
        family.logSpeed(point, PATTERNS, logSpeed);
        return new RiseShape().set(logSpeed);
    }

    static double middleS(double[] point) {
        return point[TIME];
    }

    static double riseS(double[] point) {
        return Math.exp(point[RISE]);
    }

    @Override
    public double logLikelihood(double[] p) {
        collect(p);
        if (amplitudeAt < 0) {
            double det = s0 * s2 - s1 * s1;
            double b = (s0 * t1 - s1 * t0) / det;
            if (!(det > 0 && b > 0)) {
                return -1e300;
            }
            double a = (s2 * t0 - s1 * t1) / det;
            return -0.5 * (logVariance + Math.log(det) + u - a * t0 - b * t1);
        }
        if (!(s0 > 0)) {
            return -1e300;
        }
        double b = Math.exp(p[amplitudeAt]);
        double a = (t0 - b * s1) / s0;
        double rest = u - 2 * b * t1 + b * b * s2 - a * a * s0;
        return -0.5 * (logVariance + Math.log(s0) + rest) + boundLikelihood(p, a, b);
    }

    private double boundLikelihood(double[] p, double a, double b) {
        double dark = Math.exp(p[DARK]);
        double lit = Math.exp(p[LIT]);
        double log = 0;
        for (int i = 0; i < film.size; i++) {
            if (film.bound[i]) {
                double variance = dark + (lit - dark) * share[i] + film.roundingVariance[i];
                double z = (a + b * share[i] - (film.boundLight - base)) / Math.sqrt(variance);
                log += z > 6 ? 0 : z < -30 ? -z * z / 2 : Math.log(0.5 * Erf.erfc(-z / Math.sqrt(2)));
            }
        }
        return log;
    }

    /** Dark level and switched light most likely at a point, then their covariance: a, b, var a, cov, var b. */
    double[] levels(double[] p) {
        collect(p);
        if (amplitudeAt >= 0) {
            double b = Math.exp(p[amplitudeAt]);
            return new double[] {base + (t0 - b * s1) / s0, b, 1 / s0, 0, 0};
        }
        double det = s0 * s2 - s1 * s1;
        return new double[] {base + (s2 * t0 - s1 * t1) / det, (s0 * t1 - s1 * t0) / det, s2 / det, -s1 / det, s0 / det
        };
    }

    private void collect(double[] p) {
        family.logSpeed(p, PATTERNS, logSpeed);
        shape.set(logSpeed);
        s0 = 0;
        s1 = 0;
        s2 = 0;
        t0 = 0;
        t1 = 0;
        u = 0;
        logVariance = 0;
        double riseS = Math.exp(p[RISE]);
        double halfS = (exposureAt >= 0 ? p[exposureAt] * film.intervalS : exposureS) / 2;
        double startS = p[TIME] + riseS * shape.start();
        double settledS = p[TIME] + riseS * shape.timeTo(SETTLED);
        int first = firstAfter(startS - halfS);
        int last = firstAfter(settledS + halfS);
        double dark = Math.exp(p[DARK]);
        double lit = Math.exp(p[LIT]);
        group(0, first, film.rising ? 0 : 1, film.rising ? dark : lit);
        between(first, last, p[TIME], riseS, halfS, dark, lit);
        group(last, film.size, film.rising ? 1 : 0, film.rising ? lit : dark);
    }

    private int firstAfter(double timeS) {
        int found = Arrays.binarySearch(film.middleS, timeS);
        return found >= 0 ? found : -found - 1;
    }

    /** Frames that all show the same light: their mean has one rounding error, their scatter none. */
    private void group(int from, int to, double phi, double variance) {
        int n = free[to] - free[from];
        if (film.anyBound) {
            Arrays.fill(share, from, to, phi);
        }
        if (n == 0) {
            return;
        }
        double total = sum[to] - sum[from];
        double mean = total / n;
        double scatter = Math.max(0, sumSquares[to] - sumSquares[from] - total * mean);
        double ofMean = variance / n + film.roundingVariance[(from + to) / 2];
        logVariance += (n - 1) * Math.log(variance) + Math.log(ofMean * n);
        add(1 / ofMean, phi, mean);
        u += scatter / variance;
    }

    private void add(double weight, double phi, double value) {
        s0 += weight;
        s1 += weight * phi;
        s2 += weight * phi * phi;
        t0 += weight * value;
        t1 += weight * phi * value;
        u += weight * value * value;
    }

    private void between(int first, int last, double middleS, double riseS, double halfS, double dark, double lit) {
        double half = halfS / riseS;
        double slopeFactor = film.contrast * jitterS / (2 * halfS);
        double product = 1;
        int early = -1;
        int late = 0;
        for (int i = first; i < last; i++) {
            double mid = (film.middleS[i] - middleS) / riseS;
            double alpha = mid - half;
            double beta = mid + half;
            early = alpha > shape.start() ? shape.piece(alpha, Math.max(0, early)) : -1;
            late = shape.piece(beta, late);
            double x = (shape.area(beta, late) - shape.area(alpha, early)) / (2 * half);
            double phi = film.rising ? x : 1 - x;
            share[i] = phi;
            if (!film.bound[i]) {
                double variance = dark + (lit - dark) * phi + film.roundingVariance[i];
                if (jitterS > 0) {
                    double step = slopeFactor * (shape.level(beta, late) - shape.level(alpha, early));
                    variance += step * step;
                }
                product *= variance;
                if (product < 1e-250) {
                    logVariance += Math.log(product);
                    product = 1;
                }
                add(1 / variance, phi, offset[i]);
            }
        }
        logVariance += Math.log(product);
    }
}
