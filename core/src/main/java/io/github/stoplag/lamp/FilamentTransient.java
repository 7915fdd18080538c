package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import java.util.Arrays;

/**
 * The filament's temperature against time on its way to the steady one: the times at the panels' ends of a {@link
 * FilamentPath}, turned round inside one panel by Newton; beyond the last panel the approach is exponential.
 */
final class FilamentTransient {
    private final FilamentPath path;
    private final double[] timeEndsS;

    FilamentTransient(FilamentPath path) {
        this.path = path;
        timeEndsS = new double[FilamentPath.U_ENDS.length];
        if (!path.isSettled()) {
            for (int i = 1; i < timeEndsS.length; i++) {
                timeEndsS[i] = timeEndsS[i - 1] + path.panelS(FilamentPath.U_ENDS[i - 1], FilamentPath.U_ENDS[i]);
            }
        }
    }

    static FilamentTransient of(FilamentLamp lamp, SupplyConditions conditions) {
        return new FilamentTransient(FilamentPath.of(
                lamp.label(),
                HeatBalance.of(lamp, conditions),
                conditions.supply().inVolts(),
                conditions.initialTemperature().inKelvin()));
    }

    FilamentPath path() {
        return path;
    }

    double initialK() {
        return path.initialK();
    }

    double steadyK() {
        return path.steadyK();
    }

    double currentA(double temperatureK) {
        return path.balance().currentA(temperatureK, path.supplyV());
    }

    /** Gives the temperature at a time; before 0 the filament is as it was. */
    double temperatureK(double timeS) {
        OnsetCurve.checkTimeS("time since switching", timeS);
        if (!(timeS > 0) || path.isSettled()) {
            return path.initialK();
        }
        return path.temperatureAtU(uAt(timeS));
    }

    /** Gives the time at which the filament passes a temperature between the initial and the steady one. */
    double timeS(double temperatureK) {
        if (path.isSettled()) {
            return 0;
        }
        double u = path.uOf(temperatureK);
        int panel = panelOf(FilamentPath.U_ENDS, u);
        return timeEndsS[panel] + (u > FilamentPath.U_ENDS[panel] ? path.panelS(FilamentPath.U_ENDS[panel], u) : 0);
    }

    /** Gives the electrical energy the filament takes until a time. */
    double energyJ(double timeS) {
        double powerW = path.balance().filamentW(path.steadyK(), path.supplyV());
        if (path.isSettled()) {
            return powerW * timeS;
        }
        int last = timeEndsS.length - 1;
        double beyondS = Math.max(0, timeS - timeEndsS[last]);
        return path.energyJ(Math.min(uAt(timeS), FilamentPath.U_ENDS[last])) + powerW * beyondS;
    }

    private static int panelOf(double[] ends, double value) {
        int found = Arrays.binarySearch(ends, value);
        return found >= 0 ? found : -found - 2;
    }

    private double uAt(double timeS) {
        Check.inRange("time after switching", timeS, 0, Double.POSITIVE_INFINITY, "s");
        int panel = panelOf(timeEndsS, timeS);
        double lo = FilamentPath.U_ENDS[panel];
        if (panel == timeEndsS.length - 1) {
            return lo + (timeS - timeEndsS[panel]) / path.secondsPerU(lo);
        }
        double hi = FilamentPath.U_ENDS[panel + 1];
        double u = lo + (hi - lo) * (timeS - timeEndsS[panel]) / (timeEndsS[panel + 1] - timeEndsS[panel]);
        for (int i = 0; i < 20; i++) {
            double step = (timeS - timeEndsS[panel] - path.panelS(lo, u)) / path.secondsPerU(u);
            u = Math.min(hi, Math.max(lo, u + step));
            if (Math.abs(step) <= 1e-14 * hi) {
                break;
            }
        }
        return u;
    }
}
