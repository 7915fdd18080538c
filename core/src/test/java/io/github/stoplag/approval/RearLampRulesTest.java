package io.github.stoplag.approval;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.approval.RearLampLimit.Use;
import io.github.stoplag.lamp.LampOptics;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Standing;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RearLampRulesTest {
    @ParameterizedTest
    @CsvSource({
        "FMVSS 108, stop, 1 lighted section, 79, TOO_DIM",
        "FMVSS 108, stop, 1 lighted section, 80, WITHIN",
        "FMVSS 108, stop, 1 lighted section, 301, TOO_BRIGHT",
        "FMVSS 108, stop, 3 lighted sections, 420, WITHIN",
        "FMVSS 108, tail, 2 lighted sections, 3.4, TOO_DIM",
        "UN R148, stop, S1, 260, WITHIN",
        "UN R148, stop, S1, 261, TOO_BRIGHT",
        "UN R148, stop, S2, 730, WITHIN",
        "UN R148, high-mounted stop, S3, 24.9, TOO_DIM",
        "UN R148, tail, R1, 17, WITHIN"
    })
    void anIntensityIsHeldAgainstItsRow(
            String regulation, String lamp, String variant, double cd, RearLampCheck.Verdict verdict) {
        RearLampCheck result = RearLampLimit.published((regulation + " " + lamp + " " + variant).strip())
                .check(LuminousIntensity.candela(cd), Use.SINGLE);
        assertThat(result.verdict()).isEqualTo(verdict);
        assertThat(result.limit().source().standing()).isEqualTo(Standing.SEEN);
    }

    @Test
    void aVariableLampMayNotUseItsDayLimitByNight() {
        RearLampLimit s2 = RearLampLimit.published("UN R148 stop S2");
        LuminousIntensity bright = LuminousIntensity.candela(500);
        assertThat(s2.check(bright, Use.SINGLE).verdict()).isEqualTo(RearLampCheck.Verdict.WITHIN);
        RearLampCheck night = s2.checkByNight(bright, Use.SINGLE);
        assertThat(night.verdict()).isEqualTo(RearLampCheck.Verdict.TOO_BRIGHT);
        assertThat(night)
                .hasToString(
                        "500 cd is above [60, 260] cd of UN R148 stop S2 as a single lamp by night, UN Regulation No. 148, 01"
                                + " series (ECE/TRANS/WP.29/2022/92), Table 7, p. 22 (seen)");
        assertThat(night.cautions()).contains(Caution.LAMP_LAW);
        RearLampLimit s1 = RearLampLimit.published("UN R148 stop S1");
        assertThat(s1.checkByNight(LuminousIntensity.candela(200), Use.SINGLE).judgedAs())
                .isEqualTo("a single lamp");
        assertThatThrownBy(() -> RearLampLimit.published("UN R148 stop S9"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("rear lamp limit must be one of UN R148 stop S1, UN R148 stop S2, ")
                .hasMessageEndingWith(", got \"UN R148 stop S9\"");
    }

    @Test
    void aLampMarkedForAPairIsHeldToItsOwnGreatestIntensity() {
        // 200 cd: allowed of a single S1 lamp (260 cd), too much for one of a pair (130 cd), UN R148, table 7
        RearLampLimit s1 = RearLampLimit.published("UN R148 stop S1");
        LuminousIntensity bright = LuminousIntensity.candela(200);
        assertThat(s1.check(bright, Use.SINGLE).within()).isTrue();
        RearLampCheck marked = s1.check(bright, Use.MARKED_D);
        assertThat(marked.verdict()).isEqualTo(RearLampCheck.Verdict.TOO_BRIGHT);
        assertThat(marked)
                .hasToString("200 cd is above [60, 130] cd of UN R148 stop S1 as a lamp marked \"D\", UN Regulation"
                        + " No. 148, 01 series (ECE/TRANS/WP.29/2022/92), Table 7, p. 22 (seen)");
        RearLampLimit us = RearLampLimit.published("FMVSS 108 stop 1 lighted section");
        assertThatThrownBy(() -> us.check(bright, Use.MARKED_D))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "use must be a single lamp: FMVSS 108 stop 1 lighted section has no limit for a lamp marked"
                                + " \"D\" (49 CFR 571.108 (FMVSS 108), edition of 1 October 2025, Table IX, p. 469-470 (seen))");
    }

    @Test
    void twoMarkedLampsCountAsOneEvenIfOneFails() {
        RearLampLimit s1 = RearLampLimit.published("UN R148 stop S1");
        RearLampLimit.Pair good = s1.checkPair(LuminousIntensity.candela(100), LuminousIntensity.candela(70));
        assertThat(good.met()).isTrue();
        assertThat(good.together().intensity()).isEqualTo(LuminousIntensity.candela(170));
        // together bright enough, but either alone is below 60 cd once the other has failed
        RearLampLimit.Pair weak = s1.checkPair(LuminousIntensity.candela(50), LuminousIntensity.candela(50));
        assertThat(weak.together().within()).isTrue();
        assertThat(weak.met()).isFalse();
        assertThat(weak.second().verdict()).isEqualTo(RearLampCheck.Verdict.TOO_DIM);
        RearLampLimit.Pair bright = s1.checkPair(LuminousIntensity.candela(135), LuminousIntensity.candela(130));
        assertThat(bright.together().verdict()).isEqualTo(RearLampCheck.Verdict.TOO_BRIGHT);
        assertThat(bright.met()).isFalse();
    }

    @Test
    void aMarkedVariableLampIsJudgedByNightWithACaveat() {
        RearLampLimit s2 = RearLampLimit.published("UN R148 stop S2");
        RearLampCheck night = s2.checkByNight(LuminousIntensity.candela(200), Use.MARKED_D);
        assertThat(night.verdict()).isEqualTo(RearLampCheck.Verdict.TOO_BRIGHT);
        // the steady lamp of the same least intensity, S1, has 130 cd
        assertThat(night.highest())
                .isEqualTo(RearLampLimit.published("UN R148 stop S1").most(Use.MARKED_D));
        assertThat(night.caveats())
                .extracting(Caveat::text)
                .containsExactly(
                        "the night limit of a lamp marked \"D\" is derived: the single lamp's, reduced as by day;"
                                + " the regulation's own was not read");
    }

    @Test
    void theFieldHasALeastIntensityOfItsOwn() {
        RearLampLimit s1 = RearLampLimit.published("UN R148 stop S1");
        assertThat(s1.checkInField(LuminousIntensity.candela(0.3), Use.SINGLE).within())
                .isTrue();
        assertThat(s1.checkInField(LuminousIntensity.candela(0.2), Use.SINGLE))
                .hasToString("0.2 cd is below [0.3, 260] cd of UN R148 stop S1 as a single lamp in its field, UN"
                        + " Regulation No. 148, 01 series (ECE/TRANS/WP.29/2022/92), Table 7, p. 22 (seen)");
        assertThat(s1.checkInField(LuminousIntensity.candela(140), Use.MARKED_D).verdict())
                .isEqualTo(RearLampCheck.Verdict.TOO_BRIGHT);
        assertThatThrownBy(() -> RearLampLimit.published("UN R7 (older text) stop S1")
                        .checkInField(LuminousIntensity.candela(1), Use.SINGLE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("UN R7 (older text) stop S1 has no least intensity in the field (");
    }

    @Test
    void theLimitsOfEveryRowAreInOrder() {
        assertThat(RearLampLimit.published()).allSatisfy(row -> {
            assertThat(row.least()).isLessThan(row.most());
            // two marked lamps at their greatest are one single lamp at its greatest
            row.mostMarked()
                    .ifPresent(marked -> assertThat(2 * marked.inCandela())
                            .isEqualTo(row.most().inCandela()));
            row.leastInField().ifPresent(field -> assertThat(field).isLessThan(row.least()));
            row.mostByNight().ifPresent(night -> assertThat(night).isLessThan(row.most()));
        });
    }

    @Test
    void fiveToOneIsNotTheSameInBothRegulations() {
        LuminousIntensity tail = LuminousIntensity.candela(10);
        LuminousIntensity stop = LuminousIntensity.candela(40);
        StopTailRatio.Result un = StopTailRatio.UN_R148.check(stop, tail);
        StopTailRatio.Result us = StopTailRatio.FMVSS_108_NEAR_AXIS.check(stop, tail);
        assertThat(un.met()).isTrue();
        assertThat(us.met()).isFalse();
        assertThat(StopTailRatio.FMVSS_108_ELSEWHERE.check(stop, tail).met()).isTrue();
        assertThat(us)
                .hasToString("stop/tail 4 misses 5 of 49 CFR 571.108, edition of 1 October 2025, Table IX and S7.3.12.1"
                        + " (seen)");
        assertThat(un.toString()).startsWith("(stop + tail)/tail 5 meets 5 of UN Regulation No. 148");
        assertThatThrownBy(() -> StopTailRatio.UN_R148.check(stop, LuminousIntensity.candela(0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("intensity of the tail lamp must be in (0, 1e7] cd, got 0 cd");
    }

    private static Map<String, LuminousIntensity> lamp(PointGrid grid, double share) {
        Map<String, LuminousIntensity> result = new HashMap<>();
        for (String point : grid.points()) {
            result.put(
                    point, LuminousIntensity.candela(share * grid.least(point).inCandela()));
        }
        return result;
    }

    @Test
    void thePointsOfEachGroupAddUpToItsPublishedSum() {
        // the published group sums are the sums of the published points: a lamp at every minimum meets every group
        for (int sections = 1; sections <= 3; sections++) {
            assertThat(PointGrid.stop(sections).points()).hasSize(19);
            assertThat(PointGrid.stop(sections)
                            .check(lamp(PointGrid.stop(sections), 1.01))
                            .met())
                    .isTrue();
            assertThat(PointGrid.tail(sections)
                            .check(lamp(PointGrid.tail(sections), 1.1))
                            .met())
                    .isTrue();
            assertThat(PointGrid.stop(sections)
                            .check(lamp(PointGrid.stop(sections), 0.9))
                            .met())
                    .isFalse();
        }
        assertThat(PointGrid.stop(1).least("H-V")).isEqualTo(LuminousIntensity.candela(80));
        assertThat(PointGrid.tail(3).least("H-V")).isEqualTo(LuminousIntensity.candela(5));
    }

    @Test
    void oneWeakPointIsMadeUpByItsGroupDownToSixtyPercent() {
        PointGrid grid = PointGrid.stop(1);
        Map<String, LuminousIntensity> weak = lamp(grid, 1.3);
        weak.put("H-5L", LuminousIntensity.candela(0.61 * 80));
        assertThat(grid.check(weak).met()).isTrue();
        weak.put("H-5L", LuminousIntensity.candela(0.59 * 80));
        PointGrid.Result failed = grid.check(weak);
        assertThat(failed.met()).isFalse();
        assertThat(failed.failures()).containsExactly("H-5L: 47.2 cd is below 60 % of 80 cd");
        assertThat(failed.source().place()).isEqualTo("Table IX, p. 469-470");
        weak.remove("H-5L");
        assertThatThrownBy(() -> grid.check(weak))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("a lamp must be measured at exactly the points [5U-20L, ");
        assertThatThrownBy(() -> PointGrid.stop(4))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("lighted sections must be in [1, 3], got 4");
        assertThatThrownBy(() -> grid.least("sum 1"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageEndingWith("got \"sum 1\"");
    }

    @Test
    void opticsTurnFluxIntoIntensity() {
        // a bare source spreads 4π lm as 1 cd
        LampOptics bare = LampOptics.beam(1, 4 * Math.PI);
        assertThat(bare.intensity(LuminousFlux.lumens(4 * Math.PI)).inCandela()).isCloseTo(1, within(1e-12));
        LampOptics lamp = LampOptics.measured(LuminousIntensity.candela(110), LuminousFlux.lumens(440));
        assertThat(lamp.intensity(LuminousFlux.lumens(35)).inCandela()).isCloseTo(8.75, within(1e-12));
        assertThat(lamp).hasToString("0.25 cd/lm");
        assertThatThrownBy(() -> LampOptics.beam(1.2, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("optical efficiency must be in (0, 1], got 1.2");
    }

    @ParameterizedTest
    @CsvSource({
        "0.5, MUST_BE_OFF",
        "0.7, MUST_BE_OFF",
        "0.71, OPTIONAL",
        "1.3, OPTIONAL",
        "1.31, MANDATORY",
        "6, MANDATORY"
    })
    void regenerativeBrakingLightsTheStopLampByItsDeceleration(double mps2, StopSignalRules.StopLamp expected) {
        assertThat(StopSignalRules.regenerative(Deceleration.mps2(mps2))).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "100, 6.0, false, MAY_START",
        "50, 7.0, false, MAY_CONTINUE",
        "51, 5.9, false, MAY_CONTINUE",
        "51, 3.0, true, MAY_START",
        "20, 2.5, false, MAY_CONTINUE",
        "20, 2.4, false, MUST_BE_OFF",
        "20, 2.4, true, MAY_CONTINUE"
    })
    void theEmergencySignalHasASpeedGateAndTwoDecelerations(
            double kmh, double mps2, boolean antilock, StopSignalRules.EmergencySignal expected) {
        assertThat(StopSignalRules.emergency(Speed.kmh(kmh), Deceleration.mps2(mps2), antilock))
                .isEqualTo(expected);
    }

    @Test
    void heavyVehiclesStartItEarlierAndFilamentsFlashSlower() {
        assertThat(StopSignalRules.emergencyHeavy(Speed.kmh(80), Deceleration.mps2(4.5), false))
                .isEqualTo(StopSignalRules.EmergencySignal.MAY_START);
        assertThat(StopSignalRules.published("emergency_on_heavy").source().standing())
                .isEqualTo(Standing.FROM_MEMORY);
        assertThat(StopSignalRules.emergencyFrequencyAllowed(5, false)).isTrue();
        assertThat(StopSignalRules.emergencyFrequencyAllowed(5, true)).isFalse();
        assertThat(StopSignalRules.emergencyFrequencyAllowed(4, true)).isTrue();
        assertThat(StopSignalRules.emergencyFrequencyAllowed(2.9, false)).isFalse();
        assertThat(StopSignalRules.published("turn_flash").toString()).contains("60 to 120 1/min");
        assertThatThrownBy(() -> StopSignalRules.published("turn-flashing"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("stop signal rule must be one of turn_flash, ")
                .hasMessageEndingWith(", got \"turn-flashing\"");
    }
}
