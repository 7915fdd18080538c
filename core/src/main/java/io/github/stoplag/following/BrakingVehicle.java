package io.github.stoplag.following;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;

/**
 * One vehicle of a pair: how fast it goes and how it brakes.
 *
 * @param speed the speed at time 0; 0 for a vehicle that stands
 * @param reaction the driver's perception-reaction time, in [0, 30] s; for a leader normally 0
 * @param response the brake system's answer to the pedal
 * @param deceleration the deceleration after the build-up; 0 for a vehicle that does not brake
 */
public record BrakingVehicle(Speed speed, TimeSpan reaction, BrakeResponse response, Deceleration deceleration) {
    /**
     * Checks the reaction time.
     *
     * @param speed the speed at time 0; 0 for a vehicle that stands
     * @param reaction the driver's perception-reaction time, in [0, 30] s; for a leader normally 0
     * @param response the brake system's answer to the pedal
     * @param deceleration the deceleration after the build-up; 0 for a vehicle that does not brake
     * @throws IllegalArgumentException if it is not in [0, 30] s
     */
    public BrakingVehicle {
        Check.inRange("reaction time", reaction.inSeconds(), 0, 30, "s");
    }

    /**
     * Gives the same vehicle at another speed.
     *
     * @param newSpeed the speed at time 0
     * @return the vehicle
     */
    public BrakingVehicle withSpeed(Speed newSpeed) {
        return new BrakingVehicle(newSpeed, reaction, response, deceleration);
    }

    /**
     * Gives the same vehicle with another driver.
     *
     * @param newReaction the perception-reaction time, in [0, 30] s
     * @return the vehicle
     * @throws IllegalArgumentException if the reaction time is out of range
     */
    public BrakingVehicle withReaction(TimeSpan newReaction) {
        return new BrakingVehicle(speed, newReaction, response, deceleration);
    }

    /**
     * Gives the same vehicle on other tyres or another road.
     *
     * @param newDeceleration the deceleration after the build-up; 0 for one that does not brake
     * @return the vehicle
     */
    public BrakingVehicle withDeceleration(Deceleration newDeceleration) {
        return new BrakingVehicle(speed, reaction, response, newDeceleration);
    }

    /** When its deceleration starts, counted from the moment its driver is called on. */
    double onsetS() {
        return reaction.inSeconds() + response.deadTime().inSeconds();
    }
}
