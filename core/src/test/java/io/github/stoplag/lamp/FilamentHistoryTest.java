package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.stream.Stream;
import org.apache.commons.math3.analysis.integration.RombergIntegrator;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FilamentHistoryTest {
    private static final FilamentLamp BULB = LaboratoryLamps.bulb();
    private static final SupplyConditions ON = LaboratoryLamps.conditions();
    private static final TimeSpan LONG = TimeSpan.seconds(3);

    static Stream<FilamentOnset> onsets() {
        return Stream.of(
                BULB.switchOn(ON),
                BULB.switchOn(ON.withSeriesResistance(Resistance.ohms(0.3))),
                BULB.switchOn(ON.withInitialTemperature(Temperature.kelvin(1100))),
                BulbCatalogue.published("P21/5W", Voltage.volts(24))
                        .minorLamp()
                        .build()
                        .switchOn(SupplyConditions.of(Voltage.volts(28))),
                BulbCatalogue.published("P21/5W", Voltage.volts(6))
                        .majorLamp()
                        .build()
                        .switchOn(SupplyConditions.of(Voltage.volts(6.75))));
    }

    @ParameterizedTest
    @MethodSource("onsets")
    void aStepAgreesWithTheQuadrature(FilamentOnset onset) {
        FilamentHistory history = FilamentHistory.of(
                onset.lamp(),
                onset.conditions(),
                SupplyCourse.step(onset.conditions().supply()),
                LONG);
        double[] fast = onset.lamp().timesToLevelsS(onset.conditions(), 0.01, 0.1, 0.5, 0.9, 0.99);
        double[] levels = {0.01, 0.1, 0.5, 0.9, 0.99};
        for (int i = 0; i < levels.length; i++) {
            double byQuadrature = onset.timeToLevelS(levels[i]).orElseThrow();
            assertThat(fast[i]).isCloseTo(byQuadrature, Percentage.withPercentage(1e-9));
            assertThat(history.timeToRatedLevelS(levels[i] * onset.relativeToRated())
                            .orElseThrow())
                    .as("%s, level %s", onset, levels[i])
                    .isCloseTo(byQuadrature, Percentage.withPercentage(1e-6));
        }
        TimeSpan at = TimeSpan.millis(60);
        assertThat(onset.inrush().energyJ(at))
                .isCloseTo(history.electricalEnergyJ(at), Percentage.withPercentage(1e-6));
        assertThat(history.currentAt(at).inAmperes())
                .isCloseTo(onset.currentAt(at).inAmperes(), Percentage.withPercentage(1e-6));
    }

    private static double storedJ(FilamentLamp lamp, double fromK, double toK) {
        double sum = new RombergIntegrator(1e-12, 1e-12, 3, 25)
                .integrate(1_000_000, Tungsten::specificHeatJPerKgK, Math.min(fromK, toK), Math.max(fromK, toK));
        return Math.copySign(lamp.wireMass().inKg() * sum, toK - fromK);
    }

    @Test
    void energyClosesOverAHeatingAndADecay() {
        SupplyCourse course = SupplyCourse.points(new double[] {0, 0.2, 0.2, 1}, new double[] {12.8, 13.5, 0, 0});
        FilamentHistory history =
                FilamentHistory.of(BULB, ON.withSeriesResistance(Resistance.ohms(0.1)), course, TimeSpan.seconds(2));
        for (double t : new double[] {0.01, 0.1, 0.2, 0.3, 1.9}) {
            TimeSpan at = TimeSpan.seconds(t);
            double stored = storedJ(BULB, 300, history.temperatureAt(at).inKelvin());
            assertThat(history.electricalEnergyJ(at))
                    .as("at %s s", t)
                    .isCloseTo(stored + history.lostEnergyJ(at), Percentage.withPercentage(1e-6));
        }
        assertThat(history.electricalEnergyJ(TimeSpan.seconds(2)))
                .isCloseTo(history.electricalEnergyJ(TimeSpan.seconds(0.2)), within(1e-9));
        assertThat(history.currentAt(TimeSpan.seconds(0.5)).inAmperes()).isZero();
    }

    @Test
    void aSagLiesBetweenItsEnds() {
        SupplyCourse sag = SupplyCourse.sag(Voltage.volts(12.8), Voltage.volts(11.5), TimeSpan.seconds(0.3));
        assertThat(sag.atV(-1)).isZero();
        assertThat(sag.atV(0)).isEqualTo(12.8);
        FilamentHistory sagging = FilamentHistory.of(BULB, ON, sag, LONG);
        FilamentOnset high = BULB.switchOn(ON);
        FilamentOnset low = BULB.switchOn(ON.withSupply(Voltage.volts(11.5)));
        for (double t : new double[] {0.05, 0.15, 0.5, 2}) {
            TimeSpan at = TimeSpan.seconds(t);
            assertThat(sagging.temperatureAt(at).inKelvin())
                    .isBetween(
                            low.temperatureAt(at).inKelvin(),
                            high.temperatureAt(at).inKelvin());
        }
        assertThat(sagging.relativeToRated(3)).isCloseTo(low.relativeToRated(), Percentage.withPercentage(1));
        assertThat(sagging.basis()).last().asString().contains("a sag from 12.8 V to 11.5 V with time constant 0.3 s");
        assertThat(sagging.caveats()).isEmpty();
        // the light overshoots its end, so an onset needs pooling and says so
        assertThat(FilamentHistory.of(
                                BULB,
                                ON,
                                SupplyCourse.sag(Voltage.volts(12.8), Voltage.volts(12.3), TimeSpan.seconds(0.6)),
                                LONG)
                        .toOnset(300)
                        .caveats())
                .isNotEmpty();
    }

    @Test
    void aDenserSamplingOfTheLightComesCloserToTheOnset() {
        FilamentHistory history = FilamentHistory.of(BULB, ON, SupplyCourse.step(Voltage.volts(12.8)), LONG);
        double exact = BULB.switchOn(ON).timeToLevelS(0.5).orElseThrow();
        MeasuredLamp sampled = history.toOnset(3000);
        assertThat(sampled.timeToLevelS(0.5).orElseThrow()).isCloseTo(exact, within(1e-5));
        assertThat(history.timeToRatedLevelS(1e-40)).hasValue(0);
        assertThat(history.timeToRatedLevelS(1.5)).isEmpty();
        assertThat(history.end()).isEqualTo(LONG);
    }

    @Test
    void aShortOverVoltageIsFineALongOneIsRefused() {
        SupplyCourse pulse = SupplyCourse.points(new double[] {0, 0.03, 0.03, 1}, new double[] {28, 28, 12.8, 12.8});
        assertThat(FilamentHistory.of(BULB, ON, pulse, LONG).relativeToRated(3)).isCloseTo(1, within(1e-3));
        assertThatThrownBy(() -> FilamentHistory.of(BULB, ON, SupplyCourse.step(Voltage.volts(28)), LONG))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith(
                        "supply of filament 12.8 V 26.88 W drives the filament beyond 3600 K, the end of the"
                                + " tungsten tables (it melts at 3695 K), at 0.1")
                .hasMessageEndingWith(" s: a step of 28 V");
    }

    @Test
    void refusesBadCourses() {
        assertThatThrownBy(() -> SupplyCourse.step(Voltage.volts(-12)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("supply voltage must be in [0, 1000] V, got -12 V");
        assertThatThrownBy(() -> SupplyCourse.points(new double[] {0}, new double[] {12}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a supply course must have equally many times and voltages, at least 2, got 1 and 1");
        assertThatThrownBy(() -> SupplyCourse.points(new double[] {0, 2, 1}, new double[] {12, 12, 12}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("point 2: time must be in [2, 10000] s, got 1 s");
        assertThatThrownBy(() -> SupplyCourse.of("odd", t -> t, 0.2, 0.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("break 1 of the supply must be in (0.2, 1000000] s, got 0.1 s");
        assertThatThrownBy(() -> FilamentHistory.of(BULB, ON, SupplyCourse.of("falling", t -> 1 - t), LONG))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must be in [0, 1000] V, got -");
        FilamentHistory history = FilamentHistory.of(BULB, ON, SupplyCourse.step(Voltage.volts(12)), LONG);
        assertThatThrownBy(() -> history.temperatureAt(TimeSpan.seconds(4)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time in a filament's history must be in [0, 3] s, got 4 s");
    }
}
