package io.github.stoplag.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.kernel.SkidKernel;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Speed;
import org.junit.jupiter.api.Test;

class SkidTest {
    private static final Speed REST = Speed.mps(0);

    /**
     * Source: page "The Combined Speed Formula": 30, 20 and 10 mph lost make 37 mph; 60 mph less 20 mph leaves 56.6 mph
     * (seen).
     */
    @Test
    void combinesSpeedsLostAsPublished() {
        assertThat(Skid.combine(Speed.mph(30), Speed.mph(20), Speed.mph(10)).inMph())
                .isCloseTo(37, within(0.5));
        assertThat(Skid.combine(Speed.mph(30), Speed.mph(20), Speed.mph(10)).inMph())
                .isCloseTo(Math.sqrt(1400), within(1e-12));
        Skid twentyMph = Skid.over(new Skid.Section(Distance.feet(20), speedLost(20, 20)));
        Skid.End end = twentyMph.run(Speed.mph(60));
        assertThat(end)
                .isInstanceOfSatisfying(
                        Skid.StillMoving.class,
                        moving -> assertThat(moving.speed().inMph()).isCloseTo(56.6, within(0.05)));
    }

    private static double speedLost(double mph, double feet) {
        double v = Speed.mph(mph).inMps();
        return v * v / (2 * Distance.feet(feet).inMetres());
    }

    /**
     * Source: OpenStax University Physics vol. 1 (m58310): friction 0.55, skid 30.5 m (question seen, 18.13 m/s
     * derived).
     */
    @Test
    void findsTheSpeedOfTheTextbookSkid() {
        Skid skid = Skid.over(Skid.Section.of(Distance.metres(30.5), FrictionCoefficient.of(0.55), Grade.ratio(0)));
        assertThat(skid.entrySpeed(REST).inMps()).isCloseTo(18.13, within(0.01));
        assertThat(Speed.mps(13.4)).isLessThan(skid.entrySpeed(REST));
    }

    /**
     * Source: OpenStax College Physics 2e (m42139): 6 degrees downhill, friction 1.0, 0.7, 0.1 (question seen; 8.722,
     * 5.798, -0.050 m/s² derived with g = 9.80). The shoe-on-ice case cannot hold.
     */
    @Test
    void iceOnADownslopeGainsSpeed() {
        assertThat(downhill(1.0).netDecelMps2()).isCloseTo(8.722, within(0.01));
        assertThat(downhill(0.7).netDecelMps2()).isCloseTo(5.798, within(0.01));
        assertThat(downhill(0.1).netDecelMps2()).isCloseTo(-0.0497, within(0.001));
        assertThat(downhill(0.1).slows()).isFalse();
        assertThat(Skid.over(downhill(0.1)).run(Speed.mps(10)))
                .isInstanceOfSatisfying(
                        Skid.StillMoving.class,
                        moving -> assertThat(moving.speed()).isGreaterThan(Speed.mps(10)));
        assertThatThrownBy(() -> Skid.over(downhill(0.1)).entrySpeed(Speed.mps(1)))
                .hasMessage("speed at the end of section 0 must be at least 2.23117 m/s, which the slope alone gives,"
                        + " got 1 m/s");
    }

    private static Skid.Section downhill(double friction) {
        return Skid.Section.of(Distance.metres(50), FrictionCoefficient.of(friction), Grade.degrees(-6));
    }

    /** The rule of the trade V² = 30 d (f + G) in mph and ft is rounded from 29.9 (common practice, no source). */
    @Test
    void meetsTheRuleOfTheTrade() {
        Skid skid = Skid.over(
                Skid.Section.of(Distance.feet(100), FrictionCoefficient.of(0.7), Grade.ratio(0)),
                Skid.Section.of(Distance.feet(40), FrictionCoefficient.of(0.35), Grade.ratio(0)));
        assertThat(skid.entrySpeed(Speed.mph(15)).inMph())
                .isCloseTo(Math.sqrt(30 * (100 * 0.7 + 40 * 0.35) + 225), within(0.08));
    }

    @Test
    void runsBackAndForthOverSeveralSurfaces() {
        Skid skid = Skid.over(
                Skid.Section.of(Distance.metres(12), Deceleration.mps2(7)),
                Skid.Section.of(Distance.metres(8), Deceleration.mps2(2)),
                Skid.Section.of(Distance.metres(5), FrictionCoefficient.of(0.05), Grade.percent(-8)),
                Skid.Section.of(Distance.metres(20), Deceleration.mps2(4)));
        Speed entry = skid.entrySpeed(Speed.mps(6));
        assertThat(skid.run(entry))
                .isInstanceOfSatisfying(
                        Skid.StillMoving.class,
                        moving -> assertThat(moving.speed().inMps()).isCloseTo(6, within(1e-12)));
        assertThat(entry.inMps())
                .isCloseTo(
                        SkidKernel.entrySpeedMps(6, new double[] {7, 2, ice(), 4}, new double[] {12, 8, 5, 20}),
                        within(1e-13));
        assertThat(skid.run(Speed.mps(15))).isInstanceOfSatisfying(Skid.AtRest.class, rest -> {
            assertThat(rest.section()).isEqualTo(3);
            double left = 225 - 2 * (7 * 12 + 2 * 8 + ice() * 5);
            assertThat(rest.skidded().inMetres()).isCloseTo(25 + left / 8, within(1e-12));
        });
    }

    private static double ice() {
        return 9.80665 * (0.05 - 0.08) / Math.sqrt(1 + 0.08 * 0.08);
    }

    @Test
    void convertsLengthAndSpeedBothWays() {
        Distance length = Skid.length(Speed.kmh(90), Speed.kmh(30), Deceleration.mps2(6.5));
        Skid skid = Skid.over(Skid.Section.of(length, Deceleration.mps2(6.5)));
        assertThat(skid.entrySpeed(Speed.kmh(30)).inKmh()).isCloseTo(90, within(1e-12));
        assertThat(SkidKernel.exitSpeedMps(25, 6.5, length.inMetres())).isCloseTo(30 / 3.6, within(1e-12));
        assertThat(SkidKernel.exitSpeedMps(5, 6.5, 100)).isZero();
    }

    @Test
    void namesWhatIsWrong() {
        assertThatThrownBy(Skid::over).hasMessage("a skid needs at least one section, got none");
        assertThatThrownBy(() -> Skid.Section.of(Distance.metres(-1), Deceleration.mps2(5)))
                .hasMessage("skid length must be in [0, 1e7] m, got -1 m");
        assertThatThrownBy(() -> Skid.length(Speed.mps(10), Speed.mps(12), Deceleration.mps2(5)))
                .hasMessage("exit speed must be in [0, 10] m/s, got 12 m/s");
        assertThatThrownBy(() -> Skid.length(Speed.mps(10), REST, Deceleration.mps2(0)))
                .hasMessage("deceleration must be in (0, 200] m/s², got 0 m/s²");
        assertThatThrownBy(() -> SkidKernel.entrySpeedMps(0, new double[2], new double[1]))
                .hasMessage("a deceleration is needed for each length, got 2 decelerations and 1 lengths");
        assertThatThrownBy(() -> SkidKernel.entrySpeedMps(0, Double.NaN, 1))
                .hasMessage("deceleration must be in [-200, 200] m/s², got NaN m/s²");
    }
}
