package io.github.stoplag.examples.following;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.examples.file.Gaps;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.Keys;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.following.Chain;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Mass;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

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

    static final Keys OF_ALL = new Keys();

    /** The keys of a vehicle: they also come with its number before them. */
    public static final Keys OF_A_VEHICLE = new Keys();

    private static final Key<Integer> VEHICLES = OF_ALL.add(count("vehicles", "2", 2));
    private static final Key<Speed> SPEED = OF_A_VEHICLE.add(Key.speed("speed", Ranges.SPEED));
    private static final Key<TimeSpan> TIME_GAP = OF_A_VEHICLE.add(Key.time("gap", null, Ranges.TIME_GAP));
    private static final Key<Distance> GAP = OF_A_VEHICLE.add(Key.distance("gap", null, Ranges.GAP));
    private static final Key<TimeSpan> LATENCY = OF_A_VEHICLE.add(Key.time("lamp-latency", null, Ranges.LATENCY));
    private static final Key<TimeSpan> REACTION = OF_A_VEHICLE.add(Key.time("reaction", null, Ranges.REACTION));
    private static final Key<Deceleration> DECELERATION = OF_A_VEHICLE.add(Key.deceleration("deceleration"));
    private static final Key<TimeSpan> DEAD_TIME =
            OF_A_VEHICLE.add(Key.time("brake-dead-time", "0.1 s", Ranges.DEAD_TIME));
    private static final Key<TimeSpan> BUILD_UP =
            OF_A_VEHICLE.add(Key.time("brake-build-up", "0.2 s", Ranges.BUILD_UP));
    private static final Key<Distance> LENGTH =
            OF_A_VEHICLE.add(Key.distance("length", "4.4 m", Ranges.VEHICLE_LENGTH));
    private static final Key<Mass> MASS =
            OF_A_VEHICLE.add(new Key<>("mass", "1400 kg", Mass::parse, Mass::inKg, Ranges.MASS));
    private static final Key<Double> RESTITUTION = OF_ALL.add(Key.ratio("restitution", "0", 0, 1));
    private static final String RESPONDS = OF_A_VEHICLE.add("responds");
    private static final Key<Integer> CHANGED = OF_ALL.add(count("compare.vehicle", null, 1));
    private static final Key<TimeSpan> CHANGED_LATENCY = OF_ALL.add(LATENCY.named("compare.lamp-latency"));

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
        return Keys.vocabulary(
                FollowingScenario::isOverride,
                "and those of a vehicle also for one alone, as in vehicle.1.speed",
                Heading.KEYS,
                OF_ALL,
                OF_A_VEHICLE);
    }

    private static boolean isOverride(String key) {
        Matcher override = OVERRIDE.matcher(key);
        return override.matches() && OF_A_VEHICLE.has(override.group(1));
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

    private static Key<Integer> count(String name, @Nullable String fallback, int least) {
        return new Key<>(
                name,
                fallback,
                FollowingScenario::parseCount,
                Integer::doubleValue,
                Range.closed(name, least, 1000, ""));
    }

    private static Integer parseCount(String text) {
        if (!text.matches("[0-9]{1,6}")) {
            throw new IllegalArgumentException("not a whole number");
        }
        return Integer.valueOf(text);
    }
}
