package io.github.stoplag.examples.following;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.examples.file.Gaps;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.following.Chain;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Mass;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A pair or chain of vehicles from a file.
 *
 * @param title what the scenario is
 * @param invented whether its figures are made up
 * @param chain the vehicles with speeds, drivers, brakes, gaps and lamps
 * @param lengths the vehicles' lengths
 * @param masses the vehicles' masses
 * @param restitution the restitution of every contact
 * @param change another lamp on one vehicle, for comparison, if asked for
 */
public record FollowingScenario(
        String title,
        boolean invented,
        Chain chain,
        List<Distance> lengths,
        List<Mass> masses,
        double restitution,
        Optional<Change> change) {
    /** The shipped pair. */
    public static final String PAIR = "following_pair.properties";
    /** The shipped chain. */
    static final String CHAIN = "following_chain.properties";

    private static final Key<Integer> VEHICLES =
            new Key<>("vehicles", "2", FollowingScenario::parseCount, Integer::doubleValue, 2, 1000, "");
    private static final Key<Speed> SPEED =
            new Key<>("speed", null, Speed::parse, Speed::inKmh, 0, 250, "km/h");
    private static final Key<TimeSpan> TIME_GAP = Key.time("gap", null, 0, 60);
    private static final Key<Distance> GAP = Key.distance("gap", null, 0, 5000);
    private static final Key<TimeSpan> LATENCY = Key.time("lamp-latency", null, 0, 3);
    private static final Key<TimeSpan> REACTION = Key.time("reaction", null, 0, 10);
    private static final Key<Deceleration> DECELERATION = Key.deceleration("deceleration");
    private static final Key<TimeSpan> DEAD_TIME = Key.time("brake-dead-time", "0.1 s", 0, 3);
    private static final Key<TimeSpan> BUILD_UP = Key.time("brake-build-up", "0.2 s", 0, 3);
    private static final Key<Distance> LENGTH = Key.distance("length", "4.4 m", 1, 30);
    private static final Key<Mass> MASS =
            new Key<>("mass", "1400 kg", Mass::parse, Mass::inKg, 100, 60_000, "kg");
    private static final Key<Double> RESTITUTION = Key.ratio("restitution", "0", 0, 1);
    private static final String RESPONDS = "responds";
    private static final Key<Integer> CHANGED =
            new Key<>("compare.vehicle", null, FollowingScenario::parseCount, Integer::doubleValue, 1, 1000, "");
    private static final Key<TimeSpan> CHANGED_LATENCY = LATENCY.named("compare.lamp-latency");

    /** The keys that hold one quantity of a vehicle each. */
    public static final List<Key<?>> QUANTITIES =
            List.of(SPEED, TIME_GAP, GAP, LATENCY, REACTION, DECELERATION, DEAD_TIME, BUILD_UP, LENGTH, MASS);

    private static final List<String> OF_A_VEHICLE = Stream.concat(
                    QUANTITIES.stream().map(Key::name).distinct(), Stream.of(RESPONDS))
            .toList();
    private static final List<String> OF_ALL = List.of(
            Key.TITLE, Key.INVENTED, VEHICLES.name(), RESTITUTION.name(), CHANGED.name(), CHANGED_LATENCY.name());
    private static final Pattern OVERRIDE = Pattern.compile("vehicle\\.[1-9][0-9]{0,3}\\.(.+)");

    /**
     * Another lamp on one vehicle.
     *
     * @param index the vehicle, 0 for the first
     * @param latency its lamp's latency
     */
    record Change(int index, TimeSpan latency) {}

    /** Gives the keys that such a file may have. */
    static ScenarioFile.Vocabulary vocabulary() {
        return new ScenarioFile.Vocabulary(
                FollowingScenario::isKey,
                String.join(", ", OF_ALL) + ", " + String.join(", ", OF_A_VEHICLE)
                        + "; the latter also for one vehicle, as in vehicle.1.speed");
    }

    /** Gives the keys of the file, those of one vehicle without its number. */
    static List<String> names() {
        return Stream.concat(OF_ALL.stream(), OF_A_VEHICLE.stream()).toList();
    }

    private static boolean isKey(String key) {
        Matcher override = OVERRIDE.matcher(key);
        return OF_ALL.contains(key) || OF_A_VEHICLE.contains(override.matches() ? override.group(1) : key);
    }

    /**
     * Makes a scenario from a file.
     *
     * @throws InputException if a value is missing or impossible
     */
    static FollowingScenario of(ScenarioFile file) {
        Heading heading = Heading.of(file);
        int count = file.get(VEHICLES);
        List<Chain.Member> members = new ArrayList<>();
        List<Distance> lengths = new ArrayList<>();
        List<Mass> masses = new ArrayList<>();
        for (int number = 1; number <= count; number++) {
            members.add(member(file, number));
            lengths.add(value(file, number, LENGTH));
            masses.add(value(file, number, MASS));
        }
        double restitution = file.get(RESTITUTION);
        Optional<Change> change = change(file, count);
        file.refuseUnused(
                "there are " + count + " vehicles, and the first has neither a gap ahead nor a lamp to react to");
        return new FollowingScenario(
                heading.title(), heading.invented(), Chain.of(members), lengths, masses, restitution, change);
    }

    private static Chain.Member member(ScenarioFile file, int number) {
        Speed speed = value(file, number, SPEED);
        boolean first = number == 1;
        boolean responds = file.word(name(file, number, RESPONDS), "yes", List.of("yes", "no"))
                .equals("yes");
        Deceleration deceleration = value(file, number, DECELERATION);
        BrakingVehicle vehicle = BrakingVehicle.of(
                speed,
                first ? TimeSpan.seconds(0) : value(file, number, REACTION),
                new BrakeResponse(value(file, number, DEAD_TIME), value(file, number, BUILD_UP)),
                responds ? deceleration : Deceleration.mps2(0));
        Distance gap = first ? Distance.metres(0) : gap(file, number, speed);
        return Chain.Member.of(vehicle, gap, value(file, number, LATENCY));
    }

    private static Distance gap(ScenarioFile file, int number, Speed speed) {
        String name = name(file, number, GAP.name());
        return Gaps.read(file, TIME_GAP.named(name), GAP.named(name), file.text(name, null), speed);
    }

    private static Optional<Change> change(ScenarioFile file, int count) {
        if (!file.has(CHANGED.name()) && !file.has(CHANGED_LATENCY.name())) {
            return Optional.empty();
        }
        int number = file.get(CHANGED);
        if (number > count) {
            throw file.bad(CHANGED.name(), String.valueOf(number), "there are only " + count + " vehicles");
        }
        return Optional.of(new Change(number - 1, file.get(CHANGED_LATENCY)));
    }

    private static <T> T value(ScenarioFile file, int number, Key<T> key) {
        String name = name(file, number, key.name());
        return file.get(name.equals(key.name()) ? key : key.named(name));
    }

    /** The key for one vehicle if the file gives it, else the key for all. */
    private static String name(ScenarioFile file, int number, String key) {
        String own = "vehicle." + number + "." + key;
        return file.has(own) ? own : key;
    }

    private static Integer parseCount(String text) {
        if (!text.matches("[0-9]{1,6}")) {
            throw new IllegalArgumentException("not a whole number");
        }
        return Integer.valueOf(text);
    }
}
