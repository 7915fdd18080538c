package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import io.github.stoplag.source.Validity;
import java.util.List;
import java.util.Map;

/**
 * The properties of solid tungsten that a filament's heating and light depend on.
 *
 * <p>Resistivity ρ(T), specific heat c(T), total hemispherical emissivity ε(T) and density are polynomials in the
 * temperature; normal spectral emissivity ε(λ, T) is a quadratic in wavelength by band. Coefficients, ranges and
 * sources stand in {@code tungsten_polynomials.csv} and {@code tungsten_spectral_emissivity.csv} beside this class.
 *
 * <p>Symbols: T temperature in K, λ wavelength in nm. Possible range of T: [200, 3695] K, up to the melting point; the
 * fits were validated in {@link #validity()}. Published total emissivities differ by ±8 % between sources:
 * {@link TungstenTables} computes a filament with others, to tell what the choice is worth.
 */
public final class Tungsten {
    /** Melting point in kelvin (Tolias 2017; NIST-JANAF 1998). */
    public static final double MELTING_POINT_K = 3695;

    /** Lowest temperature in kelvin for which the fits are evaluated: a lamp left in arctic cold. */
    static final double LOWEST_K = 200;

    private static final Table POLYNOMIALS = Table.read(Tungsten.class, "tungsten_polynomials.csv");
    private static final List<String> BASIS = statements();
    private static final double[] RESISTIVITY = coefficients("resistivity");
    private static final double[] SPECIFIC_HEAT = coefficients("specific_heat");
    private static final double[] TOTAL_EMISSIVITY = coefficients("total_emissivity");
    private static final double[] DENSITY = coefficients("density");
    private static final List<Band> BANDS = bands();

    private Tungsten() {}

    /**
     * Gives the electrical resistivity, cold and hot from one fit.
     *
     * <p>ρ = c0 + c1·T + c2·T² + c3·T³ + c4·T⁴ (White &amp; Minges 1997, 300 to 3695 K).
     *
     * @param temperatureK the temperature T in kelvin
     * @return ρ in Ω·m
     * @throws IllegalArgumentException if the temperature is not in [200, 3695] K
     */
    public static double resistivityOhmM(double temperatureK) {
        return 1e-8 * polynomial(RESISTIVITY, checked(temperatureK));
    }

    /**
     * Gives the specific heat capacity.
     *
     * <p>c = c0 + c1·x + c2·x² + c3·x³ + c4/x², x = T/1000 K (Milner 2024, 293 to 3700 K).
     *
     * @param temperatureK the temperature T in kelvin
     * @return c in J/(kg·K)
     * @throws IllegalArgumentException if the temperature is not in [200, 3695] K
     */
    public static double specificHeatJPerKgK(double temperatureK) {
        double x = checked(temperatureK) / 1000;
        double[] c = SPECIFIC_HEAT;
        return 1000 * (c[0] + x * (c[1] + x * (c[2] + x * c[3])) + c[4] / (x * x));
    }

    /**
     * Gives the total hemispherical emissivity.
     *
     * <p>ε = c0 + c1·x + c2·x², x = T − 300 K (Tolias 2017, from measurements at 300 to 1300 K and 2000 to 3400 K).
     *
     * @param temperatureK the temperature T in kelvin
     * @return ε, a plain ratio
     * @throws IllegalArgumentException if the temperature is not in [200, 3695] K
     */
    public static double totalEmissivityRatio(double temperatureK) {
        return polynomial(TOTAL_EMISSIVITY, checked(temperatureK) - 300);
    }

    /**
     * Gives the density, by thermal expansion from 19 250 kg/m³ at room temperature.
     *
     * @param temperatureK the temperature T in kelvin
     * @return the density in kg/m³
     * @throws IllegalArgumentException if the temperature is not in [200, 3695] K
     */
    public static double densityKgPerM3(double temperatureK) {
        return 1000 * polynomial(DENSITY, checked(temperatureK) - 293.15);
    }

    /**
     * Gives the normal spectral emissivity (Pon &amp; Hessler 1984 after De Vos, measured at 1600 to 2800 K; it depends
     * on temperature so weakly, by less than 6 % per 1000 K, that the straight line is used outside too).
     *
     * @param wavelengthNm the wavelength λ in nanometres
     * @param temperatureK the temperature T in kelvin
     * @return ε(λ, T), a plain ratio
     * @throws IllegalArgumentException if the wavelength is not in [300, 940] nm or the temperature not in [200, 3695]
     *     K
     */
    public static double spectralEmissivityRatio(double wavelengthNm, double temperatureK) {
        Check.inRange("wavelength", wavelengthNm, 300, 940, "nm");
        double t = (checked(temperatureK) - 2200) / 1000;
        for (Band band : BANDS) {
            if (wavelengthNm <= band.toNm) {
                return band.emissivityRatio(wavelengthNm, t);
            }
        }
        throw new IllegalStateException("tungsten_spectral_emissivity.csv must reach 940 nm");
    }

    /**
     * Gives the temperatures in which all fits rest on measurements.
     *
     * @return 300 K to 3400 K, the narrowest of the fits
     */
    public static Validity validity() {
        return new Validity(
                "tungsten temperature",
                300,
                3400,
                "K",
                Source.seen("Tolias, Nucl. Mater. Energy 13 (2017)", "resistivity and total emissivity fits"));
    }

    static double checked(double temperatureK) {
        return Check.inRange("tungsten temperature", temperatureK, LOWEST_K, MELTING_POINT_K, "K");
    }

    private static double polynomial(double[] c, double x) {
        return c[0] + x * (c[1] + x * (c[2] + x * (c[3] + x * c[4])));
    }

    private static double[] coefficients(String property) {
        for (Map<String, String> row : POLYNOMIALS.rows()) {
            if (property.equals(row.get("property"))) {
                return new double[] {
                    POLYNOMIALS.number(row, "c0"),
                    POLYNOMIALS.number(row, "c1"),
                    POLYNOMIALS.number(row, "c2"),
                    POLYNOMIALS.number(row, "c3"),
                    POLYNOMIALS.number(row, "c4")
                };
            }
        }
        throw new IllegalStateException("tungsten_polynomials.csv has no " + property);
    }

    /**
     * Gives the statements on which the properties rest, for a result's basis.
     *
     * @return one line a property
     */
    static List<String> basis() {
        return BASIS;
    }

    private static List<String> statements() {
        return POLYNOMIALS.rows().stream()
                .map(row -> "tungsten " + String.valueOf(row.get("property")).replace('_', ' ') + ": "
                        + row.get("source") + " (" + Standing.of(String.valueOf(row.get("standing"))) + ")")
                .toList();
    }

    private static List<Band> bands() {
        Table table = Table.read(Tungsten.class, "tungsten_spectral_emissivity.csv");
        return table.rows().stream()
                .map(row -> new Band(
                        table.number(row, "to_nm"),
                        table.number(row, "centre_nm"),
                        table.number(row, "a0"),
                        table.number(row, "a1"),
                        table.number(row, "b0"),
                        table.number(row, "b1"),
                        table.number(row, "b2"),
                        table.number(row, "c0"),
                        table.number(row, "c1")))
                .toList();
    }

    private record Band(
            double toNm, double centreNm, double a0, double a1, double b0, double b1, double b2, double c0, double c1) {
        double emissivityRatio(double wavelengthNm, double t) {
            double x = (wavelengthNm - centreNm) / 1000;
            return a0 + a1 * t + x * (b0 + t * (b1 + t * b2) + x * (c0 + c1 * t));
        }
    }
}
