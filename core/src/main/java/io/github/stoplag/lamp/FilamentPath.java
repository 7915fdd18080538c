package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Numbers;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * The way of a filament from one temperature to its steady one under a constant supply, up or down.
 *
 * <p>The time does not stand on the right of the heat balance C dT/dt = N(T), so t(T) = ∫ C/N dT. With T = Ts − (Ts −
 * Ti) e^(−u), where N(Ts) = 0, this is t = ∫ C (Ts − T)/N du, whose integrand stays smooth and finite up to the steady
 * state: Gauss-Legendre on panels of u.
 *
 * <p>Symbols: C heat capacity in J/K; N net power in W; Ti initial and Ts steady temperature in K; u dimensionless.
 */
final class FilamentPath {
    /** Ends of the panels: fine where a cold filament's properties change fast, coarse in the exponential tail. */
    static final double[] U_ENDS = {0, 0.3, 1, 2, 3.5, 5.5, 8, 11, 15, 20, 26};

    private static final double U_LAST = U_ENDS[U_ENDS.length - 1];
    private static final int SECANT_STEPS = 30;
    /** Below this the filament does not move: the quotient of the balance has no digits left. */
    private static final double LEAST_SPAN_K = 0.01;

    private static final int POINTS = 10;
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(POINTS);
    private static final double[] NODE =
            IntStream.range(0, POINTS).mapToDouble(RULE::getPoint).toArray();
    private static final double[] WEIGHT =
            IntStream.range(0, POINTS).mapToDouble(RULE::getWeight).toArray();

    private final HeatBalance balance;
    private final FilamentWire wire;
    private final double supplyV;
    private final double initialK;
    private final double steadyK;
    private final double spanK;
    private final double nearK;
    private final double[] nearSlope;

    private FilamentPath(HeatBalance balance, double supplyV, double initialK, double steadyK) {
        this.balance = balance;
        this.wire = balance.wire();
        this.supplyV = supplyV;
        this.initialK = initialK;
        this.steadyK = steadyK;
        spanK = Math.abs(steadyK - initialK) < LEAST_SPAN_K ? 0 : steadyK - initialK;
        nearK = Math.copySign(Math.min(2, Math.abs(spanK) / 50), spanK);
        nearSlope = spanK == 0 ? new double[4] : nearSlope();
    }

    /**
     * Makes the way to the steady temperature.
     *
     * @throws IllegalArgumentException if the filament runs up to 3600 K without balance
     */
    static FilamentPath of(String label, HeatBalance balance, double supplyV, double initialK) {
        return new FilamentPath(balance, supplyV, initialK, steady(label, balance, supplyV));
    }

    /**
     * Finds where gain and loss balance. There is one such temperature: with rising temperature the loss grows faster
     * than linearly in T − T0, the gain at most as the resistivity, that is as T^1.2.
     */
    private static double steady(String label, HeatBalance balance, double supplyV) {
        double coldK = balance.ambientK();
        if (supplyV == 0) {
            return coldK;
        }
        double hotK = FilamentWire.HIGHEST_K;
        if (balance.netW(hotK, supplyV) > 0) {
            throw new IllegalArgumentException("supply voltage of " + label + " must be below "
                    + Numbers.text(balance.holdingV(hotK), 4)
                    + " V, at which the filament reaches 3600 K, the end of the"
                    + " tungsten tables (it melts at 3695 K), got " + Numbers.text(supplyV) + " V");
        }
        double kelvin = balance.nearSteadyK(supplyV);
        double previousK = hotK;
        double previousOff = balance.logRatio(previousK, supplyV);
        for (int i = 0; i < SECANT_STEPS && kelvin > coldK && kelvin < hotK; i++) {
            double off = balance.logRatio(kelvin, supplyV);
            double step = off * (kelvin - previousK) / (off - previousOff);
            if (off == 0 || Math.abs(step) <= 1e-14 * kelvin) {
                return kelvin;
            }
            // the next error is the product of the last two times a curvature of order 1/T
            if (Math.abs(step * (kelvin - previousK)) < 1e-16 * kelvin * kelvin) {
                return kelvin - step;
            }
            previousK = kelvin;
            previousOff = off;
            kelvin -= step;
        }
        return new BrentSolver(1e-15, 1e-12).solve(200, k -> balance.netW(k, supplyV), coldK, hotK);
    }

    HeatBalance balance() {
        return balance;
    }

    double supplyV() {
        return supplyV;
    }

    double initialK() {
        return initialK;
    }

    double steadyK() {
        return steadyK;
    }

    /** Says whether the filament stays where it is. */
    boolean isSettled() {
        return spanK == 0;
    }

    double temperatureAtU(double u) {
        return steadyK - spanK * Math.exp(-u);
    }

    /** Gives u of a temperature between the initial and the steady one, at most the last panel's end. */
    double uOf(double temperatureK) {
        double rest = (steadyK - temperatureK) / spanK;
        return rest > Math.exp(-U_LAST) ? Math.max(0, -Math.log(rest)) : U_LAST;
    }

    double secondsPerU(double u) {
        double toGoK = spanK * Math.exp(-u);
        return wire.heatCapacityJPerK(steadyK - toGoK) / slopeWPerK(toGoK);
    }

    /** Gives the time between two values of u inside one panel. */
    double panelS(double fromU, double toU) {
        double half = (toU - fromU) / 2;
        double mid = (toU + fromU) / 2;
        double sum = 0;
        for (int i = 0; i < NODE.length; i++) {
            sum += WEIGHT[i] * secondsPerU(mid + half * NODE[i]);
        }
        return half * sum;
    }

    /** Gives the electrical energy the filament takes from the start to a value of u. */
    double energyJ(double toU) {
        double sum = 0;
        for (int panel = 1; panel < U_ENDS.length && U_ENDS[panel - 1] < toU; panel++) {
            double half = (Math.min(toU, U_ENDS[panel]) - U_ENDS[panel - 1]) / 2;
            double mid = U_ENDS[panel - 1] + half;
            for (int i = 0; i < NODE.length; i++) {
                sum += half * WEIGHT[i] * joulesPerU(mid + half * NODE[i]);
            }
        }
        return sum;
    }

    private double joulesPerU(double u) {
        return balance.filamentW(temperatureAtU(u), supplyV) * secondsPerU(u);
    }

    /** Gives the time between two values of u, over panels no wider than those of the table. */
    double secondsBetweenU(double fromU, double toU) {
        double sum = 0;
        double lo = fromU;
        for (int panel = 1; panel < U_ENDS.length && lo < toU; panel++) {
            if (U_ENDS[panel] > lo) {
                double hi = toU - lo <= U_ENDS[panel] - U_ENDS[panel - 1] ? toU : Math.min(toU, U_ENDS[panel]);
                sum += panelS(lo, hi);
                lo = hi;
            }
        }
        return sum;
    }

    /** Fits N/(Ts − T) near Ts by a cubic, since there the quotient itself loses digits. */
    private double[] nearSlope() {
        double[] c = new double[4];
        for (int i = 0; i < 4; i++) {
            double d = nearK * (i + 1);
            c[i] = balance.netW(steadyK - d, supplyV) / d;
        }
        for (int order = 1; order < 4; order++) {
            for (int i = 3; i >= order; i--) {
                c[i] = (c[i] - c[i - 1]) / (order * nearK);
            }
        }
        return c;
    }

    private double slopeWPerK(double toGoK) {
        if (Math.abs(toGoK) >= Math.abs(nearK)) {
            return balance.netW(steadyK - toGoK, supplyV) / toGoK;
        }
        double[] c = nearSlope;
        return c[0] + (toGoK - nearK) * (c[1] + (toGoK - 2 * nearK) * (c[2] + (toGoK - 3 * nearK) * c[3]));
    }
}
