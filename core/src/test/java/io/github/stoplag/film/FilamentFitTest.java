package io.github.stoplag.film;

import static io.github.stoplag.film.FilamentFit.Parameter.COIL_FACTOR;
import static io.github.stoplag.film.FilamentFit.Parameter.FILAMENT_TEMPERATURE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.junit.jupiter.api.Test;

/** {@code -Dstoplag.film.fits=500} for the long trials. */
class FilamentFitTest {
    private static final int FITS = Integer.getInteger("stoplag.film.fits", 16);
    private static final List<FilamentFit.Parameter> ALL = List.of(FilamentFit.Parameter.values());
    private static final Voltage RATED = Voltage.volts(13.5);
    private static final Power WATTS = Power.watts(26);
    private static final double OHM = 13.5 * 13.5 / 26;
    private static final double[] LEVELS = {0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9};
    private static final TimeSpan ERROR = TimeSpan.millis(0.3);

    private record Truth(double coil, double temperatureK, double series) {
        static Truth draw(Random random) {
            return new Truth(
                    inside(0.72 + 0.06 * random.nextGaussian(), 0.5, 1),
                    2750 + 100 * random.nextGaussian(),
                    inside(0.08 + 0.02 * random.nextGaussian(), 0, 0.3));
        }

        private static double inside(double value, double lo, double hi) {
            return Math.min(hi, Math.max(lo, value));
        }

        FilamentLamp lamp() {
            return FilamentLamp.builder(RATED, WATTS)
                    .coilFactor(coil)
                    .filamentTemperature(Temperature.kelvin(temperatureK))
                    .build();
        }

        SupplyConditions at(double volts) {
            return SupplyConditions.of(Voltage.volts(volts)).withSeriesResistance(Resistance.ohms(series * OHM));
        }

        double[] vector() {
            return new double[] {coil, temperatureK, series};
        }
    }

    private static LevelTimes on(Truth truth, double volts, double zeroS, Random random) {
        double[] times = truth.lamp().timesToLevelsS(truth.at(volts), LEVELS);
        for (int i = 0; i < times.length; i++) {
            times[i] += zeroS + ERROR.inSeconds() * random.nextGaussian();
        }
        return LevelTimes.independent("bulb", true, LEVELS, times, ERROR);
    }

    private static LevelTimes off(Truth truth, double volts, double zeroS, Random random) {
        double[] levels = new double[LEVELS.length];
        double[] times = new double[LEVELS.length];
        var decay = truth.lamp().switchOff(truth.at(volts));
        for (int i = 0; i < times.length; i++) {
            levels[i] = LEVELS[LEVELS.length - 1 - i];
            times[i] = zeroS + decay.timeToLevelS(levels[i]).orElseThrow() + ERROR.inSeconds() * random.nextGaussian();
        }
        return LevelTimes.independent("bulb", false, levels, times, ERROR);
    }

    private static FilamentFit.Builder fit() {
        return FilamentFit.of(RATED, WATTS)
                .coilFactor(0.72, 0.06)
                .filamentTemperature(Temperature.kelvin(2750), 100)
                .seriesResistance(0.08, 0.02);
    }

    private static SupplyConditions at(double volts) {
        return SupplyConditions.of(Voltage.volts(volts));
    }

    @Test
    void ellipsesHoldTheTruth() {
        Random random = new Random(42);
        double limit = new ChiSquaredDistribution(3).inverseCumulativeProbability(0.95);
        int held = 0;
        for (int i = 0; i < FITS; i++) {
            Truth truth = Truth.draw(random);
            FilamentFit fit = fit().curve(on(truth, 13.5, 0.2, random), at(13.5))
                    .curve(on(truth, 11.5, 0.1, random), at(11.5))
                    .curve(off(truth, 13.5, 0.15, random), at(13.5))
                    .fit();
            double[][] covariance = new double[3][3];
            double[] away = new double[3];
            for (int a = 0; a < ALL.size(); a++) {
                away[a] = fit.estimate(ALL.get(a)).value() - truth.vector()[a];
                for (int b = 0; b < ALL.size(); b++) {
                    covariance[a][b] = fit.covariance(ALL.get(a), ALL.get(b));
                }
            }
            ArrayRealVector d = new ArrayRealVector(away);
            double square = d.dotProduct(new LUDecomposition(new Array2DRowRealMatrix(covariance))
                    .getSolver()
                    .solve(d));
            held += square <= limit ? 1 : 0;
        }
        double four = 4 * Math.sqrt(0.95 * 0.05 / FITS);
        assertThat((double) held / FITS).as(held + " of " + FITS).isBetween(Math.min(0.93, 0.95 - four), 1.0);
    }

    /** From one curve without its switch all three together cannot be told; every such fit says so. */
    @Test
    void oneCurveIsToldToBeTooLittle() {
        Random random = new Random(7);
        for (int i = 0; i < Math.max(8, FITS / 10); i++) {
            Truth truth = Truth.draw(random);
            FilamentFit fit =
                    fit().curve(on(truth, 13.5, 0.2, random), at(13.5)).fit();
            assertThat(fit.isIdentified()).isFalse();
            assertThat(fit.caveats().toString())
                    .contains("the curves cannot tell")
                    .contains("apart");
            // what is not told stays as wide as it was thought
            assertThat(fit.singularValues().get(2)).isLessThan(1);
        }
    }

    @Test
    void withTwoKnownTheThirdComesOutClose() {
        Random random = new Random(11);
        Truth truth = new Truth(0.68, 2790, 0.06);
        FilamentFit fit = FilamentFit.of(RATED, WATTS)
                .filamentTemperature(Temperature.kelvin(2790), 0)
                .seriesResistance(0.06, 0)
                .curve(on(truth, 13.5, 0, random).fromSwitch(TimeSpan.millis(0.1)), at(13.5))
                .fit();
        assertThat(fit.estimate(COIL_FACTOR).value()).isCloseTo(0.68, within(0.003));
        assertThat(fit.estimate(COIL_FACTOR).standardUncertainty()).isLessThan(0.003);
        assertThat(fit.estimate(FILAMENT_TEMPERATURE).value()).isEqualTo(2790);
        assertThat(fit.estimate(FILAMENT_TEMPERATURE).standardUncertainty()).isZero();
        assertThat(fit.isIdentified()).isTrue();
    }

    @Test
    void fittedLampForetellsAnotherVoltage() {
        Random random = new Random(5);
        int held = 0;
        for (int i = 0; i < 20; i++) {
            Truth truth = Truth.draw(random);
            FilamentFit fit = fit().curve(on(truth, 13.5, 0.2, random), at(13.5))
                    .curve(off(truth, 13.5, 0.1, random), at(13.5))
                    .fit();
            var foretold = fit.timeToLevelS(true, at(11), 0.5);
            OnsetCurve other = truth.lamp().switchOn(truth.at(11));
            double truthS = other.timeToLevelS(0.5).orElseThrow();
            held += truthS >= foretold.coverage().lo()
                            && truthS <= foretold.coverage().hi()
                    ? 1
                    : 0;
            assertThat(fit.switchOn(at(11)).timeToLevelS(0.5).orElseThrow())
                    .isCloseTo(foretold.value(), within(foretold.standardUncertainty()));
            assertThat(foretold.standardUncertainty()).isLessThan(0.01);
        }
        // 95 % of 20 within four standard deviations
        assertThat(held).isGreaterThanOrEqualTo(15);
    }

    @Test
    void aModelThatDoesNotFitIsTold() {
        double[] linear = {0.1, 0.12, 0.14, 0.16, 0.18, 0.2, 0.22, 0.24, 0.26, 0.28, 0.3};
        FilamentFit fit = fit().curve(LevelTimes.independent("ramp", true, LEVELS, linear, ERROR), at(13.5))
                .fit();
        assertThat(fit.misfitRatio()).isGreaterThan(10);
        assertThat(fit.caveats().toString()).contains("leaves the curves by more than their uncertainty");
        assertThatThrownBy(() -> fit().fit()).hasMessage("a fit must have a curve, got none");
        assertThatThrownBy(() -> fit().coilFactor(1.2, 0.1)).hasMessage("coil factor must be in [0.5, 1], got 1.2");
    }

    @Test
    void takesFilmedChanges() {
        Truth truth = new Truth(0.7, 2750, 0.08);
        Camera camera = Camera.takenAt(120)
                .exposure(TimeSpan.millis(4))
                .transfer(TransferCurve.SRGB)
                .rowTime(TimeSpan.seconds(0))
                .build();
        SimulatedCamera simulated = SimulatedCamera.of(camera, Sensor.USUAL);
        GreySeries on = simulated.film(
                "bulb",
                LightCourse.onset(truth.lamp().switchOn(truth.at(13.5)), 0.03, 0.6),
                TimeSpan.seconds(-0.2),
                110,
                3);
        GreySeries off = simulated.film(
                "bulb",
                LightCourse.decay(truth.lamp().switchOff(truth.at(13.5)), 0.03, 0.6),
                TimeSpan.seconds(-0.2),
                80,
                4);
        FilamentFit fit = fit().curve(
                        LevelTimes.of(FilmedLamp.of(on, camera).on().orElseThrow()), at(13.5))
                .curve(LevelTimes.of(FilmedLamp.of(off, camera).off().orElseThrow()), at(13.5))
                .fit();
        for (int k = 0; k < ALL.size(); k++) {
            var estimate = fit.estimate(ALL.get(k));
            assertThat(truth.vector()[k])
                    .as(ALL.get(k) + " " + estimate)
                    .isCloseTo(estimate.value(), within(3 * estimate.standardUncertainty()));
        }
        assertThat(fit.timeToLevelS(true, at(12), 0.5).value())
                .isCloseTo(
                        truth.lamp().switchOn(truth.at(12)).timeToLevelS(0.5).orElseThrow(),
                        within(3 * fit.timeToLevelS(true, at(12), 0.5).standardUncertainty()));
    }
}
