package io.github.stoplag.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** Each inverse against the way forward. */
class StopInverseProperties {
    private static final double G = Deceleration.STANDARD_GRAVITY_MPS2;

    @Property(seed = "42")
    void timeGivesTheDecelerationBack(
            @ForAll @DoubleRange(min = 1, max = 100) double mps, @ForAll @DoubleRange(min = 0.1, max = 20) double a) {
        double stopS = StopKernel.stoppingTimeS(mps, 0, 0, a);
        assertThat(StopInverse.deceleration(Speed.mps(mps), Speed.mps(0), TimeSpan.seconds(stopS))
                        .inMps2())
                .isCloseTo(a, within(1e-12 * a));
    }

    @Property(seed = "42")
    void distanceGivesFrictionAndGradeBack(
            @ForAll @DoubleRange(min = 1, max = 100) double mps,
            @ForAll @DoubleRange(min = 0.45, max = 1.2) double mu,
            @ForAll @DoubleRange(min = -0.4, max = 0.4) double grade) {
        Distance braking =
                Distance.metres(StopKernel.brakingDistanceM(mps, 0, StopKernel.decelerationMps2(mu, grade, G)));
        assertThat(StopInverse.friction(Speed.mps(mps), braking, Grade.ratio(grade))
                        .inRatio())
                .isCloseTo(mu, within(1e-9));
        assertThat(StopInverse.grade(Speed.mps(mps), braking, FrictionCoefficient.of(mu))
                        .inRatio())
                .isCloseTo(grade, within(1e-6));
    }

    @Property(seed = "42")
    void twoStopsGiveReactionAndDecelerationBack(
            @ForAll @DoubleRange(min = 5, max = 40) double mps,
            @ForAll @DoubleRange(min = 1, max = 60) double moreMps,
            @ForAll @DoubleRange(min = 0, max = 5) double reactionS,
            @ForAll @DoubleRange(min = 1, max = 12) double a) {
        KinematicRule rule = new KinematicRule(
                "invented", TimeSpan.seconds(reactionS + 0.01), Deceleration.mps2(a), Source.assumed("invented"));
        Speed slower = Speed.mps(mps);
        Speed faster = Speed.mps(mps + moreMps);
        StopInverse.Common found = StopInverse.twoStops(
                slower, rule.at(slower).total(), faster, rule.at(faster).total());
        assertThat(found.reaction().inSeconds()).isCloseTo(reactionS + 0.01, within(1e-8));
        assertThat(found.deceleration().inMps2()).isCloseTo(a, within(1e-8));
    }

    @Example
    void aHandWorkedSheet() {
        // 20 m/s in 4 s: 5 m/s²; 30 m at 10 m/s and 80 m at 20 m/s: 1/(2a) = (4 - 3)/10, t = 3 - 1 = 2 s, a = 5 m/s²
        assertThat(StopInverse.deceleration(Speed.mps(20), Speed.mps(0), TimeSpan.seconds(4)))
                .isEqualTo(Deceleration.mps2(5));
        StopInverse.Common found =
                StopInverse.twoStops(Speed.mps(10), Distance.metres(30), Speed.mps(20), Distance.metres(80));
        assertThat(found.reaction().inSeconds()).isCloseTo(2, within(1e-12));
        assertThat(found.deceleration().inMps2()).isCloseTo(5, within(1e-12));
    }

    @Example
    void whatCannotBeIsNamed() {
        assertThatThrownBy(() -> StopInverse.deceleration(Speed.mps(20), Speed.mps(0), TimeSpan.seconds(0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("braking time must be ")
                .hasMessageEndingWith(", got 0 s");
        assertThatThrownBy(() -> StopInverse.friction(Speed.mps(10), Distance.metres(1000), Grade.percent(30)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith(
                        "friction that stops a vehicle from 10 m/s within 1000 m on a grade of 30 % must be ");
        assertThatThrownBy(() -> StopInverse.grade(Speed.mps(50), Distance.metres(20), FrictionCoefficient.of(0.5)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("grade that stops a vehicle from 50 m/s within 20 m with friction 0.5 must be ");
        assertThatThrownBy(() ->
                        StopInverse.twoStops(Speed.mps(10), Distance.metres(30), Speed.mps(20), Distance.metres(60)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("rise of distance over speed between two stops, per speed must be ");
    }
}
