package io.github.stoplag.examples.teach;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.units.UnitTable;
import io.github.stoplag.worked.Amount;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a number with a unit in a question measures, and how it is read. */
@SuppressWarnings("ImmutableEnumChecker") // a table of units does not change
enum Measure {
    SPEED(UnitTable.SPEED, Unit.MPS, Speed::inMps),
    DISTANCE(UnitTable.DISTANCE, Unit.METRE, Distance::inMetres),
    TIME(UnitTable.TIME_SPAN, Unit.SECOND, TimeSpan::inSeconds),
    DECELERATION(UnitTable.DECELERATION, Unit.MPS2, Deceleration::inMps2),
    FRICTION(UnitTable.FRICTION_COEFFICIENT, Unit.NONE, FrictionCoefficient::inRatio),
    GRADE(UnitTable.GRADE, Unit.NONE, Grade::inRatio),
    POWER(UnitTable.POWER, Unit.WATT, Power::inWatts),
    VOLTAGE(UnitTable.VOLTAGE, Unit.VOLT, Voltage::inVolts),
    CURRENT(UnitTable.CURRENT, Unit.AMPERE, Current::inAmperes),
    RESISTANCE(UnitTable.RESISTANCE, Unit.OHM, Resistance::inOhms),
    TEMPERATURE(UnitTable.TEMPERATURE, Unit.KELVIN, Temperature::inKelvin),
    PERCENT(new Written("%")),
    THERMAL_RESISTANCE(new Written("K/W"));

    private static final Pattern NUMBER =
            Pattern.compile("[+-]?(?:[0-9]+(?:\\.[0-9]+)?|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?");
    private static final Pattern UP_OR_DOWN = Pattern.compile("(.*\\S) +(up|uphill|down|downhill)");
    private static final MathContext DIGITS = new MathContext(10);

    private final Reading reading;

    <V> Measure(UnitTable<V> table, Unit unit, ToDoubleFunction<V> in) {
        this(new Tabled<>(table, unit, in));
    }

    Measure(Reading reading) {
        this.reading = reading;
    }

    /** Reads a text in one of the units of a quantity; the text has passed {@link #fits}. */
    private interface Reading {
        Given read(String text);

        String units();
    }

    private record Tabled<V>(UnitTable<V> table, Unit unit, ToDoubleFunction<V> in) implements Reading {
        @Override
        public Given read(String text) {
            V value = table.parse(text);
            try {
                Matcher number = NUMBER.matcher(text);
                int end = number.lookingAt() ? number.end() : 0;
                return Given.of(Double.parseDouble(text.substring(0, end)), Unit.of(text.substring(end)));
            } catch (IllegalArgumentException e) {
                // a unit in which no solution is worked, such as g: the solution goes on from SI
                BigDecimal si = BigDecimal.valueOf(in.applyAsDouble(value)).round(DIGITS);
                return Given.of(si.doubleValue(), unit, "stated as " + text);
            }
        }

        @Override
        public String units() {
            String units = String.join(
                    ", ", table.units().stream().filter(each -> !each.isEmpty()).toList());
            return units.isEmpty() ? "a plain number" : "in " + units;
        }
    }

    private record Written(String symbol) implements Reading {
        @Override
        public Given read(String text) {
            Amount amount = Amount.parse(text);
            if (!amount.unit().symbol().equals(symbol)) {
                throw new IllegalArgumentException("\"" + text + "\" must be " + units());
            }
            return new Given(amount, "stated");
        }

        @Override
        public String units() {
            return "in " + symbol;
        }
    }

    /** Says whether a text is a number with a unit of this quantity, be the number possible or not. */
    boolean fits(String text) {
        String plain = this == GRADE ? slope(text) : text;
        Matcher number = NUMBER.matcher(plain);
        if (!number.lookingAt()) {
            return false;
        }
        String unit = plain.substring(number.end()).strip();
        if (this == GRADE && unit.isEmpty()) {
            return false;
        }
        try {
            reading.read("1 " + unit);
            return true;
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /**
     * Reads a text that {@link #fits}.
     *
     * @throws IllegalArgumentException if the number is out of range
     */
    Given read(String text) {
        return reading.read(this == GRADE ? signed(text) : text);
    }

    /** Names the units. */
    String units() {
        return reading.units();
    }

    private static String slope(String text) {
        Matcher direction = UP_OR_DOWN.matcher(text);
        return direction.matches() ? direction.group(1) : text;
    }

    private static String signed(String text) {
        Matcher direction = UP_OR_DOWN.matcher(text);
        boolean sign = text.startsWith("-") || text.startsWith("+");
        if (direction.matches() == sign) {
            throw new IllegalArgumentException(
                    "grade \"" + text + "\": say which way it goes, once: 3 % down, 3 % up, or -3 % for down");
        }
        return sign ? text : (direction.group(2).startsWith("down") ? "-" : "") + direction.group(1);
    }
}
