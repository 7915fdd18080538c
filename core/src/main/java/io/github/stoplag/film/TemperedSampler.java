package io.github.stoplag.film;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Draws from a posterior by carrying a swarm of points from the prior to it in small steps of likelihood^β, β from 0 to
 * 1: reweight, draw anew, move each point some steps along differences of other points. Several separate peaks keep
 * their share, and the mean likelihood under the prior comes with it.
 *
 * <p>Sources: sequential Monte Carlo samplers, Del Moral, Doucet &amp; Jasra, J. R. Stat. Soc. B 68 (2006) 411; moves
 * along differences of a population, ter Braak, Stat. Comput. 16 (2006) 239 (both from memory).
 */
final class TemperedSampler {
    /** What is drawn from. */
    interface Target {
        int dimension();

        /** Fills in a point of the prior. */
        void drawPrior(SplittableRandom random, double[] point);

        /** The logarithm of the prior's density but for a constant; negative infinity outside. */
        double logPrior(double[] point);

        double logLikelihood(double[] point);
    }

    private static final double KEPT = 0.5;
    private static final int MOVES = 4;
    private static final int LAST_MOVES = 24;
    private static final int BATCHES = 3;
    private static final int MOVES_BETWEEN = 6;
    private static final int MOST_STAGES = 80;

    private final Target target;
    private final SplittableRandom random;
    private final int size;
    private double[][] points;
    private double[] logPrior;
    private double[] logLikelihood;
    private double logEvidence;
    private double reach = 1;

    private TemperedSampler(Target target, int size, long seed) {
        this.target = target;
        this.size = size;
        random = new SplittableRandom(seed);
        points = new double[size][target.dimension()];
        logPrior = new double[size];
        logLikelihood = new double[size];
    }

    /** Runs to the posterior. */
    static TemperedSampler run(Target target, int size, long seed) {
        TemperedSampler sampler = new TemperedSampler(target, size, seed);
        sampler.start();
        double beta = 0;
        for (int stage = 0; beta < 1; stage++) {
            double next = stage < MOST_STAGES ? sampler.nextBeta(beta) : 1;
            sampler.reweight(next - beta);
            beta = next;
            sampler.moves(beta, beta < 1 ? MOVES : LAST_MOVES);
        }
        return sampler;
    }

    /** Gives points equally likely under the posterior, in batches some moves apart. */
    List<double[]> draws() {
        List<double[]> draws = new ArrayList<>();
        for (int batch = 0; batch < BATCHES; batch++) {
            if (batch > 0) {
                moves(1, MOVES_BETWEEN);
            }
            draws.addAll(Arrays.asList(points));
        }
        return draws;
    }

    private void moves(double beta, int count) {
        for (int i = 0; i < count; i++) {
            move(beta);
        }
    }

    /** ln of the mean likelihood under the prior. */
    double logEvidence() {
        return logEvidence;
    }

    private void start() {
        for (int i = 0; i < size; i++) {
            target.drawPrior(random, points[i]);
            logPrior[i] = target.logPrior(points[i]);
            logLikelihood[i] = target.logLikelihood(points[i]);
        }
    }

    /** The step at which the weights still keep half the points. */
    private double nextBeta(double beta) {
        if (keptShare(1 - beta) >= KEPT) {
            return 1;
        }
        double lo = 0;
        double hi = 1 - beta;
        for (int i = 0; i < 60 && hi - lo > 1e-3 * hi; i++) {
            double mid = (lo + hi) / 2;
            if (keptShare(mid) >= KEPT) {
                lo = mid;
            } else {
                hi = mid;
            }
        }
        return beta + hi;
    }

    private double keptShare(double step) {
        double top = Arrays.stream(logLikelihood).max().orElseThrow();
        double sum = 0;
        double squares = 0;
        for (double log : logLikelihood) {
            double weight = Math.exp(step * (log - top));
            sum += weight;
            squares += weight * weight;
        }
        return sum * sum / squares / size;
    }

    private void reweight(double step) {
        double top = Arrays.stream(logLikelihood).max().orElseThrow();
        double[] cumulative = new double[size];
        double sum = 0;
        for (int i = 0; i < size; i++) {
            sum += Math.exp(step * (logLikelihood[i] - top));
            cumulative[i] = sum;
        }
        logEvidence += step * top + Math.log(sum / size);
        double[][] newPoints = new double[size][];
        double[] newPrior = new double[size];
        double[] newLikelihood = new double[size];
        double offset = random.nextDouble();
        int from = 0;
        for (int i = 0; i < size; i++) {
            double mark = (i + offset) / size * sum;
            while (from < size - 1 && cumulative[from] < mark) {
                from++;
            }
            newPoints[i] = points[from].clone();
            newPrior[i] = logPrior[from];
            newLikelihood[i] = logLikelihood[from];
        }
        points = newPoints;
        logPrior = newPrior;
        logLikelihood = newLikelihood;
    }

    /** Moves each point along the difference of two others of the swarm as it was before. */
    private void move(double beta) {
        double[][] old = points;
        double[][] moved = new double[size][];
        int dimension = target.dimension();
        double usual = reach * 2.38 / Math.sqrt(2.0 * dimension);
        int accepted = 0;
        int tried = 0;
        double[] proposal = new double[dimension];
        for (int i = 0; i < size; i++) {
            boolean far = random.nextDouble() < 0.1;
            double step = far ? 1 : usual * Math.exp(0.5 * random.nextGaussian());
            double[] a = old[random.nextInt(size)];
            double[] b = old[random.nextInt(size)];
            for (int k = 0; k < dimension; k++) {
                proposal[k] = old[i][k] + step * (a[k] - b[k]);
            }
            boolean taken = accept(i, proposal, beta);
            moved[i] = taken ? proposal.clone() : old[i];
            tried += far ? 0 : 1;
            accepted += taken && !far ? 1 : 0;
        }
        points = moved;
        double rate = accepted / Math.max(1.0, tried);
        reach = Math.min(1.5, Math.max(0.05, reach * Math.exp(rate - 0.25)));
    }

    private boolean accept(int i, double[] proposal, double beta) {
        double prior = target.logPrior(proposal);
        if (!(prior > Double.NEGATIVE_INFINITY)) {
            return false;
        }
        double likelihood = target.logLikelihood(proposal);
        double gain = prior - logPrior[i] + beta * (likelihood - logLikelihood[i]);
        if (!(Math.log(random.nextDouble()) < gain)) {
            return false;
        }
        logPrior[i] = prior;
        logLikelihood[i] = likelihood;
        return true;
    }
}
