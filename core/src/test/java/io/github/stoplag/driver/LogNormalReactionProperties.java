package io.github.stoplag.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.TimeSpan;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class LogNormalReactionProperties {
    @Property(seed = "42")
    void meanAndSdComeBack(
            @ForAll @DoubleRange(min = -1.5, max = 1.5) double mu,
            @ForAll @DoubleRange(min = 0.02, max = 1.2) double sigma) {
        LogNormalReaction made = LogNormalReaction.ofLogParameters(mu, sigma);
        same(LogNormalReaction.ofMeanAndSd(made.mean(), made.standardDeviation()), mu, sigma, 1e-10);
    }

    @Property(seed = "42")
    void twoQuantilesComeBack(
            @ForAll @DoubleRange(min = -1.5, max = 0.6) double mu,
            @ForAll @DoubleRange(min = 0.02, max = 1.2) double sigma,
            @ForAll @DoubleRange(min = 0.02, max = 0.5) double lower,
            @ForAll @DoubleRange(min = 0.52, max = 0.98) double upper) {
        LogNormalReaction made = LogNormalReaction.ofLogParameters(mu, sigma);
        same(LogNormalReaction.ofQuantiles(lower, made.quantile(lower), upper, made.quantile(upper)), mu, sigma, 1e-9);
    }

    /** The smaller spread is taken, so it comes back as long as σ does not exceed z. */
    @Property(seed = "42")
    void meanAndHighQuantileComeBack(
            @ForAll @DoubleRange(min = -1.5, max = 1.5) double mu,
            @ForAll @DoubleRange(min = 0.02, max = 0.8) double sigma,
            @ForAll @DoubleRange(min = 0.85, max = 0.99) double probability) {
        LogNormalReaction made = LogNormalReaction.ofLogParameters(mu, sigma);
        same(
                LogNormalReaction.ofMeanAndQuantile(made.mean(), probability, made.quantile(probability)),
                mu,
                sigma,
                1e-8);
    }

    @Property(seed = "42")
    void meanAndQuantileBelowItComeBack(
            @ForAll @DoubleRange(min = -1.5, max = 1.5) double mu,
            @ForAll @DoubleRange(min = 0.05, max = 1.2) double sigma,
            @ForAll @DoubleRange(min = 0.02, max = 0.5) double probability) {
        LogNormalReaction made = LogNormalReaction.ofLogParameters(mu, sigma);
        same(
                LogNormalReaction.ofMeanAndQuantile(made.mean(), probability, made.quantile(probability)),
                mu,
                sigma,
                1e-8);
    }

    @Property(seed = "42")
    void sharesRiseAndQuantilesInvertThem(
            @ForAll @DoubleRange(min = 0.05, max = 0.9) double probability,
            @ForAll @DoubleRange(min = 0.2, max = 1) double responding) {
        DriverResponse drivers = new DriverResponse(LogNormalReaction.ofLogParameters(0.07, 0.49), responding);
        if (drivers.quantile(probability) instanceof DriverResponse.Quantile.Responds responds) {
            assertThat(probability).isLessThan(responding);
            assertThat(drivers.shareResponded(responds.time())).isCloseTo(probability, within(1e-10));
            assertThat(drivers.shareResponded(TimeSpan.seconds(responds.time().inSeconds() * 1.1)))
                    .isGreaterThan(probability)
                    .isLessThanOrEqualTo(responding);
        } else {
            assertThat(probability).isGreaterThanOrEqualTo(responding);
        }
    }

    private static void same(LogNormalReaction made, double mu, double sigma, double tolerance) {
        assertThat(made.mu()).isCloseTo(mu, within(tolerance));
        assertThat(made.sigma()).isCloseTo(sigma, within(tolerance));
    }
}
