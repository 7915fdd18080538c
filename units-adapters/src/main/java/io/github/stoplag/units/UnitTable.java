package io.github.stoplag.units;

import io.github.stoplag.quantity.Check;
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
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * The closed list of units in which one kind of quantity is written as text, and the reading and writing of that text.
 *
 * <p>A unit is spelt exactly as listed, capitals included; besides the names of {@link #units()} a few usual other
 * spellings are read (kph, mi/h, m/s^2, C, degC). Nothing is registered from outside and no locale is consulted.
 *
 * @param <V> the value type
 */
public final class UnitTable<V> {
    /** Speed: m/s, km/h, mph, ft/s and kn, the international knot of 1852 m an hour. */
    public static final UnitTable<Speed> SPEED = new UnitTable<>(
            "speed",
            List.of(
                    unit("m/s", Speed::mps, Speed::inMps),
                    unit("km/h", Speed::kmh, Speed::inKmh, "kph"),
                    unit("mph", Speed::mph, Speed::inMph, "mi/h"),
                    unit("ft/s", Speed::ftps, Speed::inFtps),
                    unit("kn", kn -> Speed.mps(kn * 1852.0 / 3600.0), speed -> speed.inMps() * 3600.0 / 1852.0)));

    /** Distance: m, km, cm, mm, ft, in, yd and mi, the statute mile; feet with inches too, as in 8 ft 10 in. */
    public static final UnitTable<Distance> DISTANCE = new UnitTable<>(
            "distance",
            List.of(
                    unit("m", Distance::metres, Distance::inMetres),
                    unit("km", Distance::km, Distance::inKm),
                    unit("cm", cm -> Distance.metres(cm / 100.0), distance -> distance.inMetres() * 100.0),
                    unit("mm", mm -> Distance.metres(mm / 1000.0), distance -> distance.inMetres() * 1000.0),
                    unit("ft", Distance::feet, Distance::inFeet, "'", "′"),
                    unit("in", Distance::inches, Distance::inInches, "\"", "″"),
                    unit("yd", yd -> Distance.feet(yd * 3.0), distance -> distance.inFeet() / 3.0),
                    unit("mi", Distance::miles, Distance::inMiles)));

    /** Time: s, ms, and min of 60 s. */
    public static final UnitTable<TimeSpan> TIME_SPAN = new UnitTable<>(
            "time",
            List.of(
                    unit("s", TimeSpan::seconds, TimeSpan::inSeconds),
                    unit("ms", TimeSpan::millis, TimeSpan::inMillis),
                    unit("min", min -> TimeSpan.seconds(min * 60.0), time -> time.inSeconds() / 60.0)));

    /** Deceleration: m/s², ft/s², and g, standard gravity of 9.80665 m/s². */
    public static final UnitTable<Deceleration> DECELERATION = new UnitTable<>(
            "deceleration",
            List.of(
                    unit("m/s²", Deceleration::mps2, Deceleration::inMps2, "m/s2", "m/s^2"),
                    unit("ft/s²", Deceleration::ftps2, Deceleration::inFtps2, "ft/s2", "ft/s^2"),
                    unit("g", Deceleration::standardGravities, Deceleration::inStandardGravities)));

    /** Friction coefficient: a plain number. */
    public static final UnitTable<FrictionCoefficient> FRICTION_COEFFICIENT = new UnitTable<>(
            "friction coefficient", List.of(unit("", FrictionCoefficient::of, FrictionCoefficient::inRatio)));

    /** Grade: % of rise over run, deg of slope from -45 to 45, or a plain ratio of rise over run. */
    public static final UnitTable<Grade> GRADE = new UnitTable<>(
            "grade",
            List.of(
                    unit("%", Grade::percent, Grade::inPercent),
                    unit("deg", UnitTable::slope, Grade::inDegrees, "°"),
                    unit("", Grade::ratio, Grade::inRatio)));

    /** Mass: kg, t, the metric tonne, and lb, the avoirdupois pound. */
    public static final UnitTable<Mass> MASS = new UnitTable<>(
            "mass",
            List.of(
                    unit("kg", Mass::kg, Mass::inKg),
                    unit("t", Mass::tonnes, Mass::inTonnes),
                    unit("lb", Mass::pounds, Mass::inPounds)));

    /** Voltage: V, mV. */
    public static final UnitTable<Voltage> VOLTAGE = new UnitTable<>(
            "voltage",
            List.of(
                    unit("V", Voltage::volts, Voltage::inVolts),
                    unit("mV", Voltage::millivolts, Voltage::inMillivolts)));

    /** Current: A, mA. */
    public static final UnitTable<Current> CURRENT = new UnitTable<>(
            "current",
            List.of(
                    unit("A", Current::amperes, Current::inAmperes),
                    unit("mA", Current::milliamperes, Current::inMilliamperes)));

    /** Resistance: ohm, mohm, or with the sign Ω. */
    public static final UnitTable<Resistance> RESISTANCE = new UnitTable<>(
            "resistance",
            // U+03A9 is the Greek letter, U+2126 the ohm sign: they look alike and both are typed
            List.of(
                    unit("ohm", Resistance::ohms, Resistance::inOhms, "\u03a9", "\u2126"),
                    unit("mohm", Resistance::milliohms, Resistance::inMilliohms, "m\u03a9", "m\u2126")));

    /** Power: W. */
    public static final UnitTable<Power> POWER =
            new UnitTable<>("power", List.of(unit("W", Power::watts, Power::inWatts)));

    /** Temperature: K, °C, °F. */
    public static final UnitTable<Temperature> TEMPERATURE = new UnitTable<>(
            "temperature",
            List.of(
                    unit("K", Temperature::kelvin, Temperature::inKelvin),
                    unit("°C", Temperature::celsius, Temperature::inCelsius, "C", "degC"),
                    unit("°F", Temperature::fahrenheit, Temperature::inFahrenheit, "F", "degF")));

    /** Luminous intensity: cd. */
    public static final UnitTable<LuminousIntensity> LUMINOUS_INTENSITY = new UnitTable<>(
            "luminous intensity", List.of(unit("cd", LuminousIntensity::candela, LuminousIntensity::inCandela)));

    /** Luminous flux: lm. */
    public static final UnitTable<LuminousFlux> LUMINOUS_FLUX =
            new UnitTable<>("luminous flux", List.of(unit("lm", LuminousFlux::lumens, LuminousFlux::inLumens)));

    /** Illuminance: lx. */
    public static final UnitTable<Illuminance> ILLUMINANCE =
            new UnitTable<>("illuminance", List.of(unit("lx", Illuminance::lux, Illuminance::inLux)));

    /** Luminance: cd/m². */
    public static final UnitTable<Luminance> LUMINANCE = new UnitTable<>(
            "luminance", List.of(unit("cd/m²", Luminance::cdPerM2, Luminance::inCdPerM2, "cd/m2", "cd/m^2")));

    private final String quantity;
    private final List<Unit<V>> units;

    private record Unit<V>(String name, List<String> others, DoubleFunction<V> of, ToDoubleFunction<V> in) {
        boolean isSpelt(String text) {
            return name.equals(text) || others.contains(text);
        }
    }

    private UnitTable(String quantity, List<Unit<V>> units) {
        this.quantity = quantity;
        this.units = units;
    }

    private static <V> Unit<V> unit(String name, DoubleFunction<V> of, ToDoubleFunction<V> in, String... others) {
        return new Unit<>(name, List.copyOf(Arrays.asList(others)), of, in);
    }

    private static Grade slope(double degrees) {
        // the tangent repeats every half turn, so 180 deg would pass for a level road
        return Grade.degrees(Check.inRange("grade", degrees, -45.0, 45.0, "deg"));
    }

    private static Stream<UnitTable<?>> all() {
        return Stream.of(
                SPEED,
                DISTANCE,
                TIME_SPAN,
                DECELERATION,
                FRICTION_COEFFICIENT,
                GRADE,
                MASS,
                VOLTAGE,
                CURRENT,
                RESISTANCE,
                POWER,
                TEMPERATURE,
                LUMINOUS_INTENSITY,
                LUMINOUS_FLUX,
                ILLUMINANCE,
                LUMINANCE);
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
     * Gives the units in which a value can be written, the usual spelling of each.
     *
     * @return the unit names, the empty text standing for a plain number
     */
    public List<String> units() {
        return units.stream().map(Unit::name).toList();
    }

    /**
     * Reads a value from a number and a unit.
     *
     * <p>The number has decimal digits, at most one point, and perhaps an exponent ({@code -3}, {@code .5},
     * {@code 1.5e-3}); a comma or a space inside it is an error, never read as something else. A distance may also be
     * feet and inches ({@code 8 ft 10 in}, {@code 8' 10"}): whole feet, and inches from 0 to below 12.
     *
     * @param text the text, for example {@code 60 mph}
     * @return the value
     * @throws IllegalArgumentException if the number is malformed, the unit is missing, unknown or of another quantity,
     *     or the value is outside the value type's range; for example {@code speed "60 mhp": unknown unit "mhp"; use one
     *     of m/s, km/h, mph, ft/s, kn}
     */
    public V parse(String text) {
        NumberAndUnit parts = NumberAndUnit.split(text, reason -> failure(text, reason));
        return find(parts.unit())
                .orElseThrow(() -> failure(text, unitComplaint(parts.unit())))
                .of()
                .apply(parts.number());
    }

    /**
     * Writes a value with a fixed count of decimals, rounded half up, in one of the units.
     *
     * <p>{@link #parse} reads the text back to within half a step of the last decimal, unless rounding carries the value
     * over the edge of the value type's range.
     *
     * @param value the value
     * @param unit the unit as {@link #parse} would read it, printed as given
     * @param decimals how many decimals to print, 0 to 15
     * @return the text, for example {@code 96.6 km/h}
     * @throws IllegalArgumentException if the unit is unknown or of another quantity, or decimals is not in [0, 15]
     */
    public String format(V value, String unit, int decimals) {
        Check.inRange("decimals", decimals, 0, 15, "");
        Unit<V> known =
                find(unit).orElseThrow(() -> new IllegalArgumentException(quantity + ": " + unitComplaint(unit)));
        String number = Numbers.fixed(known.in().applyAsDouble(value), decimals);
        return unit.isEmpty() ? number : number + " " + unit;
    }

    private Optional<Unit<V>> find(String spelling) {
        return units.stream().filter(unit -> unit.isSpelt(spelling)).findFirst();
    }

    private IllegalArgumentException failure(String text, String reason) {
        return new IllegalArgumentException(quantity + " \"" + text.replaceAll("\\s+", " ") + "\": " + reason);
    }

    private String unitComplaint(String spelling) {
        String names = String.join(
                ", ", units().stream().filter(name -> !name.isEmpty()).toList());
        String plain = find("").isPresent() ? "a plain number" : "";
        String advice = "; use " + (names.contains(", ") ? "one of " : "") + names
                + (names.isEmpty() || plain.isEmpty() ? "" : " or ") + plain;
        if (spelling.isEmpty()) {
            return "missing unit" + advice;
        }
        return all().filter(other -> other.find(spelling).isPresent())
                        .findFirst()
                        .map(other -> "\"" + spelling + "\" is a unit of " + other.quantity)
                        .orElse("unknown unit \"" + spelling + "\"")
                + advice;
    }
}
