package io.github.stoplag.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class MarkedMomentTest {
    private static final Camera CAMERA =
            Camera.takenAt(100).exposure(TimeSpan.millis(4)).build();

    private static MarkedMoment marked(String name, Camera camera, int... frames) {
        return MarkedMoment.of(
                name,
                camera,
                IntStream.range(0, frames.length)
                        .mapToObj(i -> FrameMark.at("viewing " + (i + 1), frames[i]))
                        .toList());
    }

    /** JCGM 100:2008, 4.3.7: a quantity anywhere within ±a has the standard uncertainty a/√3 (from memory). */
    @Test
    void oneMarkIsUniformBetweenTheEndsOfTwoExposures() {
        FilmedMoment seen = marked("filament first seen", CAMERA, 31).time();
        assertThat(seen.valueS()).isCloseTo(0.305 + 0.004, within(1e-12));
        assertThat(seen.standardUncertaintyS()).isCloseTo(0.005 / Math.sqrt(3), within(1e-12));
        // 95 % of a rectangle
        assertThat(seen.hiS() - seen.loS()).isCloseTo(0.95 * 0.01, within(1e-4));
        assertThat(seen.caveats().toString()).contains("was marked once");
    }

    @Test
    void differenceOfTwoMarksIsATriangleWhateverTheExposure() {
        for (Camera camera : List.of(CAMERA, Camera.takenAt(100).build())) {
            FilmedMoment apart = marked("filament", camera, 31).after(marked("led", camera, 10));
            assertThat(apart.valueS()).isCloseTo(0.21, within(1e-12));
            assertThat(apart.standardUncertaintyS()).isCloseTo(0.01 / Math.sqrt(6), within(1e-12));
            // a triangle of half width w holds 95 % within w (1 − √0.05)
            assertThat(apart.hiS() - apart.valueS()).isCloseTo(0.01 * (1 - Math.sqrt(0.05)), within(4e-4));
        }
        assertThat(marked("led", Camera.takenAt(100).build(), 10).time().standardUncertaintyS())
                .isCloseTo(Math.sqrt(2 * 0.005 * 0.005 / 3), within(1e-12));
    }

    /**
     * JCGM 101:2008, 6.4.9: n readings give Student's t with standard deviation s/√n · √((n − 1)/(n − 3)) (from
     * memory).
     */
    @Test
    void judgesAddTheirScatterButDoNotRefineTheFrame() {
        FilmedMoment four = marked("noticed", CAMERA, 30, 32, 34, 36).time();
        double s = 0.01 * Math.sqrt(20.0 / 3);
        double ofMean = s / 2 * Math.sqrt(3);
        assertThat(four.standardUncertaintyS())
                .isCloseTo(Math.sqrt(ofMean * ofMean + 0.005 * 0.005 / 3), within(1e-12));
        FilmedMoment alike = marked("noticed", CAMERA, 30, 30, 30, 30, 30).time();
        assertThat(alike.standardUncertaintyS()).isCloseTo(0.005 / Math.sqrt(3), within(1e-12));
        FilmedMoment two = marked("noticed", CAMERA, 30, 34).time();
        assertThat(two.caveats().toString()).contains("fewer than 4 judges");
        assertThat(two.loS()).isLessThan(0.31);
        assertThat(two.hiS()).isGreaterThan(0.335);
    }

    @Test
    void intervalsHoldTheTruthInNineteenOfTwenty() {
        SplittableRandom random = new SplittableRandom(5);
        int held = 0;
        int films = 300;
        for (int film = 0; film < films; film++) {
            double led = 0.1 + 0.01 * random.nextDouble();
            double filament = led + 0.2 * random.nextDouble();
            FilmedMoment apart = marked("filament", CAMERA, frame(filament)).after(marked("led", CAMERA, frame(led)));
            held += filament - led >= apart.loS() && filament - led <= apart.hiS() ? 1 : 0;
            if (film == 0) {
                assertThat(apart.coverage()).isEqualTo(0.95);
            }
        }
        assertThat((double) held / films).isBetween(0.92, 0.98);
    }

    /** The first frame whose exposure, 4 ms from its beginning, ends after a moment. */
    private static int frame(double timeS) {
        return (int) Math.ceil((timeS - 0.004) * 100);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "practice_marks.csv", numLinesToSkip = 2)
    void marksOfTheTradeFallOnFramesWithinTheirIntervals(
            String moment, double framesPerSecond, double afterS, String standing) {
        assertThat(standing).isEqualTo("common practice no source");
        Camera camera = Camera.takenAt(framesPerSecond).build();
        int led = 20;
        FilmedMoment apart = marked(moment, camera, led + (int) Math.round(afterS * framesPerSecond))
                .after(marked("led", camera, led));
        assertThat(afterS).isBetween(apart.loS(), apart.hiS());
        assertThat(apart.standardUncertaintyS()).isCloseTo(0.0034, within(1e-4));
    }

    /** Light that rises by its share of full scale a second: visible where 5 times the noise is passed, by hand. */
    @Test
    void cameraSeesARampWhenItLeavesTheNoise() {
        Camera linear = Camera.takenAt(100)
                .exposure(TimeSpan.millis(10))
                .transfer(TransferCurve.LINEAR)
                .scale(GreyScale.between(0, 1))
                .build();
        SimulatedCamera camera = SimulatedCamera.of(linear, new Sensor(0.01, 0, 100, 0));
        LightCourse ramp = t -> Math.max(0, t);
        // the mean over frame n, which begins at (n - 10)/100 s, is (n - 9.5)/100: above 0.05 from n = 15 on
        assertThat(camera.firstVisible(ramp, TimeSpan.millis(-100), 40, 5)).contains(FrameMark.at("camera", 15));
        assertThat(camera.firstVisible(t -> 0.02, TimeSpan.millis(-100), 40, 5)).isEmpty();
    }

    /** Beside what is said in the trade: a camera that shows all above its noise sees a bulb no later than a judge. */
    @Test
    void modelledBulbLeavesTheNoiseBeforeTheTradeSeesIt() {
        Camera camera = Camera.takenAt(120)
                .exposure(TimeSpan.millis(4))
                .transfer(TransferCurve.SRGB)
                .build();
        LightCourse bulb = LightCourse.onset(
                FilamentLamp.builder(Voltage.volts(12), Power.watts(21))
                        .build()
                        .switchOn(SupplyConditions.of(Voltage.volts(13.5))),
                0.02,
                0.6);
        TimeSpan begin = TimeSpan.seconds(-20 / 120.0);
        SimulatedCamera simulated = SimulatedCamera.of(camera, Sensor.USUAL);
        FrameMark first = simulated.firstVisible(bulb, begin, 120, 5).orElseThrow();
        FilmedMoment model =
                MarkedMoment.of("bulb, modelled", camera, List.of(first)).after(marked("led", camera, 20));
        FilmedMoment trade = marked("bulb, common practice", camera, 20 + (int) Math.round(0.13 * 120))
                .after(marked("led", camera, 20));
        assertThat(model.valueS()).isBetween(0.03, trade.hiS());
        // against a lit tail lamp with its photons' noise it is later
        LightCourse tail = t -> bulb.lightRatio(t) + 0.3;
        assertThat(simulated.firstVisible(tail, begin, 120, 5).orElseThrow().firstWith())
                .isGreaterThanOrEqualTo(first.firstWith());
    }

    /** A film that skips 30 ms after frame 11, and ends its exposures 4 ms after each stamp. */
    @Test
    void framesWithStampsAreMarkedByTheirStamps() {
        GreySeries.Builder frames = GreySeries.of("led");
        for (int i = 0; i < 20; i++) {
            frames.add(i, i / 100.0 + (i > 11 ? 0.03 : 0), 10, 0);
        }
        GreySeries series = frames.build();
        FilmedMoment seen = MarkedMoment.of("led", CAMERA, series, List.of(FrameMark.at("a", 12)))
                .time();
        assertThat(seen.valueS()).isCloseTo((0.11 + 0.15) / 2 + 0.004, within(1e-12));
        assertThat(seen.standardUncertaintyS()).isCloseTo(0.02 / Math.sqrt(3), within(1e-12));
        assertThatThrownBy(() -> MarkedMoment.of("led", CAMERA, series, List.of(new FrameMark("a", 12, 25))))
                .hasMessageContaining("the film has no frame 25");
    }

    @Test
    void timeZeroReadOffTheLightAddsItsUncertaintyInSquares() {
        FilmedMoment zero = marked("led", CAMERA, 10).time();
        FilmedMoment since = marked("filament", CAMERA, 31).since(zero);
        assertThat(since.valueS()).isCloseTo(0.21, within(1e-12));
        assertThat(since.standardUncertaintyS()).isCloseTo(0.005 * Math.sqrt(2 / 3.0), within(1e-12));
    }

    @Test
    void refusesMarksOutOfOrder() {
        assertThatThrownBy(() -> new FrameMark("a", 5, 5))
                .hasMessageContaining("first frame with a mark must be in [6");
        assertThatThrownBy(() -> FrameMark.at("a", 0)).hasMessageContaining("first frame with a mark must be in [1");
        assertThatThrownBy(() -> MarkedMoment.of("x", CAMERA, List.of(FrameMark.at("a", 5), FrameMark.at("a", 6))))
                .hasMessageContaining("got 1 names for 2 marks");
        assertThatThrownBy(() -> marked("x", CAMERA, 3)
                        .after(marked("y", Camera.takenAt(100).build(), 2)))
                .hasMessageContaining("film of one camera");
    }
}
