package io.github.stoplag.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.TimeSpan;
import org.junit.jupiter.api.Test;

class CameraTest {
    @Test
    void slowMotionStampsAreBroughtBackToTrueTime() {
        Camera camera = Camera.takenAt(240).playedAt(30).build();
        // frame 24 of 240 frames/s is 0.1 s after frame 0 and plays at 0.8 s
        assertThat(camera.frameTimeS(24, Double.NaN)).isCloseTo(0.1, within(1e-15));
        assertThat(camera.frameTimeS(24, 0.8)).isCloseTo(0.1, within(1e-15));
    }

    @Test
    void saysWhatIsAssumedUntilItIsSet() {
        assertThat(Camera.takenAt(30).build().evidence().caveats()).hasSize(3);
        Camera known = Camera.takenAt(30)
                .exposure(TimeSpan.millis(10))
                .transfer(TransferCurve.BT709)
                .rowTime(TimeSpan.seconds(0))
                .build();
        assertThat(known.evidence().caveats()).isEmpty();
        assertThat(known.evidence().basis().get(1)).contains("BT.709", "grey 0 to 255");
    }

    @Test
    void refusesWhatNoCameraDoes() {
        assertThatThrownBy(() -> Camera.takenAt(0))
                .hasMessage("frame rate taken must be in (0, 100000] frames/s, got 0 frames/s");
        assertThatThrownBy(() -> Camera.takenAt(50).exposure(TimeSpan.millis(21)))
                .hasMessage("exposure time must be in (0, 0.02] s, got 0.021 s");
        assertThatThrownBy(() -> GreyScale.between(5, 5)).hasMessage("white level must be in (5, 1e9], got 5");
    }

    @Test
    void limitedRangeHasRoomOnBothSides() {
        GreyScale scale = GreyScale.limited(10);
        assertThat(scale.signal(64)).isZero();
        assertThat(scale.signal(940)).isEqualTo(1);
        assertThat(scale.top()).isEqualTo(1023);
        assertThat(scale.grey(scale.signal(500))).isCloseTo(500, within(1e-9));
    }

    @Test
    void aSeriesKeepsItsFramesInOrder() {
        GreySeries.Builder builder = GreySeries.of("lamp").region(100, 8);
        for (int i = 0; i < 500; i++) {
            builder.add(2 * i, i / 30.0, i % 7, 0);
        }
        GreySeries series = builder.build();
        assertThat(series.size()).isEqualTo(500);
        assertThat(series.frame(499)).isEqualTo(998);
        assertThat(series.part(10, 20).stampS(0)).isEqualTo(10 / 30.0);
        assertThatThrownBy(() -> builder.add(998, 1e5, 0, 0))
                .hasMessage("frames must be in order, got frame 998 after frame 998");
        assertThatThrownBy(() -> builder.add(1000, Double.NaN, 0, 0))
                .hasMessage("either every frame or none must have a time stamp, frame 1000 has none");
        assertThatThrownBy(() -> builder.add(1000, 3, 0, 0))
                .hasMessageStartingWith("time stamp of frame 1000 must be after");
        assertThatThrownBy(() -> builder.add(1000, 1e5, 0, Double.NaN))
                .hasMessage("clipped share of frame 1000 must be in [0, 1], got NaN");
        assertThatThrownBy(() -> GreySeries.of("short").add(0, 1, 0).build())
                .hasMessage("frames of short must be in [8, 2000000], got 1");
    }
}
