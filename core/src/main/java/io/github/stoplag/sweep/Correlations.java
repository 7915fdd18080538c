package io.github.stoplag.sweep;

import java.util.List;

/** A matrix of correlation coefficients, and the triangle that makes correlated scores of independent ones. */
final class Correlations {
    private static final double ROUNDING = 1e-9;

    private final double[][] r;

    Correlations(int size) {
        r = new double[size][size];
        for (int i = 0; i < size; i++) {
            r[i][i] = 1;
        }
    }

    void set(int first, int second, double correlation) {
        r[first][second] = correlation;
        r[second][first] = correlation;
    }

    /**
     * Gives the lower triangle L with L Lᵀ = the matrix.
     *
     * @param names what the rows are called
     * @throws IllegalArgumentException if the correlations are not possible together
     */
    double[][] factor(List<String> names) {
        double[][] lower = new double[r.length][r.length];
        for (int i = 0; i < r.length; i++) {
            for (int j = 0; j <= i; j++) {
                double rest = r[i][j];
                for (int k = 0; k < j; k++) {
                    rest -= lower[i][k] * lower[j][k];
                }
                if (i == j) {
                    require(rest > -ROUNDING, names.get(i));
                    lower[i][i] = rest > ROUNDING ? Math.sqrt(rest) : 0;
                } else {
                    require(lower[j][j] > 0 || Math.abs(rest) < ROUNDING, names.get(i));
                    lower[i][j] = lower[j][j] > 0 ? rest / lower[j][j] : 0;
                }
            }
        }
        return lower;
    }

    private static void require(boolean possible, String name) {
        if (!possible) {
            throw new IllegalArgumentException(
                    "correlations must be possible together (a positive semidefinite matrix),"
                            + " got a contradiction at " + name);
        }
    }
}
