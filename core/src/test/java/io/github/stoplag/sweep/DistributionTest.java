package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.chance.Empirical;
import io.github.stoplag.chance.StandardNormal;
import io.github.stoplag.chance.Triangular;
import io.github.stoplag.driver.ChosenDeceleration;
import io.github.stoplag.driver.DecelerationStudy;
import io.github.stoplag.driver.DriverResponse;
import io.github.stoplag.driver.LogNormalReaction;
import io.github.stoplag.driver.ReactionStudy;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TriangularDistribution;
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
        CdfTable cdf = CdfTable.of(own);
        assertThat(table.largestRelativeError()).isLessThan(2e-6);
        for (int i = 0; i < 50_000; i++) {
            double p = i % 2 == 0 ? random.nextDouble(1e-9, 1) : Math.exp(random.nextDouble(-30, 0));
            double expected = library.inverseCumulativeProbability(p);
            assertThat(own.quantile(p)).isCloseTo(expected, within(1e-9 * Math.abs(expected)));
            double upper = library.inverseSurvivalProbability(p);
            assertThat(own.upperQuantile(p)).isCloseTo(upper, within(1e-9 * Math.abs(upper)));
            double x = expected * random.nextDouble(0.8, 1.25);
            double share = library.cumulativeProbability(x);
            assertThat(own.cdf(x)).isCloseTo(share, within(1e-13 + 1e-12 * share));
            assertThat(cdf.cdf(x)).isCloseTo(share, within(2e-9));
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
        for (int i = 1; i < 1000; i++) {
            double p = i / 1000.0;
            double quantileS = reaction.distribution().quantile(p);
            assertThat(reaction.quantile(p).inSeconds()).isEqualTo(quantileS);
            assertThat(reaction.cdf(TimeSpan.seconds(quantileS)))
                    .isEqualTo(reaction.distribution().cdf(quantileS));
        }
    }

    @Test
    void publishedDecelerationLawIsAnAxisWithATextOfItsOwn() {
        ChosenDeceleration chosen =
                DecelerationStudy.published("unexpected-1997").upTo(Deceleration.mps2(7));
        Distribution law = chosen.distribution();
        TruncatedNormalDistribution library = TruncatedNormalDistribution.of(0.55 * 9.80665, 0.07 * 9.80665, 0, 7);
        for (int i = 1; i < 1000; i++) {
            double p = i / 1000.0;
            assertThat(law.quantile(p)).isCloseTo(library.inverseCumulativeProbability(p), within(1e-9));
            assertThat(chosen.quantile(p).inMps2()).isEqualTo(law.quantile(p));
        }
        Plan plan = Plan.of(Design.random(10), 4);
        String digest = plan.axis(PairColumn.FOLLOWER_DECEL.drawn(law)).digest();
        assertThat(digest)
                .isEqualTo(plan.axis(PairColumn.FOLLOWER_DECEL.drawn(DecelerationStudy.published("unexpected-1997")
                                .upTo(Deceleration.mps2(7))
                                .distribution()))
                        .digest())
                .isNotEqualTo(plan.axis(PairColumn.FOLLOWER_DECEL.drawn(DecelerationStudy.published("unexpected-1997")
                                .upTo(Deceleration.mps2(6.9))
                                .distribution()))
                        .digest());
    }

    @Test
    void empiricalIsJoinedLinearly() {
        // R's quantile(c(1, 2, 4, 8), type = 7) by hand: h = 3 p
        Distribution four = Empirical.of(4, 1, 8, 2);
        assertThat(List.of(four.quantile(0), four.quantile(0.5), four.quantile(0.9), four.quantile(1)))
                .containsExactly(1.0, 3.0, 4 + 0.7 * 4 + 8.881784197001252e-16, 8.0);
    }

    @Test
    void distributionFunctionsOfJoinedAndUniformValues() {
        Distribution uniform = new Distribution.Uniform(-1, 3);
        assertThat(List.of(uniform.cdf(-2), uniform.cdf(0), uniform.cdf(3), uniform.cdf(9)))
                .containsExactly(0.0, 0.25, 1.0, 1.0);
        // the two equal observations hold a third of the steps between observations
        Distribution ties = Empirical.of(1, 2, 2, 4);
        assertThat(List.of(
                        ties.cdf(0.9), ties.cdf(1), ties.cdf(1.5), ties.cdf(2), ties.cdf(3), ties.cdf(4), ties.cdf(5)))
                .containsExactly(0.0, 0.0, 0.5 / 3, 2 / 3.0, 2.5 / 3, 1.0, 1.0);
        Distribution four = Empirical.of(4, 1, 8, 2);
        for (double p = 0.01; p < 1; p += 0.01) {
            assertThat(four.cdf(four.quantile(p))).isCloseTo(p, within(1e-15));
        }
        assertThat(new Distribution.LogNormal(0, 1).cdf(-1)).isZero();
        assertThat(new Distribution.TruncatedNormal(7, 1, 2, 10).cdf(2)).isZero();
        assertThat(new Distribution.TruncatedNormal(7, 1, 2, 10).cdf(11)).isEqualTo(1);
        assertThat(List.of(four.cdf(Double.NaN), uniform.cdf(Double.NaN), ties.cdf(Double.NaN)))
                .containsOnly(Double.NaN);
        assertThat(new Distribution.LogNormal(0, 1).cdf(Double.NaN)).isNaN();
    }

    /** A wide, a narrow and a nearly sharp distribution: a table, a finer one, and none but the exact function. */
    @Test
    void tableOfTheDistributionFunctionIsExactOrRefined() {
        for (double sigma : new double[] {2, 0.05, 1e-4}) {
            Distribution.LogNormal own = new Distribution.LogNormal(1, sigma);
            CdfTable table = CdfTable.of(own);
            for (int i = 0; i < 20_000; i++) {
                double x = Math.exp(1 + sigma * random.nextDouble(-9, 9));
                assertThat(table.cdf(x)).isCloseTo(own.cdf(x), within(2e-9));
            }
            assertThat(table.cdf(0)).isZero();
            assertThat(table.cdf(-1)).isZero();
            assertThat(table.cdf(1e9)).isEqualTo(1);
        }
    }

    /** At 0 and 1 the ends of the support, by definition; NaN nowhere in between. */
    @Test
    void quantilesReachTheEndsOfEveryDistribution() {
        double open = Double.POSITIVE_INFINITY;
        assertEnds(new Distribution.LogNormal(0, 0.4), 0, open);
        assertEnds(new Distribution.TruncatedNormal(7, 1, -open, 10), -open, 10);
        assertEnds(new Distribution.TruncatedNormal(7, 1, 2, open), 2, open);
        assertEnds(new Distribution.TruncatedNormal(7, 1, -open, open), -open, open);
        assertEnds(new Distribution.TruncatedNormal(7, 1, 2, 10), 2, 10);
        assertEnds(new Distribution.Uniform(-1, 3), -1, 3);
        assertEnds(Empirical.of(3, 1, 2), 1, 3);
    }

    private static void assertEnds(Distribution distribution, double lo, double hi) {
        assertThat(distribution.quantile(0)).isEqualTo(lo);
        assertThat(distribution.upperQuantile(1)).isEqualTo(lo);
        assertThat(distribution.quantile(1)).isEqualTo(hi);
        assertThat(distribution.upperQuantile(0)).isEqualTo(hi);
        assertThat(distribution.cdf(lo)).isZero();
        assertThat(distribution.cdf(hi)).isEqualTo(1);
        for (double p : new double[] {Double.MIN_VALUE, 0x1p-1022, 1e-300, 0x1p-53, 1 - 0x1p-53}) {
            assertThat(distribution.quantile(p)).isBetween(lo, hi);
            assertThat(distribution.upperQuantile(p)).isBetween(lo, hi);
        }
    }

    /** A law of a user's own as an axis: an exponential, against its closed form; its text tells plans apart. */
    @Test
    void lawOfOnesOwnIsAnAxis() {
        record Exponential(double mean) implements Distribution {
            @Override
            public double quantile(double probability) {
                return -mean * StrictMath.log1p(-probability);
            }

            @Override
            public double cdf(double value) {
                return value <= 0 ? 0 : -StrictMath.expm1(-value / mean);
            }

            @Override
            public String canonical() {
                return Distribution.canonical("exponential", mean);
            }
        }
        Plan plan = Plan.of(Design.latinHypercube(10_000), 5).axis(Axis.drawn("x", "s", new Exponential(2)));
        double[][] drawn = new double[1][10_000];
        plan.scenarios().fill(0, 10_000, drawn);
        assertThat(Arrays.stream(drawn[0]).average().orElseThrow()).isCloseTo(2, within(0.02));
        assertThat(Arrays.stream(drawn[0]).filter(x -> x > 2).count() / 1e4).isCloseTo(Math.exp(-1), within(2e-4));
        assertThat(plan.digest())
                .isNotEqualTo(Plan.of(plan.design(), 5)
                        .axis(Axis.drawn("x", "s", new Exponential(Math.nextUp(2.0))))
                        .digest());
    }

    @Test
    void publishedReactionLawsAreAxes() {
        DriverResponse normal = ReactionStudy.published("brake-lamps-in-traffic-1993")
                .response()
                .orElseThrow();
        assertThat(normal.reaction().distribution())
                .isEqualTo(new Distribution.TruncatedNormal(1.25, 0.46, 0, Double.POSITIVE_INFINITY));
        LogNormalReaction fit = LogNormalReaction.ofLogParameters(0.17, 0.44);
        assertThat(fit.distribution()).isEqualTo(new Distribution.LogNormal(0.17, 0.44));
    }

    @Test
    void triangularEqualsAnIndependentLibrary() {
        for (double mode : new double[] {2, 3.5, 7}) {
            Triangular own = new Triangular(2, mode, 7);
            TriangularDistribution library = TriangularDistribution.of(2, mode, 7);
            for (int i = 0; i < 2000; i++) {
                double p = random.nextDouble();
                assertThat(own.quantile(p)).isCloseTo(library.inverseCumulativeProbability(p), within(1e-12));
                assertThat(own.upperQuantile(p)).isCloseTo(library.inverseSurvivalProbability(p), within(1e-12));
                double x = random.nextDouble(1, 8);
                assertThat(own.cdf(x)).isCloseTo(library.cumulativeProbability(x), within(1e-14));
            }
            assertThat(List.of(own.quantile(0), own.upperQuantile(0), own.cdf(2), own.cdf(7)))
                    .containsExactly(2.0, 7.0, 0.0, 1.0);
            assertThat(own.cdf(Double.NaN)).isNaN();
        }
        assertThatThrownBy(() -> new Triangular(2, 1, 7))
                .hasMessage("a triangular distribution must have finite lo ≤ peak ≤ hi, lo < hi, got 2, 1, 7");
    }

    @Test
    void yesOrNoHasItsShare() {
        Distribution most = new Distribution.Bernoulli(0.72);
        assertThat(List.of(most.quantile(0), most.quantile(0.27), most.quantile(0.29), most.upperQuantile(0)))
                .containsExactly(0.0, 0.0, 1.0, 1.0);
        assertThat(List.of(most.cdf(-1), most.cdf(0), most.cdf(1))).containsExactly(0.0, 1 - 0.72, 1.0);
        assertThat(most.cdf(Double.NaN)).isNaN();
        assertThat(new Distribution.Bernoulli(1).quantile(0)).isEqualTo(1);
        assertThat(new Distribution.Bernoulli(0).quantile(1)).isZero();
        assertThatThrownBy(() -> new Distribution.Bernoulli(Double.NaN))
                .hasMessage("probability must be in [0, 1], got NaN");
    }

    @Test
    void probabilitiesOutsideTheirRangeAreNamed() {
        for (Distribution distribution : List.of(
                new Distribution.LogNormal(0, 1),
                new Distribution.TruncatedNormal(7, 1, 2, 10),
                new Distribution.Uniform(0, 1),
                Empirical.of(0, 1))) {
            assertThatThrownBy(() -> distribution.quantile(2)).hasMessage("probability must be in [0, 1], got 2");
            assertThatThrownBy(() -> distribution.quantile(-1)).hasMessage("probability must be in [0, 1], got -1");
            assertThatThrownBy(() -> distribution.upperQuantile(Double.NaN))
                    .hasMessage("probability must be in [0, 1], got NaN");
        }
        QuantileTable table = QuantileTable.of(new Distribution.LogNormal(0, 1));
        assertThatThrownBy(() -> table.quantile(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("probability must be in [2^-53, 1 - 2^-53], got 0");
        assertThatThrownBy(() -> table.quantile(1)).hasMessage("probability must be in [2^-53, 1 - 2^-53], got 1");
        assertThat(table.quantile(0x1p-53)).isPositive();
        assertThat(table.quantile(1 - 0x1p-53)).isFinite();
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
        assertThatThrownBy(() -> Empirical.of(1))
                .hasMessage("an empirical distribution needs at least 2 observations, got 1");
        assertThatThrownBy(() -> Empirical.of(1, 2, Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("observations must be finite, got NaN as number 3 of 3");
        assertThatThrownBy(() -> Empirical.of(1e308, -1e308))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("observations must have a finite range, got -1e308 to 1e308");
    }
}
