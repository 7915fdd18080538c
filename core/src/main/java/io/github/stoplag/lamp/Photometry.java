package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Luminance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.source.Table;
import java.util.Map;
import java.util.Objects;
import java.util.function.DoubleBinaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * The luminance of a glowing surface against its temperature, as the standard eye sees it by day.
 *
 * <p>L(T) = Km ∫ ε(λ, T) · τ(λ) · V(λ) · Lλ(λ, T) dλ, with Planck's radiance Lλ = 2hc²/λ⁵ / (exp(hc/(λkT)) − 1).
 *
 * <p>Symbols: L luminance in cd/m²; Km = 683 lm/W; ε spectral emissivity (1 for a black body, {@link
 * Tungsten#spectralEmissivityRatio} for tungsten); τ transmission of the lens; V(λ) the CIE 1924 photopic efficiency,
 * 380 to 780 nm in 5 nm steps; h, c, k the exact constants of the SI. Range [200, 3695] K.
 *
 * <p>The sum over the spectrum is taken once, at 16 Chebyshev points in each of six pieces of T^(−1/2); between them ln
 * L + a/T is a polynomial that repeats the sum to about 1e-12.
 */
public final class Photometry {
    private static final double KM_LM_PER_W = 683;
    private static final double PLANCK_JS = 6.62607015e-34;
    private static final double LIGHT_MPS = 299792458;
    private static final double BOLTZMANN_JPERK = 1.380649e-23;
    private static final double SECOND_RADIATION_MK = PLANCK_JS * LIGHT_MPS / BOLTZMANN_JPERK;
    private static final double STEP_NM = 5;
    private static final double BLUE_NM = 450;
    private static final double RED_NM = 650;
    private static final int POINTS = 16;
    private static final int PIECES = 6;
    private static final int SECANT_STEPS = 12;
    /** The last digits of ln L near 1e2. */
    private static final double ROUNDING = 2e-14;
    /** Takes the steep part out of ln L, whose slope in 1/T is near −c2/λ at the eye's peak. */
    private static final double WIEN_K = SECOND_RADIATION_MK / 560e-9;

    private static final double X_HOT = 1 / Math.sqrt(Tungsten.MELTING_POINT_K);
    private static final double X_COLD = 1 / Math.sqrt(Tungsten.LOWEST_K);
    private static final double PIECE = (X_COLD - X_HOT) / PIECES;

    private static final Photometry BLACK_BODY = new Photometry((nm, kelvin) -> 1, Lens.CLEAR);
    private static final Map<Lens, Photometry> TUNGSTEN = Map.of(
            Lens.CLEAR, new Photometry(Tungsten::spectralEmissivityRatio, Lens.CLEAR),
            Lens.RED, new Photometry(Tungsten::spectralEmissivityRatio, Lens.RED));

    private final double[][] chebyshev = new double[PIECES][];

    private Photometry(DoubleBinaryOperator emissivity, Lens lens) {
        Table table = Table.read(Photometry.class, "photopic_efficiency.csv");
        double[] nm = table.numbers("wavelength_nm");
        double[] weight = table.numbers("v_ratio");
        double[] transmission = lens.transmissionRatio(nm);
        for (int i = 0; i < nm.length; i++) {
            weight[i] *= transmission[i];
        }
        for (int piece = 0; piece < PIECES; piece++) {
            double[] value = new double[POINTS];
            for (int j = 0; j < POINTS; j++) {
                double x = Math.cos(Math.PI * (j + 0.5) / POINTS);
                double root = X_HOT + PIECE * (piece + (x + 1) / 2);
                double temperatureK =
                        Math.min(Tungsten.MELTING_POINT_K, Math.max(Tungsten.LOWEST_K, 1 / (root * root)));
                value[j] = Math.log(sum(nm, weight, emissivity, temperatureK)) + WIEN_K / temperatureK;
            }
            chebyshev[piece] = coefficients(value);
        }
    }

    /**
     * Gives the photometry of a tungsten surface behind a lens.
     *
     * @param lens the lens
     * @return its photometry
     */
    public static Photometry tungsten(Lens lens) {
        Objects.requireNonNull(lens, "lens");
        Photometry result = TUNGSTEN.get(lens);
        if (result == null) {
            throw new IllegalStateException("no photometry for " + lens);
        }
        return result;
    }

    /**
     * Gives the photometry of a black body.
     *
     * @return its photometry
     */
    public static Photometry blackBody() {
        return BLACK_BODY;
    }

    /**
     * Gives the luminance at a temperature.
     *
     * @param temperature the temperature of the surface
     * @return L(T)
     * @throws IllegalArgumentException if the temperature is not in [200, 3695] K
     */
    public Luminance luminance(Temperature temperature) {
        double kelvin = Check.inRange(
                "temperature of a glowing surface",
                temperature.inKelvin(),
                Tungsten.LOWEST_K,
                Tungsten.MELTING_POINT_K,
                "K");
        return Luminance.cdPerM2(Math.exp(logLuminance(kelvin)));
    }

    /**
     * Gives the temperature of the black body whose light has the colour of glowing tungsten: equal ratio of blue to
     * red.
     *
     * <p>1/Tc = 1/T − ln(ε(λb)/ε(λr))/(c2 (1/λb − 1/λr)), λb = 450 nm, λr = 650 nm, c2 = hc/k, by Wien's law;
     * tungsten's emissivity falls from blue to red, so Tc lies some 50 K above T at 2800 K.
     *
     * @param tungsten the true temperature T of the tungsten, [200, 3695] K
     * @return Tc
     * @throws IllegalArgumentException if the temperature is out of range
     */
    public static Temperature colourTemperature(Temperature tungsten) {
        Objects.requireNonNull(tungsten, "tungsten");
        double kelvin = tungsten.inKelvin();
        double logRatio = Math.log(
                Tungsten.spectralEmissivityRatio(BLUE_NM, kelvin) / Tungsten.spectralEmissivityRatio(RED_NM, kelvin));
        double inverse = 1 / kelvin - logRatio / (SECOND_RADIATION_MK * 1e9 * (1 / BLUE_NM - 1 / RED_NM));
        return Temperature.kelvin(1 / inverse);
    }

    /**
     * Gives the natural logarithm of the luminance in cd/m².
     *
     * @param temperatureK the temperature in kelvin
     * @return ln L
     */
    double logLuminance(double temperatureK) {
        double place = (1 / Math.sqrt(temperatureK) - X_HOT) / PIECE;
        int piece = Math.min(PIECES - 1, Math.max(0, (int) place));
        double x = 2 * (place - piece) - 1;
        double[] c = chebyshev[piece];
        double b1 = 0;
        double b2 = 0;
        for (int k = POINTS - 1; k > 0; k--) {
            double b0 = c[k] + 2 * x * b1 - b2;
            b2 = b1;
            b1 = b0;
        }
        return c[0] + x * b1 - b2 - WIEN_K / temperatureK;
    }

    /**
     * Finds the temperature at which the surface has a luminance.
     *
     * @param logLuminance the natural logarithm of the luminance in cd/m²
     * @param loK a temperature that is not bright enough
     * @param hiK a temperature that is bright enough
     * @return the temperature in kelvin
     */
    double temperatureK(double logLuminance, double loK, double hiK) {
        // in 1/T the curve is almost straight, so the secant rule ends in a few steps
        double previous = 1 / hiK;
        double previousOff = logLuminance(hiK) - logLuminance;
        double inverse = previous + previousOff / WIEN_K;
        for (int i = 0; i < SECANT_STEPS; i++) {
            if (!(inverse >= 1 / hiK && inverse <= 1 / loK)) {
                break;
            }
            double off = logLuminance(1 / inverse) - logLuminance;
            double step = off * (inverse - previous) / (off - previousOff);
            if (Math.abs(off) < ROUNDING || !(Math.abs(step) > 1e-15 * inverse)) {
                return 1 / inverse;
            }
            // the next error is the product of the last two, scaled by a curvature far below 1
            if (Math.abs(step * (inverse - previous)) < 1e-16 * inverse * inverse) {
                return 1 / (inverse - step);
            }
            previous = inverse;
            previousOff = off;
            inverse -= step;
        }
        double bracketed =
                new BrentSolver(1e-15, 1e-18).solve(100, y -> logLuminance(1 / y) - logLuminance, 1 / hiK, 1 / loK);
        return Math.min(hiK, Math.max(loK, 1 / bracketed));
    }

    private static double sum(double[] nm, double[] weight, DoubleBinaryOperator emissivity, double temperatureK) {
        double sum = 0;
        for (int i = 0; i < nm.length; i++) {
            double lambdaM = nm[i] * 1e-9;
            double planck = 2
                    * PLANCK_JS
                    * LIGHT_MPS
                    * LIGHT_MPS
                    / Math.pow(lambdaM, 5)
                    / Math.expm1(SECOND_RADIATION_MK / (lambdaM * temperatureK));
            sum += weight[i] * planck * emissivity.applyAsDouble(nm[i], temperatureK);
        }
        return KM_LM_PER_W * sum * STEP_NM * 1e-9;
    }

    private static double[] coefficients(double[] value) {
        double[] result = new double[POINTS];
        for (int k = 0; k < POINTS; k++) {
            double sum = 0;
            for (int j = 0; j < POINTS; j++) {
                sum += value[j] * Math.cos(k * Math.PI * (j + 0.5) / POINTS);
            }
            result[k] = (k == 0 ? 1 : 2) * sum / POINTS;
        }
        return result;
    }
}
