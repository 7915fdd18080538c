package io.github.stoplag.worked;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.worked.Draw.Draft;
import io.github.stoplag.worked.Expression.Symbol;
import java.util.List;
import java.util.Optional;

/** Exercises on the filament of a stop lamp. */
final class LampTemplates {
    private static final String TOPIC = "lamp";

    private LampTemplates() {}

    static List<ExerciseTemplate> all() {
        return List.of(
                ExerciseTemplate.choosing("filament-step", TOPIC, Difficulty.ADVANCED, 20, 400, LampTemplates::step),
                ExerciseTemplate.choosing("filament-time", TOPIC, Difficulty.ADVANCED, 0.5, 80, LampTemplates::time));
    }

    private static FilamentLamp lamp(Draw d) {
        Given watts = d.from("18", "28", "1", Unit.WATT);
        return FilamentLamp.builder(Voltage.volts(13.5), Power.watts(Draw.bare(watts)))
                .build();
    }

    private static String properties(Solution solution) {
        return "a resistance of " + given(solution, "R") + ", a mass of " + given(solution, "m")
                + " and a specific heat of " + given(solution, "c") + " and loses " + given(solution, "P_loss");
    }

    private static Optional<Draft> step(Draw d) {
        FilamentLamp lamp = lamp(d);
        Given u = d.from("11", "14", "0.5", Unit.VOLT);
        Given rs = d.from("0.1", "0.5", "0.05", Unit.OHM);
        Given t = d.from("600", "2000", "100", Unit.KELVIN);
        Given dt = d.from("0.2", "2", "0.2", Unit.MILLISECOND);
        if (!(share(lamp, u, rs, t) > 0.2)) {
            return Optional.empty();
        }
        Solution solution = WorkedLamp.heatingStep(d.style(), lamp, u, rs, t, dt);
        double rise = solution.answer().carried().number().doubleValue();
        double loss = number(solution, "P_loss");
        double mc = number(solution, "m") * number(solution, "c");
        double whole = Math.pow(Draw.bare(u), 2) / number(solution, "R");
        double power = rise / dt.in(Unit.SECOND) * mc + loss;
        return Optional.of(d.draft(
                        "A filament at " + t.amount() + " has " + properties(solution) + ". It is fed from "
                                + u.amount()
                                + " through " + rs.amount()
                                + ". By how much does its temperature rise in a linear step of "
                                + dt.amount() + "?",
                        solution)
                .mistake("the milliseconds were divided by 100 instead of 1000", 10 * rise, Unit.KELVIN)
                .mistake("the series resistance was forgotten", (whole - loss) / mc * dt.in(Unit.SECOND), Unit.KELVIN)
                .mistake(
                        "the loss was added instead of taken off",
                        (power + loss) / mc * dt.in(Unit.SECOND),
                        Unit.KELVIN)
                .mistake("the loss was forgotten", power / mc * dt.in(Unit.SECOND), Unit.KELVIN)
                .mistake(
                        "the power of the whole circuit was taken for that of the filament",
                        (Math.pow(Draw.bare(u), 2) / (number(solution, "R") + Draw.bare(rs)) - loss)
                                / mc
                                * dt.in(Unit.SECOND),
                        Unit.KELVIN));
    }

    private static Optional<Draft> time(Draw d) {
        FilamentLamp lamp = lamp(d);
        Given u = d.from("11", "14", "0.5", Unit.VOLT);
        Given rs = d.from("0.1", "0.5", "0.05", Unit.OHM);
        Given from = d.from("600", "1900", "100", Unit.KELVIN);
        Given rise = d.from("50", "250", "50", Unit.KELVIN);
        Given to = Given.of(Draw.bare(from) + Draw.bare(rise), Unit.KELVIN);
        if (!(share(lamp, u, rs, to) > 0.2)) {
            return Optional.empty();
        }
        Solution solution = WorkedLamp.heatingTime(d.style(), lamp, u, rs, from, to, 1);
        double right = solution.answer().carried().number().doubleValue();
        double loss = number(solution, "P_loss");
        double heat = number(solution, "m") * number(solution, "c") * Draw.bare(rise);
        double power = heat / (right / 1000) + loss;
        double whole = Math.pow(Draw.bare(u), 2) / number(solution, "R");
        return Optional.of(d.draft(
                        "Halfway between " + from.amount() + " and " + to.amount() + " a filament has "
                                + properties(solution) + ". It is fed from " + u.amount() + " through " + rs.amount()
                                + ". How long does it take from the one to the other in one linear step?",
                        solution)
                .mistake("the loss was forgotten", 1000 * heat / power, Unit.MILLISECOND)
                .mistake("the series resistance was forgotten", 1000 * heat / (whole - loss), Unit.MILLISECOND)
                .mistake(
                        "the temperature at the end was taken instead of the rise",
                        right * Draw.bare(to) / Draw.bare(rise),
                        Unit.MILLISECOND)
                .mistake("the seconds were given as milliseconds", right / 1000, Unit.MILLISECOND));
    }

    /** The share of the heating power that is left over after the losses. */
    private static double share(FilamentLamp lamp, Given supply, Given series, Given at) {
        Temperature temperature = Temperature.kelvin(Draw.bare(at));
        Resistance own = lamp.resistanceAt(temperature);
        double ampere = Draw.bare(supply) / (own.inOhms() + Draw.bare(series));
        SupplyConditions conditions = SupplyConditions.of(Voltage.volts(Draw.bare(supply)));
        return 1
                - lamp.lossAt(temperature, conditions.ambientTemperature()).inWatts()
                        / (ampere * ampere * own.inOhms());
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
