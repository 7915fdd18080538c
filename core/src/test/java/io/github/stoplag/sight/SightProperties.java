package io.github.stoplag.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Luminance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;

/** What must hold for any lamp, flash and view. */
class SightProperties {
    private static final TimeSpan A = TimeSpan.seconds(0.2);
    private static final List<EffectiveIntensityMethod> METHODS =
            List.of(BlondelReyDouglas.of(A), ModifiedAllard.of(A), OriginalAllard.of(A), FormFactor.of(A));

    private static List<Detector> detectors(Threshold threshold) {
        return List.of(
                InstantEye.of(threshold),
                IntegratingEye.of(A, threshold),
                ModifiedAllard.of(A).detector(threshold),
                BlondelReyDouglas.of(A).detector(threshold));
    }

    /** Gives infinity for a lamp never seen, so that outcomes can be put in order. */
    private static double seenS(Detector detector, LampSignal signal) {
        return detector.detect(signal) instanceof Detection.Seen seen
                ? seen.at().inSeconds()
                : Double.POSITIVE_INFINITY;
    }

    private static Threshold threshold(double cd) {
        return Threshold.intensity(LuminousIntensity.candela(cd));
    }

    private static LampSignal signal(OnsetCurve onset, double finalCd) {
        return LampSignal.of(onset, LuminousIntensity.candela(finalCd));
    }

    /** Lamps dark until a delay, then an LED's rise or a measured one. */
    @Provide
    Arbitrary<OnsetCurve> onsets() {
        Arbitrary<OnsetCurve> leds = Combinators.combine(
                        Arbitraries.doubles().between(0.01, 0.5),
                        Arbitraries.doubles().between(0, 0.4))
                .as((delayS, riseS) -> LedLamp.of(TimeSpan.seconds(delayS), TimeSpan.seconds(riseS)));
        Arbitrary<OnsetCurve> measured = Arbitraries.doubles()
                .between(0, 1)
                .list()
                .ofMinSize(2)
                .ofMaxSize(12)
                .map(SightProperties::measured);
        return Arbitraries.oneOf(leds, measured);
    }

    private static OnsetCurve measured(List<Double> steps) {
        double[] ratio = new double[steps.size() + 2];
        double[] timeS = new double[ratio.length];
        for (int i = 0; i < ratio.length; i++) {
            timeS[i] = 0.02 * (i + 1);
            ratio[i] = i == 0 ? 0 : i <= steps.size() ? ratio[i - 1] + steps.get(i - 1) : ratio[i - 1] + 0.1;
        }
        double end = ratio[ratio.length - 1];
        return MeasuredLamp.of(
                "measured", timeS, Arrays.stream(ratio).map(r -> r / end).toArray());
    }

    @Property(tries = 150, seed = "42")
    void nothingIsSeenBeforeFirstLightAndNoGatheringEyeBeforeAnInstantOne(
            @ForAll("onsets") OnsetCurve onset,
            @ForAll @DoubleRange(min = 0.01, max = 60) double thresholdCd,
            @ForAll @DoubleRange(min = 1, max = 300) double finalCd) {
        double firstLightS = onset.breakpointsS()[0];
        List<Detector> detectors = detectors(threshold(thresholdCd));
        double instantS = seenS(detectors.get(0), signal(onset, finalCd));
        assertThat(instantS).isGreaterThanOrEqualTo(firstLightS);
        for (Detector detector : detectors) {
            assertThat(seenS(detector, signal(onset, finalCd))).isGreaterThanOrEqualTo(instantS - 1e-9);
        }
    }

    @Property(tries = 150, seed = "42")
    void moreLightIsSeenNoLaterAndAHigherThresholdNoEarlier(
            @ForAll("onsets") OnsetCurve onset,
            @ForAll @DoubleRange(min = 0.01, max = 60) double thresholdCd,
            @ForAll @DoubleRange(min = 1, max = 300) double finalCd,
            @ForAll @DoubleRange(min = 1.01, max = 5) double factor) {
        List<Detector> low = detectors(threshold(thresholdCd));
        List<Detector> high = detectors(threshold(thresholdCd * factor));
        for (int i = 0; i < low.size(); i++) {
            double atS = seenS(low.get(i), signal(onset, finalCd));
            assertThat(seenS(low.get(i), signal(onset, finalCd * factor))).isLessThanOrEqualTo(atS + 1e-9);
            assertThat(seenS(high.get(i), signal(onset, finalCd))).isGreaterThanOrEqualTo(atS - 1e-9);
            // only the ratio of light to threshold counts
            assertThat(seenS(high.get(i), signal(onset, finalCd * factor)))
                    .satisfiesAnyOf(
                            s -> assertThat(s).isEqualTo(atS),
                            s -> assertThat(s).isCloseTo(atS, within(1e-6 * (1 + atS))));
        }
    }

    @Property(tries = 200, seed = "42")
    void theChosenCriterionIsMonotoneInBackgroundDistanceAirAndTailLamp(
            @ForAll("onsets") OnsetCurve onset,
            @ForAll @DoubleRange(min = -3, max = 5) double logBackground,
            @ForAll @DoubleRange(min = 0, max = 1) double logStep,
            @ForAll @DoubleRange(min = 5, max = 500) double distanceM,
            @ForAll @DoubleRange(min = 1, max = 3) double factor,
            @ForAll @DoubleRange(min = 0, max = 40) double tailCd) {
        LampSignal signal = signal(onset, 60).withTailLit(LuminousIntensity.candela(tailCd));
        Luminance background = Luminance.cdPerM2(Math.pow(10, logBackground));
        Luminance brighter = Luminance.cdPerM2(Math.pow(10, logBackground + logStep));
        Distance near = Distance.metres(distanceM);
        ViewingConditions view = ViewingConditions.of(background, near).withTailLit();
        double atS = seenS(DetectorChooser.choose(view), signal);
        List<ViewingConditions> worse = List.of(
                ViewingConditions.of(brighter, near).withTailLit(),
                ViewingConditions.of(background, Distance.metres(distanceM * factor))
                        .withTailLit(),
                view.through(Atmosphere.visibility(Distance.metres(300 * factor), Atmosphere.Convention.TWO_PER_CENT)));
        for (ViewingConditions conditions : worse) {
            assertThat(seenS(DetectorChooser.choose(conditions), signal)).isGreaterThanOrEqualTo(atS - 1e-9);
        }
        LampSignal brighterTail = signal.withTailLit(LuminousIntensity.candela(tailCd * factor));
        assertThat(seenS(DetectorChooser.choose(view), brighterTail)).isGreaterThanOrEqualTo(atS - 1e-9);
    }

    private static double[] values(List<Double> samples) {
        double[] values = samples.stream().mapToDouble(Double::doubleValue).toArray();
        values[0] += 1e-3;
        return values;
    }

    private static Flash flash(double[] cd, double spacingS) {
        double[] timeS = new double[cd.length];
        Arrays.setAll(timeS, i -> spacingS * i);
        return Flash.samples(timeS, cd);
    }

    private static double cd(EffectiveIntensityMethod method, Flash flash) {
        return method.of(flash).intensity().inCandela();
    }

    @Property(tries = 150, seed = "42")
    void responsesAddUpAndEffectiveIntensitiesAtMost(
            @ForAll @Size(8) List<@DoubleRange(min = 0, max = 100) Double> first,
            @ForAll @Size(8) List<@DoubleRange(min = 0, max = 100) Double> second,
            @ForAll @DoubleRange(min = 0.01, max = 0.3) double spacingS,
            @ForAll @DoubleRange(min = 0.5, max = 20) double factor) {
        double[] one = values(first);
        double[] other = values(second);
        double[] sum = new double[8];
        Arrays.setAll(sum, i -> one[i] + other[i]);
        Flash both = flash(sum, spacingS);
        for (double share : new double[] {0.1, 0.5, 0.9, 1.4}) {
            TimeSpan t = TimeSpan.seconds(7 * spacingS * share);
            assertThat(ModifiedAllard.of(A).responseAt(both, t).inCandela())
                    .isCloseTo(
                            ModifiedAllard.of(A)
                                            .responseAt(flash(one, spacingS), t)
                                            .inCandela()
                                    + ModifiedAllard.of(A)
                                            .responseAt(flash(other, spacingS), t)
                                            .inCandela(),
                            within(1e-9));
            assertThat(OriginalAllard.of(A).responseAt(both, t).inCandela())
                    .isCloseTo(
                            OriginalAllard.of(A)
                                            .responseAt(flash(one, spacingS), t)
                                            .inCandela()
                                    + OriginalAllard.of(A)
                                            .responseAt(flash(other, spacingS), t)
                                            .inCandela(),
                            within(1e-9));
        }
        // the form factor is left out: it is no greatest value of anything that adds up
        for (EffectiveIntensityMethod method : METHODS.subList(0, 3)) {
            assertThat(cd(method, both))
                    .isLessThanOrEqualTo(cd(method, flash(one, spacingS)) + cd(method, flash(other, spacingS)) + 1e-6);
        }
        double[] scaled = Arrays.stream(one).map(v -> factor * v).toArray();
        for (EffectiveIntensityMethod method : METHODS) {
            assertThat(cd(method, flash(scaled, spacingS)))
                    .isCloseTo(factor * cd(method, flash(one, spacingS)), within(1e-6 * factor));
        }
    }

    @Property(tries = 150, seed = "42")
    void theFormFactorIsTheUpperBoundAndTimeReversalChangesNothingWhereItShouldNot(
            @ForAll @Size(8) List<@DoubleRange(min = 0, max = 100) Double> samples,
            @ForAll @DoubleRange(min = 0.01, max = 0.3) double spacingS) {
        double[] forward = values(samples);
        double[] backward = new double[8];
        Arrays.setAll(backward, i -> forward[7 - i]);
        Flash flash = flash(forward, spacingS);
        Flash reversed = flash(backward, spacingS);
        double formFactor = cd(FormFactor.of(A), flash);
        // a light of at most the peak gathers most when all of it stands side by side at the peak
        assertThat(cd(BlondelReyDouglas.of(A), flash)).isLessThanOrEqualTo(formFactor + 1e-9);
        assertThat(cd(ModifiedAllard.of(A), flash)).isLessThanOrEqualTo(formFactor + 1e-9);
        assertThat(formFactor).isLessThan(flash.peak().inCandela());
        assertThat(cd(OriginalAllard.of(A), flash)).isLessThan(flash.peak().inCandela());
        assertThat(cd(FormFactor.of(A), reversed)).isCloseTo(formFactor, within(1e-9));
        assertThat(cd(BlondelReyDouglas.of(A), reversed)).isCloseTo(cd(BlondelReyDouglas.of(A), flash), within(1e-9));
    }
}
