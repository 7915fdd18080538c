package io.github.stoplag.worked;

import io.github.stoplag.following.TimeToCollision;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.worked.Expression.Symbol;
import java.util.Objects;

/**
 * Worked solutions on a gap as drivers speak of it, in seconds: how long it is, and how soon it is gone.
 *
 * <p>What becomes of a gap when the vehicle ahead brakes is in {@link WorkedPair}.
 *
 * <p>Source: kinematics; {@link TimeToCollision#SOURCE} for the time to collision.
 */
public final class WorkedGap {
    private WorkedGap() {}

    /**
     * Works the length of a time gap: g = v T.
     *
     * @param style units and digits
     * @param speed the follower's speed v
     * @param timeGap the time gap T, in [0, 30] s
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution ofTime(Style style, Given speed, Given timeGap) {
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
        Objects.requireNonNull(timeGap, "timeGap");
        Ranges.REACTION.check("time gap", timeGap.in(Unit.SECOND));
        Ranges.SPEED.check(speed.in(Unit.MPS));
        Working w = Working.of(style, "Length of a time gap", "gap in front of the follower");
        Symbol v = w.given("v", "speed of the follower", speed, style.units().speed());
        Symbol t = w.given("T", "time gap", timeGap, Unit.SECOND);
        w.assume("the gap is from the follower's front to the leader's rear");
        Symbol g = w.step("g", "gap", v.times(t));
        w.checkAgainst(g, "gap in SI units", Amount.of(speed.in(Unit.MPS) * timeGap.in(Unit.SECOND), Unit.METRE));
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(g, style.units().length());
    }

    /**
     * Works the time gap that a distance makes: T = g/v.
     *
     * @param style units and digits
     * @param speed the follower's speed v, above 0
     * @param gap the gap g, in [0, 1e5] m
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution inTime(Style style, Given speed, Given gap) {
        Objects.requireNonNull(gap, "gap");
        Objects.requireNonNull(speed, "speed");
        Objects.requireNonNull(style, "style");
        Ranges.MOVING.check(speed.in(Unit.MPS));
        Ranges.GAP.check(gap.in(Unit.METRE));
        Working w = Working.of(style, "Time gap of a distance", "time gap");
        Symbol v = w.given("v", "speed of the follower", speed, style.units().speed());
        Symbol g = w.given("g", "gap", gap, style.units().length());
        w.assume("the gap is from the follower's front to the leader's rear");
        Symbol t = w.step("T", "time gap", g.over(v));
        w.checkAgainst(t, "time gap in SI units", Amount.of(gap.in(Unit.METRE) / speed.in(Unit.MPS), Unit.SECOND));
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(t, Unit.SECOND);
    }

    /**
     * Works the time to collision of a follower that gains on its leader, both at constant speed: t = g/(v_F − v_L).
     *
     * @param style units and digits
     * @param followerSpeed the follower's speed v_F, above the leader's
     * @param leaderSpeed the leader's speed v_L; 0 for one that stands
     * @param gap the gap g, in [0, 1e5] m
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range or the follower does not gain
     */
    public static Solution timeToCollision(Style style, Given followerSpeed, Given leaderSpeed, Given gap) {
        Objects.requireNonNull(followerSpeed, "followerSpeed");
        Objects.requireNonNull(gap, "gap");
        Objects.requireNonNull(leaderSpeed, "leaderSpeed");
        Objects.requireNonNull(style, "style");
        Ranges.GAP.check(gap.in(Unit.METRE));
        double leaderMps = Ranges.SPEED.check("leader speed", leaderSpeed.in(Unit.MPS));
        Check.above("speed of a follower that gains", followerSpeed.in(Unit.MPS), leaderMps, 150, "m/s");
        Working w = Working.of(style, "Time to collision", "time to collision at constant speeds");
        Symbol vf = w.given(
                "v_F", "speed of the follower", followerSpeed, style.units().speed());
        Symbol vl =
                w.given("v_L", "speed of the leader", leaderSpeed, style.units().speed());
        Symbol g = w.given("g", "gap", gap, style.units().length());
        w.assume("both keep their speeds and the lane (" + TimeToCollision.SOURCE + ")");
        Symbol closing = w.step("w", "closing speed", vf.minus(vl));
        Symbol t = w.step("t", "time to collision", g.over(closing));
        w.checkBy(
                t,
                "gap and the leader's way until then, at the speed of the follower",
                g.plus(vl.times(t)).over(vf));
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(t, Unit.SECOND);
    }
}
