package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.following.GapNeeded;
import io.github.stoplag.following.Pair;
import io.github.stoplag.following.PairOutcome;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caution;
import io.github.stoplag.worked.Expression.Symbol;
import java.util.Objects;

/**
 * Worked solutions on a leader that brakes at time 0 and a follower that brakes T later: the gap needed, contact,
 * closing speed.
 *
 * <p>The difference of the stopping distances is not enough where the follower brakes harder: the two may touch while
 * both still move.
 *
 * <p>Source: kinematics; see {@link Pair}.
 *
 * @param leaderSpeed the leader's speed v_L, above 0
 * @param leaderDeceleration the leader's deceleration a_L, above 0
 * @param followerSpeed the follower's speed v_F, above 0
 * @param followerDeceleration the follower's deceleration a_F, above 0
 * @param delay the follower's total delay T: lamp lag, reaction and brake, in [0, 30] s
 */
public record WorkedPair(
        Given leaderSpeed, Given leaderDeceleration, Given followerSpeed, Given followerDeceleration, Given delay) {
    private static final String FIND_GAP = "gap with which they just do not touch";

    /**
     * Checks the ranges.
     *
     * @param leaderSpeed the leader's speed v_L, above 0
     * @param leaderDeceleration the leader's deceleration a_L, above 0
     * @param followerSpeed the follower's speed v_F, above 0
     * @param followerDeceleration the follower's deceleration a_F, above 0
     * @param delay the follower's total delay T: lamp lag, reaction and brake, in [0, 30] s
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public WorkedPair {
        Objects.requireNonNull(delay, "delay");
        Objects.requireNonNull(followerDeceleration, "followerDeceleration");
        Objects.requireNonNull(followerSpeed, "followerSpeed");
        Objects.requireNonNull(leaderDeceleration, "leaderDeceleration");
        Objects.requireNonNull(leaderSpeed, "leaderSpeed");
        Ranges.MOVING.check("leader speed", leaderSpeed.in(Unit.MPS));
        Ranges.MOVING.check("follower speed", followerSpeed.in(Unit.MPS));
        Ranges.BRAKING.check("leader deceleration", leaderDeceleration.in(Unit.MPS2));
        Ranges.BRAKING.check("follower deceleration", followerDeceleration.in(Unit.MPS2));
        Ranges.REACTION.check("delay", delay.in(Unit.SECOND));
    }

    /** The symbols of a working, so that its parts share them. */
    private record Symbols(Symbol vl, Symbol al, Symbol vf, Symbol af, Symbol t) {}

    /**
     * Works the gap needed: the larger of the difference of the stopping distances and, where the speeds become equal
     * while both move, what the follower has gained until then.
     *
     * @param style units and digits
     * @return the solution
     */
    public Solution gapNeeded(Style style) {
        Working w = Working.of(style, "Gap needed behind a braking vehicle", FIND_GAP);
        Symbol needed = needed(w, givens(w));
        w.checkAgainst(needed, "search over the whole motion", neededByModel());
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(needed, style.units().length());
    }

    /**
     * Works what becomes of a gap: the closing speed at contact, or the smallest gap where there is none.
     *
     * @param style units and digits
     * @param gap the gap g at time 0, in [0, 1e5] m
     * @return the solution; it answers the closing speed, or the smallest gap if the two do not touch
     */
    public Solution outcome(Style style, Given gap) {
        PairOutcome outcome = pair(gap).outcome();
        if (outcome instanceof PairOutcome.Contact contact) {
            return contact(style, gap, contact);
        }
        Working w = Working.of(style, "Smallest gap behind a braking vehicle", "smallest gap");
        Symbols s = givens(w);
        Symbol g = w.given("g", "gap at time 0", gap);
        Symbol needed = needed(w, s);
        Symbol smallest = w.step("g_min", "smallest gap", g.minus(needed));
        w.checkAgainst(
                smallest,
                "search over the whole motion",
                Amount.of(((PairOutcome.NoContact) outcome).smallestGap().inMetres(), Unit.METRE));
        w.caution(WorkedStop.NO_PROOF);
        return w.answer(smallest, style.units().length());
    }

    /**
     * Whether a gap ends in a contact after the follower has begun to brake, with the leader standing or still moving.
     */
    boolean endsInContact(Given gap, boolean leaderStanding) {
        return pair(gap).outcome() instanceof PairOutcome.Contact contact
                && contact.leaderStanding() == leaderStanding
                && contact.at().inSeconds() > delay.in(Unit.SECOND);
    }

    private Solution contact(Style style, Given gap, PairOutcome.Contact contact) {
        Working w = Working.of(style, "Contact with a braking vehicle", "closing speed at contact");
        Symbols s = givens(w);
        Symbol g = w.given("g", "gap at time 0", gap);
        boolean reacting = contact.at().inSeconds() <= delay.in(Unit.SECOND);
        Symbol closing = contact.leaderStanding()
                ? intoStanding(w, s, g, reacting)
                : reacting ? beforeBraking(w, s, g) : whileBothBrake(w, s, g);
        w.checkAgainst(
                closing,
                "search over the whole motion",
                Amount.of(contact.closingSpeed().inMps(), Unit.MPS));
        w.caution(new Caution(
                "injury", "A closing speed says how hard the contact is, not who is hurt: that depends on much else."));
        return w.answer(closing, style.units().roadSpeed());
    }

    private Symbols givens(Working w) {
        Symbols s = new Symbols(
                w.given("v_L", "speed of the leader", leaderSpeed),
                w.given("a_L", "deceleration of the leader", leaderDeceleration),
                w.given("v_F", "speed of the follower", followerSpeed),
                w.given("a_F", "deceleration of the follower", followerDeceleration),
                w.given("T", "delay of the follower's braking", delay));
        w.assume("the leader brakes from time 0 on, the follower from T on, both with constant deceleration");
        w.assume("one straight lane, no steering away; the gap is from the follower's front to the leader's rear");
        return s;
    }

    private Symbol needed(Working w, Symbols s) {
        Symbol leader = leaderStop(w, s);
        Symbol follower = w.step(
                "s_F",
                "stopping distance of the follower, delay included",
                s.vf.times(s.t).plus(s.vf.squared().over(number(2).times(s.af))));
        Symbol needed = w.step("g_1", "gap needed when both stand", follower.minus(leader));
        double af = followerDeceleration.in(Unit.MPS2);
        double al = leaderDeceleration.in(Unit.MPS2);
        double delayS = delay.in(Unit.SECOND);
        double equalS = (followerSpeed.in(Unit.MPS) - leaderSpeed.in(Unit.MPS) + af * delayS) / (af - al);
        if (af > al && equalS >= delayS && equalS <= leaderSpeed.in(Unit.MPS) / al) {
            Symbol te = w.step(
                    "t_e",
                    "time at which both are equally fast, still moving",
                    s.vf.minus(s.vl).plus(s.af.times(s.t)).over(s.af.minus(s.al)));
            Symbol moving = w.step(
                    "g_2",
                    "gap needed while both move: what the follower has gained by then",
                    s.vf.minus(s.vl)
                            .times(te)
                            .plus(s.al.times(te.squared()).over(number(2)))
                            .minus(s.af.times(te.minus(s.t).squared()).over(number(2))));
            needed = w.in(moving, Unit.METRE) > w.in(needed, Unit.METRE) ? moving : needed;
        }
        if (w.in(needed, Unit.METRE) < 0) {
            return w.choose(
                    "g_n",
                    "the follower never gains on the leader: any gap is enough",
                    Amount.of(0, w.amount(needed).unit()));
        }
        return w.choose("g_n", "the larger gap decides", needed);
    }

    private static Symbol leaderStop(Working w, Symbols s) {
        return w.step(
                "s_L",
                "stopping distance of the leader",
                s.vl.squared().over(number(2).times(s.al)));
    }

    private static Symbol intoStanding(Working w, Symbols s, Symbol g, boolean reacting) {
        Symbol leader = leaderStop(w, s);
        if (reacting) {
            return w.step("v_c", "the leader stands and the follower does not brake yet", s.vf);
        }
        Symbol left = w.step(
                "s_x",
                "distance in which the follower brakes before it reaches the standing leader",
                g.plus(leader).minus(s.vf.times(s.t)));
        return w.step(
                "v_c",
                "speed left after that distance",
                s.vf.squared().minus(number(2).times(s.af).times(left)).root());
    }

    private static Symbol beforeBraking(Working w, Symbols s, Symbol g) {
        Symbol excess = w.step("v_d", "closing speed at time 0", s.vf.minus(s.vl));
        Symbol closing = w.step(
                "v_c",
                "closing speed at contact, before the follower brakes",
                excess.squared().plus(number(2).times(s.al).times(g)).root());
        w.step("t_c", "time of contact", closing.minus(excess).over(s.al));
        return closing;
    }

    private static Symbol whileBothBrake(Working w, Symbols s, Symbol g) {
        Symbol gap = w.step(
                "g_T",
                "gap when the follower starts to brake",
                g.plus(s.vl.times(s.t))
                        .minus(s.al.times(s.t.squared()).over(number(2)))
                        .minus(s.vf.times(s.t)));
        Symbol speed = w.step(
                "v_T",
                "closing speed when the follower starts to brake",
                s.vf.minus(s.vl).plus(s.al.times(s.t)));
        return w.step(
                "v_c",
                "closing speed at contact, both still moving",
                speed.squared()
                        .minus(number(2).times(s.af.minus(s.al)).times(gap))
                        .root());
    }

    private Pair pair(Given gap) {
        return Pair.of(
                vehicle(leaderSpeed, leaderDeceleration, 0),
                vehicle(followerSpeed, followerDeceleration, delay.in(Unit.SECOND)),
                Distance.metres(gap.in(Unit.METRE)),
                TimeSpan.seconds(0));
    }

    private Amount neededByModel() {
        return pair(Given.of(0, Unit.METRE)).gapNeeded() instanceof GapNeeded.Finite finite
                ? Amount.of(finite.border().inMetres(), Unit.METRE)
                : Amount.of(0, Unit.METRE);
    }

    private static BrakingVehicle vehicle(Given speed, Given deceleration, double reactionS) {
        return BrakingVehicle.of(
                Speed.mps(speed.in(Unit.MPS)),
                TimeSpan.seconds(reactionS),
                BrakeResponse.INSTANT,
                Deceleration.mps2(deceleration.in(Unit.MPS2)));
    }
}
