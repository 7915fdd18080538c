package io.github.stoplag.units;

import io.github.stoplag.quantity.NamedUnit;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.Unit;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.function.MultiplyConverter;
import tech.units.indriya.unit.Units;

/**
 * The units of the core's table as JSR-385 units: same spellings, same exact sizes.
 *
 * <p>A unit is the SI unit of its quantity times a fraction of whole numbers, and shifted for °C and °F. A slope in
 * degrees has no such fraction and is refused; take it through {@link io.github.stoplag.quantity.Grade}.
 */
public final class QuantityUnits {
    private static final Map<String, Unit<?>> BASE_UNITS = Map.of(
            "m",
            Units.METRE,
            "kg",
            Units.KILOGRAM,
            "s",
            Units.SECOND,
            "A",
            Units.AMPERE,
            "K",
            Units.KELVIN,
            "cd",
            Units.CANDELA,
            "sr",
            Units.STERADIAN);

    private QuantityUnits() {}

    /**
     * Finds a unit by any of its spellings.
     *
     * @param units the kind of quantity, for example {@link io.github.stoplag.quantity.Units#SPEED}
     * @param spelling the unit as people write it, for example {@code miles per hour}; empty for a plain number
     * @param type the same kind as JSR-385 names it
     * @param <Q> the same kind as JSR-385 names it
     * @return the unit
     * @throws IllegalArgumentException if it is no unit of the quantity, or degrees of slope
     * @throws ClassCastException if the type is of another dimension than the quantity
     */
    public static <Q extends Quantity<Q>> Unit<Q> unit(
            io.github.stoplag.quantity.Units units, String spelling, Class<Q> type) {
        return of(units, units.unit(spelling)).asType(type);
    }

    private static Unit<?> of(io.github.stoplag.quantity.Units units, NamedUnit unit) {
        if (!unit.isLinear()) {
            throw new IllegalArgumentException(units.quantity() + " in " + unit
                    + " has no fixed ratio to the SI unit; convert it with the value type first");
        }
        Unit<?> scaled = si(units.baseUnits()).transform(factor(unit));
        return unit.zero().signum() == 0 ? scaled : scaled.shift(unit.zero().doubleValue());
    }

    private static MultiplyConverter factor(NamedUnit unit) {
        int scale = Math.max(unit.numerator().scale(), unit.denominator().scale());
        return MultiplyConverter.ofRational(whole(unit.numerator(), scale), whole(unit.denominator(), scale));
    }

    private static BigInteger whole(BigDecimal number, int scale) {
        return number.movePointRight(scale).toBigIntegerExact();
    }

    /** The product of base units that a text such as {@code kg m2 s-3} names. */
    private static Unit<?> si(String powers) {
        Unit<?> product = AbstractUnit.ONE;
        for (String each : powers.isEmpty() ? new String[0] : powers.split(" ", -1)) {
            String symbol = each.replaceAll("[-0-9]", "");
            String power = each.substring(symbol.length());
            Unit<?> base = BASE_UNITS.get(symbol);
            if (base == null) {
                throw new IllegalStateException("no base unit " + symbol);
            }
            product = product.multiply(base.pow(power.isEmpty() ? 1 : Integer.parseInt(power)));
        }
        return product;
    }
}
