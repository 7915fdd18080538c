package io.github.stoplag.braking;

import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Road;
import io.github.stoplag.road.RoadDeceleration;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The stop of one vehicle: perception-reaction at constant speed, brake dead time, linear build-up, constant
 * deceleration.
 *
 * <pre>
 *   s = v (t_r + t_d) + v t_b/2 + v²/(2a) − a t_b²/24      for v ≥ a t_b/2
 *   s = v (t_r + t_d) + 2/3 v √(2 v t_b/a)                 for a stop inside the build-up
 * </pre>
 *
 * <p>Symbols: s stopping distance [m], v speed [m/s], t_r reaction time, t_d brake dead time, t_b build-up time [s], a
 * deceleration [m/s²]. Time 0 is the moment the driver is called on to brake.
 *
 * <p>Range: reaction time in [0, 30] s. Assumes a uniform road, all wheels at the same use of friction, no drag.
 *
 * <p>Example: {@code Stop.of(Speed.mps(30), TimeSpan.seconds(0.5), BrakeResponse.INSTANT, Deceleration.mps2(7))} stops
 * in 79.3 m.
 *
 * <p>Source: kinematics; see {@link StopKernel}.
 */
public final class Stop implements StopOutcome {
    private static final double LONGEST_M = 1e7;
    private static final double LONGEST_S = 1e6;
    private static final double SLIGHT_MPS2 = 0.01;

    // plain doubles, so that the JIT of Java 17 can take the caller's value objects apart
    private final double speedMps;
    private final double reactionS;
    private final double deadS;
    private final double buildUpS;
    private final double decelMps2;
    private final @Nullable Evident origin;

    private Stop(
            Speed speed,
            TimeSpan reaction,
            BrakeResponse response,
            Deceleration deceleration,
            @Nullable Evident origin) {
        this.speedMps = speed.inMps();
        this.reactionS = reaction.inSeconds();
        this.deadS = response.deadTime().inSeconds();
        this.buildUpS = response.buildUp().inSeconds();
        this.decelMps2 = deceleration.inMps2();
        this.origin = origin;
    }

    /**
     * Finds the stop under a known deceleration.
     *
     * @param speed the speed at time 0
     * @param reaction the driver's perception-reaction time, in [0, 30] s
     * @param response the brake system's answer to the pedal
     * @param deceleration the deceleration after the build-up
     * @return the stop; or that it never stops, if the deceleration is 0 and the vehicle moves, or if it is so small
     *     that the stop would take more than 1e7 m or 1e6 s
     * @throws IllegalArgumentException if the reaction time is out of range
     */
    public static StopOutcome of(Speed speed, TimeSpan reaction, BrakeResponse response, Deceleration deceleration) {
        Objects.requireNonNull(reaction, "reaction");
        return of(speed, reaction, response, deceleration, null);
    }

    /**
     * Finds the stop under a deceleration that comes from somewhere: a road, or brakes on a road.
     *
     * @param speed the speed at time 0
     * @param reaction the driver's perception-reaction time, in [0, 30] s
     * @param response the brake system's answer to the pedal
     * @param deceleration the deceleration after the build-up
     * @param origin what the deceleration comes from, null if it is given as such
     * @return the stop, or that it never stops, as {@link #of(Speed, TimeSpan, BrakeResponse, Deceleration)}
     * @throws IllegalArgumentException if the reaction time is out of range
     */
    public static StopOutcome of(
            Speed speed,
            TimeSpan reaction,
            BrakeResponse response,
            Deceleration deceleration,
            @Nullable Evident origin) {
        Objects.requireNonNull(reaction, "reaction");
        Ranges.REACTION.check(reaction.inSeconds());
        Stop stop = new Stop(speed, reaction, response, deceleration, origin);
        if (deceleration.inMps2() == 0 && speed.inMps() > 0) {
            return new NeverStops("deceleration is 0 m/s²: the vehicle goes on at " + speed, stop.evidence());
        }
        return stop.isWithinReach() ? stop : stop.beyondReach();
    }

    /** Only a deceleration of next to nothing can lead beyond what a distance or a time may be. */
    private boolean isWithinReach() {
        return decelMps2 >= SLIGHT_MPS2 || (distanceM() <= LONGEST_M && durationS() <= LONGEST_S);
    }

    private NeverStops beyondReach() {
        return new NeverStops(
                "a deceleration of " + deceleration() + " takes " + Numbers.text(distanceM()) + " m and "
                        + Numbers.text(durationS()) + " s from " + Speed.mps(speedMps)
                        + ", beyond the 1e7 m and 1e6 s looked at here",
                evidence());
    }

    private double distanceM() {
        return StopKernel.stoppingDistanceM(speedMps, reactionS + deadS, buildUpS, decelMps2);
    }

    private double durationS() {
        return StopKernel.stoppingTimeS(speedMps, reactionS + deadS, buildUpS, decelMps2);
    }

    /**
     * Finds the stop under the full friction of a road.
     *
     * @param speed the speed at time 0
     * @param reaction the driver's perception-reaction time, in [0, 30] s
     * @param response the brake system's answer to the pedal
     * @param road the road
     * @return the stop; or that it never stops, if friction does not outweigh the downgrade
     * @throws IllegalArgumentException if the reaction time is out of range
     */
    public static StopOutcome onRoad(Speed speed, TimeSpan reaction, BrakeResponse response, Road road) {
        Objects.requireNonNull(reaction, "reaction");
        RoadDeceleration allowed = road.deceleration();
        if (allowed instanceof RoadDeceleration.Holds holds) {
            return of(speed, reaction, response, holds.deceleration(), road);
        }
        return neverStops(((RoadDeceleration.CannotHold) allowed).reason(), speed, reaction, response, road);
    }

    static NeverStops neverStops(
            String reason, Speed speed, TimeSpan reaction, BrakeResponse response, Evident origin) {
        Ranges.REACTION.check(reaction.inSeconds());
        return new NeverStops(reason, new Stop(speed, reaction, response, Deceleration.mps2(0), origin).evidence());
    }

    /**
     * Gives the speed the vehicle stops from.
     *
     * @return the speed at time 0
     */
    public Speed speed() {
        return Speed.mps(speedMps);
    }

    /**
     * Gives how long the driver takes.
     *
     * @return the perception-reaction time
     */
    public TimeSpan reaction() {
        return TimeSpan.seconds(reactionS);
    }

    /**
     * Gives how the brakes answer.
     *
     * @return the brake response
     */
    public BrakeResponse response() {
        return new BrakeResponse(TimeSpan.seconds(deadS), TimeSpan.seconds(buildUpS));
    }

    /**
     * Gives what the deceleration comes from.
     *
     * @return a road, or brakes on a road; nothing if it was given as such
     */
    public Optional<Evident> origin() {
        return Optional.ofNullable(origin);
    }

    /**
     * Gives the brake reaction distance: what is run at constant speed before the driver's foot is on the brake.
     *
     * @return the distance
     */
    public Distance reactionDistance() {
        return Distance.metres(StopKernel.reactionDistanceM(speedMps, reactionS));
    }

    /**
     * Gives the braking distance from the pedal to rest, the brake system's dead time and build-up included.
     *
     * @return the distance
     */
    public Distance brakingDistance() {
        return Distance.metres(StopKernel.stoppingDistanceM(speedMps, deadS, buildUpS, decelMps2));
    }

    /**
     * Gives the stopping distance from time 0 to rest: brake reaction distance and braking distance.
     *
     * @return the distance
     */
    public Distance stoppingDistance() {
        return Distance.metres(distanceM());
    }

    /**
     * Gives the time from time 0 to rest; 0 for a vehicle that stands already.
     *
     * @return the time
     */
    public TimeSpan duration() {
        return TimeSpan.seconds(durationS());
    }

    /**
     * Gives the motion, for position, speed and deceleration at any time.
     *
     * @return the motion from time 0 on
     */
    public Trajectory trajectory() {
        return Trajectory.stop(speedMps, reactionS + deadS, buildUpS, decelMps2);
    }

    /**
     * Gives the deceleration after the build-up.
     *
     * @return the deceleration
     */
    public Deceleration deceleration() {
        return Deceleration.mps2(decelMps2);
    }

    /**
     * Says what the stop rests on.
     *
     * @return model, inputs and reservations, the road's friction and grade with their own; made anew by each call
     */
    @Override
    public Evidence evidence() {
        return origin == null
                ? StopEvidence.of(speed(), reaction(), response(), deceleration())
                : StopEvidence.of(speed(), reaction(), response(), deceleration(), origin);
    }

    @Override
    public Optional<Stop> stop() {
        return Optional.of(this);
    }

    @Override
    public Stop orElseThrow() {
        return this;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Stop that
                && speed().equals(that.speed())
                && reaction().equals(that.reaction())
                && response().equals(that.response())
                && deceleration().equals(that.deceleration())
                && evidence().equals(that.evidence());
    }

    @Override
    public int hashCode() {
        return Objects.hash(speedMps, reactionS, deadS, buildUpS, decelMps2);
    }

    @Override
    public String toString() {
        return "stop from " + Speed.mps(speedMps) + " in " + stoppingDistance() + " and " + duration();
    }
}
