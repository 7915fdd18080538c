package io.github.stoplag.sweep;

/**
 * Another normal law for independent scores: z = m + A ε, A a lower triangle, with the weight φ(z) det A/φ(ε) that
 * keeps means without bias.
 */
final class Tilt {
    private static final double LEAST_SPREAD = 0.05;

    private final double[] centre;
    private final double[][] spread;

    private Tilt(double[] centre, double[][] spread) {
        this.centre = centre;
        this.spread = spread;
    }

    static Tilt none(int dimensions) {
        double[][] unit = new double[dimensions][dimensions];
        for (int d = 0; d < dimensions; d++) {
            unit[d][d] = 1;
        }
        return new Tilt(new double[dimensions], unit);
    }

    /**
     * Fits the mean and the covariance of weighted scores.
     *
     * @param widening a factor on the spread: a tilt narrower than what it samples has weights without bound
     */
    static Tilt fitted(int count, double[][] scores, double[] weight, double widening) {
        int n = scores.length;
        double[] mean = new double[n];
        double total = 0;
        for (int i = 0; i < count; i++) {
            total += weight[i];
            for (int d = 0; d < n; d++) {
                mean[d] += weight[i] * scores[d][i];
            }
        }
        for (int d = 0; d < n; d++) {
            mean[d] /= total;
        }
        double[][] lower = new double[n][n];
        for (int d = 0; d < n; d++) {
            for (int e = 0; e <= d; e++) {
                double sum = 0;
                for (int i = 0; i < count; i++) {
                    sum += weight[i] * (scores[d][i] - mean[d]) * (scores[e][i] - mean[e]);
                }
                double rest = widening * widening * sum / total;
                for (int k = 0; k < e; k++) {
                    rest -= lower[d][k] * lower[e][k];
                }
                lower[d][e] = d == e ? Math.max(LEAST_SPREAD, Math.sqrt(Math.max(0, rest))) : rest / lower[e][e];
            }
        }
        return new Tilt(mean, lower);
    }

    /** Turns independent standard scores into tilted ones, in place, and gives their weight. */
    double apply(double[] z) {
        double exponent = 0;
        double determinant = 1;
        for (double e : z) {
            exponent += 0.5 * e * e;
        }
        for (int d = z.length - 1; d >= 0; d--) {
            double sum = centre[d];
            for (int k = 0; k <= d; k++) {
                sum += spread[d][k] * z[k];
            }
            z[d] = sum;
            exponent -= 0.5 * sum * sum;
            determinant *= spread[d][d];
        }
        return determinant * StrictMath.exp(exponent);
    }
}
