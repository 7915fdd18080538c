package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.TimeSpan;
import org.junit.jupiter.api.Test;

class LedLampTest {
    @Test
    void risesFromTenToNinetyPerCentInItsRiseTimeAfterTheDelay() {
        LedLamp lamp = LedLamp.of(TimeSpan.millis(5), TimeSpan.millis(2));
        assertThat(lamp.riseTime(0.1, 0.9).orElseThrow().inMillis()).isCloseTo(2, within(1e-12));
        assertThat(lamp.relativeIntensity(0.004999)).isZero();
        assertThat(lamp.relativeIntensity(lamp.timeToLevelS(0.37).orElseThrow()))
                .isCloseTo(0.37, within(1e-12));
        assertThat(lamp.relativeIntensity(lamp.settledS())).isCloseTo(0.999, within(1e-12));
        assertThat(lamp.relativeIntensity(Double.POSITIVE_INFINITY)).isEqualTo(1);
        assertThat(lamp.breakpointsS()).containsExactly(0.005);
        assertThat(lamp.caveats()).isEmpty();
        assertThat(lamp.basis()).hasSize(2);
        assertThat(lamp).hasToString("LED, driver delay 0.005 s, rise 0.002 s");
    }

    @Test
    void withoutARiseTimeItIsAStep() {
        LedLamp lamp = LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(0));
        assertThat(lamp.relativeIntensity(-1e-9)).isZero();
        assertThat(lamp.relativeIntensity(0)).isEqualTo(1);
        assertThat(lamp.timeToLevelS(0.9)).hasValue(0);
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> LedLamp.of(TimeSpan.millis(-1), TimeSpan.millis(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("LED driver delay must be in [0, 1] s, got -0.001 s");
        assertThatThrownBy(() -> LedLamp.of(TimeSpan.millis(1), TimeSpan.seconds(2)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("LED rise time must be in [0, 1] s, got 2 s");
        LedLamp lamp = LedLamp.of(TimeSpan.millis(1), TimeSpan.millis(1));
        assertThatThrownBy(() -> lamp.timeToLevelS(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("level of the final intensity must be in (0, 1), got NaN");
        assertThatThrownBy(() -> lamp.riseTime(0.9, 0.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("upper level must be in (0.9, 1], got 0.1");
    }
}
