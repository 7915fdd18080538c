package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Standing;
import org.junit.jupiter.api.Test;

class LedDrivingTest {
    private static final LedLamp STEP = LaboratoryLamps.led();

    @Test
    void theEyeSeesTheDutyACameraOneMoment() {
        PulseWidthDimming tail = PulseWidthDimming.of(STEP, 200, 0.1);
        assertThat(tail.meanRatio()).isCloseTo(0.1, within(1e-12));
        assertThat(tail.instantaneousRatio(10 + 0.0002)).isEqualTo(1);
        assertThat(tail.instantaneousRatio(10 + 0.003)).isZero();
        // an exposure of 1 ms of a 5 ms period: it can miss the 0.5 ms pulse or catch all of it
        PulseWidthDimming.CameraView fast = tail.seenByCamera(TimeSpan.millis(1));
        assertThat(fast.dimmest()).isZero();
        assertThat(fast.brightest()).isCloseTo(0.5, within(1e-9));
        assertThat(fast.dark()).isTrue();
        // whole periods: no flicker
        PulseWidthDimming.CameraView slow = tail.seenByCamera(TimeSpan.millis(20));
        assertThat(slow.dimmest()).isCloseTo(0.1, within(1e-9));
        assertThat(slow.brightest()).isCloseTo(0.1, within(1e-9));
        assertThat(slow.dark()).isFalse();
        // 33.3 ms hold 6 whole periods and 3.33 ms: six or seven pulses
        PulseWidthDimming.CameraView frame = tail.seenByCamera(TimeSpan.seconds(1 / 30.0));
        assertThat(frame.dimmest()).isCloseTo(6 * 0.0005 * 30, within(1e-9));
        assertThat(frame.brightest()).isCloseTo(7 * 0.0005 * 30, within(1e-9));
        assertThat(tail.caveats()).isEmpty();
        assertThat(tail).hasToString("200 Hz, duty 10 %, mean light 10 %");
    }

    @Test
    void riseDelayAndFallMoveTheMean() {
        LedLamp late = LedLamp.of(TimeSpan.seconds(50e-6), TimeSpan.seconds(0));
        assertThat(PulseWidthDimming.of(late, 200, 0.1).meanRatio()).isCloseTo(0.09, within(1e-9));
        assertThat(PulseWidthDimming.of(late, 200, 0.1).caveats())
                .extracting(Caveat::text)
                .containsExactly(
                        "the mean light 0.09 differs from the duty 0.1: delay, rise and fall are not short against"
                                + " the pulse");
        // equal rise and fall: what the rise takes the fall gives back
        LedLamp soft = LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(100e-6));
        assertThat(PulseWidthDimming.of(soft, 200, 0.1).meanRatio()).isCloseTo(0.1, within(1e-9));
        LedLamp sharpOff = soft.withFallTime(TimeSpan.seconds(0));
        assertThat(PulseWidthDimming.of(sharpOff, 200, 0.1).meanRatio()).isLessThan(0.1);
        assertThat(PulseWidthDimming.of(STEP, 50, 0.5).caveats())
                .extracting(Caveat::text)
                .containsExactly(
                        "dimming at 50 Hz can be seen as flicker: below some 90 Hz the eye does not fuse it (common"
                                + " practice, no source)");
    }

    @Test
    void switchedOffAndOnWithinItsDelayItSinksFirst() {
        LedLamp led = LedLamp.of(TimeSpan.millis(5), TimeSpan.millis(2)).withFallTime(TimeSpan.millis(2));
        SwitchedLamp.Phase again = led.switched(true, 0.8);
        double sunk = 0.8 * Math.exp(-0.005 * Math.log(9) / 0.002);
        assertThat(again.relativeIntensity(0)).isEqualTo(0.8);
        assertThat(again.relativeIntensity(0.005)).isCloseTo(sunk, within(1e-12));
        assertThat(again.relativeIntensity(1)).isCloseTo(1, within(1e-12));
        assertThat(led.switched(false, 1).relativeIntensity(0.002)).isCloseTo(1 / 9.0, within(1e-12));
    }

    @Test
    void anLedLosesLightAsPublished() {
        LedHeating red = LedHeating.published("native red");
        assertThat(red.lightRatio(Temperature.celsius(65))).isCloseTo(0.5, within(1e-9));
        assertThat(red.source().standing()).isEqualTo(Standing.SEEN);
        LedHeating phosphor = LedHeating.published("phosphor-converted red");
        assertThat(phosphor.lightRatio(Temperature.celsius(65))).isCloseTo(0.9, within(1e-9));
        LedHeating amber = LedHeating.published("AlInGaP red-orange");
        assertThat(amber.slopePerK()).isCloseTo(0.0095, within(1e-5));
        assertThat(amber.source().standing()).isEqualTo(Standing.FROM_MEMORY);
        assertThat(red.lightRatio(Temperature.celsius(-20))).isGreaterThan(1);
        assertThat(red.evidence(Temperature.celsius(50)).caveats()).isEmpty();
        assertThat(red.evidence(Temperature.celsius(100)).caveats())
                .singleElement()
                .satisfies(c -> assertThat(c.text())
                        .startsWith("junction temperature 100 °C is outside the published range [25, 65] °C of "));
    }

    @Test
    void warmingItselfAnLedFadesToItsSettledLight() {
        LedHeating red = LedHeating.published("native red");
        Temperature room = Temperature.celsius(25);
        TimeSpan theta = TimeSpan.seconds(60);
        assertThat(red.whileWarming(TimeSpan.seconds(0), room, 40, theta)).isEqualTo(1);
        assertThat(red.whileWarming(TimeSpan.seconds(1e4), room, 40, theta)).isCloseTo(0.5, within(1e-9));
        assertThat(red.whileWarming(TimeSpan.seconds(60), room, 40, theta))
                .isCloseTo(Math.pow(0.5, 1 - Math.exp(-1)), within(1e-12));
        assertThatThrownBy(() -> red.whileWarming(TimeSpan.seconds(1), room, 300, theta))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("self-heating of the LED must be in [0, 200] K, got 300 K");
        assertThatThrownBy(() -> LedHeating.published("blue"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "LED kind must be one of native red, AlInGaP red-orange, phosphor-converted red, got \"blue\"");
    }

    @Test
    void refusesBadDimming() {
        assertThatThrownBy(() -> PulseWidthDimming.of(STEP, 0.5, 0.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("dimming frequency must be in [1, 100000] Hz, got 0.5 Hz");
        assertThatThrownBy(() -> PulseWidthDimming.of(STEP, 200, 1.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("dimming duty must be in (0, 1], got 1.5");
    }
}
