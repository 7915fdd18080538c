/**
 * Two vehicles on one lane: smallest gap, contact, closing speed, needed gap.
 *
 * <p>Two vehicles that brake alike: the follower runs on for v (t_r + lamp latency) = 22 m of the 30 m between them:
 *
 * <pre>{@code
 * BrakingVehicle leader = BrakingVehicle.of(Speed.mps(20), TimeSpan.seconds(0),
 *         BrakeResponse.INSTANT, Deceleration.mps2(5));
 * BrakingVehicle follower = leader.withReaction(TimeSpan.seconds(1));
 * Pair.of(leader, follower, Distance.metres(30), TimeSpan.seconds(0.1))
 *         .outcome().noContact().orElseThrow().smallestGap(); // 8 m
 * }</pre>
 */
@NullMarked
package io.github.stoplag.following;

import org.jspecify.annotations.NullMarked;
