package io.github.stoplag.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

class DetectorTest {
    private static final double TAU_S = 0.2;
    private static final double THRESHOLD_CD = 1.86;
    private static final IntegratingEye EYE =
            IntegratingEye.of(TimeSpan.seconds(TAU_S), LuminousIntensity.candela(THRESHOLD_CD));
    private static final OnsetCurve FILAMENT = FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26))
            .build()
            .switchOn(SupplyConditions.of(Voltage.volts(12.8)));

    private static Detection detect(Detector detector, OnsetCurve onset, double finalCd) {
        return detector.detect(LampSignal.of(onset, LuminousIntensity.candela(finalCd)));
    }

    private static double seenS(OnsetCurve onset, double finalCd) {
        if (detect(EYE, onset, finalCd) instanceof Detection.Seen seen) {
            return seen.at().inSeconds();
        }
        throw new AssertionError("not seen");
    }

    @Test
    void theEyeSeesAStepAtItsClosedForm() {
        LedLamp step = LedLamp.of(TimeSpan.millis(30), TimeSpan.seconds(0));
        for (double cd : new double[] {1.8601, 2, 5, 42, 300, 1e5}) {
            assertThat(seenS(step, cd))
                    .as("%s cd", cd)
                    .isCloseTo(0.03 + TAU_S * Math.log(cd / (cd - THRESHOLD_CD)), within(1e-9));
        }
    }

    @Test
    void theEyeSeesAnExponentialRiseAtItsClosedForm() {
        // E/I = 1 − (τ e^(−t/τ) − b e^(−t/b))/(τ − b), b the lamp's own time constant
        for (double riseS : new double[] {1e-6, 1e-3, 0.25}) {
            double b = riseS / Math.log(9);
            double expected = new BrentSolver(1e-15, 1e-14)
                    .solve(
                            200,
                            t -> 5 * (1 - (TAU_S * Math.exp(-t / TAU_S) - b * Math.exp(-t / b)) / (TAU_S - b))
                                    - THRESHOLD_CD,
                            0,
                            5);
            assertThat(seenS(LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(riseS)), 5))
                    .as("rise %s s", riseS)
                    .isCloseTo(expected, within(1e-9));
        }
    }

    @Test
    void theEyeSeesAStraightRiseAtItsClosedForm() {
        // E = k (t − τ + τ e^(−t/τ)) while the light rises as k t
        MeasuredLamp ramp = MeasuredLamp.of("ramp", new double[] {0, 0.5}, new double[] {0, 1});
        double expected = new BrentSolver(1e-15, 1e-14)
                .solve(200, t -> 20 * (t - TAU_S + TAU_S * Math.exp(-t / TAU_S)) - THRESHOLD_CD, 0, 0.5);
        assertThat(seenS(ramp, 10)).isCloseTo(expected, within(1e-9));
    }

    @Test
    void theEyeSeesAFilamentAsAnIntegratedEquationDoes() {
        for (double cd : new double[] {2, 5, 42, 300}) {
            double atS = seenS(FILAMENT, cd);
            double[] stimulusCd = {0};
            new DormandPrince853Integrator(1e-9, 0.01, 1e-13, 1e-13)
                    .integrate(
                            new FirstOrderDifferentialEquations() {
                                @Override
                                public int getDimension() {
                                    return 1;
                                }

                                @Override
                                public void computeDerivatives(double t, double[] y, double[] yDot) {
                                    yDot[0] = (cd * FILAMENT.relativeIntensity(t) - y[0]) / TAU_S;
                                }
                            },
                            0,
                            stimulusCd,
                            atS,
                            stimulusCd);
            double slope = (cd * FILAMENT.relativeIntensity(atS) - THRESHOLD_CD) / TAU_S;
            assertThat((stimulusCd[0] - THRESHOLD_CD) / slope)
                    .as("error in seconds at %s cd", cd)
                    .isCloseTo(0, within(1e-9));
        }
    }

    @Test
    void aLampNotAboveTheThresholdIsNeverSeen() {
        Detection detection = detect(EYE, FILAMENT, 1.86);
        assertThat(detection)
                .extracting("criterion", "reason")
                .containsExactly(
                        "integrating eye, time constant 0.2 s, threshold 1.86 cd",
                        "the final 1.86 cd does not exceed the threshold of 1.86 cd");
        MeasuredLamp cut = MeasuredLamp.of("cut off", new double[] {0, 1}, new double[] {0, 0.5});
        assertThat(detect(EYE, cut, 3)).isInstanceOf(Detection.NeverSeen.class);
        assertThat(detect(EYE, cut, 4)).isInstanceOf(Detection.Seen.class);
    }

    @Test
    void aShareOfTheFinalLightIsTheCurvesOwnLevel() {
        Detector tenPercent = ShareOfFinal.of(0.1);
        assertThat(tenPercent).hasToString("10 % of final intensity");
        assertThat(detect(tenPercent, FILAMENT, 0.001))
                .extracting("at", "criterion")
                .containsExactly(FILAMENT.timeToLevel(0.1).orElseThrow(), "10 % of final intensity");
        MeasuredLamp cut = MeasuredLamp.of("cut off", new double[] {0, 1}, new double[] {0, 0.5});
        assertThat(detect(ShareOfFinal.of(0.9), cut, 40))
                .extracting("criterion", "reason")
                .containsExactly("90 % of final intensity", "the light ends at 50 % of the final intensity");
        assertThat(detect(tenPercent, FILAMENT, 0))
                .extracting("criterion", "reason")
                .containsExactly("10 % of final intensity", "the final intensity is 0 cd");
    }

    @Test
    void refusesBadCriteria() {
        assertThatThrownBy(() -> ShareOfFinal.of(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("level of the final intensity must be in (0, 1), got 0");
        assertThatThrownBy(() -> IntegratingEye.of(TimeSpan.seconds(0), LuminousIntensity.candela(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time constant of the eye must be in (0, 10] s, got 0 s");
        assertThatThrownBy(() -> IntegratingEye.of(TimeSpan.seconds(1), LuminousIntensity.candela(0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("threshold of the eye must be in (0, 1e7] cd, got 0 cd");
    }
}
