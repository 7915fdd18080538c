package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.braking.Stop;
import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Skid;
import io.github.stoplag.source.Caution;
import io.github.stoplag.worked.Expression.Symbol;
import java.util.Objects;

/**
 * Worked solutions on one vehicle: reaction, braking and stopping distance, skid, what a lamp's lag adds.
 *
 * <p>Braking time and measured deceleration are in {@link WorkedBraking}.
 *
 * <p>Example: {@code WorkedStop.stoppingDistance(Style.metric(), Given.of(30, Unit.MPS), Given.of(0.5, Unit.SECOND),
 * Given.of(7, Unit.MPS2)).document().toText()}.
 *
 * <p>Source: kinematics; see {@link Stop} and {@link Skid}.
 */
public final class WorkedStop {
    private static final Range SOME_SKID = Ranges.LENGTH.withoutLowerEnd();

    static final Caution NO_PROOF = new Caution(
            "use",
            "A calculated distance is no proof of safety: drivers, tyres, loads and roads differ. Keep the larger"
                    + " distance that the law and the road ask for.");
    static final Caution EVIDENCE = new Caution(
            "evidence",
            "A figure from marks or a measured stop is an estimate for those who know the case; courts ask for its"
                    + " uncertainty.");
    static final String CONSTANT = "the deceleration is constant from the first moment of braking";
    private static final String STRAIGHT = "straight road, no air drag, all wheels brake alike";

    private WorkedStop() {}

    /**
     * Works the reaction distance s_r = v t_r.
     *
     * @param style units and digits
     * @param speed the speed v
     * @param reaction the reaction time t_r, in [0, 30] s
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution reactionDistance(Style style, Given speed, Given reaction) {
        Objects.requireNonNull(reaction, "reaction");
        Objects.requireNonNull(speed, "speed");
        Ranges.REACTION.check(reaction.in(Unit.SECOND));
        Working w = Working.of(style, "Reaction distance", "distance driven during the reaction time");
        Symbol v = w.given("v", "speed", speed, style.units().speed());
        Symbol t = w.given("t_r", "reaction time", reaction, Unit.SECOND);
        w.assume("the speed does not change during the reaction time");
        Symbol s = w.step("s_r", "reaction distance", v.times(t));
        w.checkAgainst(
                s,
                "reaction distance in SI units",
                Amount.of(StopKernel.reactionDistanceM(speed.in(Unit.MPS), reaction.in(Unit.SECOND)), Unit.METRE));
        w.caution(NO_PROOF);
        return w.answer(s, style.units().length());
    }

    /**
     * Works the braking distance s_b = v²/(2a).
     *
     * @param style units and digits
     * @param speed the speed v
     * @param deceleration the deceleration a, above 0
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution brakingDistance(Style style, Given speed, Given deceleration) {
        Objects.requireNonNull(deceleration, "deceleration");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
        Ranges.BRAKING.check(deceleration.in(Unit.MPS2));
        Working w = Working.of(style, "Braking distance", "distance from the first braking to rest");
        Symbol v = w.given("v", "speed", speed, style.units().speed());
        Symbol a = w.given("a", "deceleration", deceleration, style.units().deceleration());
        w.assume(CONSTANT);
        w.assume(STRAIGHT);
        Symbol s = w.step("s_b", "braking distance", v.squared().over(number(2).times(a)));
        w.checkBy(s, "braking time v/a at the mean speed v/2", v.over(number(2)).times(v.over(a)));
        w.caution(NO_PROOF);
        return w.answer(s, style.units().length());
    }

    /**
     * Works the stopping distance s = v t_r + v²/(2a).
     *
     * @param style units and digits
     * @param speed the speed v
     * @param reaction the reaction time t_r, in [0, 30] s
     * @param deceleration the deceleration a, above 0
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution stoppingDistance(Style style, Given speed, Given reaction, Given deceleration) {
        Objects.requireNonNull(deceleration, "deceleration");
        Objects.requireNonNull(reaction, "reaction");
        Objects.requireNonNull(speed, "speed");
        Working w = Working.of(style, "Stopping distance", "stopping distance");
        Symbol v = w.given("v", "speed", speed, style.units().speed());
        Symbol t = w.given("t_r", "reaction time", reaction, Unit.SECOND);
        Symbol a = w.given("a", "deceleration", deceleration, style.units().deceleration());
        w.assume("the speed does not change during the reaction time");
        w.assume(CONSTANT);
        w.assume(STRAIGHT);
        Symbol reacting = w.step("s_r", "reaction distance", v.times(t));
        Symbol braking =
                w.step("s_b", "braking distance", v.squared().over(number(2).times(a)));
        Symbol total = w.step("s", "stopping distance", reacting.plus(braking));
        w.checkBy(
                total,
                "reaction time at full speed, then the braking time v/a at the mean speed v/2",
                v.times(t).plus(v.over(number(2)).times(v.over(a))));
        w.checkAgainst(total, "motion in phases", stop(speed, reaction, Given.of(0, Unit.SECOND), deceleration));
        w.caution(NO_PROOF);
        return w.answer(total, style.units().length());
    }

    /**
     * Works the stopping distance with a linear build-up of the brakes: s = v t_r + v t_b/2 + v²/(2a) − a t_b²/24.
     *
     * @param style units and digits
     * @param speed the speed v, at least a t_b/2
     * @param reaction the reaction time t_r, in [0, 30] s
     * @param buildUp the time t_b in which the deceleration rises to a, in [0, 10] s
     * @param deceleration the deceleration a, above 0
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range or the vehicle stops within the build-up
     */
    public static Solution stoppingDistance(
            Style style, Given speed, Given reaction, Given buildUp, Given deceleration) {
        Objects.requireNonNull(buildUp, "buildUp");
        Objects.requireNonNull(deceleration, "deceleration");
        Objects.requireNonNull(reaction, "reaction");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
        Check.above(
                "speed for a stop that outlasts the build-up",
                speed.in(Unit.MPS),
                deceleration.in(Unit.MPS2) * buildUp.in(Unit.SECOND) / 2,
                150,
                "m/s");
        Working w = Working.of(style, "Stopping distance with brake build-up", "stopping distance");
        Symbol v = w.given("v", "speed", speed, style.units().speed());
        Symbol t = w.given("t_r", "reaction time", reaction, Unit.SECOND);
        Symbol tb = w.given("t_b", "build-up time", buildUp, Unit.SECOND);
        Symbol a = w.given("a", "full deceleration", deceleration, style.units().deceleration());
        w.assume("the speed does not change during the reaction time");
        w.assume("the deceleration rises linearly from 0 to its full value and then stays");
        w.assume(STRAIGHT);
        Symbol reacting = w.step("s_r", "reaction distance", v.times(t));
        Symbol braking = w.step(
                "s_b",
                "braking distance with build-up",
                v.times(tb)
                        .over(number(2))
                        .plus(v.squared().over(number(2).times(a)))
                        .minus(a.times(tb.squared()).over(number(24))));
        Symbol total = w.step("s", "stopping distance", reacting.plus(braking));
        Expression afterBuildUp = v.minus(a.times(tb).over(number(2)));
        w.checkBy(
                total,
                "distance within the build-up, then from the speed that is left",
                v.times(t)
                        .plus(v.times(tb))
                        .minus(a.times(tb.squared()).over(number(6)))
                        .plus(afterBuildUp.squared().over(number(2).times(a))));
        w.checkAgainst(total, "motion in phases", stop(speed, reaction, buildUp, deceleration));
        w.caution(NO_PROOF);
        return w.answer(total, style.units().length());
    }

    /**
     * Works the stopping distance on a road from its friction and grade: a = g (μ + G)/√(1 + G²).
     *
     * @param style units, digits and gravity g
     * @param speed the speed v
     * @param reaction the reaction time t_r, in [0, 30] s
     * @param friction the friction coefficient μ
     * @param grade the grade G, uphill positive
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range or friction does not outweigh the downgrade
     */
    public static Solution stoppingOnRoad(Style style, Given speed, Given reaction, Given friction, Given grade) {
        Objects.requireNonNull(friction, "friction");
        Objects.requireNonNull(grade, "grade");
        Objects.requireNonNull(reaction, "reaction");
        Objects.requireNonNull(speed, "speed");
        Working w = Working.of(style, "Stopping distance on a road", "stopping distance");
        Symbol v = w.given("v", "speed", speed, style.units().speed());
        Symbol t = w.given("t_r", "reaction time", reaction, Unit.SECOND);
        Symbol a = roadDeceleration(w, style, friction, grade);
        w.assume("all wheels use the full friction from the first moment of braking");
        Symbol reacting = w.step("s_r", "reaction distance", v.times(t));
        Symbol braking =
                w.step("s_b", "braking distance", v.squared().over(number(2).times(a)));
        Symbol total = w.step("s", "stopping distance", reacting.plus(braking));
        w.checkBy(
                total,
                "reaction time at full speed, then the braking time v/a at the mean speed v/2",
                v.times(t).plus(v.over(number(2)).times(v.over(a))));
        w.checkAgainst(
                total,
                "motion in phases",
                stop(speed, reaction, Given.of(0, Unit.SECOND), Given.of(w.in(a, Unit.MPS2), Unit.MPS2)));
        w.caution(NO_PROOF);
        return w.answer(total, style.units().length());
    }

    /**
     * Works the speed at the start of a skid to rest: v = √(2 a s), a = g (μ + G)/√(1 + G²).
     *
     * @param style units, digits and gravity g
     * @param length the length s of the skid marks, above 0
     * @param friction the friction coefficient μ of locked wheels
     * @param grade the grade G, uphill positive
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range or friction does not outweigh the downgrade
     */
    public static Solution skidSpeed(Style style, Given length, Given friction, Given grade) {
        Objects.requireNonNull(friction, "friction");
        Objects.requireNonNull(grade, "grade");
        Objects.requireNonNull(length, "length");
        Objects.requireNonNull(style, "style");
        SOME_SKID.check("skid length", length.in(Unit.METRE));
        Working w = Working.of(style, "Speed from skid marks", "speed at the start of the marks");
        Symbol s = w.given("s", "length of the marks", length, style.units().length());
        Symbol a = roadDeceleration(w, style, friction, grade);
        w.assume("all wheels are locked from the first mark to rest; speed lost before the first mark is left out");
        Symbol v = w.step("v", "speed", number(2).times(a).times(s).root());
        w.checkAgainst(
                v,
                "skid over one section",
                Amount.of(
                        Skid.over(Skid.Section.of(
                                        Distance.metres(length.in(Unit.METRE)), Deceleration.mps2(w.in(a, Unit.MPS2))))
                                .entrySpeed(Speed.mps(0))
                                .inMps(),
                        Unit.MPS));
        w.caution(EVIDENCE);
        return w.answer(v, style.units().roadSpeed());
    }

    /**
     * Works the reaction distance and what a slower lamp ahead adds to it: Δs = v (t_r + Δt) − v t_r = v Δt.
     *
     * @param style units and digits
     * @param speed the speed v
     * @param reaction the reaction time t_r, in [0, 30] s
     * @param lampLag the time Δt by which the lamp is seen later, in [0, 30] s
     * @return the solution; it answers the added distance
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution lampLagDistance(Style style, Given speed, Given reaction, Given lampLag) {
        Objects.requireNonNull(lampLag, "lampLag");
        Objects.requireNonNull(reaction, "reaction");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
        Ranges.LATENCY.check("lamp lag", lampLag.in(Unit.SECOND));
        Ranges.REACTION.check(reaction.in(Unit.SECOND));
        Working w = Working.of(style, "Distance that a lamp's lag adds", "added distance");
        Symbol v = w.given("v", "speed", speed, style.units().speed());
        Symbol t = w.given("t_r", "reaction time", reaction, Unit.SECOND);
        Symbol lag = w.given("Δt", "lag of the lamp", lampLag, Unit.SECOND);
        w.assume("the driver responds to the lamp and to nothing that was seen earlier");
        Symbol prompt = w.step("s_1", "reaction distance behind a lamp without lag", v.times(t));
        Symbol late = w.step("s_2", "reaction distance behind the lagging lamp", v.times(t.plus(lag)));
        Symbol added = w.step("Δs", "added distance", late.minus(prompt));
        w.checkBy(added, "distance driven during the lag alone", v.times(lag));
        w.caution(NO_PROOF);
        return w.answer(added, style.units().length());
    }

    private static Symbol roadDeceleration(Working w, Style style, Given friction, Given grade) {
        double mu = FrictionCoefficient.of(friction.in(Unit.NONE)).inRatio();
        double slope = Grade.ratio(grade.in(Unit.NONE)).inRatio();
        Check.above("friction coefficient less the downgrade", mu + slope, 0, 20, "");
        Symbol f = w.given("μ", "friction coefficient", friction, Unit.NONE);
        Symbol g = w.given("g", "acceleration of free fall", style.gravity());
        if (slope == 0) {
            w.assume("level, straight road, no air drag");
            return w.step("a", "deceleration", f.times(g));
        }
        Symbol up = w.given("G", "grade, uphill positive", grade, Unit.NONE);
        w.assume("straight road of even grade, no air drag");
        Plausible.grade(slope).ifPresent(w::caution);
        return w.step(
                "a",
                "deceleration",
                g.times(f.plus(up)).over(number(1).plus(up.squared()).root()));
    }

    private static Amount stop(Given speed, Given reaction, Given buildUp, Given deceleration) {
        Ranges.BRAKING.check(deceleration.in(Unit.MPS2));
        Object outcome = Stop.of(
                Speed.mps(speed.in(Unit.MPS)),
                TimeSpan.seconds(reaction.in(Unit.SECOND)),
                new BrakeResponse(TimeSpan.seconds(0), TimeSpan.seconds(buildUp.in(Unit.SECOND))),
                Deceleration.mps2(deceleration.in(Unit.MPS2)));
        if (outcome instanceof Stop stop) {
            return Amount.of(stop.stoppingDistance().inMetres(), Unit.METRE);
        }
        throw new IllegalArgumentException("the vehicle must stop: " + outcome);
    }
}
