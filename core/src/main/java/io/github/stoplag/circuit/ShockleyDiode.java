package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Source;
import java.util.Objects;

/**
 * Shockley's diode equation with a series resistance.
 *
 * <pre>
 * U = n U_T ln(1 + I/I_s) + I R_s,   U_T = k T/q
 * I = (n U_T/R_s) W(z) − I_s,        W(z): w + ln w = ln(I_s R_s/(n U_T)) + (U + I_s R_s)/(n U_T)
 * </pre>
 *
 * <p>I_s saturation current, n ideality factor, U_T thermal voltage, R_s series resistance, T junction temperature, k
 * and q the exact SI constants. The second line is the principal branch of Lambert's W written for its logarithm, so
 * that it cannot overflow. Possible ranges: I_s (0, 1] A, n [0.5, 5], R_s [0, 100] Ω, T as the parameters were found.
 * The parameters are not moved to another temperature: a silicon drop falls by about 2 mV/K (from memory).
 */
public final class ShockleyDiode implements ForwardCharacteristic {
    private static final double BOLTZMANN_J_PER_K = 1.380649e-23;
    private static final double ELEMENTARY_CHARGE_C = 1.602176634e-19;

    private final double saturationA;
    private final double slopeV;
    private final double seriesOhm;
    private final String basis;

    private ShockleyDiode(double saturationA, double slopeV, double seriesOhm, String basis) {
        this.saturationA = saturationA;
        this.slopeV = slopeV;
        this.seriesOhm = seriesOhm;
        this.basis = basis;
    }

    /**
     * Makes a diode from its parameters.
     *
     * @param saturation I_s, in (0, 1] A
     * @param idealityRatio n, in [0.5, 5]
     * @param series R_s, in [0, 100] Ω
     * @param junction the junction temperature at which the parameters hold
     * @param source where they come from
     * @return the diode
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static ShockleyDiode of(
            Current saturation, double idealityRatio, Resistance series, Temperature junction, Source source) {
        Objects.requireNonNull(junction, "junction");
        Objects.requireNonNull(saturation, "saturation");
        Objects.requireNonNull(series, "series");
        Objects.requireNonNull(source, "source");
        double is = Check.above("saturation current", saturation.inAmperes(), 0, 1, "A");
        double n = Check.inRange("ideality factor", idealityRatio, 0.5, 5, "");
        double rs = Ranges.SERIES_RESISTANCE.check(series.inOhms());
        double vt = BOLTZMANN_J_PER_K * junction.inKelvin() / ELEMENTARY_CHARGE_C;
        String basis = "diode by Shockley's equation: I_s = " + saturation + ", n = " + Numbers.text(n) + ", R_s = "
                + series + ", junction " + ResistorRating.celsius(junction) + "; " + source;
        return new ShockleyDiode(is, n * vt, rs, basis);
    }

    @Override
    public double voltageV(double currentA) {
        double i = Ranges.FORWARD_CURRENT.check("diode current", currentA);
        return slopeV * Math.log1p(i / saturationA) + i * seriesOhm;
    }

    @Override
    public double currentA(double voltageV) {
        double u = Ranges.SUPPLY.check("forward voltage", voltageV);
        if (seriesOhm == 0) {
            return Ranges.FORWARD_CURRENT.check("diode current", saturationA * Math.expm1(u / slopeV));
        }
        double drop = saturationA * seriesOhm;
        double w = lambertOfExp(Math.log(drop / slopeV) + (u + drop) / slopeV);
        double i = Math.max(0, slopeV / seriesOhm * w - saturationA);
        // near I = 0 the difference above loses its digits; one Newton step on U(I) brings them back
        double error = slopeV * Math.log1p(i / saturationA) + i * seriesOhm - u;
        return Math.max(0, i - error / (slopeV / (saturationA + i) + seriesOhm));
    }

    /** Solves w + ln w = z, which is W(e^z). */
    private static double lambertOfExp(double z) {
        double w = z > 1 ? z - Math.log(z) : Math.exp(z);
        for (int k = 0; k < 8; k++) {
            w *= (1 + z - Math.log(w)) / (1 + w);
        }
        return w;
    }

    @Override
    public Evidence evidence(double currentA) {
        return Evidence.of(basis)
                .withCaveat(
                        "the diode's parameters are kept at their junction temperature; its drop falls as it warms");
    }
}
