package io.github.stoplag.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

class StoppingRuleProperties {
    private static final Source OURS = Source.assumed("invented");
    private static final List<PublishedRule> ALL = PublishedRule.published();
    private static final List<PublishedRule> GRADED = ALL.stream()
            .filter(rule -> rule.rule() instanceof GradedStoppingRule)
            .toList();

    @Provide
    Arbitrary<PublishedRule> rules() {
        return Arbitraries.of(ALL);
    }

    @Provide
    Arbitrary<PublishedRule> gradedRules() {
        return Arbitraries.of(GRADED);
    }

    @Property(seed = "42")
    void distanceGrowsWithSpeed(
            @ForAll("rules") PublishedRule rule,
            @ForAll @DoubleRange(min = 1, max = 200) double kmh,
            @ForAll @DoubleRange(min = 0.01, max = 20) double more) {
        assertThat(rule.rule().at(Speed.kmh(kmh + more)).total())
                .isGreaterThan(rule.rule().at(Speed.kmh(kmh)).total());
        // the printed value may stand still, it never falls
        assertThat(rule.designDistance(Speed.kmh(kmh + more)))
                .isGreaterThanOrEqualTo(rule.designDistance(Speed.kmh(kmh)));
    }

    @Property(seed = "42")
    void downgradeIsLonger(
            @ForAll("gradedRules") PublishedRule rule,
            @ForAll @DoubleRange(min = 1, max = 200) double kmh,
            @ForAll @DoubleRange(min = -9, max = 8) double percent,
            @ForAll @DoubleRange(min = 0.01, max = 1) double more) {
        GradedStoppingRule graded = (GradedStoppingRule) rule.rule();
        assertThat(graded.at(Speed.kmh(kmh), Grade.percent(percent)).total())
                .isGreaterThan(
                        graded.at(Speed.kmh(kmh), Grade.percent(percent + more)).total());
    }

    /**
     * Quadratic, kinematic and friction form with the same numbers, in metric and in US customary units: one distance.
     */
    @Property(seed = "42")
    void formsAndUnitSystemsAgree(
            @ForAll @DoubleRange(min = 1, max = 200) double kmh,
            @ForAll @DoubleRange(min = 0, max = 3) double reactionS,
            @ForAll @DoubleRange(min = 0.1, max = 1.2) double friction) {
        Speed speed = Speed.kmh(kmh);
        TimeSpan reaction = TimeSpan.seconds(reactionS);
        double decelMps2 = friction * Deceleration.STANDARD_GRAVITY_MPS2;
        double metres = new KinematicRule("mine", reaction, Deceleration.mps2(decelMps2), OURS)
                .at(speed)
                .total()
                .inMetres();
        double squareMph = Speed.MPS_PER_MPH * Speed.MPS_PER_MPH / (2 * decelMps2) / 0.3048;
        QuadraticRule us = QuadraticRule.of(
                "mine", RuleUnits.MPH_FT, new BigDecimal(reactionS * 22 / 15), new BigDecimal(squareMph), OURS);
        QuadraticRule metric = QuadraticRule.of(
                "mine",
                RuleUnits.KMH_M,
                new BigDecimal(reactionS / 3.6),
                new BigDecimal(1 / (25.92 * decelMps2)),
                OURS);
        for (StoppingRule rule : List.of(
                us,
                metric,
                FrictionRule.exact("mine", RuleUnits.MPH_FT, reaction, Map.of(0.0, friction), OURS),
                FrictionRule.exact("mine", RuleUnits.KMH_M, reaction, Map.of(0.0, friction), OURS))) {
            // speeds are taken to nine digits: half a unit of the last is 5e-9, twice that in the square
            assertThat(rule.at(speed).total().inMetres()).isCloseTo(metres, within(1.2e-8 * metres));
        }
        assertThat(us.impliedDeceleration().inMps2()).isCloseTo(decelMps2, within(1e-9));
        assertThat(metric.impliedDeceleration().inMps2()).isCloseTo(decelMps2, within(1e-9));
        assertThat(us.impliedLag().inSeconds()).isCloseTo(reactionS, within(1e-9));
    }

    @Property(seed = "42")
    void decelerationToStopInvertsTheBrakingDistance(
            @ForAll @DoubleRange(min = 0.1, max = 60) double speedMps,
            @ForAll @DoubleRange(min = 0, max = 3) double buildUpS,
            @ForAll @DoubleRange(min = 0.1, max = 15) double decelMps2) {
        double distanceM = StopKernel.brakingDistanceM(speedMps, buildUpS, decelMps2);
        assertThat(StopKernel.decelerationToStopMps2(speedMps, buildUpS, distanceM))
                .isCloseTo(decelMps2, within(1e-9 * decelMps2));
    }
}
