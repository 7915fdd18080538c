package io.github.stoplag.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Evidence;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Seen is what is added since switch-on, at the first moment at which it is enough. */
class ChangeSinceSwitchOnTest {
    private static final TimeSpan TENTH = TimeSpan.seconds(0.1);
    private static final Threshold THREE = Threshold.intensity(LuminousIntensity.candela(3));
    private static final FilamentLamp BULB =
            FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26)).build();
    private static final SupplyConditions ON = SupplyConditions.of(Voltage.volts(13.5));

    /** Straight between corners, also downwards; a corner given twice is a jump. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Corners(double[] timesS, double[] ratios) implements OnsetCurve {
        @Override
        public String label() {
            return "corners";
        }

        @Override
        public double relativeIntensity(double timeS) {
            if (timeS < timesS[0]) {
                return 0;
            }
            int i = timesS.length - 1;
            while (timesS[i] > timeS) {
                i--;
            }
            return i == timesS.length - 1
                    ? ratios[i]
                    : ratios[i] + (ratios[i + 1] - ratios[i]) * (timeS - timesS[i]) / (timesS[i + 1] - timesS[i]);
        }

        @Override
        public OptionalDouble timeToLevelS(double levelRatio) {
            return OptionalDouble.empty(); // left to the detectors
        }

        @Override
        public double settledS() {
            return timesS[timesS.length - 1];
        }

        @Override
        public double[] breakpointsS() {
            return timesS.clone();
        }

        @Override
        public Evidence evidence() {
            return Evidence.of("invented");
        }
    }

    private static LampSignal signal(OnsetCurve onset, double cd) {
        return LampSignal.of(onset, LuminousIntensity.candela(cd));
    }

    private static double seenS(Detector detector, LampSignal signal) {
        return detector.detect(signal).orElseThrow().inSeconds();
    }

    private static List<Detector> all() {
        return List.of(
                InstantEye.of(THREE),
                IntegratingEye.of(TENTH, THREE),
                ModifiedAllard.of(TENTH).detector(THREE),
                BlondelReyDouglas.of(TENTH).detector(THREE),
                ShareOfFinal.of(0.1));
    }

    @Test
    void aFilamentAlreadyGlowingIsNotSeenAtZero() {
        FilamentOnset dimmed = BULB.switchOn(SupplyConditions.of(Voltage.volts(7)));
        FilamentOnset glowing = BULB.switchOn(ON.withInitialTemperature(dimmed.steadyTemperature()));
        double beforeCd = 60 * glowing.relativeIntensity(-1);
        assertThat(beforeCd).isGreaterThan(3);
        Detection seen = InstantEye.of(Threshold.contrast(0.25)).detect(signal(glowing, 60));
        assertThat(60 * glowing.relativeIntensity(seen.orElseThrow().inSeconds()))
                .isCloseTo(1.25 * beforeCd, within(1e-9));
        assertThat(seen.caveats())
                .anyMatch(caveat -> caveat.text().startsWith("before switch-on the lamp already gives"));
        for (Detector detector : all()) {
            assertThat(seenS(detector, signal(glowing, 60))).isPositive();
        }
    }

    @Test
    void aDarkLevelOfOneAndAHalfPercentChangesLittle() {
        OnsetCurve cold = BULB.switchOn(ON);
        double[] timesS =
                IntStream.rangeClosed(0, 2000).mapToDouble(ms -> ms / 2000.0).toArray();
        OnsetCurve filmed = MeasuredLamp.of(
                "filmed",
                timesS,
                Arrays.stream(timesS)
                        .map(t -> 0.015 + 0.985 * cold.relativeIntensity(t))
                        .toArray());
        for (Detector detector : all()) {
            assertThat(seenS(detector, signal(filmed, 200)))
                    .as("%s", detector)
                    .isCloseTo(seenS(detector, signal(cold, 200)), within(0.002));
        }
    }

    @Test
    void lightBeforeIsTheSameFromATailLampAndFromTheLampItself() {
        OnsetCurve dark = new Corners(new double[] {0, 0.5}, new double[] {0, 1});
        OnsetCurve lit = MeasuredLamp.of("lit", new double[] {-1, 0, 0.5}, new double[] {0.2, 0.2, 1});
        Threshold contrast = THREE.withContrast(0.25);
        LampSignal tail = signal(dark, 40).withTailLit(LuminousIntensity.candela(10));
        for (Detector detector : List.of(
                InstantEye.of(contrast),
                IntegratingEye.of(TENTH, contrast),
                ModifiedAllard.of(TENTH).detector(contrast),
                BlondelReyDouglas.of(TENTH).detector(contrast))) {
            assertThat(seenS(detector, signal(lit, 50))).isCloseTo(seenS(detector, tail), within(1e-9));
        }
        assertThat(IntegratingEye.of(TENTH, THREE).detect(signal(lit, 3.5)))
                .isInstanceOfSatisfying(
                        Detection.NeverSeen.class,
                        never -> assertThat(never.reason())
                                .isEqualTo("the final 2.8 cd, added to 0.7 cd, does not exceed the threshold of 3 cd"));
    }

    @Test
    void aFlashBeforeTheSteadyLightIsSeenAtTheClosedForm() {
        // 20 cd for 5 ms, dark, 20 cd for 30 ms, dark to 0.1 s, then on: by τ dE/dt = I − E in steps
        Corners flashing = new Corners(
                new double[] {0, Math.nextDown(0.005), 0.005, Math.nextDown(0.02), 0.02, Math.nextDown(0.05), 0.05, 0.1
                },
                new double[] {1, 1, 0, 0, 1, 1, 0, 0});
        double after = 20 * -Math.expm1(-0.05) * Math.exp(-0.15);
        double seenS = 0.02 + 0.1 * Math.log((20 - after) / (20 - 3));
        assertThat(seenS).isBetween(0.02, 0.05);
        assertThat(seenS(IntegratingEye.of(TENTH, THREE), signal(flashing, 20))).isCloseTo(seenS, within(1e-10));
        assertThat(seenS(InstantEye.of(THREE), signal(flashing, 20))).isZero();
        // excess 17 cd for 5 ms, lost at 3 cd for 15 ms, then 17 cd again up to 0.3 cd s
        assertThat(seenS(BlondelReyDouglas.of(TENTH).detector(THREE), signal(flashing, 20)))
                .isCloseTo(0.02 + (0.3 - (17 * 0.005 - 3 * 0.015)) / 17, within(1e-9));
        assertThatThrownBy(() -> ModifiedAllard.of(TENTH).detector(THREE).detect(signal(flashing, 20)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("light of corners must never fall for modified Allard");
    }

    @Test
    void aFlashThatEndsDarkIsJudgedByItsGreatestLight() {
        Corners flash = new Corners(new double[] {0, 0.1, 0.2}, new double[] {0, 1, 0});
        assertThat(seenS(InstantEye.of(THREE), signal(flash, 30))).isCloseTo(0.01, within(1e-12));
        assertThat(InstantEye.of(THREE).detect(signal(flash, 2)))
                .isInstanceOfSatisfying(
                        Detection.NeverSeen.class,
                        never -> assertThat(never.reason())
                                .isEqualTo("the greatest 2 cd does not exceed the threshold of 3 cd"));
        assertThat(IntegratingEye.of(TimeSpan.seconds(10), THREE).detect(signal(flash, 30)))
                .isInstanceOf(Detection.NeverSeen.class);
    }

    @Test
    void aCurveThatHidesItsTurnsIsRefused() {
        Corners honest = new Corners(new double[] {0, 0.1, 0.2, 0.3}, new double[] {0, 1, 0, 1});
        OnsetCurve hiding = new OnsetCurve() {
            @Override
            public String label() {
                return "hiding";
            }

            @Override
            public double relativeIntensity(double timeS) {
                return honest.relativeIntensity(timeS);
            }

            @Override
            public OptionalDouble timeToLevelS(double levelRatio) {
                return OptionalDouble.of(0.1 * levelRatio);
            }

            @Override
            public double settledS() {
                return 0.3;
            }

            @Override
            public Evidence evidence() {
                return honest.evidence();
            }
        };
        for (Detector detector : all()) {
            assertThatThrownBy(() -> detector.detect(signal(hiding, 30)))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("light of hiding must only rise or only fall between its breakpoints, got");
        }
    }

    @Test
    void aShortTimeConstantCostsNoMoreAndTendsToTheInstantEye() {
        OnsetCurve filament = BULB.switchOn(ON);
        double instantS = seenS(InstantEye.of(THREE), signal(filament, 60));
        for (double tauS : new double[] {1e-3, 1e-6, 1e-7, 1e-9, 1e-12, 1e-15, 1e-300}) {
            // an eye this quick lags a smooth rise by τ
            assertThat(seenS(IntegratingEye.of(TimeSpan.seconds(tauS), THREE), signal(filament, 60)))
                    .as("%s s", tauS)
                    .isCloseTo(instantS + tauS, within(1e-11 + 20 * tauS * tauS / instantS));
        }
    }

    @Test
    void aShortTimeConstantCountsNoMoreCallsOfTheCurve() {
        assertThat(calls(1e-7)).isLessThan(20_000).isLessThan(20 * calls(0.1));
    }

    private static long calls(double tauS) {
        long[] calls = {0};
        OnsetCurve filament = BULB.switchOn(ON);
        OnsetCurve counting = new OnsetCurve() {
            @Override
            public String label() {
                return filament.label();
            }

            @Override
            public double relativeIntensity(double timeS) {
                calls[0]++;
                return filament.relativeIntensity(timeS);
            }

            @Override
            public OptionalDouble timeToLevelS(double levelRatio) {
                return filament.timeToLevelS(levelRatio);
            }

            @Override
            public double settledS() {
                return filament.settledS();
            }

            @Override
            public Evidence evidence() {
                return filament.evidence();
            }
        };
        seenS(IntegratingEye.of(TimeSpan.seconds(tauS), THREE), signal(counting, 60));
        return calls[0];
    }

    /** The chooser's Javadoc names these gains (non-regression) and that they stay below the published 166 ms. */
    @Test
    void theChooserTellsWhatItGives() {
        for (double metres : new double[] {10, 50}) {
            boolean near = metres == 10;
            assertThat(chosenGainMs(BackgroundLuminance.DAY, metres, 42)).isCloseTo(near ? 57 : 100, within(0.6));
            assertThat(chosenGainMs(BackgroundLuminance.NIGHT, metres, 42)).isCloseTo(near ? 22 : 32, within(0.6));
            assertThat(chosenGainMs(BackgroundLuminance.DAY, metres, 5)).isCloseTo(near ? 81 : 152, within(0.6));
            assertThat(chosenGainMs(BackgroundLuminance.NIGHT, metres, 5)).isCloseTo(near ? 28 : 43, within(0.6));
        }
    }

    private static double chosenGainMs(BackgroundLuminance background, double metres, double cd) {
        Detector eye = DetectorChooser.choose(ViewingConditions.of(background.luminance(), Distance.metres(metres)));
        OnsetCurve filament = BULB.switchOn(SupplyConditions.of(Voltage.volts(12.8)));
        OnsetCurve led = LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(0));
        double gainS = seenS(eye, signal(filament, cd)) - seenS(eye, signal(led, cd));
        assertThat(gainS).isLessThan(0.166);
        return 1000 * gainS;
    }
}
