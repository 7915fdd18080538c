package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.driver.LogNormalReaction;
import io.github.stoplag.driver.ReactionStudy;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * With equal speeds and equal braking there is contact if and only if delay + lag exceeds the time gap. For log-normal
 * delay and time gap and no lag P = Φ((μ_d − μ_g)/√(σ_d² + σ_g²)); with a lag, by quadrature over the delay.
 */
class LogNormalOracleTest {
    private static final int DRAWS = 400_000;
    private static final List<String> STUDIES =
            List.of("johansson-rumar-1965", "sivak-1982", "lerner-1993", "fambro-1998", "koppa-1997-surprise");
    // 99.99 %: of some 60 intervals with fixed seeds, one fails by chance in 170 choices of seeds
    private static final double CONFIDENCE = 0.9999;

    @TestFactory
    Stream<DynamicTest> publishedReactionsAndHeadways() {
        Table headways = Table.read(LogNormalOracleTest.class, "headway.csv");
        List<DynamicTest> tests = new ArrayList<>();
        for (String study : STUDIES) {
            for (Map<String, String> headway : headways.rows()) {
                long seed = 1000L + tests.size();
                tests.add(DynamicTest.dynamicTest(study + " behind " + headway.get("id"), () -> {
                    LogNormalReaction reaction = (LogNormalReaction) ReactionStudy.published(study)
                            .response()
                            .orElseThrow()
                            .reaction();
                    assertInside(
                            reaction, headways.number(headway, "mu_ln_s"), headways.number(headway, "sigma_ln"), seed);
                }));
            }
        }
        return tests.stream();
    }

    private static void assertInside(LogNormalReaction reaction, double muGap, double sigmaGap, long seed) {
        double[] lags = {0, 0.25};
        Plan plan = Plan.of(Design.random(DRAWS), seed)
                .axis(Axis.drawn("speed", "mps", new Distribution.Uniform(10, 35)))
                .axis(Axis.drawn("reaction", "s", reaction.distribution()))
                .axis(Axis.drawn("time_gap", "s", new Distribution.LogNormal(muGap, sigmaGap)))
                .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(6, 1.5, 3, 9)))
                .axis(Axis.constant("lamp_latency_instant", "s", lags[0]))
                .axis(Axis.constant("lamp_latency_slow", "s", lags[1]));
        PairModel model = PairModel.of(plan, "instant", "slow");
        PairTally tally = Sweep.of(plan, model)
                .withThreads(2)
                .run(() -> new PairTally(model))
                .tally();
        double spread = Math.sqrt(reaction.sigma() * reaction.sigma() + sigmaGap * sigmaGap);
        double closed = NormalDistribution.of(0, 1).cumulativeProbability((reaction.mu() - muGap) / spread);
        double slow = byQuadrature(reaction, muGap, sigmaGap, lags[1]);
        Proportion instant = tally.lamp("instant").contactProbability();
        assertThat(instant.wilson(CONFIDENCE).contains(closed))
                .as("%s against %s", instant, closed)
                .isTrue();
        assertThat(tally.lamp("slow").contactProbability().wilson(CONFIDENCE).contains(slow))
                .as("%s against %s", tally.lamp("slow").contactProbability(), slow)
                .isTrue();
        assertThat(tally.compare("slow", "instant")
                        .differenceInterval(CONFIDENCE)
                        .contains(slow - closed))
                .isTrue();
        assertThat(byQuadrature(reaction, muGap, sigmaGap, 0)).isBetween(closed - 1e-9, closed + 1e-9);
    }

    /** P(gap < delay + lag) = ∫ F_gap(t(p) + lag) dp over the delay's normal score. */
    private static double byQuadrature(LogNormalReaction reaction, double muGap, double sigmaGap, double lagS) {
        LogNormalDistribution gap = LogNormalDistribution.of(muGap, sigmaGap);
        NormalDistribution normal = NormalDistribution.of(0, 1);
        return new IterativeLegendreGaussIntegrator(32, 1e-12, 1e-12)
                .integrate(
                        1_000_000,
                        z -> normal.density(z)
                                * gap.cumulativeProbability(Math.exp(reaction.mu() + reaction.sigma() * z) + lagS),
                        -9,
                        9);
    }

    @Test
    void headwaysNameTheirSource() {
        Table table = Table.read(LogNormalOracleTest.class, "headway.csv");
        assertThat(table.rows())
                .hasSize(4)
                .allSatisfy(row -> assertThat(table.source(row).standing()).isEqualTo(Standing.DERIVED));
    }
}
