package io.github.stoplag.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Illuminance;
import io.github.stoplag.quantity.Luminance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import java.util.List;
import org.junit.jupiter.api.Test;

class CriteriaTest {
    private static final double A_S = 0.2;
    private static final TimeSpan A = TimeSpan.seconds(A_S);
    private static final Threshold LABORATORY = Threshold.intensity(LuminousIntensity.candela(1.86));
    private static final OnsetCurve FILAMENT = FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26))
            .build()
            .switchOn(SupplyConditions.of(Voltage.volts(12.8)));
    private static final LedLamp STEP = LedLamp.of(TimeSpan.millis(30), TimeSpan.seconds(0));
    private static final Distance FAR = Distance.metres(500);

    private static LampSignal signal(OnsetCurve onset, double finalCd) {
        return LampSignal.of(onset, LuminousIntensity.candela(finalCd));
    }

    private static double seenS(Detector detector, LampSignal signal) {
        if (detector.detect(signal) instanceof Detection.Seen seen) {
            return seen.at().inSeconds();
        }
        throw new AssertionError("not seen");
    }

    @Test
    void aStepIsSeenAtTheClosedFormOfEveryCriterion() {
        for (double cd : new double[] {1.9, 5, 42, 1e5}) {
            LampSignal step = signal(STEP, cd);
            double hyperbolicS = 0.03 + A_S * 1.86 / (cd - 1.86);
            assertThat(seenS(ModifiedAllard.of(A).detector(LABORATORY), step)).isCloseTo(hyperbolicS, within(2e-8));
            assertThat(seenS(BlondelReyDouglas.of(A).detector(LABORATORY), step))
                    .isCloseTo(hyperbolicS, within(2e-8));
            assertThat(seenS(InstantEye.of(LABORATORY), step)).isEqualTo(0.03);
            assertThat(seenS(IntegratingEye.of(A, LABORATORY), step))
                    .isCloseTo(0.03 + A_S * Math.log(cd / (cd - 1.86)), within(1e-9));
        }
    }

    @Test
    void aShareOfLightThatNeverGlowsIsNotSeen() {
        OnsetCurve dark = FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26))
                .build()
                .switchOn(SupplyConditions.of(Voltage.volts(12.8)).withSeriesResistance(Resistance.ohms(100)));
        Detection detection = ShareOfFinal.of(0.9).detect(signal(dark, 42));
        assertThat(detection)
                .isInstanceOfSatisfying(
                        Detection.NeverSeen.class,
                        never -> assertThat(never.reason())
                                .startsWith("the lamp never visibly glows: steady filament temperature 30")
                                .endsWith(" K, solids begin to glow near 798 K (Draper point, from memory)"));
        assertThat(ShareOfFinal.of(0.9).detect(signal(FILAMENT, 42))).isInstanceOf(Detection.Seen.class);
    }

    @Test
    void aStraightRiseIsSeenAtTheClosedFormOfEveryCriterion() {
        MeasuredLamp ramp = MeasuredLamp.of("ramp", new double[] {0, 1}, new double[] {0, 1});
        LampSignal signal = signal(ramp, 20);
        double passesS = 1.86 / 20;
        assertThat(seenS(InstantEye.of(LABORATORY), signal)).isCloseTo(passesS, within(1e-12));
        // ∫ (20 t − Ith) dt from where it passes Ith: 10 (t − passes)² = a Ith
        assertThat(seenS(BlondelReyDouglas.of(A).detector(LABORATORY), signal))
                .isCloseTo(passesS + Math.sqrt(A_S * 1.86 / 10), within(1e-9));
        double atS = seenS(ModifiedAllard.of(A).detector(LABORATORY), signal);
        assertThat(20 * (atS - A_S * Math.log1p(atS / A_S))).isCloseTo(1.86, within(1e-8));
    }

    @Test
    void aFilamentReachesTheThresholdByADenseSum() {
        for (double cd : new double[] {3, 5, 42, 300}) {
            LampSignal signal = signal(FILAMENT, cd);
            double atS = seenS(ModifiedAllard.of(A).detector(LABORATORY), signal);
            double passesS = seenS(InstantEye.of(LABORATORY), signal);
            double blondelS = seenS(BlondelReyDouglas.of(A).detector(LABORATORY), signal);
            int n = 20_000;
            double response = 0;
            double excess = 0;
            for (int i = 0; i < n; i++) {
                double u = atS * (i + 0.5) / n;
                response += cd * FILAMENT.relativeIntensity(atS - u) * A_S / ((A_S + u) * (A_S + u)) * atS / n;
                double s = passesS + (blondelS - passesS) * (i + 0.5) / n;
                excess += (cd * FILAMENT.relativeIntensity(s) - 1.86) * (blondelS - passesS) / n;
            }
            assertThat(response).as("%s cd", cd).isCloseTo(1.86, within(1e-6));
            assertThat(excess).as("%s cd", cd).isCloseTo(A_S * 1.86, within(1e-6));
        }
    }

    @Test
    void theLightSoFarIsTheEffectiveIntensityOfTheLampCutOff() {
        double atS = seenS(BlondelReyDouglas.of(A).detector(LABORATORY), signal(FILAMENT, 10));
        double modifiedS = seenS(ModifiedAllard.of(A).detector(LABORATORY), signal(FILAMENT, 10));
        Flash cutOff = Flash.of(t -> 10 * FILAMENT.relativeIntensity(t), TimeSpan.seconds(atS), 2000);
        Flash earlier = Flash.of(t -> 10 * FILAMENT.relativeIntensity(t), TimeSpan.seconds(modifiedS), 2000);
        assertThat(BlondelReyDouglas.of(A).of(cutOff).intensity().inCandela()).isCloseTo(1.86, within(1e-5));
        assertThat(ModifiedAllard.of(A).of(earlier).intensity().inCandela()).isCloseTo(1.86, within(1e-5));
    }

    @Test
    void aThresholdWithoutSummationFallsFarShortOfThePublishedGain() {
        // 166 ms between filament and LED, averaged over 42 cd and 5 cd (Sivak et al. 1993)
        LedLamp led = LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(0));
        InstantEye eye = InstantEye.of(LABORATORY);
        double gainS = 0;
        for (double cd : new double[] {42, 5}) {
            gainS += (seenS(eye, signal(FILAMENT, cd)) - seenS(eye, signal(led, cd))) / 2;
        }
        assertThat(gainS).isLessThan(0.75 * 0.166);
    }

    @Test
    void theLightGivenByAllardsLawIsTheThresholdAtThatDistance() {
        Atmosphere fog = Atmosphere.visibility(Distance.metres(200), Atmosphere.Convention.FIVE_PER_CENT);
        Threshold threshold = Threshold.illuminance(Illuminance.lux(1e-4), FAR, fog);
        double requiredCd = fog.intensityFor(Illuminance.lux(1e-4), FAR).inCandela();
        // 0.05 is lost every 200 m: 0.05^2.5 at 500 m
        assertThat(requiredCd).isCloseTo(1e-4 * 500 * 500 / Math.pow(0.05, 2.5), within(1e-6));
        assertThat(InstantEye.of(threshold).detect(signal(STEP, requiredCd * 1.001)))
                .extracting("at", "criterion")
                .containsExactly(
                        TimeSpan.millis(30),
                        "threshold without summation over time, 0.0001 lx at 500 m in visibility 200 m at 5 % contrast");
        assertThat(InstantEye.of(threshold).detect(signal(STEP, 40_000)))
                .extracting("criterion", "reason")
                .containsExactly(
                        "threshold without summation over time, 0.0001 lx at 500 m in visibility 200 m at 5 % contrast",
                        "the final 40000 cd does not exceed the threshold of 44721.4 cd");
    }

    @Test
    void airGivesAndTakesTheSameLight() {
        Atmosphere air = Atmosphere.transmitting(0.76, Distance.km(1));
        LuminousIntensity lamp = LuminousIntensity.candela(42);
        Illuminance atEye = air.illuminance(lamp, FAR);
        assertThat(atEye.inLux()).isCloseTo(42 * Math.sqrt(0.76) / 250_000, within(1e-12));
        assertThat(air.intensityFor(atEye, FAR).inCandela()).isCloseTo(42, within(1e-10));
        assertThat(Atmosphere.CLEAR.transmission(FAR)).isEqualTo(1);
        assertThat(air).hasToString("air transmitting 0.76 per 1000 m");
    }

    @Test
    void stepsChangeAtTheirPublishedBounds() {
        double[][] cases = {{0, 8e-7}, {49.9, 8e-7}, {50, 1e-5}, {999, 1e-5}, {1000, 1e-4}, {12_000, 1e-3}, {5e4, 1e-3}
        };
        for (double[] c : cases) {
            assertThat(ThresholdIlluminance.STEPS.at(Luminance.cdPerM2(c[0])).inLux())
                    .isEqualTo(c[1]);
        }
        Table table = Table.read(ThresholdIlluminance.class, "background_steps.csv");
        assertThat(table.source()).isNotBlank();
        assertThat(table.rows())
                .hasSize(4)
                .allSatisfy(row ->
                        assertThat(Standing.of(table.text(row, "standing"))).isEqualTo(Standing.FROM_MEMORY));
        // the assumed backgrounds lie in the steps of their names
        assertThat(ThresholdIlluminance.STEPS
                        .at(BackgroundLuminance.NIGHT.luminance())
                        .inLux())
                .isEqualTo(8e-7);
        assertThat(ThresholdIlluminance.STEPS
                        .at(BackgroundLuminance.DUSK.luminance())
                        .inLux())
                .isEqualTo(1e-5);
        assertThat(ThresholdIlluminance.STEPS
                        .at(BackgroundLuminance.DAY.luminance())
                        .inLux())
                .isEqualTo(1e-4);
        assertThat(BackgroundLuminance.DUSK.source().standing()).isEqualTo(Standing.ASSUMED);
    }

    @Test
    void aLitTailLampRaisesTheThresholdByItsContrast() {
        LampSignal dark = signal(STEP, 42);
        LampSignal lit = dark.withTailLit(LuminousIntensity.candela(8));
        assertThat(lit.intensityAt(TimeSpan.millis(29))).isEqualTo(LuminousIntensity.candela(8));
        assertThat(lit.intensityAt(TimeSpan.millis(31))).isEqualTo(LuminousIntensity.candela(50));
        // 1.86 + 0.25 × 8 = 3.86 cd of the 42 cd added
        Detector eye = IntegratingEye.of(A, LABORATORY.withContrast(0.25));
        assertThat(seenS(eye, lit)).isCloseTo(0.03 + A_S * Math.log(42 / (42 - 3.86)), within(1e-9));
        assertThat(seenS(eye, dark)).isEqualTo(seenS(IntegratingEye.of(A, LABORATORY), dark));
        assertThat(eye.criterion())
                .isEqualTo("integrating eye, time constant 0.2 s, threshold 1.86 cd plus 25 % of the lit tail lamp");
        Detector change = InstantEye.of(Threshold.contrast(0.5));
        assertThat(change.detect(signal(STEP, 3).withTailLit(LuminousIntensity.candela(8))))
                .extracting("criterion", "reason")
                .containsExactly(
                        "threshold without summation over time, 50 % of the lit tail lamp",
                        "the final 3 cd, added to 8 cd, does not exceed the threshold of 4 cd");
        assertThat(seenS(change, lit)).isEqualTo(0.03);
        assertThatThrownBy(() -> change.detect(dark))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("light before switch-on for a threshold of contrast alone must be above 1e-6 cd, got 0 cd");
    }

    @Test
    void aLitTailLampLeftOutIsTold() {
        LampSignal lit = signal(STEP, 42).withTailLit(LuminousIntensity.candela(8));
        for (Detector detector : List.of(
                InstantEye.of(LABORATORY),
                IntegratingEye.of(A, LABORATORY),
                ModifiedAllard.of(A).detector(LABORATORY),
                BlondelReyDouglas.of(A).detector(LABORATORY))) {
            assertThat(detector.detect(lit).caveats())
                    .containsExactly(
                            new Caveat(
                                    "a tail lamp of 8 cd is lit, and this criterion leaves it out: give the threshold a contrast"));
            assertThat(detector.detect(signal(STEP, 42)).caveats()).isEmpty();
        }
    }

    @Test
    void everyOutcomeNamesItsCriterion() {
        for (Detector detector : List.of(
                ShareOfFinal.of(0.5),
                InstantEye.of(LABORATORY),
                IntegratingEye.of(A, LABORATORY),
                ModifiedAllard.of(A).detector(LABORATORY),
                BlondelReyDouglas.of(A).detector(LABORATORY),
                DetectorChooser.choose(ViewingConditions.of(BackgroundLuminance.DAY.luminance(), FAR)))) {
            assertThat(detector.detect(signal(STEP, 300)).criterion()).isEqualTo(detector.criterion());
            assertThat(detector.detect(signal(STEP, 0)))
                    .isInstanceOf(Detection.NeverSeen.class)
                    .extracting(Detection::criterion)
                    .isEqualTo(detector.criterion());
        }
        assertThat(ModifiedAllard.of(A).detector(LABORATORY).criterion())
                .isEqualTo("modified Allard, a = 0.2 s, running response, threshold 1.86 cd");
        assertThat(BlondelReyDouglas.of(A).detector(LABORATORY).criterion())
                .isEqualTo("Blondel-Rey-Douglas, a = 0.2 s, light so far, threshold 1.86 cd");
    }

    @Test
    void lightThatGathersTooSlowlyIsNeverSeen() {
        LampSignal barely = signal(STEP, 1.86 * (1 + 1e-6));
        for (Detector detector : List.of(
                ModifiedAllard.of(A).detector(LABORATORY),
                BlondelReyDouglas.of(A).detector(LABORATORY))) {
            assertThat(detector.detect(barely))
                    .extracting("criterion", "reason")
                    .containsExactly(
                            detector.criterion(),
                            "the light does not gather to the threshold of 1.86 cd within 3600 s");
        }
    }

    @Test
    void theChooserFollowsItsWrittenRules() {
        ViewingConditions day = ViewingConditions.of(BackgroundLuminance.DAY.luminance(), FAR);
        assertThat(DetectorChooser.choose(day).rule()).isEqualTo(DetectorChooser.Rule.LIGHT_BACKGROUND);
        assertThat(DetectorChooser.choose(day).criterion())
                .isEqualTo("integrating eye, time constant 0.2 s, threshold 0.000266 lx (published curve, from memory,"
                        + " background 10000 cd/m²) at 500 m; chosen because the lamp is dark before, against at least"
                        + " 1 cd/m²: threshold by the published curve");
        ViewingConditions black = ViewingConditions.of(Luminance.cdPerM2(0), FAR);
        assertThat(DetectorChooser.choose(black).rule()).isEqualTo(DetectorChooser.Rule.DARK_BACKGROUND);
        assertThat(DetectorChooser.choose(black).criterion())
                .contains("2e-7 lx (nominal range at night, seen, background 0 cd/m²) at 500 m");
        ViewingConditions night =
                ViewingConditions.of(BackgroundLuminance.NIGHT.luminance(), FAR).withTailLit();
        assertThat(DetectorChooser.choose(night).rule()).isEqualTo(DetectorChooser.Rule.LIT_TAIL);
        assertThat(DetectorChooser.choose(night).criterion())
                .contains("at 500 m plus 25 % of the lit tail lamp; chosen");
        Atmosphere fog = Atmosphere.visibility(Distance.metres(50), Atmosphere.Convention.FIVE_PER_CENT);
        assertThat(DetectorChooser.choose(day.through(fog)).detect(signal(STEP, 300)))
                .isInstanceOf(Detection.NeverSeen.class);
    }

    @Test
    void lampsLitAlreadyDelayTheirNoticeAsOnTheRoad() {
        // direction only: tail lamps lit lengthened reactions to stop lamps (Jilek and Vrabel 2020)
        ViewingConditions night = ViewingConditions.of(BackgroundLuminance.NIGHT.luminance(), FAR);
        LampSignal dark = signal(FILAMENT, 60);
        assertThat(seenS(DetectorChooser.choose(night.withTailLit()), dark.withTailLit(LuminousIntensity.candela(5))))
                .isGreaterThan(seenS(DetectorChooser.choose(night), dark) + 0.02);
    }

    @Test
    void criteriaOutsideTheirRangesSaySo() {
        Luminance glare = Luminance.cdPerM2(1e5);
        Detection seen = InstantEye.of(Threshold.background(
                        ThresholdIlluminance.CURVE, ViewingConditions.of(glare, Distance.metres(50))))
                .detect(signal(STEP, 300));
        assertThat(seen.caveats())
                .extracting(Caveat::text)
                .containsExactly(
                        "background luminance 100000 cd/m² is outside the validated range [1, 40000] cd/m² of ICAO Doc"
                                + " 9328, runway visual range (from memory)",
                        "threshold illuminances hold for a point of light, about 1 arc minute (assumed): a lamp 0.1 m wide"
                                + " spans 6.9 arc minutes at 50 m and needs more");
        assertThat(ThresholdIlluminance.NIGHT.evidence(glare).caveats()).hasSize(1);
        assertThat(IntegratingEye.of(TimeSpan.seconds(1), LABORATORY)
                        .detect(signal(STEP, 300))
                        .caveats())
                .hasSize(1);
    }

    @Test
    void pieronsLawInterpolatesBetweenTheTwoItWasSetBy() {
        Source source = Source.seen("Sivak et al. 1993 (UMTRI-93-37)", "abstract");
        TimeSpan later = TimeSpan.millis(84);
        LuminousIntensity dim = LuminousIntensity.candela(5);
        LuminousIntensity bright = LuminousIntensity.candela(42);
        for (PieronLaw.Exponent exponent : PieronLaw.Exponent.values()) {
            PieronLaw law = PieronLaw.between(TimeSpan.seconds(0.3), dim, bright, later, exponent.ratio(), source);
            double gapS =
                    law.at(dim).total().inSeconds() - law.at(bright).total().inSeconds();
            assertThat(gapS).isCloseTo(0.084, within(1e-12));
            // scaling: the part falls by the same factor for the same factor of intensity
            double p = exponent.ratio();
            double factor = law.at(LuminousIntensity.candela(40))
                            .intensityPart()
                            .inSeconds()
                    / law.at(LuminousIntensity.candela(10)).intensityPart().inSeconds();
            assertThat(factor).isCloseTo(Math.pow(4, -p), within(1e-12));
            assertThat(law.at(bright).caveats()).isEmpty();
            assertThat(law.at(LuminousIntensity.candela(300)).caveats())
                    .containsExactly(new Caveat("luminous intensity 300 cd is outside the validated range [5, 42] cd of"
                            + " Sivak et al. 1993 (UMTRI-93-37), abstract (seen)"));
            assertThat(law.at(LuminousIntensity.candela(1e7)).total().inSeconds())
                    .isCloseTo(0.3, within(0.002));
        }
        assertThat(PieronLaw.Exponent.LUMINANCE_STEP.source().standing()).isEqualTo(Standing.SEEN);
        assertThat(PieronLaw.Exponent.RULE_OF_THUMB.source().standing()).isEqualTo(Standing.FROM_MEMORY);
        assertThat(PieronLaw.of(TimeSpan.seconds(0.3), TimeSpan.seconds(0.1), dim, 0.33))
                .hasToString("Piéron's law, 0.3 s + 0.1 s × (I/5 cd)^-0.33");
    }

    @Test
    void refusesBadInput() {
        LuminousIntensity five = LuminousIntensity.candela(5);
        LuminousIntensity none = LuminousIntensity.candela(0);
        TimeSpan tenth = TimeSpan.seconds(0.1);
        Source source = Source.assumed("test");
        assertRefused(() -> Atmosphere.transmitting(0, FAR), "transmission of the air must be in (0, 1], got 0");
        assertRefused(
                () -> Atmosphere.transmitting(0.5, Distance.metres(0)),
                "length of the transmission must be in (0, 100000] m, got 0 m");
        assertRefused(
                () -> Atmosphere.visibility(Distance.metres(0), Atmosphere.Convention.FIVE_PER_CENT),
                "visibility must be in [1, 1000000] m, got 0 m");
        assertRefused(
                () -> Atmosphere.CLEAR.transmission(Distance.metres(-1)),
                "distance must be in [0, 100000] m, got -1 m");
        assertRefused(
                () -> ViewingConditions.of(BackgroundLuminance.DAY.luminance(), Distance.metres(0)),
                "distance must be in (0, 100000] m, got 0 m");
        assertRefused(
                () -> ThresholdIlluminance.CURVE.at(Luminance.cdPerM2(0)),
                "background luminance of the curve must be in [0.001, 1000000] cd/m², got 0 cd/m²");
        assertRefused(
                () -> Threshold.illuminance(Illuminance.lux(0), FAR, Atmosphere.CLEAR),
                "threshold illuminance must be in (0, 1] lx, got 0 lx");
        assertRefused(() -> Threshold.contrast(0), "contrast threshold must be in (0, 10], got 0");
        assertRefused(() -> LABORATORY.withContrast(Double.NaN), "contrast threshold must be in (0, 10], got NaN");
        assertRefused(
                () -> signal(STEP, 1e7).withTailLit(LuminousIntensity.candela(100)),
                "switched and steady intensity together must be in [0, 1e7] cd, got 1.00001e7 cd");
        assertRefused(
                () -> PieronLaw.of(TimeSpan.seconds(-1), tenth, five, 0.33),
                "irreducible reaction time must be in [0, 10] s, got -1 s");
        assertRefused(
                () -> PieronLaw.of(tenth, TimeSpan.seconds(11), five, 0.33),
                "intensity part of the reaction time must be in [0, 10] s, got 11 s");
        assertRefused(
                () -> PieronLaw.of(tenth, tenth, none, 0.33), "reference intensity must be in (0, 1e7] cd, got 0 cd");
        assertRefused(() -> PieronLaw.of(tenth, tenth, five, 0), "exponent of Piéron's law must be in (0, 2], got 0");
        assertRefused(
                () -> PieronLaw.between(tenth, five, five, tenth, 0.33, source),
                "higher intensity must be in (5, 1e7] cd, got 5 cd");
        assertRefused(
                () -> PieronLaw.between(tenth, five, LuminousIntensity.candela(6), TimeSpan.seconds(-1), 0.33, source),
                "delay of the dim light must be in [0, 10] s, got -1 s");
        assertRefused(
                () -> PieronLaw.of(tenth, tenth, five, 0.33).at(none),
                "intensity of the light must be in (0, 1e7] cd, got 0 cd");
    }

    private static void assertRefused(Runnable call, String message) {
        assertThatThrownBy(call::run)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }
}
