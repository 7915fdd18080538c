package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.stoplag.source.Table;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TungstenTest {
    private static final Table HANDBOOK = Table.read(TungstenTest.class, "tungsten_handbook.csv");

    @Test
    void resistivityAgreesWithAnIndependentTable() {
        for (Map<String, String> row : HANDBOOK.rows()) {
            double kelvin = HANDBOOK.number(row, "temperature_K");
            assertThat(1e8 * Tungsten.resistivityOhmM(kelvin))
                    .as("ρ at %s K", kelvin)
                    .isCloseTo(HANDBOOK.number(row, "rho_uohm_cm"), withinPercentage(3.3));
        }
    }

    @Test
    void specificHeatAgreesWithAnIndependentFit() {
        for (Map<String, String> row : HANDBOOK.rows()) {
            double kelvin = HANDBOOK.number(row, "temperature_K");
            if (kelvin <= 3200) {
                assertThat(Tungsten.specificHeatJPerKgK(kelvin))
                        .as("c at %s K", kelvin)
                        .isCloseTo(HANDBOOK.number(row, "cp_J_per_kgK"), withinPercentage(5));
            }
        }
    }

    @Test
    void totalEmissivityAgreesWithTheClassicTableWithinTheSpreadOfSources() {
        for (Map<String, String> row : HANDBOOK.rows()) {
            double kelvin = HANDBOOK.number(row, "temperature_K");
            if (kelvin >= 1000) {
                assertThat(Tungsten.totalEmissivityRatio(kelvin))
                        .as("ε at %s K", kelvin)
                        .isCloseTo(HANDBOOK.number(row, "eps_ratio"), withinPercentage(8));
            }
        }
    }

    @Test
    void spectralEmissivityAgreesWithTheClassicTable() {
        for (Map<String, String> row : HANDBOOK.rows()) {
            double kelvin = HANDBOOK.number(row, "temperature_K");
            if (kelvin >= 1000) {
                assertThat(Tungsten.spectralEmissivityRatio(665, kelvin))
                        .as("ε(665 nm) at %s K", kelvin)
                        .isCloseTo(HANDBOOK.number(row, "eps665_ratio"), withinPercentage(2));
            }
        }
    }

    @Test
    void theBandsOfTheSpectralEmissivityMeet() {
        for (double joinNm : new double[] {420, 480, 580, 640, 760}) {
            double below = Tungsten.spectralEmissivityRatio(joinNm, 2400);
            double above = Tungsten.spectralEmissivityRatio(joinNm + 1e-6, 2400);
            assertThat(below).as("at %s nm", joinNm).isCloseTo(above, within(0.002));
        }
    }

    @Test
    void densityStartsAtTheHandbookValueAndFalls() {
        assertThat(Tungsten.densityKgPerM3(293.15)).isEqualTo(19250);
        assertThat(Tungsten.densityKgPerM3(2800)).isCloseTo(18423, within(15.0));
    }

    @Test
    void refusesTemperaturesBeyondTheMeltingPointAndOtherBadInput() {
        assertThatThrownBy(() -> Tungsten.resistivityOhmM(3700))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("tungsten temperature must be in [200, 3695] K, got 3700 K");
        assertThatThrownBy(() -> Tungsten.specificHeatJPerKgK(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("tungsten temperature must be in [200, 3695] K, got NaN K");
        assertThatThrownBy(() -> Tungsten.spectralEmissivityRatio(1000, 2000))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("wavelength must be in [300, 940] nm, got 1000 nm");
    }
}
