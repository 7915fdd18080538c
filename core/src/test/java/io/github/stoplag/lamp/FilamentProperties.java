package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.data.Percentage;

/** What holds for every filament lamp, whatever its rating and feed. */
class FilamentProperties {
    private static FilamentLamp lamp(double ratedV, double watt, double gasShare) {
        return FilamentLamp.builder(Voltage.volts(ratedV), Power.watts(watt))
                .gasLossShare(gasShare)
                .build();
    }

    @Property(tries = 40, seed = "41")
    void heatingAndCoolingAreMonotone(
            @ForAll @DoubleRange(min = 6, max = 32) double ratedV,
            @ForAll @DoubleRange(min = 2, max = 60) double watt,
            @ForAll @DoubleRange(min = 0, max = 0.4) double gasShare,
            @ForAll @DoubleRange(min = 0.4, max = 1.2) double relative,
            @ForAll @DoubleRange(min = 0, max = 1) double ohm) {
        FilamentLamp lamp = lamp(ratedV, watt, gasShare);
        SupplyConditions on =
                SupplyConditions.of(Voltage.volts(relative * ratedV)).withSeriesResistance(Resistance.ohms(ohm));
        FilamentOnset onset = lamp.switchOn(on);
        FilamentDecay decay = lamp.switchOff(on);
        double lit = -1;
        double left = 2;
        double ampere = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= 60; i++) {
            double t = 0.003 * Math.pow(1.15, i) - 0.003;
            assertThat(onset.relativeIntensity(t)).isGreaterThanOrEqualTo(lit);
            assertThat(decay.relativeIntensity(t)).isLessThanOrEqualTo(left);
            double now = onset.currentAt(TimeSpan.seconds(t)).inAmperes();
            assertThat(now).isLessThanOrEqualTo(ampere * (1 + 1e-12));
            lit = onset.relativeIntensity(t);
            left = decay.relativeIntensity(t);
            ampere = now;
        }
    }

    @Property(tries = 25, seed = "42")
    void quadratureAgreesWithIntegrationAndEnergyCloses(
            @ForAll @DoubleRange(min = 6, max = 32) double ratedV,
            @ForAll @DoubleRange(min = 2, max = 60) double watt,
            @ForAll @DoubleRange(min = 0.5, max = 1.2) double relative,
            @ForAll @DoubleRange(min = 0, max = 0.5) double ohm,
            @ForAll @DoubleRange(min = 250, max = 1400) double initialK) {
        FilamentLamp lamp = lamp(ratedV, watt, 0.18);
        SupplyConditions on = SupplyConditions.of(Voltage.volts(relative * ratedV))
                .withSeriesResistance(Resistance.ohms(ohm))
                .withInitialTemperature(Temperature.kelvin(initialK));
        FilamentOnset onset = lamp.switchOn(on);
        double end = 3 * onset.settledS();
        FilamentHistory history = FilamentHistory.of(lamp, on, SupplyCourse.step(on.supply()), TimeSpan.seconds(end));
        for (double level : new double[] {0.01, 0.3, 0.9}) {
            double at = onset.timeToLevelS(level).orElseThrow();
            assertThat(history.timeToRatedLevelS(level * onset.relativeToRated())
                            .orElseThrow())
                    .isCloseTo(at, Percentage.withPercentage(1e-6));
        }
        double lastK = history.temperatureAt(TimeSpan.seconds(end)).inKelvin();
        double stored = 0;
        int panels = 4000;
        for (int i = 0; i < panels; i++) {
            double mid = initialK + (lastK - initialK) * (i + 0.5) / panels;
            stored += lamp.wireMass().inKg() * Tungsten.specificHeatJPerKgK(mid) * (lastK - initialK) / panels;
        }
        TimeSpan at = TimeSpan.seconds(end);
        assertThat(history.electricalEnergyJ(at))
                .isCloseTo(stored + history.lostEnergyJ(at), Percentage.withPercentage(1e-5));
        assertThat(onset.inrush().energyJ(at))
                .isCloseTo(history.electricalEnergyJ(at), Percentage.withPercentage(1e-5));
    }

    @Property(tries = 25, seed = "43")
    void aWarmerStartIsSoonerAndALowerSupplyLater(
            @ForAll @DoubleRange(min = 300, max = 1800) double initialK,
            @ForAll @DoubleRange(min = 0.01, max = 0.3) double ohm) {
        FilamentLamp bulb = LaboratoryLamps.bulb();
        SupplyConditions on = LaboratoryLamps.conditions();
        double plain = bulb.switchOn(on).timeToLevelS(0.5).orElseThrow();
        assertThat(bulb.switchOn(on.withInitialTemperature(Temperature.kelvin(initialK)))
                        .timeToLevelS(0.5)
                        .orElseThrow())
                .isLessThanOrEqualTo(plain + 1e-12);
        assertThat(bulb.switchOn(on.withSeriesResistance(Resistance.ohms(ohm)))
                        .timeToLevelS(0.5)
                        .orElseThrow())
                .isGreaterThan(plain);
    }

    @Property(tries = 25, seed = "44")
    void heatingForATimeAndCoolingForNoneChangesNothing(
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double onS,
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double moreS) {
        FilamentOnset onset = LaboratoryLamps.standard();
        FilamentOnset resumed = onset.switchOffAfter(TimeSpan.seconds(onS))
                .switchOnAfter(TimeSpan.seconds(0), LaboratoryLamps.conditions());
        assertThat(resumed.temperatureAt(TimeSpan.seconds(moreS)).inKelvin())
                .isCloseTo(onset.temperatureAt(TimeSpan.seconds(onS + moreS)).inKelvin(), within(1e-5));
    }
}
