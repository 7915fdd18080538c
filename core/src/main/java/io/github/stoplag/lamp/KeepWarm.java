package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.Voltage;
import java.util.Objects;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * A filament held warm by a standby voltage or current, so that it lights faster and draws less inrush.
 *
 * <p>I² R(Th) = A ε σ (Th⁴ − T0⁴) + G (Th − T0).
 *
 * @param temperature the holding temperature Th
 * @param supply the standby supply before the series resistance
 * @param current the standby current
 * @param power the standby power of the filament
 * @param lightRatio the light while held over the light at the design voltage, both behind the lens of the conditions
 */
public record KeepWarm(Temperature temperature, Voltage supply, Current current, Power power, double lightRatio) {

    /**
     * Refuses nulls.
     *
     * @param temperature the holding temperature Th
     * @param supply the standby supply before the series resistance
     * @param current the standby current
     * @param power the standby power of the filament
     * @param lightRatio the light while held over the light at the design voltage, both behind the lens of the
     *     conditions
     * @throws NullPointerException if one that is required is null
     */
    public KeepWarm {
        Objects.requireNonNull(current, "current");
        Objects.requireNonNull(power, "power");
        Objects.requireNonNull(supply, "supply");
        Objects.requireNonNull(temperature, "temperature");
    }

    /**
     * Holds a filament by a standby voltage.
     *
     * @param lamp the lamp
     * @param conditions wiring, surroundings and lens; the supply is the standby voltage
     * @return the state held once settled
     * @throws IllegalArgumentException if the standby voltage would drive the filament beyond 3600 K
     */
    public static KeepWarm byVoltage(FilamentLamp lamp, SupplyConditions conditions) {
        HeatBalance balance = HeatBalance.of(lamp, conditions);
        double supplyV = conditions.supply().inVolts();
        FilamentPath path = FilamentPath.of(lamp.label(), balance, supplyV, balance.ambientK());
        return at(lamp, conditions, balance, path.steadyK(), supplyV);
    }

    /**
     * Holds a filament by a standby current.
     *
     * @param lamp the lamp
     * @param conditions wiring, surroundings and lens; their supply is not used
     * @param current the standby current, from 0 A to the one that holds 3600 K
     * @return the state held once settled, with the supply this takes
     * @throws IllegalArgumentException if the current is outside this range
     */
    public static KeepWarm byCurrent(FilamentLamp lamp, SupplyConditions conditions, Current current) {
        HeatBalance balance = HeatBalance.of(lamp, conditions);
        double mostA =
                Math.sqrt(balance.lossW(FilamentWire.HIGHEST_K) / lamp.wire().resistanceOhm(FilamentWire.HIGHEST_K));
        double ampere = Check.inRange("standby current of " + lamp.label(), current.inAmperes(), 0, mostA, "A");
        double kelvin = new BrentSolver(1e-14, 1e-11)
                .solve(
                        200,
                        k -> ampere * ampere * lamp.wire().resistanceOhm(k) - balance.lossW(k),
                        balance.ambientK(),
                        FilamentWire.HIGHEST_K);
        return at(lamp, conditions, balance, kelvin, balance.holdingV(kelvin));
    }

    private static KeepWarm at(
            FilamentLamp lamp, SupplyConditions conditions, HeatBalance balance, double kelvin, double supplyV) {
        Photometry photometry = Photometry.tungsten(conditions.lens());
        double ratedLog = photometry.logLuminance(lamp.filamentTemperature().inKelvin());
        return new KeepWarm(
                Temperature.kelvin(kelvin),
                Voltage.volts(supplyV),
                Current.amperes(balance.currentA(kelvin, supplyV)),
                Power.watts(balance.filamentW(kelvin, supplyV)),
                Math.exp(photometry.logLuminance(kelvin) - ratedLog));
    }

    /**
     * Starts from the held state.
     *
     * @param on the conditions to switch on with
     * @return the same with this temperature as the initial one
     */
    public SupplyConditions before(SupplyConditions on) {
        return on.withInitialTemperature(temperature);
    }
}
