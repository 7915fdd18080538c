package io.github.stoplag.film;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import java.util.Arrays;
import java.util.Objects;

/**
 * When a lamp's light passed some levels of its change, with the covariance of these times: what {@link FilamentFit}
 * fits a filament to.
 *
 * @param label the lamp's name
 * @param rising whether it came on
 * @param levelRatios the levels relative to the switched light, increasing for a lamp that comes on, decreasing for one
 *     that goes out, each in (0, 1)
 * @param timesS the time of each level in seconds
 * @param covarianceS2 their covariance in s²
 * @param zeroIsSwitch whether the times count from the moment the circuit was closed or opened; else that moment is
 *     fitted too
 * @param zeroU the standard uncertainty of that moment where it is known
 * @param evidence what the times rest on
 */
@SuppressWarnings("ArrayRecordComponent") // columns of numbers, copied on the way in
public record LevelTimes(
        String label,
        boolean rising,
        double[] levelRatios,
        double[] timesS,
        double[][] covarianceS2,
        boolean zeroIsSwitch,
        TimeSpan zeroU,
        Evidence evidence) {
    private static final double[] LEVELS = {0.03, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9};

    /**
     * Checks sizes and order.
     *
     * @param label the lamp's name
     * @param rising whether it came on
     * @param levelRatios the levels
     * @param timesS the time of each
     * @param covarianceS2 their covariance
     * @param zeroIsSwitch whether the times count from the switch
     * @param zeroU the standard uncertainty of that moment
     * @param evidence what the times rest on
     * @throws IllegalArgumentException if there are fewer than 2 levels, sizes differ, levels or times are out of order
     *     or range, or a variance is not positive
     */
    public LevelTimes {
        Objects.requireNonNull(covarianceS2, "covarianceS2");
        Objects.requireNonNull(evidence, "evidence");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(levelRatios, "levelRatios");
        Objects.requireNonNull(timesS, "timesS");
        Objects.requireNonNull(zeroU, "zeroU");
        int n = levelRatios.length;
        Check.inRange("levels of " + label, n, 2, 1000, "");
        if (timesS.length != n || covarianceS2.length != n) {
            throw new IllegalArgumentException("times and covariance of " + label + " must have one entry for each of "
                    + n + " levels, got " + timesS.length + " and " + covarianceS2.length);
        }
        for (int k = 0; k < n; k++) {
            Check.above("level " + k + " of " + label, levelRatios[k], 0, 0.9999, "");
            Check.inRange("time " + k + " of " + label, timesS[k], -1e6, 1e6, "s");
            if (k > 0 && !(timesS[k] > timesS[k - 1] && levelRatios[k] > levelRatios[k - 1] == rising)) {
                throw new IllegalArgumentException("levels of " + label + " must be in order of time, "
                        + (rising ? "rising" : "falling") + ", got level " + k + " out of order");
            }
            if (covarianceS2[k].length != n || !(covarianceS2[k][k] > 0)) {
                throw new IllegalArgumentException("covariance of " + label + " must be " + n + " by " + n
                        + " with positive variances, got row " + k + ": " + Arrays.toString(covarianceS2[k]));
            }
        }
        Check.inRange("standard uncertainty of the switch", zeroU.inSeconds(), 0, 10, "s");
        levelRatios = levelRatios.clone();
        timesS = timesS.clone();
        covarianceS2 = Arrays.stream(covarianceS2).map(double[]::clone).toArray(double[][]::new);
    }

    /**
     * Takes eight levels from 3 to 90 % of a filmed change, with the covariance of its possible courses.
     *
     * @param change the change, counted from where it is; its time of switching is fitted
     * @return the times
     */
    public static LevelTimes of(FilmedChange change) {
        int n = LEVELS.length;
        double[] levels = new double[n];
        double[][] draws = new double[n][];
        for (int k = 0; k < n; k++) {
            levels[k] = change.rising() ? LEVELS[k] : 1 - LEVELS[k];
            draws[k] = change.levels(levels[k]);
        }
        double[] mean = Arrays.stream(draws)
                .mapToDouble(column -> Arrays.stream(column).average().orElseThrow())
                .toArray();
        double[][] covariance = new double[n][n];
        // courses have fewer freedoms than levels: what they leave open is small, not nothing
        double own = Math.pow(3e-4 * (mean[n - 1] - mean[0]), 2);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                for (int d = 0; d < draws[i].length; d++) {
                    covariance[i][j] += (draws[i][d] - mean[i]) * (draws[j][d] - mean[j]) / (draws[i].length - 1);
                }
            }
            covariance[i][i] += own;
        }
        return new LevelTimes(
                change.label(),
                change.rising(),
                levels,
                mean,
                covariance,
                false,
                TimeSpan.seconds(0),
                change.evidence());
    }

    /**
     * Takes measured times whose errors do not go together.
     *
     * @param label the lamp's name
     * @param rising whether it came on
     * @param levelRatios the levels
     * @param timesS the time of each in seconds
     * @param standardUncertainty of each time
     * @return the times, whose switch is fitted
     * @throws IllegalArgumentException as the constructor
     */
    public static LevelTimes independent(
            String label, boolean rising, double[] levelRatios, double[] timesS, TimeSpan standardUncertainty) {
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(levelRatios, "levelRatios");
        Objects.requireNonNull(standardUncertainty, "standardUncertainty");
        Objects.requireNonNull(timesS, "timesS");
        double[][] covariance = new double[levelRatios.length][levelRatios.length];
        for (int k = 0; k < covariance.length; k++) {
            covariance[k][k] = Math.pow(standardUncertainty.inSeconds(), 2);
        }
        return new LevelTimes(
                label,
                rising,
                levelRatios,
                timesS,
                covariance,
                false,
                TimeSpan.seconds(0),
                Evidence.of(label + ": times of " + levelRatios.length
                        + " levels, independent errors, given by the caller"));
    }

    /**
     * Says that the times count from the moment the circuit was closed or opened.
     *
     * @param standardUncertainty the standard uncertainty of that moment, [0, 10] s
     * @return the times with the known switch
     * @throws IllegalArgumentException if the uncertainty is out of range
     */
    public LevelTimes fromSwitch(TimeSpan standardUncertainty) {
        return new LevelTimes(label, rising, levelRatios, timesS, covarianceS2, true, standardUncertainty, evidence);
    }

    /** {@return the levels, as shares of the final light, in (0, 1): a copy} */
    @Override
    public double[] levelRatios() {
        return levelRatios.clone();
    }

    /** {@return the time of each level in s: a copy} */
    @Override
    public double[] timesS() {
        return timesS.clone();
    }

    /** {@return the covariance of the times in s²: a copy} */
    @Override
    public double[][] covarianceS2() {
        return Arrays.stream(covarianceS2).map(double[]::clone).toArray(double[][]::new);
    }
}
