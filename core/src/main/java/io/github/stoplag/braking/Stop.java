package io.github.stoplag.braking;

import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Road;
import io.github.stoplag.road.RoadDeceleration;

/**
 * The stop of one vehicle: perception-reaction at constant speed, brake dead time, linear build-up, constant deceleration.
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
 * <p>Example: {@code Stop.of(Speed.mps(30), TimeSpan.seconds(0.5), BrakeResponse.INSTANT, Deceleration.mps2(7))} stops in
 * 79.3 m.
 *
 * <p>Source: kinematics; see {@link StopKernel}.
 */
public final class Stop implements StopOutcome {
    private final Speed speed;
    private final TimeSpan reaction;
    private final BrakeResponse response;
    private final Deceleration deceleration;

    private Stop(Speed speed, TimeSpan reaction, BrakeResponse response, Deceleration deceleration) {
        this.speed = speed;
        this.reaction = reaction;
        this.response = response;
        this.deceleration = deceleration;
    }

    /**
     * Finds the stop under a known deceleration.
     *
     * @param speed the speed at time 0
     * @param reaction the driver's perception-reaction time, in [0, 30] s
     * @param response the brake system's answer to the pedal
     * @param deceleration the deceleration after the build-up
     * @return the stop; or that it never stops, if the deceleration is 0 and the vehicle moves
     * @throws IllegalArgumentException if the reaction time is out of range
     */
    public static StopOutcome of(Speed speed, TimeSpan reaction, BrakeResponse response, Deceleration deceleration) {
        Check.inRange("reaction time", reaction.inSeconds(), 0, 30, "s");
        if (deceleration.inMps2() == 0 && speed.inMps() > 0) {
            return new NeverStops("deceleration is 0 m/s²: the vehicle goes on at " + speed);
        }
        return new Stop(speed, reaction, response, deceleration);
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
        RoadDeceleration allowed = road.deceleration();
        if (allowed instanceof RoadDeceleration.Holds holds) {
            return of(speed, reaction, response, holds.deceleration());
        }
        return new NeverStops(((RoadDeceleration.CannotHold) allowed).reason());
    }

    /**
     * Gives the brake reaction distance: what is run at constant speed before the driver's foot is on the brake.
     *
     * @return the distance
     */
    public Distance reactionDistance() {
        return Distance.metres(StopKernel.reactionDistanceM(speed.inMps(), reaction.inSeconds()));
    }

    /**
     * Gives the braking distance from the pedal to rest, the brake system's dead time and build-up included.
     *
     * @return the distance
     */
    public Distance brakingDistance() {
        return Distance.metres(StopKernel.stoppingDistanceM(
                speed.inMps(),
                response.deadTime().inSeconds(),
                response.buildUp().inSeconds(),
                deceleration.inMps2()));
    }

    /**
     * Gives the stopping distance from time 0 to rest: brake reaction distance and braking distance.
     *
     * @return the distance
     */
    public Distance stoppingDistance() {
        return Distance.metres(StopKernel.stoppingDistanceM(
                speed.inMps(), onsetS(), response.buildUp().inSeconds(), deceleration.inMps2()));
    }

    /**
     * Gives the time from time 0 to rest; 0 for a vehicle that stands already.
     *
     * @return the time
     */
    public TimeSpan duration() {
        return TimeSpan.seconds(StopKernel.stoppingTimeS(
                speed.inMps(), onsetS(), response.buildUp().inSeconds(), deceleration.inMps2()));
    }

    /**
     * Gives the motion, for position, speed and deceleration at any time.
     *
     * @return the motion from time 0 on
     */
    public Trajectory trajectory() {
        return Trajectory.stop(speed.inMps(), onsetS(), response.buildUp().inSeconds(), deceleration.inMps2());
    }

    /**
     * Gives the deceleration after the build-up.
     *
     * @return the deceleration
     */
    public Deceleration deceleration() {
        return deceleration;
    }

    private double onsetS() {
        return reaction.inSeconds() + response.deadTime().inSeconds();
    }

    @Override
    public String toString() {
        return "stop from " + speed + " in " + stoppingDistance() + " and " + duration();
    }
}
