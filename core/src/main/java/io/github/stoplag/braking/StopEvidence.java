package io.github.stoplag.braking;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;

/**
 * What a {@link Stop} rests on, made on demand from what it was asked: the stop itself carries numbers only, so that
 * computing millions of them costs nothing.
 *
 * <p>Internal: it is public for the evidence of pairs; users ask {@link Stop#evidence()}.
 */
public final class StopEvidence {
    private StopEvidence() {}

    /**
     * Gives model, inputs and reservations of a stop.
     *
     * @param speed the speed at time 0
     * @param reaction the driver's perception-reaction time
     * @param response the brake system's answer to the pedal
     * @param deceleration the deceleration after the build-up
     * @return the evidence; with a caveat if the deceleration asks for a friction above 1 on the level
     */
    public static Evidence of(Speed speed, TimeSpan reaction, BrakeResponse response, Deceleration deceleration) {
        return of("vehicle", speed, reaction, response, deceleration);
    }

    /**
     * Gives the same of a stop whose deceleration comes from somewhere, such as the full friction of a road.
     *
     * @param speed the speed at time 0
     * @param reaction the driver's perception-reaction time
     * @param response the brake system's answer to the pedal
     * @param deceleration the deceleration after the build-up
     * @param origin what the deceleration comes from
     * @return the evidence, with that of the origin: friction, its source and caveats, grade
     */
    public static Evidence of(
            Speed speed, TimeSpan reaction, BrakeResponse response, Deceleration deceleration, Evident origin) {
        return of("vehicle", speed, reaction, response, deceleration, "from what follows")
                .with(origin.evidence());
    }

    /**
     * Gives the same of a vehicle among others.
     *
     * @param who which vehicle, for example {@code follower}
     * @param speed the speed at time 0
     * @param reaction the driver's perception-reaction time
     * @param response the brake system's answer to the pedal
     * @param deceleration the deceleration after the build-up; 0 for a vehicle that does not brake
     * @return the evidence
     */
    public static Evidence of(
            String who, Speed speed, TimeSpan reaction, BrakeResponse response, Deceleration deceleration) {
        return of(who, speed, reaction, response, deceleration, "as given");
    }

    private static Evidence of(
            String who,
            Speed speed,
            TimeSpan reaction,
            BrakeResponse response,
            Deceleration deceleration,
            String origin) {
        return Evidence.of(
                        "motion: constant speed until the brakes take hold, deceleration built up in a straight line, then"
                                + " constant; solved exactly",
                        who + ": " + speed + ", reaction " + reaction + ", brake dead time " + response.deadTime()
                                + ", build-up " + response.buildUp() + ", deceleration " + deceleration + ", " + origin,
                        "assumed: uniform road, grade and friction within the given deceleration, no drag")
                .withCaveatIf(
                        deceleration.inMps2() > Deceleration.STANDARD_GRAVITY_MPS2,
                        "the " + who + "'s deceleration of " + deceleration
                                + " needs a friction above 1 on a level road, more than most road tyres give (common practice,"
                                + " no source)")
                .withCautions(Caution.NO_PROOF);
    }
}
