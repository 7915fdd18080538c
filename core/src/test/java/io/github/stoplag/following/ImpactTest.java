package io.github.stoplag.following;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.Mass;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Momentum identities of a contact. */
class ImpactTest {
    private static final PairOutcome.Contact CONTACT =
            PairOutcome.Contact.of(TimeSpan.seconds(3), Speed.mps(8), Speed.mps(4), Speed.mps(12), false);

    @Property(tries = 300, seed = "41")
    void momentumAndEnergyAreAccountedFor(
            @ForAll @DoubleRange(min = 100, max = 40000) double leaderKg,
            @ForAll @DoubleRange(min = 100, max = 40000) double followerKg,
            @ForAll @DoubleRange(min = 0, max = 30) double leaderMps,
            @ForAll @DoubleRange(min = 0, max = 30) double closingMps,
            @ForAll @DoubleRange(min = 0, max = 1) double e) {
        Impact impact = new Impact(
                Mass.kg(leaderKg), Speed.mps(leaderMps), Mass.kg(followerKg), Speed.mps(leaderMps + closingMps), e);
        double leaderAfter = impact.leaderAfter().inMps();
        double followerAfter = impact.followerAfterMps();
        double before = leaderKg * leaderMps + followerKg * (leaderMps + closingMps);
        assertThat(leaderKg * leaderAfter + followerKg * followerAfter).isCloseTo(before, within(1e-9 * (1 + before)));
        assertThat(leaderAfter - followerAfter).isCloseTo(e * closingMps, within(1e-11 * (1 + closingMps)));
        double energyBefore = leaderKg * leaderMps * leaderMps / 2
                + followerKg * (leaderMps + closingMps) * (leaderMps + closingMps) / 2;
        double energyAfter = leaderKg * leaderAfter * leaderAfter / 2 + followerKg * followerAfter * followerAfter / 2;
        assertThat(impact.energyLostJ())
                .isCloseTo(energyBefore - energyAfter, within(1e-9 * (1 + energyBefore)))
                .isGreaterThanOrEqualTo(0);
        assertThat(impact.leaderChange().inMps()).isCloseTo(leaderAfter - leaderMps, within(1e-10));
        assertThat(impact.followerChange().inMps()).isCloseTo(leaderMps + closingMps - followerAfter, within(1e-10));
        assertThat(impact.impulseNs())
                .isCloseTo(leaderKg * impact.leaderChange().inMps(), within(1e-9 * (1 + before)));
    }

    @Test
    void restitutionMayBeACurveOfTheClosingSpeed() {
        Impact impact = Impact.of(CONTACT, Mass.kg(1500), Mass.kg(1500), closingMps -> 0.4 - closingMps / 40);
        assertThat(impact.restitutionRatio()).isCloseTo(0.2, within(1e-15));
        // equal masses: each changes by (1 + e) c / 2
        assertThat(impact.leaderChange().inMps()).isCloseTo(4.8, within(1e-12));
        assertThat(impact.followerChange().inMps()).isCloseTo(4.8, within(1e-12));
        assertThat(Impact.of(CONTACT, Mass.kg(1500), Mass.kg(1500), 0).leaderAfter())
                .isEqualTo(Speed.mps(8));
    }

    @Test
    void lightFollowerRebounds() {
        Impact impact = new Impact(Mass.tonnes(40), Speed.mps(0), Mass.kg(1000), Speed.mps(10), 0.3);
        assertThat(impact.followerAfterMps()).isNegative();
        assertThat(impact.followerChange().inMps()).isGreaterThan(10);
    }

    @Test
    void riskIsTheCallersCurve() {
        Impact impact = Impact.of(CONTACT, Mass.kg(1000), Mass.kg(3000), 0);
        // Δv 6 and 2 m/s
        assertThat(impact.leaderRiskRatio(changeMps -> changeMps / 10)).isCloseTo(0.6, within(1e-12));
        assertThat(impact.followerRiskRatio(changeMps -> changeMps / 10)).isCloseTo(0.2, within(1e-12));
        assertThatThrownBy(() -> impact.leaderRiskRatio(changeMps -> changeMps))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("injury risk at a change of speed of 6 m/s must be in [0, 1], got 6");
        assertThat(Impact.INJURY.text()).contains("No injury-risk curve is supplied");
    }

    @Test
    void badInputIsNamed() {
        assertThatThrownBy(() -> new Impact(Mass.kg(1), Speed.mps(10), Mass.kg(1), Speed.mps(9), 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("follower speed must not be below the leader's in a rear-end contact, got follower 9 m/s"
                        + " and leader 10 m/s");
        assertThatThrownBy(() -> Impact.of(CONTACT, Mass.kg(1), Mass.kg(1), 1.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("restitution must be in [0, 1], got 1.1");
        assertThatThrownBy(() -> Impact.of(CONTACT, Mass.kg(1), Mass.kg(1), closing -> Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("restitution must be in [0, 1], got NaN");
        assertThatThrownBy(() -> Impact.of(CONTACT, Mass.kg(0), Mass.kg(1), 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("mass must be in (0, 1000000] kg, got 0 kg");
    }

    @Test
    void publishedRestitutionsAreRatios() {
        assertThat(Impact.published()).isNotEmpty().allSatisfy(row -> {
            assertThat(row.low()).isBetween(0.0, 1.0);
            assertThat(row.high()).isBetween(row.low(), 1.0);
        });
    }
}
