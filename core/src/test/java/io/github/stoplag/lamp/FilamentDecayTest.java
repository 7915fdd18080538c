package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FilamentDecayTest {
    private static final FilamentLamp BULB = LaboratoryLamps.bulb();
    private static final SupplyConditions ON = LaboratoryLamps.conditions();
    private static final SupplyConditions OFF = ON.withSupply(Voltage.volts(0));

    /** The general path by integration is the second way. */
    private static void agreesWithIntegration(FilamentDecay decay, SupplyConditions left) {
        FilamentHistory history = FilamentHistory.of(
                decay.lamp(),
                left.withInitialTemperature(decay.startTemperature()),
                SupplyCourse.step(left.supply()),
                TimeSpan.seconds(5));
        for (double t : new double[] {0.001, 0.03, 0.2, 1, 4.9}) {
            assertThat(decay.temperatureAt(TimeSpan.seconds(t)).inKelvin())
                    .as("at %s s", t)
                    .isCloseTo(history.temperatureAt(TimeSpan.seconds(t)).inKelvin(), Percentage.withPercentage(1e-6));
        }
    }

    @Test
    void coolingAgreesWithAnIntegratedHeatBalance() {
        agreesWithIntegration(BULB.switchOff(ON), OFF);
        agreesWithIntegration(BULB.switchOn(ON).switchOffAfter(TimeSpan.millis(80)), OFF);
        SupplyConditions held = ON.withSupply(Voltage.volts(3));
        agreesWithIntegration(FilamentDecay.of(BULB, held.withInitialTemperature(Temperature.kelvin(2739))), held);
        FilamentLamp vacuum = BulbCatalogue.published("T4W").majorLamp().build();
        agreesWithIntegration(vacuum.switchOff(ON), OFF);
    }

    @Test
    void lightFallsFromFullLightToDark() {
        FilamentDecay decay = BULB.switchOff(ON);
        assertThat(decay.relativeIntensity(-1)).isEqualTo(1);
        assertThat(decay.startTemperature()).isEqualTo(BULB.switchOn(ON).steadyTemperature());
        assertThat(decay.startRelativeToRated()).isCloseTo(1, within(1e-9));
        double before = 0;
        for (double level : new double[] {0.9, 0.5, 0.1, 0.01, 1e-6}) {
            double at = decay.timeToLevelS(level).orElseThrow();
            assertThat(at).isGreaterThan(before);
            assertThat(decay.relativeIntensity(at)).isCloseTo(level, Percentage.withPercentage(1e-7));
            assertThat(decay.timeToLevel(level)).contains(TimeSpan.seconds(at));
            before = at;
        }
        assertThat(decay.temperatureAt(TimeSpan.seconds(1000)).inKelvin()).isCloseTo(300, within(1e-3));
        assertThat(decay.basis()).last().asString().startsWith("left on 0 V at 2738.99 K and cooling");
        assertThat(decay.caveats()).isEmpty();
    }

    @Test
    void firstLightLostFollowsTheRadiatedPower() {
        // at switch-off dT/dt = −loss/C, with loss the rated power: the initial slope is known without any integration
        FilamentDecay decay = BULB.switchOff(ON);
        double kelvin = decay.startTemperature().inKelvin();
        double slope = 26.88 / (BULB.wireMass().inKg() * Tungsten.specificHeatJPerKgK(kelvin));
        double after = decay.temperatureAt(TimeSpan.seconds(1e-5)).inKelvin();
        assertThat((kelvin - after) / 1e-5).isCloseTo(slope, Percentage.withPercentage(0.2));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.1, 0.3})
    void afterAPartialHeatingItCoolsFromWhereItWas(double onS) {
        FilamentOnset onset = BULB.switchOn(ON);
        FilamentDecay decay = onset.switchOffAfter(TimeSpan.seconds(onS));
        assertThat(decay.startTemperature()).isEqualTo(onset.temperatureAt(TimeSpan.seconds(onS)));
        assertThat(decay.startRelativeToRated())
                .isCloseTo(onset.relativeIntensity(onS) * onset.relativeToRated(), Percentage.withPercentage(1e-9));
        FilamentOnset again = decay.switchOnAfter(TimeSpan.millis(100), ON);
        assertThat(again.timeToLevelS(0.5).orElseThrow())
                .isLessThan(onset.timeToLevelS(0.5).orElseThrow());
        assertThat(again.inrushRatio()).isLessThan(onset.inrushRatio());
    }

    @Test
    void aHoldingVoltageStopsTheFall() {
        SupplyConditions held = ON.withSupply(Voltage.volts(6)).withInitialTemperature(Temperature.kelvin(2739));
        FilamentDecay decay = FilamentDecay.of(BULB, held);
        assertThat(decay.timeToLevelS(0.01)).isEmpty();
        assertThat(decay.timeToLevel(0.01)).isEmpty();
        assertThat(decay.timeToLevelS(0.5)).isPresent();
        assertThat(decay.relativeIntensity(60))
                .isCloseTo(
                        BULB.switchOn(ON.withSupply(Voltage.volts(6))).relativeToRated(), Percentage.withPercentage(1));
        assertThatThrownBy(() -> FilamentDecay.of(
                        BULB, ON.withSupply(Voltage.volts(6)).withInitialTemperature(Temperature.kelvin(1500))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("a decay must start above the ")
                .hasMessageEndingWith(" K at which 6 V holds the filament, got 1500 K");
        assertThatThrownBy(() -> BULB.switchOn(ON).switchOffAfter(TimeSpan.seconds(-1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time on must be in [0, 1000000] s, got -1 s");
    }
}
