package io.github.stoplag.following;

import io.github.stoplag.kernel.GapEvent;
import io.github.stoplag.kernel.GapKernel;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;

/**
 * A leader and a follower on one lane, each with any motion of constant-jerk phases: braking in several steps, speeding
 * up, at constant speed, standing, or not responding at all.
 *
 * <p>gap(t) = g + s_L(t) − s_F(t)
 *
 * <p>g gap at time 0 from the follower's front to the leader's rear [m]; s_L, s_F distances run since time 0 [m].
 * Range: g in [0, 1e5] m. Both motions are prescribed: neither vehicle answers to the other, and nothing is said about
 * the motion after a contact.
 *
 * <p>Example: {@code Encounter.of(Trajectory.startingAt(0).build(), Trajectory.stop(20, 1, 0, 8),
 * Distance.metres(50)).outcome()} is a stop 5 m behind a standing vehicle.
 *
 * <p>Source: kinematics; see {@link GapKernel}.
 *
 * @param leader the motion of the vehicle ahead
 * @param follower the motion of the vehicle behind
 * @param gap the gap at time 0
 * @param origin what the motions and the gap come from
 */
public record Encounter(Trajectory leader, Trajectory follower, Distance gap, Evident origin) implements Evident {
    private static final double HORIZON_S = 1e6;
    private static final double FARTHEST_M = 1e7;
    private static final Evident AS_GIVEN = () -> Evidence.of(
                    "two prescribed motions of constant jerk and the gap between them, as given; solved exactly")
            .withCautions(Caution.NO_PROOF);

    /**
     * Checks the gap.
     *
     * @param leader the motion of the vehicle ahead
     * @param follower the motion of the vehicle behind
     * @param gap the gap at time 0
     * @param origin what the motions and the gap come from
     * @throws IllegalArgumentException if the gap is not in [0, 1e5] m
     * @throws NullPointerException if a part is null
     */
    public Encounter {
        Objects.requireNonNull(gap, "gap");
        Objects.requireNonNull(leader, "leader");
        Objects.requireNonNull(follower, "follower");
        Objects.requireNonNull(origin, "origin");
        Ranges.GAP.check(gap.inMetres());
    }

    /**
     * Makes an encounter of motions given without a source.
     *
     * @param leader the motion of the vehicle ahead
     * @param follower the motion of the vehicle behind
     * @param gap the gap at time 0
     * @return the encounter
     * @throws IllegalArgumentException if the gap is not in [0, 1e5] m
     */
    public static Encounter of(Trajectory leader, Trajectory follower, Distance gap) {
        Objects.requireNonNull(gap, "gap");
        return new Encounter(leader, follower, gap, AS_GIVEN);
    }

    /**
     * Says what outcome, gap needed and times to collision rest on.
     *
     * @return the evidence of the origin of both motions
     */
    @Override
    public Evidence evidence() {
        return origin.evidence();
    }

    /**
     * Finds the outcome, exactly.
     *
     * @return no contact and the smallest gap, or contact, when and how fast
     * @throws IllegalArgumentException if the contact or the smallest gap comes later than 1e6 s
     */
    public PairOutcome outcome() {
        GapEvent event = new GapEvent();
        GapKernel.event(leader, follower, gap.inMetres(), event);
        return outcomeOf(event, leader.speedAtMps(0), follower.speedAtMps(0), gap.inMetres());
    }

    static PairOutcome outcomeOf(GapEvent event, double leaderMps, double followerMps, double gapM) {
        if (!(event.timeS() <= HORIZON_S)) {
            throw beyondHorizon(event.contact(), event.timeS(), leaderMps, followerMps, gapM);
        }
        if (event.contact()) {
            return new PairOutcome.Contact(
                    event.timeS(),
                    event.closingSpeedMps(),
                    event.leaderSpeedMps(),
                    event.followerSpeedMps(),
                    event.leaderStanding());
        }
        return new PairOutcome.NoContact(event.smallestGapM(), event.timeS(), event.grazing());
    }

    private static IllegalArgumentException beyondHorizon(
            boolean contact, double timeS, double leaderMps, double followerMps, double gapM) {
        return new IllegalArgumentException((contact ? "contact" : "smallest gap")
                + " must come within the horizon of 1e6 s, got " + Numbers.text(timeS) + " s: "
                + speeds(leaderMps, followerMps) + ", gap " + Distance.metres(gapM));
    }

    /**
     * Finds the gap with which the two just do not touch: −min over t of (s_L − s_F). The encounter's own gap plays no
     * part.
     *
     * @return the exact border, or that no gap up to 1e7 m is enough
     */
    public GapNeeded gapNeeded() {
        double neededM = GapKernel.gapNeededM(leader, follower, new GapEvent());
        if (Double.isInfinite(neededM)) {
            return new GapNeeded.Unbounded("the follower goes on faster than the leader for ever");
        }
        return neededOf(neededM, leader.speedAtMps(0), follower.speedAtMps(0));
    }

    static GapNeeded neededOf(double neededM, double leaderMps, double followerMps) {
        if (neededM > FARTHEST_M) {
            return new GapNeeded.Unbounded("the gap needed is " + Numbers.text(neededM) + " m, beyond 1e7 m: "
                    + speeds(leaderMps, followerMps));
        }
        return new GapNeeded.Finite(Distance.metres(neededM));
    }

    /** Names both speeds to 16 digits, since a horizon is passed when they are nearly equal. */
    private static String speeds(double leaderMps, double followerMps) {
        return "leader at " + Numbers.text(leaderMps, 16) + " m/s, follower at " + Numbers.text(followerMps, 16)
                + " m/s";
    }

    /**
     * Gives the gap at a time, as the prescribed motions have it; negative once the follower would have run through the
     * leader.
     *
     * @param time the time, in [0, 1e6] s
     * @return the gap
     * @throws IllegalArgumentException if the time is out of range
     */
    public Distance gapAt(TimeSpan time) {
        double timeS = time.inSeconds();
        return Distance.metres(gap.inMetres() + (leader.positionAtM(timeS) - follower.positionAtM(timeS)));
    }

    /**
     * Follows the time to collision over the whole motion.
     *
     * @return its course up to the contact, or for ever
     * @throws IllegalArgumentException as {@link #outcome}
     */
    public TimeToCollision timeToCollision() {
        return TimeToCollision.of(this);
    }

    /**
     * Tells what changes from this encounter to another one.
     *
     * @param after the other one, for example with another lamp
     * @return the difference in metres, seconds, outcome and closing speed
     * @throws IllegalArgumentException as {@link #outcome}, for either
     */
    public Difference differenceTo(Encounter after) {
        Objects.requireNonNull(after, "after");
        return Difference.between(this, after);
    }
}
