package io.github.stoplag.sight;

import static java.util.Map.entry;

import io.github.stoplag.PublishedTableTest;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Illuminance;
import io.github.stoplag.quantity.Luminance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleSupplier;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Published figures of seeing lights against the criteria, one parameter set for all. */
class PublishedSightFiguresTest extends PublishedTableTest {
    private static final Distance NAUTICAL_MILE = Distance.metres(1852);
    private static final TimeSpan A = TimeSpan.seconds(0.2);
    private static final OnsetCurve FILAMENT = LaboratoryLamps.standard();
    private static final OnsetCurve LED = LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(0));

    private static final Map<String, DoubleSupplier> COMPUTED = Map.ofEntries(
            entry(
                    "allard_nmi",
                    () -> Atmosphere.transmitting(0.05, nauticalMiles(10)).transmission(NAUTICAL_MILE)),
            entry("allard_km", () -> transmission(nauticalMiles(10), Atmosphere.Convention.FIVE_PER_CENT, 1000)),
            entry(
                    "nominal",
                    () -> Atmosphere.CLEAR
                            .intensityFor(Illuminance.lux(2e-7), NAUTICAL_MILE)
                            .inCandela()),
            entry("colreg_1", () -> colregCd(1)),
            entry("colreg_2", () -> colregCd(2)),
            entry("colreg_3", () -> colregCd(3)),
            entry("colreg_4", () -> colregCd(4)),
            entry("colreg_5", () -> colregCd(5)),
            entry("colreg_6", () -> colregCd(6)),
            entry(
                    "colreg_visibility",
                    () -> transmission(nauticalMiles(13), Atmosphere.Convention.FIVE_PER_CENT, 1852)),
            entry("inland_visibility", () -> transmission(Distance.km(14.3), Atmosphere.Convention.TWO_PER_CENT, 1000)),
            entry("curve_50", () -> curveMicrolux(50)),
            entry("curve_1000", () -> curveMicrolux(1000)),
            entry("curve_12000", () -> curveMicrolux(12_000)),
            entry("curve_night", () -> curveMicrolux(1)),
            entry("doubled_flash", () -> rectangleCd(0.42) / rectangleCd(0.21) - 1),
            entry("form_factor_02", () -> formFactorOverBlondelRey(0.2)),
            entry("form_factor_1", () -> formFactorOverBlondelRey(1)),
            entry("form_factor_2", () -> formFactorOverBlondelRey(2)),
            entry(
                    "original_allard",
                    () -> IntStream.rangeClosed(0, 300)
                            .mapToObj(i -> Flash.rectangle(
                                    LuminousIntensity.candela(1), TimeSpan.seconds(Math.pow(10, i / 100.0 - 2))))
                            .mapToDouble(f -> cd(OriginalAllard.of(A), f) / cd(BlondelReyDouglas.of(A), f))
                            .max()
                            .orElseThrow()),
            entry(
                    "gain_modified",
                    () -> gainMs(hyperbolic(), t -> ModifiedAllard.of(A).detector(t))),
            entry(
                    "gain_blondel",
                    () -> gainMs(hyperbolic(), t -> BlondelReyDouglas.of(A).detector(t))),
            entry("gain_integrating", () -> gainMs(exponential(), t -> IntegratingEye.of(A, t))),
            entry("led_5_filament_42", () -> {
                Detector eye = IntegratingEye.of(A, exponential());
                return seenMs(eye, LED, 5, 0) - seenMs(eye, FILAMENT, 42, 0);
            }),
            entry(
                    "night_over_day",
                    () -> seenMs(
                                    IntegratingEye.of(A, Threshold.contrast(Threshold.SIGNAL_LAMP_CONTRAST)),
                                    FILAMENT,
                                    42,
                                    42 / 5.0)
                            / seenMs(IntegratingEye.of(A, exponential()), FILAMENT, 42, 0)));

    @Override
    protected List<String> tables() {
        return List.of("published_sight_figures.csv");
    }

    @Override
    protected double compute(Row row) {
        return compute(COMPUTED, row);
    }

    @Override
    protected Set<String> cases() {
        return COMPUTED.keySet();
    }

    private static Distance nauticalMiles(double n) {
        return Distance.metres(1852 * n);
    }

    private static double transmission(Distance visibility, Atmosphere.Convention convention, double overM) {
        return Atmosphere.visibility(visibility, convention).transmission(Distance.metres(overM));
    }

    private static double colregCd(double miles) {
        return Atmosphere.transmitting(0.8, NAUTICAL_MILE)
                .intensityFor(Illuminance.lux(2e-7), nauticalMiles(miles))
                .inCandela();
    }

    private static double curveMicrolux(double backgroundCdPerM2) {
        return 1e6
                * ThresholdIlluminance.CURVE
                        .at(Luminance.cdPerM2(backgroundCdPerM2))
                        .inLux();
    }

    private static double rectangleCd(double durationS) {
        return cd(
                BlondelReyDouglas.of(TimeSpan.seconds(0.21)),
                Flash.rectangle(LuminousIntensity.candela(10), TimeSpan.seconds(durationS)));
    }

    private static double formFactorOverBlondelRey(double durationS) {
        Flash triangle = Flash.triangle(LuminousIntensity.candela(10), TimeSpan.seconds(durationS), 0.5);
        return cd(FormFactor.of(A), triangle) / cd(BlondelReyDouglas.of(A), triangle);
    }

    private static double cd(EffectiveIntensityMethod method, Flash flash) {
        return method.of(flash).intensity().inCandela();
    }

    /**
     * A step of I reaches the threshold after τ ln(I/(I − Ith)): the threshold that puts 84 ms between 42 cd and 5 cd.
     */
    private static Threshold exponential() {
        return threshold(x -> 0.2 * (Math.log(5 / (5 - x)) - Math.log(42 / (42 - x))));
    }

    /** The same for a step that takes a Ith/(I − Ith). */
    private static Threshold hyperbolic() {
        return threshold(x -> 0.2 * x * (1 / (5 - x) - 1 / (42 - x)));
    }

    private static Threshold threshold(Function<Double, Double> laterS) {
        return Threshold.intensity(
                LuminousIntensity.candela(new BrentSolver(1e-12).solve(100, x -> laterS.apply(x) - 0.084, 0.01, 4.9)));
    }

    private static double gainMs(Threshold threshold, Function<Threshold, Detector> eye) {
        Detector detector = eye.apply(threshold);
        double sum = 0;
        for (double cd : new double[] {42, 5}) {
            sum += seenMs(detector, FILAMENT, cd, 0) - seenMs(detector, LED, cd, 0);
        }
        return sum / 2;
    }

    private static double seenMs(Detector detector, OnsetCurve onset, double finalCd, double tailCd) {
        Detection detection = detector.detect(
                new LampSignal(onset, LuminousIntensity.candela(finalCd), LuminousIntensity.candela(tailCd)));
        if (detection instanceof Detection.Seen seen) {
            return seen.at().inMillis();
        }
        throw new AssertionError(detection);
    }
}
