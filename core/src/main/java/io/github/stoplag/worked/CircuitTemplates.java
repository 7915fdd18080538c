package io.github.stoplag.worked;

import io.github.stoplag.circuit.ESeries;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.worked.Draw.Draft;
import java.util.List;

/** Exercises on the circuit of a stop lamp. */
final class CircuitTemplates {
    private static final String TOPIC = "circuit";
    private static final String KELVIN = "the result in kelvin was given as degrees Celsius";

    private CircuitTemplates() {}

    static List<ExerciseTemplate> all() {
        return List.of(
                ExerciseTemplate.of("load-resistor", TOPIC, Difficulty.STANDARD, 3, 100, CircuitTemplates::load),
                ExerciseTemplate.of("resistor-heat", TOPIC, Difficulty.STANDARD, 50, 250, CircuitTemplates::heat),
                ExerciseTemplate.of("diode-heat", TOPIC, Difficulty.BASIC, 50, 175, CircuitTemplates::diodeHeat),
                ExerciseTemplate.of(
                        "diode-voltage", TOPIC, Difficulty.ADVANCED, 0.3, 1.3, CircuitTemplates::diodeVoltage));
    }

    private static Draft load(Draw d) {
        Given healthy = d.from("0.8", "1.8", "0.1", Unit.AMPERE);
        Given led = d.from("100", "500", "20", Unit.MILLIAMPERE);
        Given u = d.from("10.5", "12", "0.1", Unit.VOLT);
        Given p = d.oneOf(Unit.PERCENT, 1, 2, 5, 10);
        double missing = Draw.bare(healthy) - led.in(Unit.AMPERE);
        double tolerance = p.in(Unit.NONE);
        return d.draft(
                        "An outage monitor takes a lamp for healthy from " + healthy.amount()
                                + " on. An LED lamp draws "
                                + led.amount() + ". Which resistor of the E24 series (tolerance " + p.amount()
                                + ") beside it is the largest that satisfies the monitor at " + u.amount() + "?",
                        WorkedCircuit.loadResistor(d.style(), healthy, led, u, p))
                .mistake(
                        "the current of the LED lamp was not taken off",
                        e24(Draw.bare(u) / Draw.bare(healthy) / (1 + tolerance)),
                        Unit.OHM)
                .mistake(
                        "the tolerance was taken the wrong way round",
                        e24(Draw.bare(u) / missing / (1 - tolerance)),
                        Unit.OHM)
                .mistake(
                        "the resistor was sized to draw what the LED lamp draws",
                        e24(Draw.bare(u) / led.in(Unit.AMPERE) / (1 + tolerance)),
                        Unit.OHM)
                .mistake(
                        "the next E24 value above was taken",
                        e24(1.16 * e24(Draw.bare(u) / missing / (1 + tolerance))),
                        Unit.OHM);
    }

    private static double e24(double ohms) {
        return ESeries.E24.atMost(Resistance.ohms(ohms)).inOhms();
    }

    private static Draft heat(Draw d) {
        Given r = d.oneOf(Unit.OHM, 6.8, 7.5, 8.2, 9.1, 10, 11, 12, 13, 15, 16, 18, 20, 22, 24);
        Given p = d.oneOf(Unit.PERCENT, 1, 2, 5, 10);
        Given u = d.from("13.5", "15", "0.1", Unit.VOLT);
        Given th = d.from("2.5", "6", "0.5", Unit.KELVIN_PER_WATT);
        Given ta = d.from("20", "60", "5", Unit.CELSIUS);
        double power = Draw.bare(u) * Draw.bare(u) / (Draw.bare(r) * (1 - p.in(Unit.NONE)));
        double ambient = Draw.bare(ta);
        return d.draft(
                        "A load resistor of " + r.amount() + " (tolerance " + p.amount() + ") lies across " + u.amount()
                                + ". As mounted it has " + th.amount()
                                + " from its surface to the air. How hot can its surface get in air of " + ta.amount()
                                + "?",
                        WorkedCircuit.resistorHeat(d.style(), r, p, u, th, ta))
                .mistake("the rise alone was given", Draw.bare(th) * power, Unit.CELSIUS)
                .mistake("the voltage was not squared", ambient + Draw.bare(th) * power / Draw.bare(u), Unit.CELSIUS)
                .mistake(KELVIN, ambient + Draw.bare(th) * power + 273.15, Unit.CELSIUS)
                .mistake("divided by the thermal resistance", ambient + power / Draw.bare(th), Unit.CELSIUS);
    }

    private static Draft diodeHeat(Draw d) {
        Given uf = d.from("0.6", "1", "0.05", Unit.VOLT);
        Given i = d.from("0.5", "4", "0.1", Unit.AMPERE);
        Given th = d.from("15", "50", "5", Unit.KELVIN_PER_WATT);
        Given ta = d.from("20", "70", "5", Unit.CELSIUS);
        double power = Draw.bare(uf) * Draw.bare(i);
        double ambient = Draw.bare(ta);
        return d.draft(
                        "A diode carries " + i.amount() + " at a forward voltage of " + uf.amount()
                                + ". As mounted it has " + th.amount() + " from junction to air of " + ta.amount()
                                + ". How hot is the junction?",
                        WorkedCircuit.diodeHeat(d.style(), uf, i, th, ta))
                .mistake("the rise alone was given", Draw.bare(th) * power, Unit.CELSIUS)
                .mistake(KELVIN, ambient + Draw.bare(th) * power + 273.15, Unit.CELSIUS)
                .mistake("the voltage was forgotten in the power", ambient + Draw.bare(th) * Draw.bare(i), Unit.CELSIUS)
                .mistake("the power alone was added", ambient + power, Unit.CELSIUS);
    }

    private static Draft diodeVoltage(Draw d) {
        Given i = d.from("0.2", "4", "0.1", Unit.AMPERE);
        Given is = d.from("10", "100", "5", Unit.NANOAMPERE);
        Given n = d.from("1", "2", "0.1", Unit.NONE);
        Given t = d.from("20", "90", "5", Unit.CELSIUS);
        Solution solution = WorkedCircuit.diodeVoltage(d.style(), i, is, n, t);
        double right = solution.answer().carried().number().doubleValue();
        double ratio = i.in(Unit.AMPERE) / is.in(Unit.AMPERE) + 1;
        return d.draft(
                        "A diode has a saturation current of " + is.amount() + " and an ideality factor of "
                                + n.amount()
                                + " at " + t.amount() + ". What is its forward voltage at " + i.amount()
                                + " by Shockley's equation? (k/e = 8.617×10⁻⁵ V/K)",
                        solution)
                .mistake("the decimal logarithm was taken", right * Math.log10(ratio) / Math.log(ratio), Unit.VOLT)
                .mistake("the ideality factor was forgotten", right / Draw.bare(n), Unit.VOLT)
                .mistake(
                        "the temperature was put in degrees Celsius",
                        right * Draw.bare(t) / t.in(Unit.KELVIN),
                        Unit.VOLT)
                .mistake(
                        "the nanoamperes were taken as microamperes",
                        right * Math.log(ratio / 1000) / Math.log(ratio),
                        Unit.VOLT);
    }
}
