package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lamps.LampInput;
import io.github.stoplag.following.Pair;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.LampSignal;
import io.github.stoplag.source.Caveat;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The answer: when each lamp is seen, and what that means at each speed.
 *
 * @param scenario what was asked
 * @param lamps the lamp fitted now, then the candidates
 * @param rows one for each speed and lamp
 */
public record LampSwap(Scenario scenario, List<Lamp> lamps, List<Row> rows) {
    private static final double LATEST_SEEN_S = 30;

    /**
     * A lamp as the driver behind meets it.
     *
     * @param name a word for tables
     * @param light how its light rises, and how bright it is
     * @param detections when it is seen, by each of the scenario's criteria
     */
    public record Lamp(String name, LampInput.Light light, List<Detection> detections) {
        public OnsetCurve onset() {
            return light.onset();
        }

        /** Gives the outcome by the criterion that counts. */
        Detection detection() {
            return detections.get(0);
        }

        /** Gives the reservations about its light and about the criterion that counts. */
        Stream<Caveat> caveats() {
            return detection().caveats().stream();
        }

        public Optional<TimeSpan> seen() {
            return seen(0);
        }

        Optional<TimeSpan> seen(int criterion) {
            return detections.get(criterion) instanceof Detection.Seen seen ? Optional.of(seen.at()) : Optional.empty();
        }
    }

    /**
     * One speed with one lamp.
     *
     * @param leg the speed and the gap
     * @param lamp the lamp
     * @param extraDistance what the follower travels between the moments at which the faster lamp and this one are
     *     seen; nothing if this one never is
     * @param pair both vehicles; nothing if the lamp is never seen
     */
    record Row(Scenario.Leg leg, Lamp lamp, Optional<Distance> extraDistance, Optional<Pair> pair) {}

    /** Computes the answer. */
    public static LampSwap of(Scenario scenario) {
        List<Lamp> lamps = scenario.lamps().lamps().stream()
                .map(named -> lamp(scenario, named))
                .toList();
        double firstSeenS = firstSeenS(lamps);
        List<Row> rows = new ArrayList<>();
        for (Scenario.Leg leg : scenario.legs()) {
            for (Lamp lamp : lamps) {
                rows.add(row(scenario, leg, lamp, firstSeenS));
            }
        }
        return new LampSwap(scenario, lamps, List.copyOf(rows));
    }

    /** Says whether the lamp fitted now is a filmed one. */
    boolean filmed() {
        return lamps.get(0).light.onset() instanceof MeasuredLamp;
    }

    /** Says of each lamp what its intensity rests on. */
    Stream<String> notes() {
        return lamps.stream().flatMap(lamp -> lamp.light.notes().stream().map(note -> lamp.name + ": " + note));
    }

    /** Gives the bulb of the lamp fitted now, if it is a filament lamp. */
    public Optional<FilamentLamp> filament() {
        return scenario.lamps().lamps().get(0).input().bulb();
    }

    private static Lamp lamp(Scenario scenario, FittedLamps.Named named) {
        LampInput.Light light = named.input().switchedOn().apply(scenario.supply());
        LampSignal signal = LampSignal.of(light.onset(), light.intensity());
        List<Detection> detections = scenario.criteria().stream()
                .map(criterion -> criterion.detect(signal))
                .toList();
        if (detections.get(0) instanceof Detection.Seen seen && !(seen.at().inSeconds() <= LATEST_SEEN_S)) {
            List<String> keys = Stream.concat(
                            Stream.of(named.input().intensityKey()), scenario.criterion().keys().stream())
                    .toList();
            throw scenario.file()
                    .bad(
                            keys,
                            "the " + named.name() + " lamp is seen " + seen.at() + " after switch-on, must be in [0, "
                                    + Text.digits(LATEST_SEEN_S)
                                    + "] s: its light hardly exceeds what it takes to be seen",
                            null);
        }
        return new Lamp(named.name(), light, detections);
    }

    private static double firstSeenS(List<Lamp> lamps) {
        return lamps.stream()
                .flatMap(lamp -> lamp.seen().stream())
                .mapToDouble(TimeSpan::inSeconds)
                .min()
                .orElse(0);
    }

    private static Row row(Scenario scenario, Scenario.Leg leg, Lamp lamp, double firstSeenS) {
        return new Row(
                leg,
                lamp,
                lamp.seen().map(at -> Distance.metres(leg.speed().inMps() * (at.inSeconds() - firstSeenS))),
                pair(scenario, leg, lamp.seen()));
    }

    private static Optional<Pair> pair(Scenario scenario, Scenario.Leg leg, Optional<TimeSpan> seen) {
        return seen.map(at ->
                Pair.of(scenario.leader().at(leg.speed()), scenario.follower().at(leg.speed()), leg.gap(), at));
    }

    /** Says how it ends at a speed with a lamp, seen by a criterion. */
    Verdict verdict(Scenario.Leg leg, int lamp, int criterion) {
        return Verdict.of(pair(scenario, leg, lamps.get(lamp).seen(criterion)));
    }

    /** Gives one row for each lamp at a speed. */
    List<Row> at(Scenario.Leg leg) {
        return lamps.stream()
                .map(lamp -> row(scenario, leg, lamp, firstSeenS(lamps)))
                .toList();
    }

    /**
     * Gives by how much a candidate is seen earlier than the lamp fitted now, negative if later; nothing if one of them
     * is never seen.
     *
     * @param lamp its place among the lamps
     * @param criterion which of the scenario's criteria to use
     */
    Optional<TimeSpan> earlier(int lamp, int criterion) {
        return lamps.get(0)
                .seen(criterion)
                .flatMap(now -> lamps.get(lamp)
                        .seen(criterion)
                        .map(then -> TimeSpan.seconds(now.inSeconds() - then.inSeconds())));
    }
}
