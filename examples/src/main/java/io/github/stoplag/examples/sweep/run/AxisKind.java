package io.github.stoplag.examples.sweep.run;

import io.github.stoplag.examples.file.Key;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * An axis that a plan of pairs may have.
 *
 * @param name its key in the plan file
 * @param unit its unit as in column names; empty for a ratio
 * @param key reads one of its values
 */
record AxisKind(String name, String unit, Key<Double> key) {
    static final AxisKind REACTION = time("reaction", 30);
    static final AxisKind GAP =
            kind("gap", "m", "m", 0, 1e5, text -> Distance.parse(text).inMetres());
    static final AxisKind TIME_GAP = time("time_gap", 300);

    static final AxisKind SUPPLY =
            kind("supply", "v", "V", 0, 60, text -> Voltage.parse(text).inVolts());

    /** The order decides which random numbers an axis gets; the lamps follow, then whether the driver responds. */
    private static final List<AxisKind> VEHICLES = List.of(
            speed("speed"),
            speed("follower_speed"),
            GAP,
            TIME_GAP,
            REACTION,
            deceleration("leader_decel"),
            deceleration("follower_decel"),
            time("brake_dead_time", 10),
            time("brake_build_up", 10),
            kind(
                    "friction",
                    "ratio",
                    "",
                    0.001,
                    2,
                    text -> FrictionCoefficient.parse(text).inRatio()),
            kind("grade", "ratio", "", -0.5, 0.5, text -> Grade.parse(text).inRatio()),
            SUPPLY);

    /** Whether the follower responds at all: 1 or 0. */
    static final AxisKind RESPONDS = new AxisKind("responds", "ratio", Key.ratio("responds", null, 0, 1));

    static final String LATENCY = "lamp_latency_";

    /** Gives all axes in the order in which a plan has them. */
    static List<AxisKind> all(List<String> lamps) {
        List<AxisKind> kinds = new ArrayList<>(VEHICLES);
        lamps.forEach(lamp -> kinds.add(time(LATENCY + lamp, 30)));
        kinds.add(RESPONDS);
        return kinds;
    }

    static Stream<String> vehicleNames() {
        return Stream.concat(VEHICLES.stream(), Stream.of(RESPONDS)).map(AxisKind::name);
    }

    /** The lamp whose latency it is, empty for none. */
    String lamp() {
        return name.startsWith(LATENCY) ? name.substring(LATENCY.length()) : "";
    }

    String column() {
        return unit.isEmpty() ? name : name + "_" + unit;
    }

    private static AxisKind speed(String name) {
        return kind(name, "mps", "m/s", 0, 150, text -> Speed.parse(text).inMps());
    }

    private static AxisKind time(String name, double most) {
        return kind(name, "s", "s", 0, most, text -> TimeSpan.parse(text).inSeconds());
    }

    private static AxisKind deceleration(String name) {
        return kind(
                name, "mps2", "m/s²", 0, 200, text -> Deceleration.parse(text).inMps2());
    }

    private static AxisKind kind(
            String name, String suffix, String unit, double lo, double hi, Function<String, Double> parse) {
        return new AxisKind(
                name, suffix, new Key<>(name, null, parse, value -> value, Range.closed(name, lo, hi, unit)));
    }
}
