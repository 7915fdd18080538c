package io.github.stoplag.following;

import static io.github.stoplag.Refusals.assertMessage;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Published measures against the exact border of the encounter, and their refusals. */
class MeasuresTest {
    private static Distance m(double metres) {
        return Distance.metres(metres);
    }

    private static Speed v(double mps) {
        return Speed.mps(mps);
    }

    private static Deceleration a(double mps2) {
        return Deceleration.mps2(mps2);
    }

    @Test
    void timeToCollisionDividesGapByClosingSpeed() {
        assertThat(SurrogateMeasures.timeToCollision(m(30), v(25), v(15))).contains(TimeSpan.seconds(3));
        assertThat(SurrogateMeasures.timeToCollision(m(30), v(15), v(15))).isEmpty();
        assertThat(SurrogateMeasures.timeToCollision(m(30), v(15), v(25))).isEmpty();
    }

    @Property(tries = 500, seed = "41")
    void rateToAvoidACrashJustAvoidsContact(
            @ForAll @DoubleRange(min = 1, max = 35) double follower,
            @ForAll @DoubleRange(min = 0, max = 35) double leader,
            @ForAll @DoubleRange(min = 0, max = 9) double leaderMps2,
            @ForAll @DoubleRange(min = 3, max = 80) double gap) {
        double rate = SurrogateMeasures.decelerationToAvoidCrash(m(gap), v(follower), v(leader), a(leaderMps2))
                .inMps2();
        if (rate > 0.01 && rate < 190) {
            Trajectory ahead = Trajectory.stop(leader, 0, 0, leaderMps2);
            assertThat(Encounter.of(ahead, Trajectory.stop(follower, 0, 0, rate * (1 + 1e-6)), m(gap))
                            .outcome())
                    .isInstanceOf(PairOutcome.NoContact.class);
            assertThat(Encounter.of(ahead, Trajectory.stop(follower, 0, 0, rate * (1 - 1e-6)), m(gap))
                            .outcome())
                    .isInstanceOf(PairOutcome.Contact.class);
        }
    }

    @Test
    void rateIsContinuousWhereTheLeaderJustStands() {
        // 2 h / (v_F − v_L) = v_L / a_L: 2·20/10 = 20/5
        double below = SurrogateMeasures.decelerationToAvoidCrash(m(20), v(30), v(20), a(5 - 1e-9))
                .inMps2();
        double above = SurrogateMeasures.decelerationToAvoidCrash(m(20), v(30), v(20), a(5 + 1e-9))
                .inMps2();
        assertThat(below).isCloseTo(7.5, within(1e-8));
        assertThat(above).isCloseTo(7.5, within(1e-8));
    }

    @Test
    void safetyTimeZeroIsTheRateToAvoidACrash() {
        assertThat(SurrogateMeasures.decelerationToSafetyTime(m(40), v(30), v(20), TimeSpan.seconds(0)))
                .isEqualTo(SurrogateMeasures.decelerationToAvoidCrash(m(40), v(30), v(20)));
        assertThat(SurrogateMeasures.decelerationToSafetyTime(m(40), v(30), v(20), TimeSpan.seconds(1))
                        .inMps2())
                .isCloseTo(2.5, within(1e-12));
    }

    @Test
    void proportionOfStoppingDistanceIsOneAtThePointOfNoReturn() {
        assertThat(SurrogateMeasures.proportionOfStoppingDistanceRatio(m(50), v(20), a(4)))
                .isEqualTo(1);
        assertThat(SurrogateMeasures.proportionOfStoppingDistanceRatio(m(25), v(20), a(4)))
                .isEqualTo(0.5);
    }

    @Property(tries = 300, seed = "41")
    void responsibilitySensitiveDistanceIsTheGapNeededUnlessTheFollowerBrakesHarder(
            @ForAll @DoubleRange(min = 1, max = 35) double follower,
            @ForAll @DoubleRange(min = 1, max = 35) double leader,
            @ForAll @DoubleRange(min = 0.1, max = 2) double rho,
            @ForAll @DoubleRange(min = 0, max = 3) double speedingUp,
            @ForAll @DoubleRange(min = 2, max = 6) double least,
            @ForAll @DoubleRange(min = 0, max = 6) double harder) {
        ResponsibilitySensitiveDistance rule =
                new ResponsibilitySensitiveDistance(TimeSpan.seconds(rho), speedingUp, a(least), a(least + harder));
        Trajectory behind = Trajectory.startingAt(follower)
                .changeTo(-speedingUp, 0)
                .hold(rho)
                .changeTo(least, 0)
                .build();
        double needed = Encounter.of(Trajectory.stop(leader, 0, 0, least + harder), behind, m(0))
                .gapNeeded()
                .orElseThrow()
                .inMetres();
        assertThat(rule.caveats()).isEmpty();
        assertThat(rule.distance(v(follower), v(leader)).inMetres()).isCloseTo(needed, within(1e-8));
    }

    @Test
    void responsibilitySensitiveDistanceIsTooShortBehindASofterBrakingLeader() {
        ResponsibilitySensitiveDistance rule =
                new ResponsibilitySensitiveDistance(TimeSpan.seconds(1), 0, a(30 / 7.0), a(3));
        // the stopping distances differ by −15 m, yet 5 m are needed on the way
        assertThat(rule.distance(v(30), v(30))).isEqualTo(m(0));
        assertThat(rule.caveats())
                .singleElement()
                .satisfies(caveat -> assertThat(caveat.text())
                        .isEqualTo("the follower's least deceleration 4.28571 m/s² exceeds the leader's hardest"
                                + " 3 m/s²: a difference of stopping distances can be too short then"));
    }

    @Test
    void headwayRulesNameTheirSources() {
        assertThat(HeadwayRule.published()).hasSizeGreaterThan(20).allSatisfy(rule -> {
            assertThat(rule.source().document()).isNotBlank();
            assertThat(rule.rule()).isNotBlank();
        });
        assertThat(HeadwayRule.twoSecond()
                        .minimumGap(Speed.kmh(72))
                        .orElseThrow()
                        .inMetres())
                .isCloseTo(40, within(1e-12));
        assertThat(HeadwayRule.halfSpeedometer()
                        .minimumGap(Speed.kmh(130))
                        .orElseThrow()
                        .inMetres())
                .isCloseTo(65, within(1e-12));
        assertThat(HeadwayRule.published("de-12.5.1").minimumGap(Speed.kmh(80))).isEmpty();
        assertThat(HeadwayRule.published("de-12.5.1").toString())
                .isEqualTo("offence below 5/10 of half the speedometer: 0.5 of half the speedometer above 80 km/h,"
                        + " German federal schedule of fines (BKatV), number 12.5.1 (seen)");
        // StVO, section 4 (3): lorries above 3.5 t and buses, on motorways, faster than 50 km/h, at least 50 m (seen)
        HeadwayRule heavy = HeadwayRule.published("de-heavy");
        assertThat(heavy)
                .asString()
                .isEqualTo(
                        "lorries of more than 3.5 t permitted mass and buses on motorways: 50 m above 50 km/h, German road"
                                + " traffic regulations (StVO), section 4 (3) (seen)");
        assertThat(heavy.minimumGap(Speed.kmh(50))).isEmpty();
        assertThat(heavy.minimumGap(Speed.kmh(80)).orElseThrow().inMetres()).isEqualTo(50);
        assertThatThrownBy(() -> HeadwayRule.published("gb-2-second"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("headway rule must be one of gb-two-second, ")
                .hasMessageEndingWith("got \"gb-2-second\"");
    }

    @Test
    void thresholdsAreSourced() {
        assertThat(SurrogateMeasures.published())
                .isNotEmpty()
                .allSatisfy(row -> assertThat(row.source().document()).isNotBlank())
                .anySatisfy(row -> {
                    assertThat(row.id()).isEqualTo("drac-r157");
                    assertThat(row.low()).isEqualTo(5);
                });
    }

    @Test
    void stabilityBordersAreNamed() {
        assertThat(model(0.3678, 1).local()).isEqualTo(LinearFollowing.Local.NON_OSCILLATORY);
        assertThat(model(0.3679, 1).local()).isEqualTo(LinearFollowing.Local.DAMPED);
        assertThat(model(1.5707, 1).local()).isEqualTo(LinearFollowing.Local.DAMPED);
        assertThat(model(1.5708, 1).local()).isEqualTo(LinearFollowing.Local.UNSTABLE);
        assertThatThrownBy(() -> model(1.6, 1).largestGain())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sensitivity times delay must be below pi/2 = 1.5708 for a gain to exist, got 1.6");
        assertThatThrownBy(() -> model(0, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sensitivity must be in (0, 100] 1/s, got 0 1/s");
    }

    private static LinearFollowing model(double sensitivityPerS, double delayS) {
        return new LinearFollowing(sensitivityPerS, TimeSpan.seconds(delayS));
    }

    @Property(tries = 200, seed = "41")
    void noFrequencyBeatsTheLargestGain(
            @ForAll @DoubleRange(min = 0.05, max = 1.5) double product,
            @ForAll @DoubleRange(min = 0.2, max = 3) double delay) {
        LinearFollowing model = model(product / delay, delay);
        LinearFollowing.Gain largest = model.largestGain();
        double scanned = 0;
        for (int i = 0; i <= 4000; i++) {
            scanned = Math.max(scanned, model.gainRatio(i * 4 * Math.PI / delay / 4000));
        }
        assertThat(scanned).isLessThanOrEqualTo(largest.ratio() * (1 + 1e-12));
        assertThat(largest.ratio()).isLessThanOrEqualTo(scanned * (1 + 1e-2));
        assertThat(largest.ratio() > 1).isEqualTo(!model.stringStable());
    }

    @Test
    void delayEquationItselfShowsTheGain() {
        // v'(t) = λ (u(t − T) − v(t − T)) driven by a sine, Euler's method in small steps
        LinearFollowing model = model(0.37, 1.5);
        double omega = model.largestGain().atRadPerS();
        double step = 1e-3;
        int lag = 1500;
        double[] v = new double[500_000];
        double largest = 0;
        for (int i = 0; i + 1 < v.length; i++) {
            double heard = i >= lag ? Math.sin(omega * (i - lag) * step) - v[i - lag] : 0;
            v[i + 1] = v[i] + step * 0.37 * heard;
            largest = i > 400_000 ? Math.max(largest, Math.abs(v[i])) : 0;
        }
        assertThat(largest).isCloseTo(model.largestGain().ratio(), within(2e-3));
    }

    @Test
    void badInputIsNamed() {
        assertMessage(
                () -> SurrogateMeasures.decelerationToAvoidCrash(m(0), v(20), v(10)),
                "gap must be in (0, 100000] m, got 0 m");
        assertMessage(
                () -> SurrogateMeasures.decelerationToAvoidCrash(m(0.1), v(20), v(10)),
                "deceleration rate to avoid a crash must be in [0, 200] m/s², got 500 m/s²");
        assertMessage(
                () -> SurrogateMeasures.decelerationToSafetyTime(m(15), v(20), v(10), TimeSpan.seconds(2)),
                "gap behind a leader with this safety time must be in (20, 100000] m, got 15 m");
        assertMessage(
                () -> SurrogateMeasures.proportionOfStoppingDistanceRatio(m(15), v(1e-160), a(5)),
                "proportion of stopping distance at 1e-160 m/s must be in [0, 1e300], got Infinity");
        assertMessage(
                () -> SurrogateMeasures.proportionOfStoppingDistanceRatio(m(15), v(0), a(5)),
                "speed must be in (0, 150] m/s, got 0 m/s");
        assertMessage(() -> UnR157Gap.timeGap(Speed.kmh(61)), "speed must be in [0, 60] km/h, got 61 km/h");
        assertMessage(
                () -> new ResponsibilitySensitiveDistance(TimeSpan.seconds(-1), 0, a(5), a(5)),
                "response time must be in [0, 30] s, got -1 s");
        assertMessage(
                () -> new ResponsibilitySensitiveDistance(TimeSpan.seconds(1), Double.NaN, a(5), a(5)),
                "acceleration during the response must be in [0, 20] m/s², got NaN m/s²");
    }
}
