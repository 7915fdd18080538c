package io.github.stoplag.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.TimeSpan;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.junit.jupiter.api.Test;

class ReactionDistributionTest {
    private static final LogNormalReaction TAILED =
            LogNormalReaction.ofMeanAndSd(TimeSpan.seconds(1.21), TimeSpan.seconds(0.63));

    private static double integral(UnivariateFunction f, double from, double to) {
        return new IterativeLegendreGaussIntegrator(16, 1e-11, 1e-11).integrate(1_000_000, f, from, to);
    }

    /** Second method: moments and shares by quadrature of the density, which is the derivative of the share. */
    @Test
    void densityMomentsAndSharesAgree() {
        UnivariateFunction density = t -> TAILED.densityPerS(TimeSpan.seconds(t));
        assertThat(integral(density, 1e-9, 60)).isCloseTo(1, within(1e-9));
        double mean = integral(t -> t * density.value(t), 1e-9, 60);
        assertThat(TAILED.mean().inSeconds()).isCloseTo(mean, within(1e-9)).isCloseTo(1.21, within(1e-12));
        double variance = integral(t -> (t - mean) * (t - mean) * density.value(t), 1e-9, 60);
        assertThat(TAILED.standardDeviation().inSeconds())
                .isCloseTo(Math.sqrt(variance), within(1e-7))
                .isCloseTo(0.63, within(1e-12));
        assertThat(TAILED.cdf(TimeSpan.seconds(2))).isCloseTo(integral(density, 1e-9, 2), within(1e-9));
        double h = 1e-5;
        assertThat((TAILED.cdf(TimeSpan.seconds(1 + h)) - TAILED.cdf(TimeSpan.seconds(1 - h))) / (2 * h))
                .isCloseTo(density.value(1), within(1e-8));
    }

    /** Second method: Brent's search for the largest density. */
    @Test
    void theModeIsTheLargestDensity() {
        double found = new BrentOptimizer(1e-10, 1e-12)
                .optimize(
                        new MaxEval(500),
                        new UnivariateObjectiveFunction(t -> TAILED.densityPerS(TimeSpan.seconds(t))),
                        GoalType.MAXIMIZE,
                        new SearchInterval(0.1, 3))
                .getPoint();
        assertThat(TAILED.mode().inSeconds()).isCloseTo(found, within(1e-6)).isLessThan(1.0);
        assertThat(TAILED.median().inSeconds()).isBetween(found, 1.21);
    }

    /** Standard normal quantiles of every table: 1.6449 at 0.95, -1.2816 at 0.10. */
    @Test
    void usesTheNormalQuantiles() {
        LogNormalReaction unit = LogNormalReaction.ofLogParameters(0, 1);
        assertThat(Math.log(unit.quantile(0.95).inSeconds())).isCloseTo(1.6449, within(5e-5));
        NormalReaction normal = NormalReaction.ofMeanAndSd(TimeSpan.seconds(3), TimeSpan.seconds(0.5));
        assertThat(normal.quantile(0.1).inSeconds()).isCloseTo(3 - 0.5 * 1.2816, within(5e-5));
        assertThat(normal.mode()).isEqualTo(normal.mean());
        assertThat(normal).hasToString("normal reaction time, mean 3 s, SD 0.5 s");
        assertThat(unit).hasToString("log-normal reaction time, median 1 s, sigma 1");
    }

    @Test
    void scalingMultipliesAllTimes() {
        LogNormalReaction slower = TAILED.scaledBy(1.35);
        assertThat(slower.quantile(0.9).inSeconds())
                .isCloseTo(1.35 * TAILED.quantile(0.9).inSeconds(), within(1e-12));
        assertThat(slower.standardDeviation().inSeconds()).isCloseTo(1.35 * 0.63, within(1e-12));
        NormalReaction normal = NormalReaction.ofMeanAndSd(TimeSpan.seconds(1), TimeSpan.seconds(0.2))
                .scaledBy(2);
        assertThat(normal.mean()).isEqualTo(TimeSpan.seconds(2));
        assertThat(normal.standardDeviation().inSeconds()).isCloseTo(0.4, within(1e-15));
        assertThatThrownBy(() -> TAILED.scaledBy(0))
                .hasMessage("factor on the reaction time must be in [0.1, 10], got 0");
    }

    @Test
    void aWideNormalOwnsUpToTimesBelowZero() {
        NormalReaction wide = NormalReaction.ofMeanAndSd(TimeSpan.seconds(1.25), TimeSpan.seconds(0.46));
        assertThat(wide.caveats())
                .singleElement()
                .hasToString("a normal reaction time with mean 1.25 s and SD 0.46 s lies below zero for a share of"
                        + " 0.00329 of drivers");
        assertThat(NormalReaction.ofMeanAndSd(TimeSpan.seconds(2), TimeSpan.seconds(0.2))
                        .caveats())
                .isEmpty();
    }

    @Test
    void refusesFiguresThatNoLogNormalHas() {
        TimeSpan one = TimeSpan.seconds(1);
        assertThatThrownBy(() -> LogNormalReaction.ofMeanAndQuantile(one, 0.85, TimeSpan.seconds(3)))
                .hasMessage("no log-normal with mean 1 s has its 0.85 quantile at 3 s; the quantile must be at most"
                        + " 1.71103 s");
        assertThatThrownBy(() -> LogNormalReaction.ofMeanAndQuantile(one, 0.5, TimeSpan.seconds(1.1)))
                .hasMessage("no log-normal with mean 1 s has its 0.5 quantile at 1.1 s; the quantile must be below the"
                        + " mean");
        assertThatThrownBy(() -> LogNormalReaction.ofMeanAndQuantile(one, 0.1, one))
                .hasMessageEndingWith("the quantile must be below the mean");
        assertThatThrownBy(() -> LogNormalReaction.ofQuantiles(0.9, one, 0.5, TimeSpan.seconds(2)))
                .hasMessage(
                        "the upper quantile must exceed the lower in probability and time, got 1 s at 0.9 and 2 s at"
                                + " 0.5");
        assertThatThrownBy(() -> LogNormalReaction.ofQuantiles(0.5, one, 0.9, one))
                .hasMessageStartingWith("the upper quantile must exceed the lower");
        assertThatThrownBy(() -> LogNormalReaction.ofQuantiles(0, one, 0.9, one))
                .hasMessage("lower probability must be in (0, 1), got 0");
        assertThatThrownBy(() -> LogNormalReaction.ofMeanAndSd(TimeSpan.seconds(-1), one))
                .hasMessage("mean reaction time must be in (0, 30] s, got -1 s");
        assertThatThrownBy(() -> LogNormalReaction.ofMeanAndSd(one, TimeSpan.seconds(0)))
                .hasMessage("standard deviation of the reaction time must be in (0, 30] s, got 0 s");
        assertThatThrownBy(() -> LogNormalReaction.ofLogParameters(0, Double.NaN))
                .hasMessage("standard deviation of the logarithm of seconds must be in (0, 3], got NaN");
        assertThatThrownBy(() -> TAILED.quantile(1)).hasMessage("probability must be in (0, 1), got 1");
        assertThatThrownBy(() -> TAILED.quantile(Double.NaN)).hasMessage("probability must be in (0, 1), got NaN");
    }
}
