package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.worked.Expression.Symbol;

/**
 * Worked solutions on the braking of one vehicle: how long it takes, and the deceleration that a measured run shows.
 *
 * <p>The mean fully developed deceleration of a brake test is in {@link WorkedRule#meanFullyDeveloped}.
 *
 * <p>Source: kinematics.
 */
public final class WorkedBraking {
    private WorkedBraking() {}

    /**
     * Works the mean deceleration of a stop from speed and distance: a = v²/(2 s).
     *
     * @param style units and digits
     * @param speed the speed v at the start of braking, above 0
     * @param distance the braking distance s, above 0
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution decelerationFromDistance(Style style, Given speed, Given distance) {
        Check.above("braking distance", distance.in(Unit.METRE), 0, 1e6, "m");
        Working w = Working.of(style, "Deceleration from a braking distance", "mean deceleration over the distance");
        Symbol v = w.given("v", "speed", speed, style.units().speed());
        Symbol s = w.given("s", "braking distance", distance, style.units().length());
        w.assume(WorkedStop.CONSTANT);
        Symbol a = w.step("a", "deceleration", v.squared().over(number(2).times(s)));
        w.checkBy(
                a,
                "speed times mean speed v/2 over the distance",
                v.times(v.over(number(2))).over(s));
        return w.answer(a, style.units().deceleration());
    }

    /**
     * Works the mean deceleration of a stop from speed and time: a = v/t.
     *
     * @param style units and digits
     * @param speed the speed v at the start of braking, above 0
     * @param time the braking time t, above 0
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution decelerationFromTime(Style style, Given speed, Given time) {
        Check.above("braking time", time.in(Unit.SECOND), 0, 1e4, "s");
        Working w = Working.of(style, "Deceleration from a braking time", "mean deceleration over the time");
        Symbol v = w.given("v", "speed", speed, style.units().speed());
        Symbol t = w.given("t", "braking time", time, Unit.SECOND);
        w.assume(WorkedStop.CONSTANT);
        Symbol a = w.step("a", "deceleration", v.over(t));
        w.checkBy(
                a,
                "from the distance at the mean speed",
                v.squared().over(number(2).times(v.over(number(2)).times(t))));
        return w.answer(a, style.units().deceleration());
    }

    /**
     * Works the braking time t = v/a.
     *
     * @param style units and digits
     * @param speed the speed v at the start of braking
     * @param deceleration the deceleration a, above 0
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution brakingTime(Style style, Given speed, Given deceleration) {
        Ranges.BRAKING.check(deceleration.in(Unit.MPS2));
        Working w = Working.of(style, "Braking time", "time from the first braking to rest");
        Symbol v = w.given("v", "speed", speed, style.units().speed());
        Symbol a = w.given("a", "deceleration", deceleration, style.units().deceleration());
        w.assume(WorkedStop.CONSTANT);
        Symbol t = w.step("t", "braking time", v.over(a));
        w.checkBy(
                t,
                "braking distance over the mean speed",
                v.squared().over(number(2).times(a)).over(v.over(number(2))));
        return w.answer(t, Unit.SECOND);
    }
}
