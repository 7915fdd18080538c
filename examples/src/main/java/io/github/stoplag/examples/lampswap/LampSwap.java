package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.examples.lamps.Estimated;
import io.github.stoplag.examples.lamps.LampInput;
import io.github.stoplag.film.BandedOnset;
import io.github.stoplag.following.Pair;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.source.Caveat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
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
     * @param moments the same in seconds, with the interval that film or rating leave; nothing where it is never seen
     */
    public record Lamp(
            String name, LampInput.Light light, List<Detection> detections, List<Optional<Estimated>> moments) {
        /** Names it in a sentence. */
        String called() {
            return name.contains("lamp") || light.set().isPresent() ? name : name + " lamp";
        }

        public OnsetCurve onset() {
            return light.onset();
        }

        /** Says whether its light comes from a film. */
        boolean filmed() {
            return light.onset() instanceof MeasuredLamp || light.onset() instanceof BandedOnset;
        }

        /** Says whether the moment it is seen at has an interval. */
        boolean banded() {
            return moments.stream().flatMap(Optional::stream).anyMatch(at -> !at.exact());
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
     * @param extraM what the follower travels in metres between the moments at which the faster lamp and this one are
     *     seen; nothing if this one never is
     * @param ending how it ends
     */
    record Row(Scenario.Leg leg, Lamp lamp, Optional<Estimated> extraM, Ending ending) {}

    /** Computes the answer. */
    public static LampSwap of(Scenario scenario) {
        List<Lamp> lamps = scenario.lamps().lamps().stream()
                .map(named -> lamp(scenario, named))
                .toList();
        LampSwap swap = new LampSwap(scenario, lamps, List.of());
        List<Row> rows = new ArrayList<>();
        for (Scenario.Leg leg : scenario.legs()) {
            rows.addAll(swap.at(leg));
        }
        return new LampSwap(scenario, lamps, List.copyOf(rows));
    }

    /** Says whether a lamp is filmed. */
    boolean filmed() {
        return lamps.stream().anyMatch(Lamp::filmed);
    }

    /** Says whether any number of the answer has an interval. */
    boolean banded() {
        return lamps.stream().anyMatch(Lamp::banded);
    }

    /** Says whether every filmed lamp that is seen has an interval. */
    boolean filmsBanded() {
        return lamps.stream()
                .filter(Lamp::filmed)
                .flatMap(lamp -> lamp.moments.stream())
                .flatMap(Optional::stream)
                .noneMatch(Estimated::exact);
    }

    /** Says what the intervals of lamps known by their rating hold, and which of these lamps have none. */
    Optional<String> ratingLeavesOpen() {
        List<String> without = IntStream.range(0, lamps.size())
                .filter(i -> scenario.lamps().lamps().get(i).input().followsSupply())
                .mapToObj(lamps::get)
                .filter(lamp -> !lamp.filmed() && lamp.seen().isPresent())
                .filter(lamp ->
                        lamp.light.end(true).isEmpty() || lamp.light.end(false).isEmpty())
                .map(Lamp::called)
                .toList();
        String none = "no interval for " + String.join(", ", without)
                + ": the bulb is at the edge of what the model takes, starts warm, or flashes; its numbers are no surer.";
        if (lamps.stream().noneMatch(lamp -> !lamp.filmed() && lamp.banded())) {
            return without.isEmpty() ? Optional.empty() : Optional.of("There is " + none);
        }
        return Optional.of("Intervals hold 95 % of what a bulb's rating leaves open: power drawn, light, coil factor,"
                + " gas loss, and the tables of tungsten. Supply, wiring, traffic and the way to say when a"
                + " lamp is seen are taken as given."
                + (without.isEmpty() ? "" : " There is " + none));
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
        List<Detection> detections =
                scenario.criteria().stream().map(light::seenBy).toList();
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
        return new Lamp(named.name(), light, detections, moments(scenario.criteria(), light, detections));
    }

    private static List<Optional<Estimated>> moments(
            List<Criterion> criteria, LampInput.Light light, List<Detection> detections) {
        Optional<LampInput.Light> early = light.end(true);
        Optional<LampInput.Light> late = light.end(false);
        return IntStream.range(0, criteria.size())
                .mapToObj(i -> detections
                        .get(i)
                        .time()
                        .map(at -> new Estimated(
                                at.inSeconds(),
                                Math.min(at.inSeconds(), seenS(criteria.get(i), early, at)),
                                Math.max(at.inSeconds(), seenS(criteria.get(i), late, at)))))
                .toList();
    }

    /** When one end of what is left open is seen; where nothing is, as it is seen. */
    private static double seenS(Criterion criterion, Optional<LampInput.Light> end, TimeSpan otherwise) {
        return end.map(light ->
                        light.seenBy(criterion).time().map(TimeSpan::inSeconds).orElse(Double.POSITIVE_INFINITY))
                .orElse(otherwise.inSeconds());
    }

    /** Gives the moment of the lamp seen first, by the criterion that counts. */
    private Estimated first() {
        return lamps.stream()
                .flatMap(lamp -> lamp.moments.get(0).stream())
                .min(Comparator.comparingDouble(Estimated::value))
                .orElse(Estimated.exactly(0));
    }

    private Row row(Scenario.Leg leg, Lamp lamp) {
        Estimated first = first();
        return new Row(
                leg,
                lamp,
                lamp.moments
                        .get(0)
                        .map(at -> (at.equals(first) ? Estimated.exactly(0) : at.minus(first))
                                .times(leg.speed().inMps())),
                ending(leg, lamp.moments.get(0)));
    }

    private Ending ending(Scenario.Leg leg, Optional<Estimated> seen) {
        return Ending.of(
                seen,
                atS -> Pair.of(
                        scenario.leader().at(leg.speed()),
                        scenario.follower().at(leg.speed()),
                        leg.gap(),
                        TimeSpan.seconds(atS)));
    }

    /** Says how it ends at a speed with a lamp, seen by a criterion. */
    Ending ending(Scenario.Leg leg, int lamp, int criterion) {
        return ending(leg, lamps.get(lamp).moments.get(criterion));
    }

    /** Gives one row for each lamp at a speed. */
    List<Row> at(Scenario.Leg leg) {
        return lamps.stream().map(lamp -> row(leg, lamp)).toList();
    }

    /**
     * Gives by how many seconds a candidate is seen earlier than the lamp fitted now, negative if later; nothing if one
     * of them is never seen.
     *
     * @param lamp its place among the lamps
     * @param criterion which of the scenario's criteria to use
     */
    Optional<Estimated> earlier(int lamp, int criterion) {
        return lamps.get(0)
                .moments
                .get(criterion)
                .flatMap(now -> lamps.get(lamp).moments.get(criterion).map(now::minus));
    }
}
