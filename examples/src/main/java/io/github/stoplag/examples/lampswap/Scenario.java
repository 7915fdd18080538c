package io.github.stoplag.examples.lampswap;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.examples.file.FilamentInput;
import io.github.stoplag.examples.file.Gaps;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.lamp.LedLamp;
import io.github.stoplag.lamp.Lens;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Road;
import io.github.stoplag.road.RoadDeceleration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What a lamp swap is judged by: the traffic, both vehicles, both lamps and the criteria of seeing.
 *
 * @param heading what the scenario calls itself
 * @param legs the speeds with their following gaps, slowest first
 * @param leader the vehicle with the lamp
 * @param follower the vehicle behind
 * @param filament the lamp fitted now
 * @param supply its supply and wiring
 * @param filamentIntensity its luminous intensity at its design voltage
 * @param led the lamp considered
 * @param ledIntensity its luminous intensity
 * @param criteria the criteria of seeing: the one used, the one its charts compare it with, then all others
 * @param file where all this was read
 */
public record Scenario(
        Heading heading,
        List<Leg> legs,
        Vehicle leader,
        Vehicle follower,
        FilamentInput filament,
        SupplyConditions supply,
        LuminousIntensity filamentIntensity,
        LedLamp led,
        LuminousIntensity ledIntensity,
        List<Criterion> criteria,
        ScenarioFile file) {
    private static final String FROM_ROAD = "road";

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

    /**
     * Makes a scenario from a file.
     *
     * @throws InputException if a value is missing or impossible
     */
    public static Scenario of(ScenarioFile file) {
        Heading heading = Heading.of(file);
        List<Leg> legs = legs(file);
        Vehicle leader = new Vehicle(
                TimeSpan.seconds(0),
                new BrakeResponse(file.get(Key.LEADER_DEAD_TIME), file.get(Key.LEADER_BUILD_UP)),
                braking(file, Key.LEADER_BRAKING),
                file.get(Key.LEADER_LENGTH));
        Vehicle follower = new Vehicle(
                file.get(Key.REACTION),
                new BrakeResponse(file.get(Key.FOLLOWER_DEAD_TIME), file.get(Key.FOLLOWER_BUILD_UP)),
                braking(file, Key.FOLLOWER_BRAKING),
                file.get(Key.FOLLOWER_LENGTH));
        FilamentInput filament = filament(file);
        SupplyConditions supply = SupplyConditions.of(file.get(Key.SUPPLY))
                .withSeriesResistance(file.get(Key.WIRING))
                .withAmbientTemperature(file.get(Key.AMBIENT))
                .withLens(file.word(Key.LENS, "red", List.of("red", "clear")).equals("red") ? Lens.RED : Lens.CLEAR);
        LuminousIntensity filamentIntensity = file.get(Key.FILAMENT_INTENSITY);
        LedLamp led = file.making(
                List.of(Key.LED_DELAY.name(), Key.LED_RISE.name()),
                () -> LedLamp.of(file.get(Key.LED_DELAY), file.get(Key.LED_RISE)));
        LuminousIntensity ledIntensity = file.get(Key.LED_INTENSITY);
        List<Criterion> criteria = Criterion.all(file);
        file.refuseUnused(Key::unused);
        return new Scenario(
                heading,
                legs,
                leader,
                follower,
                filament,
                supply,
                filamentIntensity,
                led,
                ledIntensity,
                criteria,
                file);
    }

    private static List<Leg> legs(ScenarioFile file) {
        List<String> speeds = file.list(Key.SPEEDS);
        List<String> gaps = file.list(Key.GAP);
        if (gaps.size() != 1 && gaps.size() != speeds.size()) {
            throw file.bad(
                    Key.GAP,
                    String.join(", ", gaps),
                    "must be one gap for all speeds or one for each of the " + speeds.size() + " speeds, got "
                            + gaps.size());
        }
        List<Leg> legs = new ArrayList<>();
        for (int i = 0; i < speeds.size(); i++) {
            Speed speed = file.parse(Key.SPEED, speeds.get(i));
            String gap = gaps.get(gaps.size() == 1 ? 0 : i);
            legs.add(new Leg(speed, Gaps.read(file, Key.TIME_GAP, Key.DISTANCE_GAP, gap, speed)));
        }
        legs.sort(Comparator.comparing(Leg::speed));
        for (int i = 1; i < legs.size(); i++) {
            if (legs.get(i).speed().equals(legs.get(i - 1).speed())) {
                throw file.bad(Key.SPEEDS, String.join(", ", speeds), "the same speed is given twice");
            }
        }
        return List.copyOf(legs);
    }

    private static Deceleration braking(ScenarioFile file, Key<Deceleration> key) {
        String text = file.text(key.name(), FROM_ROAD);
        if (!text.equals(FROM_ROAD)) {
            return file.parse(key, text);
        }
        RoadDeceleration onRoad =
                Road.of(file.get(Key.FRICTION), file.get(Key.GRADE)).deceleration();
        if (onRoad instanceof RoadDeceleration.Holds holds) {
            return holds.deceleration();
        }
        throw file.bad(key.name(), text, ((RoadDeceleration.CannotHold) onRoad).reason());
    }

    private static FilamentInput filament(ScenarioFile file) {
        return FilamentInput.of(file, lamp -> {
            file.find(Key.FILAMENT_TEMPERATURE).ifPresent(lamp::filamentTemperature);
            file.find(Key.GAS_LOSS).ifPresent(lamp::gasLossShare);
            file.find(Key.COIL_FACTOR).ifPresent(lamp::coilFactor);
            return lamp;
        });
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
