package io.github.stoplag.worked;

import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.lamp.Tungsten;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.worked.Expression.Symbol;

/**
 * Worked solutions on a filament lamp.
 *
 * <p>Source: heat balance of the filament; see {@link FilamentLamp}.
 */
public final class WorkedLamp {
    private WorkedLamp() {}

    /**
     * Works one linear step of a filament's heat balance: I = U/(R + R_s), dT/dt = (I² R − P_loss)/(m c), T₁ = T + dT/dt Δt.
     *
     * @param style the digits
     * @param lamp the lamp, whose resistance, loss and heat capacity at T are given quantities
     * @param supply the supply voltage U
     * @param series the series resistance R_s of wiring and switch
     * @param start the filament temperature T at the start of the step
     * @param step the length Δt of the step, above 0, in [0, 100] ms
     * @return the solution; it answers the temperature after the step
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution heatingStep(
            Style style, FilamentLamp lamp, Given supply, Given series, Given start, Given step) {
        double stepS = Check.above("length of the step", step.in(Unit.SECOND), 0, 0.1, "s");
        Temperature from = Temperature.kelvin(start.in(Unit.KELVIN));
        SupplyConditions conditions = SupplyConditions.of(Voltage.volts(supply.in(Unit.VOLT)))
                .withSeriesResistance(Resistance.ohms(series.in(Unit.OHM)));
        Working w = Working.of(
                style, "One step of a filament's heating, " + lamp.label(), "filament temperature after the step");
        Symbol u = w.given("U", "supply voltage", supply);
        Symbol rs = w.given("R_s", "series resistance", series);
        Symbol t = w.given("T", "filament temperature", start);
        Symbol dt = w.given("Δt", "length of the step", step);
        Symbol r = property(w, style, "R", "resistance", lamp.resistanceAt(from).inOhms(), Unit.OHM);
        Symbol loss = property(
                w,
                style,
                "P_loss",
                "radiated and conducted power",
                lamp.lossAt(from, conditions.ambientTemperature()).inWatts(),
                Unit.WATT);
        Symbol mass = property(w, style, "m", "filament mass", lamp.wireMass().inKg(), Unit.KILOGRAM);
        Symbol heat = w.given(
                "c",
                "specific heat of tungsten at this temperature",
                rounded(
                        style,
                        Tungsten.specificHeatJPerKgK(from.inKelvin()),
                        Unit.JOULE_PER_KILOGRAM_KELVIN,
                        "tungsten data"));
        w.assume("resistance, loss and specific heat keep their values of the start during the step");
        w.assume("the whole filament has one temperature");
        Symbol current = w.step("I", "current", u.over(r.plus(rs)));
        Symbol power = w.step("P", "power in the filament", current.squared().times(r));
        Symbol rate = w.step("β", "rate of heating dT/dt", power.minus(loss).over(mass.times(heat)));
        Symbol after = w.step("T_1", "temperature after the step", t.plus(rate.times(dt)));
        w.checkAgainst(
                after,
                "heat balance integrated without steps",
                Amount.of(
                        lamp.switchOn(conditions.withInitialTemperature(from))
                                .temperatureAt(TimeSpan.seconds(stepS))
                                .inKelvin(),
                        Unit.KELVIN));
        return w.answer(after, Unit.KELVIN);
    }

    private static Symbol property(Working w, Style style, String symbol, String name, double value, Unit unit) {
        return w.given(symbol, name, rounded(style, value, unit, "model of the lamp at this temperature"));
    }

    private static Given rounded(Style style, double value, Unit unit, String from) {
        return new Given(
                new Amount(
                        Rounding.digits(style.answerDigits() + 1).apply(value).stripTrailingZeros(), unit),
                from);
    }
}
