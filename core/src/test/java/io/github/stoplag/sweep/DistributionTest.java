package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.driver.LogNormalReaction;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TruncatedNormalDistribution;
import org.junit.jupiter.api.Test;

class DistributionTest {
    private final SplittableRandom random = new SplittableRandom(31);

    @Test
    void normalQuantileAndCdfEqualAnIndependentLibrary() {
        NormalDistribution library = NormalDistribution.of(0, 1);
        for (int i = 0; i < 100_000; i++) {
            double p = i % 2 == 0 ? random.nextDouble() : Math.exp(random.nextDouble(-36, 0));
            double z = library.inverseCumulativeProbability(p);
            assertThat(StandardNormal.quantile(p)).isCloseTo(z, within(2e-15 * (1 + Math.abs(z))));
            double x = random.nextDouble(-8, 8);
            double cdf = library.cumulativeProbability(x);
            assertThat(StandardNormal.cdf(x)).isCloseTo(cdf, within(4e-16 + 1e-13 * Math.min(cdf, 1 - cdf)));
        }
        assertThat(StandardNormal.cdf(0)).isEqualTo(0.5);
        // table value of every textbook
        assertThat(StandardNormal.quantile(0.975)).isCloseTo(1.959964, within(5e-7));
    }

    @Test
    void quantilesEqualAnIndependentLibrary() {
        compare(new Distribution.LogNormal(0.17, 0.44), LogNormalDistribution.of(0.17, 0.44));
        compare(new Distribution.TruncatedNormal(6.8, 1.1, 2, 10), TruncatedNormalDistribution.of(6.8, 1.1, 2, 10));
        compare(new Distribution.TruncatedNormal(0, 1, 1.5, 4), TruncatedNormalDistribution.of(0, 1, 1.5, 4));
    }

    private void compare(Distribution own, ContinuousDistribution library) {
        QuantileTable table = QuantileTable.of(own);
        assertThat(table.largestRelativeError()).isLessThan(2e-6);
        for (int i = 0; i < 50_000; i++) {
            double p = i % 2 == 0 ? random.nextDouble(1e-9, 1) : Math.exp(random.nextDouble(-30, 0));
            double expected = library.inverseCumulativeProbability(p);
            assertThat(own.quantile(p)).isCloseTo(expected, within(1e-9 * Math.abs(expected)));
            double upper = library.inverseSurvivalProbability(p);
            assertThat(own.upperQuantile(p)).isCloseTo(upper, within(1e-9 * Math.abs(upper)));
            double u = Math.max(p, 0x1p-53);
            assertThat(table.quantile(u)).isCloseTo(own.quantile(u), within(4e-6 * Math.abs(expected)));
        }
    }

    @Test
    void tableOfALogNormalIsFarBelowTheDrawsOwnScatter() {
        assertThat(QuantileTable.of(new Distribution.LogNormal(0.17, 0.44)).largestRelativeError())
                .isLessThan(2e-9);
    }

    @Test
    void publishedReactionIsTakenOver() {
        LogNormalReaction reaction = LogNormalReaction.ofLogParameters(0.17, 0.44);
        assertThat(Distribution.LogNormal.of(reaction).quantile(0.85))
                .isCloseTo(reaction.quantile(0.85).inSeconds(), within(1e-12));
    }

    @Test
    void empiricalIsJoinedLinearly() {
        // R's quantile(c(1, 2, 4, 8), type = 7) by hand: h = 3 p
        Distribution four = Distribution.Empirical.of(4, 1, 8, 2);
        assertThat(List.of(four.quantile(0), four.quantile(0.5), four.quantile(0.9), four.quantile(1)))
                .containsExactly(1.0, 3.0, 4 + 0.7 * 4 + 8.881784197001252e-16, 8.0);
    }

    @Test
    void badParametersAreNamed() {
        assertThatThrownBy(() -> new Distribution.LogNormal(Double.NaN, 1))
                .hasMessage("mean of the logarithm must be in [-50, 50], got NaN");
        assertThatThrownBy(() -> new Distribution.TruncatedNormal(0, 1, 5, 6))
                .hasMessageStartingWith(
                        "[5, 6] must hold at least 0.001 of the normal with mean 0 and standard deviation 1");
        assertThatThrownBy(() -> new Distribution.Uniform(2, 2))
                .hasMessage("a uniform distribution must have finite lo < hi, got 2 and 2");
        assertThatThrownBy(() -> Distribution.Empirical.of(1))
                .hasMessage("an empirical distribution needs at least 2 finite observations, got [1.0]");
    }
}
