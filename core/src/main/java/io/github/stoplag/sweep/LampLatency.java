package io.github.stoplag.sweep;

import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The latency of a lamp that a plan describes instead of giving it: one moment, or a table over what the plan leaves
 * open of circuit and filament.
 *
 * @param fixedS the latency in seconds, if nothing is open
 * @param table the table, if something is
 * @param origin what it rests on: lamp and eye
 * @param followsCircuit whether it follows from columns as {@link PairColumn#isOfCircuit}, be they constant
 */
public record LampLatency(double fixedS, Optional<LatencyTable> table, String origin, boolean followsCircuit) {
    /** How far a table may be from the simulation. */
    public static final TimeSpan ACCURACY = TimeSpan.seconds(2e-5);

    private static final double PER_SECOND = 1e9;

    /**
     * Refuses nulls.
     *
     * @param fixedS the latency in seconds, if nothing is open
     * @param table the table, if something is
     * @param origin what it rests on: lamp and eye
     * @param followsCircuit whether it follows from columns as {@link PairColumn#isOfCircuit}, be they constant
     * @throws NullPointerException if one that is required is null
     */
    public LampLatency {
        Objects.requireNonNull(origin, "origin");
        Objects.requireNonNull(table, "table");
    }

    /**
     * Takes a moment, rounded to 1 ns so that it has the same bits on every JDK.
     *
     * @param latency from the circuit closing to the light being detected
     * @param origin what it rests on
     * @return the latency
     */
    public static LampLatency fixed(TimeSpan latency, String origin) {
        Objects.requireNonNull(latency, "latency");
        Objects.requireNonNull(origin, "origin");
        return new LampLatency(
                Math.rint(latency.inSeconds() * PER_SECOND) / PER_SECOND, Optional.empty(), origin, false);
    }

    /**
     * Tabulates a filament lamp over what a plan varies of it.
     *
     * @param known the lamp with everything known
     * @param intervals the values that a plan's columns of the circuit can take
     * @param origin what it rests on
     * @return the table, or one moment if no interval has any width
     * @throws IllegalArgumentException if an interval is impossible for the lamp, or the lamp is not seen although
     *     nothing is open
     */
    public static LampLatency following(
            FilamentUnknowns known, Map<PairColumn, LampModels.Span> intervals, String origin) {
        Objects.requireNonNull(intervals, "intervals");
        Objects.requireNonNull(origin, "origin");
        FilamentUnknowns open = known;
        for (Map.Entry<PairColumn, LampModels.Span> entry : new TreeMap<>(intervals).entrySet()) {
            open = opened(
                    open,
                    entry.getKey(),
                    entry.getValue().lo(),
                    entry.getValue().hi());
        }
        if (open.axes().isEmpty()) {
            TimeSpan seen = open.simulate().orElseThrow();
            return new LampLatency(fixed(seen, origin).fixedS, Optional.empty(), origin, true);
        }
        return new LampLatency(Double.NaN, Optional.of(open.table(ACCURACY)), origin, true);
    }

    private static FilamentUnknowns opened(FilamentUnknowns lamp, PairColumn column, double lo, double hi) {
        return switch (column) {
            case SUPPLY -> lamp.supply(Voltage.volts(lo), Voltage.volts(hi));
            case SERIES_RESISTANCE -> lamp.seriesResistance(Resistance.ohms(lo), Resistance.ohms(hi));
            case AMBIENT -> lamp.ambientTemperature(Temperature.kelvin(lo), Temperature.kelvin(hi));
            case COIL_FACTOR -> lamp.coilFactor(lo, hi);
            case GAS_LOSS -> lamp.gasLossShare(lo, hi);
            default -> throw new IllegalArgumentException("a filament does not depend on " + column.column());
        };
    }
}
