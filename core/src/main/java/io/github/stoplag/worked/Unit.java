package io.github.stoplag.worked;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The closed list of units in which worked solutions and exercises are written.
 *
 * <p>Value in SI units = number × factor, exact; degrees Celsius add 273.15 to give kelvin. The international foot is 0.3048 m
 * and the mile 5280 ft; degrees Fahrenheit add 459.67 and take 5/9 of the sum to give kelvin; the knot is 1852 m in an hour.
 *
 * <p>Source: the definitions of the SI Brochure and of the international yard (1959), from memory.
 */
@SuppressWarnings("ImmutableEnumChecker") // a record of five ints is immutable without the annotation
public enum Unit {
    /** A plain number. */
    NONE("", Dimension.NONE, "1"),
    /** One hundredth. */
    PERCENT("%", Dimension.NONE, "0.01"),
    /** Metre. */
    METRE("m", new Dimension(1, 0, 0, 0, 0), "1"),
    /** Kilometre. */
    KILOMETRE("km", new Dimension(1, 0, 0, 0, 0), "1000"),
    /** International foot. */
    FOOT("ft", new Dimension(1, 0, 0, 0, 0), "0.3048"),
    /** Second. */
    SECOND("s", new Dimension(0, 0, 1, 0, 0), "1"),
    /** Millisecond. */
    MILLISECOND("ms", new Dimension(0, 0, 1, 0, 0), "0.001"),
    /** Second squared. */
    SECOND_SQUARED("s²", new Dimension(0, 0, 2, 0, 0), "1"),
    /** Metre per second. */
    MPS("m/s", new Dimension(1, 0, -1, 0, 0), "1"),
    /** Kilometre per hour. */
    KMH("km/h", new Dimension(1, 0, -1, 0, 0), "1/3.6"),
    /** Foot per second. */
    FTPS("ft/s", new Dimension(1, 0, -1, 0, 0), "0.3048"),
    /** Mile per hour. */
    MPH("mph", new Dimension(1, 0, -1, 0, 0), "0.44704"),
    /** Knot, one nautical mile of 1852 m in an hour. */
    KNOT("kn", new Dimension(1, 0, -1, 0, 0), "1852/3600"),
    /** Metre per second squared. */
    MPS2("m/s²", new Dimension(1, 0, -2, 0, 0), "1"),
    /** Foot per second squared. */
    FTPS2("ft/s²", new Dimension(1, 0, -2, 0, 0), "0.3048"),
    /** Square of a metre per second. */
    MPS_SQUARED("m²/s²", new Dimension(2, 0, -2, 0, 0), "1"),
    /** Square of a foot per second. */
    FTPS_SQUARED("ft²/s²", new Dimension(2, 0, -2, 0, 0), "0.09290304"),
    /** Kilogram. */
    KILOGRAM("kg", new Dimension(0, 1, 0, 0, 0), "1"),
    /** Newton. */
    NEWTON("N", new Dimension(1, 1, -2, 0, 0), "1"),
    /** Joule. */
    JOULE("J", new Dimension(2, 1, -2, 0, 0), "1"),
    /** Watt. */
    WATT("W", new Dimension(2, 1, -3, 0, 0), "1"),
    /** Volt. */
    VOLT("V", new Dimension(2, 1, -3, -1, 0), "1"),
    /** Millivolt. */
    MILLIVOLT("mV", new Dimension(2, 1, -3, -1, 0), "0.001"),
    /** Ampere. */
    AMPERE("A", new Dimension(0, 0, 0, 1, 0), "1"),
    /** Milliampere. */
    MILLIAMPERE("mA", new Dimension(0, 0, 0, 1, 0), "0.001"),
    /** Nanoampere. */
    NANOAMPERE("nA", new Dimension(0, 0, 0, 1, 0), "0.000000001"),
    /** Ohm. */
    OHM("Ω", new Dimension(2, 1, -3, -2, 0), "1"),
    /** Kelvin. */
    KELVIN("K", new Dimension(0, 0, 0, 0, 1), "1"),
    /** Degree Celsius, a temperature and not a difference of two. */
    CELSIUS("°C", new Dimension(0, 0, 0, 0, 1), "1"),
    /** Degree Fahrenheit, a temperature and not a difference of two. */
    FAHRENHEIT("°F", new Dimension(0, 0, 0, 0, 1), "5/9"),
    /** Joule per kelvin. */
    JOULE_PER_KELVIN("J/K", new Dimension(2, 1, -2, 0, -1), "1"),
    /** Joule per kilogram and kelvin. */
    JOULE_PER_KILOGRAM_KELVIN("J/(kg·K)", new Dimension(2, 0, -2, 0, -1), "1"),
    /** Kelvin per watt. */
    KELVIN_PER_WATT("K/W", new Dimension(-2, -1, 3, 0, 1), "1"),
    /** Kelvin per second. */
    KELVIN_PER_SECOND("K/s", new Dimension(0, 0, -1, 0, 1), "1");

    private static final BigDecimal ICE_POINT_K = new BigDecimal("273.15");
    private static final BigDecimal ZERO_OF_FAHRENHEIT = new BigDecimal("459.67");
    private static final int SHORT = 7;
    private static final int SCALE = 10;
    private static final Map<String, String> ALSO_WRITTEN = Map.ofEntries(
            Map.entry("metre", "m"),
            Map.entry("metres", "m"),
            Map.entry("meter", "m"),
            Map.entry("meters", "m"),
            Map.entry("foot", "ft"),
            Map.entry("feet", "ft"),
            Map.entry("sec", "s"),
            Map.entry("second", "s"),
            Map.entry("seconds", "s"),
            Map.entry("kph", "km/h"),
            Map.entry("kmh", "km/h"),
            Map.entry("MPH", "mph"),
            Map.entry("mi/h", "mph"),
            Map.entry("fps", "ft/s"),
            Map.entry("ohm", "Ω"),
            Map.entry("ohms", "Ω"),
            Map.entry("\u2126", "Ω"),
            Map.entry("degC", "°C"),
            Map.entry("degF", "°F"),
            Map.entry("percent", "%"));

    private final String symbol;
    private final Dimension dimension;
    private final BigDecimal numerator;
    private final BigDecimal denominator;

    Unit(String symbol, Dimension dimension, String factor) {
        this.symbol = symbol;
        this.dimension = dimension;
        int slash = factor.indexOf('/');
        this.numerator = new BigDecimal(slash < 0 ? factor : factor.substring(0, slash));
        this.denominator = slash < 0 ? BigDecimal.ONE : new BigDecimal(factor.substring(slash + 1));
    }

    /**
     * Gives the unit's symbol.
     *
     * @return the symbol, empty for a plain number
     */
    public String symbol() {
        return symbol;
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
        return dimension.equals(other.dimension);
    }

    /**
     * Finds a unit by its symbol, by its English name where it is in everyday use ({@code metres}, {@code feet}, {@code
     * seconds}), or with {@code s2}, {@code ohm}, {@code degC} and the like for what a keyboard lacks.
     *
     * @param text the symbol, for example {@code m/s^2}
     * @return the unit
     * @throws IllegalArgumentException if no unit of the list has this symbol
     */
    public static Unit of(String text) {
        String written = text.strip().replace("^2", "²").replace("s2", "s²");
        String wanted = ALSO_WRITTEN.getOrDefault(written, written);
        return Arrays.stream(values())
                .filter(unit -> unit.symbol.equals(wanted))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("unit must be one of "
                        + Arrays.stream(values())
                                .map(Unit::symbol)
                                .filter(each -> !each.isEmpty())
                                .collect(Collectors.joining(", "))
                        + ", got \"" + text + "\""));
    }

    /** Converts a number in this unit, exactly but for the double's own last digit. */
    double convert(double number, Unit to) {
        requireSameKind(to);
        if (this == to) {
            return number;
        }
        if (isThermometer() || to.isThermometer()) {
            return to.fromKelvin(toKelvin(number));
        }
        // the factors are decimals of few digits, so that both products are whole numbers a double holds exactly
        long top = scaled(numerator.multiply(to.denominator));
        long bottom = scaled(denominator.multiply(to.numerator));
        long common = gcd(top, bottom);
        long times = top / common;
        long divisor = bottom / common;
        return number * times / divisor;
    }

    /** Writes the conversion of a number as a person would: 100 / 3.6, 60 × 22 / 15, 20 + 273.15. */
    Expression conversion(BigDecimal number, Unit to) {
        requireSameKind(to);
        Expression plain = new Expression.Num(number, NONE);
        if (isThermometer() || to.isThermometer()) {
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

    private boolean isThermometer() {
        return this == CELSIUS || this == FAHRENHEIT;
    }

    private double toKelvin(double number) {
        return switch (this) {
            case CELSIUS -> number + ICE_POINT_K.doubleValue();
            case FAHRENHEIT -> (number + ZERO_OF_FAHRENHEIT.doubleValue()) / 1.8;
            default -> number;
        };
    }

    private double fromKelvin(double kelvin) {
        return switch (this) {
            case CELSIUS -> kelvin - ICE_POINT_K.doubleValue();
            case FAHRENHEIT -> kelvin * 1.8 - ZERO_OF_FAHRENHEIT.doubleValue();
            default -> kelvin;
        };
    }

    /** A temperature on another scale; the scales have different zeros. */
    private Expression reading(Expression plain, Unit to) {
        Expression nineFifths = Expression.number("1.8");
        if (this == FAHRENHEIT) {
            return to == CELSIUS
                    ? plain.minus(Expression.number(32)).over(nineFifths)
                    : plain.plus(new Expression.Num(ZERO_OF_FAHRENHEIT, NONE)).over(nineFifths);
        }
        if (to == FAHRENHEIT) {
            return this == CELSIUS
                    ? plain.times(nineFifths).plus(Expression.number(32))
                    : plain.times(nineFifths).minus(new Expression.Num(ZERO_OF_FAHRENHEIT, NONE));
        }
        Expression icePoint = new Expression.Num(ICE_POINT_K, NONE);
        return this == CELSIUS ? plain.plus(icePoint) : plain.minus(icePoint);
    }

    /** The quotient if it ends after a few digits, else nothing. */
    private static List<BigDecimal> exact(BigDecimal top, BigDecimal bottom) {
        BigDecimal q = top.divide(bottom, new MathContext(SHORT)).stripTrailingZeros();
        return q.multiply(bottom).compareTo(top) == 0 ? List.of(q) : List.of();
    }

    /** This unit over the other as a fraction of whole numbers in lowest terms. */
    private BigInteger[] ratio(Unit to) {
        BigDecimal top = numerator.multiply(to.denominator);
        BigDecimal bottom = denominator.multiply(to.numerator);
        int scale = Math.max(0, Math.max(top.scale(), bottom.scale()));
        BigInteger n = top.movePointRight(scale).toBigIntegerExact();
        BigInteger d = bottom.movePointRight(scale).toBigIntegerExact();
        BigInteger common = n.gcd(d);
        return new BigInteger[] {n.divide(common), d.divide(common)};
    }

    /** Whether the unit is the one of the SI without a factor. */
    boolean isSi() {
        return this != CELSIUS && numerator.compareTo(denominator) == 0;
    }

    private static long scaled(BigDecimal factor) {
        return factor.movePointRight(SCALE).longValueExact();
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    private void requireSameKind(Unit to) {
        if (!measuresTheSameAs(to)) {
            throw new IllegalArgumentException("a number in " + name(this) + " cannot be converted to " + name(to));
        }
    }

    private static String name(Unit unit) {
        return unit == NONE ? "no unit" : unit.symbol;
    }
}
