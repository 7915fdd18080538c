package io.github.stoplag.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.Photometry;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.lamp.Tungsten;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A filament lamp behind an isolating diode: the bracket against a march in time through the real diode curve. */
final class FeedOnsetTest {
    private static final Voltage SUPPLY = Voltage.volts(13.5);
    private static final double WIRING_OHM = 0.15;
    private static final FilamentLamp LAMP =
            FilamentLamp.builder(Voltage.volts(13.5), Power.watts(26.5)).build();
    private static final ShockleyDiode SILICON = ShockleyDiode.of(
            Current.amperes(7.02e-9),
            1.8,
            Resistance.ohms(0.034),
            Temperature.kelvin(300),
            Source.seen("public circuit-model lists", "a 1 A silicon rectifier"));
    private static final TabledDiode SCHOTTKY = TabledDiode.of(
            new double[] {3, 9.4}, new double[] {0.525, 0.95}, Source.seen("data sheet of a 1N5822", "highest values"));

    private static LampFeed feed(ForwardCharacteristic characteristic) {
        return LampFeed.of(Resistance.ohms(WIRING_OHM))
                .withDiode(Diode.builder(characteristic)
                        .forward(Current.amperes(3))
                        .reverse(Voltage.volts(40), Current.milliamperes(20))
                        .thermal(40, Temperature.celsius(125))
                        .build());
    }

    /** The current at a filament temperature, by bisection of U_s = I (R + R_w) + U_F(I). */
    private static double currentA(ForwardCharacteristic diode, double kelvin) {
        double loopOhm = LAMP.resistanceAt(Temperature.kelvin(kelvin)).inOhms() + WIRING_OHM;
        double lo = 0;
        double hi = SUPPLY.inVolts() / loopOhm;
        for (int i = 0; i < 60; i++) {
            double mid = (lo + hi) / 2;
            if (mid * loopOhm + diode.voltageV(mid) < SUPPLY.inVolts()) {
                lo = mid;
            } else {
                hi = mid;
            }
        }
        return lo;
    }

    private static double slopeKPerS(ForwardCharacteristic diode, double kelvin) {
        Temperature t = Temperature.kelvin(kelvin);
        double amperes = currentA(diode, kelvin);
        double gain = amperes * amperes * LAMP.resistanceAt(t).inOhms();
        double loss = LAMP.lossAt(t, Temperature.kelvin(300)).inWatts();
        return (gain - loss) / (LAMP.wireMass().inKg() * Tungsten.specificHeatJPerKgK(kelvin));
    }

    /** Marches the heat balance through the diode's own curve, classical Runge-Kutta; temperatures each 0.1 ms. */
    private static double[] march(ForwardCharacteristic diode) {
        double dt = 1e-4;
        double[] kelvin = new double[20_001];
        kelvin[0] = 300;
        for (int i = 1; i < kelvin.length; i++) {
            double t = kelvin[i - 1];
            double k1 = slopeKPerS(diode, t);
            double k2 = slopeKPerS(diode, t + dt / 2 * k1);
            double k3 = slopeKPerS(diode, t + dt / 2 * k2);
            double k4 = slopeKPerS(diode, t + dt * k3);
            kelvin[i] = t + dt / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
        }
        return kelvin;
    }

    private static double timeToLevelS(double[] kelvin, double level) {
        Photometry light = Photometry.tungsten(Lens.CLEAR);
        double target =
                light.luminance(Temperature.kelvin(kelvin[kelvin.length - 1])).inCdPerM2() * level;
        int i = 1;
        while (light.luminance(Temperature.kelvin(kelvin[i])).inCdPerM2() < target) {
            i++;
        }
        double before = light.luminance(Temperature.kelvin(kelvin[i - 1])).inCdPerM2();
        double after = light.luminance(Temperature.kelvin(kelvin[i])).inCdPerM2();
        return 1e-4 * (i - 1 + (target - before) / (after - before));
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void bracketHoldsTheOnsetThroughTheRealDiode(boolean silicon) {
        ForwardCharacteristic diode = silicon ? SILICON : SCHOTTKY;
        FeedOnset onset = feed(diode).onset(LAMP, SupplyConditions.of(SUPPLY));
        double[] kelvin = march(diode);
        for (double level : new double[] {0.01, 0.1, 0.5, 0.9}) {
            FeedOnset.Times times = onset.timeToLevel(level);
            double marched = timeToLevelS(kelvin, level);
            assertThat(marched)
                    .as("level %s", level)
                    .isBetween(
                            times.earliest().inSeconds() - 2e-5, times.latest().inSeconds() + 2e-5);
            assertThat(times.latest().inSeconds() / times.earliest().inSeconds())
                    .isBetween(1.0, 1.1);
            assertThat(onset.delayByDiode(level).earliest().inSeconds()).isPositive();
        }
        double steady = kelvin[kelvin.length - 1];
        assertThat(onset.quickest().steadyTemperature().inKelvin()).isCloseTo(steady, within(0.01));
        assertThat(onset.slowest().steadyTemperature().inKelvin()).isCloseTo(steady, within(0.01));
        double lampV = currentA(diode, steady)
                * LAMP.resistanceAt(Temperature.kelvin(steady)).inOhms();
        assertThat(onset.lampVoltage().inVolts()).isCloseTo(lampV, within(1e-4));
        assertThat(onset.lightAgainstDirectRatio()).isLessThan(1);
    }

    @Test
    void withoutDiodeItIsTheLampBehindItsWiring() {
        FeedOnset onset = LampFeed.of(Resistance.ohms(0.1))
                .onset(LAMP, SupplyConditions.of(SUPPLY).withSeriesResistance(Resistance.ohms(0.05)));
        FilamentOnset same =
                LAMP.switchOn(SupplyConditions.of(SUPPLY).withSeriesResistance(Resistance.ohms(0.1 + 0.05)));
        assertThat(onset.timeToLevel(0.5).latest().inSeconds())
                .isEqualTo(same.timeToLevelS(0.5).orElseThrow());
        assertThat(onset.delayByDiode(0.5).latest().inSeconds()).isZero();
        assertThat(onset.band().inVolts()).isZero();
        assertThat(onset.lightAgainstDirectRatio()).isEqualTo(1);
        assertThat(onset.inrushCurrent()).isEqualTo(same.inrushCurrent());
    }

    @Test
    void supplyBelowTheDropIsAnError() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> feed(SILICON).onset(LAMP, SupplyConditions.of(Voltage.volts(0.4))))
                .withMessageMatching(
                        "supply must exceed the diode's drop of 0\\.\\d+ V for the lamp to light, got 0\\.4 V");
    }

    @Test
    void evidenceSaysWhatWasReplaced() {
        Evidence evidence =
                feed(SILICON).onset(LAMP, SupplyConditions.of(SUPPLY)).evidence();
        assertThat(evidence.basis()).anyMatch(line -> line.contains("held between two lines"));
        assertThat(evidence.basis()).anyMatch(line -> line.startsWith("filament from its rating: 26.5 W at 13.5 V"));
        assertThat(evidence.cautions()).isNotEmpty();
    }
}
