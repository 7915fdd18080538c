package io.github.stoplag.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LampSetTest {
    private static final OnsetCurve FILAMENT = LaboratoryLamps.standard();
    private static final OnsetCurve STEP = LaboratoryLamps.led();
    private static final TimeSpan TAU = TimeSpan.seconds(0.1);
    private static final Detector EYE = IntegratingEye.of(TAU, LuminousIntensity.candela(3));
    private static final Distance NEAR = Distance.metres(30);
    private static final Distance FAR = Distance.km(8);

    static List<Detector> detectors() {
        Threshold threshold = Threshold.intensity(LuminousIntensity.candela(3));
        return List.of(
                EYE,
                InstantEye.of(threshold),
                ShareOfFinal.of(0.3),
                ModifiedAllard.of(TAU).detector(threshold),
                BlondelReyDouglas.of(TAU).detector(threshold));
    }

    private static LampSet.Member lamp(String name, OnsetCurve onset, double cd) {
        return LampSet.Member.of(name, LampSignal.of(onset, LuminousIntensity.candela(cd)));
    }

    private static double seenS(Detection detection) {
        return detection.orElseThrow().inSeconds();
    }

    private static double mergedS(Detector detector, LampSet.Member... lamps) {
        return seenS(detector.detect(LampSet.of(lamps).merged()));
    }

    @ParameterizedTest
    @MethodSource("detectors")
    void sumOfEqualLampsIsOneLampOfTheSum(Detector detector) {
        double one = seenS(detector.detect(LampSignal.of(FILAMENT, LuminousIntensity.candela(60))));
        assertThat(mergedS(detector, lamp("a", FILAMENT, 20), lamp("b", FILAMENT, 20), lamp("c", FILAMENT, 20)))
                .isCloseTo(one, within(1e-9));
        assertThat(mergedS(detector, lamp("a", FILAMENT, 55), lamp("b", FILAMENT, 5)))
                .isCloseTo(one, within(1e-9));
    }

    @ParameterizedTest
    @MethodSource("detectors")
    void lampOfNoLightCountsForNothing(Detector detector) {
        double one = seenS(detector.detect(LampSignal.of(FILAMENT, LuminousIntensity.candela(60))));
        LampSet.Outcome with = LampSet.of(
                        lamp("lit", FILAMENT, 60), lamp("out", STEP, 0).at(0, 1.2))
                .detect(detector, NEAR);
        assertThat(seenS(with.detection())).isEqualTo(one);
        assertThat(seenS(with.together())).isCloseTo(one, within(1e-9));
        assertThat(with.lights()).extracting(LampSet.Light::name).containsExactly("lit");
        for (double cd : new double[] {1, 1e-3, 1e-6}) {
            assertThat(mergedS(detector, lamp("lit", FILAMENT, 60), lamp("nearly out", STEP, cd)))
                    .isCloseTo(one, within(0.01 * cd + 1e-9));
        }
    }

    /** E(t) = I₁ (1 − e^(−t/τ)) + I₂ (1 − e^(−(t − d)/τ)) = Ith, solved for t. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.001, 0.02, 0.08})
    void twoStepsHaveAClosedForm(double delayS) {
        double first = 2;
        double second = 7;
        double tau = TAU.inSeconds();
        double expected = tau * Math.log((first + second * Math.exp(delayS / tau)) / (first + second - 3));
        assertThat(mergedS(
                        EYE,
                        lamp("first", STEP, first),
                        lamp("second", STEP, second).after(TimeSpan.seconds(delayS))))
                .isCloseTo(expected, within(1e-10));
    }

    /** A straight rise to I₂ in T and a step to I₁: I₁ (1 − e^(−t/τ)) + I₂/T (t − τ (1 − e^(−t/τ))) = Ith. */
    @Test
    void stepAndStraightRiseHaveAClosedForm() {
        OnsetCurve ramp = MeasuredLamp.of("ramp", new double[] {0, 1}, new double[] {0, 1});
        double atS = mergedS(EYE, lamp("step", STEP, 2), lamp("ramp", ramp, 40));
        double faded = 1 - Math.exp(-atS / 0.1);
        assertThat(2 * faded + 40 * (atS - 0.1 * faded)).isCloseTo(3, within(1e-9));
        assertThat(mergedS(
                        InstantEye.of(Threshold.intensity(LuminousIntensity.candela(3))),
                        lamp("step", STEP, 2),
                        lamp("ramp", ramp, 40)))
                .isCloseTo(1 / 40.0, within(1e-12));
    }

    @Test
    void lampsMergeOnlyWhereTheEyeCannotTellThemApart() {
        LampSet pair = LampSet.of(
                lamp("left", FILAMENT, 20).at(-0.6, 0.8),
                lamp("right", FILAMENT, 20).at(0.6, 0.8));
        LampSet.Outcome near = pair.detect(EYE, NEAR);
        LampSet.Outcome far = pair.detect(EYE, FAR);
        assertThat(near.lights()).hasSize(2);
        assertThat(far.lights()).hasSize(1);
        assertThat(far.first().lamps()).isEqualTo(2);
        assertThat(seenS(near.detection())).isEqualTo(seenS(near.apart()));
        assertThat(seenS(far.detection())).isEqualTo(seenS(far.together()));
        assertThat(seenS(far.detection())).isLessThan(seenS(near.detection()));
        // 1.2 m at 1 minute of arc: 4125 m
        assertThat(pair.detect(EYE, Distance.metres(4120)).lights()).hasSize(2);
        assertThat(pair.detect(EYE, Distance.metres(4130)).lights()).hasSize(1);
        assertThat(pair.detect(EYE, NEAR, new EyeResolution("given", 140, EyeResolution.NORMAL.source()))
                        .lights())
                .hasSize(1);
    }

    @Test
    void separationToZeroIsTheSum() {
        LampSet.Member fixed = lamp("fixed", FILAMENT, 30).at(0, 1);
        double sum = seenS(LampSet.of(fixed, lamp("beside", STEP, 10).at(0, 1))
                .detect(EYE, NEAR)
                .together());
        for (double apartM : new double[] {0, 1e-6, 0.008}) {
            LampSet set = LampSet.of(fixed, lamp("beside", STEP, 10).at(apartM, 1));
            assertThat(seenS(set.detect(EYE, NEAR).detection())).isEqualTo(sum);
        }
        assertThat(seenS(LampSet.of(fixed, lamp("beside", STEP, 10).at(0.01, 1))
                        .detect(EYE, NEAR)
                        .detection()))
                .isGreaterThan(sum);
    }

    @Test
    void chainOfNeighboursIsOneLight() {
        LampSet row = LampSet.of(
                lamp("a", STEP, 1).at(0, 1),
                lamp("c", STEP, 1).at(0.014, 1),
                lamp("b", STEP, 1).at(0.007, 1),
                lamp("far", STEP, 1).at(0.5, 1));
        assertThat(row.detect(EYE, NEAR).lights())
                .extracting(LampSet.Light::lamps)
                .containsExactlyInAnyOrder(3, 1);
    }

    @Test
    void oneLedAmongFilamentsKeepsAllSomeOrAThirdOfTheGain() {
        LampSet.Outcome present = three(FILAMENT, FILAMENT, FILAMENT);
        LampSet.Outcome mixed = three(FILAMENT, FILAMENT, STEP);
        LampSet.Outcome full = three(STEP, STEP, STEP);
        assertThat(LampSet.keptGainRatio(present.detection(), mixed.detection(), full.detection()))
                .as("the first lamp counts")
                .isCloseTo(1, within(1e-12));
        assertThat(LampSet.keptGainRatio(present.together(), mixed.together(), full.together()))
                .as("the sum counts")
                .isBetween(0.6, 0.999);
        assertThat(LampSet.keptGainRatio(present.lookedAtOne(), mixed.lookedAtOne(), full.lookedAtOne()))
                .as("each driver looks at one of three")
                .isCloseTo(1 / 3.0, within(1e-9));
        assertThatThrownBy(() -> LampSet.keptGainRatio(present.detection(), mixed.detection(), present.detection()))
                .hasMessageStartingWith("gain of the full exchange must be above 0 s");
    }

    /**
     * High-mounted lamps beside conventional ones, unsuspecting drivers: response times did not vary (Sivak et al. 1980
     * and 1981, seen in abstracts). A third lamp of the same kind leaves the first light where it was.
     */
    @Test
    void anEqualLampMoreChangesNoMoment() {
        LampSet pair = LampSet.of(
                lamp("left", FILAMENT, 40).at(-0.6, 0.8),
                lamp("right", FILAMENT, 40).at(0.6, 0.8));
        assertThat(seenS(three(FILAMENT, FILAMENT, FILAMENT).detection()))
                .isEqualTo(seenS(pair.detect(EYE, NEAR).detection()));
        assertThat(AttentionEffect.published("centre-high-traffic")
                        .range()
                        .orElseThrow()
                        .middle()
                        .inSeconds())
                .isZero();
    }

    @Test
    void setSaysItselfHowMuchItKeeps() {
        LampSet mixed = LampSet.of(
                lamp("left", FILAMENT, 40).at(-0.6, 0.8),
                lamp("right", FILAMENT, 40).at(0.6, 0.8),
                lamp("high", STEP, 40).at(0, 1.2));
        LampSet.Outcome present = three(FILAMENT, FILAMENT, FILAMENT);
        LampSet.Kept kept = mixed.kept(EYE, NEAR).orElseThrow();
        assertThat(kept.firstRatio()).isEqualTo(1);
        assertThat(kept.togetherRatio())
                .isEqualTo(LampSet.keptGainRatio(
                        present.together(),
                        mixed.detect(EYE, NEAR).together(),
                        three(STEP, STEP, STEP).together()));
        assertThat(kept.lookedAtOneRatio()).isCloseTo(1 / 3.0, within(1e-9));
        assertThat(LampSet.of(lamp("a", STEP, 5), lamp("b", STEP, 5).at(0.5, 1)).kept(EYE, NEAR))
                .isEmpty();
        assertThat(LampSet.of(lamp("a", STEP, 5), lamp("b", STEP, 1).at(0.5, 1)).kept(EYE, NEAR))
                .as("one is never seen")
                .isEmpty();
    }

    private static LampSet.Outcome three(OnsetCurve left, OnsetCurve right, OnsetCurve high) {
        return LampSet.of(
                        lamp("left", left, 40).at(-0.6, 0.8),
                        lamp("right", right, 40).at(0.6, 0.8),
                        lamp("high", high, 40).at(0, 1.2))
                .detect(EYE, NEAR);
    }

    @Test
    void nightNeedsMoreLightThanDuskAndLitTailsBurnOnlyByNight() {
        LampSet set = LampSet.of(
                LampSet.Member.of(
                                "left",
                                new LampSignal(FILAMENT, LuminousIntensity.candela(60), LuminousIntensity.candela(7)))
                        .at(-0.6, 0.8),
                lamp("high", STEP, 40).after(TimeSpan.millis(40)).at(0, 1.2));
        ViewingConditions night = ViewingConditions.of(BackgroundLuminance.NIGHT.luminance(), NEAR);
        LampSet.Outcome dark = set.detect(night);
        LampSet.Outcome lit = set.detect(night.withTailLit());
        assertThat(seenS(set.withTailsDark()
                        .detect(night.withTailLit())
                        .each()
                        .get(0)
                        .detection()))
                .isEqualTo(seenS(dark.each().get(0).detection()));
        assertThat(seenS(lit.each().get(0).detection()))
                .isGreaterThan(seenS(dark.each().get(0).detection()));
        assertThat(lit.first().name()).isEqualTo("high");
        assertThat(seenS(lit.detection())).isGreaterThan(0.04);
        LampSet.Outcome day = set.detect(ViewingConditions.of(BackgroundLuminance.DAY.luminance(), NEAR));
        LampSet.Outcome dusk = set.detect(ViewingConditions.of(BackgroundLuminance.DUSK.luminance(), NEAR));
        assertThat(seenS(day.detection())).isGreaterThan(seenS(dusk.detection()));
        assertThat(lit.detection().caveats()).anyMatch(c -> c.text().startsWith("lamps side by side"));
    }

    @Test
    void burningNeighbourThatMergesRaisesAThresholdOfContrast() {
        Detector contrast = InstantEye.of(Threshold.contrast(0.25));
        LampSet.Member stop = LampSet.Member.of(
                "stop", new LampSignal(FILAMENT, LuminousIntensity.candela(60), LuminousIntensity.candela(4)));
        LampSet merged = LampSet.of(stop, LampSet.Member.burning("tail", LuminousIntensity.candela(20)));
        LampSignal same = new LampSignal(FILAMENT, LuminousIntensity.candela(60), LuminousIntensity.candela(24));
        assertThat(seenS(merged.detect(contrast, NEAR).detection()))
                .isCloseTo(seenS(contrast.detect(same)), within(1e-9));
    }

    @Test
    void setThatNeverLightsSaysSo() {
        LampSet.Outcome outcome =
                LampSet.of(lamp("a", STEP, 1), lamp("b", STEP, 0.5).at(0.5, 1)).detect(EYE, NEAR);
        assertThat(outcome.detection()).isInstanceOf(Detection.NeverSeen.class);
        assertThat(outcome.lookedAtOne()).isInstanceOf(Detection.NeverSeen.class);
        assertThat(LampSet.of(lamp("out", STEP, 0)).detect(EYE, NEAR).detection())
                .isInstanceOf(Detection.NeverSeen.class);
    }

    @Test
    void badInputIsRefusedByName() {
        LampSet.Member lamp = lamp("left", STEP, 1);
        assertThatThrownBy(() -> lamp.at(Double.NaN, 1))
                .hasMessage("lateral place of left must be in [-3, 3] m, got NaN m");
        assertThatThrownBy(() -> lamp.at(0, 6)).hasMessage("height of left must be in [0, 5] m, got 6 m");
        assertThatThrownBy(() -> lamp.after(TimeSpan.seconds(11)))
                .hasMessage("delay of left must be in [0, 10] s, got 11 s");
        assertThatThrownBy(() -> lamp(" ", STEP, 1)).hasMessage("a lamp of a set must have a name, got an empty text");
        assertThatThrownBy(() -> LampSet.of()).hasMessage("a set must have at least one lamp, got none");
        assertThatThrownBy(() -> new EyeResolution("given", 0, EyeResolution.NORMAL.source()))
                .hasMessage("resolution of the eye must be in (0, 600] minutes of arc, got 0 minutes of arc");
    }

    /** An LED lamp fed from a filament lamp's circuit through a diode: lit with it, after its own driver's delay. */
    @Test
    void ledOnAFilamentLampsCircuitWaitsForItsOwnDriverOnly() {
        OnsetCurve led = LedLamp.of(TimeSpan.millis(12), TimeSpan.millis(1));
        LampSet set =
                LampSet.of(lamp("bulb", FILAMENT, 60), lamp("added", led, 60).at(0.3, 1));
        assertThat(seenS(set.detect(EYE, NEAR).detection())).isCloseTo(0.012 + 0.1 * Math.log(60 / 57.0), within(1e-3));
    }
}
