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
import io.github.stoplag.quantity.NamedUnit;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Pressure;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
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
        io.github.stoplag.quantity.Units table,
        Class<Q> type,
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
                        io.github.stoplag.quantity.Units.SPEED,
                        javax.measure.quantity.Speed.class,
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
                        io.github.stoplag.quantity.Units.DISTANCE,
                        Length.class,
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
                        io.github.stoplag.quantity.Units.TIME,
                        Time.class,
                        TimeSpan::seconds,
                        TimeSpan::inSeconds,
                        Quantities::toQuantity,
                        Quantities::timeSpan,
                        List.<Unit<Time>>of(MILLI(Units.SECOND), Units.MINUTE, Units.HOUR),
                        -9e5,
                        9e5),
                new Kind<>(
                        io.github.stoplag.quantity.Units.DECELERATION,
                        Acceleration.class,
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
                        io.github.stoplag.quantity.Units.FRICTION_COEFFICIENT,
                        Dimensionless.class,
                        FrictionCoefficient::of,
                        FrictionCoefficient::inRatio,
                        Quantities::toQuantity,
                        Quantities::frictionCoefficient,
                        List.of(Units.PERCENT, AbstractUnit.ONE),
                        0.0,
                        1.4),
                new Kind<>(
                        io.github.stoplag.quantity.Units.GRADE,
                        Dimensionless.class,
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
                        io.github.stoplag.quantity.Units.MASS,
                        javax.measure.quantity.Mass.class,
                        Mass::kg,
                        Mass::inKg,
                        Quantities::toQuantity,
                        Quantities::mass,
                        List.of(Units.GRAM, USCustomary.POUND),
                        1000.0,
                        9e5),
                new Kind<>(
                        io.github.stoplag.quantity.Units.VOLTAGE,
                        ElectricPotential.class,
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
                        io.github.stoplag.quantity.Units.CURRENT,
                        ElectricCurrent.class,
                        Current::amperes,
                        Current::inAmperes,
                        Quantities::toQuantity,
                        Quantities::current,
                        List.<Unit<ElectricCurrent>>of(MILLI(Units.AMPERE)),
                        -9e4,
                        9e4),
                new Kind<>(
                        io.github.stoplag.quantity.Units.RESISTANCE,
                        ElectricResistance.class,
                        Resistance::ohms,
                        Resistance::inOhms,
                        Quantities::toQuantity,
                        Quantities::resistance,
                        List.<Unit<ElectricResistance>>of(MILLI(Units.OHM), KILO(Units.OHM)),
                        0.0,
                        9e8),
                new Kind<>(
                        io.github.stoplag.quantity.Units.POWER,
                        javax.measure.quantity.Power.class,
                        Power::watts,
                        Power::inWatts,
                        Quantities::toQuantity,
                        Quantities::power,
                        List.of(KILO(Units.WATT), USCustomary.HORSEPOWER),
                        0.0,
                        9e5),
                new Kind<>(
                        io.github.stoplag.quantity.Units.TEMPERATURE,
                        javax.measure.quantity.Temperature.class,
                        Temperature::kelvin,
                        Temperature::inKelvin,
                        Quantities::toQuantity,
                        Quantities::temperature,
                        List.of(Units.CELSIUS, USCustomary.FAHRENHEIT, USCustomary.RANKINE),
                        200.0,
                        19000.0),
                new Kind<>(
                        io.github.stoplag.quantity.Units.PRESSURE,
                        javax.measure.quantity.Pressure.class,
                        Pressure::new,
                        Pressure::inPascals,
                        Quantities::toQuantity,
                        Quantities::pressure,
                        List.of(
                                KILO(Units.PASCAL),
                                Units.NEWTON
                                        .divide(USCustomary.SQUARE_FOOT)
                                        .asType(javax.measure.quantity.Pressure.class)),
                        0.0,
                        9e7),
                new Kind<>(
                        io.github.stoplag.quantity.Units.LUMINOUS_INTENSITY,
                        javax.measure.quantity.LuminousIntensity.class,
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
                        io.github.stoplag.quantity.Units.LUMINOUS_FLUX,
                        javax.measure.quantity.LuminousFlux.class,
                        LuminousFlux::lumens,
                        LuminousFlux::inLumens,
                        Quantities::toQuantity,
                        Quantities::luminousFlux,
                        List.of(KILO(Units.LUMEN)),
                        0.0,
                        9e7),
                new Kind<>(
                        io.github.stoplag.quantity.Units.ILLUMINANCE,
                        javax.measure.quantity.Illuminance.class,
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
                        io.github.stoplag.quantity.Units.LUMINANCE,
                        si.uom.quantity.Luminance.class,
                        Luminance::cdPerM2,
                        Luminance::inCdPerM2,
                        Quantities::toQuantity,
                        Quantities::luminance,
                        List.of(Units.CANDELA.divide(USCustomary.SQUARE_FOOT).asType(si.uom.quantity.Luminance.class)),
                        0.0,
                        9e9));
    }

    /** Every unit of the core's table that has a fixed size, by each of its spellings, and others. */
    List<Unit<Q>> allUnits() {
        List<Unit<Q>> all = new ArrayList<>(units);
        for (NamedUnit named : table.list()) {
            if (named.isLinear()) {
                Stream.concat(named.exactSpellings().stream(), named.looseSpellings().stream())
                        .forEach(spelling -> all.add(QuantityUnits.unit(table, spelling, type)));
            }
        }
        return all;
    }

    /** From SI to a quantity in the unit and back to SI. */
    double throughQuantity(double value, Unit<Q> unit) {
        return si.applyAsDouble(back.apply(toQuantity.apply(of.apply(value)).to(unit)));
    }

    @Override
    public String toString() {
        return table.quantity();
    }
}
