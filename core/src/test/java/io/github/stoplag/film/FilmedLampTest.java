package io.github.stoplag.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.stoplag.lamp.FilamentDecay;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.sight.IntegratingEye;
import io.github.stoplag.sight.LampSignal;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class FilmedLampTest {
    private static final FilamentLamp BULB =
            FilamentLamp.builder(Voltage.volts(12), Power.watts(21)).build();
    private static final SupplyConditions SUPPLY = SupplyConditions.of(Voltage.volts(13.5));
    private static final OnsetCurve FILAMENT = BULB.switchOn(SUPPLY);
    private static final OnsetCurve LED = LedLamp.of(TimeSpan.millis(0), TimeSpan.millis(0.1));
    private static final Camera CAMERA = Camera.takenAt(60)
            .exposure(TimeSpan.millis(8))
            .transfer(TransferCurve.BT709)
            .rowTime(TimeSpan.seconds(0))
            .build();

    private static GreySeries film(String label, LightCourse course, double beginS, int frames) {
        return SimulatedCamera.of(CAMERA, Sensor.USUAL).film(label, course, TimeSpan.seconds(beginS), frames, 11);
    }

    private static GreySeries film(String label, OnsetCurve curve) {
        return film(label, LightCourse.onset(curve, 0.02, 0.6), -0.3, 72);
    }

    /** Of some ten intervals of 95 % one may well miss: by no more than a standard uncertainty here. */
    private static void assertHolds(FilmedMoment moment, double truthS) {
        double u = moment.standardUncertaintyS();
        assertThat(truthS).as(moment.toString()).isBetween(moment.loS() - u, moment.hiS() + u);
    }

    private static String caveats(FilmedLamp lamp) {
        return lamp.caveats().stream().map(Object::toString).collect(Collectors.joining("; "));
    }

    @Test
    void momentsSinceTheLedHoldTheTruth() {
        FilmedChange led = FilmedLamp.of(film("led", LED), CAMERA).on().orElseThrow();
        FilmedChange on = FilmedLamp.of(film("filament", FILAMENT), CAMERA)
                .on()
                .orElseThrow()
                .since(led);
        double zeroS = LED.timeToLevelS(0.01).orElseThrow();
        for (double level : new double[] {0.01, 0.1, 0.5, 0.9}) {
            FilmedMoment moment = on.level(level);
            double truthS = FILAMENT.timeToLevelS(level).orElseThrow() - zeroS;
            assertThat(truthS).as(moment.toString()).satisfies(t -> assertHolds(moment, t));
            assertThat(moment.hiS() - moment.loS()).as(moment.toString()).isLessThan(0.04);
            double squares = moment.budget().stream()
                    .mapToDouble(c -> c.contribution() * c.contribution())
                    .sum();
            assertThat(Math.sqrt(squares)).isCloseTo(moment.standardUncertaintyS(), within(moment, 0.15));
        }
        LuminousIntensity stop = LuminousIntensity.candela(60);
        IntegratingEye eye = IntegratingEye.of(TimeSpan.seconds(0.1), LuminousIntensity.candela(3));
        FilmedMoment seen = on.seen(eye, stop, LuminousIntensity.candela(0)).orElseThrow();
        double truthS = eye.detect(LampSignal.of(FILAMENT, stop)).orElseThrow().inSeconds() - zeroS;
        assertThat(truthS).as(seen.toString()).satisfies(t -> assertHolds(seen, t));
        assertThat(on.seen(eye, LuminousIntensity.candela(2), LuminousIntensity.candela(0)))
                .isEmpty();
        assertThat(on.onset().timeToLevelS(0.5).orElseThrow())
                .isBetween(on.level(0.5).loS(), on.level(0.5).hiS());
        FilmedMoment apart = on.levelAfter(led, 0.5);
        assertThat(FILAMENT.timeToLevelS(0.5).orElseThrow()
                        - LED.timeToLevelS(0.5).orElseThrow())
                .satisfies(t -> assertHolds(apart, t));
    }

    private static org.assertj.core.data.Offset<Double> within(FilmedMoment moment, double share) {
        return org.assertj.core.data.Offset.offset(share * moment.standardUncertaintyS());
    }

    /** Numbers of unknown origin may be light itself, or video with black at 16: intervals are wide, not wrong. */
    @Test
    void unknownScaleAndCurveAreInTheInterval() {
        double zeroS = 0.3;
        for (Camera taken : new Camera[] {
            Camera.takenAt(60)
                    .exposure(TimeSpan.millis(8))
                    .transfer(TransferCurve.LINEAR)
                    .build(),
            Camera.takenAt(60)
                    .exposure(TimeSpan.millis(8))
                    .transfer(TransferCurve.power(2.2))
                    .scale(new GreyScale(16, 255, 255, 1))
                    .build()
        }) {
            Camera told = Camera.takenAt(60)
                    .exposure(TimeSpan.millis(8))
                    .rowTime(TimeSpan.seconds(0))
                    .assumedScale(GreyScale.FULL_8_BIT)
                    .build();
            GreySeries greys = SimulatedCamera.of(taken, Sensor.USUAL)
                    .film("lamp", LightCourse.onset(FILAMENT, 0.02, 0.6), TimeSpan.seconds(-zeroS), 72, 11);
            FilmedLamp lamp = FilmedLamp.of(greys, told);
            for (double level : new double[] {0.1, 0.5, 0.9}) {
                assertHolds(
                        lamp.on().orElseThrow().level(level),
                        zeroS + FILAMENT.timeToLevelS(level).orElseThrow());
            }
            assertThat(caveats(lamp)).contains("or linear", "black at 16/255");
        }
    }

    @Test
    void lampThatFlickersIsRefused() {
        LightCourse course = LightCourse.of(t -> t > 0 && t % 0.02 < 0.01 ? 1 : 0, new double[] {0}, 0.02, 0.6);
        Camera fast = Camera.takenAt(960)
                .exposure(TimeSpan.millis(0.5))
                .transfer(TransferCurve.SRGB)
                .build();
        GreySeries greys = SimulatedCamera.of(fast, Sensor.USUAL).film("led", course, TimeSpan.seconds(-0.1), 600, 11);
        assertThatThrownBy(() -> FilmedLamp.of(greys, fast))
                .hasMessageContaining("light of led must stay on or off for 20 ms")
                .hasMessageContaining("one every 10 ms");
    }

    @Test
    void lightThatDriftsIsTold() {
        LightCourse course =
                LightCourse.of(t -> t > 0 ? (1 - Math.exp(-t / 0.01)) * (1 - 0.1 * t) : 0, new double[] {0}, 0.02, 0.6);
        assertThat(caveats(FilmedLamp.of(film("led", course, -0.3, 90), CAMERA)))
                .contains("the light of led drifts by -");
        assertThat(caveats(FilmedLamp.of(film("led", LED), CAMERA))).doesNotContain("drifts");
    }

    /** A slow fall soon after the rise, and a second rise after it, must not pull the levels between them. */
    @Test
    void neighbouringSwitchingsKeepOutOfEachOther() {
        double offS = 0.6;
        double fallS = 0.06;
        LightCourse course = LightCourse.of(
                t -> t > offS ? Math.exp((offS - t) / fallS) : t > 0 ? Math.pow(1 - Math.exp(-t / 0.06), 3) : 0,
                new double[] {0, offS},
                0.01,
                0.6);
        FilmedLamp lamp = FilmedLamp.of(film("lamp", course, -0.3, 90), CAMERA);
        FilmedChange on = lamp.on().orElseThrow();
        FilmedChange off = lamp.off().orElseThrow();
        // frames at 60 a second from 0.3 s before: the fall begins in frame 54
        assertThat(on.switching().to()).isBetween(50, 56);
        assertThat(off.switching().from()).isBetween(30, 52);
        for (double level : new double[] {0.5, 0.9}) {
            assertHolds(on.level(level), 0.3 - 0.06 * Math.log(1 - Math.cbrt(level)));
            assertHolds(off.level(level), 0.3 + offS - fallS * Math.log(level));
        }
    }

    @Test
    void lampGoingOutIsReadFromTheTop() {
        FilamentDecay decay = BULB.switchOff(SUPPLY);
        FilmedLamp lamp = FilmedLamp.of(film("filament", LightCourse.decay(decay, 0.1, 0.5), -0.3, 72), CAMERA);
        FilmedChange off = lamp.off().orElseThrow();
        assertThat(lamp.on()).isEmpty();
        assertThat(caveats(lamp)).contains("does not come on in the film").contains("a steady light of about 2");
        for (double level : new double[] {0.9, 0.5, 0.1}) {
            FilmedMoment moment = off.level(level);
            assertThat(0.3 + decay.timeToLevelS(level).orElseThrow())
                    .as(moment.toString())
                    .satisfies(t -> assertHolds(moment, t));
        }
        assertThat(off.level(0.9).valueS()).isLessThan(off.level(0.1).valueS());
        assertThatThrownBy(off::onset).hasMessageContaining("going out");
    }

    @Test
    void whatTheFilmCannotTellIsWideAndSaid() {
        FilmedLamp whole = FilmedLamp.of(film("filament", FILAMENT), CAMERA);
        FilmedLamp cut = FilmedLamp.of(film("filament", LightCourse.onset(FILAMENT, 0.02, 0.6), -0.3, 26), CAMERA);
        FilmedMoment late = cut.on().orElseThrow().level(0.9);
        assertThat(caveats(cut)).contains("the film ends when the change of filament is at about");
        assertThat(0.3 + FILAMENT.timeToLevelS(0.9).orElseThrow()).satisfies(t -> assertHolds(late, t));
        assertThat(late.standardUncertaintyS())
                .isGreaterThan(3 * whole.on().orElseThrow().level(0.9).standardUncertaintyS());
        FilmedLamp clipped = FilmedLamp.of(film("filament", LightCourse.onset(FILAMENT, 0.02, 1.6), -0.3, 72), CAMERA);
        FilmedMoment bound = clipped.on().orElseThrow().level(0.9);
        assertThat(caveats(clipped)).contains("frames of filament are clipped");
        assertThat(0.3 + FILAMENT.timeToLevelS(0.9).orElseThrow()).satisfies(t -> assertHolds(bound, t));
        assertThat(bound.standardUncertaintyS())
                .isGreaterThan(5 * whole.on().orElseThrow().level(0.9).standardUncertaintyS());
    }

    @Test
    void unknownCameraWidensAndIsSaid() {
        Camera unknown = Camera.takenAt(60).build();
        FilmedLamp lamp = FilmedLamp.of(film("filament", FILAMENT), unknown);
        FilmedMoment half = lamp.on().orElseThrow().level(0.5);
        assertThat(caveats(lamp)).contains("exposure time is not known").contains("transfer curve is not known");
        assertThat(0.3 + FILAMENT.timeToLevelS(0.5).orElseThrow()).satisfies(t -> assertHolds(half, t));
        // a quarter of the interval by √3 for the middle of an exposure of anything up to the interval, of draws
        assertThat(half.budget().get(3).contribution()).isCloseTo(1 / 60.0 / 4 / Math.sqrt(3), within(half, 0.15));
        assertThat(half.budget().get(1).contribution()).isGreaterThan(1e-4);
    }

    @Test
    void sameFilmGivesTheSameBits() {
        GreySeries series = film("led", LED);
        assertThat(FilmedLamp.of(series, CAMERA).on().orElseThrow().band())
                .isEqualTo(FilmedLamp.of(series, CAMERA).on().orElseThrow().band());
    }

    @Test
    void steadyLampIsRefused() {
        GreySeries dark = film("filament", LightCourse.onset(FILAMENT, 0.02, 0), -0.3, 72);
        assertThatThrownBy(() -> FilmedLamp.of(dark, CAMERA))
                .hasMessageContaining("light of filament must change by more than six times its scatter");
    }

    @Test
    void lampBeyondTheScaleInEveryFrameIsNamedSo() {
        GreySeries clipped = film("filament", LightCourse.onset(FILAMENT, 1.3, 2), -0.3, 72);
        assertThatThrownBy(() -> FilmedLamp.of(clipped, CAMERA))
                .hasMessage("light of filament must leave the end of the grey scale, 255, got all 72 frames clipped:"
                        + " film with a shorter exposure, or take a dimmer part of the lamp as its region");
        GreySeries.Builder black = GreySeries.of("filament");
        for (int i = 0; i < 72; i++) {
            black.add(i, 0, 0);
        }
        assertThatThrownBy(() -> FilmedLamp.of(black.build(), CAMERA))
                .hasMessageContaining(
                        "light of filament must rise above the least grey value, 0, got all 72 frames black");
    }

    /** Two frames before the jump show no noise: that they are equal must not make the moment certain. */
    @Test
    void fewFramesBeforeAnLedLeaveItUncertain() {
        for (int before : new int[] {1, 2, 3}) {
            GreySeries.Builder series = GreySeries.of("led");
            for (int i = 0; i < 40; i++) {
                series.add(i, i < before ? 20 : i == before ? 120 : 200, 0);
            }
            FilmedMoment half =
                    FilmedLamp.of(series.build(), CAMERA).on().orElseThrow().level(0.5);
            assertThat(half.standardUncertaintyS()).isGreaterThan(3e-5);
            assertThat(half.valueS()).isBetween(before / 60.0 - 0.009, before / 60.0 + 0.009);
        }
    }

    /** Black hides the first light: low levels become uncertain, high ones hardly. */
    @Test
    void blackHidesTheFootOfTheCourse() {
        LightCourse course = t -> 0.6 * FILAMENT.relativeIntensity(t) - 0.03;
        FilmedLamp crushed = FilmedLamp.of(film("filament", course, -0.3, 72), CAMERA);
        FilmedChange on = crushed.on().orElseThrow();
        assertThat(caveats(crushed)).contains("frames of filament are black");
        for (double level : new double[] {0.01, 0.1, 0.5}) {
            FilmedMoment moment = on.level(level);
            assertThat(0.3 + FILAMENT.timeToLevelS(level).orElseThrow())
                    .as(moment.toString())
                    .satisfies(t -> assertHolds(moment, t));
        }
        FilmedChange open =
                FilmedLamp.of(film("filament", FILAMENT), CAMERA).on().orElseThrow();
        assertThat(on.level(0.01).standardUncertaintyS())
                .isGreaterThan(1.5 * open.level(0.01).standardUncertaintyS());
    }

    @Test
    void referenceMustGoTheSameWay() {
        FilmedChange on = FilmedLamp.of(film("led", LED), CAMERA).on().orElseThrow();
        FilmedChange off = FilmedLamp.of(
                        film("filament", LightCourse.decay(BULB.switchOff(SUPPLY), 0.1, 0.5), -0.3, 72), CAMERA)
                .off()
                .orElseThrow();
        assertThatThrownBy(() -> off.since(on))
                .hasMessage("reference light must go out as filament does, got led, which comes on");
        assertThatThrownBy(() -> on.level(1)).hasMessageContaining("level of the switched light must be in");
    }
}
