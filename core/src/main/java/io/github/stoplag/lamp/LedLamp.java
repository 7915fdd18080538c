package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A light-emitting-diode lamp: dark for its driver's start-up delay, then a first-order rise; a first-order fall at
 * once.
 *
 * <p>I(t)/I(∞) = 0 for t &lt; td, 1 − e^(−(t − td)/τ) from td on, τ = tr/ln 9; a step at td for tr = 0. Switched off, I
 * falls as e^(−t/τf), τf = tf/ln 9. Switched on while still lit, it goes on falling until td and rises from there.
 *
 * <p>Symbols: td driver delay, tr 10 to 90 % rise time, tf 90 to 10 % fall time in s, all in [0, 1] s. The die itself
 * switches in nanoseconds (Bierman et al. 2000, abstract, seen); delay and times are the driver's, and come from the
 * caller; the fall time is taken equal to the rise time unless set.
 */
public final class LedLamp implements OnsetCurve, SwitchedLamp {
    private final TimeSpan driverDelay;
    private final TimeSpan riseTime;
    private final TimeSpan fallTime;
    private final double delayS;
    private final double tauS;
    private final double fallTauS;

    private LedLamp(TimeSpan driverDelay, TimeSpan riseTime, TimeSpan fallTime) {
        this.driverDelay = driverDelay;
        this.riseTime = riseTime;
        this.fallTime = fallTime;
        delayS = Ranges.LED_DELAY.check(driverDelay.inSeconds());
        tauS = Ranges.LED_RISE.check(riseTime.inSeconds()) / Math.log(9);
        fallTauS = Ranges.LED_RISE.check("LED fall time", fallTime.inSeconds()) / Math.log(9);
    }

    /**
     * Makes an LED lamp.
     *
     * @param driverDelay the time td from closing the circuit to first light, [0, 1] s
     * @param riseTime the time tr from 10 to 90 % of the final light, [0, 1] s; also the fall time
     * @return the lamp's onset
     * @throws IllegalArgumentException if either is out of range
     */
    public static LedLamp of(TimeSpan driverDelay, TimeSpan riseTime) {
        Objects.requireNonNull(driverDelay, "driverDelay");
        Objects.requireNonNull(riseTime, "riseTime");
        return new LedLamp(driverDelay, riseTime, riseTime);
    }

    /**
     * Sets the fall time.
     *
     * @param time the time tf from 90 to 10 % of the light after switch-off, [0, 1] s
     * @return the changed lamp
     * @throws IllegalArgumentException if it is out of range
     */
    public LedLamp withFallTime(TimeSpan time) {
        return new LedLamp(driverDelay, riseTime, time);
    }

    @Override
    public String label() {
        return "LED, driver delay " + driverDelay + ", rise " + riseTime;
    }

    @Override
    public double relativeIntensity(double timeS) {
        OnsetCurve.checkTimeS("time since switch-on", timeS);
        return timeS >= delayS ? risenRatio(0, timeS - delayS) : 0;
    }

    /** The time constant of the fall. */
    double fallTauS() {
        return fallTauS;
    }

    private double risenRatio(double fromRatio, double sinceS) {
        return tauS == 0 ? 1 : fromRatio - (1 - fromRatio) * Math.expm1(-sinceS / tauS);
    }

    private double fallenRatio(double fromRatio, double sinceS) {
        if (sinceS <= 0) {
            return fromRatio;
        }
        return fallTauS == 0 ? 0 : fromRatio * Math.exp(-sinceS / fallTauS);
    }

    @Override
    public double restState() {
        return 0;
    }

    @Override
    public Phase switched(boolean on, double state) {
        return new Phase() {
            @Override
            public double relativeIntensity(double sinceS) {
                OnsetCurve.checkTimeS("time since switching", sinceS);
                if (!on || sinceS < delayS) {
                    return fallenRatio(state, sinceS);
                }
                return risenRatio(fallenRatio(state, delayS), sinceS - delayS);
            }

            @Override
            public double state(double sinceS) {
                return relativeIntensity(sinceS);
            }

            @Override
            public double[] turnsS() {
                return on ? new double[] {Math.max(0, Math.nextDown(delayS)), delayS} : new double[] {Double.MIN_VALUE};
            }
        };
    }

    @Override
    public OptionalDouble timeToLevelS(double levelRatio) {
        OnsetCurve.checkLevel(levelRatio);
        return OptionalDouble.of(delayS - tauS * Math.log1p(-levelRatio));
    }

    @Override
    public double settledS() {
        return delayS + tauS * Math.log(1000);
    }

    @Override
    public double[] breakpointsS() {
        return new double[] {delayS};
    }

    @Override
    public Evidence evidence() {
        return Evidence.of(
                "LED: driver delay " + driverDelay + ", 10-90 % rise time " + riseTime + " and fall time " + fallTime
                        + ", given by the caller",
                "LED: first-order rise after the delay, first-order fall (assumed shape)");
    }

    @Override
    public String toString() {
        return label();
    }
}
