package io.github.stoplag.examples.circuit;

import io.github.stoplag.circuit.CurrentDraw;
import io.github.stoplag.circuit.FlashRate;
import io.github.stoplag.circuit.Flasher;
import io.github.stoplag.circuit.HeatCheck;
import io.github.stoplag.circuit.LoadResistor;
import io.github.stoplag.circuit.LoadSizing;
import io.github.stoplag.circuit.OutageVerdict;
import io.github.stoplag.circuit.ResistorRating;
import io.github.stoplag.circuit.SwapEnergy;
import io.github.stoplag.examples.circuit.CircuitSection.Row;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.source.Evidence;
import java.util.ArrayList;
import java.util.List;

/** What the devices that watch the lamps' current make of the swap: outage monitor, load resistor, flasher. */
final class MonitorParts {
    private static final String MONITOR_RULE = "threshold and its tolerance";

    private MonitorParts() {}

    static CircuitSection outage(CircuitStudy study) {
        OutageVerdict bulb = study.scenario().monitor().judge(study.filament());
        OutageVerdict led = study.scenario().monitor().judge(study.scenario().led());
        return new CircuitSection(
                "Outage monitor",
                List.of(
                        "With the filament bulb the monitor " + bulb.outcome() + ".",
                        "With the LED lamp alone it " + led.outcome() + "."),
                List.of(
                        Row.of(
                                "monitor surely reports a failure below",
                                led.failedBelow().inAmperes(),
                                "A",
                                MONITOR_RULE),
                        Row.of(
                                "monitor surely reports healthy from",
                                led.healthyFrom().inAmperes(),
                                "A",
                                MONITOR_RULE),
                        lowest("filament bulb", bulb),
                        highest("filament bulb", bulb),
                        Row.word("monitor with the filament bulb", bulb.outcome(), MONITOR_RULE),
                        lowest("LED lamp", led),
                        highest("LED lamp", led),
                        Row.word("monitor with the LED lamp alone", led.outcome(), MONITOR_RULE)),
                bulb.evidence().with(led.evidence()));
    }

    private static Row lowest(String lamp, OutageVerdict verdict) {
        return Row.of(
                "least current of the " + lamp,
                verdict.lowest().current().inAmperes(),
                "A",
                "at " + verdict.lowest().supply());
    }

    private static Row highest(String lamp, OutageVerdict verdict) {
        return Row.of(
                "greatest current of the " + lamp,
                verdict.highest().current().inAmperes(),
                "A",
                "at " + verdict.highest().supply());
    }

    static CircuitSection load(CircuitStudy study) {
        List<String> answers = new ArrayList<>();
        List<Row> rows = new ArrayList<>();
        Evidence evidence = study.sizing().evidence();
        if (study.sizing() instanceof LoadSizing.Needed needed) {
            answers.add("The monitor needs a load beside the LED lamp: at most "
                    + Text.digits(needed.greatest().inOhms()) + " ohm.");
            rows.add(Row.of(
                    "greatest load resistance that surely keeps the monitor content",
                    needed.greatest().inOhms(),
                    "ohm",
                    "R = U/(I_healthy - I_LED)/(1 + tolerance) at " + needed.decidingSupply()));
        } else {
            answers.add("The monitor needs no load resistor.");
        }
        LoadResistor resistor = study.resistor().orElse(null);
        if (resistor == null) {
            return new CircuitSection("Load resistor", answers, rows, evidence);
        }
        LoadResistor.Watch watch =
                resistor.watch(study.scenario().monitor(), study.scenario().led());
        answers.add("With " + Text.digits(resistor.nominal().inOhms()) + " ohm it "
                + watch.lampAlive().outcome() + " while the LED works, and "
                + watch.lampDead().outcome()
                + " when the LED is dead" + (watch.stillWatchesLamp() ? "." : ": it no longer watches the lamp."));
        rows.add(Row.of(
                "load resistance fitted",
                resistor.nominal().inOhms(),
                "ohm",
                study.scenario().resistor().given().isPresent()
                        ? "given"
                        : "next lower value of " + study.scenario().resistor().series()));
        rows.add(Row.word("monitor with LED and resistor", watch.lampAlive().outcome(), MONITOR_RULE));
        rows.add(Row.word(
                "monitor with a dead LED and the resistor", watch.lampDead().outcome(), MONITOR_RULE));
        evidence = evidence.with(watch.evidence()).with(heat(study, resistor, answers, rows));
        return new CircuitSection(
                "Load resistor", answers, rows, evidence.with(energy(study, resistor, answers, rows)));
    }

    private static Evidence heat(CircuitStudy study, LoadResistor resistor, List<String> answers, List<Row> rows) {
        CircuitScenario scenario = study.scenario();
        ResistorRating rating = scenario.resistor().rating();
        String keys = CircuitKeys.TO_SURFACE.name() + " = " + Text.digits(rating.elementToSurfaceKPerW()) + " K/W, "
                + CircuitKeys.TO_AMBIENT.name() + " = " + Text.digits(rating.surfaceToAmbientKPerW()) + " K/W";
        HeatCheck held =
                CircuitStudy.part(keys, () -> resistor.heat(scenario.supply().highest(), scenario.ambient()));
        HeatCheck driving = resistor.heat(
                scenario.supply().highest(),
                scenario.ambient(),
                scenario.resistor().duty(),
                scenario.resistor().thermalTime());
        answers.add("Under a held brake it turns " + Text.digits(held.whileOn().inWatts())
                + " W into heat, its surface near " + Text.digits(held.surface().inCelsius()) + " °C; " + rated(held)
                + ".");
        String where = "at " + scenario.supply().highest() + " and its lowest value; "
                + Text.digits(scenario.ambient().inCelsius()) + " °C around it";
        rows.add(Row.of("heat of the resistor while on", held.whileOn().inWatts(), "W", "P = U^2/R " + where));
        rows.add(Row.of(
                "power its rating allows without pause", held.allowed().inWatts(), "W", "derated to its surroundings"));
        rows.add(Row.of(
                "surface temperature under a held brake", held.surface().inCelsius(), "°C", "T = T_ambient + R_th P"));
        rows.add(Row.word("rating under a held brake", rated(held), "power against the rating"));
        rows.add(Row.of(
                "surface temperature in stop-and-go",
                driving.surface().inCelsius(),
                "°C",
                scenario.resistor().duty().on() + " on, "
                        + scenario.resistor().duty().off() + " off, repeated"));
        rows.add(Row.word("rating in stop-and-go", rated(driving), "power against the rating"));
        Evidence milder =
                new Evidence(driving.evidence().basis(), driving.evidence().caveats(), List.of());
        return held.evidence().with(milder);
    }

    private static String rated(HeatCheck check) {
        return check.withinRating() ? "within its rating" : "beyond its rating";
    }

    private static Evidence energy(CircuitStudy study, LoadResistor resistor, List<String> answers, List<Row> rows) {
        CircuitScenario scenario = study.scenario();
        SwapEnergy energy = SwapEnergy.of(
                study.filament(),
                scenario.led(),
                CurrentDraw.resistive(resistor.nominal()),
                scenario.supply().nominal(),
                scenario.brakingHoursPerYear());
        double savedW = energy.savedPerBrakingHourWh();
        answers.add("LED and resistor together draw " + Text.digits(Math.abs(savedW)) + " W "
                + (savedW < 0 ? "more" : "less") + " than the bulb.");
        String basis = "power times time at " + scenario.supply().nominal();
        rows.add(Row.of("energy saved by one lamp in a year", energy.savedPerYearWh(), "Wh", basis));
        rows.add(Row.of("energy wasted in its resistor in a year", energy.wastedPerYearWh(), "Wh", basis));
        return energy.evidence();
    }

    static CircuitSection flasher(CircuitStudy study) {
        CircuitParts.Signals signals = study.scenario().signals();
        List<String> answers = new ArrayList<>();
        List<Row> rows = new ArrayList<>();
        Evidence evidence = flashing("filament bulbs", signals, study.filament(), answers, rows)
                .with(flashing("LED lamps alone", signals, study.scenario().led(), answers, rows));
        if (study.resistor().isPresent()) {
            evidence = evidence.with(
                    flashing("LED lamps and their resistors", signals, study.ledAtLeast(), answers, rows));
        }
        return new CircuitSection("Turn-signal flasher", answers, rows, evidence);
    }

    private static Evidence flashing(
            String what, CircuitParts.Signals signals, CurrentDraw lamp, List<String> answers, List<Row> rows) {
        CurrentDraw side = lamp;
        for (int i = 1; i < signals.lamps(); i++) {
            side = side.plus(lamp);
        }
        Flasher.Report report = signals.flasher().with(side, signals.band());
        String rate = report.rate().map(FlashRate::toString).orElse("");
        answers.add("With " + signals.lamps() + " " + what + " it " + report.behaviour()
                + (rate.isEmpty() ? "" : ", " + rate) + (report.withinBand() ? "." : "; not surely lawful."));
        rows.add(Row.word("flasher with " + what, report.behaviour(), "their current against its threshold"));
        report.rate()
                .ifPresent(r -> rows.add(Row.of(
                        "flash rate with " + what,
                        r.inPerMinute(),
                        "1/min",
                        signals.band().source())));
        return report.evidence();
    }
}
