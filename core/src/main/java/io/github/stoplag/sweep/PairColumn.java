package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.quantity.Range;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Units;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The columns that a plan of pairs may have: axis, unit, range, meaning, and what holds where a column is absent.
 * Models, plan files, statistics and messages read this list.
 *
 * <p>The order is that in which a plan file has its axes, and so decides which random numbers each gets. A lamp's
 * column stands once for each lamp, with its name in place of {@code <lamp>}.
 */
public enum PairColumn {
    /** The leader's speed. */
    SPEED("speed", "mps", Units.SPEED, Ranges.SPEED, "the leader's speed", "needed"),
    /** The follower's speed. */
    FOLLOWER_SPEED(
            "follower_speed",
            "mps",
            Units.SPEED,
            Ranges.SPEED.as("follower speed"),
            "the follower's speed",
            "the leader's"),
    /** The gap. */
    GAP("gap", "m", Units.DISTANCE, Ranges.GAP, "the follower's front to the leader's rear", "this or time_gap needed"),
    /** The time gap. */
    TIME_GAP("time_gap", "s", Units.TIME, Ranges.TIME_GAP, "gap over the follower's speed", "this or gap needed"),
    /** The perception-reaction time. */
    REACTION(
            "reaction",
            "s",
            Units.TIME,
            Ranges.REACTION,
            "perception-reaction time from the light's detection to the foot on the brake",
            "needed"),
    /** The leader's full deceleration. */
    LEADER_DECEL(
            "leader_decel",
            "mps2",
            Units.DECELERATION,
            Ranges.DECELERATION.as("leader deceleration"),
            "the leader's full deceleration",
            "the follower's"),
    /** The follower's full deceleration. */
    FOLLOWER_DECEL(
            "follower_decel",
            "mps2",
            Units.DECELERATION,
            Ranges.DECELERATION.as("follower deceleration"),
            "the follower's full deceleration",
            "needed"),
    /** The brakes' dead time. */
    DEAD_TIME(
            "brake_dead_time", "s", Units.TIME, Ranges.DEAD_TIME, "pedal to first deceleration, both vehicles", "0 s"),
    /** The brakes' build-up time. */
    BUILD_UP(
            "brake_build_up",
            "s",
            Units.TIME,
            Ranges.BUILD_UP,
            "first to full deceleration, rising evenly, both vehicles",
            "0 s"),
    /** The road's friction coefficient. */
    FRICTION(
            "friction",
            "ratio",
            Units.FRICTION_COEFFICIENT,
            Ranges.GRIP,
            "friction coefficient of the road, which limits both decelerations",
            "no limit"),
    /** The road's grade. */
    GRADE("grade", "ratio", Units.GRADE, Ranges.GRADE, "rise over run, uphill positive; needs friction", "level"),
    /** The supply voltage of lamps that are modelled. */
    SUPPLY(
            "supply",
            "v",
            Units.VOLTAGE,
            Ranges.SUPPLY,
            "supply of the lamps' circuit, for filament lamps that are modelled",
            "needed for such lamps"),
    /** The series resistance of lamps that are modelled. */
    SERIES_RESISTANCE(
            "series_resistance",
            "ohm",
            Units.RESISTANCE,
            Ranges.SERIES_RESISTANCE,
            "switch and harness in series with the lamp, for filament lamps that are modelled",
            "0 ohm"),
    /** The temperature around lamps that are modelled. */
    AMBIENT(
            "ambient",
            "k",
            Units.TEMPERATURE,
            Ranges.AMBIENT,
            "temperature around the lamp, cold until switched on, for filament lamps that are modelled",
            "26.85 °C"),
    /** The coil factor of filaments that are modelled. */
    COIL_FACTOR(
            "coil_factor",
            "",
            Units.NUMBER,
            Ranges.COIL_FACTOR,
            "radiating over wire surface of a filament that is modelled",
            "the lamp's own"),
    /** The gas-loss share of filaments that are modelled. */
    GAS_LOSS(
            "gas_loss",
            "ratio",
            Units.SHARE,
            Ranges.GAS_LOSS,
            "share of the power lost to gas and supports in a filament that is modelled",
            "the lamp's own"),
    /** A lamp's latency. */
    LATENCY(
            "lamp_latency_<lamp>",
            "s",
            Units.TIME,
            Ranges.LATENCY,
            "from the lamp's circuit closing to its light being detected",
            "needed for each lamp whose latency does not follow from others"),
    /** Whether the driver responds. */
    RESPONDS(
            "responds",
            "ratio",
            Units.SHARE,
            Ranges.PROBABILITY.as("responds"),
            "1 where the follower responds to the lamp, 0 where it never brakes",
            "1");

    private static final Set<PairColumn> CIRCUIT = EnumSet.range(SUPPLY, GAS_LOSS);
    private static final String LAMP = "<lamp>";
    private static final String NEEDED = "needed";

    private final String axis;
    private final String unit;

    @SuppressWarnings("ImmutableEnumChecker") // one of the table's constants
    private final Units units;

    @SuppressWarnings("ImmutableEnumChecker") // a record of numbers and texts
    private final Range range;

    private final String meaning;
    private final String absent;

    PairColumn(String axis, String unit, Units units, Range range, String meaning, String absent) {
        this.axis = axis;
        this.unit = unit;
        this.units = units;
        this.range = range;
        this.meaning = meaning;
        this.absent = absent;
    }

    /**
     * Gives the name of its axis.
     *
     * @return for example {@code time_gap}; that of a lamp's column has {@code <lamp>} in it
     */
    public String axis() {
        return axis;
    }

    /**
     * Gives the name of its axis for a lamp.
     *
     * @param lamp the lamp; plays no part in a column that lamps share
     * @return for example {@code lamp_latency_led}
     */
    public String axis(String lamp) {
        Objects.requireNonNull(lamp, "lamp");
        return axis.replace(LAMP, lamp);
    }

    /**
     * Gives the unit as in column names.
     *
     * @return for example {@code mps2}; empty for a plain number
     */
    public String unit() {
        return unit;
    }

    /**
     * Gives the name of its column.
     *
     * @return axis and unit, for example {@code time_gap_s}
     */
    public String column() {
        return unit.isEmpty() ? axis : axis + "_" + unit;
    }

    /**
     * Gives the name of its column for a lamp.
     *
     * @param lamp the lamp
     * @return for example {@code lamp_latency_led_s}
     */
    public String column(String lamp) {
        Objects.requireNonNull(lamp, "lamp");
        return column().replace(LAMP, lamp);
    }

    /**
     * Gives the units that text may state its values in; SI is the column's own.
     *
     * @return the units
     */
    public Units units() {
        return units;
    }

    /**
     * Gives the values it may take; others are rejected.
     *
     * @return the range
     */
    public Range range() {
        return range;
    }

    /**
     * Says what it means.
     *
     * @return in words
     */
    public String meaning() {
        return meaning;
    }

    /**
     * Says what holds where the column is absent.
     *
     * @return in words, {@code needed} if it must not be
     */
    public String absent() {
        return absent;
    }

    /**
     * Says whether every plan of pairs must have it, whatever else it has.
     *
     * @return true if it must
     */
    public boolean isNeeded() {
        return absent.equals(NEEDED);
    }

    /**
     * Says whether there is one for each lamp.
     *
     * @return true if its name holds a lamp's
     */
    public boolean isOfLamp() {
        return axis.contains(LAMP);
    }

    /**
     * Says whether it is a quantity of the circuit or the filament that the latency of modelled lamps follows from.
     *
     * @return true for supply, resistance, temperature and what a filament is like
     */
    public boolean isOfCircuit() {
        return CIRCUIT.contains(this);
    }

    /**
     * Makes a drawn axis of it.
     *
     * @param distribution how the values spread, in the column's unit
     * @return the axis, named rightly
     */
    public Axis drawn(Distribution distribution) {
        Objects.requireNonNull(distribution, "distribution");
        return Axis.drawn(axis, unit, distribution);
    }

    /**
     * Gives the column of the gap that a plan has.
     *
     * @param plan the plan
     * @return {@link #GAP} or {@link #TIME_GAP}; the latter too if it has neither
     */
    public static PairColumn gapOf(Plan plan) {
        return plan.columns().contains(GAP.column()) ? GAP : TIME_GAP;
    }

    /**
     * Finds the column of a name.
     *
     * @param column a column's name, that of a lamp among them
     * @return the column, if it is one of these
     */
    public static Optional<PairColumn> of(String column) {
        Objects.requireNonNull(column, "column");
        return Stream.of(values()).filter(known -> known.matches(column)).findFirst();
    }

    private boolean matches(String name) {
        int lamp = column().indexOf(LAMP);
        return lamp < 0
                ? name.equals(column())
                : name.startsWith(column().substring(0, lamp))
                        && name.endsWith(column().substring(lamp + LAMP.length()))
                        && name.length() > column().length() - LAMP.length();
    }

    /** Names the columns of it for some lamps. */
    List<String> columns(List<String> lamps) {
        return isOfLamp() ? lamps.stream().map(this::column).toList() : List.of(column());
    }

    /** Those that a model of pairs itself takes, in the order of the list. */
    static List<String> taken(List<String> lamps, List<String> there) {
        List<String> all = new ArrayList<>();
        for (PairColumn column : values()) {
            column.columns(lamps).stream()
                    .filter(name -> !column.isOfCircuit() && there.contains(name))
                    .forEach(all::add);
        }
        return all;
    }

    /** Says why a value is refused. */
    String refusal() {
        return range.name() + " must be in " + range;
    }

    @Override
    public String toString() {
        return column() + ": " + meaning + ", in " + range + "; if absent: " + absent;
    }
}
