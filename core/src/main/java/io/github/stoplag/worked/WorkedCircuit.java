package io.github.stoplag.worked;

import static io.github.stoplag.worked.Expression.number;

import io.github.stoplag.circuit.ESeries;
import io.github.stoplag.circuit.LoadResistor;
import io.github.stoplag.circuit.ResistorRating;
import io.github.stoplag.circuit.ShockleyDiode;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.Source;
import io.github.stoplag.worked.Expression.Ln;
import io.github.stoplag.worked.Expression.Symbol;
import java.util.Objects;

/**
 * Worked solutions on the circuit of a stop lamp: load resistor and diode.
 *
 * <p>Source: Ohm's law, Joule's law and Shockley's equation; see {@link LoadResistor} and {@link ShockleyDiode}.
 */
public final class WorkedCircuit {
    private static final Range SOME_CURRENT = Ranges.FORWARD_CURRENT.withoutLowerEnd();

    /** k/e in volts per kelvin from the exact constants of the SI (2019). */
    private static final double THERMAL_V_PER_K = 1.380649e-23 / 1.602176634e-19;

    private static final Caution HOT_JUNCTION = new Caution(
            "heat",
            "Keep the junction below the limit of the data sheet with a margin for the hottest air it can meet. The"
                    + " case and its mount get nearly as hot: they can burn skin and melt plastic.");

    private WorkedCircuit() {}

    /**
     * Works the largest load resistor as {@link #loadResistor(Style, Given, Given, Given, Given, Given)} does, with the
     * heat at a charging voltage assumed from the lowest supply: 14.5 V, above that 29 V, above that the supply itself.
     *
     * <p>Source of the charging voltages: common practice, no source.
     *
     * @param style the digits
     * @param healthy the current I_h from which the monitor takes the lamp for healthy
     * @param led the current I_L of the LED lamp, below I_h
     * @param supply the lowest supply voltage U, above 0
     * @param tolerance the tolerance p of the resistor, in [0, 50] %
     * @return the solution; it answers the largest nominal resistance of the E24 series
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution loadResistor(Style style, Given healthy, Given led, Given supply, Given tolerance) {
        Objects.requireNonNull(healthy, "healthy");
        Objects.requireNonNull(led, "led");
        Objects.requireNonNull(style, "style");
        Objects.requireNonNull(supply, "supply");
        Objects.requireNonNull(tolerance, "tolerance");
        double lowestV = supply.in(Unit.VOLT);
        double highestV = lowestV <= 14.5 ? 14.5 : Math.max(lowestV, 29);
        Given charging = Given.of(highestV, Unit.VOLT, "assumed while charging: common practice, no source");
        return loadResistor(style, healthy, led, supply, charging, tolerance);
    }

    /**
     * Works the largest load resistor with which an outage monitor still sees a healthy lamp, R ≤ U/((I_h − I_L)(1 +
     * p)), and the heat it must stand, P = U_m²/(R (1 − p)).
     *
     * @param style the digits
     * @param healthy the current I_h from which the monitor takes the lamp for healthy
     * @param led the current I_L of the LED lamp, below I_h
     * @param supply the lowest supply voltage U, above 0
     * @param highest the highest supply voltage U_m, at least U
     * @param tolerance the tolerance p of the resistor, in [0, 50] %
     * @return the solution; it answers the largest nominal resistance of the E24 series
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution loadResistor(
            Style style, Given healthy, Given led, Given supply, Given highest, Given tolerance) {
        Objects.requireNonNull(healthy, "healthy");
        Objects.requireNonNull(highest, "highest");
        Objects.requireNonNull(led, "led");
        Objects.requireNonNull(style, "style");
        Objects.requireNonNull(supply, "supply");
        Objects.requireNonNull(tolerance, "tolerance");
        double healthyA = Check.above("healthy current", healthy.in(Unit.AMPERE), led.in(Unit.AMPERE), 100, "A");
        Check.inRange("LED current", led.in(Unit.AMPERE), 0, healthyA, "A");
        double lowestV = Check.above("supply voltage", supply.in(Unit.VOLT), 0, 100, "V");
        Check.inRange("highest supply voltage", highest.in(Unit.VOLT), lowestV, 100, "V");
        Ranges.TOLERANCE.check(tolerance.in(Unit.NONE));
        Working w = Working.of(style, "Load resistor beside an LED lamp", "load resistor of the E24 series");
        Symbol ih = w.given("I_h", "current that the monitor takes for healthy", healthy);
        Symbol il = w.given("I_L", "current of the LED lamp", led);
        Symbol u = w.given("U", "lowest supply voltage", supply);
        Symbol um = w.given("U_m", "highest supply voltage, at which the resistor is hottest", highest);
        Symbol p = w.given("p", "tolerance of the resistor", tolerance);
        w.assume("the current of the LED lamp does not change over the supply range; no drop along the wires");
        Symbol missing = w.step("I_R", "current the resistor must draw", ih.minus(il));
        Symbol largest = w.step(
                "R_m",
                "largest nominal resistance, so that even R(1 + p) draws it",
                u.over(missing.times(number(1).plus(p))));
        double ohms =
                ESeries.E24.atMost(Resistance.ohms(w.in(largest, Unit.OHM))).inOhms();
        Symbol chosen = w.choose("R", "next E24 value at or below", Amount.of(ohms, Unit.OHM));
        w.step(
                "I_1",
                "least current with this resistor, not below that of a healthy lamp",
                il.plus(u.over(chosen.times(number(1).plus(p)))));
        Symbol power = w.step(
                "P",
                "most power in the resistor, turned into heat as long as the lamp is lit",
                um.squared().over(chosen.times(number(1).minus(p))));
        w.checkBy(largest, "back from the current", u.over(number(1).plus(p)).over(missing));
        w.caution(hotResistor(w.in(power, Unit.WATT)));
        circuitCautions(w);
        return w.answer(chosen, Unit.OHM, Rounding.digits(2));
    }

    /**
     * Works the surface temperature of a load resistor: P = U²/(R (1 − p)), T_s = T_a + R_th P. The answer
     * is in °C, or in °F if the style is US customary and the ambient temperature in °F.
     *
     * @param style the digits
     * @param resistance the nominal resistance R, above 0
     * @param tolerance the tolerance p, in [0, 50] %
     * @param supply the highest supply voltage U
     * @param thermal the thermal resistance R_th from surface to ambient as mounted, above 0
     * @param ambient the ambient temperature T_a
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution resistorHeat(
            Style style, Given resistance, Given tolerance, Given supply, Given thermal, Given ambient) {
        Objects.requireNonNull(ambient, "ambient");
        Objects.requireNonNull(resistance, "resistance");
        Objects.requireNonNull(style, "style");
        Objects.requireNonNull(supply, "supply");
        Objects.requireNonNull(thermal, "thermal");
        Objects.requireNonNull(tolerance, "tolerance");
        double kelvinPerWatt = Ranges.THERMAL_RESISTANCE.check(thermal.in(Unit.KELVIN_PER_WATT));
        Working w = Working.of(style, "Heat of a load resistor", "surface temperature of the load resistor");
        Symbol r = w.given("R", "nominal resistance", resistance);
        Symbol p = w.given("p", "tolerance of the resistor", tolerance);
        Symbol u = w.given("U", "highest supply voltage", supply);
        Symbol th = w.given("R_th", "thermal resistance, surface to ambient", thermal);
        Symbol ta = w.given("T_a", "ambient temperature", ambient);
        w.assume("the load stays on until the temperature is steady");
        Symbol power = w.step(
                "P",
                "power at the low end of the tolerance",
                u.squared().over(r.times(number(1).minus(p))));
        Symbol rise = w.step("ΔT", "rise above ambient", th.times(power));
        Symbol surface = w.step("T_s", "surface temperature", ta.plus(rise));
        ResistorRating rating = new ResistorRating(
                Power.watts(1e4),
                Temperature.kelvin(ambient.in(Unit.KELVIN)),
                Temperature.celsius(1500),
                0,
                kelvinPerWatt);
        w.checkAgainst(
                surface,
                "heat check of the resistor",
                Amount.of(
                        LoadResistor.of(Resistance.ohms(resistance.in(Unit.OHM)), tolerance.in(Unit.NONE), rating)
                                .heat(Voltage.volts(supply.in(Unit.VOLT)), Temperature.kelvin(ambient.in(Unit.KELVIN)))
                                .surface()
                                .inKelvin(),
                        Unit.KELVIN));
        w.caution(Caution.hotSurface("load resistor", Temperature.kelvin(w.in(surface, Unit.KELVIN))));
        circuitCautions(w);
        Plausible.surface(w.in(surface, Unit.CELSIUS)).ifPresent(w::caution);
        return w.answer(surface, style.units().temperature(ambient), Rounding.nearest("1"));
    }

    /**
     * Works the junction temperature of an isolating diode: P = U_F I, T_j = T_a + R_th P. The
     * answer is in °C, or in °F if the style is US customary and the ambient temperature in °F.
     *
     * @param style the digits
     * @param forward the forward voltage U_F, above 0
     * @param current the lamp current I, above 0
     * @param thermal the thermal resistance R_th from junction to ambient as mounted, above 0
     * @param ambient the ambient temperature T_a
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution diodeHeat(Style style, Given forward, Given current, Given thermal, Given ambient) {
        Objects.requireNonNull(ambient, "ambient");
        Objects.requireNonNull(current, "current");
        Objects.requireNonNull(forward, "forward");
        Objects.requireNonNull(style, "style");
        Objects.requireNonNull(thermal, "thermal");
        Check.above("forward voltage", forward.in(Unit.VOLT), 0, 10, "V");
        SOME_CURRENT.check("diode current", current.in(Unit.AMPERE));
        Ranges.THERMAL_RESISTANCE.check(thermal.in(Unit.KELVIN_PER_WATT));
        Working w = Working.of(style, "Heat of an isolating diode", "junction temperature of the diode");
        Symbol uf = w.given("U_F", "forward voltage at this current", forward);
        Symbol i = w.given("I", "current", current);
        Symbol th = w.given("R_th", "thermal resistance, junction to ambient", thermal);
        Symbol ta = w.given("T_a", "ambient temperature", ambient);
        w.assume("steady current and temperature; the forward voltage is that of the warm diode");
        Symbol power = w.step("P", "power in the diode", uf.times(i));
        Symbol junction = w.step("T_j", "junction temperature", ta.plus(th.times(power)));
        w.checkBy(junction, "heat per ampere first", ta.plus(th.times(uf).times(i)));
        w.caution(HOT_JUNCTION);
        circuitCautions(w);
        Plausible.junction(w.in(junction, Unit.CELSIUS)).ifPresent(w::caution);
        return w.answer(junction, style.units().temperature(ambient), Rounding.nearest("1"));
    }

    /**
     * Works the forward voltage of a diode by Shockley's equation: U_F = n U_T ln(I/I_S + 1), U_T = k T/e.
     *
     * @param style the digits
     * @param current the forward current I, above 0
     * @param saturation the saturation current I_S, above 0
     * @param ideality the ideality factor n, in [0.5, 5]
     * @param junction the junction temperature T
     * @return the solution
     * @throws IllegalArgumentException if a quantity is out of range
     */
    public static Solution diodeVoltage(Style style, Given current, Given saturation, Given ideality, Given junction) {
        Objects.requireNonNull(current, "current");
        Objects.requireNonNull(ideality, "ideality");
        Objects.requireNonNull(junction, "junction");
        Objects.requireNonNull(saturation, "saturation");
        Objects.requireNonNull(style, "style");
        SOME_CURRENT.check("diode current", current.in(Unit.AMPERE));
        ShockleyDiode model = ShockleyDiode.of(
                Current.amperes(saturation.in(Unit.AMPERE)),
                ideality.in(Unit.NONE),
                Resistance.ohms(0),
                Temperature.kelvin(junction.in(Unit.KELVIN)),
                Source.assumed("the values given"));
        double thermalV = THERMAL_V_PER_K * junction.in(Unit.KELVIN);
        Working w = Working.of(style, "Forward voltage of a diode", "forward voltage");
        Symbol i = w.given("I", "forward current", current);
        Symbol is = w.given("I_S", "saturation current", saturation);
        Symbol n = w.given("n", "ideality factor", ideality);
        Symbol ut = w.given(
                "U_T",
                "thermal voltage k T/e",
                new Given(
                        new Amount(Rounding.digits(style.carriedDigits()).apply(1000 * thermalV), Unit.MILLIVOLT),
                        "at " + junction.amount()));
        w.assume("no series resistance");
        Symbol uf = w.step(
                "U_F", "forward voltage", n.times(ut).times(new Ln(i.over(is).plus(number(1)))));
        w.checkAgainst(
                uf, "Shockley's equation unrounded", Amount.of(model.voltageV(current.in(Unit.AMPERE)), Unit.VOLT));
        w.caution(Caution.INSULATION);
        return w.answer(uf, Unit.VOLT);
    }

    private static Caution hotResistor(double watts) {
        return new Caution(
                "heat",
                "The resistor turns up to " + Rounding.digits(2).apply(watts).toPlainString()
                        + " W into heat and gets hot enough to burn skin, melt plastic and start a fire. Choose a part"
                        + " rated well above this, mount it on bare metal, away from wires, trim, fuel and hands, and"
                        + " measure its surface.");
    }

    private static void circuitCautions(Working w) {
        w.caution(Caution.LAMP_LAW);
        w.caution(Caution.FUSES);
        w.caution(Caution.INSULATION);
        w.caution(Caution.LICENSED_PRACTICE);
    }
}
