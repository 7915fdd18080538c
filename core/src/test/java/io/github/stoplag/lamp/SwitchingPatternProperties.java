package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.TimeSpan;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Patterns superpose as sets of moments do. */
class SwitchingPatternProperties {
    private static SwitchingPattern pattern(int periodTenths, double duty, double startShare) {
        double period = periodTenths / 10.0;
        double on = startShare * (1 - duty) * period;
        return SwitchingPattern.of(
                TimeSpan.seconds(period), TimeSpan.seconds(on), TimeSpan.seconds(Math.min(period, on + duty * period)));
    }

    @Property(tries = 200, seed = "31")
    void onTimesObeyInclusionAndExclusion(
            @ForAll @IntRange(min = 1, max = 12) int p,
            @ForAll @IntRange(min = 1, max = 12) int q,
            @ForAll @DoubleRange(min = 0.05, max = 0.95) double dutyA,
            @ForAll @DoubleRange(min = 0.05, max = 0.95) double dutyB,
            @ForAll @DoubleRange(min = 0, max = 1) double startA,
            @ForAll @DoubleRange(min = 0, max = 1) double startB) {
        SwitchingPattern a = pattern(p, dutyA, startA);
        SwitchingPattern b = pattern(q, dutyB, startB);
        SwitchingPattern or = a.or(b);
        SwitchingPattern and = a.and(b);
        SwitchingPattern xor = a.xor(b);
        assertThat(or.onRatio() + and.onRatio()).isCloseTo(a.onRatio() + b.onRatio(), within(1e-7));
        assertThat(xor.onRatio()).isCloseTo(or.onRatio() - and.onRatio(), within(1e-7));
        for (int i = 0; i < 50; i++) {
            double t = 0.0137 + i * 0.271;
            if (nearAnEdge(a, t) || nearAnEdge(b, t)) {
                continue;
            }
            assertThat(or.isOn(t)).isEqualTo(a.isOn(t) || b.isOn(t));
            assertThat(and.isOn(t)).isEqualTo(a.isOn(t) && b.isOn(t));
            assertThat(xor.isOn(t)).isEqualTo(a.isOn(t) != b.isOn(t));
        }
    }

    private static boolean nearAnEdge(SwitchingPattern pattern, double t) {
        return pattern.isOn(t - 1e-6) != pattern.isOn(t + 1e-6);
    }

    @Property(tries = 20, seed = "32")
    void anLedAnswersAPatternByTheSumOfItsStepsUpAndDown(
            @ForAll @DoubleRange(min = 0.5, max = 20) double hz,
            @ForAll @DoubleRange(min = 0.1, max = 0.9) double duty,
            @ForAll @DoubleRange(min = 0.01, max = 0.2) double riseS) {
        // first order in and out with one time constant is a linear system, so steps superpose
        LedLamp led = LedLamp.of(TimeSpan.seconds(0), TimeSpan.seconds(riseS));
        FlashingLamp flashing = FlashingLamp.of(led, SwitchingPattern.flashing(hz, duty));
        for (double t : new double[] {0.3 / hz, 1.05 / hz, 3.7 / hz}) {
            double sum = 0;
            for (int cycle = 0; cycle / hz <= t; cycle++) {
                sum += led.relativeIntensity(t - cycle / hz);
                sum -= t > (cycle + duty) / hz ? led.relativeIntensity(t - (cycle + duty) / hz) : 0;
            }
            assertThat(flashing.relativeIntensity(t)).isCloseTo(sum, within(1e-8));
        }
        assertThat(flashing.meanRatio()).isCloseTo(duty, within(1e-7));
    }

    @Property(tries = 20, seed = "33")
    void aFilamentUnderMoreOnTimeIsNeverDimmer(
            @ForAll @IntRange(min = 1, max = 5) int p,
            @ForAll @IntRange(min = 1, max = 5) int q,
            @ForAll @DoubleRange(min = 0.1, max = 0.9) double duty) {
        SwitchingPattern a = pattern(2 * p, duty, 0);
        SwitchingPattern both = a.or(pattern(2 * q, duty, 1));
        SwitchedLamp lamp = SwitchedLamp.filament(LaboratoryLamps.bulb(), LaboratoryLamps.conditions());
        FlashingLamp less = FlashingLamp.of(lamp, a);
        FlashingLamp more = FlashingLamp.of(lamp, both);
        for (int i = 0; i < 40; i++) {
            double t = 0.05 * i;
            assertThat(more.relativeIntensity(t)).isGreaterThanOrEqualTo(less.relativeIntensity(t) * (1 - 1e-9));
        }
        assertThat(more.peakRatio()).isLessThanOrEqualTo(1 + 1e-9);
    }
}
