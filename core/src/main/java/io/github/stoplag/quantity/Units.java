package io.github.stoplag.quantity;

import static io.github.stoplag.quantity.NamedUnit.Use.BOTH;
import static io.github.stoplag.quantity.NamedUnit.Use.US_CUSTOMARY;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The one table of units: for each kind of quantity the units it is written in, and the reading and writing of such
 * text.
 *
 * <p>Whatever reads a unit takes it from here: {@code parse} on the value types, scenario, plan and circuit files,
 * questions in words, answers to exercises, the tables of published rules, JSR-385. No locale is consulted and nothing
 * is registered from outside.
 *
 * <p>A <b>number</b> has decimal digits, at most one point with digits behind it, and perhaps an exponent: {@code -3},
 * {@code .5}, {@code 1.5e-3}. A comma, a space or any other mark inside it is refused, never read as something else.
 *
 * <p>A <b>unit</b> is a symbol with capital and small letters just so ({@code mV}, {@code kPa}, {@code K}), or one of
 * the names and abbreviations that people write in any case ({@code mph}, {@code MPH}, {@code Miles per hour},
 * {@code knots}, {@code feet}). Where another case is another unit the other case is refused: M and S are not metre and
 * second, MW and MV not milliwatt and millivolt. A degree sign alone is refused, for it may be a slope or a
 * temperature: write {@code deg} or {@code °C}.
 *
 * <p>A <b>distance</b> may be feet and inches: {@code 8 ft 10 in}, {@code 8 feet 10.5 inches}, {@code 8' 10"},
 * {@code 8′ 10″}: whole feet, inches from 0 to below 12, both with their units; {@code 8'10} is refused. {@code 10"}
 * alone is ten inches.
 *
 * <p>Source of the sizes: the foot of 0.3048 m, and with it inch, yard and mile, NIST and NOAA notice 85 FR 62698
 * (2020), seen; the pound of 0.45359237 kg, the knot of 1852 m in an hour, standard gravity of 9.80665 m/s² (3rd CGPM
 * 1901), bar, minute, hour, tonne and the thermometers, SI Brochure 9th edition and NIST SP 811, from memory; psi = lb
 * × g / in² is arithmetic on these.
 */
public final class Units {
    /** Speed in m/s, km/h, mph, ft/s, and kn, the international knot. */
    public static final Units SPEED = new Units(
            "speed",
            "m s-1",
            si("m/s").typed("m/sec").said("metre(s) per second", "metre(s) a second"),
            unit("km/h", "1/3.6")
                    .said(
                            "km/h",
                            "kmh",
                            "kph",
                            "kmph",
                            "km/hr",
                            "km per hour",
                            "kilometre(s) per hour",
                            "kilometre(s) an hour"),
            unit("mph", "0.44704")
                    .said("mph", "mi/h", "miles/h", "mile(s) per hour", "mile(s) an hour")
                    .in(US_CUSTOMARY),
            unit("ft/s", "0.3048")
                    .said("ft/s", "ft/sec", "fps", "foot per second", "feet per second")
                    .in(US_CUSTOMARY),
            // capitals would make it kilonewton
            unit("kn", "1852/3600").said("kt", "kts", "knot(s)").in(BOTH));

    /** Distance in m, km, cm, mm, ft, in, yd, and mi, the statute mile; feet with inches too. */
    public static final Units DISTANCE = new Units(
            "distance",
            "m",
            si("m").said("metre(s)"),
            unit("km", "1000").said("km", "kilometre(s)"),
            unit("cm", "1/100").said("cm", "centimetre(s)"),
            unit("mm", "1/1000").said("millimetre(s)"),
            unit("ft", "0.3048").typed("'", "′").said("ft", "foot", "feet").in(US_CUSTOMARY),
            unit("in", "0.0254").typed("\"", "″").said("in", "inch", "inches").in(US_CUSTOMARY),
            unit("yd", "0.9144").said("yd", "yds", "yard(s)").in(US_CUSTOMARY),
            unit("mi", "1609.344").said("mi", "mile(s)").in(US_CUSTOMARY));

    /** Time in s, ms, min of 60 s, and h. */
    public static final Units TIME = new Units(
            "time",
            "s",
            si("s").said("sec(s)", "second(s)"),
            unit("ms", "1/1000").said("msec(s)", "millisecond(s)"),
            unit("min", "60").said("min(s)", "minute(s)"),
            unit("h", "3600").said("hr(s)", "hour(s)"));

    /** Deceleration in m/s², ft/s², and g, standard gravity. */
    public static final Units DECELERATION = new Units(
            "deceleration",
            "m s-2",
            si("m/s²")
                    .typed("m/s2", "m/s^2", "m/s/s")
                    .said("metre(s) per second squared", "metre(s) per second per second"),
            unit("ft/s²", "0.3048")
                    .said("ft/s2", "ft/s^2", "ft/s/s", "foot per second squared", "feet per second squared")
                    .in(US_CUSTOMARY),
            unit("g", "9.80665").in(BOTH));

    /** A plain number. */
    public static final Units NUMBER = new Units("number", "", si(""));

    /** Friction coefficient: a plain number. */
    public static final Units FRICTION_COEFFICIENT = new Units("friction coefficient", "", si(""));

    /** Grade in % of rise over run, deg of slope from -45 to 45, or as a plain ratio of rise over run. */
    public static final Units GRADE =
            new Units("grade", "", percent(), new SlopeDegrees().said("deg", "degree(s)"), si(""));

    /** Mass in kg, t, the metric tonne, and lb, the avoirdupois pound. A bare "ton" is several masses and refused. */
    public static final Units MASS = new Units(
            "mass",
            "kg",
            si("kg").said("kg", "kgs", "kilogram(s)", "kilogramme(s)"),
            unit("t", "1000").said("tonne(s)", "metric ton(s)"),
            unit("lb", "0.45359237").said("lb", "lbs", "pound(s)"));

    /** Voltage in V, mV. */
    public static final Units VOLTAGE = new Units(
            "voltage",
            "kg m2 s-3 A-1",
            si("V").said("v", "volt(s)"),
            unit("mV", "1/1000").said("millivolt(s)"));

    /** Current in A, mA, µA, nA. */
    public static final Units CURRENT = new Units(
            "current",
            "A",
            si("A").said("a", "amp(s)", "ampere(s)"),
            unit("mA", "1/1000").said("milliamp(s)", "milliampere(s)"),
            // the micro sign U+00B5 and the Greek letter U+03BC look alike and both are typed
            unit("\u00b5A", "1/1000000").typed("\u03bcA", "uA").said("microamp(s)", "microampere(s)"),
            unit("nA", "1/1000000000").said("nanoamp(s)", "nanoampere(s)"));

    /** Resistance in Ω, mΩ, kΩ. */
    public static final Units RESISTANCE = new Units(
            "resistance",
            "kg m2 s-3 A-2",
            // so do the Greek letter U+03A9 and the ohm sign U+2126
            si("\u03a9").typed("\u2126").said("ohm(s)"),
            unit("m\u03a9", "1/1000").typed("m\u2126", "mohm").said("milliohm(s)"),
            unit("k\u03a9", "1000").typed("k\u2126", "kohm").said("kilohm(s)"));

    /** Power in W, mW, kW. */
    public static final Units POWER = new Units(
            "power",
            "kg m2 s-3",
            si("W").said("w", "watt(s)"),
            unit("mW", "1/1000").said("milliwatt(s)"),
            unit("kW", "1000").said("kw", "kilowatt(s)"));

    /** Temperature, as a thermometer reads it and not a difference of two, in K, °C, °F. */
    public static final Units TEMPERATURE = new Units(
            "temperature",
            "K",
            si("K").said("kelvin(s)"),
            new NamedUnit("°C", "1", "273.15")
                    .typed("degC", "\u2103")
                    .said("c", "°c", "degc", "deg c", "celsius", "degree(s) c", "degree(s) celsius"),
            new NamedUnit("°F", "1/1.8", "459.67")
                    .typed("degF", "\u2109")
                    .said("f", "°f", "degf", "deg f", "fahrenheit", "degree(s) f", "degree(s) fahrenheit"));

    /** Gauge pressure in Pa, kPa, bar, and psi, the pound-force per square inch. */
    public static final Units PRESSURE = new Units(
            "pressure",
            "kg m-1 s-2",
            si("Pa").said("pascal(s)"),
            unit("kPa", "1000").said("kpa", "kilopascal(s)"),
            unit("bar", "100000").said("bar(s)"),
            unit("psi", "4.4482216152605/0.00064516")
                    .said("psi", "lb/in2", "pound(s) per square inch")
                    .in(US_CUSTOMARY));

    /** Luminous intensity in cd, mcd. */
    public static final Units LUMINOUS_INTENSITY = new Units(
            "luminous intensity",
            "cd",
            si("cd").said("cd", "candela(s)"),
            unit("mcd", "1/1000").said("millicandela(s)"));

    /** Luminous flux in lm. */
    public static final Units LUMINOUS_FLUX = new Units("luminous flux", "cd sr", si("lm").said("lm", "lumen(s)"));

    /** Illuminance in lx. */
    public static final Units ILLUMINANCE = new Units("illuminance", "cd sr m-2", si("lx").said("lx", "lux"));

    /** Luminance in cd/m². */
    public static final Units LUMINANCE =
            new Units("luminance", "cd m-2", si("cd/m²").said("cd/m2", "cd/m^2", "candela(s) per square metre"));

    /** A share of a whole in %, or as a plain number. */
    public static final Units SHARE = new Units("share", "", percent(), si(""));

    /** Area of a section in m², mm². */
    public static final Units AREA = new Units(
            "area",
            "m2",
            si("m²").typed("m2", "m^2").said("square metre(s)"),
            unit("mm²", "1/1000000").typed("mm2", "mm^2").said("square millimetre(s)"));

    /** A rate in Hz or /min. */
    public static final Units RATE = new Units(
            "rate",
            "s-1",
            si("Hz").typed("/s").said("hz", "hertz", "per second"),
            unit("/min", "1/60").said("/min", "per minute"));

    /** Thermal resistance in K/W. */
    public static final Units THERMAL_RESISTANCE =
            new Units("thermal resistance", "K s3 kg-1 m-2", si("K/W").said("kelvin(s) per watt"));

    /** Force in N. */
    public static final Units FORCE = new Units("force", "kg m s-2", si("N").said("newton(s)"));

    /** Energy in J. */
    public static final Units ENERGY = new Units("energy", "kg m2 s-2", si("J").said("j", "joule(s)"));

    /** Heat capacity in J/K. */
    public static final Units HEAT_CAPACITY =
            new Units("heat capacity", "kg m2 s-2 K-1", si("J/K").said("joule(s) per kelvin"));

    /** Specific heat in J/(kg·K). */
    public static final Units SPECIFIC_HEAT =
            new Units("specific heat", "m2 s-2 K-1", si("J/(kg·K)").typed("J/(kg K)", "J/kg/K"));

    /** Rate of heating in K/s. */
    public static final Units HEATING_RATE =
            new Units("rate of heating", "K s-1", si("K/s").said("kelvin(s) per second"));

    /** Square of a time in s². */
    public static final Units TIME_SQUARED =
            new Units("square of a time", "s2", si("s²").typed("s2", "s^2").said("second(s) squared"));

    /** Square of a speed in m²/s², ft²/s². */
    public static final Units SPEED_SQUARED = new Units(
            "square of a speed",
            "m2 s-2",
            si("m²/s²").typed("m2/s2", "m^2/s^2"),
            unit("ft²/s²", "0.09290304").typed("ft2/s2", "ft^2/s^2").in(US_CUSTOMARY));

    private static final List<Units> ALL = List.of(
            NUMBER,
            SPEED,
            DISTANCE,
            TIME,
            DECELERATION,
            FRICTION_COEFFICIENT,
            GRADE,
            MASS,
            VOLTAGE,
            CURRENT,
            RESISTANCE,
            POWER,
            TEMPERATURE,
            PRESSURE,
            LUMINOUS_INTENSITY,
            LUMINOUS_FLUX,
            ILLUMINANCE,
            LUMINANCE,
            SHARE,
            AREA,
            RATE,
            THERMAL_RESISTANCE,
            FORCE,
            ENERGY,
            HEAT_CAPACITY,
            SPECIFIC_HEAT,
            HEATING_RATE,
            TIME_SQUARED,
            SPEED_SQUARED);

    private final String quantity;
    private final String baseUnits;
    private final List<NamedUnit> units;
    private final Map<String, NamedUnit> exact = new HashMap<>();
    private final Map<String, NamedUnit> loose = new HashMap<>();

    private Units(String quantity, String baseUnits, NamedUnit... units) {
        this.quantity = quantity;
        this.baseUnits = baseUnits;
        this.units = List.of(units);
        for (NamedUnit unit : units) {
            unit.exactSpellings().forEach(spelling -> exact.put(spelling, unit));
            unit.looseSpellings().forEach(spelling -> loose.put(spelling, unit));
        }
    }

    private static NamedUnit si(String symbol) {
        return new NamedUnit(symbol, "1", "0");
    }

    private static NamedUnit unit(String symbol, String factor) {
        return new NamedUnit(symbol, factor, "0");
    }

    private static NamedUnit percent() {
        return unit("%", "1/100").said("percent", "per cent");
    }

    /**
     * Gives the whole table.
     *
     * @return every kind of quantity
     */
    public static List<Units> all() {
        return ALL;
    }

    /**
     * Finds the kind of quantity that a spelling measures. Only a plain number and % measure several, of which the
     * first counts.
     *
     * @param spelling a unit as people write it, for example {@code Miles per hour}
     * @return the kind of quantity, empty if no unit is spelt so
     */
    public static Optional<Units> having(String spelling) {
        Objects.requireNonNull(spelling, "spelling");
        for (Units each : ALL) {
            if (each.lookUp(spelling) != null) {
                return Optional.of(each);
            }
        }
        return Optional.empty();
    }

    /**
     * Gives the name of the quantity, as the messages use it.
     *
     * @return the name, for example {@code luminous intensity}
     */
    public String quantity() {
        return quantity;
    }

    /**
     * Gives the SI unit as powers of base units; radian and steradian, which have no dimension, are kept apart from
     * one.
     *
     * @return the powers, for example {@code kg m2 s-3 A-1}; empty for a plain number
     */
    public String baseUnits() {
        return baseUnits;
    }

    /**
     * Gives the units, the SI unit without a factor among them.
     *
     * @return the units in the order in which messages name them
     */
    public List<NamedUnit> list() {
        return units;
    }

    /**
     * Finds a unit of this quantity by any of its spellings.
     *
     * @param spelling the unit as people write it; empty for a plain number
     * @return the unit
     * @throws IllegalArgumentException if it is no unit of this quantity, for example {@code speed: unknown unit "mhp";
     *     use one of m/s, km/h, mph, ft/s, kn}
     */
    public NamedUnit unit(String spelling) {
        Objects.requireNonNull(spelling, "spelling");
        NamedUnit found = lookUp(spelling);
        if (found == null) {
            throw new IllegalArgumentException(quantity + ": " + UnitText.unitComplaint(this, spelling));
        }
        return found;
    }

    /**
     * Finds a unit of this quantity by any of its spellings.
     *
     * @param spelling the unit as people write it; empty for a plain number
     * @return the unit, empty if this quantity has none so spelt
     */
    public Optional<NamedUnit> find(String spelling) {
        Objects.requireNonNull(spelling, "spelling");
        return Optional.ofNullable(lookUp(spelling));
    }

    @Nullable
    NamedUnit lookUp(String spelling) {
        NamedUnit found = exact.get(spelling);
        return found == null ? loose.get(UnitText.small(spelling)) : found;
    }

    /**
     * Reads a text and keeps the unit it was written in.
     *
     * @param text the text, for example {@code 60 mph}
     * @return the number and its unit
     * @throws IllegalArgumentException if the number is malformed, or the unit is missing, unknown or of another
     *     quantity; for example {@code speed "60 mhp": unknown unit "mhp"; use one of m/s, km/h, mph, ft/s, kn}
     */
    public Reading read(String text) {
        Objects.requireNonNull(text, "text");
        return UnitText.read(this, text);
    }

    /**
     * Reads a text into the SI unit of the quantity.
     *
     * @param text the text, for example {@code 60 mph}
     * @return the value in the SI unit
     * @throws IllegalArgumentException as {@link #read} does
     */
    public double parseSi(String text) {
        Objects.requireNonNull(text, "text");
        return read(text).si();
    }

    /**
     * Writes a value with a fixed count of decimals, rounded half up, in one of the units.
     *
     * <p>{@link #parseSi} reads the text back to within half a step of the last decimal.
     *
     * @param si the value in the SI unit, finite
     * @param unit the unit in any of its spellings, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text, for example {@code 96.6 km/h}
     * @throws IllegalArgumentException if the unit is unknown or of another quantity, or decimals is not in [0, 15]
     */
    public String format(double si, String unit, int decimals) {
        Objects.requireNonNull(unit, "unit");
        Ranges.DECIMALS.check(decimals);
        String number = Numbers.fixed(unit(unit).fromSi(si), decimals);
        return unit.isEmpty() ? number : number + " " + unit;
    }

    @Override
    public String toString() {
        return quantity;
    }

    /**
     * A number with the unit it was written in.
     *
     * @param number the number
     * @param unit its unit; inches for feet with inches
     */
    public record Reading(double number, NamedUnit unit) {

        /**
         * Refuses nulls.
         *
         * @param number the number
         * @param unit its unit; inches for feet with inches
         * @throws NullPointerException if one that is required is null
         */
        public Reading {
            Objects.requireNonNull(unit, "unit");
        }

        /**
         * Gives the value in the SI unit.
         *
         * @return the value
         * @throws IllegalArgumentException if it is a slope outside [-45, 45] deg
         */
        public double si() {
            return unit.toSi(number);
        }

        /**
         * Gives the number in another unit of the quantity; in its own unit the number as it was written.
         *
         * @param other the other unit
         * @return the number in that unit
         * @throws IllegalArgumentException if it is a slope outside [-45, 45] deg
         */
        public double in(NamedUnit other) {
            Objects.requireNonNull(other, "other");
            return other.equals(unit) ? number : other.fromSi(si());
        }
    }
}
