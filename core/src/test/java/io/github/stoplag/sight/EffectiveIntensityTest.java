package io.github.stoplag.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caveat;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EffectiveIntensityTest {
    private static final double A_S = 0.2;
    private static final TimeSpan A = TimeSpan.seconds(A_S);
    private static final BlondelReyDouglas BLONDEL_REY = BlondelReyDouglas.of(A);
    private static final ModifiedAllard MODIFIED = ModifiedAllard.of(A);
    private static final OriginalAllard ORIGINAL = OriginalAllard.of(A);
    private static final FormFactor FORM_FACTOR = FormFactor.of(A);
    private static final LuminousIntensity PEAK = LuminousIntensity.candela(100);

    private static double cd(EffectiveIntensityMethod method, Flash flash) {
        return method.of(flash).intensity().inCandela();
    }

    private static Flash bell(int panels) {
        return Flash.of(t -> 100 * Math.exp(-Math.pow((t - 0.5) / 0.15, 2)), TimeSpan.seconds(1), panels);
    }

    private static Flash twoPulses(double darkS) {
        return Flash.samples(
                new double[] {0, 0.1, 0.1, 0.1 + darkS, 0.1 + darkS, 0.25 + darkS},
                new double[] {80, 80, 0, 0, 100, 100});
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.02, 0.2, 1, 3, 30})
    void aRectangleGivesTheSameByThreeMethodsAndTheExponentialByTheFourth(double durationS) {
        Flash flash = Flash.rectangle(PEAK, TimeSpan.seconds(durationS));
        double expected = 100 * durationS / (A_S + durationS);
        assertThat(cd(BLONDEL_REY, flash)).isCloseTo(expected, within(1e-11));
        assertThat(cd(MODIFIED, flash)).isCloseTo(expected, within(1e-11));
        assertThat(cd(FORM_FACTOR, flash)).isCloseTo(expected, within(1e-11));
        assertThat(cd(ORIGINAL, flash)).isCloseTo(100 * (1 - Math.exp(-durationS / A_S)), within(1e-11));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.2, 0.7, 2, 10})
    void aTriangleHasAClosedFormWhateverItsShape(double durationS) {
        double t = durationS;
        double x = (t + A_S - Math.sqrt((t + A_S) * (t + A_S) - t * t)) / t;
        for (double rise : new double[] {0, 0.2, 0.5, 1}) {
            Flash flash = Flash.triangle(PEAK, TimeSpan.seconds(t), rise);
            assertThat(cd(BLONDEL_REY, flash)).as("rise %s", rise).isCloseTo(100 * x, within(1e-10));
            assertThat(cd(FORM_FACTOR, flash)).isCloseTo(100 * t / (t + 2 * A_S), within(1e-11));
        }
    }

    @Test
    void trianglesBrightestAtTheirEndsHaveClosedFormsByConvolution() {
        for (double t : new double[] {0.05, 0.5, 2}) {
            double log = A_S / t * Math.log1p(t / A_S);
            Flash rising = Flash.triangle(PEAK, TimeSpan.seconds(t), 1);
            Flash falling = Flash.triangle(PEAK, TimeSpan.seconds(t), 0);
            // rising: the greatest response comes at the end; falling: where the response has come down to the light
            assertThat(cd(MODIFIED, rising)).isCloseTo(100 * (1 - log), within(1e-9));
            assertThat(cd(ORIGINAL, falling)).isCloseTo(100 * (1 - log), within(1e-9));
            assertThat(cd(ORIGINAL, rising)).isCloseTo(100 * (1 + A_S / t * Math.expm1(-t / A_S)), within(1e-9));
        }
    }

    @Test
    void theBestIntervalEndsWhereTheLightEqualsTheEffectiveIntensity() {
        for (Flash flash :
                List.of(Flash.triangle(PEAK, TimeSpan.seconds(0.7), 0.3), bell(400), Flash.triangle(PEAK, A, 0.9))) {
            double effective = cd(BLONDEL_REY, flash);
            BlondelReyDouglas.Interval best = BLONDEL_REY.optimalInterval(flash);
            assertThat(flash.intensityAt(best.from()).inCandela()).isCloseTo(effective, within(1e-8));
            assertThat(flash.intensityAt(best.to()).inCandela()).isCloseTo(effective, within(1e-8));
        }
    }

    @Test
    void theBestIntervalIsTheOneFoundByTryingAll() {
        for (Flash flash : List.of(bell(60), twoPulses(0.03), twoPulses(0.5), Flash.triangle(PEAK, A, 0.2))) {
            int n = 600;
            double durationS = flash.duration().inSeconds();
            double[] lightCdS = new double[n + 1];
            for (int i = 1; i <= n; i++) {
                // each panel by its own fine midpoint rule
                for (int k = 0; k < 20; k++) {
                    double t = durationS * (i - 1 + (k + 0.5) / 20) / n;
                    lightCdS[i] += flash.intensityAt(TimeSpan.seconds(t)).inCandela() * durationS / n / 20;
                }
                lightCdS[i] += lightCdS[i - 1];
            }
            double best = 0;
            for (int i = 0; i < n; i++) {
                for (int j = i + 1; j <= n; j++) {
                    best = Math.max(best, (lightCdS[j] - lightCdS[i]) / (durationS * (j - i) / n + A_S));
                }
            }
            assertThat(cd(BLONDEL_REY, flash)).isCloseTo(best, within(0.003 * best));
        }
    }

    @Test
    void twoPulsesCountTogetherWhenCloseAndAloneWhenFar() {
        assertThat(cd(BLONDEL_REY, twoPulses(0.03))).isCloseTo(23 / (0.28 + A_S), within(1e-10));
        assertThat(cd(BLONDEL_REY, twoPulses(0.5))).isCloseTo(15 / (0.15 + A_S), within(1e-10));
    }

    @Test
    void theConvolutionIsThatOfADenseSum() {
        DoubleUnaryOperator hyperbolic = u -> A_S / ((A_S + u) * (A_S + u));
        DoubleUnaryOperator exponential = u -> Math.exp(-u / A_S) / A_S;
        for (Flash flash : List.of(bell(50), twoPulses(0.1), Flash.triangle(PEAK, TimeSpan.seconds(1), 0.3))) {
            for (double t : new double[] {0.05, 0.13, 0.31, 0.77, 1.5}) {
                TimeSpan at = TimeSpan.seconds(t);
                assertThat(MODIFIED.responseAt(flash, at).inCandela())
                        .isCloseTo(denseCd(flash, hyperbolic, t), within(1e-3));
                assertThat(ORIGINAL.responseAt(flash, at).inCandela())
                        .isCloseTo(denseCd(flash, exponential, t), within(1e-3));
            }
        }
    }

    private static double denseCd(Flash flash, DoubleUnaryOperator weightPerS, double t) {
        int n = 200_000;
        double sum = 0;
        for (int i = 0; i < n; i++) {
            double u = t * (i + 0.5) / n;
            sum += flash.intensityAt(TimeSpan.seconds(t - u)).inCandela() * weightPerS.applyAsDouble(u);
        }
        return sum * t / n;
    }

    @Test
    void theGreatestResponseIsThatOfADenseSearch() {
        for (Flash flash : List.of(bell(50), twoPulses(0.1), Flash.triangle(PEAK, A, 0.1))) {
            double modified = 0;
            double original = 0;
            for (int i = 0; i <= 50_000; i++) {
                TimeSpan t = TimeSpan.seconds(1.2 * i / 50_000);
                modified = Math.max(modified, MODIFIED.responseAt(flash, t).inCandela());
                original = Math.max(original, ORIGINAL.responseAt(flash, t).inCandela());
            }
            assertThat(cd(MODIFIED, flash)).isBetween(modified, modified + 2e-3);
            assertThat(cd(ORIGINAL, flash)).isBetween(original, original + 2e-3);
        }
    }

    @Test
    void theOriginalAllardResponseSolvesItsDifferentialEquation() {
        Flash flash = Flash.triangle(PEAK, TimeSpan.seconds(0.6), 0.5);
        double[] response = {0};
        for (double[] part : new double[][] {{0, 0.3}, {0.3, 0.5}}) {
            new DormandPrince853Integrator(1e-9, 0.01, 1e-13, 1e-13)
                    .integrate(
                            new FirstOrderDifferentialEquations() {
                                @Override
                                public int getDimension() {
                                    return 1;
                                }

                                @Override
                                public void computeDerivatives(double t, double[] y, double[] yDot) {
                                    yDot[0] = (flash.intensityAt(TimeSpan.seconds(t))
                                                            .inCandela()
                                                    - y[0])
                                            / A_S;
                                }
                            },
                            part[0],
                            response,
                            part[1],
                            response);
        }
        assertThat(ORIGINAL.responseAt(flash, TimeSpan.seconds(0.5)).inCandela())
                .isCloseTo(response[0], within(1e-9));
    }

    @Test
    void modifiedAllardLiesBetweenTheOthersForSymmetricAndRisingTriangles() {
        for (double t : new double[] {0.2, 0.6, 2}) {
            for (double rise : new double[] {0.5, 1}) {
                Flash flash = Flash.triangle(PEAK, TimeSpan.seconds(t), rise);
                assertThat(cd(MODIFIED, flash)).isBetween(cd(BLONDEL_REY, flash), cd(FORM_FACTOR, flash));
            }
            Flash falling = Flash.triangle(PEAK, TimeSpan.seconds(t), 0);
            assertThat(cd(MODIFIED, falling) / cd(BLONDEL_REY, falling)).isBetween(0.9, 1.0);
        }
    }

    @Test
    void aFunctionIsSampledToSecondOrder() {
        double fine = bell(20_000).integralCdS();
        double coarse = bell(10).integralCdS();
        assertThat(fine).isCloseTo(100 * 0.15 * Math.sqrt(Math.PI), within(1e-4));
        assertThat(coarse).isCloseTo(fine, within(1e-2));
        assertThat(bell(100).duration()).isEqualTo(TimeSpan.seconds(1));
        assertThat(bell(100).peak()).isEqualTo(PEAK);
    }

    @Test
    void resultsNameTheirMethodAndHowFarTheyHold() {
        Flash usual = Flash.rectangle(PEAK, TimeSpan.seconds(0.3));
        Caveat always =
                new Caveat("effective intensity is defined for a flash just seen: above the threshold of illuminance"
                        + " no method is adequate (IALA recommendation E-200-4, 2008, recital, seen)");
        assertThat(BLONDEL_REY.of(usual).method()).isEqualTo("Blondel-Rey-Douglas, a = 0.2 s");
        assertThat(MODIFIED.of(usual).method()).isEqualTo("modified Allard, a = 0.2 s");
        assertThat(ORIGINAL.of(usual).method()).isEqualTo("original Allard, a = 0.2 s");
        assertThat(FORM_FACTOR.of(usual).method()).isEqualTo("form factor, C = 0.2 s");
        assertThat(BLONDEL_REY.of(usual).caveats()).containsExactly(always);
        assertThat(BlondelReyDouglas.of(TimeSpan.seconds(0.5))
                        .of(Flash.rectangle(PEAK, TimeSpan.seconds(5)))
                        .caveats())
                .extracting(Caveat::text)
                .containsExactly(
                        always.text(),
                        "time constant of the eye 0.5 s is outside the validated range [0.1, 0.3] s of IALA dictionary,"
                                + " Blondel-Rey law, range in use (seen)",
                        "flash duration 5 s is outside the validated range [0.001, 3] s of Blondel and Rey, J. Phys. Theor."
                                + " Appl. 1 (1911), p. 548 (seen)");
    }

    @Test
    void refusesBadFlashes() {
        assertRefused(
                () -> Flash.samples(new double[] {0, 1}, new double[] {1}),
                "times and intensities must be equally many, got 2 and 1");
        assertRefused(
                () -> Flash.samples(new double[] {0}, new double[] {1}), "a flash must have at least 2 samples, got 1");
        assertRefused(
                () -> Flash.samples(new double[] {0, Double.NaN}, new double[] {1, 1}),
                "sample 1: time must be in [-1000, 1000] s, got NaN s");
        assertRefused(
                () -> Flash.samples(new double[] {0, 1}, new double[] {1, -1}),
                "sample 1: intensity must be in [0, 1e7] cd, got -1 cd");
        assertRefused(
                () -> Flash.samples(new double[] {0, 1, 0.5}, new double[] {1, 1, 1}),
                "sample 2: time must not be before that of sample 1, 1 s, got 0.5 s");
        assertRefused(
                () -> Flash.samples(new double[] {0, 1, 1, 1}, new double[] {1, 1, 2, 3}),
                "sample 3: at most two samples may share a time, got a third at 1 s");
        assertRefused(
                () -> Flash.samples(new double[] {1, 1}, new double[] {1, 1}),
                "duration of the flash must be in (0, 2000] s, got 0 s");
        assertRefused(
                () -> Flash.rectangle(LuminousIntensity.candela(0), A),
                "peak of the flash must be in (0, 1e7] cd, got 0 cd");
        assertRefused(() -> Flash.triangle(PEAK, A, 1.5), "rising share of the flash must be in [0, 1], got 1.5");
        assertRefused(() -> Flash.of(t -> 1, A, 0), "panels of the flash must be in [1, 100000], got 0");
        assertRefused(
                () -> BlondelReyDouglas.of(TimeSpan.seconds(0)),
                "time constant of the eye must be in (0, 10] s, got 0 s");
        assertRefused(
                () -> ModifiedAllard.of(TimeSpan.seconds(11)),
                "time constant of the eye must be in (0, 10] s, got 11 s");
        assertRefused(
                () -> OriginalAllard.of(TimeSpan.seconds(-1)),
                "time constant of the eye must be in (0, 10] s, got -1 s");
        assertRefused(
                () -> FormFactor.of(TimeSpan.seconds(0)), "time constant of the eye must be in (0, 10] s, got 0 s");
    }

    private static void assertRefused(Runnable call, String message) {
        assertThatThrownBy(call::run)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }
}
