package io.github.stoplag.examples.circuit;

import io.github.stoplag.circuit.Diode;
import io.github.stoplag.circuit.FeedOnset;
import io.github.stoplag.circuit.Fuse;
import io.github.stoplag.circuit.LampFeed;
import io.github.stoplag.circuit.WireRun;
import io.github.stoplag.examples.circuit.CircuitSection.Row;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lamps.FilamentInput;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Voltage;
import java.util.List;
import java.util.Locale;

/** What feeds the lamps: wire, isolating diode, fuse. */
final class FeedParts {
    /** The share of its final light at which the diode's delay is told. */
    static final double TOLD_LEVEL = 0.5;

    private FeedParts() {}

    static CircuitSection harness(CircuitStudy study) {
        CircuitScenario scenario = study.scenario();
        Voltage nominal = scenario.supply().nominal();
        WireRun.Drop bulb =
                scenario.harness().drop(study.filament().current(nominal), nominal, scenario.allowableDrop());
        WireRun.Drop led =
                scenario.harness().drop(study.ledAtMost().current(nominal), nominal, scenario.allowableDrop());
        String basis = "I R at " + nominal;
        return new CircuitSection(
                "Harness run to one lamp",
                List.of(
                        dropped("With the filament bulb", bulb),
                        dropped(
                                study.resistor().isPresent()
                                        ? "With the LED lamp and its resistor"
                                        : "With the LED lamp",
                                led)),
                List.of(
                        Row.of(
                                "resistance there and back with contacts",
                                bulb.resistance().inOhms(),
                                "ohm",
                                "R = rho L/A"),
                        Row.of("drop with the filament bulb", bulb.drop().inVolts(), "V", basis),
                        Row.of(
                                "heat in the run with the filament bulb",
                                bulb.heat().inWatts(),
                                "W",
                                "I^2 R"),
                        Row.of(
                                "drop with the LED lamp and its resistor",
                                led.drop().inVolts(),
                                "V",
                                basis),
                        Row.of("drop allowed", bulb.allowable().inVolts(), "V", "the scenario's own limit")),
                bulb.evidence().with(led.evidence()));
    }

    private static String dropped(String lamp, WireRun.Drop drop) {
        return lamp + " it drops " + Text.digits(drop.drop().inVolts()) + " V, "
                + (drop.withinAllowable() ? "within" : "more than") + " the " + drop.allowable() + " allowed.";
    }

    /** Gives the onset of the added lamp, with and without the diode. */
    static FeedOnset onset(CircuitStudy study) {
        return study.addedFeed()
                .onset(
                        study.scenario().filament().lamp(),
                        SupplyConditions.of(study.scenario().supply().nominal()));
    }

    static CircuitSection addedLamp(CircuitStudy study) {
        CircuitScenario scenario = study.scenario();
        LampFeed.Point point =
                study.addedFeed().operate(study.filament(), scenario.supply().nominal());
        Diode.Conduction warm = CircuitStudy.part(
                CircuitKeys.DIODE_TO_AMBIENT.name() + " and " + CircuitKeys.DIODE_DROPS,
                () -> scenario.diode()
                        .conduct(study.filament().current(scenario.supply().highest()), scenario.ambient()));
        Diode.Blocking blocking = scenario.diode().block(scenario.supply().highest(), Voltage.volts(0));
        FeedOnset onset = onset(study);
        FeedOnset.Times later = onset.delayByDiode(TOLD_LEVEL);
        double dimmed = 1 - onset.lightAgainstDirectRatio();
        String model = "heat balance of the filament, cold at switch-on, "
                + scenario.supply().nominal();
        return new CircuitSection(
                "Added filament lamp, fed through the isolating diode",
                List.of(
                        "The diode takes " + Text.digits(point.diodeDrop().inVolts()) + " V: the lamp ends "
                                + Numbers.text(100 * dimmed, 2) + " % dimmer and has half of its light "
                                + Text.digits(Math.rint(later.earliest().inMillis())) + " to "
                                + Text.milliseconds(later.latest().inSeconds()) + " later than without it.",
                        "Conducting, the diode is " + within(warm.withinCurrent() && warm.withinTemperature())
                                + " its ratings; blocking, it is " + within(blocking.blocks())
                                + " its reverse voltage."),
                List.of(
                        Row.of("drop of the diode", point.diodeDrop().inVolts(), "V", "U_s = U + I R + U_F(I)"),
                        Row.of(
                                "voltage at the added lamp",
                                point.lampVoltage().inVolts(),
                                "V",
                                "U_s = U + I R + U_F(I)"),
                        Row.of("light against the same wiring without the diode", 100 * (1 - dimmed), "%", model),
                        Row.of(
                                "half of the light comes later by at least",
                                later.earliest().inMillis(),
                                "ms",
                                model),
                        Row.of(
                                "half of the light comes later by at most",
                                later.latest().inMillis(),
                                "ms",
                                model),
                        Row.of(
                                "inrush through the diode at most",
                                onset.inrushCurrent().inAmperes(),
                                "A",
                                model),
                        Row.of(
                                "heat in the diode",
                                warm.power().inWatts(),
                                "W",
                                "U_F I at " + scenario.supply().highest()),
                        Row.of("junction of the diode", warm.junction().inCelsius(), "°C", "T = T_ambient + R_th P"),
                        Row.of(
                                "reverse voltage when the other circuit is on",
                                blocking.reverse().inVolts(),
                                "V",
                                "the highest supply"),
                        Row.of(
                                "leakage back into the stop circuit",
                                blocking.leakage().inMilliamperes(),
                                "mA",
                                "given")),
                point.evidence().with(warm.evidence()).with(blocking.evidence()).with(onset.evidence()));
    }

    private static String within(boolean fine) {
        return fine ? "within" : "beyond";
    }

    static CircuitSection fuse(CircuitStudy study) {
        CircuitScenario scenario = study.scenario();
        Voltage highest = scenario.supply().highest();
        FilamentInput bulb = scenario.filament();
        // a bulb of more watts at the same temperature draws more by their ratio at every voltage and temperature
        double mostRatio = bulb.mostPower().inWatts() / bulb.lamp().ratedPower().inWatts();
        double ratedA = study.filament().current(highest).inAmperes();
        double mostA = mostRatio * ratedA;
        double inrushA = mostRatio * study.inrush().inAmperes();
        int lamps = scenario.stopLamps();
        Fuse.Load before =
                scenario.fuse().carry(Current.amperes((lamps + 1) * mostA), Current.amperes((lamps + 1) * inrushA));
        double ledA = lamps * study.ledAtMost().current(highest).inAmperes();
        Fuse.Load after = scenario.fuse().carry(Current.amperes(ledA + mostA), Current.amperes(ledA + inrushA));
        double faultA = LampFeed.of(scenario.harness().resistance())
                .shortCircuitCurrent(scenario.supply().lowest())
                .inAmperes();
        String most = "all lamps on at " + highest + ", bulbs of " + bulb.mostPower() + ": " + bulb.mostFrom();
        String rated =
                "all lamps on at " + highest + ", bulbs of " + bulb.lamp().ratedPower() + " as rated";
        return new CircuitSection(
                "Fuse",
                List.of(
                        "With " + lamps + " filament stop lamps and the added lamp it is " + word(before) + ".",
                        "With LED stop lamps, their resistors and the added filament lamp it is " + word(after) + ".",
                        "Both are judged with bulbs of " + bulb.mostPower() + " (" + bulb.mostFrom() + ").",
                        "A short circuit at the lamp draws at least " + Text.digits(faultA) + " A, "
                                + Text.digits(faultA / scenario.fuse().rating().inAmperes()) + " times its rating."),
                List.of(
                        Row.of("steady load allowed", before.continuousLimit().inAmperes(), "A", "share of the rating"),
                        Row.of(
                                "most steady load with filament stop lamps",
                                before.load().inAmperes(),
                                "A",
                                most),
                        Row.of("the same of bulbs as rated", (lamps + 1) * ratedA, "A", rated),
                        Row.of(
                                "most steady load with LED stop lamps",
                                after.load().inAmperes(),
                                "A",
                                most),
                        Row.of("the same of a bulb as rated", ledA + ratedA, "A", rated),
                        Row.of(
                                "most inrush with filament stop lamps",
                                (lamps + 1) * inrushA,
                                "A",
                                "cold filaments at " + highest + ", bulbs of " + bulb.mostPower()),
                        Row.of(
                                "current of a short circuit at the lamp",
                                faultA,
                                "A",
                                "U/R of the run at " + scenario.supply().lowest())),
                before.evidence().with(after.evidence()));
    }

    private static String word(Fuse.Load load) {
        return switch (load.outcome()) {
            case CARRIES -> "within its steady load";
            case OVERWORKED -> "above its steady load, and may open when warm";
            case OVERLOADED -> load.outcome().name().toLowerCase(Locale.ROOT);
        };
    }
}
