package io.github.stoplag.worked;

import io.github.stoplag.circuit.ESeries;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.worked.Draw.Draft;
import io.github.stoplag.worked.Expression.Symbol;
import java.util.List;

/** Exercises on the circuit of a stop lamp and on the filament. */
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
                        "diode-voltage", TOPIC, Difficulty.ADVANCED, 0.3, 1.3, CircuitTemplates::diodeVoltage),
                ExerciseTemplate.of(
                        "filament-step", "lamp", Difficulty.ADVANCED, 300, 2900, CircuitTemplates::filament));
    }

    private static Draft load(Draw d) {
        Given healthy = d.from("0.8", "1.8", "0.1", Unit.AMPERE);
        Given led = d.from("100", "500", "20", Unit.MILLIAMPERE);
        Given u = d.from("10.5", "12", "0.1", Unit.VOLT);
        Given p = d.from("1", "10", "1", Unit.PERCENT);
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
        Given r = d.from("6", "24", "0.5", Unit.OHM);
        Given p = d.from("1", "10", "1", Unit.PERCENT);
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
        Given is = d.from("0.00001", "0.0001", "0.00001", Unit.MILLIAMPERE);
        Given n = d.from("1", "2", "0.1", Unit.NONE);
        Given t = d.from("20", "90", "5", Unit.CELSIUS);
        Solution solution = WorkedCircuit.diodeVoltage(d.style(), i, is, n, t);
        double right = solution.answer().carried().number().doubleValue();
        double ratio = i.in(Unit.AMPERE) / is.in(Unit.AMPERE) + 1;
        return d.draft(
                        "A diode has a saturation current of " + is.amount() + " and an ideality factor of "
                                + n.amount()
                                + " at " + t.amount() + ". What is its forward voltage at " + i.amount()
                                + " by Shockley's equation?",
                        solution)
                .mistake("the decimal logarithm was taken", right * Math.log10(ratio) / Math.log(ratio), Unit.VOLT)
                .mistake("the ideality factor was forgotten", right / Draw.bare(n), Unit.VOLT)
                .mistake(
                        "the temperature was put in degrees Celsius",
                        right * Draw.bare(t) / t.in(Unit.KELVIN),
                        Unit.VOLT)
                .mistake(
                        "the current in amperes was divided by that in milliamperes",
                        right * Math.log(Draw.bare(i) / Draw.bare(is) + 1) / Math.log(ratio),
                        Unit.VOLT);
    }

    private static Draft filament(Draw d) {
        Given watts = d.from("18", "28", "1", Unit.WATT);
        Given u = d.from("11", "14", "0.5", Unit.VOLT);
        Given rs = d.from("0.1", "0.5", "0.05", Unit.OHM);
        Given t = d.from("600", "2000", "100", Unit.KELVIN);
        Given dt = d.from("0.1", "1", "0.1", Unit.MILLISECOND);
        FilamentLamp lamp = FilamentLamp.builder(Voltage.volts(13.5), Power.watts(Draw.bare(watts)))
                .build();
        Solution solution = WorkedLamp.heatingStep(d.style(), lamp, u, rs, t, dt);
        double start = Draw.bare(t);
        double rise = solution.answer().carried().number().doubleValue() - start;
        double ohms = number(solution, "R");
        double mc = number(solution, "m") * number(solution, "c");
        double power = Math.pow(Draw.bare(u) / ohms, 2) * ohms;
        return d.draft(
                        "A filament at " + t.amount() + " has a resistance of " + given(solution, "R") + ", a mass of "
                                + given(solution, "m") + " and a specific heat of " + given(solution, "c")
                                + " and loses " + given(solution, "P_loss") + ". It is fed from " + u.amount()
                                + " through "
                                + rs.amount() + ". How hot is it after a linear step of " + dt.amount() + "?",
                        solution)
                .mistake("the milliseconds were taken as hundredths of a second", start + 10 * rise, Unit.KELVIN)
                .mistake("the rise alone was given", rise, Unit.KELVIN)
                .mistake(
                        "the series resistance was forgotten",
                        start + (power - number(solution, "P_loss")) / mc * dt.in(Unit.SECOND),
                        Unit.KELVIN)
                .mistake("the result in degrees Celsius was given as kelvin", start + rise - 273.15, Unit.KELVIN);
    }

    private static Amount given(Solution solution, String symbol) {
        return solution.givens().stream()
                .filter(line -> line.symbol().equals(Symbol.of(symbol)))
                .findFirst()
                .orElseThrow()
                .given()
                .amount();
    }

    private static double number(Solution solution, String symbol) {
        return given(solution, symbol).number().doubleValue();
    }
}
