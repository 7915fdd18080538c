package io.github.stoplag.kernel;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.Ranges;

/**
 * Braking with a resistance that grows with the square of speed, in SI doubles and closed form.
 *
 * <p>dv/dt = −(a₀ + k v²)
 *
 * <p>a₀ deceleration at rest in m/s² (brakes, rolling resistance, grade; negative on a slope that the brakes do not
 * hold); k drag in 1/m, k = ρ C<sub>d</sub> A / (2 m). All forms tend to constant deceleration as k → 0 without loss of
 * digits, because the differences of logarithms and arctangents are taken inside the function.
 *
 * <p>Range: speeds [0, 150] m/s, a₀ [−200, 200] m/s², k [0, 1] 1/m. Own derivation from Newton's second law; the
 * tests hold it against a numerical integration.
 */
public final class DragKernel {
    private static final Range DRAG = Range.closed("drag", 0, 1, "1/m");
    private static final Range SOME_DRAG = DRAG.withoutLowerEnd();

    private DragKernel() {}

    /**
     * Gives the distance from one speed down to another.
     *
     * <p>s = ln((a₀ + k v₀²) / (a₀ + k v₁²)) / (2 k), as (v₀² − v₁²) / (2 b) · log1p(x) / x with b = a₀ + k v₁² and x =
     * k (v₀² − v₁²) / b
     *
     * @param fromMps the speed v₀ at the start in m/s
     * @param toMps the lower speed v₁ at the end in m/s
     * @param decelMps2 the deceleration a₀ at rest in m/s²
     * @param dragPerM the drag k in 1/m
     * @return the distance in m
     * @throws IllegalArgumentException if an input is out of range, v₁ exceeds v₀, or the vehicle does not slow at v₁
     */
    public static double distanceM(double fromMps, double toMps, double decelMps2, double dragPerM) {
        double atEnd = decelAtEnd(fromMps, toMps, decelMps2, dragPerM);
        double squares = (fromMps - toMps) * (fromMps + toMps);
        double x = dragPerM * squares / atEnd;
        double shrink = x == 0 ? 1 : Math.log1p(x) / x;
        return squares / (2 * atEnd) * shrink;
    }

    /**
     * Gives the time from one speed down to another.
     *
     * <p>t = (atan(v₀ √(k/a₀)) − atan(v₁ √(k/a₀))) / √(a₀ k), as (v₀ − v₁) / c · atan(y) / y with c = a₀ + k v₀ v₁ and
     * y = √(a₀ k) (v₀ − v₁) / c; with atanh and √(−a₀ k) where a₀ is negative
     *
     * @param fromMps the speed v₀ at the start in m/s
     * @param toMps the lower speed v₁ at the end in m/s
     * @param decelMps2 the deceleration a₀ at rest in m/s²
     * @param dragPerM the drag k in 1/m
     * @return the time in s
     * @throws IllegalArgumentException if an input is out of range, v₁ exceeds v₀, or the vehicle does not slow at v₁
     */
    public static double timeS(double fromMps, double toMps, double decelMps2, double dragPerM) {
        decelAtEnd(fromMps, toMps, decelMps2, dragPerM);
        double c = decelMps2 + dragPerM * fromMps * toMps;
        double y = Math.sqrt(Math.abs(decelMps2) * dragPerM) * (fromMps - toMps) / c;
        double shrink = 1;
        if (y > 0) {
            shrink = (decelMps2 > 0 ? Math.atan(y) : 0.5 * Math.log1p(2 * y / (1 - y))) / y;
        }
        return (fromMps - toMps) / c * shrink;
    }

    /**
     * Gives the speed after a distance; 0 from the place where the vehicle has come to rest.
     *
     * <p>v² = v₀² e<sup>−2ks</sup> − (a₀/k) (1 − e<sup>−2ks</sup>)
     *
     * @param fromMps the speed v₀ at the start in m/s
     * @param distanceM the distance s in m
     * @param decelMps2 the deceleration a₀ at rest in m/s²
     * @param dragPerM the drag k in 1/m
     * @return the speed in m/s
     * @throws IllegalArgumentException if an input is out of range
     */
    public static double speedAtDistanceMps(double fromMps, double distanceM, double decelMps2, double dragPerM) {
        checkModel(fromMps, decelMps2, dragPerM);
        Ranges.LENGTH.check("distance", distanceM);
        double z = -2 * dragPerM * distanceM;
        double shrink = z == 0 ? 1 : Math.expm1(z) / z;
        double square = fromMps * fromMps * Math.exp(z) - 2 * decelMps2 * distanceM * shrink;
        return square > 0 ? Math.sqrt(square) : 0;
    }

    /**
     * Gives the speed after a time; 0 from the moment at which the vehicle has come to rest.
     *
     * <p>v = (v₀ − a₀ t T) / (1 + k v₀ t T), T = tan(ω t) / (ω t), ω = √(a₀ k); with tanh and ω = √(−a₀ k) where a₀ is
     * negative
     *
     * @param fromMps the speed v₀ at the start in m/s
     * @param timeS the time t in s
     * @param decelMps2 the deceleration a₀ at rest in m/s²
     * @param dragPerM the drag k in 1/m
     * @return the speed in m/s
     * @throws IllegalArgumentException if an input is out of range
     */
    public static double speedAtTimeMps(double fromMps, double timeS, double decelMps2, double dragPerM) {
        checkModel(fromMps, decelMps2, dragPerM);
        Ranges.ELAPSED.check(timeS);
        if (decelMps2 > 0 && timeS >= timeS(fromMps, 0, decelMps2, dragPerM)) {
            return 0;
        }
        double angle = Math.sqrt(Math.abs(decelMps2) * dragPerM) * timeS;
        double stretch = 1;
        if (angle > 0) {
            stretch = (decelMps2 > 0 ? Math.tan(angle) : Math.tanh(angle)) / angle;
        }
        double t = timeS * stretch;
        return (fromMps - decelMps2 * t) / (1 + dragPerM * fromMps * t);
    }

    /**
     * Gives the speed at which drag balances a slope that the brakes do not hold.
     *
     * <p>v = √(−a₀ / k)
     *
     * @param decelMps2 the deceleration a₀ at rest in m/s², negative
     * @param dragPerM the drag k in 1/m, above 0
     * @return the terminal speed in m/s
     * @throws IllegalArgumentException if a₀ is not in [−200, 0] m/s² or k not in (0, 1] 1/m
     */
    public static double terminalSpeedMps(double decelMps2, double dragPerM) {
        Check.inRange("deceleration at rest", decelMps2, -200, 0, "m/s²");
        SOME_DRAG.check(dragPerM);
        return Math.sqrt(-decelMps2 / dragPerM);
    }

    private static double decelAtEnd(double fromMps, double toMps, double decelMps2, double dragPerM) {
        checkModel(fromMps, decelMps2, dragPerM);
        Check.inRange("final speed", toMps, 0, fromMps, "m/s");
        double atEnd = decelMps2 + dragPerM * toMps * toMps;
        return Check.above("deceleration at the final speed", atEnd, 0, 1e5, "m/s²");
    }

    private static void checkModel(double fromMps, double decelMps2, double dragPerM) {
        Ranges.SPEED.check("initial speed", fromMps);
        Ranges.SIGNED_DECELERATION.check("deceleration at rest", decelMps2);
        DRAG.check(dragPerM);
    }
}
