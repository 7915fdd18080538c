package io.github.stoplag.units;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Illuminance;
import io.github.stoplag.quantity.Luminance;
import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Mass;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Pressure;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.ElectricCurrent;
import javax.measure.quantity.ElectricPotential;
import javax.measure.quantity.ElectricResistance;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.unit.Units;

/**
 * The core's value types to and from JSR-385 quantities.
 *
 * <p>To a quantity always in the SI unit; {@link Quantity#to} takes it to any other. From a quantity in any unit of the
 * same dimension, plane and solid angle counted as dimensions of their own: the standard's own check takes a lumen for
 * a candela and a radian for a ratio. The unit is checked at run time, for raw types and casts get round the compiler.
 *
 * <p>{@link QuantityUnits} has the units in which the core reads text. A friction coefficient and a grade are
 * {@code Dimensionless}, a deceleration is an {@code Acceleration} whose positive sign means slowing down, a luminance
 * is the {@code Luminance} of si-quantity.
 */
public final class Quantities {
    private static final Unit<si.uom.quantity.Luminance> CANDELA_PER_SQUARE_METRE =
            Units.CANDELA.divide(Units.SQUARE_METRE).asType(si.uom.quantity.Luminance.class);

    private Quantities() {}

    /**
     * {@return the speed as a quantity in metres per second}
     *
     * @param speed the speed
     */
    public static Quantity<javax.measure.quantity.Speed> toQuantity(Speed speed) {
        return SiValue.quantity(speed.inMps(), Units.METRE_PER_SECOND);
    }

    /**
     * {@return the speed of a quantity}
     *
     * @param quantity a speed in any unit
     * @throws IllegalArgumentException if the unit does not fit or the speed is out of range
     */
    public static Speed speed(Quantity<javax.measure.quantity.Speed> quantity) {
        return Speed.mps(SiValue.of("speed", quantity, Units.METRE_PER_SECOND));
    }

    /**
     * {@return the distance as a quantity in metres}
     *
     * @param distance the distance
     */
    public static Quantity<Length> toQuantity(Distance distance) {
        return SiValue.quantity(distance.inMetres(), Units.METRE);
    }

    /**
     * {@return the distance of a quantity}
     *
     * @param quantity a distance in any unit
     * @throws IllegalArgumentException if the unit does not fit or the distance is out of range
     */
    public static Distance distance(Quantity<Length> quantity) {
        return Distance.metres(SiValue.of("distance", quantity, Units.METRE));
    }

    /**
     * {@return the time as a quantity in seconds}
     *
     * @param timeSpan the time
     */
    public static Quantity<Time> toQuantity(TimeSpan timeSpan) {
        return SiValue.quantity(timeSpan.inSeconds(), Units.SECOND);
    }

    /**
     * {@return the time of a quantity}
     *
     * @param quantity a time in any unit
     * @throws IllegalArgumentException if the unit does not fit or the time is out of range
     */
    public static TimeSpan timeSpan(Quantity<Time> quantity) {
        return TimeSpan.seconds(SiValue.of("time", quantity, Units.SECOND));
    }

    /**
     * {@return the deceleration as a quantity in metres per second squared}
     *
     * @param deceleration the deceleration
     */
    public static Quantity<Acceleration> toQuantity(Deceleration deceleration) {
        return SiValue.quantity(deceleration.inMps2(), Units.METRE_PER_SQUARE_SECOND);
    }

    /**
     * {@return the deceleration of a quantity}
     *
     * @param quantity a deceleration in any unit
     * @throws IllegalArgumentException if the unit does not fit or the deceleration is out of range
     */
    public static Deceleration deceleration(Quantity<Acceleration> quantity) {
        return Deceleration.mps2(SiValue.of("deceleration", quantity, Units.METRE_PER_SQUARE_SECOND));
    }

    /**
     * {@return the friction coefficient as a quantity as a plain ratio}
     *
     * @param frictionCoefficient the friction coefficient
     */
    public static Quantity<Dimensionless> toQuantity(FrictionCoefficient frictionCoefficient) {
        return SiValue.quantity(frictionCoefficient.inRatio(), AbstractUnit.ONE);
    }

    /**
     * {@return the friction coefficient of a quantity}
     *
     * @param quantity a friction coefficient in any unit
     * @throws IllegalArgumentException if the unit does not fit or the friction coefficient is out of range
     */
    public static FrictionCoefficient frictionCoefficient(Quantity<Dimensionless> quantity) {
        return FrictionCoefficient.of(SiValue.of("friction coefficient", quantity, AbstractUnit.ONE));
    }

    /**
     * {@return the grade as a quantity as a plain ratio}
     *
     * @param grade the grade
     */
    public static Quantity<Dimensionless> toQuantity(Grade grade) {
        return SiValue.quantity(grade.inRatio(), AbstractUnit.ONE);
    }

    /**
     * {@return the grade of a quantity}
     *
     * @param quantity a grade in any unit
     * @throws IllegalArgumentException if the unit does not fit or the grade is out of range
     */
    public static Grade grade(Quantity<Dimensionless> quantity) {
        return Grade.ratio(SiValue.of("grade", quantity, AbstractUnit.ONE));
    }

    /**
     * {@return the mass as a quantity in kilograms}
     *
     * @param mass the mass
     */
    public static Quantity<javax.measure.quantity.Mass> toQuantity(Mass mass) {
        return SiValue.quantity(mass.inKg(), Units.KILOGRAM);
    }

    /**
     * {@return the mass of a quantity}
     *
     * @param quantity a mass in any unit
     * @throws IllegalArgumentException if the unit does not fit or the mass is out of range
     */
    public static Mass mass(Quantity<javax.measure.quantity.Mass> quantity) {
        return Mass.kg(SiValue.of("mass", quantity, Units.KILOGRAM));
    }

    /**
     * {@return the voltage as a quantity in volts}
     *
     * @param voltage the voltage
     */
    public static Quantity<ElectricPotential> toQuantity(Voltage voltage) {
        return SiValue.quantity(voltage.inVolts(), Units.VOLT);
    }

    /**
     * {@return the voltage of a quantity}
     *
     * @param quantity a voltage in any unit
     * @throws IllegalArgumentException if the unit does not fit or the voltage is out of range
     */
    public static Voltage voltage(Quantity<ElectricPotential> quantity) {
        return Voltage.volts(SiValue.of("voltage", quantity, Units.VOLT));
    }

    /**
     * {@return the current as a quantity in amperes}
     *
     * @param current the current
     */
    public static Quantity<ElectricCurrent> toQuantity(Current current) {
        return SiValue.quantity(current.inAmperes(), Units.AMPERE);
    }

    /**
     * {@return the current of a quantity}
     *
     * @param quantity a current in any unit
     * @throws IllegalArgumentException if the unit does not fit or the current is out of range
     */
    public static Current current(Quantity<ElectricCurrent> quantity) {
        return Current.amperes(SiValue.of("current", quantity, Units.AMPERE));
    }

    /**
     * {@return the resistance as a quantity in ohms}
     *
     * @param resistance the resistance
     */
    public static Quantity<ElectricResistance> toQuantity(Resistance resistance) {
        return SiValue.quantity(resistance.inOhms(), Units.OHM);
    }

    /**
     * {@return the resistance of a quantity}
     *
     * @param quantity a resistance in any unit
     * @throws IllegalArgumentException if the unit does not fit or the resistance is out of range
     */
    public static Resistance resistance(Quantity<ElectricResistance> quantity) {
        return Resistance.ohms(SiValue.of("resistance", quantity, Units.OHM));
    }

    /**
     * {@return the power as a quantity in watts}
     *
     * @param power the power
     */
    public static Quantity<javax.measure.quantity.Power> toQuantity(Power power) {
        return SiValue.quantity(power.inWatts(), Units.WATT);
    }

    /**
     * {@return the power of a quantity}
     *
     * @param quantity a power in any unit
     * @throws IllegalArgumentException if the unit does not fit or the power is out of range
     */
    public static Power power(Quantity<javax.measure.quantity.Power> quantity) {
        return Power.watts(SiValue.of("power", quantity, Units.WATT));
    }

    /**
     * {@return the temperature as a quantity in kelvin}
     *
     * @param temperature the temperature
     */
    public static Quantity<javax.measure.quantity.Temperature> toQuantity(Temperature temperature) {
        return SiValue.quantity(temperature.inKelvin(), Units.KELVIN);
    }

    /**
     * {@return the temperature of a quantity}
     *
     * @param quantity a temperature in any unit
     * @throws IllegalArgumentException if the unit does not fit or the temperature is out of range
     */
    public static Temperature temperature(Quantity<javax.measure.quantity.Temperature> quantity) {
        return Temperature.kelvin(SiValue.of("temperature", quantity, Units.KELVIN));
    }

    /**
     * {@return the gauge pressure as a quantity in pascals}
     *
     * @param pressure the gauge pressure
     */
    public static Quantity<javax.measure.quantity.Pressure> toQuantity(Pressure pressure) {
        return SiValue.quantity(pressure.inPascals(), Units.PASCAL);
    }

    /**
     * {@return the gauge pressure of a quantity}
     *
     * @param quantity a pressure above that of the air around, in any unit
     * @throws IllegalArgumentException if the unit does not fit or the pressure is out of range
     */
    public static Pressure pressure(Quantity<javax.measure.quantity.Pressure> quantity) {
        return new Pressure(SiValue.of("pressure", quantity, Units.PASCAL));
    }

    /**
     * {@return the luminous intensity as a quantity in candela}
     *
     * @param luminousIntensity the luminous intensity
     */
    public static Quantity<javax.measure.quantity.LuminousIntensity> toQuantity(LuminousIntensity luminousIntensity) {
        return SiValue.quantity(luminousIntensity.inCandela(), Units.CANDELA);
    }

    /**
     * {@return the luminous intensity of a quantity}
     *
     * @param quantity a luminous intensity in any unit
     * @throws IllegalArgumentException if the unit does not fit or the luminous intensity is out of range
     */
    public static LuminousIntensity luminousIntensity(Quantity<javax.measure.quantity.LuminousIntensity> quantity) {
        return LuminousIntensity.candela(SiValue.of("luminous intensity", quantity, Units.CANDELA));
    }

    /**
     * {@return the luminous flux as a quantity in lumens}
     *
     * @param luminousFlux the luminous flux
     */
    public static Quantity<javax.measure.quantity.LuminousFlux> toQuantity(LuminousFlux luminousFlux) {
        return SiValue.quantity(luminousFlux.inLumens(), Units.LUMEN);
    }

    /**
     * {@return the luminous flux of a quantity}
     *
     * @param quantity a luminous flux in any unit
     * @throws IllegalArgumentException if the unit does not fit or the luminous flux is out of range
     */
    public static LuminousFlux luminousFlux(Quantity<javax.measure.quantity.LuminousFlux> quantity) {
        return LuminousFlux.lumens(SiValue.of("luminous flux", quantity, Units.LUMEN));
    }

    /**
     * {@return the illuminance as a quantity in lux}
     *
     * @param illuminance the illuminance
     */
    public static Quantity<javax.measure.quantity.Illuminance> toQuantity(Illuminance illuminance) {
        return SiValue.quantity(illuminance.inLux(), Units.LUX);
    }

    /**
     * {@return the illuminance of a quantity}
     *
     * @param quantity an illuminance in any unit
     * @throws IllegalArgumentException if the unit does not fit or the illuminance is out of range
     */
    public static Illuminance illuminance(Quantity<javax.measure.quantity.Illuminance> quantity) {
        return Illuminance.lux(SiValue.of("illuminance", quantity, Units.LUX));
    }

    /**
     * {@return the luminance as a quantity in candela per square metre}
     *
     * @param luminance the luminance
     */
    public static Quantity<si.uom.quantity.Luminance> toQuantity(Luminance luminance) {
        return SiValue.quantity(luminance.inCdPerM2(), CANDELA_PER_SQUARE_METRE);
    }

    /**
     * {@return the luminance of a quantity}
     *
     * @param quantity a luminance in any unit
     * @throws IllegalArgumentException if the unit does not fit or the luminance is out of range
     */
    public static Luminance luminance(Quantity<si.uom.quantity.Luminance> quantity) {
        return Luminance.cdPerM2(SiValue.of("luminance", quantity, CANDELA_PER_SQUARE_METRE));
    }
}
