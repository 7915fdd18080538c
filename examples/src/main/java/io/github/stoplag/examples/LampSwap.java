package io.github.stoplag.examples;

import io.github.stoplag.following.Pair;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.MeasuredLamp;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.LampSignal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * The answer: when each lamp is seen, and what that means at each speed.
 *
 * @param scenario what was asked
 * @param lamps the lamp fitted now and the LED lamp, in this order
 * @param rows one for each speed and lamp
 * @param notes what the lamps' intensities rest on
 */
record LampSwap(Scenario scenario, List<Lamp> lamps, List<Row> rows, List<String> notes) {
    private static final double LATEST_SEEN_S = 30;

    /**
     * A lamp as the driver behind meets it.
     *
     * @param name a word for tables
     * @param onset how its light rises
     * @param intensity how bright it ends up
     * @param detection when it is seen
     * @param otherDetection the same by the other criterion
     */
    record Lamp(
            String name, OnsetCurve onset, LuminousIntensity intensity, Detection detection, Detection otherDetection) {
        Optional<TimeSpan> seen() {
            return at(detection);
        }

        private static Optional<TimeSpan> at(Detection detection) {
            return detection instanceof Detection.Seen seen ? Optional.of(seen.at()) : Optional.empty();
        }

        OptionalDouble seenS(boolean byOther) {
            return at(byOther ? otherDetection : detection)
                    .map(at -> OptionalDouble.of(at.inSeconds()))
                    .orElse(OptionalDouble.empty());
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
    static LampSwap of(Scenario scenario, @Nullable MeasuredLamp measured) {
        List<String> notes = new ArrayList<>();
        Lamp now = measured == null ? filament(scenario, notes) : measured(scenario, measured, notes);
        Lamp led = lamp(scenario, "LED", scenario.led(), scenario.ledIntensity());
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

    private static Lamp filament(Scenario scenario, List<String> notes) {
        FilamentOnset onset;
        try {
            onset = scenario.filament().switchOn(scenario.supply());
        } catch (IllegalArgumentException e) {
            throw new InputException("filament lamp on its supply: " + e.getMessage(), e);
        }
        LuminousIntensity intensity =
                LuminousIntensity.candela(scenario.filamentIntensity().inCandela() * onset.relativeToRated());
        notes.add("filament: " + Text.digits(intensity.inCandela()) + " cd = " + scenario.filamentIntensity()
                + " at design voltage, given, times " + Text.digits(onset.relativeToRated())
                + ", the model's light on this supply.");
        notes.add("filament: " + Text.digits(onset.steadyCurrent().inAmperes()) + " A and "
                + Text.digits(onset.steadyPower().inWatts()) + " W once hot, "
                + Text.digits(onset.inrushCurrent().inAmperes()) + " A at switch-on.");
        return lamp(scenario, "filament", onset, intensity);
    }

    private static Lamp measured(Scenario scenario, MeasuredLamp onset, List<String> notes) {
        notes.add("measured: " + scenario.filamentIntensity()
                + ", taken from the scenario's filament lamp; the film gives the shape of the rise only.");
        return lamp(scenario, "measured", onset, scenario.filamentIntensity());
    }

    private static Lamp lamp(Scenario scenario, String name, OnsetCurve onset, LuminousIntensity intensity) {
        LampSignal signal = new LampSignal(onset, intensity);
        Detection detection = scenario.detector().detect(signal);
        if (detection instanceof Detection.Seen seen && !(seen.at().inSeconds() <= LATEST_SEEN_S)) {
            throw new InputException("the " + name + " lamp is seen " + seen.at() + " after switch-on by "
                    + detection.criterion() + "; must be in [0, " + Text.digits(LATEST_SEEN_S) + "] s");
        }
        return new Lamp(
                name, onset, intensity, detection, scenario.otherDetector().detect(signal));
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
     * @param byOther whether to use the criterion for comparison
     */
    OptionalDouble earlierS(boolean byOther) {
        OptionalDouble now = lamps.get(0).seenS(byOther);
        OptionalDouble led = lamps.get(1).seenS(byOther);
        return now.isPresent() && led.isPresent()
                ? OptionalDouble.of(now.getAsDouble() - led.getAsDouble())
                : OptionalDouble.empty();
    }
}
