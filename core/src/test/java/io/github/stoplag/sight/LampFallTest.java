package io.github.stoplag.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.Darkening;
import io.github.stoplag.lamp.FilamentDecay;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LampFallTest {
    private static final FilamentDecay DECAY = LaboratoryLamps.bulb().switchOff(LaboratoryLamps.conditions());
    private static final OnsetCurve DARK = Darkening.of(DECAY);
    private static final Detector QUARTER = InstantEye.of(Threshold.contrast(0.25));

    private static LampFall fall(OnsetCurve darkening, double stopCd, double tailCd) {
        return new LampFall(darkening, LuminousIntensity.candela(stopCd), LuminousIntensity.candela(tailCd));
    }

    private static double seenS(LampFall fall, Detector detector) {
        return fall.seen(detector).orElseThrow().inSeconds();
    }

    @Test
    void darknessIsTheLightThatIsGone() {
        for (double level : new double[] {0.01, 0.3, 0.9, 0.999}) {
            assertThat(DARK.timeToLevelS(level).orElseThrow())
                    .isCloseTo(DECAY.timeToLevelS(1 - level).orElseThrow(), within(1e-12));
        }
        assertThat(DARK.relativeIntensity(-1)).isZero();
        assertThat(DARK.relativeIntensity(Double.POSITIVE_INFINITY)).isCloseTo(1, within(1e-9));
        OnsetCurve led = Darkening.of(LedLamp.of(TimeSpan.seconds(0), TimeSpan.millis(5)));
        // 90 to 10 % in tf: e^(−t/τ), τ = tf/ln 9
        assertThat(led.timeToLevelS(0.5).orElseThrow()).isCloseTo(0.005 / Math.log(9) * Math.log(2), within(1e-12));
        assertThat(Darkening.of(LaboratoryLamps.led()).relativeIntensity(0)).isEqualTo(1);
        assertThatThrownBy(() -> Darkening.of(FilamentDecay.of(
                        LaboratoryLamps.bulb(),
                        LaboratoryLamps.conditions()
                                .withSupply(Voltage.volts(9))
                                .withInitialTemperature(DECAY.startTemperature()))))
                .hasMessageStartingWith("a lamp that goes dark must lose its light, got ");
    }

    /** By contrast alone a quarter of I + It must be gone. */
    @Test
    void againstALitTailLampItIsSeenLaterOrNever() {
        double alone = seenS(fall(DARK, 60, 0), QUARTER);
        assertThat(alone).isCloseTo(DECAY.timeToLevelS(0.75).orElseThrow(), within(1e-9));
        assertThat(seenS(fall(DARK, 60, 12), QUARTER))
                .isCloseTo(DECAY.timeToLevelS(1 - 0.25 * 72 / 60).orElseThrow(), within(1e-9));
        assertThat(fall(DARK, 60, 179).seen(QUARTER)).isInstanceOf(Detection.Seen.class);
        Detection never = fall(DARK, 60, 181).seen(QUARTER);
        assertThat(never).isInstanceOf(Detection.NeverSeen.class);
        assertThat(never.caveats()).anyMatch(c -> c.text().contains("is assumed"));
    }

    /** A step of darkness: t = τ ln(I/(I − C (I + It))). */
    @Test
    void integratingEyeSeesAStepOfDarknessInClosedForm() {
        Detector eye = IntegratingEye.of(TimeSpan.seconds(0.1), Threshold.contrast(0.25));
        OnsetCurve step = Darkening.of(LaboratoryLamps.led());
        assertThat(seenS(fall(step, 60, 10), eye)).isCloseTo(0.1 * Math.log(60 / (60 - 17.5)), within(1e-10));
        assertThat(seenS(fall(DARK, 60, 10), eye)).isGreaterThan(seenS(fall(step, 60, 10), eye));
    }

    @Test
    void filmedFallGivesTheSameAsTheModelItWasTakenFrom() {
        double[] timeS =
                IntStream.rangeClosed(0, 2000).mapToDouble(i -> i / 2000.0).toArray();
        double[] gone = IntStream.rangeClosed(0, 2000)
                .mapToDouble(i -> DARK.relativeIntensity(i / 2000.0))
                .toArray();
        OnsetCurve filmed = MeasuredLamp.of("filmed fall", timeS, gone);
        assertThat(seenS(fall(filmed, 60, 12), QUARTER)).isCloseTo(seenS(fall(DARK, 60, 12), QUARTER), within(1e-4));
    }

    /** v = 20 m/s, 3 m/s² for 0.2 s too long: 0.6 m/s; 0.06 m + 0.36/(2 × 1.5) = 0.18 m; 9 ms. */
    @Test
    void lateDarknessCostsSpeedGapAndTime() {
        LateDarkness late =
                LateDarkness.of(TimeSpan.seconds(0.2), Deceleration.mps2(3), Deceleration.mps2(1.5), Speed.mps(20));
        assertThat(late.speedLost().inMps()).isCloseTo(0.6, within(1e-12));
        assertThat(late.gapGrown().inMetres()).isCloseTo(0.18, within(1e-12));
        assertThat(late.timeLost().inSeconds()).isCloseTo(0.009, within(1e-12));
        assertThatThrownBy(() ->
                        LateDarkness.of(TimeSpan.seconds(5), Deceleration.mps2(9), Deceleration.mps2(1), Speed.mps(20)))
                .hasMessage("speed lost must be in [0, 20] m/s, got 45 m/s");
        assertThatThrownBy(() ->
                        LateDarkness.of(TimeSpan.seconds(1), Deceleration.mps2(9), Deceleration.mps2(0), Speed.mps(20)))
                .hasMessageStartingWith("acceleration back must be in (0, ");
    }

    @Test
    void attentionCountsOnlyWhereItIsAskedForAndBringsTheNullResults() {
        Detector eye = IntegratingEye.of(TimeSpan.seconds(0.1), LuminousIntensity.candela(3));
        LampSignal bulb = LampSignal.of(LaboratoryLamps.standard(), LuminousIntensity.candela(60));
        double plain = eye.detect(bulb).orElseThrow().inSeconds();
        AttentionEffect field = AttentionEffect.published("centre-high-field");
        Detection with = field.on(eye).detect(bulb);
        // DOT HS 807 506: 90 ms earlier in traffic
        assertThat(with.orElseThrow().inSeconds()).isCloseTo(plain - 0.09, within(1e-12));
        assertThat(with.criterion()).endsWith("centre-high-field -90 ms");
        assertThat(with.caveats())
                .anyMatch(c -> c.text().startsWith("found no effect: high-mounted lamps against conventional ones"))
                .anyMatch(c -> c.text().startsWith("found no effect: LED against filament stop lamps"));
        assertThat(AttentionEffect.published("flash-claim")
                        .on(eye)
                        .detect(bulb)
                        .orElseThrow()
                        .inSeconds())
                .isZero();
        assertThatThrownBy(() -> AttentionEffect.published("eccentricity").on(eye))
                .hasMessageStartingWith("effect eccentricity must have a published figure to be applied: ");
        assertThat(AttentionEffect.published())
                .filteredOn(AttentionEffect::nullResult)
                .hasSize(3);
        LampSignal dark = LampSignal.of(LaboratoryLamps.standard(), LuminousIntensity.candela(1));
        assertThat(field.on(eye).detect(dark)).isInstanceOf(Detection.NeverSeen.class);
    }
}
