package io.github.stoplag.worked;

import io.github.stoplag.quantity.NamedUnit;
import io.github.stoplag.quantity.Units;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * A unit in which worked solutions and exercises are written, one of the table {@link Units}; the constants are those
 * the solutions name.
 *
 * <p>Here a unit has a dimension and no kind of quantity: 5 % may be a grade or a share. Sizes, their exact fractions
 * and their sources are those of the table.
 */
public final class Unit {
    private static final Map<String, Unit> BY_SYMBOL = bySymbol();

    /** A plain number. */
    public static final Unit NONE = of("");

    /** One hundredth. */
    public static final Unit PERCENT = of("%");

    /** Metre. */
    public static final Unit METRE = of("m");

    /** Kilometre. */
    public static final Unit KILOMETRE = of("km");

    /** International foot. */
    public static final Unit FOOT = of("ft");

    /** Second. */
    public static final Unit SECOND = of("s");

    /** Millisecond. */
    public static final Unit MILLISECOND = of("ms");

    /** Second squared. */
    public static final Unit SECOND_SQUARED = of("s²");

    /** Metre per second. */
    public static final Unit MPS = of("m/s");

    /** Kilometre per hour. */
    public static final Unit KMH = of("km/h");

    /** Foot per second. */
    public static final Unit FTPS = of("ft/s");

    /** Mile per hour. */
    public static final Unit MPH = of("mph");

    /** Knot, one nautical mile of 1852 m in an hour. */
    public static final Unit KNOT = of("kn");

    /** Metre per second squared. */
    public static final Unit MPS2 = of("m/s²");

    /** Foot per second squared. */
    public static final Unit FTPS2 = of("ft/s²");

    /** Square of a metre per second. */
    public static final Unit MPS_SQUARED = of("m²/s²");

    /** Square of a foot per second. */
    public static final Unit FTPS_SQUARED = of("ft²/s²");

    /** Kilogram. */
    public static final Unit KILOGRAM = of("kg");

    /** Newton. */
    public static final Unit NEWTON = of("N");

    /** Joule. */
    public static final Unit JOULE = of("J");

    /** Watt. */
    public static final Unit WATT = of("W");

    /** Volt. */
    public static final Unit VOLT = of("V");

    /** Millivolt. */
    public static final Unit MILLIVOLT = of("mV");

    /** Ampere. */
    public static final Unit AMPERE = of("A");

    /** Milliampere. */
    public static final Unit MILLIAMPERE = of("mA");

    /** Nanoampere. */
    public static final Unit NANOAMPERE = of("nA");

    /** Ohm. */
    public static final Unit OHM = of("Ω");

    /** Kelvin. */
    public static final Unit KELVIN = of("K");

    /** Degree Celsius, a temperature and not a difference of two. */
    public static final Unit CELSIUS = of("°C");

    /** Degree Fahrenheit, a temperature and not a difference of two. */
    public static final Unit FAHRENHEIT = of("°F");

    /** Joule per kelvin. */
    public static final Unit JOULE_PER_KELVIN = of("J/K");

    /** Joule per kilogram and kelvin. */
    public static final Unit JOULE_PER_KILOGRAM_KELVIN = of("J/(kg·K)");

    /** Kelvin per watt. */
    public static final Unit KELVIN_PER_WATT = of("K/W");

    /** Kelvin per second. */
    public static final Unit KELVIN_PER_SECOND = of("K/s");

    private static final MathContext TEN_DIGITS = new MathContext(10);
    private static final int SHORT = 7;

    private final NamedUnit named;
    private final Dimension dimension;

    private Unit(NamedUnit named, Dimension dimension) {
        this.named = named;
        this.dimension = dimension;
    }

    private static Map<String, Unit> bySymbol() {
        Map<String, Unit> all = new LinkedHashMap<>();
        for (Units units : Units.all()) {
            Dimension dimension = Dimension.of(units.baseUnits());
            units.list().forEach(each -> all.putIfAbsent(each.symbol(), new Unit(each, dimension)));
        }
        return all;
    }

    /**
     * Gives every unit of the table once.
     *
     * @return the units
     */
    public static List<Unit> all() {
        return List.copyOf(BY_SYMBOL.values());
    }

    /**
     * Finds a unit by any of its spellings in the table.
     *
     * @param text the unit as people write it, for example {@code m/s^2}, {@code Miles per hour}; empty for a plain
     *     number
     * @return the unit
     * @throws IllegalArgumentException if the table has no unit so spelt
     */
    public static Unit of(String text) {
        Objects.requireNonNull(text, "text");
        String spelling = text.strip();
        Unit found = Units.having(spelling)
                .map(units -> BY_SYMBOL.get(units.unit(spelling).symbol()))
                .orElse(null);
        if (found == null) {
            throw new IllegalArgumentException("unit \"" + shown(spelling) + "\" is not known" + inOtherCase(spelling)
                    + "; write it as the question does, such as m, ft, km/h, mph, s, V, Ω, °C");
        }
        return found;
    }

    private static String shown(String text) {
        return text.length() > 100 ? text.substring(0, 100) + "…" : text;
    }

    private static String inOtherCase(String spelling) {
        return BY_SYMBOL.keySet().stream()
                .filter(symbol -> symbol.equalsIgnoreCase(spelling))
                .findFirst()
                .map(symbol -> ", capitals matter in " + symbol)
                .orElse("");
    }

    /**
     * Gives the unit's symbol.
     *
     * @return the symbol, empty for a plain number
     */
    public String symbol() {
        return named.symbol();
    }

    Dimension dimension() {
        return dimension;
    }

    /**
     * Says whether two units measure the same kind of quantity.
     *
     * @param other the other unit
     * @return true if numbers in one can be converted into the other
     */
    public boolean measuresTheSameAs(Unit other) {
        Objects.requireNonNull(other, "other");
        return dimension.equals(other.dimension);
    }

    /** Converts a number in this unit, exactly but for the double's own last digit. */
    double convert(double number, Unit to) {
        requireSameKind(to);
        if (equals(to)) {
            return number;
        }
        if (!isProportional() || !to.isProportional()) {
            return to.named.fromSi(named.toSi(number));
        }
        // whole numbers of few digits, which a double holds exactly
        BigInteger[] ratio = ratio(to);
        return number * ratio[0].doubleValue() / ratio[1].doubleValue();
    }

    /** Writes the conversion of a number as a person would: 100 / 3.6, 60 × 22 / 15, 20 + 273.15. */
    Expression conversion(BigDecimal number, Unit to) {
        requireSameKind(to);
        Expression plain = new Expression.Num(number, NONE);
        if (!named.isLinear() || !to.named.isLinear()) {
            // expressions know no tangent
            return new Expression.Num(
                    BigDecimal.valueOf(convert(number.doubleValue(), to)).round(TEN_DIGITS), NONE);
        }
        if (!isProportional() || !to.isProportional()) {
            return reading(plain, to);
        }
        BigInteger[] ratio = ratio(to);
        BigDecimal top = new BigDecimal(ratio[0]);
        BigDecimal bottom = new BigDecimal(ratio[1]);
        List<BigDecimal> inverse = exact(bottom, top);
        if (!inverse.isEmpty() && top.compareTo(bottom) < 0) {
            return plain.over(new Expression.Num(inverse.get(0), NONE));
        }
        List<BigDecimal> direct = exact(top, bottom);
        if (!direct.isEmpty()) {
            return plain.times(new Expression.Num(direct.get(0), NONE));
        }
        return inverse.isEmpty()
                ? plain.times(new Expression.Num(top, NONE)).over(new Expression.Num(bottom, NONE))
                : plain.over(new Expression.Num(inverse.get(0), NONE));
    }

    /** Whether the unit is a multiple of the SI unit: neither a thermometer nor a slope in degrees. */
    private boolean isProportional() {
        return named.isLinear() && named.zero().signum() == 0;
    }

    /** A temperature on another scale; the scales have different zeros. */
    private Expression reading(Expression plain, Unit to) {
        Expression nineFifths = Expression.number("1.8");
        if (this.equals(FAHRENHEIT)) {
            return to.equals(CELSIUS)
                    ? plain.minus(Expression.number(32)).over(nineFifths)
                    : plain.plus(new Expression.Num(FAHRENHEIT.named.zero(), NONE))
                            .over(nineFifths);
        }
        if (to.equals(FAHRENHEIT)) {
            return this.equals(CELSIUS)
                    ? plain.times(nineFifths).plus(Expression.number(32))
                    : plain.times(nineFifths).minus(new Expression.Num(FAHRENHEIT.named.zero(), NONE));
        }
        Expression icePoint = new Expression.Num(CELSIUS.named.zero(), NONE);
        return this.equals(CELSIUS) ? plain.plus(icePoint) : plain.minus(icePoint);
    }

    /** The quotient if it ends after a few digits, else nothing. */
    private static List<BigDecimal> exact(BigDecimal top, BigDecimal bottom) {
        BigDecimal q = top.divide(bottom, new MathContext(SHORT)).stripTrailingZeros();
        return q.multiply(bottom).compareTo(top) == 0 ? List.of(q) : List.of();
    }

    /** This unit over the other as a fraction of whole numbers in lowest terms. */
    private BigInteger[] ratio(Unit to) {
        BigDecimal top = named.numerator().multiply(to.named.denominator());
        BigDecimal bottom = named.denominator().multiply(to.named.numerator());
        int scale = Math.max(0, Math.max(top.scale(), bottom.scale()));
        BigInteger n = top.movePointRight(scale).toBigIntegerExact();
        BigInteger d = bottom.movePointRight(scale).toBigIntegerExact();
        BigInteger common = n.gcd(d);
        return new BigInteger[] {n.divide(common), d.divide(common)};
    }

    /** Whether the unit is the one of the SI without a factor. */
    boolean isSi() {
        return isProportional() && named.numerator().compareTo(named.denominator()) == 0;
    }

    /** Whether the unit is so many to the SI unit. */
    boolean is(BigDecimal factor) {
        return isProportional()
                && named.numerator().compareTo(named.denominator().multiply(factor)) == 0;
    }

    private void requireSameKind(Unit to) {
        if (!measuresTheSameAs(to)) {
            throw new IllegalArgumentException("a number in " + this + " cannot be converted to " + to);
        }
    }

    @Override
    public String toString() {
        return symbol().isEmpty() ? "no unit" : symbol();
    }
}
