package io.github.stoplag.film;

import org.apache.commons.math3.special.Erf;

/** ln Φ(z) of the normal distribution from a table, to 1e-5. */
final class LogNormalTail {
    private static final double LOWEST = -12;
    private static final double HIGHEST = 8;
    private static final int PER_UNIT = 64;
    private static final double[] TABLE = new double[(int) ((HIGHEST - LOWEST) * PER_UNIT) + 2];

    static {
        for (int i = 0; i < TABLE.length; i++) {
            double z = LOWEST + (double) i / PER_UNIT;
            TABLE[i] = Math.log(0.5 * Erf.erfc(-z / Math.sqrt(2)));
        }
    }

    private LogNormalTail() {}

    static double logCumulative(double z) {
        if (z >= HIGHEST) {
            return 0;
        }
        if (!(z > LOWEST)) {
            // the first terms of the tail's asymptotic series
            return -z * z / 2 - Math.log(-z * Math.sqrt(2 * Math.PI)) + Math.log1p(-1 / (z * z));
        }
        double at = (z - LOWEST) * PER_UNIT;
        int below = (int) at;
        return TABLE[below] + (at - below) * (TABLE[below + 1] - TABLE[below]);
    }
}
