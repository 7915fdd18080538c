package io.github.stoplag.film;

import java.util.SplittableRandom;

/**
 * How likely a film is, given a course of light: each bin of frames is the mean of the course over its exposures, plus
 * noise that grows with the light.
 *
 * <pre>
 *   Lᵢ = a + b φᵢ + noise,   φᵢ = mean of x over the exposures (1 − x for a lamp that goes out)
 *   variance = (vd + (vl − vd) φᵢ)/n + rounding² + jitter
 *   point: t of the middle level or of the centroid; ln rise time; ln vd; ln vl; the shape's patterns;
 *          [exposure over interval]; [pixel noise]; [how far black hides the dark]; [ln b]
 * </pre>
 *
 * <p>Dark level a and switched light b are integrated out in closed form; where
 * frames are clipped b, where they are crushed to black a is a coordinate, and such a frame says only that the light
 * was at least, or at most, that of the end of the scale. Frames wholly before or after the change share one rounding
 * error.
 */
final class CourseTarget implements TemperedSampler.Target {
    private static final int TIME = 0;
    private static final int RISE = 1;
    private static final int DARK = 2;
    private static final int LIT = 3;
    private static final int PATTERNS = 4;
    private static final double NOISE_SPREAD = 1.2;
    private static final double NOISE_REACH = 3;
    /** Where too few frames show the noise, or ends of the scale hide it. */
    private static final double HIDDEN_FACTOR = 1.7;

    /** Clipped frames hide their noise: several times that of the dark, or as much. */
    private static final double CLIPPED_NOISE = Math.log(8);

    /** How much brighter than the end of the scale, on a scale of logarithms, a clipped lamp is beforehand. */
    private static final double OVEREXPOSED = 0.7;

    private static final double BRIGHTEST = Math.log(30);
    /** How far below black, over the change, a crushed dark is beforehand, and at most. */
    private static final double CRUSHED = 0.06;

    private static final double DEEPEST = 0.4;
    /** How far above black, over the change, a dark lies of which noise makes some frames black. */
    private static final double SHALLOW = 0.2;

    private static final double SETTLED = 1 - 1e-6;
    private static final double LEAST_EXPOSURE = 0.02;

    private final FilmedLight film;
    private final ShapeFamily family;
    private final double exposureS;
    private final double jitterS;
    private final int exposureAt;
    private final int noiseAt;
    private final int darkAt;
    private final int amplitudeAt;
    private final int dimension;
    private final double logShortest;
    private final double logLongest;
    private final double logLeastAmplitude;
    private final double[] logNoise;
    private final double[] noiseFactor;
    private final LightSums sums;
    private final double[] logSpeed = new double[RiseShape.LEVELS.length];
    private final RiseShape shape = new RiseShape();
    private final LevelFit fit;
    private double boundLog;
    private double dark;
    private double switched;

    CourseTarget(FilmedLight film, Camera camera, ShapeFamily family) {
        this.film = film;
        this.family = family;
        jitterS = camera.jitter().inSeconds();
        exposureS = camera.exposure().map(e -> e.inSeconds()).orElse(Double.NaN);
        sums = new LightSums(film);
        int next = PATTERNS + family.patternCount();
        exposureAt = Double.isNaN(exposureS) ? next++ : -1;
        noiseAt = film.light.length > 1 ? next++ : -1;
        darkAt = film.anyCrushed ? next++ : -1;
        amplitudeAt = film.anyClipped ? next++ : -1;
        dimension = next;
        logShortest = Math.log(family.shortestS());
        logLongest = Math.log(family.longestS());
        logNoise = new double[] {Math.log(film.noiseVariance[0]), Math.log(film.noiseVariance[1])};
        noiseFactor = new double[] {film.noiseShown[0] ? 1 : HIDDEN_FACTOR, film.noiseShown[1] ? 1 : HIDDEN_FACTOR};
        if (film.brightBound && !film.darkBound) {
            logNoise[1] = logNoise[0] + CLIPPED_NOISE;
        }
        if (film.darkBound && !film.brightBound) {
            logNoise[0] = logNoise[1] - CLIPPED_NOISE;
        }
        logLeastAmplitude = Math.log(0.97 * sums.range());
        fit = new LevelFit(Math.exp(logLeastAmplitude + BRIGHTEST));
    }

    @Override
    public int dimension() {
        return dimension;
    }

    @Override
    public void drawPrior(SplittableRandom random, double[] point) {
        point[TIME] = film.earliestS + (film.latestS - film.earliestS) * random.nextDouble();
        point[RISE] = logShortest + (logLongest - logShortest) * random.nextDouble();
        point[DARK] = logNoise[0] + noiseFactor[0] * drawNoise(random);
        point[LIT] = logNoise[1] + noiseFactor[1] * drawNoise(random);
        for (int j = 0; j < family.patternCount(); j++) {
            point[PATTERNS + j] = random.nextGaussian();
        }
        if (exposureAt >= 0) {
            point[exposureAt] = LEAST_EXPOSURE + (1 - LEAST_EXPOSURE) * random.nextDouble();
        }
        if (noiseAt >= 0) {
            point[noiseAt] = (film.light.length - 1) * random.nextDouble();
        }
        if (darkAt >= 0) {
            // flat above black, exponential below
            boolean above = random.nextDouble() * (SHALLOW + CRUSHED) < SHALLOW;
            point[darkAt] =
                    above ? -SHALLOW / CRUSHED * random.nextDouble() : drawExponential(random, DEEPEST / CRUSHED);
        }
        if (amplitudeAt >= 0) {
            point[amplitudeAt] = logLeastAmplitude + OVEREXPOSED * drawExponential(random, BRIGHTEST / OVEREXPOSED);
        }
    }

    private static double drawExponential(SplittableRandom random, double most) {
        return -Math.log1p(Math.expm1(-most) * random.nextDouble());
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
                && Math.abs(p[DARK] - logNoise[0]) <= noiseFactor[0] * NOISE_REACH
                && Math.abs(p[LIT] - logNoise[1]) <= noiseFactor[1] * NOISE_REACH
                && (exposureAt < 0 || (p[exposureAt] >= LEAST_EXPOSURE && p[exposureAt] <= 1))
                && (noiseAt < 0 || (p[noiseAt] >= 0 && p[noiseAt] < film.light.length - 1))
                && (darkAt < 0 || (p[darkAt] >= -SHALLOW / CRUSHED && p[darkAt] <= DEEPEST / CRUSHED))
                && (amplitudeAt < 0
                        || (p[amplitudeAt] >= logLeastAmplitude && p[amplitudeAt] <= logLeastAmplitude + BRIGHTEST));
        if (!possible) {
            return Double.NEGATIVE_INFINITY;
        }
        double darkNoise = (p[DARK] - logNoise[0]) / (noiseFactor[0] * NOISE_SPREAD);
        double litNoise = (p[LIT] - logNoise[1]) / (noiseFactor[1] * NOISE_SPREAD);
        double squares = darkNoise * darkNoise + litNoise * litNoise;
        for (int j = 0; j < family.patternCount(); j++) {
            squares += p[PATTERNS + j] * p[PATTERNS + j];
        }
        return -squares / 2
                - (darkAt < 0 ? 0 : Math.max(0, p[darkAt]))
                - (amplitudeAt < 0 ? 0 : (p[amplitudeAt] - logLeastAmplitude) / OVEREXPOSED);
    }

    /** The shape of a point, for keeping. */
    RiseShape shape(double[] point) {
        family.logSpeed(point, PATTERNS, logSpeed);
        return new RiseShape().set(logSpeed);
    }

    /** The time of the middle level. */
    double middleS(double[] point, RiseShape of) {
        return point[TIME] - anchor(of) * riseS(point);
    }

    /**
     * From the middle level to what the first coordinate stands for, in rise times: within one frame a film tells the
     * centroid whatever the rise, over many frames the middle level.
     */
    private double anchor(RiseShape of) {
        return family.mayBeSudden() ? of.centroid() : 0;
    }

    static double riseS(double[] point) {
        return Math.exp(point[RISE]);
    }

    /** The exposure of a point over the frame interval, NaN if it is known. */
    double exposureRatio(double[] point) {
        return exposureAt < 0 ? Double.NaN : point[exposureAt];
    }

    @Override
    public double logLikelihood(double[] p) {
        collect(p);
        return fit.logLikelihood(dark, switched) + boundLog + sums.logSlopes();
    }

    /** Dark level and switched light most likely at a point, then their covariance: a, b, var a, cov, var b. */
    double[] levels(double[] p) {
        collect(p);
        double[] levels = fit.levels(dark, switched);
        levels[0] += sums.base();
        return levels;
    }

    private void collect(double[] p) {
        family.logSpeed(p, PATTERNS, logSpeed);
        shape.set(logSpeed);
        fit.clear();
        boundLog = 0;
        dark = darkAt < 0 ? Double.NaN : film.lowerBound - sums.base() - CRUSHED * film.contrast * p[darkAt];
        switched = amplitudeAt < 0 ? Double.NaN : Math.exp(p[amplitudeAt]);
        sums.noise(noiseAt < 0 ? 0 : p[noiseAt]);
        double riseS = Math.exp(p[RISE]);
        double windowS = exposureAt >= 0 ? p[exposureAt] * film.intervalS : exposureS;
        double middleS = middleS(p, shape);
        double startS = middleS + riseS * shape.start();
        double settledS = middleS + riseS * shape.timeTo(SETTLED);
        double reachS = sums.widestS(windowS) / 2 + 2 * jitterS;
        int first = sums.firstAfter(startS - reachS);
        int last = sums.firstAfter(settledS + reachS);
        double darkVariance = Math.exp(p[DARK] + 2 * sums.darkGain());
        double litVariance = Math.exp(p[LIT]);
        group(0, first, film.rising ? 0 : 1, film.rising ? darkVariance : litVariance);
        between(first, last, middleS, riseS, windowS, darkVariance, litVariance);
        group(last, film.size, film.rising ? 1 : 0, film.rising ? litVariance : darkVariance);
    }

    /** Frames that all show the same light: their mean has one rounding error, their scatter none. */
    private void group(int from, int to, double phi, double variance) {
        int bins = sums.bins(from, to);
        if (bins > 0) {
            double n = sums.frames(from, to);
            double mean = sums.mean(from, to);
            double ofMean = variance / n + film.roundingVariance[(from + to) / 2];
            fit.add(1 / ofMean, phi, mean);
            fit.addScatter((bins - 1) * Math.log(variance) + Math.log(ofMean * n), sums.scatter(from, to) / variance);
        }
        if (bins < to - from) {
            for (int kind = FilmedLight.AT_MOST; kind <= FilmedLight.AT_LEAST; kind += 2) {
                int held = sums.bounds(kind, from, to);
                if (held > 0) {
                    boundLog += held * logBound(kind, phi, variance + film.roundingVariance[(from + to) / 2]);
                }
            }
        }
    }

    /** How likely a frame is beyond an end of the scale; a level that is not a coordinate hardly matters there. */
    private double logBound(int kind, double phi, double variance) {
        double a = Double.isNaN(dark) ? 0 : dark;
        double b = Double.isNaN(switched) ? Math.exp(logLeastAmplitude) : switched;
        double at = (kind == FilmedLight.AT_LEAST ? film.upperBound : film.lowerBound) - sums.base();
        return LogNormalTail.logCumulative(kind * (a + b * phi - at) / Math.sqrt(variance));
    }

    private void between(
            int first,
            int last,
            double middleS,
            double riseS,
            double exposure,
            double darkVariance,
            double litVariance) {
        double product = 1;
        double excess = litVariance - darkVariance;
        boolean jitters = jitterS > 0;
        for (int i = first; i < last; i++) {
            double mid = (film.middleS[i] - middleS) / riseS;
            double half = 0.5 * Math.sqrt(film.spreadS2[i] + exposure * exposure) / riseS;
            double x = mean(mid, half);
            double scatter = 0;
            if (jitters) {
                double shift = Math.sqrt(3.0 / film.count[i]) * jitterS / riseS;
                double early = mean(mid - shift, half);
                double late = mean(mid + shift, half);
                double smooth = (4 * x + early + late) / 6;
                scatter = film.contrast
                        * film.contrast
                        * ((4 * x * x + early * early + late * late) / 6 - smooth * smooth);
                x = smooth;
            }
            double phi = film.rising ? x : 1 - x;
            double variance = (darkVariance + excess * phi) / film.count[i] + film.roundingVariance[i] + scatter;
            if (film.bound[i] == FilmedLight.FREE) {
                product *= variance * film.count[i];
                if (product < 1e-250) {
                    fit.addScatter(Math.log(product), 0);
                    product = 1;
                }
                fit.add(1 / variance, phi, sums.value(i));
            } else {
                boundLog += logBound(film.bound[i], phi, variance);
            }
        }
        fit.addScatter(Math.log(product), 0);
    }

    /** The mean of the course over a window, in rise times. */
    private double mean(double mid, double half) {
        double alpha = mid - half;
        double beta = mid + half;
        if (beta <= shape.start()) {
            return 0;
        }
        int late = shape.piece(beta);
        double early = alpha > shape.start() ? shape.area(alpha, shape.piece(alpha)) : 0;
        return Math.min(1, (shape.area(beta, late) - early) / (2 * half));
    }
}
