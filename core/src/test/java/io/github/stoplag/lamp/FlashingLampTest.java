package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import org.junit.jupiter.api.Test;

class FlashingLampTest {
    private static final SwitchedLamp FILAMENT =
            SwitchedLamp.filament(LaboratoryLamps.bulb(), LaboratoryLamps.conditions());

    private static FlashingLamp at(double hz) {
        return FlashingLamp.of(FILAMENT, SwitchingPattern.flashing(hz, 0.5));
    }

    @Test
    void aFilamentFlashesTheShallowerAndDimmerTheFaster() {
        // why the emergency stop signal of 4 ± 1 Hz is 4 +0/−1 Hz for filament lamps
        double depth = 1;
        double peak = 1;
        double first = 1;
        for (double hz : new double[] {1.5, 3, 4, 5}) {
            FlashingLamp lamp = at(hz);
            assertThat(lamp.modulationDepth()).isLessThan(depth);
            assertThat(lamp.peakRatio()).isLessThan(peak);
            assertThat(lamp.firstPeakRatio()).isLessThan(first).isLessThan(lamp.peakRatio());
            depth = lamp.modulationDepth();
            peak = lamp.peakRatio();
            first = lamp.firstPeakRatio();
        }
        assertThat(at(1.5).modulationDepth()).isGreaterThan(0.98);
        assertThat(at(3).peakRatio()).isGreaterThan(0.75);
        assertThat(at(5).peakRatio()).isLessThan(0.65);
        assertThat(at(5).firstPeakRatio()).isLessThan(0.2);
    }

    @Test
    void anLedFlashesFullyAtEveryFrequencyAllowed() {
        for (double hz : new double[] {3, 4, 5}) {
            FlashingLamp led = FlashingLamp.of(LaboratoryLamps.led(), SwitchingPattern.flashing(hz, 0.5));
            assertThat(led.modulationDepth()).isEqualTo(1);
            assertThat(led.peakRatio()).isEqualTo(1);
            assertThat(led.meanRatio()).isCloseTo(0.5, within(1e-12));
        }
    }

    @Test
    void flashingAgreesWithTheIntegratedHeatBalanceUnderASwitchedSupply() {
        FlashingLamp flashing = at(3);
        TimeSpan until = TimeSpan.seconds(2);
        FilamentHistory history = FilamentHistory.of(
                LaboratoryLamps.bulb(),
                LaboratoryLamps.conditions(),
                SupplyCourse.switched(Voltage.volts(12.8), flashing.pattern(), until),
                until);
        for (double t = 0.01; t < 2; t += 0.037) {
            assertThat(flashing.relativeIntensity(t)).isCloseTo(history.relativeToRated(t), within(1e-7));
        }
    }

    @Test
    void onceItRepeatsTheLastCycleStandsForAll() {
        FlashingLamp lamp = at(4);
        assertThat(lamp.cyclesToRepeat()).isBetween(3, 30);
        assertThat(lamp.relativeIntensity(100.03)).isCloseTo(lamp.relativeIntensity(400.03), within(1e-9));
        assertThat(lamp.relativeIntensity(100 + 0.125)).isCloseTo(lamp.peakRatio(), within(1e-8));
        assertThat(lamp.relativeIntensity(-1)).isLessThan(1e-20);
        assertThat(lamp.meanRatio()).isBetween(lamp.troughRatio(), lamp.peakRatio());
        assertThat(lamp.toString()).contains("flashing, period 0.25 s, on for 50 %");
        assertThat(lamp.basis()).last().asString().startsWith("switched with period 0.25 s");
    }

    @Test
    void aSteadyPatternEndsInFullLight() {
        FlashingLamp lamp = FlashingLamp.of(FILAMENT, SwitchingPattern.flashing(5, 1));
        assertThat(lamp.relativeIntensity(50)).isCloseTo(1, within(1e-9));
        FlashingLamp led = FlashingLamp.of(
                LedLamp.of(TimeSpan.seconds(0.2), TimeSpan.seconds(0.01)),
                SwitchingPattern.of(
                        TimeSpan.seconds(1),
                        TimeSpan.seconds(0),
                        TimeSpan.seconds(0.1),
                        TimeSpan.seconds(0.5),
                        TimeSpan.seconds(1)));
        // on over the end of each cycle: the driver does not start again
        assertThat(led.relativeIntensity(10.05)).isCloseTo(1, within(1e-9));
        assertThat(led.relativeIntensity(0.05)).isZero();
        assertThat(led.relativeIntensity(10.65)).isLessThan(1e-6);
    }

    @Test
    void refusesBadPatterns() {
        assertThatThrownBy(() -> SwitchingPattern.flashing(0, 0.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("switching frequency must be in [0.001, 100000] Hz, got 0 Hz");
        assertThatThrownBy(() -> SwitchingPattern.flashing(4, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duty must be in (0, 1], got 0");
        TimeSpan second = TimeSpan.seconds(1);
        assertThatThrownBy(() -> SwitchingPattern.of(second, TimeSpan.seconds(0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a switching pattern must have pairs of on and off edges, got 1 edges");
        assertThatThrownBy(() -> SwitchingPattern.of(second, TimeSpan.seconds(0.5), TimeSpan.seconds(0.2)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("edge 1 must be after edge 0 at 0.5 s, got 0.2 s");
        assertThatThrownBy(() -> SwitchingPattern.flashing(Math.PI, 0.5).or(SwitchingPattern.flashing(3, 0.5)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("switching patterns must have a common period of at most 1000 s, got periods");
    }
}
