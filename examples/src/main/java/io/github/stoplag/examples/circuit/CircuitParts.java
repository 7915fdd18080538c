package io.github.stoplag.examples.circuit;

import io.github.stoplag.circuit.Diode;
import io.github.stoplag.circuit.Duty;
import io.github.stoplag.circuit.ESeries;
import io.github.stoplag.circuit.FlashRate;
import io.github.stoplag.circuit.Flasher;
import io.github.stoplag.circuit.OutageMonitor;
import io.github.stoplag.circuit.ResistorRating;
import io.github.stoplag.circuit.TabledDiode;
import io.github.stoplag.circuit.Wire;
import io.github.stoplag.circuit.WireRun;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads the parts of a circuit scenario that take several keys each. */
final class CircuitParts {
    private CircuitParts() {}

    /**
     * A load resistor to be chosen or given.
     *
     * @param given its resistance; nothing to have it sized
     * @param series the values to be had
     * @param toleranceRatio its tolerance
     * @param rating its rating as mounted
     * @param thermalTime its thermal time constant as mounted
     * @param duty how the brakes are used
     */
    record Resistor(
            Optional<Resistance> given,
            ESeries series,
            double toleranceRatio,
            ResistorRating rating,
            TimeSpan thermalTime,
            Duty duty) {}

    /**
     * The turn signals of one side.
     *
     * @param flasher the flasher
     * @param lamps how many lamps it feeds
     * @param band the lawful rates
     */
    record Signals(Flasher flasher, int lamps, FlashRate.Band band) {}

    static int count(ScenarioFile file, Key<Double> key) {
        double number = file.get(key);
        if (number != Math.rint(number)) {
            throw file.bad(key.name(), Text.digits(number), "must be a whole number");
        }
        return (int) number;
    }

    static Resistor resistor(ScenarioFile file) {
        Optional<Resistance> given = file.find(CircuitKeys.RESISTANCE);
        ESeries series = given.isPresent()
                ? ESeries.E24
                : ESeries.valueOf(file.word(CircuitKeys.SERIES, "e12", List.of("e6", "e12", "e24"))
                        .toUpperCase(Locale.ROOT));
        ResistorRating rating = file.making(
                "load resistor",
                () -> new ResistorRating(
                        file.get(CircuitKeys.RATED_POWER),
                        file.get(CircuitKeys.RATED_AMBIENT),
                        file.get(CircuitKeys.RESISTOR_LIMIT),
                        file.get(CircuitKeys.TO_SURFACE),
                        file.get(CircuitKeys.TO_AMBIENT)));
        return new Resistor(
                given,
                series,
                file.get(CircuitKeys.RESISTOR_TOLERANCE),
                rating,
                file.get(CircuitKeys.THERMAL_TIME),
                new Duty(file.get(CircuitKeys.TIME_ON), file.get(CircuitKeys.TIME_OFF)));
    }

    static WireRun harness(ScenarioFile file) {
        String conductor = file.word(
                CircuitKeys.CONDUCTOR,
                "iec-60228-class-5",
                List.of("iec-60228-class-2", "iec-60228-class-5", "iso-6722", "solid", "awg"));
        Wire wire = file.making(
                List.of(CircuitKeys.CONDUCTOR, CircuitKeys.AREA.name(), CircuitKeys.GAUGE.name()),
                () -> switch (conductor) {
                    case "awg" -> Wire.ofAwg(count(file, CircuitKeys.GAUGE));
                    case "solid" -> Wire.ofArea(file.get(CircuitKeys.AREA));
                    default ->
                        Wire.ofStandard(
                                Wire.Standard.valueOf(
                                        conductor.toUpperCase(Locale.ROOT).replace('-', '_')),
                                file.get(CircuitKeys.AREA));
                });
        boolean body =
                file.word(CircuitKeys.RETURN, "wire", List.of("wire", "body")).equals("body");
        return WireRun.of(wire, file.get(CircuitKeys.LENGTH), body ? WireRun.Return.BODY : WireRun.Return.OWN_WIRE)
                .at(file.get(CircuitKeys.HARNESS_TEMPERATURE))
                .withContacts(file.get(CircuitKeys.CONTACTS));
    }

    static Diode diode(ScenarioFile file) {
        double[] amperes = file.list(CircuitKeys.DIODE_CURRENTS).stream()
                .mapToDouble(text -> file.parse(CircuitKeys.DIODE_CURRENT, text).inAmperes())
                .toArray();
        double[] volts = file.list(CircuitKeys.DIODE_DROPS).stream()
                .mapToDouble(text -> file.parse(CircuitKeys.DIODE_DROP, text).inVolts())
                .toArray();
        TabledDiode points = file.making(
                List.of(CircuitKeys.DIODE_CURRENTS, CircuitKeys.DIODE_DROPS),
                () -> TabledDiode.of(amperes, volts, Source.assumed("points of the scenario")));
        return file.making(
                "isolating diode",
                () -> Diode.builder(points)
                        .forward(file.get(CircuitKeys.DIODE_RATED))
                        .reverse(file.get(CircuitKeys.DIODE_REVERSE), file.get(CircuitKeys.DIODE_LEAKAGE))
                        .thermal(file.get(CircuitKeys.DIODE_TO_AMBIENT), file.get(CircuitKeys.DIODE_LIMIT))
                        .build());
    }

    static Signals signals(ScenarioFile file, CircuitScenario.Supply supply) {
        String kind = file.word(
                CircuitKeys.FLASHER, "load-measuring", List.of("load-measuring", "thermal", "load-independent"));
        boolean european = file.word(CircuitKeys.FLASHER_RULE, "un-r48", List.of("un-r48", "sae-j945"))
                .equals("un-r48");
        FlashRate rate = FlashRate.perMinute(file.get(CircuitKeys.FLASHER_RATE));
        Flasher flasher;
        if (kind.equals("load-independent")) {
            flasher = Flasher.loadIndependent(rate);
        } else {
            OutageMonitor threshold = OutageMonitor.of(
                    file.get(CircuitKeys.FLASHER_THRESHOLD),
                    file.get(CircuitKeys.FLASHER_TOLERANCE),
                    supply.lowest(),
                    supply.highest());
            flasher = kind.equals("thermal")
                    ? Flasher.thermal(threshold, rate)
                    : Flasher.loadMeasuring(
                            threshold, rate, FlashRate.perMinute(file.get(CircuitKeys.FLASHER_ERROR_RATE)));
        }
        return new Signals(
                flasher, count(file, CircuitKeys.FLASHER_LAMPS), european ? FlashRate.UN_R48 : FlashRate.SAE_J945);
    }
}
