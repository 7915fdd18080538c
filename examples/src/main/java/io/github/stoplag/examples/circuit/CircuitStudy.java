package io.github.stoplag.examples.circuit;

import io.github.stoplag.circuit.CurrentDraw;
import io.github.stoplag.circuit.LampFeed;
import io.github.stoplag.circuit.LoadResistor;
import io.github.stoplag.circuit.LoadSizing;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.source.Evidence;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The electrical side of a lamp swap, worked out part by part.
 *
 * @param scenario what was asked
 * @param filament the settled filament lamp as a load
 * @param sizing the load resistor that the monitor needs
 * @param resistor the load resistor fitted, given or the next preferred value; nothing if none is needed
 * @param addedFeed how the added lamp is fed
 * @param inrush the greatest current of one filament lamp at switch-on
 */
record CircuitStudy(
        CircuitScenario scenario,
        CurrentDraw filament,
        LoadSizing sizing,
        Optional<LoadResistor> resistor,
        LampFeed addedFeed,
        Current inrush) {
    static CircuitStudy of(CircuitScenario scenario) {
        FilamentLamp bulb = scenario.filament().lamp();
        CircuitParts.Resistor asked = scenario.resistor();
        LoadSizing sizing =
                part("load resistor", () -> LoadSizing.of(scenario.monitor(), scenario.led(), asked.toleranceRatio()));
        Optional<Resistance> fitted = asked.given()
                .or(() -> sizing instanceof LoadSizing.Needed needed
                        ? Optional.of(needed.preferred(asked.series()))
                        : Optional.empty());
        Resistance wiring = scenario.harness().resistance();
        return new CircuitStudy(
                scenario,
                CurrentDraw.filament(bulb),
                sizing,
                fitted.map(ohms -> LoadResistor.of(ohms, asked.toleranceRatio(), asked.rating())),
                LampFeed.of(wiring).withDiode(scenario.diode()),
                part(
                        CircuitKeys.HIGHEST.name() + " = " + scenario.supply().highest() + " through "
                                + CircuitKeys.LENGTH.name() + " and " + CircuitKeys.CONTACTS.name() + ", " + wiring,
                        () -> bulb.switchOn(
                                        SupplyConditions.of(scenario.supply().highest())
                                                .withSeriesResistance(wiring))
                                .inrushCurrent()));
    }

    interface Work<T> {
        T done();
    }

    /** Says of an impossible combination which part, and which keys, it is about. */
    static <T> T part(String what, Work<T> work) {
        try {
            return work.done();
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(what + ": " + e.getMessage(), e);
        }
    }

    /** Gives the LED lamp with the resistor that draws its least, or alone. */
    CurrentDraw ledAtLeast() {
        return resistor.map(r -> scenario.led().plus(r.leastDraw())).orElse(scenario.led());
    }

    /** Gives the LED lamp with the resistor that draws its most, or alone. */
    CurrentDraw ledAtMost() {
        return resistor.map(r -> scenario.led().plus(r.greatestDraw())).orElse(scenario.led());
    }

    /** Works out all parts. */
    List<CircuitSection> sections() {
        return List.<Function<CircuitStudy, CircuitSection>>of(
                        MonitorParts::outage,
                        MonitorParts::load,
                        MonitorParts::flasher,
                        FeedParts::harness,
                        FeedParts::addedLamp,
                        FeedParts::fuse)
                .stream()
                .map(section -> section.apply(this))
                .toList();
    }

    static Evidence evidence(List<CircuitSection> sections) {
        return sections.stream().map(CircuitSection::evidence).reduce(Evidence.of(), Evidence::with);
    }
}
