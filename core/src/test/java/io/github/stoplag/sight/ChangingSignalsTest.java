package io.github.stoplag.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.approval.StopSignalRules;
import io.github.stoplag.lamp.FlashingLamp;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.PulseWidthDimming;
import io.github.stoplag.lamp.SwitchedLamp;
import io.github.stoplag.lamp.SwitchedOnset;
import io.github.stoplag.lamp.SwitchingPattern;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lamps that flash, are dimmed or go out, before the same detectors as any other. */
class ChangingSignalsTest {
    private static final double TAU = 0.1;
    private static final LedLamp STEP = LaboratoryLamps.led();
    private static final SwitchedLamp BULB =
            SwitchedLamp.filament(LaboratoryLamps.bulb(), LaboratoryLamps.conditions());
    private static final Detector EYE = IntegratingEye.of(TimeSpan.seconds(TAU), LuminousIntensity.candela(3));

    private static double seenS(OnsetCurve onset, double cd) {
        return EYE.detect(LampSignal.of(onset, LuminousIntensity.candela(cd)))
                .orElseThrow()
                .inSeconds();
    }

    private static SwitchedOnset emergency(SwitchedLamp lamp, double hz, double untilS) {
        return SwitchedOnset.flashing(lamp, SwitchingPattern.flashing(hz, 0.5), TimeSpan.seconds(untilS));
    }

    /** A pulse of 125 ms that suffices is seen as the steady lamp is: t = τ ln(I/(I − Ith)). */
    @Test
    void firstFlashThatSufficesIsSeenAsTheSteadyLampIs() {
        assertThat(seenS(emergency(STEP, 4, 3), 60)).isCloseTo(TAU * Math.log(60 / 57.0), within(1e-11));
        assertThat(seenS(emergency(STEP, 4, 3), 4.5)).isCloseTo(TAU * Math.log(4.5 / 1.5), within(1e-10));
    }

    /** The stimulus carried pulse by pulse in closed form: E ← I + (E − I) e^(−on/τ), then E e^(−off/τ). */
    @ParameterizedTest
    @CsvSource({"4.1, 4", "4.15, 4", "3.6, 4", "3.3, 3", "3.4, 5", "5.5, 15"})
    void dimFlashesGatherUntilOneSuffices(double cd, double hz) {
        double halfS = 0.5 / hz;
        double untilS = 2;
        double stimulus = 0;
        double atS = 0;
        double expected = Double.NaN;
        while (Double.isNaN(expected)) {
            boolean steady = atS >= untilS - 1e-9;
            double peak = steady ? cd : cd + (stimulus - cd) * Math.exp(-halfS / TAU);
            if (peak >= 3) {
                expected = atS + TAU * Math.log((cd - stimulus) / (cd - 3));
            } else {
                stimulus = peak * Math.exp(-halfS / TAU);
                atS += 2 * halfS;
            }
        }
        assertThat(seenS(emergency(STEP, hz, untilS), cd)).isCloseTo(expected, within(1e-9));
    }

    @Test
    void courseIsThatOfTheFlashingLampUntilItStaysLit() {
        SwitchingPattern pattern = SwitchingPattern.flashing(4, 0.5);
        FlashingLamp endless = FlashingLamp.of(BULB, pattern);
        SwitchedOnset onset = SwitchedOnset.flashing(BULB, pattern, TimeSpan.seconds(2));
        for (double s = 0.003; s < 2; s += 0.0171) {
            assertThat(onset.relativeIntensity(s)).isCloseTo(endless.relativeIntensity(s), within(1e-7));
        }
        assertThat(onset.relativeIntensity(Double.POSITIVE_INFINITY)).isCloseTo(1, within(1e-9));
        assertThat(onset.relativeIntensity(onset.settledS())).isCloseTo(1, within(1.01e-3));
        assertThat(onset.settledS()).isBetween(2.0, 3.0);
        assertThat(onset.timeToLevelS(0.2).orElseThrow())
                .as("the first flash is the rise from cold")
                .isCloseTo(LaboratoryLamps.standard().timeToLevelS(0.2).orElse(0), within(1e-6));
    }

    /** UN R48, 6.23: 4 Hz ±1 Hz, not above 4 Hz with a filament: there the filament still makes flashes to be seen. */
    @Test
    void flashRulesAndWhatTheEyeMakesOfThem() {
        assertThat(StopSignalRules.published("emergency_flash").high()).isEqualTo(5);
        assertThat(StopSignalRules.published("emergency_flash_filament").high()).isEqualTo(4);
        double steady = seenS(LaboratoryLamps.standard(), 60);
        assertThat(seenS(emergency(BULB, 3, 3), 60)).isCloseTo(steady, within(1e-6));
        assertThat(seenS(emergency(BULB, 4, 3), 60)).isCloseTo(steady, within(1e-6));
        assertThat(seenS(emergency(BULB, 4, 3), 12))
                .as("a dim filament lamp is seen later for its flashing")
                .isGreaterThan(seenS(LaboratoryLamps.standard(), 12) + 0.02);
        assertThat(seenS(emergency(STEP, 4, 3), 60)).isLessThan(steady - 0.05);
    }

    /** What an eye of 0.1 s sees of pulses of 2 ms is their mean; a threshold without summation sees the first. */
    @Test
    void dimmedLampIsSeenByItsMean() {
        SwitchingPattern pulses = SwitchingPattern.flashing(500, 0.2);
        OnsetCurve dimmed = SwitchedOnset.flashing(STEP, pulses, TimeSpan.seconds(1));
        double mean = 100 * PulseWidthDimming.of(STEP, 500, 0.2).meanRatio();
        assertThat(mean).isCloseTo(20, within(1e-6));
        assertThat(seenS(dimmed, 100)).isCloseTo(TAU * Math.log(mean / (mean - 3)), within(0.002));
        assertThat(InstantEye.of(Threshold.intensity(LuminousIntensity.candela(30)))
                        .detect(LampSignal.of(dimmed, LuminousIntensity.candela(100)))
                        .orElseThrow()
                        .inSeconds())
                .isZero();
        assertThat(PulseWidthDimming.of(STEP, 25, 0.2)
                        .seenByCamera(TimeSpan.millis(1))
                        .dark())
                .as("a camera's frame may show it dark, the eye never loses it")
                .isTrue();
    }

    /** One lamp flashes, one warms up beside it: the sum rises and falls; against small steps in time. */
    @ParameterizedTest
    @CsvSource({"4, 8", "3.2, 4", "2, 2.9"})
    void flashingLedOverAWarmingFilamentIsFollowedExactly(double ledCd, double bulbCd) {
        OnsetCurve flashing = emergency(LedLamp.of(TimeSpan.millis(3), TimeSpan.millis(20)), 4, 1.5);
        LampSignal sum = LampSet.of(
                        LampSet.Member.of("led", LampSignal.of(flashing, LuminousIntensity.candela(ledCd))),
                        LampSet.Member.of(
                                        "bulb",
                                        LampSignal.of(LaboratoryLamps.standard(), LuminousIntensity.candela(bulbCd)))
                                .after(TimeSpan.millis(10)))
                .merged();
        double seen = EYE.detect(sum).orElseThrow().inSeconds();
        double step = 2e-5;
        double stimulus = 0;
        double atS = 0;
        while (stimulus < 3) {
            double cd = (sum.intensityAt(TimeSpan.seconds(atS)).inCandela()
                            + sum.intensityAt(TimeSpan.seconds(atS + step)).inCandela())
                    / 2;
            stimulus = cd + (stimulus - cd) * Math.exp(-step / TAU);
            atS += step;
        }
        assertThat(seen).isCloseTo(atS, within(1e-4));
    }

    @Test
    void switchingsAreChecked() {
        assertThatThrownBy(() -> SwitchedOnset.of(STEP)).hasMessageStartingWith("a switched lamp must be switched");
        assertThatThrownBy(() -> SwitchedOnset.of(STEP, TimeSpan.seconds(1), TimeSpan.seconds(1)))
                .hasMessage("switching 1 must be after switching 0 at 1 s, got 1 s");
        assertThatThrownBy(() -> emergency(STEP, 4, 0)).hasMessageStartingWith("time of flashing must be in (0, 1000]");
        SwitchedOnset out = SwitchedOnset.of(STEP, TimeSpan.seconds(0), TimeSpan.seconds(0.05));
        assertThat(out.relativeIntensity(1)).isZero();
        assertThat(out.caveats()).anyMatch(c -> c.text().contains("ends dark"));
        assertThat(EYE.detect(LampSignal.of(out, LuminousIntensity.candela(5))))
                .isInstanceOf(Detection.NeverSeen.class);
    }
}
