package io.github.stoplag.kernel;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Ranges;
import java.util.Objects;

/**
 * Speed lost and length skidded, both ways, on one surface or several, in SI doubles.
 *
 * <p>v₀² = v₁² + Σ 2 aᵢ sᵢ
 *
 * <p>v₀ entry speed, v₁ exit speed in m/s; aᵢ net deceleration in m/s² (friction and grade together; negative on a
 * slope that friction does not hold); sᵢ length in m. Range: speeds [0, 150] m/s, aᵢ [−200, 200] m/s², sᵢ [0, 1e7] m.
 * Work and kinetic energy; terms of the trade: the combined-speed rule.
 */
public final class SkidKernel {
    private SkidKernel() {}

    /**
     * Gives the entry speed from what was left at the end of one surface.
     *
     * <p>v₀ = √(v₁² + 2 a s)
     *
     * @param endMps the exit speed v₁ in m/s
     * @param decelMps2 the net deceleration a in m/s²
     * @param lengthM the length s in m
     * @return the entry speed in m/s
     * @throws IllegalArgumentException if an input is out of range, or a vehicle from rest would leave a falling
     *     stretch faster than v₁
     */
    public static double entrySpeedMps(double endMps, double decelMps2, double lengthM) {
        return root(Ranges.SPEED.check("exit speed", endMps) * endMps + loss(decelMps2, lengthM));
    }

    /**
     * Gives the entry speed from what was left at the end of several surfaces.
     *
     * <p>v₀ = √(v₁² + Σ 2 aᵢ sᵢ), taken back from the last surface to the first
     *
     * @param endMps the exit speed v₁ in m/s
     * @param decelMps2 the net decelerations aᵢ in m/s², in the order of travel
     * @param lengthM the lengths sᵢ in m, in the same order
     * @return the entry speed in m/s
     * @throws IllegalArgumentException if the arrays differ in length, an input is out of range, or a falling stretch
     *     makes the exit speed too low to be reached
     */
    public static double entrySpeedMps(double endMps, double[] decelMps2, double[] lengthM) {
        Objects.requireNonNull(decelMps2, "decelMps2");
        Objects.requireNonNull(lengthM, "lengthM");
        if (decelMps2.length != lengthM.length) {
            throw new IllegalArgumentException("a deceleration is needed for each length, got " + decelMps2.length
                    + " decelerations and " + lengthM.length + " lengths");
        }
        double speedMps = Ranges.SPEED.check("exit speed", endMps);
        for (int i = lengthM.length - 1; i >= 0; i--) {
            speedMps = root(speedMps * speedMps + loss(decelMps2[i], lengthM[i]));
        }
        return speedMps;
    }

    /**
     * Gives the exit speed after one surface; 0 if the vehicle comes to rest on it.
     *
     * <p>v₁ = √(v₀² − 2 a s)
     *
     * @param entryMps the entry speed v₀ in m/s
     * @param decelMps2 the net deceleration a in m/s²
     * @param lengthM the length s in m
     * @return the exit speed in m/s
     * @throws IllegalArgumentException if an input is out of range
     */
    public static double exitSpeedMps(double entryMps, double decelMps2, double lengthM) {
        double square = Ranges.SPEED.check("entry speed", entryMps) * entryMps - loss(decelMps2, lengthM);
        return square > 0 ? Math.sqrt(square) : 0;
    }

    /**
     * Gives the length on which speed falls from one value to another.
     *
     * <p>s = (v₀² − v₁²) / (2 a)
     *
     * @param entryMps the entry speed v₀ in m/s
     * @param endMps the exit speed v₁ in m/s, not above v₀
     * @param decelMps2 the net deceleration a in m/s², above 0
     * @return the length in m
     * @throws IllegalArgumentException if an input is out of range or the deceleration is not above 0
     */
    public static double lengthM(double entryMps, double endMps, double decelMps2) {
        Ranges.SPEED.check("entry speed", entryMps);
        Check.inRange("exit speed", endMps, 0, entryMps, "m/s");
        Ranges.BRAKING.check(decelMps2);
        return (entryMps - endMps) * (entryMps + endMps) / (2 * decelMps2);
    }

    private static double loss(double decelMps2, double lengthM) {
        Ranges.SIGNED_DECELERATION.check(decelMps2);
        Ranges.LENGTH.check("skid length", lengthM);
        return 2 * decelMps2 * lengthM;
    }

    private static double root(double square) {
        return Math.sqrt(Check.inRange("square of the entry speed", square, 0, 1e10, "m²/s²"));
    }
}
