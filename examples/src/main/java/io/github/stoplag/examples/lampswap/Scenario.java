package io.github.stoplag.examples.lampswap;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Keys;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.examples.lamps.FilamentInput;
import io.github.stoplag.examples.lamps.FilmedCurves;
import io.github.stoplag.examples.lamps.FilmedInput;
import io.github.stoplag.examples.lamps.SupplyInput;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a lamp swap is judged by: the traffic, both vehicles, the lamps and the criteria of seeing.
 *
 * @param heading what the scenario calls itself
 * @param legs the speeds with their following gaps, slowest first
 * @param firstLook the two speeds that the answer begins with
 * @param leader the vehicle with the lamp
 * @param follower the vehicle behind
 * @param lamps the lamp fitted now, then the candidates
 * @param supply their supply and wiring, which only the filament lamps among them follow
 * @param criteria the criteria of seeing: the one used, the one its charts compare it with, then all others
 * @param file where all this was read
 */
public record Scenario(
        Heading heading,
        List<Leg> legs,
        List<Leg> firstLook,
        Vehicle leader,
        Vehicle follower,
        FittedLamps lamps,
        SupplyConditions supply,
        List<Criterion> criteria,
        ScenarioFile file) {
    /** The scenario that comes with the program. */
    public static final String SHIPPED = "minibus.properties";

    /** The keys that such a file may have. */
    public static final List<Keys> KEYS = List.of(
            Heading.KEYS,
            Traffic.KEYS,
            FittedLamps.FILAMENT_KEYS,
            FilamentInput.MODEL,
            SupplyInput.LENS_KEYS,
            SupplyInput.KEYS,
            FittedLamps.LED_KEYS,
            FittedLamps.KEYS,
            FilmedInput.KEYS,
            Criterion.KEYS);

    public static final ScenarioFile.Vocabulary VOCABULARY =
            Keys.vocabulary(FittedLamps::numbered, "lamp.1, lamp.1.name, lamp.2, ...", KEYS.toArray(Keys[]::new));

    /**
     * A speed with its following gap.
     *
     * @param speed the speed of both vehicles
     * @param gap the clear distance from the leader's rear to the follower's front
     */
    public record Leg(Speed speed, Distance gap) {}

    /**
     * A vehicle apart from its speed.
     *
     * @param reaction from the cue to the foot on the brake pedal
     * @param response how the brakes build up
     * @param deceleration what they reach
     * @param length bumper to bumper, for the drawing
     */
    public record Vehicle(TimeSpan reaction, BrakeResponse response, Deceleration deceleration, Distance length) {
        public BrakingVehicle at(Speed speed) {
            return BrakingVehicle.of(speed, reaction, response, deceleration);
        }
    }

    /** Gives the scenario that comes with the program. */
    public static Scenario shipped() {
        return of(ScenarioFile.shipped(SHIPPED, VOCABULARY), null);
    }

    /**
     * Makes a scenario from a file.
     *
     * @param filmed a filmed lamp in the place of the lamp fitted now, if any
     * @throws InputException if a value is missing or impossible
     */
    public static Scenario of(ScenarioFile file, @Nullable FilmedCurves filmed) {
        List<Leg> legs = Traffic.legs(file);
        FittedLamps lamps = FittedLamps.of(file);
        Scenario scenario = new Scenario(
                Heading.of(file),
                legs,
                Traffic.firstLook(file, legs),
                Traffic.leader(file),
                Traffic.follower(file),
                filmed == null ? lamps : lamps.withFilmed(filmed),
                // without a filament lamp nothing asks for it
                lamps.followSupply() ? SupplyInput.of(file) : SupplyConditions.of(Voltage.volts(12)),
                Criterion.all(file),
                file);
        file.refuseUnused(Scenario::unused);
        return scenario;
    }

    /** Says of a key that was given but not asked for why it does not count. */
    private static String unused(String key) {
        if (key.startsWith("road.")) {
            return "neither vehicle's deceleration is \"road\"";
        } else if (key.startsWith("lamp.")) {
            return "there is no such lamp";
        } else if (FilmedInput.KEYS.has(key)) {
            return "no lamp of the file is a filmed one";
        }
        return FittedLamps.FILAMENT_KEYS.has(key)
                ? FilamentInput.RATING_UNUSED
                : "no lamp of the file is a filament lamp";
    }

    /** Gives the values all this was made of. */
    public List<ScenarioFile.Used> inputs() {
        return file.used();
    }

    /** Gives the criterion that says when a lamp is seen. */
    public Criterion criterion() {
        return criteria.get(0);
    }
}
