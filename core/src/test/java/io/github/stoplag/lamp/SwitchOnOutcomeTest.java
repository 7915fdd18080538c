package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Caveat;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class SwitchOnOutcomeTest {
    private static final FilamentLamp BULB = LaboratoryLamps.bulb();
    private static final SupplyConditions ON = LaboratoryLamps.conditions();

    private static SwitchOnOutcome at(double volt) {
        return BULB.outcome(ON.withSupply(Voltage.volts(volt)));
    }

    @Test
    void aLampLightsBetweenAVoltAndTwiceItsVoltage() {
        assertThat(at(12.8)).isInstanceOf(SwitchOnOutcome.Lights.class);
        assertThat(at(6)).isInstanceOf(SwitchOnOutcome.Lights.class);
        assertThat(at(1)).isInstanceOf(SwitchOnOutcome.TooDim.class);
        assertThat(at(28)).isInstanceOf(SwitchOnOutcome.BurnsOut.class);
    }

    @Test
    void noVoltageIsAnOutcomeToo() {
        SwitchOnOutcome.TooDim dark = (SwitchOnOutcome.TooDim) at(0);
        assertThat(dark.reason())
                .isEqualTo(
                        "0 V holds the filament at 300 K; solids begin to glow near 798 K (Draper point, from memory)");
        FilamentOnset onset = dark.onset();
        assertThat(onset.steadyTemperature().inKelvin()).isEqualTo(300);
        assertThat(onset.steadyCurrent()).isEqualTo(Current.amperes(0));
        assertThat(onset.steadyPower().inWatts()).isZero();
        assertThat(onset.inrushRatio()).isEqualTo(1);
        assertThat(onset.relativeToRated()).isLessThan(1e-20);
        assertThat(onset.relativeIntensity(1)).isEqualTo(1);
        assertThat(onset.timeToLevelS(0.9)).hasValue(0);
        assertThat(onset.inrush().energyJ(TimeSpan.seconds(1))).isZero();
        assertThat(onset.caveats())
                .extracting(Caveat::text)
                .containsExactly(
                        "supply too low to light the lamp visibly: steady filament temperature 300 K, solids begin to"
                                + " glow near 798 K (Draper point, from memory)");
        assertThat(BULB.timesToLevelsS(ON.withSupply(Voltage.volts(0)), 0.5)).containsExactly(0);
    }

    @Test
    void overVoltageBurnsTheFilamentOutInATimeTheIntegrationConfirms() {
        SwitchOnOutcome.BurnsOut burnt = (SwitchOnOutcome.BurnsOut) at(30);
        FilamentHistory until = FilamentHistory.of(
                BULB,
                ON,
                SupplyCourse.step(Voltage.volts(30)),
                TimeSpan.seconds(burnt.after().inSeconds() * 0.999999));
        assertThat(until.temperatureAt(until.end()).inKelvin()).isCloseTo(3600, within(0.05));
        assertThat(burnt.limit().inVolts()).isBetween(25.0, 28.0);
        double justBelow = burnt.limit().inVolts() * 0.99999;
        SwitchOnOutcome.Lights lit = (SwitchOnOutcome.Lights) at(justBelow);
        assertThat(lit.onset().steadyTemperature().inKelvin()).isCloseTo(3600, within(0.1));
        assertThat(lit.onset().caveats()).isNotEmpty();
        assertThat(burnt.reason())
                .startsWith("30 V is above the ")
                .contains(" V that hold filament 12.8 V 26.88 W at 3600 K: it passes 3600 K after ")
                .endsWith(" ms and melts at 3695 K");
    }

    @Test
    void anOpenCircuitCarriesNothing() {
        SwitchOnOutcome.OpenCircuit open = SwitchOnOutcome.openCircuit(ON);
        assertThat(open.acrossGap()).isEqualTo(Voltage.volts(12.8));
        assertThat(open.reason())
                .isEqualTo("open circuit: no current and no light, the whole 12.8 V stands across the gap");
    }

    @Test
    void aShortCircuitIsLimitedByItsWiringAlone() {
        SwitchOnOutcome.ShortCircuit bridged =
                SwitchOnOutcome.shortCircuit(ON.withSeriesResistance(Resistance.ohms(0.064)));
        assertThat(bridged.current().inAmperes()).isCloseTo(200, within(1e-9));
        assertThat(bridged.wiringPower().inWatts()).isCloseTo(2560, within(1e-9));
        assertThat(bridged.reason())
                .isEqualTo("short circuit: 200 A through 0.064 Ω of switch and harness until the fuse opens; no light");
        assertThat(bridged.cautions()).contains(Caution.FUSES);
        assertThatThrownBy(() -> SwitchOnOutcome.shortCircuit(ON))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "series resistance must be above 0 Ω for a short circuit to have a finite current, got 0 Ω");
    }

    @Test
    void inrushFallsToMultiplesOfTheSteadyCurrent() {
        FilamentOnset onset = BULB.switchOn(ON.withSeriesResistance(Resistance.ohms(0.05)));
        Inrush inrush = onset.inrush();
        assertThat(inrush.current()).isEqualTo(onset.inrushCurrent());
        double before = 0;
        for (double multiple : new double[] {10, 5, 2, 1.2}) {
            TimeSpan at = inrush.timeToMultiple(multiple);
            assertThat(at.inSeconds()).isGreaterThan(before);
            assertThat(onset.currentAt(at).inAmperes())
                    .isCloseTo(multiple * onset.steadyCurrent().inAmperes(), Percentage.withPercentage(1e-6));
            before = at.inSeconds();
        }
        assertThat(inrush.timeToMultiple(100)).isEqualTo(TimeSpan.seconds(0));
        // in the end the surplus no longer grows
        assertThat(inrush.excessEnergyJ(TimeSpan.seconds(20)))
                .isCloseTo(inrush.excessEnergyJ(TimeSpan.seconds(40)), Percentage.withPercentage(1e-4));
        assertThatThrownBy(() -> inrush.timeToMultiple(1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("multiple of the steady current must be in (1, 1000], got 1");
    }

    @Test
    void designExampleOfADriverMakerIsMet() {
        // a 35 W bulb at 16 V and −40 °C behind 65 mΩ must stay below the 60 A limit (data sheet SLVSE17B, seen)
        FilamentLamp bulb =
                FilamentLamp.builder(Voltage.volts(13.5), Power.watts(35)).build();
        SupplyConditions cold = SupplyConditions.of(Voltage.volts(16))
                .withSeriesResistance(Resistance.ohms(0.065))
                .withAmbientTemperature(Temperature.celsius(-40));
        assertThat(bulb.switchOn(cold).inrushCurrent().inAmperes()).isBetween(30.0, 60.0);
    }
}
