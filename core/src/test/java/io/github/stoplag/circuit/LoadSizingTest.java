package io.github.stoplag.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.circuit.OutageVerdict.Outcome;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Voltage;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Sizing and verdict are two ways to the same border and must not differ on it. */
class LoadSizingTest {
    private static OutageMonitor monitor(double healthyA, double loV, double hiV) {
        return OutageMonitor.between(
                Current.amperes(healthyA / 2), Current.amperes(healthyA), Voltage.volts(loV), Voltage.volts(hiV));
    }

    private static Outcome with(OutageMonitor monitor, CurrentDraw lamp, double ohms) {
        return monitor.judge(lamp.plus(CurrentDraw.resistive(Resistance.ohms(ohms))))
                .outcome();
    }

    @Test
    void aPreferredValueOnTheBorderIsTaken() {
        // 1.2 A from a supply of 12 V on and an LED lamp that draws nothing: exactly 10 Ω
        OutageMonitor monitor = monitor(1.2, 12, 16);
        CurrentDraw dead = CurrentDraw.open();
        assertThat(with(monitor, dead, 10)).isEqualTo(Outcome.REPORTS_HEALTHY);
        assertThat(LoadSizing.of(monitor, dead, 0)).isInstanceOfSatisfying(LoadSizing.Needed.class, needed -> {
            assertThat(needed.greatest().inOhms()).isEqualTo(10);
            assertThat(needed.preferred(ESeries.E12).inOhms()).isEqualTo(10);
        });
    }

    @Property(tries = 100, seed = "42")
    void theGreatestResistanceIsJudgedHealthyAndTheNextPreferredOneIsNot(
            @ForAll @DoubleRange(min = 0.3, max = 3) double healthyA,
            @ForAll @DoubleRange(min = 0, max = 0.2) double ledA,
            @ForAll @DoubleRange(min = 6, max = 12) double lowV) {
        OutageMonitor monitor = monitor(healthyA, lowV, 16);
        CurrentDraw led = CurrentDraw.ledRegulated(Current.amperes(ledA), Voltage.volts(8));
        LoadSizing.Needed needed = (LoadSizing.Needed) LoadSizing.of(monitor, led, 0);
        double greatest = needed.greatest().inOhms();
        assertThat(with(monitor, led, greatest)).isEqualTo(Outcome.REPORTS_HEALTHY);
        assertThat(with(monitor, led, greatest * (1 + 1e-9))).isNotEqualTo(Outcome.REPORTS_HEALTHY);
        double taken = needed.preferred(ESeries.E24).inOhms();
        for (double larger : new double[] {1.01, 1.05, 1.1, 1.2}) {
            double value = ESeries.E24.nearest(Resistance.ohms(taken * larger)).inOhms();
            if (value > taken) {
                assertThat(with(monitor, led, value)).isNotEqualTo(Outcome.REPORTS_HEALTHY);
            }
        }
    }

    @Test
    void aNarrowDipInAMeasuredDrawDecides() {
        // 20 mV wide, between the points of any even scan of the range
        CurrentDraw led = CurrentDraw.measured(
                "LED lamp", new double[] {9, 12.001, 12.011, 12.021, 16}, new double[] {0.3, 0.3, 0.05, 0.3, 0.3});
        OutageMonitor monitor = monitor(0.8, 9, 16);
        assertThat(monitor.judge(led).lowest().current().inAmperes()).isCloseTo(0.05, within(1e-12));
        LoadSizing.Needed needed = (LoadSizing.Needed) LoadSizing.of(monitor, led, 0);
        // at 9 V 0.5 A are wanting, 18 Ω; in the dip 0.75 A, 16 Ω
        assertThat(needed.greatest().inOhms()).isCloseTo(12.011 / 0.75, within(1e-9));
        assertThat(needed.decidingSupply().inVolts()).isCloseTo(12.011, within(1e-9));
        assertThat(monitor(0.2, 9, 16).judge(led).outcome()).isEqualTo(Outcome.MAY_DO_EITHER);
        assertThat(LoadSizing.of(monitor(0.2, 9, 16), led, 0)).isInstanceOf(LoadSizing.Needed.class);
    }

    @Test
    void aNarrowDipIsFoundThroughTheWiringToo() {
        CurrentDraw led = CurrentDraw.measured(
                "LED lamp", new double[] {9, 12.001, 12.011, 12.021, 16}, new double[] {0.3, 0.3, 0.05, 0.3, 0.3});
        CurrentDraw seen = LampFeed.of(Resistance.ohms(0.3)).seenFromSupply(led);
        OutageVerdict verdict = monitor(0.2, 10, 15).judge(seen);
        assertThat(verdict.lowest().current().inAmperes()).isCloseTo(0.05, within(1e-6));
    }
}
