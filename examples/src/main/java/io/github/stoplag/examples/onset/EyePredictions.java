package io.github.stoplag.examples.onset;

import static java.util.Map.entry;

import io.github.stoplag.lamp.BulbCatalogue;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.BlondelReyDouglas;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.Detector;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.LampSignal;
import io.github.stoplag.sight.ModifiedAllard;
import io.github.stoplag.sight.Threshold;
import io.github.stoplag.sweep.FilamentUncertainty;
import java.util.Map;
import java.util.function.DoubleSupplier;

/** What the models of the eye say of the moment at which a lamp is seen. */
final class EyePredictions {
    private static final double BRIGHT_CD = 42;
    private static final double DIM_CD = 5;
    /** How much later the dim lamp is seen, which sets every eye's threshold. */
    private static final double LATER_S = 0.084;

    private static final double SLOW_EYE_S = 0.2;
    private static final double RIG_CD = 60;
    private static final double TAIL_SHARE = 0.2;

    private EyePredictions() {}

    static Map<String, DoubleSupplier> computed() {
        Detector eye = IntegratingEye.of(LaboratoryLamps.EYE_TIME_CONSTANT, LaboratoryLamps.EYE_THRESHOLD);
        Threshold summed = Threshold.intensity(summedThreshold(LaboratoryLamps.EYE_TIME_CONSTANT.inSeconds()));
        OnsetCurve standard = LaboratoryLamps.standard();
        OnsetCurve fast = LaboratoryLamps.fast().onset();
        OnsetCurve european =
                BulbCatalogue.published("P21/5W").majorLamp().build().switchOn(LaboratoryLamps.conditions());
        return Map.ofEntries(
                entry("led_gain", () -> gainMs(eye, standard)),
                entry("fast_gain", () -> meanMs(eye, standard) - meanMs(eye, fast)),
                entry(
                        "led_gain_modified",
                        () -> gainMs(
                                ModifiedAllard.of(LaboratoryLamps.EYE_TIME_CONSTANT)
                                        .detector(summed),
                                standard)),
                entry(
                        "led_gain_blondel",
                        () -> gainMs(
                                BlondelReyDouglas.of(LaboratoryLamps.EYE_TIME_CONSTANT)
                                        .detector(summed),
                                standard)),
                entry("led_gain_european", () -> gainMs(eye, european)),
                entry(
                        "led_gain_slow_eye",
                        () -> gainMs(
                                IntegratingEye.of(TimeSpan.seconds(SLOW_EYE_S), leakyThreshold(SLOW_EYE_S)), standard)),
                entry(
                        "rig_gain",
                        () -> seenMs(eye, signal(standard, RIG_CD))
                                - seenMs(eye, signal(LaboratoryLamps.led(), RIG_CD))),
                entry("driver_notices", () -> meanMs(eye, standard)),
                entry("night_over_day", () -> nightOverDay(eye, standard)));
    }

    /** Which unknown of the laboratory's bulb moves the moment it is seen, and how far. */
    static FilamentUncertainty.Budget filamentSeen() {
        Detector eye = IntegratingEye.of(LaboratoryLamps.EYE_TIME_CONSTANT, LaboratoryLamps.EYE_THRESHOLD);
        return FilamentUncertainty.of(LaboratoryLamps.bulb())
                .budget("mean_time_seen_s", lamp -> meanMs(eye, lamp.switchOn(LaboratoryLamps.conditions())) / 1000);
    }

    private static double gainMs(Detector eye, OnsetCurve lamp) {
        return meanMs(eye, lamp) - meanMs(eye, LaboratoryLamps.led());
    }

    private static double meanMs(Detector eye, OnsetCurve lamp) {
        return (seenMs(eye, signal(lamp, BRIGHT_CD)) + seenMs(eye, signal(lamp, DIM_CD))) / 2;
    }

    private static LampSignal signal(OnsetCurve lamp, double cd) {
        return LampSignal.of(lamp, LuminousIntensity.candela(cd));
    }

    private static double seenMs(Detector eye, LampSignal signal) {
        Detection detection = eye.detect(signal);
        if (detection instanceof Detection.Seen seen) {
            return seen.at().inMillis();
        }
        Detection.NeverSeen never = (Detection.NeverSeen) detection;
        throw new IllegalStateException(never.criterion() + ": " + never.reason());
    }

    /** By night the same eye must tell the added light from a quarter of the lit tail lamp's. */
    private static double nightOverDay(Detector byDay, OnsetCurve lamp) {
        Detector byNight = IntegratingEye.of(
                LaboratoryLamps.EYE_TIME_CONSTANT, Threshold.contrast(Threshold.SIGNAL_LAMP_CONTRAST));
        LampSignal signal = signal(lamp, BRIGHT_CD);
        return seenMs(byNight, signal.withTailLit(LuminousIntensity.candela(TAIL_SHARE * BRIGHT_CD)))
                / seenMs(byDay, signal);
    }

    /** Solves D = τ ln((1 − E/I₂)/(1 − E/I₁)) for E: steps to I₁ and I₂ seen D apart by a leaky integrator. */
    static LuminousIntensity leakyThreshold(double timeConstantS) {
        double ratio = Math.exp(LATER_S / timeConstantS);
        return LuminousIntensity.candela((ratio - 1) / (ratio / DIM_CD - 1 / BRIGHT_CD));
    }

    /** Solves D = a E/(I₁ − E) − a E/(I₂ − E) for E: the same by an eye that a step passes after a E/(I − E). */
    static LuminousIntensity summedThreshold(double constantS) {
        double sum = BRIGHT_CD + DIM_CD;
        double b = LATER_S * sum + constantS * (BRIGHT_CD - DIM_CD);
        double root = Math.sqrt(b * b - 4 * LATER_S * LATER_S * BRIGHT_CD * DIM_CD);
        return LuminousIntensity.candela((b - root) / (2 * LATER_S));
    }
}
