package io.github.stoplag.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.source.Table;
import org.apache.commons.math3.analysis.interpolation.AkimaSplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.junit.jupiter.api.Test;

class PhotometryTest {
    private static final Table EYE = Table.read(Photometry.class, "photopic_efficiency.csv");
    private static final PolynomialSplineFunction V =
            new AkimaSplineInterpolator().interpolate(EYE.numbers("wavelength_nm"), EYE.numbers("v_ratio"));

    @Test
    void theTableIsTheStandardEye() {
        // published: V(555 nm) = 1, the sum over 5 nm steps is 106.857 nm
        assertThat(V.value(555)).isEqualTo(1);
        double sum = 0;
        for (double v : EYE.numbers("v_ratio")) {
            sum += 5 * v;
        }
        assertThat(sum).isCloseTo(106.857, within(5e-4));
    }

    @Test
    void aTungstenSurfaceAgreesWithAnIntegralOverASmoothEye() {
        for (double kelvin : new double[] {1200, 1800, 2500, 2800, 3300}) {
            double integral = 0;
            for (double nm = 380.05; nm < 780; nm += 0.1) {
                // the first and second radiation constants as published, not worked out from h, c and k
                integral += 1e-10
                        * V.value(nm)
                        * Tungsten.spectralEmissivityRatio(nm, kelvin)
                        * 3.741771852e-16
                        / Math.PI
                        / Math.pow(nm * 1e-9, 5)
                        / Math.expm1(1.438776877e-2 / (nm * 1e-9 * kelvin));
            }
            assertThat(Photometry.tungsten(Lens.CLEAR)
                            .luminance(Temperature.kelvin(kelvin))
                            .inCdPerM2())
                    .as("at %s K", kelvin)
                    .isCloseTo(683 * integral, withinPercentage(0.1));
        }
    }

    @Test
    void lightRisesWithTemperatureEverywhere() {
        for (Lens lens : Lens.values()) {
            Photometry photometry = Photometry.tungsten(lens);
            for (double kelvin = 201; kelvin <= 3695; kelvin += 0.5) {
                assertThat(photometry.logLuminance(kelvin)).isGreaterThan(photometry.logLuminance(kelvin - 0.5));
            }
        }
    }

    @Test
    void temperatureIsTheInverseOfLuminance() {
        Photometry red = Photometry.tungsten(Lens.RED);
        assertThat(red.temperatureK(red.logLuminance(1234.5), 300, 2800)).isCloseTo(1234.5, within(1e-9));
    }

    @Test
    void aRedLensTakesMostOfTheLight() {
        double share = Math.exp(Photometry.tungsten(Lens.RED).logLuminance(2800)
                - Photometry.tungsten(Lens.CLEAR).logLuminance(2800));
        assertThat(share).isBetween(0.1, 0.4);
    }

    @Test
    void refusesTemperaturesOutsideTheTables() {
        assertThatThrownBy(() -> Photometry.blackBody().luminance(Temperature.kelvin(5000)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("temperature of a glowing surface must be in [200, 3695] K, got 5000 K");
    }
}
