package io.github.stoplag.following;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
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

    /**
     * Makes a vehicle.
     *
     * @param speed the speed at time 0; 0 for a vehicle that stands
     * @param reaction the driver's perception-reaction time, in [0, 30] s; for a leader normally 0
     * @param response the brake system's answer to the pedal
     * @param deceleration the deceleration after the build-up; 0 for a vehicle that does not brake
     * @throws IllegalArgumentException if the reaction time is not in [0, 30] s
     */
    public BrakingVehicle(Speed speed, TimeSpan reaction, BrakeResponse response, Deceleration deceleration) {
        speedMps = speed.inMps();
        reactionS = Check.inRange("reaction time", reaction.inSeconds(), 0, 30, "s");
        deadS = response.deadTime().inSeconds();
        buildUpS = response.buildUp().inSeconds();
        decelMps2 = deceleration.inMps2();
    }

    BrakingVehicle(double speedMps, double reactionS, double deadS, double buildUpS, double decelMps2) {
        this.speedMps = speedMps;
        this.reactionS = reactionS;
        this.deadS = deadS;
        this.buildUpS = buildUpS;
        this.decelMps2 = decelMps2;
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
        return new BrakingVehicle(newSpeed, reaction(), response(), deceleration());
    }

    /**
     * Gives the same vehicle with another driver.
     *
     * @param newReaction the perception-reaction time, in [0, 30] s
     * @return the vehicle
     * @throws IllegalArgumentException if the reaction time is out of range
     */
    public BrakingVehicle withReaction(TimeSpan newReaction) {
        return new BrakingVehicle(speed(), newReaction, response(), deceleration());
    }

    /**
     * Gives the same vehicle on other tyres or another road.
     *
     * @param newDeceleration the deceleration after the build-up; 0 for one that does not brake
     * @return the vehicle
     */
    public BrakingVehicle withDeceleration(Deceleration newDeceleration) {
        return new BrakingVehicle(speed(), reaction(), response(), newDeceleration);
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
