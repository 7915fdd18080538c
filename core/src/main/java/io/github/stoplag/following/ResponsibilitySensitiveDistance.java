package io.github.stoplag.following;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import java.util.Objects;

/**
 * The responsibility-sensitive minimum distance behind a vehicle in the same direction.
 *
 * <pre>
 *   d = max(0, v_F ρ + a ρ²/2 + (v_F + a ρ)² / (2 b_min) − v_L² / (2 b_max))
 * </pre>
 *
 * <p>ρ response time [s], in which the follower may speed up at a [m/s²]; b_min the least deceleration the follower
 * then brakes with, b_max the hardest the leader may [m/s²]. No default is supplied: the figures are the caller's.
 *
 * <p>The formula compares stopping distances. Where the follower brakes harder than the leader, b_min above b_max, the
 * two can touch on the way although both would have stopped apart; {@link #evidence()} says so,
 * {@link Encounter#gapNeeded()} has the exact border.
 *
 * <p>Range: ρ in [0, 30] s, a in [0, 20] m/s², b in (0, 200] m/s². Source: {@link #SOURCE}.
 *
 * <pre>{@code
 * ResponsibilitySensitiveDistance rule = new ResponsibilitySensitiveDistance(TimeSpan.seconds(1), 2,
 *         Deceleration.mps2(4), Deceleration.mps2(8));
 * rule.distance(Speed.mps(20), Speed.mps(20)); // 56.5 m
 * }</pre>
 *
 * @param response the response time ρ
 * @param speedingUpMps2 the follower's acceleration a during the response, in m/s²
 * @param followerLeast the follower's least deceleration b_min
 * @param leaderHardest the leader's hardest deceleration b_max
 */
public record ResponsibilitySensitiveDistance(
        TimeSpan response, double speedingUpMps2, Deceleration followerLeast, Deceleration leaderHardest)
        implements Evident {
    /**
     * Where the formula comes from; the form for opposite directions with the same terms was read, this one is
     * remembered.
     */
    public static final Source SOURCE = Source.fromMemory(
            "Shalev-Shwartz, Shammah & Shashua, On a formal model of safe and scalable self-driving cars, 2017",
            "safe longitudinal distance, same direction");

    /**
     * Checks the ranges.
     *
     * @param response the response time ρ
     * @param speedingUpMps2 the follower's acceleration a during the response, in m/s²
     * @param followerLeast the follower's least deceleration b_min
     * @param leaderHardest the leader's hardest deceleration b_max
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public ResponsibilitySensitiveDistance {
        Objects.requireNonNull(followerLeast, "followerLeast");
        Objects.requireNonNull(leaderHardest, "leaderHardest");
        Objects.requireNonNull(response, "response");
        Ranges.REACTION.check("response time", response.inSeconds());
        Check.inRange("acceleration during the response", speedingUpMps2, 0, 20, "m/s²");
        Ranges.BRAKING.check("follower's least deceleration", followerLeast.inMps2());
        Ranges.BRAKING.check("leader's hardest deceleration", leaderHardest.inMps2());
    }

    /**
     * Gives the distance.
     *
     * @param follower the follower's speed v_F
     * @param leader the leader's speed v_L
     * @return d, 0 where the formula gives less
     */
    public Distance distance(Speed follower, Speed leader) {
        Objects.requireNonNull(follower, "follower");
        Objects.requireNonNull(leader, "leader");
        double rhoS = response.inSeconds();
        double reachedMps = follower.inMps() + speedingUpMps2 * rhoS;
        double respondingM = rhoS * (follower.inMps() + 0.5 * speedingUpMps2 * rhoS);
        double followerM = respondingM + reachedMps * reachedMps / (2 * followerLeast.inMps2());
        double leaderM = leader.inMps() * leader.inMps() / (2 * leaderHardest.inMps2());
        return Distance.metres(Math.max(0, followerM - leaderM));
    }

    /**
     * Says what the distance rests on.
     *
     * @return the evidence, with a caveat if the follower brakes harder than the leader
     */
    @Override
    public Evidence evidence() {
        return Evidence.of("responsibility-sensitive distance", SOURCE)
                .withCaveatIf(
                        followerLeast.compareTo(leaderHardest) > 0,
                        "the follower's least deceleration " + followerLeast + " exceeds the leader's hardest "
                                + leaderHardest + ": a difference of stopping distances can be too short then");
    }
}
