package io.github.stoplag.examples.teach;

import io.github.stoplag.quantity.NamedUnit;
import io.github.stoplag.quantity.NamedUnit.Use;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Units;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.Unit;
import io.github.stoplag.worked.UnitSystem;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What a number with a unit in a question measures, and how it is read. */
@SuppressWarnings("ImmutableEnumChecker") // a table of units does not change
enum Measure {
    SPEED(Units.SPEED, Unit.MPS, Ranges.SPEED::check),
    DISTANCE(Units.DISTANCE, Unit.METRE, Ranges.DISTANCE::check),
    TIME(Units.TIME, Unit.SECOND, Ranges.TIME::check),
    DECELERATION(Units.DECELERATION, Unit.MPS2, Ranges.DECELERATION::check),
    FRICTION(Units.FRICTION_COEFFICIENT, Unit.NONE, Ranges.FRICTION::check),
    GRADE(Units.GRADE, Unit.NONE, Ranges.GRADE::check),
    POWER(Units.POWER, Unit.WATT, Ranges.POWER::check),
    VOLTAGE(Units.VOLTAGE, Unit.VOLT, Ranges.VOLTAGE::check),
    CURRENT(Units.CURRENT, Unit.AMPERE, Ranges.CURRENT::check),
    RESISTANCE(Units.RESISTANCE, Unit.OHM, Ranges.RESISTANCE::check),
    TEMPERATURE(Units.TEMPERATURE, Unit.KELVIN, Ranges.TEMPERATURE::check),
    PRESSURE(Units.PRESSURE, Unit.of("Pa"), Ranges.PRESSURE::check),
    MASS(Units.MASS, Unit.of("kg"), mass -> mass),
    PERCENT(Units.SHARE, Unit.NONE, share -> share),
    COUNT(Units.NUMBER, Unit.NONE, count -> count),
    THERMAL_RESISTANCE(Units.THERMAL_RESISTANCE, Unit.KELVIN_PER_WATT, resistance -> resistance);

    private static final Pattern UP_OR_DOWN = Pattern.compile("(.*\\S) +(up|uphill|down|downhill)");
    private static final MathContext DIGITS = new MathContext(10);

    private final Units units;
    private final Unit si;
    private final DoubleUnaryOperator check;

    Measure(Units units, Unit si, DoubleUnaryOperator check) {
        this.units = units;
        this.si = si;
        this.check = check;
    }

    /** Says whether a text is a number with a unit of this quantity, be the number possible or not. */
    boolean fits(String text) {
        String plain = this == GRADE ? slope(text) : text;
        // most texts are of another quantity: no need for the words of a refusal
        Matcher glued = QuestionText.GLUED.matcher(plain);
        if (this != DISTANCE
                && (!glued.matches() || units.find(glued.group(2).strip()).isEmpty())) {
            return false;
        }
        try {
            // 0.7 may be a friction coefficient; a grade or a share needs its %
            NamedUnit unit = units.read(plain).unit();
            return this == FRICTION || this == COUNT || !unit.symbol().isEmpty();
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
        String plain = this == GRADE ? signed(text) : text;
        Units.Reading reading = units.read(plain);
        double value = check.applyAsDouble(reading.si());
        try {
            return Given.of(reading.number(), Unit.of(reading.unit().symbol()));
        } catch (IllegalArgumentException e) {
            // a unit in which no solution is worked, such as g: the solution goes on from SI
            return Given.of(BigDecimal.valueOf(value).round(DIGITS).doubleValue(), si, "stated as " + plain);
        }
    }

    /**
     * The system a text that {@link #fits} is stated in; none for knots, the acceleration of gravity and what is alike
     * in both.
     */
    Optional<UnitSystem> system(String text) {
        if (units.list().stream().noneMatch(unit -> unit.use() == Use.US_CUSTOMARY)) {
            return Optional.empty();
        }
        return switch (units.read(text).unit().use()) {
            case METRIC -> Optional.of(UnitSystem.METRIC);
            case US_CUSTOMARY -> Optional.of(UnitSystem.US_CUSTOMARY);
            case BOTH -> Optional.empty();
        };
    }

    Units table() {
        return units;
    }

    Unit si() {
        return si;
    }

    /** Names the units. */
    String units() {
        String symbols = units.list().stream()
                .map(NamedUnit::symbol)
                .filter(each -> !each.isEmpty())
                .collect(Collectors.joining(", "));
        return symbols.isEmpty() ? "a plain number" : "in " + symbols;
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
