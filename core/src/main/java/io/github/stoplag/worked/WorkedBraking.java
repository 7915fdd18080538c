package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.worked.Expression.Symbol;
import java.util.Objects;

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
        Objects.requireNonNull(distance, "distance");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
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
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
        Objects.requireNonNull(time, "time");
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
        Objects.requireNonNull(deceleration, "deceleration");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
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

    /**
     * Works the stopping time t = t_r + v/a, from the event to rest.
     *
     * @param style units and digits
     * @param speed the speed v
     * @param reaction the reaction time t_r, in [0, 30] s
     * @param deceleration the deceleration a, above 0
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution stoppingTime(Style style, Given speed, Given reaction, Given deceleration) {
        Objects.requireNonNull(deceleration, "deceleration");
        Objects.requireNonNull(reaction, "reaction");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
        Ranges.BRAKING.check(deceleration.in(Unit.MPS2));
        Ranges.REACTION.check(reaction.in(Unit.SECOND));
        Working w = Working.of(style, "Stopping time", "time from the event to rest");
        Symbol v = w.given("v", "speed", speed, style.units().speed());
        Symbol r = w.given("t_r", "reaction time", reaction, Unit.SECOND);
        Symbol a = w.given("a", "deceleration", deceleration, style.units().deceleration());
        w.assume(WorkedStop.CONSTANT);
        Symbol braking = w.step("t_b", "braking time", v.over(a));
        Symbol t = w.step("t", "stopping time", r.plus(braking));
        w.checkBy(
                t,
                "reaction time, then braking distance over the mean speed",
                r.plus(v.squared().over(number(2).times(a)).over(v.over(number(2)))));
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(t, Unit.SECOND);
    }

    /**
     * Works the drag factor that a braking distance shows: f = v²/(2 g s), the mean deceleration over g.
     *
     * @param style units, digits and gravity g
     * @param speed the speed v at the start of braking, above 0
     * @param distance the braking distance s, above 0
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution dragFactor(Style style, Given speed, Given distance) {
        Objects.requireNonNull(distance, "distance");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
        Ranges.MOVING.check(speed.in(Unit.MPS));
        Check.above("braking distance", distance.in(Unit.METRE), 0, 1e6, "m");
        Working w = Working.of(style, "Drag factor from a braking distance", "drag factor over the distance");
        Symbol v = w.given("v", "speed", speed, style.units().speed());
        Symbol s = w.given("s", "braking distance", distance, style.units().length());
        Symbol g = w.given("g", "acceleration of free fall", style.gravity());
        w.assume(WorkedStop.CONSTANT);
        w.assume("a level road: on a grade the drag factor is the friction with the grade in it");
        Symbol f =
                w.step("f", "drag factor", v.squared().over(number(2).times(g).times(s)));
        w.checkBy(
                f,
                "mean speed v/2 for the time t = 2 s/v, deceleration v/t over g",
                v.over(number(2).times(s).over(v)).over(g));
        w.caution(WorkedStop.EVIDENCE);
        return w.answer(f, Unit.NONE);
    }

    /**
     * Works the speed that is left after a distance of braking: v_2 = √(v² − 2 a s).
     *
     * @param style units and digits
     * @param speed the speed v at the start of braking
     * @param deceleration the deceleration a, above 0
     * @param distance the distance s braked over, shorter than the braking distance to rest
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range or the vehicle stops before
     */
    public static Solution speedLeft(Style style, Given speed, Given deceleration, Given distance) {
        Objects.requireNonNull(deceleration, "deceleration");
        Objects.requireNonNull(distance, "distance");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
        double mps = Ranges.MOVING.check(speed.in(Unit.MPS));
        double mps2 = Ranges.BRAKING.check(deceleration.in(Unit.MPS2));
        Check.inRange(
                "distance, below the braking distance to rest,",
                distance.in(Unit.METRE),
                0,
                mps * mps / (2 * mps2) * (1 - 1e-9),
                "m");
        Working w = Working.of(style, "Speed left after a distance of braking", "speed after the distance");
        Symbol v = w.given("v", "speed", speed, style.units().speed());
        Symbol a = w.given("a", "deceleration", deceleration, style.units().deceleration());
        Symbol s = w.given("s", "distance braked over", distance, style.units().length());
        w.assume(WorkedStop.CONSTANT);
        Symbol left = w.step(
                "v_2",
                "speed left",
                v.squared().minus(number(2).times(a).times(s)).root());
        w.checkBy(
                left,
                "braking distance to rest from v, less s, as a braking distance from v_2",
                number(2)
                        .times(a)
                        .times(v.squared().over(number(2).times(a)).minus(s))
                        .root());
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(left, style.units().roadSpeed());
    }

    /**
     * Works the energy that the brakes turn to heat in a stop: E = m v²/2, in SI units whatever those of the style.
     *
     * @param style digits
     * @param mass the mass m, in [1, 1e6] kg
     * @param speed the speed v
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution kineticEnergy(Style style, Given mass, Given speed) {
        double massKg = Check.inRange("mass", mass.in(Unit.of("kg")), 1, 1e6, "kg");
        double speedMps = Ranges.SPEED.check(speed.in(Unit.MPS));
        Style si = Style.metric().withDigits(style.carriedDigits(), style.answerDigits());
        Working w = Working.of(si, "Energy of a moving vehicle", "energy that a stop turns to heat");
        Symbol m = w.given("m", "mass", mass, Unit.of("kg"));
        Symbol v = w.given("v", "speed", speed, Unit.MPS);
        w.assume("what turns (wheels, engine) holds some per cent more, which is left out");
        w.assume("all of it becomes heat in brakes and tyres: no air drag, no rolling resistance, no engine braking");
        Symbol e = w.step("E", "energy", m.times(v.squared()).over(number(2)));
        w.checkAgainst(e, "impulse times mean speed", Amount.of(massKg * speedMps * (speedMps / 2), Unit.of("J")));
        return w.answer(e, Unit.of("J"));
    }
}
