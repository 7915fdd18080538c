package io.github.stoplag.examples.file;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Units;
import io.github.stoplag.quantity.Voltage;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * A key of a scenario file that holds a quantity.
 *
 * @param name the key as the file writes it
 * @param fallback the value used if the file does not have the key; null if it must
 * @param parse text to value
 * @param measure value to number, in the unit of the range
 * @param lo the lowest value allowed
 * @param hi the highest value allowed
 * @param unit the unit of the range
 * @param <T> the quantity
 */
public record Key<T>(
        String name,
        @Nullable String fallback,
        Function<String, T> parse,
        ToDoubleFunction<T> measure,
        double lo,
        double hi,
        String unit) {
    /** Gives the same key under another name, which has no default. */
    public Key<T> named(String newName) {
        return new Key<>(newName, null, parse, measure, lo, hi, unit);
    }

    /** Gives the allowed range, for example {@code [0, 10] s}. */
    public String range() {
        return "[" + Numbers.text(lo) + ", " + Numbers.text(hi) + "]" + (unit.isEmpty() ? "" : " " + unit);
    }

    /**
     * Makes a key of a time.
     *
     * @param name the key as the file writes it
     * @param fallback the value used if the file does not have the key; null if it must
     * @param lo the lowest value allowed
     * @param hi the highest value allowed
     * @return the key
     */
    public static Key<TimeSpan> time(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, TimeSpan::parse, TimeSpan::inSeconds, lo, hi, "s");
    }

    public static Key<Distance> distance(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Distance::parse, Distance::inMetres, lo, hi, "m");
    }

    public static Key<Deceleration> deceleration(String name) {
        return new Key<>(name, null, Deceleration::parse, Deceleration::inMps2, 0.5, 15, "m/s²");
    }

    /**
     * Makes a key of a voltage.
     *
     * @param name the key as the file writes it
     * @param fallback the value used if the file does not have the key; null if it must
     * @param lo the lowest value allowed
     * @param hi the highest value allowed
     * @return the key
     */
    public static Key<Voltage> voltage(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Voltage::parse, Voltage::inVolts, lo, hi, "V");
    }

    public static Key<Current> current(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Current::parse, Current::inAmperes, lo, hi, "A");
    }

    /**
     * Makes a key of a power.
     *
     * @param name the key as the file writes it
     * @param fallback the value used if the file does not have the key; null if it must
     * @param lo the lowest value allowed
     * @param hi the highest value allowed
     * @return the key
     */
    public static Key<Power> power(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Power::parse, Power::inWatts, lo, hi, "W");
    }

    public static Key<Resistance> resistance(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Resistance::parse, Resistance::inOhms, lo, hi, "ohm");
    }

    public static Key<Temperature> celsius(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Temperature::parse, Temperature::inCelsius, lo, hi, "°C");
    }

    public static Key<Temperature> kelvin(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Temperature::parse, Temperature::inKelvin, lo, hi, "K");
    }

    /**
     * Makes a key of a luminous intensity.
     *
     * @param name the key as the file writes it
     * @param fallback the value used if the file does not have the key; null if it must
     * @param lo the lowest value allowed
     * @param hi the highest value allowed
     * @return the key
     */
    public static Key<LuminousIntensity> intensity(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, LuminousIntensity::parse, LuminousIntensity::inCandela, lo, hi, "cd");
    }

    public static Key<LuminousFlux> flux(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, LuminousFlux::parse, LuminousFlux::inLumens, lo, hi, "lm");
    }

    public static Key<Double> ratio(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Units.SHARE::parseSi, ratio -> ratio, lo, hi, "");
    }

    /**
     * Makes a key of a number counted in one unit, for units that no value type has; without a unit, a plain number.
     *
     * @param name the key as the file writes it
     * @param fallback the value used if the file does not have the key; null if it must
     * @param lo the lowest value allowed
     * @param hi the highest value allowed
     * @param unit the unit of range and value, which the file may write in any unit of that quantity; empty for none
     * @return the key
     */
    public static Key<Double> number(String name, @Nullable String fallback, double lo, double hi, String unit) {
        return new Key<>(name, fallback, text -> parseNumber(text, unit), number -> number, lo, hi, unit);
    }

    private static Double parseNumber(String text, String unit) {
        Units units = Units.having(unit).orElseThrow(() -> new IllegalArgumentException("no unit: " + unit));
        return units.read(text).in(units.unit(unit));
    }
}
