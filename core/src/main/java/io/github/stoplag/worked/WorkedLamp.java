package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;

import io.github.stoplag.lamp.FilamentDecay;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.lamp.SupplyConditions;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.worked.Expression.Symbol;
import java.util.Objects;
import java.util.function.DoublePredicate;

/**
 * Worked solutions on a filament lamp.
 *
 * <p>Source: heat balance of the filament; see {@link FilamentLamp}.
 */
public final class WorkedLamp {
    private static final Caution HOT_FILAMENT =
            new Caution("heat", "A lit lamp burns skin and what it touches, and stays hot after it is switched off.");

    private WorkedLamp() {}

    /**
     * Works one linear step of a filament's heat balance: I = U/(R + R_s), dT/dt = (I² R − P_loss)/(m c), ΔT = dT/dt
     * Δt.
     *
     * @param style the digits
     * @param lamp the lamp, whose resistance, loss and heat capacity at T are given quantities
     * @param supply the supply voltage U
     * @param series the series resistance R_s of wiring and switch
     * @param start the filament temperature T at the start of the step
     * @param step the length Δt of the step, above 0, in [0, 100] ms
     * @return the solution; it answers the rise ΔT of the temperature
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution heatingStep(
            Style style, FilamentLamp lamp, Given supply, Given series, Given start, Given step) {
        Objects.requireNonNull(lamp, "lamp");
        Objects.requireNonNull(series, "series");
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(step, "step");
        Objects.requireNonNull(style, "style");
        Objects.requireNonNull(supply, "supply");
        double stepS = Check.above("length of the step", step.in(Unit.SECOND), 0, 0.1, "s");
        Temperature from = Temperature.kelvin(start.in(Unit.KELVIN));
        SupplyConditions conditions = conditions(supply, series);
        Working w = Working.of(
                style, "One step of a filament's heating, " + lamp.label(), "rise of the filament's temperature");
        Symbol u = w.given("U", "supply voltage", supply);
        Symbol rs = w.given("R_s", "series resistance", series);
        Symbol t = w.given("T", "filament temperature", start);
        Symbol dt = w.given("Δt", "length of the step", step);
        Balance balance = balance(w, style, lamp, conditions, from, "");
        w.assume("resistance, loss and specific heat keep their values of the start during the step");
        w.assume("the whole filament has one temperature");
        Symbol power = power(w, u, rs, balance, "");
        Symbol rate = w.step("β", "rate of heating dT/dt", balance.rate(power));
        Symbol rise = w.step("ΔT", "rise in the step", rate.times(dt));
        Symbol after = w.step("T_1", "temperature after the step", t.plus(rise));
        w.checkBy(
                rise,
                "energy taken up over the heat capacity",
                power.minus(balance.loss).times(dt).over(balance.mass.times(balance.heat)));
        w.compare(
                after,
                "heat balance integrated without steps",
                Amount.of(
                        lamp.switchOn(conditions.withInitialTemperature(from))
                                .temperatureAt(TimeSpan.seconds(stepS))
                                .inKelvin(),
                        Unit.KELVIN),
                "a linear step is an approximation");
        w.caution(HOT_FILAMENT);
        return w.answer(rise, Unit.KELVIN);
    }

    /**
     * Works how long a filament takes from one temperature to a higher one, in equal linear steps of its temperature
     * with the heat balance at the middle of each: Δt = m c δT/(I² R − P_loss).
     *
     * @param style the digits
     * @param lamp the lamp, whose resistance, loss and heat capacity at the middle of each step are given quantities
     * @param supply the supply voltage U
     * @param series the series resistance R_s of wiring and switch
     * @param from the temperature at the start
     * @param to the temperature at the end, for example that of a level of the light, above the start and below the one
     *     at which the supply holds the filament
     * @param steps how many steps, in [1, 16]
     * @return the solution; it answers the time in ms
     * @throws IllegalArgumentException if a quantity is out of range or the filament never gets there
     */
    public static Solution heatingTime(
            Style style, FilamentLamp lamp, Given supply, Given series, Given from, Given to, int steps) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(lamp, "lamp");
        Objects.requireNonNull(series, "series");
        Objects.requireNonNull(style, "style");
        Objects.requireNonNull(supply, "supply");
        Check.inRange("number of steps", steps, 1, 16, "");
        double fromK = Temperature.kelvin(from.in(Unit.KELVIN)).inKelvin();
        FilamentOnset onset =
                lamp.switchOn(conditions(supply, series).withInitialTemperature(Temperature.kelvin(fromK)));
        double toK = Check.above(
                "temperature at the end",
                to.in(Unit.KELVIN),
                fromK,
                0.999 * onset.steadyTemperature().inKelvin(),
                "K");
        Working w = Working.of(style, "Time to heat a filament, " + lamp.label(), "time from the start to the end");
        Symbol u = w.given("U", "supply voltage", supply);
        Symbol rs = w.given("R_s", "series resistance", series);
        Symbol start = w.given("T_a", "filament temperature at the start", from);
        Symbol end = w.given("T_b", "filament temperature at the end", to);
        Symbol n = w.given("n", "number of steps", Given.of(steps, Unit.NONE, "chosen"));
        w.assume("in each step resistance, loss and specific heat have their values of its middle");
        w.assume("the whole filament has one temperature");
        Symbol rise = w.step("δT", "rise in each step", end.minus(start).over(n));
        Expression sum = number(0);
        for (int i = 1; i <= steps; i++) {
            String index = steps == 1 ? "" : String.valueOf(i);
            Temperature middle = Temperature.kelvin(fromK + (toK - fromK) * (i - 0.5) / steps);
            Balance balance = balance(w, style, lamp, conditions(supply, series), middle, index);
            Symbol power = power(w, u, rs, balance, index);
            Symbol time = w.step(
                    "t_" + i,
                    "time of step " + i,
                    balance.mass.times(balance.heat).times(rise).over(power.minus(balance.loss)));
            sum = i == 1 ? time : sum.plus(time);
        }
        Symbol total = steps == 1 ? Symbol.of("t_1") : w.step("t", "time in all", sum);
        w.compare(
                total,
                "heat balance integrated without steps",
                Amount.of(
                        passage(
                                1e-3,
                                seconds -> onset.temperatureAt(TimeSpan.seconds(seconds))
                                                .inKelvin()
                                        < toK),
                        Unit.SECOND),
                "linear steps are an approximation; more and smaller steps come closer");
        w.caution(HOT_FILAMENT);
        return w.answer(total, Unit.MILLISECOND);
    }

    /**
     * Works how long a filament takes after it is switched off to cool from one temperature to a lower one, in equal
     * linear steps of its temperature with the loss at the middle of each: Δt = m c δT/P_loss.
     *
     * @param style the digits
     * @param lamp the lamp, whose loss and heat capacity at the middle of each step are given quantities
     * @param from the temperature at switch-off
     * @param to the temperature at the end, below the start and at least 400 K
     * @param steps how many steps, in [1, 16]
     * @return the solution; it answers the time in ms
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution coolingTime(Style style, FilamentLamp lamp, Given from, Given to, int steps) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(lamp, "lamp");
        Objects.requireNonNull(style, "style");
        Check.inRange("number of steps", steps, 1, 16, "");
        double fromK = Temperature.kelvin(from.in(Unit.KELVIN)).inKelvin();
        double toK = Check.inRange("temperature at the end", to.in(Unit.KELVIN), 400, Math.nextDown(fromK), "K");
        SupplyConditions off = conditions(Given.of(0, Unit.VOLT), Given.of(0, Unit.OHM))
                .withInitialTemperature(Temperature.kelvin(fromK));
        Working w = Working.of(style, "Time for a filament to cool, " + lamp.label(), "time from the start to the end");
        Symbol start = w.given("T_a", "filament temperature at switch-off", from);
        Symbol end = w.given("T_b", "filament temperature at the end", to);
        Symbol n = w.given("n", "number of steps", Given.of(steps, Unit.NONE, "chosen"));
        w.assume("in each step loss and specific heat have their values of its middle");
        w.assume("the whole filament has one temperature and carries no current after switch-off");
        Symbol fall = w.step("δT", "fall in each step", start.minus(end).over(n));
        Expression sum = number(0);
        for (int i = 1; i <= steps; i++) {
            String index = steps == 1 ? "" : String.valueOf(i);
            Balance balance =
                    balance(w, style, lamp, off, Temperature.kelvin(fromK - (fromK - toK) * (i - 0.5) / steps), index);
            Symbol time = w.step(
                    "t_" + i,
                    "time of step " + i,
                    balance.mass.times(balance.heat).times(fall).over(balance.loss));
            sum = i == 1 ? time : sum.plus(time);
        }
        Symbol total = steps == 1 ? Symbol.of("t_1") : w.step("t", "time in all", sum);
        FilamentDecay decay = FilamentDecay.of(lamp, off);
        w.compare(
                total,
                "heat balance integrated without steps",
                Amount.of(
                        passage(
                                1e-3,
                                seconds -> decay.temperatureAt(TimeSpan.seconds(seconds))
                                                .inKelvin()
                                        > toK),
                        Unit.SECOND),
                "linear steps are an approximation; more and smaller steps come closer");
        w.caution(HOT_FILAMENT);
        return w.answer(total, Unit.MILLISECOND);
    }

    private static SupplyConditions conditions(Given supply, Given series) {
        return SupplyConditions.of(Voltage.volts(supply.in(Unit.VOLT)))
                .withSeriesResistance(Resistance.ohms(series.in(Unit.OHM)));
    }

    /** The time at which a monotone course stops being before its mark: bisected. */
    private static double passage(double firstS, DoublePredicate before) {
        double lo = 0;
        double hi = firstS;
        while (before.test(hi)) {
            lo = hi;
            hi *= 2;
        }
        while (hi - lo > 1e-12 * hi) {
            double middle = 0.5 * (lo + hi);
            boolean early = before.test(middle);
            lo = early ? middle : lo;
            hi = early ? hi : middle;
        }
        return hi;
    }

    /** The lamp's quantities at one temperature. */
    private record Balance(Symbol resistance, Symbol loss, Symbol mass, Symbol heat) {
        Expression rate(Symbol power) {
            return power.minus(loss).over(mass.times(heat));
        }
    }

    private static Balance balance(
            Working w, Style style, FilamentLamp lamp, SupplyConditions conditions, Temperature at, String index) {
        String where = index.isEmpty() ? "" : " in the middle of step " + index;
        return new Balance(
                property(
                        w,
                        style,
                        "R" + sub(index),
                        "resistance" + where,
                        lamp.resistanceAt(at).inOhms(),
                        Unit.OHM),
                property(
                        w,
                        style,
                        "P_loss" + index,
                        "radiated and conducted power" + where,
                        lamp.lossAt(at, conditions.ambientTemperature()).inWatts(),
                        Unit.WATT),
                index.isEmpty() || index.equals("1")
                        ? property(
                                w, style, "m", "filament mass", lamp.wireMass().inKg(), Unit.KILOGRAM)
                        : Symbol.of("m"),
                w.given(
                        "c" + sub(index),
                        "specific heat of tungsten" + where,
                        rounded(
                                style,
                                lamp.tungsten().specificHeatJPerKgK(at.inKelvin()),
                                Unit.JOULE_PER_KILOGRAM_KELVIN,
                                "tungsten data")));
    }

    private static String sub(String index) {
        return index.isEmpty() ? "" : "_" + index;
    }

    private static Symbol power(Working w, Symbol u, Symbol rs, Balance balance, String index) {
        Symbol current = w.step("I" + sub(index), "current", u.over(balance.resistance.plus(rs)));
        return w.step(
                "P" + sub(index), "power in the filament", current.squared().times(balance.resistance));
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
