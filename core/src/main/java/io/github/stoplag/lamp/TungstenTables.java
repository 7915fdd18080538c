package io.github.stoplag.lamp;

import io.github.stoplag.source.Table;
import java.util.List;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * Which published tables of tungsten's resistivity, total emissivity and specific heat a filament is computed with.
 *
 * <p>Sets are swapped whole: a cold value of one never meets a hot value of another. They differ by 3 % in resistivity,
 * 9 % in emissivity and up to 25 % in specific heat near melting, and so in the times of a filament: an uncertainty
 * that no measurement at hand decides, and an entry of its own in a budget. Light and density are the same in all.
 *
 * <pre>{@code
 * FilamentLamp.Builder bulb = FilamentLamp.builder(Voltage.volts(12.8), Power.watts(26.9))
 *         .filamentTemperature(Temperature.kelvin(2740));
 * SupplyConditions on = SupplyConditions.of(Voltage.volts(12.8));
 * double fitsS = bulb.build().switchOn(on).timeToLevelS(0.5).orElseThrow();
 * double classicS = bulb.tungsten(TungstenTables.CLASSIC).build().switchOn(on).timeToLevelS(0.5).orElseThrow();
 * Math.round(100 * (classicS / fitsS - 1)); // -6
 * }</pre>
 */
public enum TungstenTables {
    /** The fits of {@link Tungsten}: White and Minges 1997, Tolias 2017, Milner 2024 (seen); the usual ones. */
    FITS {
        @Override
        public double resistivityOhmM(double temperatureK) {
            return Tungsten.resistivityOhmM(temperatureK);
        }

        @Override
        public double totalEmissivityRatio(double temperatureK) {
            return Tungsten.totalEmissivityRatio(temperatureK);
        }

        @Override
        public double specificHeatJPerKgK(double temperatureK) {
            return Tungsten.specificHeatJPerKgK(temperatureK);
        }

        @Override
        List<String> basis() {
            return Tungsten.basis();
        }
    },
    /**
     * The tables before them: resistivity of Jones 1926 (seen), total emissivity of Forsythe and Worthing 1925 (from
     * memory), specific heat of NIST-JANAF 1998 (seen); a cubic spline through {@code tungsten_classic.csv}, a straight
     * line below 300 K and above 3600 K.
     */
    CLASSIC {
        @Override
        public double resistivityOhmM(double temperatureK) {
            return 1e-8 * Classic.at(Classic.RESISTIVITY, temperatureK);
        }

        @Override
        public double totalEmissivityRatio(double temperatureK) {
            return Classic.at(Classic.TOTAL_EMISSIVITY, temperatureK);
        }

        @Override
        public double specificHeatJPerKgK(double temperatureK) {
            return Classic.at(Classic.SPECIFIC_HEAT, temperatureK);
        }

        @Override
        List<String> basis() {
            return List.of("tungsten " + Classic.TABLE.source());
        }
    };

    /**
     * Gives the electrical resistivity.
     *
     * @param temperatureK the temperature in kelvin
     * @return ρ in Ω·m
     * @throws IllegalArgumentException if the temperature is not in [200, 3695] K
     */
    public abstract double resistivityOhmM(double temperatureK);

    /**
     * Gives the total hemispherical emissivity.
     *
     * @param temperatureK the temperature in kelvin
     * @return ε, a plain ratio
     * @throws IllegalArgumentException if the temperature is not in [200, 3695] K
     */
    public abstract double totalEmissivityRatio(double temperatureK);

    /**
     * Gives the specific heat capacity.
     *
     * @param temperatureK the temperature in kelvin
     * @return c in J/(kg·K)
     * @throws IllegalArgumentException if the temperature is not in [200, 3695] K
     */
    public abstract double specificHeatJPerKgK(double temperatureK);

    /** The statements on which the tables rest, for a result's basis. */
    abstract List<String> basis();

    /** The table, read once and only where it is asked for. */
    private static final class Classic {
        static final Table TABLE = Table.read(TungstenTables.class, "tungsten_classic.csv");
        static final PolynomialSplineFunction RESISTIVITY = spline("resistivity_uohm_cm");
        static final PolynomialSplineFunction TOTAL_EMISSIVITY = spline("total_emissivity_ratio");
        static final PolynomialSplineFunction SPECIFIC_HEAT = spline("specific_heat_J_per_kgK");

        private static PolynomialSplineFunction spline(String column) {
            return new SplineInterpolator().interpolate(TABLE.numbers("temperature_K"), TABLE.numbers(column));
        }

        static double at(PolynomialSplineFunction spline, double temperatureK) {
            double[] knots = spline.getKnots();
            double kelvin = Math.min(knots[knots.length - 1], Math.max(knots[0], Tungsten.checked(temperatureK)));
            double value = spline.value(kelvin);
            return kelvin == temperatureK
                    ? value
                    : value
                            + (temperatureK - kelvin)
                                    * spline.polynomialSplineDerivative().value(kelvin);
        }
    }
}
