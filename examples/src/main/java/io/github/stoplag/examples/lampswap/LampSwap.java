package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.following.Pair;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.LampSignal;
import io.github.stoplag.source.Caveat;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The answer: when each lamp is seen, and what that means at each speed.
 *
 * @param scenario what was asked
 * @param lamps the lamp fitted now and the LED lamp, in this order
 * @param rows one for each speed and lamp
 * @param notes what the lamps' intensities rest on
 */
public record LampSwap(Scenario scenario, List<Lamp> lamps, List<Row> rows, List<String> notes) {
    private static final double LATEST_SEEN_S = 30;

    /**
     * A lamp as the driver behind meets it.
     *
     * @param name a word for tables
     * @param onset how its light rises
     * @param intensity how bright it is at the level 1 of its onset
     * @param detections when it is seen, by each of the scenario's criteria
     */
    public record Lamp(String name, OnsetCurve onset, LuminousIntensity intensity, List<Detection> detections) {
        /** Gives the outcome by the criterion that counts. */
        Detection detection() {
            return detections.get(0);
        }

        /** Gives the reservations about its light and about the criterion that counts. */
        Stream<Caveat> caveats() {
            return detection().caveats().stream();
        }

        /** Gives how bright it ends up, which for a film that ends early is less than its full intensity. */
        double endCd() {
            return intensity.inCandela() * onset.relativeIntensity(Double.POSITIVE_INFINITY);
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
     * @param extraDistance what the follower travels between the moments at which the faster lamp and this one are seen;
     *     nothing if this one never is
     * @param pair both vehicles; nothing if the lamp is never seen
     */
    record Row(Scenario.Leg leg, Lamp lamp, Optional<Distance> extraDistance, Optional<Pair> pair) {}

    /** Computes the answer, with a filmed lamp in the place of the filament lamp if there is one. */
    public static LampSwap of(Scenario scenario, @Nullable MeasuredLamp measured) {
        List<String> notes = new ArrayList<>();
        Lamp now = measured == null ? filament(scenario, notes) : measured(scenario, measured, notes);
        Lamp led = lamp(scenario, "LED", scenario.led(), scenario.ledIntensity(), Key.LED_INTENSITY);
        notes.add("LED: " + scenario.ledIntensity() + ", given.");
        List<Lamp> lamps = List.of(now, led);
        double firstSeenS = lamps.stream()
                .flatMap(lamp -> lamp.seen().stream())
                .mapToDouble(TimeSpan::inSeconds)
                .min()
                .orElse(0);
        List<Row> rows = new ArrayList<>();
        for (Scenario.Leg leg : scenario.legs()) {
            for (Lamp lamp : lamps) {
                rows.add(row(scenario, leg, lamp, firstSeenS));
            }
        }
        return new LampSwap(scenario, lamps, List.copyOf(rows), List.copyOf(notes));
    }

    /** Says whether a filmed lamp takes the place of the modelled filament. */
    boolean filmed() {
        return lamps.get(0).onset() instanceof MeasuredLamp;
    }

    private static Lamp filament(Scenario scenario, List<String> notes) {
        FilamentOnset onset = scenario.file()
                .making(
                        List.of(
                                Key.SUPPLY.name(),
                                Key.WIRING.name(),
                                Key.AMBIENT.name(),
                                scenario.filament().key()),
                        () -> scenario.filament().lamp().switchOn(scenario.supply()));
        LuminousIntensity intensity =
                LuminousIntensity.candela(scenario.filamentIntensity().inCandela() * onset.relativeToRated());
        notes.add("filament: " + scenario.filament().origin() + ".");
        notes.add("filament: " + Text.digits(intensity.inCandela()) + " cd = " + scenario.filamentIntensity()
                + " at design voltage, given, times " + Text.digits(onset.relativeToRated())
                + ", the model's light on this supply.");
        notes.add("filament: " + Text.digits(onset.steadyCurrent().inAmperes()) + " A and "
                + Text.digits(onset.steadyPower().inWatts()) + " W once hot, "
                + Text.digits(onset.inrushCurrent().inAmperes()) + " A at switch-on.");
        return lamp(scenario, "filament", onset, intensity, Key.FILAMENT_INTENSITY);
    }

    private static Lamp measured(Scenario scenario, MeasuredLamp onset, List<String> notes) {
        Lamp lamp = lamp(scenario, "measured", onset, scenario.filamentIntensity(), Key.FILAMENT_INTENSITY);
        double end = onset.relativeIntensity(Double.POSITIVE_INFINITY);
        notes.add("measured: "
                + (end < 1 ? Text.digits(lamp.endCd()) + " cd = " : "")
                + scenario.filamentIntensity() + (end < 1 ? " times " + Text.digits(end) + ", where the film ends" : "")
                + "; the candela are the scenario's " + Key.FILAMENT_INTENSITY.name()
                + ", the film gives the shape of the rise only.");
        return lamp;
    }

    private static Lamp lamp(
            Scenario scenario, String name, OnsetCurve onset, LuminousIntensity intensity, Key<?> given) {
        LampSignal signal = LampSignal.of(onset, intensity);
        List<Detection> detections = scenario.criteria().stream()
                .map(criterion -> criterion.detect(signal))
                .toList();
        Detection detection = detections.get(0);
        if (detection instanceof Detection.Seen seen && !(seen.at().inSeconds() <= LATEST_SEEN_S)) {
            List<String> keys = Stream.concat(Stream.of(given.name()), scenario.criterion().keys().stream())
                    .toList();
            throw scenario.file()
                    .bad(
                            keys,
                            "the " + name + " lamp is seen " + seen.at() + " after switch-on, must be in [0, "
                                    + Text.digits(LATEST_SEEN_S)
                                    + "] s: its light hardly exceeds what it takes to be seen",
                            null);
        }
        return new Lamp(name, onset, intensity, detections);
    }

    private static Row row(Scenario scenario, Scenario.Leg leg, Lamp lamp, double firstSeenS) {
        return new Row(
                leg,
                lamp,
                lamp.seen().map(at -> Distance.metres(leg.speed().inMps() * (at.inSeconds() - firstSeenS))),
                lamp.seen()
                        .map(at -> Pair.of(
                                scenario.leader().at(leg.speed()),
                                scenario.follower().at(leg.speed()),
                                leg.gap(),
                                at)));
    }

    /**
     * Gives by how much the LED lamp is seen earlier, negative if later; nothing if one of the lamps is never seen.
     *
     * @param criterion which of the scenario's criteria to use
     */
    Optional<TimeSpan> earlier(int criterion) {
        return lamps.get(0)
                .seen(criterion)
                .flatMap(now ->
                        lamps.get(1).seen(criterion).map(led -> TimeSpan.seconds(now.inSeconds() - led.inSeconds())));
    }
}
