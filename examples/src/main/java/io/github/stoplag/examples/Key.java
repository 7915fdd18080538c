package io.github.stoplag.examples;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.units.QuantityText;
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
 */
record Key<T>(
        String name,
        @Nullable String fallback,
        Function<String, T> parse,
        ToDoubleFunction<T> measure,
        double lo,
        double hi,
        String unit) {
    private static final String DECIMAL = "[0-9]+(\\.[0-9]+)?";

    /** Gives the allowed range, for example {@code [0, 10] s}. */
    String range() {
        return "[" + Numbers.text(lo) + ", " + Numbers.text(hi) + "]" + (unit.isEmpty() ? "" : " " + unit);
    }

    static Key<TimeSpan> time(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, QuantityText::parseTimeSpan, TimeSpan::inSeconds, lo, hi, "s");
    }

    static Key<Distance> distance(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, QuantityText::parseDistance, Distance::inMetres, lo, hi, "m");
    }

    static Key<Deceleration> deceleration(String name) {
        return new Key<>(name, null, QuantityText::parseDeceleration, Deceleration::inMps2, 0.5, 15, "m/s²");
    }

    static Key<Voltage> voltage(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, QuantityText::parseVoltage, Voltage::inVolts, lo, hi, "V");
    }

    static Key<Current> current(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, QuantityText::parseCurrent, Current::inAmperes, lo, hi, "A");
    }

    static Key<Power> power(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, QuantityText::parsePower, Power::inWatts, lo, hi, "W");
    }

    static Key<Resistance> resistance(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, QuantityText::parseResistance, Resistance::inOhms, lo, hi, "ohm");
    }

    static Key<Temperature> celsius(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, QuantityText::parseTemperature, Temperature::inCelsius, lo, hi, "°C");
    }

    static Key<Temperature> kelvin(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, QuantityText::parseTemperature, Temperature::inKelvin, lo, hi, "K");
    }

    static Key<LuminousIntensity> intensity(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(
                name, fallback, QuantityText::parseLuminousIntensity, LuminousIntensity::inCandela, lo, hi, "cd");
    }

    static Key<Double> ratio(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Key::parseRatio, ratio -> ratio, lo, hi, "");
    }

    /** A number in the one unit named, for units that no value type has; without a unit, a plain number. */
    static Key<Double> number(String name, @Nullable String fallback, double lo, double hi, String unit) {
        return new Key<>(name, fallback, text -> parseNumber(text, unit), number -> number, lo, hi, unit);
    }

    private static Double parseRatio(String text) {
        boolean percent = text.endsWith("%");
        String number = (percent ? text.substring(0, text.length() - 1) : text).strip();
        if (!number.matches(DECIMAL)) {
            throw new IllegalArgumentException("not a ratio; write it like 0.1 or 10 %");
        }
        return Double.parseDouble(number) / (percent ? 100 : 1);
    }

    private static Double parseNumber(String text, String unit) {
        String number = text.substring(0, text.length() - (text.endsWith(unit) ? unit.length() : 0))
                .strip();
        if (!text.endsWith(unit) || !number.matches("-?" + DECIMAL)) {
            throw new IllegalArgumentException("not a number" + (unit.isEmpty() ? "" : " in " + unit)
                    + "; write it like " + ("2 " + unit).strip());
        }
        return Double.parseDouble(number);
    }
}
