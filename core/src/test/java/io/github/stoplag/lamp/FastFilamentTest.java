package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caveat;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class FastFilamentTest {
    private static final FilamentLamp BULB = LaboratoryLamps.bulb();
    private static final SupplyConditions ON = LaboratoryLamps.conditions();

    private static double halfS(double standbyV, double boostV) {
        return FastFilament.of(BULB, ON, Voltage.volts(standbyV), Voltage.volts(boostV), 0.95)
                .history()
                .timeToRatedLevelS(0.5)
                .orElseThrow();
    }

    @Test
    void standbyHoldsByVoltageAsByCurrent() {
        SupplyConditions standby = ON.withSupply(Voltage.volts(2));
        KeepWarm byVoltage = KeepWarm.byVoltage(BULB, standby);
        KeepWarm byCurrent = KeepWarm.byCurrent(BULB, ON, byVoltage.current());
        assertThat(byCurrent.temperature().inKelvin())
                .isCloseTo(byVoltage.temperature().inKelvin(), Percentage.withPercentage(1e-7));
        assertThat(byCurrent.supply().inVolts()).isCloseTo(2, within(1e-6));
        assertThat(byVoltage.power().inWatts())
                .isCloseTo(
                        BULB.lossAt(byVoltage.temperature(), Temperature.kelvin(300))
                                .inWatts(),
                        Percentage.withPercentage(1e-8));
        assertThat(byVoltage.lightRatio()).isLessThan(1e-4);
        assertThat(byVoltage.before(ON).initialTemperature()).isEqualTo(byVoltage.temperature());
        assertThatThrownBy(() -> KeepWarm.byCurrent(BULB, ON, Current.amperes(20)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("standby current of filament 12.8 V 26.88 W must be in [0, ")
                .hasMessageEndingWith("] A, got 20 A");
    }

    @Test
    void boostIsTheLeverThatMakesAFilamentFastStandbyBelowGlowIsNot() {
        double plain = halfS(0, 12.8);
        double warm = halfS(1, 12.8);
        double boosted = halfS(0, 25.6);
        assertThat(plain).isCloseTo(BULB.switchOn(ON).timeToLevelS(0.5).orElseThrow(), Percentage.withPercentage(1e-5));
        assertThat(warm / plain).isBetween(0.9, 0.99);
        assertThat(boosted / plain).isBetween(0.15, 0.3);
        assertThat(halfS(1, 25.6)).isLessThan(boosted);
    }

    @Test
    void lessMassIsFasterByTheTwoThirdsPowerOfTheWatts() {
        // d³ ~ A/R ~ P², m ~ A d ~ P^(5/3), m/P ~ P^(2/3): exact at equal voltage, temperature and losses
        FilamentLamp fine = FilamentLamp.builder(Voltage.volts(12.8), Power.watts(26.88 / 10))
                .filamentTemperature(BULB.filamentTemperature())
                .gasLossShare(0.18)
                .build();
        assertThat(fine.switchOn(ON).timeToLevelS(0.9).orElseThrow())
                .isCloseTo(
                        BULB.switchOn(ON).timeToLevelS(0.9).orElseThrow() / Math.pow(10, 2.0 / 3),
                        Percentage.withPercentage(1e-6));
    }

    @Test
    void theBoostEndsAtItsShareOfTheLight() {
        FastFilament fast = LaboratoryLamps.fast();
        double end = fast.boostTime().inSeconds();
        assertThat(fast.history().relativeToRated(end)).isCloseTo(0.95, within(1e-6));
        assertThat(fast.standby().temperature().inKelvin()).isLessThan(798);
        assertThat(fast.onset().caveats()).isEmpty();
        assertThat(fast.caveats())
                .extracting(Caveat::text)
                .singleElement()
                .asString()
                .startsWith("a boost to 25.6 V for 36")
                .endsWith(" ms at each switch-on shortens the filament's life by an amount no source gives");
        assertThat(FastFilament.of(BULB, ON, Voltage.volts(3), Voltage.volts(12.8), 0.9)
                        .caveats())
                .extracting(Caveat::text)
                .containsExactly("standby glows: 0.00053 of the rated light at 1439 K");
    }

    @Test
    void refusesWhatIsNoStandbyOrNoBoost() {
        assertThatThrownBy(() -> FastFilament.of(BULB, ON, Voltage.volts(13), Voltage.volts(20), 0.9))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("standby voltage must be in [0, 12.8] V, got 13 V");
        assertThatThrownBy(() -> FastFilament.of(BULB, ON, Voltage.volts(1), Voltage.volts(10), 0.9))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("boost voltage must be in [12.8, 64] V, got 10 V");
        assertThatThrownBy(() -> FastFilament.of(BULB, ON, Voltage.volts(1), Voltage.volts(20), 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("share of the final light at which the boost ends must be in [0.1, 0.99], got 1");
    }
}
