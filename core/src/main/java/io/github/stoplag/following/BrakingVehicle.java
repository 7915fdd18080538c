package io.github.stoplag.following;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Road;
import io.github.stoplag.source.Evidence;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One vehicle of a pair: how fast it goes and how it brakes.
 *
 * <p>Range: reaction time in [0, 30] s. Two vehicles are equal if all their values are.
 */
public final class BrakingVehicle {
    // plain doubles, so that the JIT can take the caller's value objects apart
    final double speedMps;
    final double reactionS;
    final double deadS;
    final double buildUpS;
    final double decelMps2;

    /** What the deceleration rests on beyond being given: a road's friction and grade. */
    final Evidence origin;

    BrakingVehicle(
            double speedMps, double reactionS, double deadS, double buildUpS, double decelMps2, Evidence origin) {
        this.speedMps = speedMps;
        this.reactionS = reactionS;
        this.deadS = deadS;
        this.buildUpS = buildUpS;
        this.decelMps2 = decelMps2;
        this.origin = origin;
    }

    /**
     * Makes a vehicle.
     *
     * @param speed the speed at time 0; 0 for a vehicle that stands
     * @param reaction the driver's perception-reaction time, in [0, 30] s; for a leader normally 0
     * @param response the brake system's answer to the pedal
     * @param deceleration the deceleration after the build-up; 0 for a vehicle that does not brake
     * @return the vehicle
     * @throws IllegalArgumentException if the reaction time is not in [0, 30] s
     */
    public static BrakingVehicle of(Speed speed, TimeSpan reaction, BrakeResponse response, Deceleration deceleration) {
        Objects.requireNonNull(reaction, "reaction");
        return of(speed, reaction, response, deceleration, Evidence.none());
    }

    /**
     * Makes a vehicle that uses the full friction of a road; what comes of it tells the friction's source and caveats.
     *
     * @param speed the speed at time 0; 0 for a vehicle that stands
     * @param reaction the driver's perception-reaction time, in [0, 30] s; for a leader normally 0
     * @param response the brake system's answer to the pedal
     * @param road the road
     * @return the vehicle
     * @throws IllegalArgumentException if the reaction time is not in [0, 30] s
     * @throws java.util.NoSuchElementException if the road cannot slow it
     */
    public static BrakingVehicle onRoad(Speed speed, TimeSpan reaction, BrakeResponse response, Road road) {
        Objects.requireNonNull(reaction, "reaction");
        return of(speed, reaction, response, road.deceleration().orElseThrow(), road.evidence());
    }

    private static BrakingVehicle of(
            Speed speed, TimeSpan reaction, BrakeResponse response, Deceleration deceleration, Evidence origin) {
        return new BrakingVehicle(
                speed.inMps(),
                Ranges.REACTION.check(reaction.inSeconds()),
                response.deadTime().inSeconds(),
                response.buildUp().inSeconds(),
                deceleration.inMps2(),
                origin);
    }

    /**
     * Gives the speed at time 0.
     *
     * @return the speed, 0 for a vehicle that stands
     */
    public Speed speed() {
        return Speed.mps(speedMps);
    }

    /**
     * Gives the driver's perception-reaction time.
     *
     * @return the time, for a leader normally 0
     */
    public TimeSpan reaction() {
        return TimeSpan.seconds(reactionS);
    }

    /**
     * Gives the brake system's answer to the pedal.
     *
     * @return the response
     */
    public BrakeResponse response() {
        return new BrakeResponse(TimeSpan.seconds(deadS), TimeSpan.seconds(buildUpS));
    }

    /**
     * Gives the deceleration after the build-up.
     *
     * @return the deceleration, 0 for a vehicle that does not brake
     */
    public Deceleration deceleration() {
        return Deceleration.mps2(decelMps2);
    }

    /**
     * Gives the same vehicle at another speed.
     *
     * @param newSpeed the speed at time 0
     * @return the vehicle
     */
    public BrakingVehicle withSpeed(Speed newSpeed) {
        Objects.requireNonNull(newSpeed, "newSpeed");
        return of(newSpeed, reaction(), response(), deceleration(), origin);
    }

    /**
     * Gives the same vehicle with another driver.
     *
     * @param newReaction the perception-reaction time, in [0, 30] s
     * @return the vehicle
     * @throws IllegalArgumentException if the reaction time is out of range
     */
    public BrakingVehicle withReaction(TimeSpan newReaction) {
        Objects.requireNonNull(newReaction, "newReaction");
        return of(speed(), newReaction, response(), deceleration(), origin);
    }

    /**
     * Gives the same vehicle on other tyres or another road.
     *
     * @param newDeceleration the deceleration after the build-up; 0 for one that does not brake
     * @return the vehicle
     */
    public BrakingVehicle withDeceleration(Deceleration newDeceleration) {
        Objects.requireNonNull(newDeceleration, "newDeceleration");
        return of(speed(), reaction(), response(), newDeceleration);
    }

    /** When its deceleration starts, counted from the moment its driver is called on. */
    double onsetS() {
        return reactionS + deadS;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof BrakingVehicle that
                && speedMps == that.speedMps
                && reactionS == that.reactionS
                && deadS == that.deadS
                && buildUpS == that.buildUpS
                && decelMps2 == that.decelMps2;
    }

    @Override
    public int hashCode() {
        return Objects.hash(speedMps, reactionS, deadS, buildUpS, decelMps2);
    }

    @Override
    public String toString() {
        return "BrakingVehicle[speed=" + speed() + ", reaction=" + reaction() + ", response=" + response()
                + ", deceleration=" + deceleration() + "]";
    }
}
