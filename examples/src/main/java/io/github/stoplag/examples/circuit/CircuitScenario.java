package io.github.stoplag.examples.circuit;

import io.github.stoplag.circuit.CurrentDraw;
import io.github.stoplag.circuit.Diode;
import io.github.stoplag.circuit.Fuse;
import io.github.stoplag.circuit.OutageMonitor;
import io.github.stoplag.circuit.WireRun;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lamps.FilamentInput;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;

/**
 * The electrical side of a lamp swap as a file describes it.
 *
 * @param heading what the scenario calls itself
 * @param supply the supply voltages
 * @param ambient the temperature around resistor and diode
 * @param filament the bulb fitted now, also the one of the added lamp
 * @param stopLamps how many of them hang on the fuse
 * @param led the lamp considered
 * @param monitor the outage monitor of one lamp
 * @param resistor the load resistor beside one LED lamp
 * @param harness the wire to one lamp
 * @param allowableDrop the drop allowed in it
 * @param diode the isolating diode through which the added lamp is fed
 * @param fuse the fuse of all stop lamps
 * @param signals the turn signals, which take the same lamps
 * @param brakingHoursPerYear hours a year with the stop lamps on
 */
public record CircuitScenario(
        Heading heading,
        Supply supply,
        Temperature ambient,
        FilamentInput filament,
        int stopLamps,
        CurrentDraw led,
        OutageMonitor monitor,
        CircuitParts.Resistor resistor,
        WireRun harness,
        Voltage allowableDrop,
        Diode diode,
        Fuse fuse,
        CircuitParts.Signals signals,
        double brakingHoursPerYear) {
    public static final String SHIPPED = "minibus-circuit.properties";
    static final ScenarioFile.Vocabulary VOCABULARY = CircuitKeys.vocabulary();

    /**
     * The supply voltages.
     *
     * @param lowest the lowest at which everything must work
     * @param nominal the usual one
     * @param highest the highest to be met for long
     */
    record Supply(Voltage lowest, Voltage nominal, Voltage highest) {}

    /**
     * Makes a scenario from a file.
     *
     * @throws InputException if a value is missing or impossible
     */
    static CircuitScenario of(ScenarioFile file) {
        Heading heading = Heading.of(file);
        Supply supply =
                new Supply(file.get(CircuitKeys.LOWEST), file.get(CircuitKeys.NOMINAL), file.get(CircuitKeys.HIGHEST));
        if (!(supply.lowest.inVolts() <= supply.nominal.inVolts()
                && supply.nominal.inVolts() <= supply.highest.inVolts())) {
            throw file.bad(
                    CircuitKeys.NOMINAL.name(),
                    supply.nominal.toString(),
                    "must lie between " + CircuitKeys.LOWEST.name() + " = " + supply.lowest + " and "
                            + CircuitKeys.HIGHEST.name() + " = " + supply.highest);
        }
        CircuitScenario scenario = new CircuitScenario(
                heading,
                supply,
                file.get(CircuitKeys.AMBIENT),
                FilamentInput.rated(file),
                CircuitParts.count(file, CircuitKeys.LAMPS),
                CurrentDraw.ledRegulated(file.get(CircuitKeys.LED_CURRENT), file.get(CircuitKeys.LED_LOWEST)),
                OutageMonitor.of(
                        file.get(CircuitKeys.MONITOR_THRESHOLD),
                        file.get(CircuitKeys.MONITOR_TOLERANCE),
                        supply.lowest,
                        supply.highest),
                CircuitParts.resistor(file),
                CircuitParts.harness(file),
                file.get(CircuitKeys.ALLOWABLE_DROP),
                CircuitParts.diode(file),
                new Fuse(file.get(CircuitKeys.FUSE), file.get(CircuitKeys.FUSE_SHARE)),
                CircuitParts.signals(file, supply),
                file.get(CircuitKeys.HOURS));
        file.refuseUnused(CircuitKeys::unused);
        return scenario;
    }
}
