package io.github.stoplag.units;

import io.github.stoplag.quantity.Numbers;
import java.util.HashMap;
import java.util.Map;
import javax.measure.IncommensurableException;
import javax.measure.Quantity;
import javax.measure.Unit;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

/** The SI number inside a quantity, with the checks that the compiler and the standard leave out. */
final class SiValue {
    private SiValue() {}

    static <Q extends Quantity<Q>> Quantity<Q> quantity(double value, Unit<Q> unit) {
        return Quantities.getQuantity(value, unit);
    }

    static double of(String name, Quantity<?> quantity, Unit<?> si) {
        Unit<?> unit = quantity.getUnit();
        double value = quantity.getValue().doubleValue();
        String got = ", got " + Numbers.text(value) + " " + unit;
        if (!unit.isCompatible(si) || !baseUnits(unit).equals(baseUnits(si))) {
            throw new IllegalArgumentException(name + " must be in a unit that converts to " + si + got);
        }
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " must be finite" + got);
        }
        if (si.equals(Units.KELVIN) && quantity.getScale() == Quantity.Scale.RELATIVE) {
            throw new IllegalArgumentException(name + " must be absolute" + got + " on the relative scale");
        }
        try {
            return unit.getConverterToAny(si).convert(value);
        } catch (IncommensurableException e) {
            throw new IllegalArgumentException(name + " must be in a unit that converts to " + si + got, e);
        }
    }

    /** Powers of the units a unit is made of; radian and steradian, which have no dimension, stay apart from one. */
    private static Map<Unit<?>, Integer> baseUnits(Unit<?> unit) {
        Map<Unit<?>, Integer> powers = new HashMap<>();
        addBaseUnits(unit, 1, powers);
        powers.values().removeIf(power -> power == 0);
        return powers;
    }

    private static void addBaseUnits(Unit<?> unit, int power, Map<Unit<?>, Integer> powers) {
        Unit<?> system = unit.getSystemUnit();
        Map<? extends Unit<?>, Integer> parts = system.getBaseUnits();
        if (parts != null && !parts.isEmpty()) {
            parts.forEach((part, partPower) -> addBaseUnits(part, power * partPower, powers));
        } else if (!system.equals(AbstractUnit.ONE)) {
            powers.merge(system, power, Integer::sum);
        }
    }
}
