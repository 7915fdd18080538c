package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caveat;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A light-emitting-diode lamp: dark for its driver's start-up delay, then a first-order rise.
 *
 * <p>I(t)/I(∞) = 0 for t &lt; td, 1 − e^(−(t − td)/τ) from td on, τ = tr/ln 9; a step at td for tr = 0.
 *
 * <p>Symbols: td driver delay and tr 10 to 90 % rise time in s, both in [0, 1] s. The die itself switches in nanoseconds
 * (Bierman et al. 2000, abstract, seen); delay and rise are the driver's, and come from the caller.
 */
public final class LedLamp implements OnsetCurve {
    private final TimeSpan driverDelay;
    private final TimeSpan riseTime;
    private final double delayS;
    private final double tauS;

    private LedLamp(TimeSpan driverDelay, TimeSpan riseTime) {
        this.driverDelay = driverDelay;
        this.riseTime = riseTime;
        delayS = Check.inRange("LED driver delay", driverDelay.inSeconds(), 0, 1, "s");
        tauS = Check.inRange("LED rise time", riseTime.inSeconds(), 0, 1, "s") / Math.log(9);
    }

    /**
     * Makes an LED lamp.
     *
     * @param driverDelay the time td from closing the circuit to first light, [0, 1] s
     * @param riseTime the time tr from 10 to 90 % of the final light, [0, 1] s
     * @return the lamp's onset
     * @throws IllegalArgumentException if either is out of range
     */
    public static LedLamp of(TimeSpan driverDelay, TimeSpan riseTime) {
        return new LedLamp(driverDelay, riseTime);
    }

    @Override
    public String label() {
        return "LED, driver delay " + driverDelay + ", rise " + riseTime;
    }

    @Override
    public double relativeIntensity(double timeS) {
        if (!(timeS >= delayS)) {
            return 0;
        }
        return tauS == 0 ? 1 : -Math.expm1(-(timeS - delayS) / tauS);
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
    public List<String> basis() {
        return List.of(
                "LED: driver delay " + driverDelay + " and 10-90 % rise time " + riseTime + ", given by the caller",
                "LED: first-order rise after the delay (assumed shape)");
    }

    @Override
    public List<Caveat> caveats() {
        return List.of();
    }

    @Override
    public String toString() {
        return label();
    }
}
