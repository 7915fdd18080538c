package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.source.Caveat;
import org.junit.jupiter.api.Test;

class MeasuredLampTest {
    @Test
    void isStraightBetweenSamplesAndLevelOutside() {
        MeasuredLamp lamp =
                MeasuredLamp.of("filmed", new double[] {-0.1, 0.05, 0.15, 0.25}, new double[] {0, 0, 0.5, 1});
        assertThat(lamp.relativeIntensity(-5)).isZero();
        assertThat(lamp.relativeIntensity(0.1)).isCloseTo(0.25, within(1e-15));
        assertThat(lamp.relativeIntensity(9)).isEqualTo(1);
        assertThat(lamp.timeToLevelS(0.25).orElseThrow()).isCloseTo(0.1, within(1e-15));
        assertThat(lamp.timeToLevelS(0.75).orElseThrow()).isCloseTo(0.2, within(1e-15));
        assertThat(lamp.settledS()).isCloseTo(0.2498, within(1e-12));
        assertThat(lamp.breakpointsS()).containsExactly(0.05, 0.15, 0.25);
        assertThat(lamp.caveats()).isEmpty();
        assertThat(lamp.basis())
                .containsExactly(
                        "measured: 4 samples from -0.1 s to 0.25 s, given by the caller; straight between samples");
        assertThat(lamp).hasToString("filmed");
    }

    @Test
    void noiseIsPooledIntoTheClosestNonDecreasingCurve() {
        // worked example of isotonic regression: 0.1, 0.4, 0.3, 0.2, 0.9 pools the middle three to their mean 0.3
        MeasuredLamp lamp =
                MeasuredLamp.of("noisy", new double[] {0, 1, 2, 3, 4}, new double[] {0.1, 0.4, 0.3, 0.2, 1});
        assertThat(lamp.relativeIntensity(1)).isCloseTo(0.3, within(1e-15));
        assertThat(lamp.relativeIntensity(2)).isCloseTo(0.3, within(1e-15));
        assertThat(lamp.relativeIntensity(3)).isCloseTo(0.3, within(1e-15));
        assertThat(lamp.caveats())
                .containsExactly(
                        new Caveat("samples fall in places: the closest non-decreasing curve moves one by 0.1"
                                + " of the final intensity"),
                        new Caveat("the lamp already shows 10 % at switch-on: check time 0, or whether a tail lamp was"
                                + " lit"));
    }

    @Test
    void saysWhatItCannotShow() {
        MeasuredLamp late = MeasuredLamp.of("late", new double[] {0.1, 0.2}, new double[] {0.3, 0.8});
        assertThat(late.timeToLevelS(0.9)).isEmpty();
        assertThat(late.timeToLevelS(0.2)).hasValue(0.1);
        assertThat(late.riseTime(0.1, 0.9)).isEmpty();
        assertThat(late.settledS()).isBetween(0.19, 0.2);
        assertThat(late.caveats())
                .containsExactly(
                        new Caveat("samples end at 0.8 of the final intensity: higher levels are never reached"),
                        new Caveat("the first sample, at 0.1 s, already shows 0.3 of the final intensity:"
                                + " the start of the onset was missed"));
        MeasuredLamp over = MeasuredLamp.of("over", new double[] {0, 1}, new double[] {-0.1, 1.1});
        assertThat(over.relativeIntensity(0)).isZero();
        assertThat(over.relativeIntensity(1)).isEqualTo(1);
        assertThat(over.caveats())
                .containsExactly(new Caveat("samples lie outside [0, 1] by up to 0.1 of the final intensity:"
                        + " check the dark level and the final level"));
    }

    @Test
    void warnsOfALampLitAtSwitchOn() {
        for (double firstS : new double[] {0, -0.3, -5}) {
            MeasuredLamp lit = MeasuredLamp.of("lit", new double[] {firstS, 0.1}, new double[] {1, 1});
            assertThat(lit.timeToLevelS(0.5)).hasValue(0);
            assertThat(lit.caveats())
                    .containsExactly(new Caveat("the lamp already shows 100 % at switch-on: check time 0, or whether a"
                            + " tail lamp was lit"));
        }
        // halfway up a straight rise
        assertThat(MeasuredLamp.of("shifted", new double[] {-0.1, 0.1}, new double[] {0, 1})
                        .caveats())
                .containsExactly(new Caveat(
                        "the lamp already shows 50 % at switch-on: check time 0, or whether a tail lamp was lit"));
    }

    @Test
    void doesNotSeeLaterChangesOfTheCallersArrays() {
        double[] times = {0, 1};
        double[] values = {0, 1};
        MeasuredLamp lamp = MeasuredLamp.of("own", times, values);
        times[1] = 5;
        values[1] = 0;
        assertThat(lamp.relativeIntensity(0.5)).isEqualTo(0.5);
    }

    @Test
    void refusesBadSamplesByIndex() {
        assertRefused(new double[] {0}, new double[] {0}, "a measured onset must have at least 2 samples, got 1");
        assertRefused(
                new double[] {0, 1},
                new double[] {0},
                "times and relative intensities must be equally many, got 2 and 1");
        assertRefused(
                new double[] {0, 0.2, 0.2},
                new double[] {0, 0.5, 1},
                "sample 2: time must be after that of sample 1, 0.2 s, got 0.2 s");
        assertRefused(
                new double[] {0, Double.NaN},
                new double[] {0, 1},
                "sample 1: time must be in [-1000, 1000] s, got NaN s");
        assertRefused(
                new double[] {0, 1, 2},
                new double[] {0, 1.5, 1},
                "sample 1: relative intensity must be in [-0.2, 1.2], got 1.5");
        assertThatThrownBy(() -> MeasuredLamp.of(" ", new double[] {0, 1}, new double[] {0, 1}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a measured lamp must have a label, got an empty text");
    }

    private static void assertRefused(double[] timeS, double[] ratio, String message) {
        assertThatThrownBy(() -> MeasuredLamp.of("bad", timeS, ratio))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }
}
