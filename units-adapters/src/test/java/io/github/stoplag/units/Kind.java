package io.github.stoplag.units;

import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MILLI;

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
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.ElectricCurrent;
import javax.measure.quantity.ElectricPotential;
import javax.measure.quantity.ElectricResistance;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import systems.uom.common.USCustomary;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.unit.Units;

/** One kind of value with everything a round trip needs, and SI bounds well inside its range. */
record Kind<V, Q extends Quantity<Q>>(
        UnitTable<V> table,
        DoubleFunction<V> of,
        ToDoubleFunction<V> si,
        Function<V, Quantity<Q>> toQuantity,
        Function<Quantity<Q>, V> back,
        List<Unit<Q>> units,
        double lo,
        double hi) {

    static List<Kind<?, ?>> all() {
        return List.of(
                new Kind<>(
                        UnitTable.SPEED,
                        Speed::mps,
                        Speed::inMps,
                        Quantities::toQuantity,
                        Quantities::speed,
                        List.of(
                                Units.KILOMETRE_PER_HOUR,
                                USCustomary.MILE_PER_HOUR,
                                USCustomary.KNOT,
                                USCustomary.FOOT_PER_SECOND),
                        0.0,
                        149.0),
                new Kind<>(
                        UnitTable.DISTANCE,
                        Distance::metres,
                        Distance::inMetres,
                        Quantities::toQuantity,
                        Quantities::distance,
                        List.<Unit<Length>>of(
                                KILO(Units.METRE),
                                USCustomary.FOOT,
                                USCustomary.INCH,
                                USCustomary.YARD,
                                USCustomary.MILE),
                        -9e6,
                        9e6),
                new Kind<>(
                        UnitTable.TIME_SPAN,
                        TimeSpan::seconds,
                        TimeSpan::inSeconds,
                        Quantities::toQuantity,
                        Quantities::timeSpan,
                        List.<Unit<Time>>of(MILLI(Units.SECOND), Units.MINUTE, Units.HOUR),
                        -9e5,
                        9e5),
                new Kind<>(
                        UnitTable.DECELERATION,
                        Deceleration::mps2,
                        Deceleration::inMps2,
                        Quantities::toQuantity,
                        Quantities::deceleration,
                        List.of(USCustomary.FOOT
                                .divide(Units.SECOND)
                                .divide(Units.SECOND)
                                .asType(Acceleration.class)),
                        0.0,
                        190.0),
                new Kind<>(
                        UnitTable.FRICTION_COEFFICIENT,
                        FrictionCoefficient::of,
                        FrictionCoefficient::inRatio,
                        Quantities::toQuantity,
                        Quantities::frictionCoefficient,
                        List.of(Units.PERCENT, AbstractUnit.ONE),
                        0.0,
                        1.4),
                new Kind<>(
                        UnitTable.GRADE,
                        Grade::ratio,
                        Grade::inRatio,
                        Quantities::toQuantity,
                        Quantities::grade,
                        List.of(
                                Units.PERCENT,
                                USCustomary.FOOT.divide(USCustomary.MILE).asType(Dimensionless.class)),
                        -0.4,
                        0.4),
                new Kind<>(
                        UnitTable.MASS,
                        Mass::kg,
                        Mass::inKg,
                        Quantities::toQuantity,
                        Quantities::mass,
                        List.of(Units.GRAM, USCustomary.POUND),
                        1000.0,
                        9e5),
                new Kind<>(
                        UnitTable.VOLTAGE,
                        Voltage::volts,
                        Voltage::inVolts,
                        Quantities::toQuantity,
                        Quantities::voltage,
                        List.<Unit<ElectricPotential>>of(
                                MILLI(Units.VOLT),
                                Units.WATT.divide(Units.AMPERE).asType(ElectricPotential.class)),
                        -990.0,
                        990.0),
                new Kind<>(
                        UnitTable.CURRENT,
                        Current::amperes,
                        Current::inAmperes,
                        Quantities::toQuantity,
                        Quantities::current,
                        List.<Unit<ElectricCurrent>>of(MILLI(Units.AMPERE)),
                        -9e4,
                        9e4),
                new Kind<>(
                        UnitTable.RESISTANCE,
                        Resistance::ohms,
                        Resistance::inOhms,
                        Quantities::toQuantity,
                        Quantities::resistance,
                        List.<Unit<ElectricResistance>>of(MILLI(Units.OHM), KILO(Units.OHM)),
                        0.0,
                        9e8),
                new Kind<>(
                        UnitTable.POWER,
                        Power::watts,
                        Power::inWatts,
                        Quantities::toQuantity,
                        Quantities::power,
                        List.of(KILO(Units.WATT), USCustomary.HORSEPOWER),
                        0.0,
                        9e5),
                new Kind<>(
                        UnitTable.TEMPERATURE,
                        Temperature::kelvin,
                        Temperature::inKelvin,
                        Quantities::toQuantity,
                        Quantities::temperature,
                        List.of(Units.CELSIUS, USCustomary.FAHRENHEIT, USCustomary.RANKINE),
                        200.0,
                        19000.0),
                new Kind<>(
                        UnitTable.LUMINOUS_INTENSITY,
                        LuminousIntensity::candela,
                        LuminousIntensity::inCandela,
                        Quantities::toQuantity,
                        Quantities::luminousIntensity,
                        List.of(
                                MILLI(Units.CANDELA),
                                Units.LUMEN
                                        .divide(Units.STERADIAN)
                                        .asType(javax.measure.quantity.LuminousIntensity.class)),
                        0.0,
                        9e6),
                new Kind<>(
                        UnitTable.LUMINOUS_FLUX,
                        LuminousFlux::lumens,
                        LuminousFlux::inLumens,
                        Quantities::toQuantity,
                        Quantities::luminousFlux,
                        List.of(KILO(Units.LUMEN)),
                        0.0,
                        9e7),
                new Kind<>(
                        UnitTable.ILLUMINANCE,
                        Illuminance::lux,
                        Illuminance::inLux,
                        Quantities::toQuantity,
                        Quantities::illuminance,
                        List.of(
                                KILO(Units.LUX),
                                Units.LUMEN
                                        .divide(USCustomary.SQUARE_FOOT)
                                        .asType(javax.measure.quantity.Illuminance.class)),
                        0.0,
                        9e5),
                new Kind<>(
                        UnitTable.LUMINANCE,
                        Luminance::cdPerM2,
                        Luminance::inCdPerM2,
                        Quantities::toQuantity,
                        Quantities::luminance,
                        List.of(Units.CANDELA.divide(USCustomary.SQUARE_FOOT).asType(si.uom.quantity.Luminance.class)),
                        0.0,
                        9e9));
    }

    double parsed(String text) {
        return si.applyAsDouble(table.parse(text));
    }

    /** From SI to text with the unit and back to SI. */
    double throughText(double value, String unit, int decimals) {
        return parsed(table.format(of.apply(value), unit, decimals));
    }

    /** From SI to a quantity in the unit numbered and back to SI. */
    double throughQuantity(double value, int unit) {
        return si.applyAsDouble(back.apply(toQuantity.apply(of.apply(value)).to(units.get(unit % units.size()))));
    }

    @Override
    public String toString() {
        return table.quantity();
    }
}
