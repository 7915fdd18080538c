package io.github.stoplag.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.stoplag.circuit.OutageVerdict.Outcome;
import io.github.stoplag.lamp.BulbCatalogue;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.lamp.VoltageRerating;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The electrical models against figures published elsewhere; each table carries its source and standing. */
final class PublishedFiguresTest {
    private static final Temperature AT_20 = Temperature.celsius(20);

    private static Table table(String name) {
        return Table.read(PublishedFiguresTest.class, name);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "six_ohm_power.csv",
                "awg_resistance.csv",
                "copper_temperature_factor.csv",
                "lamp_currents.csv",
                "r128_current_window.csv",
                "diode_forward.csv",
                "flash_rates.csv",
                "power_resistor.csv"
            })
    void everyTableNamesSourceAndStanding(String name) {
        assertThat(table(name).source()).isNotBlank();
        assertThat(table(name).rows())
                .isNotEmpty()
                .allSatisfy(row -> assertThat(Standing.of(row.getOrDefault("standing", "")))
                        .isNotNull());
    }

    @Test
    void sixOhmTakesTheUsualPowers() {
        Table t = table("six_ohm_power.csv");
        LoadResistor six = LoadResistor.of(Resistance.ohms(6), 0, ResistorRating.aluminiumHoused50WOnStandardSink());
        for (Map<String, String> row : t.rows()) {
            assertThat(six.power(Voltage.volts(t.number(row, "supply_V"))).inWatts())
                    .isCloseTo(t.number(row, "power_W"), within(0.05));
        }
    }

    @Test
    void gaugeGivesTheTabledResistance() {
        Table t = table("awg_resistance.csv");
        for (Map<String, String> row : t.rows()) {
            Wire wire = Wire.ofAwg((int) t.number(row, "gauge"));
            double per1000Feet = wire.resistance(Distance.feet(1000), AT_20).inOhms();
            double perKm = wire.resistance(Distance.metres(1000), AT_20).inOhms();
            assertThat(per1000Feet / t.number(row, "ohm_per_1000ft")).isCloseTo(1, within(1e-3));
            assertThat(perKm / t.number(row, "ohm_per_km")).isCloseTo(1, within(1e-3));
        }
    }

    @Test
    void copperFollowsTheTabledTemperatureFactorsToHalfAPerCent() {
        Table t = table("copper_temperature_factor.csv");
        Wire wire = Wire.ofArea(1);
        double at20 = wire.resistance(Distance.metres(1), AT_20).inOhms();
        for (Map<String, String> row : t.rows()) {
            Temperature warm = Temperature.celsius(t.number(row, "temperature_degC"));
            double factor = at20 / wire.resistance(Distance.metres(1), warm).inOhms();
            assertThat(factor).isCloseTo(t.number(row, "factor_to_20degC"), within(0.005));
        }
    }

    @Test
    void standardsAllowMoreThanSolidCopperButNotMuch() {
        for (Wire.Standard standard : Wire.Standard.values()) {
            for (double area : new double[] {0.5, 0.75, 1, 1.5, 2.5}) {
                double allowed = Wire.ofStandard(standard, area)
                        .resistance(Distance.metres(1), AT_20)
                        .inOhms();
                double solid =
                        Wire.ofArea(area).resistance(Distance.metres(1), AT_20).inOhms();
                assertThat(allowed / solid).as("%s %s mm²", standard, area).isBetween(1.03, 1.17);
            }
        }
    }

    @Test
    void vehicleCableLiesBetweenStrandedAndFlexible() {
        for (double area : new double[] {0.5, 0.75, 1, 1.5, 2.5, 4, 6}) {
            double stranded = metre(Wire.Standard.IEC_60228_CLASS_2, area);
            double flexible = metre(Wire.Standard.IEC_60228_CLASS_5, area);
            assertThat(metre(Wire.Standard.ISO_6722, area)).isBetween(stranded, flexible);
        }
    }

    @Test
    void everySizeOfVehicleCableHasTheCopperOfItsCrossSection() {
        // from memory as they are, the limits must lie 2 to 11 % above solid copper of the nominal section
        for (double area : new double[] {0.13, 0.22, 0.35, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10}) {
            double solid =
                    Wire.ofArea(area).resistance(Distance.metres(1), AT_20).inOhms();
            assertThat(metre(Wire.Standard.ISO_6722, area) / solid)
                    .as("%s mm²", area)
                    .isBetween(1.02, 1.15);
        }
    }

    private static double metre(Wire.Standard standard, double area) {
        return Wire.ofStandard(standard, area)
                .resistance(Distance.metres(1), AT_20)
                .inOhms();
    }

    @Test
    void filamentLampsDrawTheTradesCurrents() {
        Table t = table("lamp_currents.csv");
        for (Map<String, String> row : t.rows()) {
            CurrentDraw lamp = CurrentDraw.filament(
                    Voltage.volts(t.number(row, "rated_V")), Power.watts(t.number(row, "rated_W")));
            double amperes =
                    lamp.current(Voltage.volts(t.number(row, "supply_V"))).inAmperes();
            assertThat(amperes).as(row.get("lamp")).isBetween(t.number(row, "low_A"), t.number(row, "high_A"));
        }
    }

    @Test
    void filamentPowerAgreesWithItsOwnPublishedExponentNearTheRating() {
        // power exponent 1.6 (seen, general encyclopedia) beside 1 + 0.55 from the current's
        CurrentDraw lamp = CurrentDraw.filament(Voltage.volts(13.5), Power.watts(26.5));
        for (double v : new double[] {12.15, 13.5, 14.85}) {
            double published = 26.5 * Math.pow(v / 13.5, 1.6);
            assertThat(lamp.power(Voltage.volts(v)).inWatts() / published).isCloseTo(1, within(0.01));
        }
    }

    @Test
    void filamentCurrentFollowsTheHeatBalanceAndKeepsThePublishedExponentOnlyNearItsRating() {
        FilamentLamp bulb = BulbCatalogue.published("P21W").majorLamp().build();
        CurrentDraw lamp = CurrentDraw.filament(bulb);
        for (double v : new double[] {0.5, 5.5, 9, 13.5, 16}) {
            FilamentOnset onset = bulb.switchOn(SupplyConditions.of(Voltage.volts(v)));
            assertThat(lamp.current(Voltage.volts(v)).inAmperes())
                    .isCloseTo(onset.steadyCurrent().inAmperes(), within(1e-9));
        }
        double rated = lamp.current(Voltage.volts(13.5)).inAmperes();
        double exponent =
                VoltageRerating.laws(VoltageRerating.Quantity.CURRENT).get(0).exponentLow();
        assertThat(lamp.current(Voltage.volts(12)).inAmperes())
                .isCloseTo(rated * Math.pow(12 / 13.5, exponent), withinPercentage(0.5));
        assertThat(lamp.current(Voltage.volts(5.5)).inAmperes() / (rated * Math.pow(5.5 / 13.5, exponent)))
                .isBetween(1.03, 1.06);
        assertThat(lamp.current(Voltage.volts(0)).inAmperes()).isZero();
    }

    @Test
    void substituteLampCurrentsFallInTheRegulationsWindow() {
        Table t = table("r128_current_window.csv");
        OutageMonitor monitor = OutageMonitor.between(
                Current.milliamperes(10), Current.milliamperes(30), Voltage.volts(9), Voltage.volts(16));
        for (Map<String, String> row : t.rows()) {
            CurrentDraw lamp =
                    CurrentDraw.ledRegulated(Current.milliamperes(t.number(row, "current_mA")), Voltage.volts(8));
            assertThat(monitor.judge(lamp).outcome())
                    .as(row.get("current_mA"))
                    .isEqualTo(Outcome.valueOf(row.getOrDefault("expected", "")));
        }
    }

    @Test
    void diodesDropWhatModelsSayAndNoMoreThanDataSheetsAllow() {
        Table t = table("diode_forward.csv");
        for (Map<String, String> row : t.rows()) {
            ShockleyDiode diode = ShockleyDiode.of(
                    Current.amperes(t.number(row, "saturation_A")),
                    t.number(row, "ideality"),
                    Resistance.ohms(t.number(row, "series_ohm")),
                    Temperature.kelvin(300),
                    Source.seen("public circuit-model lists", ""));
            double volts = diode.voltageV(t.number(row, "current_A"));
            assertThat(volts).as(row.get("type")).isCloseTo(t.number(row, "typical_V"), within(0.006));
            assertThat(volts).isLessThan(t.number(row, "highest_V"));
        }
    }

    @Test
    void flashRatesAverageAsTheAuthorityDoes() {
        Table t = table("flash_rates.csv");
        for (Map<String, String> row : t.rows()) {
            FlashRate mean = FlashRate.meanOfCycles(List.of(
                    TimeSpan.millis(t.number(row, "cycle1_ms")),
                    TimeSpan.millis(t.number(row, "cycle2_ms")),
                    TimeSpan.millis(t.number(row, "cycle3_ms"))));
            assertThat(mean.inPerMinute()).isCloseTo(t.number(row, "average_per_min"), within(0.05));
            assertThat(FlashRate.SAE_J945.contains(mean)).isEqualTo(Boolean.parseBoolean(row.get("within_band")));
        }
    }

    @Test
    void powerResistorsDerateAsTheirSheetsSay() {
        Table t = table("power_resistor.csv");
        for (Map<String, String> row : t.rows()) {
            ResistorRating rating = new ResistorRating(
                    Power.watts(t.number(row, "rated_W")),
                    Temperature.celsius(25),
                    Temperature.celsius(200),
                    t.number(row, "element_to_surface_K_per_W"),
                    t.number(row, "surface_to_ambient_K_per_W"));
            double allowed = rating.allowed(Temperature.celsius(t.number(row, "ambient_degC")))
                    .inWatts();
            assertThat(allowed).isCloseTo(t.number(row, "allowed_W"), within(0.01));
        }
    }

    @Test
    void sixOhmOnTheStandardSinkWarmsByAHundredAndSixKelvin() {
        // 3.5 K/W (seen) times 30.4 W (derived)
        HeatCheck heat = LoadResistor.of(Resistance.ohms(6), 0, ResistorRating.aluminiumHoused50WOnStandardSink())
                .heat(Voltage.volts(13.5), Temperature.celsius(25));
        assertThat(heat.surface().inCelsius() - 25).isCloseTo(106, within(0.5));
        assertThat(heat.withinRating()).isTrue();
    }
}
