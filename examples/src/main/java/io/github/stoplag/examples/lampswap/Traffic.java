package io.github.stoplag.examples.lampswap;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.examples.file.Gaps;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.Keys;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lampswap.Scenario.Leg;
import io.github.stoplag.examples.lampswap.Scenario.Vehicle;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Road;
import io.github.stoplag.road.RoadDeceleration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Reads the speeds, the gaps and both vehicles of a scenario. */
final class Traffic {
    static final Keys KEYS = new Keys();
    private static final Key<Speed> SPEED = KEYS.add(Key.speed("speeds", Ranges.MOVING));
    private static final Key<TimeSpan> TIME_GAP = KEYS.add(Key.time("following.gap", null, Ranges.TIME_GAP));
    private static final Key<Distance> DISTANCE_GAP = KEYS.add(Key.distance("following.gap", null, Ranges.GAP));
    private static final Key<FrictionCoefficient> FRICTION = KEYS.add(
            new Key<>("road.friction", "0.7", FrictionCoefficient::parse, FrictionCoefficient::inRatio, Ranges.GRIP));
    private static final Key<Grade> GRADE =
            KEYS.add(new Key<>("road.grade", "0 %", Grade::parse, Grade::inRatio, Ranges.GRADE));
    private static final Key<Deceleration> LEADER_BRAKING = KEYS.add(Key.deceleration("leader.deceleration"));
    private static final Key<TimeSpan> LEADER_DEAD_TIME =
            KEYS.add(Key.time("leader.brake-dead-time", "0.1 s", Ranges.DEAD_TIME));
    private static final Key<TimeSpan> LEADER_BUILD_UP =
            KEYS.add(Key.time("leader.brake-build-up", "0.2 s", Ranges.BUILD_UP));
    private static final Key<Distance> LEADER_LENGTH =
            KEYS.add(Key.distance("leader.length", "6 m", Ranges.VEHICLE_LENGTH));
    private static final Key<TimeSpan> REACTION = KEYS.add(Key.time("follower.reaction", null, Ranges.REACTION));
    private static final Key<Deceleration> FOLLOWER_BRAKING = KEYS.add(Key.deceleration("follower.deceleration"));
    private static final Key<TimeSpan> FOLLOWER_DEAD_TIME =
            KEYS.add(Key.time("follower.brake-dead-time", "0.1 s", Ranges.DEAD_TIME));
    private static final Key<TimeSpan> FOLLOWER_BUILD_UP =
            KEYS.add(Key.time("follower.brake-build-up", "0.2 s", Ranges.BUILD_UP));
    private static final Key<Distance> FOLLOWER_LENGTH =
            KEYS.add(Key.distance("follower.length", "4.4 m", Ranges.VEHICLE_LENGTH));

    private static final String FROM_ROAD = "road";

    private Traffic() {}

    static Vehicle leader(ScenarioFile file) {
        return new Vehicle(
                TimeSpan.seconds(0),
                new BrakeResponse(file.get(LEADER_DEAD_TIME), file.get(LEADER_BUILD_UP)),
                braking(file, LEADER_BRAKING),
                file.get(LEADER_LENGTH));
    }

    static Vehicle follower(ScenarioFile file) {
        return new Vehicle(
                file.get(REACTION),
                new BrakeResponse(file.get(FOLLOWER_DEAD_TIME), file.get(FOLLOWER_BUILD_UP)),
                braking(file, FOLLOWER_BRAKING),
                file.get(FOLLOWER_LENGTH));
    }

    private static Deceleration braking(ScenarioFile file, Key<Deceleration> key) {
        String text = file.text(key.name(), FROM_ROAD);
        if (!text.equals(FROM_ROAD)) {
            return file.parse(key, text);
        }
        RoadDeceleration onRoad = Road.of(file.get(FRICTION), file.get(GRADE)).deceleration();
        if (onRoad instanceof RoadDeceleration.Holds holds) {
            return holds.deceleration();
        }
        throw file.bad(key.name(), text, ((RoadDeceleration.CannotHold) onRoad).reason());
    }

    /**
     * Reads the speeds with their gaps.
     *
     * @return slowest first
     * @throws InputException if a value is missing or impossible
     */
    static List<Leg> legs(ScenarioFile file) {
        List<String> speeds = file.list(SPEED.name());
        List<String> gaps = file.list(TIME_GAP.name());
        if (gaps.size() != 1 && gaps.size() != speeds.size()) {
            throw file.bad(
                    TIME_GAP.name(),
                    String.join(", ", gaps),
                    "must be one gap for all speeds or one for each of the " + speeds.size() + " speeds, got "
                            + gaps.size());
        }
        List<Leg> legs = new ArrayList<>();
        for (int i = 0; i < speeds.size(); i++) {
            legs.add(leg(file, file.parse(SPEED, speeds.get(i)), gaps.get(gaps.size() == 1 ? 0 : i)));
        }
        legs.sort(Comparator.comparing(Leg::speed));
        for (int i = 1; i < legs.size(); i++) {
            if (legs.get(i).speed().equals(legs.get(i - 1).speed())) {
                throw file.bad(SPEED.name(), String.join(", ", speeds), "the same speed is given twice");
            }
        }
        return List.copyOf(legs);
    }

    private static Leg leg(ScenarioFile file, Speed speed, String gap) {
        return new Leg(speed, Gaps.read(file, TIME_GAP, DISTANCE_GAP, gap, speed));
    }

    /**
     * Gives the speeds of a first look with their gaps: 30 and 60 mph where the file gives them or one gap holds for
     * all speeds, else the lowest and the highest.
     */
    static List<Leg> firstLook(ScenarioFile file, List<Leg> legs) {
        List<String> gaps = file.list(TIME_GAP.name());
        List<Leg> first = new ArrayList<>();
        for (Speed speed : List.of(Speed.mph(30), Speed.mph(60))) {
            legs.stream()
                    .filter(leg -> Math.abs(leg.speed().inMph() - speed.inMph()) < 0.005)
                    .findFirst()
                    .ifPresentOrElse(first::add, () -> {
                        if (gaps.size() == 1) {
                            first.add(leg(file, speed, gaps.get(0)));
                        }
                    });
        }
        if (first.size() == 2) {
            return List.copyOf(first);
        }
        return legs.size() == 1 ? legs : List.of(legs.get(0), legs.get(legs.size() - 1));
    }
}
