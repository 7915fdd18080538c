package io.github.stoplag.examples.file;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Speed;
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
 * @param range the values allowed
 * @param <T> the quantity
 */
public record Key<T>(
        String name, @Nullable String fallback, Function<String, T> parse, ToDoubleFunction<T> measure, Range range) {
    /** Gives the same key under another name, which has no default. */
    public Key<T> named(String newName) {
        return new Key<>(newName, null, parse, measure, range);
    }

    public static Key<TimeSpan> time(String name, @Nullable String fallback, Range range) {
        return new Key<>(name, fallback, TimeSpan::parse, TimeSpan::inSeconds, range);
    }

    public static Key<TimeSpan> time(String name, @Nullable String fallback, double loS, double hiS) {
        return time(name, fallback, Range.closed(name, loS, hiS, "s"));
    }

    public static Key<Speed> speed(String name, Range range) {
        return new Key<>(name, null, Speed::parse, Speed::inMps, range);
    }

    public static Key<Distance> distance(String name, @Nullable String fallback, Range range) {
        return new Key<>(name, fallback, Distance::parse, Distance::inMetres, range);
    }

    public static Key<Distance> distance(String name, @Nullable String fallback, double loM, double hiM) {
        return distance(name, fallback, Range.closed(name, loM, hiM, "m"));
    }

    public static Key<Deceleration> deceleration(String name) {
        return new Key<>(name, null, Deceleration::parse, Deceleration::inMps2, Ranges.BRAKING);
    }

    public static Key<Voltage> voltage(String name, @Nullable String fallback, Range range) {
        return new Key<>(name, fallback, Voltage::parse, Voltage::inVolts, range);
    }

    public static Key<Voltage> voltage(String name, @Nullable String fallback, double loV, double hiV) {
        return voltage(name, fallback, Range.closed(name, loV, hiV, "V"));
    }

    public static Key<Current> current(String name, @Nullable String fallback, double loA, double hiA) {
        return new Key<>(name, fallback, Current::parse, Current::inAmperes, Range.closed(name, loA, hiA, "A"));
    }

    public static Key<Power> power(String name, @Nullable String fallback, Range range) {
        return new Key<>(name, fallback, Power::parse, Power::inWatts, range);
    }

    public static Key<Resistance> resistance(String name, @Nullable String fallback, Range range) {
        return new Key<>(name, fallback, Resistance::parse, Resistance::inOhms, range);
    }

    public static Key<Temperature> celsius(String name, @Nullable String fallback, double loC, double hiC) {
        return new Key<>(
                name, fallback, Temperature::parse, Temperature::inCelsius, Range.closed(name, loC, hiC, "°C"));
    }

    /** Makes a key of the temperature around something in a vehicle. */
    public static Key<Temperature> ambient(String name, String fallback) {
        return celsius(name, fallback, -50, 120);
    }

    public static Key<Temperature> kelvin(String name, @Nullable String fallback, double loK, double hiK) {
        return new Key<>(name, fallback, Temperature::parse, Temperature::inKelvin, Range.closed(name, loK, hiK, "K"));
    }

    public static Key<LuminousIntensity> intensity(String name, @Nullable String fallback, Range range) {
        return new Key<>(name, fallback, LuminousIntensity::parse, LuminousIntensity::inCandela, range);
    }

    public static Key<Double> ratio(String name, @Nullable String fallback, Range range) {
        return new Key<>(name, fallback, Units.SHARE::parseSi, ratio -> ratio, range);
    }

    public static Key<LuminousFlux> flux(String name, @Nullable String fallback, double loLm, double hiLm) {
        return new Key<>(
                name, fallback, LuminousFlux::parse, LuminousFlux::inLumens, Range.closed(name, loLm, hiLm, "lm"));
    }

    public static Key<Double> ratio(String name, @Nullable String fallback, double lo, double hi) {
        return ratio(name, fallback, Range.closed(name, lo, hi, ""));
    }

    /**
     * Makes a key of a number counted in one unit, for units that no value type has; without a unit, a plain number.
     *
     * @param name the key as the file writes it
     * @param fallback the value used if the file does not have the key; null if it must
     * @param range the values allowed, in the unit of the value; the file may write it in any unit of that quantity
     * @return the key
     */
    public static Key<Double> number(String name, @Nullable String fallback, Range range) {
        return new Key<>(name, fallback, text -> parseNumber(text, range.unit()), number -> number, range);
    }

    public static Key<Double> number(String name, @Nullable String fallback, double lo, double hi, String unit) {
        return number(name, fallback, Range.closed(name, lo, hi, unit));
    }

    private static Double parseNumber(String text, String unit) {
        Units units = Units.having(unit).orElseThrow(() -> new IllegalArgumentException("no unit: " + unit));
        return units.read(text).in(units.unit(unit));
    }
}
