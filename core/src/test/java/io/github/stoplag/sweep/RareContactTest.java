package io.github.stoplag.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.chance.Distribution;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Equal speeds and equal braking: contact if and only if reaction and latency together exceed the time gap. For
 * log-normal times without latency P = Φ((μ_r − μ_g)/√(σ_r² + σ_g²)); with a latency by quadrature.
 */
class RareContactTest {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double MU = 0.17;
    private static final double SIGMA = 0.4;

    private static Plan plan(double gapMu, double gapSigma) {
        return Plan.of(Design.random(1), 1)
                .axis(Axis.drawn("speed", "mps", new Distribution.Uniform(10, 35)))
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(MU, SIGMA)))
                .axis(Axis.drawn("time_gap", "s", new Distribution.LogNormal(gapMu, gapSigma)))
                .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(6, 1.5, 3, 9)))
                .axis(Axis.constant("lamp_latency_instant", "s", 0))
                .axis(Axis.constant("lamp_latency_slow", "s", 0.25));
    }

    @ParameterizedTest
    @CsvSource({"0.3, 0.4", "1e-3, 0.2", "1e-6, 0.4", "1e-9, 0.4", "1e-9, 0.2", "1e-11, 0.2"})
    void closedForm(double probability, double gapSigma) {
        double spread = Math.hypot(SIGMA, gapSigma);
        double gapMu = MU - spread * NORMAL.inverseCumulativeProbability(probability);
        RareContact contact = RareContact.of(plan(gapMu, gapSigma), "instant", "slow");
        RareContact.Estimate estimate = contact.probability("instant", 0.01, 0.95, 17);
        assertThat(estimate.halfWidthRatio()).isLessThan(0.04);
        assertThat(estimate.probability()).isCloseTo(probability, within(0.01 * probability));
        assertThat(estimate.scenarios()).isLessThan(200_000);
        // P(gap < r + 0.25 s) = ∫ F_gap(r(z) + 0.25) φ(z) dz
        LogNormalDistribution gap = LogNormalDistribution.of(gapMu, gapSigma);
        double slow = new IterativeLegendreGaussIntegrator(48, 1e-9, 1e-30)
                .integrate(
                        1_000_000,
                        z -> NORMAL.density(z) * gap.cumulativeProbability(Math.exp(MU + SIGMA * z) + 0.25),
                        -9,
                        9);
        RareContact.Estimate later = contact.probability("slow", 0.01, 0.95, 18);
        assertThat(later.probability()).isCloseTo(slow, within(0.01 * slow));
        assertThat(later.probability()).isGreaterThan(estimate.probability());
    }

    /** A gap that is never below 130 m has no contacts at all over most of the plan: slack leads the way. */
    @Test
    void aBoundedGapAgreesWithPlainDraws() {
        Plan plan = Plan.of(Design.random(500_000), 5)
                .axis(Axis.drawn("speed", "mps", new Distribution.Uniform(20, 35)))
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(MU, SIGMA)))
                .axis(Axis.drawn("gap", "m", new Distribution.Uniform(85, 130)))
                .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(6, 1.5, 3, 9)))
                .axis(Axis.drawn("leader_decel", "mps2", new Distribution.TruncatedNormal(6, 1.5, 3, 9)))
                .correlate("leader_decel_mps2", "follower_decel_mps2", 0.5)
                .axis(Axis.constant("lamp_latency_slow", "s", 0.25));
        PairModel model = PairModel.of(plan, "slow");
        Proportion drawn = Sweep.of(plan, model)
                .withThreads(1)
                .run(() -> new PairTally(model))
                .tally()
                .lamp("slow")
                .contactProbability();
        RareContact.Estimate estimate = RareContact.of(plan, "slow").probability("slow", 0.01, 0.95, 3);
        assertThat(drawn.wilson(0.999).contains(estimate.probability()))
                .as("%s against %s", estimate, drawn)
                .isTrue();
        assertThat(estimate.probability()).isLessThan(0.04);
    }

    @Test
    void driversWhoDoNotRespondAreACaseOfTheirOwn() {
        double gapMu = 2.5;
        Plan plan = plan(gapMu, 0.3).axis(Axis.drawn("responds", "ratio", new Distribution.Bernoulli(0.9)));
        RareContact.Estimate estimate = RareContact.of(plan, "instant", "slow").probability("instant", 0.01, 0.95, 4);
        double responding = NORMAL.cumulativeProbability((MU - gapMu) / 0.5);
        assertThat(estimate.probability()).isCloseTo(0.1 + 0.9 * responding, within(1e-6));
    }

    /** A gap beyond any reach: the answer is 0, not a failure. */
    @Test
    void impossibleContact() {
        Plan plan = plan(1, 0.3).without("time_gap_s").axis(Axis.drawn("gap", "m", new Distribution.Uniform(5e4, 6e4)));
        RareContact.Estimate estimate = RareContact.of(plan, "instant").probability("instant", 0.01, 0.95, 4);
        assertThat(estimate.probability()).isZero();
        assertThat(estimate.halfWidthRatio()).isInfinite();
    }

    @Test
    void refusals() {
        RareContact contact = RareContact.of(plan(1, 0.3), "instant");
        assertThatThrownBy(() -> contact.probability("instant", 0.9, 0.95, 1))
                .hasMessage("relative half-width of the interval must be in [0.0001, 0.5], got 0.9");
        assertThatThrownBy(() -> contact.probability("led", 0.1, 0.95, 1)).hasMessageContaining("led");
    }
}
