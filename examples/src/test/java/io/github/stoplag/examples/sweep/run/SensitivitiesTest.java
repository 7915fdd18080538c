package io.github.stoplag.examples.sweep.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.SamplingError;
import io.github.stoplag.sweep.Sensitivities;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Axes held at their ends, and what an interval means for a design. */
class SensitivitiesTest {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /** Equal braking and no other lag: contact if and only if reaction exceeds the time gap. */
    private static PlanFile plan(String... lines) {
        return Plans.parse("plan.properties", """
                title = oracle
                scenarios = 5000
                lamps = lamp
                speed = constant 30 m/s
                follower_decel = constant 6 m/s^2
                lamp_latency_lamp = constant 0 s
                """ + String.join("\n", lines));
    }

    private static Sensitivities.Swing swing(Sensitivities of, String column) {
        return of.swings().stream()
                .filter(swing -> swing.column().equals(column))
                .findFirst()
                .orElseThrow();
    }

    /** The conditional law of one normal score given the other has a closed form. */
    @ParameterizedTest
    @ValueSource(doubles = {0.9, -0.6, 0})
    void axisCorrelatedWithTheHeldOneIsDrawnGivenIt(double rho) {
        PlanFile plan = plan(
                "reaction = log-normal 0.17, 0.44",
                "time_gap = log-normal 0.2055, 0.3798",
                rho == 0 ? "" : "correlations = reaction time_gap " + rho);
        Sensitivities found = Sensitivities.of(plan, 2).get(0);
        double z = NORMAL.inverseCumulativeProbability(0.9);
        double spread = Math.sqrt(1 - rho * rho);
        double reactionHigh =
                NORMAL.cumulativeProbability((0.17 + 0.44 * z - 0.2055 - 0.3798 * rho * z) / (0.3798 * spread));
        double gapHigh = NORMAL.cumulativeProbability((0.17 + 0.44 * rho * z - 0.2055 - 0.3798 * z) / (0.44 * spread));
        // four standard errors at most
        double near = 2 / Math.sqrt(Sensitivities.BASE);
        assertThat(swing(found, "reaction_s").atHigh().value()).isCloseTo(reactionHigh, offset(near));
        assertThat(swing(found, "time_gap_s").atHigh().value()).isCloseTo(gapHigh, offset(near));
        assertThat(found.heldAt()).isEqualTo("its 10 % and 90 % quantile");
    }

    @Test
    void rareContactsHaveNoShares() {
        PlanFile plan = plan("reaction = log-normal 0, 0.3", "time_gap = uniform 2 s, 4 s");
        Sensitivities found = Sensitivities.of(plan, 2).get(0);
        assertThat(found.contact()).isEmpty();
        assertThat(found.without())
                .hasValue("fewer than 200 of the base scenarios differ from the others in contact or none");
    }

    @Test
    void listsAreHeldAtTheirEndLevels() {
        Sensitivities found = Sensitivities.of(
                        plan("reaction = list 2 s, 0.5 s, 1 s", "time_gap = uniform 0.4 s, 2.4 s"), 2)
                .get(0);
        Sensitivities.Swing reaction = swing(found, "reaction_s");
        assertThat(List.of(reaction.low(), reaction.high())).containsExactly(0.5, 2.0);
        double near = 2 / Math.sqrt(Sensitivities.BASE);
        assertThat(reaction.atLow().value()).isCloseTo(0.05, offset(near));
        assertThat(reaction.atHigh().value()).isCloseTo(0.8, offset(near));
        assertThat(found.heldAt()).isEqualTo("its 10 % and 90 % quantile, a list at its lowest and highest level");
    }

    @ParameterizedTest
    @CsvSource({
        "random, uniform 1 s | 2 s, INDEPENDENT",
        "latin-hypercube, uniform 1 s | 2 s, SPREAD",
        "sobol, constant 1 s, SPREAD",
        "grid, uniform 1 s | 2 s, SPREAD",
        "grid, list 1 s | 2 s, NONE"
    })
    void designDecidesWhatAnIntervalMeans(String design, String gap, SamplingError meaning) {
        PlanFile plan = plan("reaction = constant 1 s", "design = " + design, "time_gap = " + gap.replace(" |", ","));
        assertThat(SamplingError.of(plan.plan())).isEqualTo(meaning);
    }
}
