package io.github.stoplag.examples.circuit;

import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.examples.file.Keys;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lamps.FilamentInput;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;

/** The keys of the scenario of {@code circuit}. */
public final class CircuitKeys {
    private static final String PER_MINUTE = "/min";
    private static final String KELVIN_PER_WATT = "K/W";

    /** The keys of the circuit alone, in the order of the declarations below. */
    public static final Keys KEYS = new Keys();

    static final String SERIES = KEYS.add("resistor.series");
    static final String CONDUCTOR = KEYS.add("harness.conductor");
    static final String RETURN = KEYS.add("harness.return");
    static final String DIODE_CURRENTS = "diode.currents";
    static final String DIODE_DROPS = "diode.drops";
    static final String FLASHER = KEYS.add("flasher.kind");
    static final String FLASHER_RULE = KEYS.add("flasher.rule");

    static final Key<Voltage> LOWEST = KEYS.add(Key.voltage("supply.lowest", null, Ranges.LIVE_SUPPLY));
    static final Key<Voltage> NOMINAL = KEYS.add(Key.voltage("supply.nominal", null, Ranges.LIVE_SUPPLY));
    static final Key<Voltage> HIGHEST = KEYS.add(Key.voltage("supply.highest", null, Ranges.LIVE_SUPPLY));
    static final Key<Temperature> AMBIENT = KEYS.add(Key.ambient("ambient.temperature", "50 °C"));
    static final Key<Double> LAMPS = KEYS.add(Key.number("stop-lamps", "2", 1, 20, ""));
    static final Key<Current> LED_CURRENT = KEYS.add(Key.current("led.current", null, 0.001, 20));
    static final Key<Voltage> LED_LOWEST = KEYS.add(Key.voltage("led.lowest-voltage", null, Ranges.LIVE_SUPPLY));
    static final Key<Current> MONITOR_THRESHOLD = KEYS.add(Key.current("monitor.threshold", null, 0.001, 50));
    static final Key<Double> MONITOR_TOLERANCE = KEYS.add(Key.ratio("monitor.tolerance", "25 %", 0, 0.9));
    static final Key<Resistance> RESISTANCE =
            KEYS.add(Key.resistance("resistor.resistance", "model", Ranges.LOAD_RESISTANCE));
    static final Key<Double> RESISTOR_TOLERANCE = KEYS.add(Key.ratio("resistor.tolerance", "5 %", Ranges.TOLERANCE));
    static final Key<Power> RATED_POWER = KEYS.add(Key.power("resistor.rated-power", null, Ranges.RATED_POWER));
    static final Key<Temperature> RATED_AMBIENT = KEYS.add(Key.ambient("resistor.rated-ambient", "25 °C"));
    static final Key<Temperature> RESISTOR_LIMIT =
            KEYS.add(Key.celsius("resistor.temperature-limit", "200 °C", 50, 500));
    static final Key<Double> TO_SURFACE =
            KEYS.add(Key.number("resistor.element-to-surface", "0 K/W", 0, 1000, KELVIN_PER_WATT));
    static final Key<Double> TO_AMBIENT =
            KEYS.add(Key.number("resistor.surface-to-ambient", null, Ranges.THERMAL_RESISTANCE));
    static final Key<TimeSpan> THERMAL_TIME = KEYS.add(Key.time("resistor.thermal-time-constant", "120 s", 1, 10_000));
    static final Key<TimeSpan> TIME_ON = KEYS.add(Key.time("braking.time-on", "6 s", 0.1, 10_000));
    static final Key<TimeSpan> TIME_OFF = KEYS.add(Key.time("braking.time-off", "40 s", 0, 10_000));
    static final Key<Double> HOURS = KEYS.add(Key.number("braking.hours-per-year", "100 h", 0, 8784, "h"));
    static final Key<Double> AREA = KEYS.add(Key.number("harness.area", null, 0.05, 500, "mm^2"));
    static final Key<Double> GAUGE = KEYS.add(Key.number("harness.gauge", null, -3, 40, ""));
    static final Key<Distance> LENGTH = KEYS.add(Key.distance("harness.length", null, 0, 100));
    static final Key<Resistance> CONTACTS =
            KEYS.add(Key.resistance("harness.contacts", "0 ohm", Ranges.SERIES_RESISTANCE));
    static final Key<Temperature> HARNESS_TEMPERATURE =
            KEYS.add(Key.celsius("harness.temperature", "20 °C", -100, 200));
    static final Key<Voltage> ALLOWABLE_DROP = KEYS.add(Key.voltage("harness.allowable-drop", "0.5 V", 0, 10));
    static final Key<Current> DIODE_CURRENT = KEYS.add(Key.current(DIODE_CURRENTS, null, 1e-6, 1000));
    static final Key<Voltage> DIODE_DROP = KEYS.add(Key.voltage(DIODE_DROPS, null, 0.001, 10));
    static final Key<Current> DIODE_RATED = KEYS.add(Key.current("diode.rated-current", null, 0.001, 1000));
    static final Key<Voltage> DIODE_REVERSE = KEYS.add(Key.voltage("diode.rated-reverse", null, Ranges.LIVE_SUPPLY));
    static final Key<Current> DIODE_LEAKAGE = KEYS.add(Key.current("diode.leakage", "0 A", 0, 1));
    static final Key<Double> DIODE_TO_AMBIENT =
            KEYS.add(Key.number("diode.junction-to-ambient", null, Ranges.THERMAL_RESISTANCE));
    static final Key<Temperature> DIODE_LIMIT = KEYS.add(Key.celsius("diode.highest-junction", "125 °C", 50, 400));
    static final Key<Current> FUSE = KEYS.add(Key.current("fuse.rating", null, 0.1, 1000));
    static final Key<Double> FUSE_SHARE = KEYS.add(Key.ratio("fuse.continuous-share", "75 %", 0.05, 1));
    static final Key<Double> FLASHER_LAMPS = KEYS.add(Key.number("flasher.lamps", "2", 1, 20, ""));
    static final Key<Current> FLASHER_THRESHOLD = KEYS.add(Key.current("flasher.threshold", null, 0.001, 50));
    static final Key<Double> FLASHER_TOLERANCE = KEYS.add(Key.ratio("flasher.tolerance", "15 %", 0, 0.9));
    static final Key<Double> FLASHER_RATE = KEYS.add(Key.number("flasher.rate", "90 /min", 1, 6000, PER_MINUTE));
    static final Key<Double> FLASHER_ERROR_RATE =
            KEYS.add(Key.number("flasher.error-rate", "180 /min", 1, 6000, PER_MINUTE));

    private CircuitKeys() {}

    static ScenarioFile.Vocabulary vocabulary() {
        return Keys.vocabulary(Heading.KEYS, FilamentInput.RATING, KEYS);
    }

    /** Says of a key that was given but not asked for why it does not count. */
    static String unused(String key) {
        if (key.startsWith("filament.")) {
            return FilamentInput.RATING_UNUSED;
        }
        if (key.equals(SERIES)) {
            return RESISTANCE.name() + " is given";
        }
        return "it does not belong to the " + (key.startsWith("harness.") ? CONDUCTOR : FLASHER) + " of this file";
    }
}
