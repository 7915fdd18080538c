package io.github.stoplag.worked;

import io.github.stoplag.quantity.Units;
import java.math.BigDecimal;

/**
 * The system of units in which a worked solution calculates; electrical and thermal units are SI in both, but for an
 * answer in °F.
 */
public enum UnitSystem {
    /** Metres and seconds; speeds of vehicles are answered in km/h. */
    METRIC("metric", Unit.KMH),
    /** Metres and seconds; speeds of vehicles are answered in mph, as in the United Kingdom. */
    BRITISH("UK", Unit.MPH),
    /** Feet and seconds; speeds of vehicles are answered in mph. */
    US_CUSTOMARY("US customary", Unit.MPH);

    private static final BigDecimal METRES_PER_FOOT = Units.DISTANCE.unit("ft").numerator();

    private final String text;

    @SuppressWarnings("ImmutableEnumChecker") // a unit has final fields alone, of immutable types
    private final Unit road;

    UnitSystem(String text, Unit road) {
        this.text = text;
        this.road = road;
    }

    /** Whether lengths are in metres. */
    boolean isMetric() {
        return this != US_CUSTOMARY;
    }

    /**
     * Gives a short name for files and options.
     *
     * @return metric, uk or us
     */
    public String id() {
        return switch (this) {
            case METRIC -> "metric";
            case BRITISH -> "uk";
            case US_CUSTOMARY -> "us";
        };
    }

    /**
     * Gives the unit in which this system speaks of the speed of a vehicle.
     *
     * @return km/h or mph
     */
    public Unit roadSpeed() {
        return road;
    }

    /**
     * Gives the unit of length in which it calculates.
     *
     * @return m or ft
     */
    public Unit length() {
        return this == US_CUSTOMARY ? Unit.FOOT : Unit.METRE;
    }

    /**
     * Gives the unit of speed in which it calculates.
     *
     * @return m/s or ft/s
     */
    public Unit speed() {
        return this == US_CUSTOMARY ? Unit.FTPS : Unit.MPS;
    }

    /**
     * Gives the unit of deceleration in which it calculates.
     *
     * @return m/s² or ft/s²
     */
    public Unit deceleration() {
        return this == US_CUSTOMARY ? Unit.FTPS2 : Unit.MPS2;
    }

    /** The unit of a temperature that is answered: that of the thermometer which a given temperature was read from. */
    Unit temperature(Given read) {
        return this == US_CUSTOMARY && read.amount().unit() == Unit.FAHRENHEIT ? Unit.FAHRENHEIT : Unit.CELSIUS;
    }

    /** The unit of a dimension in which numbers can be put into a formula without a factor. */
    Unit coherent(Dimension dimension) {
        return Unit.all().stream()
                .filter(unit -> unit.dimension().equals(dimension) && isCoherent(unit))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no unit of the list measures " + dimension));
    }

    boolean isCoherent(Unit unit) {
        // a number times a factor other than 1 would need that factor in every formula
        return (this == US_CUSTOMARY && unit.dimension().isOfMotion())
                ? unit.is(METRES_PER_FOOT.pow(unit.dimension().length()))
                : unit.isSi();
    }

    @Override
    public String toString() {
        return text;
    }
}
