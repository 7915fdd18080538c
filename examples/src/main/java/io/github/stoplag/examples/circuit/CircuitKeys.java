package io.github.stoplag.examples.circuit;

import io.github.stoplag.examples.file.FilamentInput;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.Key;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.List;
import java.util.stream.Stream;

/** The keys of the scenario of {@code circuit}. */
public final class CircuitKeys {
    private static final String PER_MINUTE = "/min";
    private static final String KELVIN_PER_WATT = "K/W";

    static final String SERIES = "resistor.series";
    static final String CONDUCTOR = "harness.conductor";
    static final String RETURN = "harness.return";
    static final String DIODE_CURRENTS = "diode.currents";
    static final String DIODE_DROPS = "diode.drops";
    static final String FLASHER = "flasher.kind";
    static final String FLASHER_RULE = "flasher.rule";

    static final Key<Voltage> LOWEST = Key.voltage("supply.lowest", null, 1, 60);
    static final Key<Voltage> NOMINAL = Key.voltage("supply.nominal", null, 1, 60);
    static final Key<Voltage> HIGHEST = Key.voltage("supply.highest", null, 1, 60);
    static final Key<Temperature> AMBIENT = Key.celsius("ambient.temperature", "50 °C", -50, 120);
    static final Key<Double> LAMPS = Key.number("stop-lamps", "2", 1, 20, "");
    static final Key<Current> LED_CURRENT = Key.current("led.current", null, 0.001, 20);
    static final Key<Voltage> LED_LOWEST = Key.voltage("led.lowest-voltage", null, 0.5, 60);
    static final Key<Current> MONITOR_THRESHOLD = Key.current("monitor.threshold", null, 0.001, 50);
    static final Key<Double> MONITOR_TOLERANCE = Key.ratio("monitor.tolerance", "25 %", 0, 0.9);
    static final Key<Resistance> RESISTANCE = Key.resistance("resistor.resistance", "model", 0.1, 10_000);
    static final Key<Double> RESISTOR_TOLERANCE = Key.ratio("resistor.tolerance", "5 %", 0, 0.5);
    static final Key<Power> RATED_POWER = Key.power("resistor.rated-power", null, 0.1, 1000);
    static final Key<Temperature> RATED_AMBIENT = Key.celsius("resistor.rated-ambient", "25 °C", -50, 120);
    static final Key<Temperature> RESISTOR_LIMIT = Key.celsius("resistor.temperature-limit", "200 °C", 50, 500);
    static final Key<Double> TO_SURFACE = Key.number("resistor.element-to-surface", "0 K/W", 0, 1000, KELVIN_PER_WATT);
    static final Key<Double> TO_AMBIENT = Key.number("resistor.surface-to-ambient", null, 0.01, 1000, KELVIN_PER_WATT);
    static final Key<TimeSpan> THERMAL_TIME = Key.time("resistor.thermal-time-constant", "120 s", 1, 10_000);
    static final Key<TimeSpan> TIME_ON = Key.time("braking.time-on", "6 s", 0.1, 10_000);
    static final Key<TimeSpan> TIME_OFF = Key.time("braking.time-off", "40 s", 0, 10_000);
    static final Key<Double> HOURS = Key.number("braking.hours-per-year", "100 h", 0, 8784, "h");
    static final Key<Double> AREA = Key.number("harness.area", null, 0.05, 500, "mm^2");
    static final Key<Double> GAUGE = Key.number("harness.gauge", null, -3, 40, "");
    static final Key<Distance> LENGTH = Key.distance("harness.length", null, 0, 100);
    static final Key<Resistance> CONTACTS = Key.resistance("harness.contacts", "0 ohm", 0, 100);
    static final Key<Temperature> HARNESS_TEMPERATURE = Key.celsius("harness.temperature", "20 °C", -100, 200);
    static final Key<Voltage> ALLOWABLE_DROP = Key.voltage("harness.allowable-drop", "0.5 V", 0, 10);
    static final Key<Current> DIODE_CURRENT = Key.current(DIODE_CURRENTS, null, 1e-6, 1000);
    static final Key<Voltage> DIODE_DROP = Key.voltage(DIODE_DROPS, null, 0.001, 10);
    static final Key<Current> DIODE_RATED = Key.current("diode.rated-current", null, 0.001, 1000);
    static final Key<Voltage> DIODE_REVERSE = Key.voltage("diode.rated-reverse", null, 1, 1000);
    static final Key<Current> DIODE_LEAKAGE = Key.current("diode.leakage", "0 A", 0, 1);
    static final Key<Double> DIODE_TO_AMBIENT =
            Key.number("diode.junction-to-ambient", null, 0.01, 1000, KELVIN_PER_WATT);
    static final Key<Temperature> DIODE_LIMIT = Key.celsius("diode.highest-junction", "125 °C", 50, 400);
    static final Key<Current> FUSE = Key.current("fuse.rating", null, 0.1, 1000);
    static final Key<Double> FUSE_SHARE = Key.ratio("fuse.continuous-share", "75 %", 0.05, 1);
    static final Key<Double> FLASHER_LAMPS = Key.number("flasher.lamps", "2", 1, 20, "");
    static final Key<Current> FLASHER_THRESHOLD = Key.current("flasher.threshold", null, 0.001, 50);
    static final Key<Double> FLASHER_TOLERANCE = Key.ratio("flasher.tolerance", "15 %", 0, 0.9);
    static final Key<Double> FLASHER_RATE = Key.number("flasher.rate", "90 /min", 1, 6000, PER_MINUTE);
    static final Key<Double> FLASHER_ERROR_RATE = Key.number("flasher.error-rate", "180 /min", 1, 6000, PER_MINUTE);

    public static final List<Key<?>> QUANTITIES = List.of(
            LOWEST,
            NOMINAL,
            HIGHEST,
            AMBIENT,
            LAMPS,
            LED_CURRENT,
            LED_LOWEST,
            MONITOR_THRESHOLD,
            MONITOR_TOLERANCE,
            RESISTANCE,
            RESISTOR_TOLERANCE,
            RATED_POWER,
            RATED_AMBIENT,
            RESISTOR_LIMIT,
            TO_SURFACE,
            TO_AMBIENT,
            THERMAL_TIME,
            TIME_ON,
            TIME_OFF,
            HOURS,
            AREA,
            GAUGE,
            LENGTH,
            CONTACTS,
            HARNESS_TEMPERATURE,
            ALLOWABLE_DROP,
            DIODE_CURRENT,
            DIODE_DROP,
            DIODE_RATED,
            DIODE_REVERSE,
            DIODE_LEAKAGE,
            DIODE_TO_AMBIENT,
            DIODE_LIMIT,
            FUSE,
            FUSE_SHARE,
            FLASHER_LAMPS,
            FLASHER_THRESHOLD,
            FLASHER_TOLERANCE,
            FLASHER_RATE,
            FLASHER_ERROR_RATE);

    private CircuitKeys() {}

    static List<String> names() {
        return Stream.of(
                        Heading.KEYS.stream(),
                        FilamentInput.KEYS.stream(),
                        Stream.of(SERIES, CONDUCTOR, RETURN, FLASHER, FLASHER_RULE),
                        QUANTITIES.stream().map(Key::name))
                .flatMap(names -> names)
                .toList();
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
