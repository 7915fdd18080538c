package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** A time that is not a number is refused by every curve; negative and infinite ones have their limits. */
class CurveTimesTest {
    private static final SupplyConditions ON = SupplyConditions.of(Voltage.volts(13.5));
    private static final FilamentLamp BULB =
            FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26)).build();
    private static final FilamentOnset ONSET = BULB.switchOn(ON);
    private static final LedLamp LED = LedLamp.of(TimeSpan.millis(1), TimeSpan.millis(2));
    private static final SwitchingPattern PATTERN = SwitchingPattern.flashing(2, 0.5);

    private static void assertRefusesNaN(DoubleUnaryOperator curve, String name) {
        assertThatThrownBy(() -> curve.applyAsDouble(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(name + " must be a number of seconds, got NaN");
    }

    @Test
    void onsetsRefuseNaNAndKeepTheirLimits() {
        MeasuredLamp measured = MeasuredLamp.of("ramp", new double[] {0, 1}, new double[] {0, 1});
        for (OnsetCurve onset : List.of(ONSET, LED, measured)) {
            assertRefusesNaN(onset::relativeIntensity, "time since switch-on");
            assertThat(onset.relativeIntensity(Double.POSITIVE_INFINITY)).isEqualTo(1);
            assertThat(onset.relativeIntensity(-1)).isLessThan(1e-9);
            assertThat(onset.relativeIntensity(Double.NEGATIVE_INFINITY)).isLessThan(1e-9);
        }
    }

    @Test
    void otherCurvesRefuseNaN() {
        FilamentDecay decay = ONSET.switchOffAfter(TimeSpan.seconds(2));
        assertRefusesNaN(decay::relativeIntensity, "time since switch-off");
        assertThat(decay.relativeIntensity(-1)).isEqualTo(1);
        SwitchedLamp filament = SwitchedLamp.filament(BULB, ON);
        for (SwitchedLamp lamp : List.of(filament, LED)) {
            SwitchedLamp.Phase phase = lamp.switched(true, lamp.restState());
            assertRefusesNaN(phase::relativeIntensity, "time since switching");
            assertRefusesNaN(phase::state, "time since switching");
        }
        assertRefusesNaN(FlashingLamp.of(LED, PATTERN)::relativeIntensity, "time since the pattern began");
        assertRefusesNaN(PulseWidthDimming.of(LED, 200, 0.5)::instantaneousRatio, "time since the pattern began");
        assertRefusesNaN(t -> PATTERN.isOn(t) ? 1 : 0, "time in a switching pattern");
        assertRefusesNaN(SupplyCourse.step(Voltage.volts(12))::atV, "time in a supply's course");
        FilamentHistory history =
                FilamentHistory.of(BULB, ON, SupplyCourse.step(Voltage.volts(12)), TimeSpan.seconds(1));
        assertThatThrownBy(() -> history.relativeToRated(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time in a filament's history must be in [0, 1] s, got NaN s");
        CombinedBulb.Change change = CombinedBulb.of(BULB, BULB).stopOverTail(ON, ON);
        assertRefusesNaN(change::relativeToTail, "time since switch-on");
    }

    @Test
    void aFlashingLampHasNoLightAtInfinity() {
        FlashingLamp lamp = FlashingLamp.of(LED, PATTERN);
        assertThatThrownBy(() -> lamp.relativeIntensity(Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time since the pattern began must not be above 1e9 s, got Infinity s");
        assertThat(lamp.relativeIntensity(Double.NEGATIVE_INFINITY)).isZero();
        assertThat(lamp.relativeIntensity(1e6 + 0.2)).isGreaterThan(0.99);
    }
}
