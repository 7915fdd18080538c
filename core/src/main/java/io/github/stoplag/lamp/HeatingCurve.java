package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import java.util.Arrays;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * The filament's temperature against time after a step of supply voltage.
 *
 * <p>C(T) dT/dt = N(T), N = I² R(T) − loss(T), I = U/(R(T) + Rs). The time does not stand on the right, so
 * t(T) = ∫ C/N dT. With T = Ts − (Ts − Ti) e^(−u), where N(Ts) = 0, this is t = ∫ C (Ts − T)/N du, whose integrand stays
 * smooth and finite up to the steady state: Gauss-Legendre on panels of u gives t at their ends, and Newton inside one
 * panel turns it round.
 *
 * <p>Symbols: C heat capacity in J/K; U supply in V; Rs series resistance in Ω; Ti initial and Ts steady temperature in K;
 * u dimensionless.
 */
final class HeatingCurve {
    private static final double[] U_ENDS = panels();
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(10);
    private static final double SCAN_K = 20;
    private static final double LEAST_SPAN_K = 0.01;

    private final String label;
    private final FilamentWire wire;
    private final double supplyV;
    private final double seriesOhm;
    private final double ambientK;
    private final double initialK;
    private final double steadyK;
    private final double spanK;
    private final double nearK;
    private final double[] nearSlope;
    private final double[] timeEndsS;

    HeatingCurve(FilamentLamp lamp, SupplyConditions conditions) {
        label = lamp.label();
        wire = lamp.wire();
        supplyV = conditions.supply().inVolts();
        seriesOhm = conditions.seriesResistance().inOhms();
        ambientK = conditions.ambientTemperature().inKelvin();
        initialK = conditions.initialTemperature().inKelvin();
        steadyK = steady(Math.min(ambientK, initialK));
        spanK = steadyK - initialK;
        if (!(spanK >= LEAST_SPAN_K)) {
            throw new IllegalArgumentException("initial filament temperature must be at least 0.01 K below the "
                    + Numbers.text(steadyK) + " K at which " + conditions.supply() + " holds the filament, got "
                    + conditions.initialTemperature());
        }
        nearK = Math.min(2, spanK / 50);
        nearSlope = nearSlope();
        timeEndsS = timeEnds();
    }

    double initialK() {
        return initialK;
    }

    double steadyK() {
        return steadyK;
    }

    double currentA(double temperatureK) {
        return supplyV / (wire.resistanceOhm(temperatureK) + seriesOhm);
    }

    /** Gives the temperature at a time; before 0 the filament is as it was. */
    double temperatureK(double timeS) {
        if (!(timeS > 0)) {
            return initialK;
        }
        return steadyK - spanK * Math.exp(-uAt(timeS));
    }

    /** Gives the time at which the filament passes a temperature between the initial and the steady one. */
    double timeS(double temperatureK) {
        double rest = (steadyK - temperatureK) / spanK;
        double last = U_ENDS[U_ENDS.length - 1];
        double u = rest > Math.exp(-last) ? -Math.log(rest) : last;
        return u <= 0 ? 0 : timeAtU(u);
    }

    private double netW(double temperatureK) {
        double ohm = wire.resistanceOhm(temperatureK);
        double ampere = supplyV / (ohm + seriesOhm);
        return ampere * ampere * ohm - wire.lossW(temperatureK, ambientK);
    }

    /** Walks up from the cold end, so that the first steady state met on heating is the one found. */
    private double steady(double fromK) {
        double lo = fromK;
        while (lo < FilamentWire.HIGHEST_K) {
            double hi = Math.min(lo + SCAN_K, FilamentWire.HIGHEST_K);
            if (netW(hi) <= 0) {
                return netW(lo) <= 0 ? lo : new BrentSolver(1e-15, 1e-12).solve(200, this::netW, lo, hi);
            }
            lo = hi;
        }
        double ohm = wire.resistanceOhm(FilamentWire.HIGHEST_K);
        double limitV = (ohm + seriesOhm) * Math.sqrt(wire.lossW(FilamentWire.HIGHEST_K, ambientK) / ohm);
        throw new IllegalArgumentException("supply voltage of " + label + " must be below "
                + Numbers.text(limitV, 4) + " V, at which the filament reaches 3600 K, the end of the tungsten tables"
                + " (it melts at 3695 K), got " + Numbers.text(supplyV) + " V");
    }

    /** Fits N/(Ts − T) near Ts by a cubic, since there the quotient itself loses digits. */
    private double[] nearSlope() {
        double[] c = new double[4];
        for (int i = 0; i < 4; i++) {
            double d = nearK * (i + 1);
            c[i] = netW(steadyK - d) / d;
        }
        for (int order = 1; order < 4; order++) {
            for (int i = 3; i >= order; i--) {
                c[i] = (c[i] - c[i - 1]) / (order * nearK);
            }
        }
        return c;
    }

    private double slopeWPerK(double belowSteadyK) {
        if (belowSteadyK >= nearK) {
            return netW(steadyK - belowSteadyK) / belowSteadyK;
        }
        double[] c = nearSlope;
        return c[0]
                + (belowSteadyK - nearK)
                        * (c[1] + (belowSteadyK - 2 * nearK) * (c[2] + (belowSteadyK - 3 * nearK) * c[3]));
    }

    private double secondsPerU(double u) {
        double belowSteadyK = spanK * Math.exp(-u);
        return wire.heatCapacityJPerK(steadyK - belowSteadyK) / slopeWPerK(belowSteadyK);
    }

    private double integralS(double fromU, double toU) {
        double half = (toU - fromU) / 2;
        double mid = (toU + fromU) / 2;
        return half * RULE.integrate(x -> secondsPerU(mid + half * x));
    }

    private static double[] panels() {
        double[] ends = new double[65];
        for (int i = 1; i < ends.length; i++) {
            // fine where the cold filament's properties change fast, coarse in the exponential tail
            ends[i] = ends[i - 1] + (i <= 16 ? 0.125 : i <= 32 ? 0.25 : 1);
        }
        return ends;
    }

    private double[] timeEnds() {
        double[] ends = new double[U_ENDS.length];
        for (int i = 1; i < ends.length; i++) {
            ends[i] = ends[i - 1] + integralS(U_ENDS[i - 1], U_ENDS[i]);
        }
        return ends;
    }

    private double timeAtU(double u) {
        int found = Arrays.binarySearch(U_ENDS, u);
        int panel = found >= 0 ? found : -found - 2;
        return timeEndsS[panel] + integralS(U_ENDS[panel], u);
    }

    private double uAt(double timeS) {
        Check.inRange("time after switch-on", timeS, 0, Double.POSITIVE_INFINITY, "s");
        int found = Arrays.binarySearch(timeEndsS, timeS);
        int panel = found >= 0 ? found : -found - 2;
        if (panel >= U_ENDS.length - 1) {
            return Double.POSITIVE_INFINITY;
        }
        double lo = U_ENDS[panel];
        double hi = U_ENDS[panel + 1];
        double u = lo + (hi - lo) * (timeS - timeEndsS[panel]) / (timeEndsS[panel + 1] - timeEndsS[panel]);
        for (int i = 0; i < 20; i++) {
            double step = (timeS - timeEndsS[panel] - integralS(lo, u)) / secondsPerU(u);
            u = Math.min(hi, Math.max(lo, u + step));
            if (Math.abs(step) <= 1e-14 * hi) {
                break;
            }
        }
        return u;
    }
}
