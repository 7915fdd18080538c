package io.github.stoplag.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Caveat;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class BrakeRequirementTest {
    /** A stop with 0.1 s dead time and 0.3 s build-up, sampled at 100 Hz to rest. */
    private static RecordedStop recorded(Speed speed, double decelMps2) {
        Trajectory motion = Trajectory.stop(speed.inMps(), 0.1, 0.3, decelMps2);
        int n = (int) (motion.restS().orElseThrow() * 100) + 2;
        double[] timeS = IntStream.range(0, n).mapToDouble(i -> i * 0.01).toArray();
        double[] speedMps = IntStream.range(0, n)
                .mapToDouble(i -> i == n - 1 ? 0 : motion.speedAtMps(timeS[i]))
                .toArray();
        return RecordedStop.ofTimes(timeS, speedMps, Speed.mps(0));
    }

    @Test
    void aStopIsComparedWithDecelerationAndDistance() {
        BrakeRequirement cars = BrakeRequirement.published("un-r13h-type0");
        BrakeRequirement.Verdict good = cars.check(recorded(Speed.kmh(100), 7));
        assertThat(good.met()).isTrue();
        assertThat(good.findings()).hasSize(2);
        assertThat(good.caveats()).isEmpty();
        assertThat(good.requirement()).isSameAs(cars);
        BrakeRequirement.Verdict weak = cars.check(recorded(Speed.kmh(100), 6.2));
        assertThat(weak.met()).isFalse();
        assertThat(weak.findings().get(0).met()).isFalse();
        assertThat(weak.findings().get(0).text())
                .startsWith("mean fully developed deceleration 6.2")
                .endsWith(" m/s², at least 6.43 m/s²");
        // 27.78 x 0.25 + 27.78²/12.4 = 69.2 m: the distance alone is met
        assertThat(weak.findings().get(1).met()).isTrue();
    }

    @Test
    void oneOfTwoCanSuffice() {
        BrakeRequirement laden = BrakeRequirement.published("gb7258-laden");
        assertThat(laden.oneSuffices()).isTrue();
        BrakeRequirement.Verdict verdict = laden.check(recorded(Speed.kmh(50), 5.85));
        assertThat(verdict.findings()).extracting(BrakeRequirement.Finding::met).containsExactly(false, true);
        assertThat(verdict.met()).isTrue();
    }

    @Test
    void aSlowTestIsScaledAndSaid() {
        BrakeRequirement cars = BrakeRequirement.published("fmvss135-cold");
        BrakeRequirement.Verdict verdict = cars.check(recorded(Speed.kmh(90), 7));
        assertThat(verdict.findings().get(0).text())
                .endsWith("from 25 m/s, at most 56.7 m (limit 70 m from 27.7778 m/s)");
        assertThat(verdict.caveats().get(0).text())
                .isEqualTo("initial speed 25 m/s is below 98 % of the prescribed 27.7778 m/s");
    }

    /** The limit grows with v²: 70 m (130/100)² = 118.3 m. */
    @Test
    void aFastTestIsScaledAndSaid() {
        BrakeRequirement cars = BrakeRequirement.published("fmvss135-cold");
        BrakeRequirement.Verdict verdict = cars.check(recorded(Speed.kmh(130), 7));
        assertThat(verdict.findings().get(0).text())
                .endsWith("from 36.1111 m/s, at most 118.3 m (limit 70 m from 27.7778 m/s)");
        assertThat(verdict.caveats())
                .extracting(Caveat::text)
                .contains(
                        "initial speed 36.1111 m/s is above 102 % of the prescribed 27.7778 m/s: the limit is scaled by v², which"
                                + " allows more than a rule with a term in v");
        assertThat(cars.check(recorded(Speed.kmh(101), 7)).caveats()).isEmpty();
    }

    @Test
    void aRecordingThatEndsEarlyIsRefused() {
        RecordedStop early = RecordedStop.of(new double[] {0, 30, 60}, new double[] {27.8, 15, 2});
        assertThatThrownBy(() -> BrakeRequirement.published("fmvss135-cold").check(early))
                .hasMessage("recording must run to rest for a stopping distance, it ends while the vehicle moves");
        assertThat(BrakeRequirement.published("stvzo41-motor")
                        .check(early)
                        .caveats()
                        .get(0)
                        .text())
                .startsWith("only 1 samples lie between ");
        assertThatThrownBy(() -> BrakeRequirement.published("un-r13h"))
                .hasMessageStartingWith("brake requirement must be one of un-r13h-type0, ")
                .hasMessageEndingWith(", got \"un-r13h\"");
    }

    /** The tables of requirements and of rules must tell the same story: limit = rule at the test speed. */
    @Test
    void limitsAgreeWithTheRules() {
        for (List<String> pair : List.of(
                List.of("un-r13h-type0", "un-r13h-type0"),
                List.of("fmvss135-power-unit", "fmvss135-power-unit"),
                List.of("un-r13-m1", "un-r13-m1"),
                List.of("un-r13-n1", "un-r13-type0"),
                List.of("un-r13-heavy", "un-r13-type0"),
                List.of("un-r13-secondary-bus", "un-r13-secondary-bus"),
                List.of("fmvss121-severe", "fmvss121-severe"))) {
            BrakeRequirement.Limit limit =
                    BrakeRequirement.published(pair.get(0)).limit().orElseThrow();
            double rule = PublishedRule.published(pair.get(1))
                    .rule()
                    .at(limit.from())
                    .total()
                    .inMetres();
            assertThat(limit.distance().inMetres()).as(pair.toString()).isCloseTo(rule, within(0.05));
        }
        assertThat(BrakeRequirement.published())
                .allSatisfy(requirement -> assertThat(requirement.minimum().isPresent()
                                || requirement.limit().isPresent())
                        .as(requirement.id())
                        .isTrue());
        assertThat(BrakeRequirement.published().stream().map(BrakeRequirement::id))
                .doesNotHaveDuplicates();
    }
}
