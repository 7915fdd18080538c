package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * What another voltage does to a filament lamp: from the heat balance, and by the published power laws, side by side.
 *
 * <p>Published: x/x0 = (U/U0)^k. Physics: the settled lamp at U over that at U0, and its local exponent k = d ln x/d ln
 * U at U0, taken over ±1 %. Life has no physics here: it hangs on evaporation and on how a maker winds the coil.
 *
 * <p>Symbols: U0 the lamp's rated voltage; light behind a clear lens. The published laws hold near the rated voltage
 * only, say within 10 % (common practice, no source); the exponent of a bare filament's light falls from 4.1 at 2000 K
 * to 3.1 at 2800 K. Published rows and their standing in {@code rerating_exponents.csv}.
 */
public final class VoltageRerating {
    /** What changes with the voltage. */
    public enum Quantity {
        /** Luminous flux or intensity. */
        LIGHT,
        /** Electrical power. */
        POWER,
        /** Current. */
        CURRENT,
        /** Light over power. */
        EFFICACY,
        /** The temperature of the black body of the same colour. */
        COLOUR_TEMPERATURE,
        /** Life until the filament breaks. */
        LIFE
    }

    /**
     * A published power law.
     *
     * @param exponentLow the exponent k, or the lower end of its range
     * @param exponentHigh the upper end
     * @param source who published it
     */
    public record Law(double exponentLow, double exponentHigh, Source source) {

        /**
         * Refuses nulls.
         *
         * @param exponentLow the exponent k, or the lower end of its range
         * @param exponentHigh the upper end
         * @param source who published it
         * @throws NullPointerException if one that is required is null
         */
        public Law {
            Objects.requireNonNull(source, "source");
        }

        private Published at(double relative) {
            double a = Math.pow(relative, exponentLow);
            double b = Math.pow(relative, exponentHigh);
            return new Published(exponentLow, exponentHigh, Math.min(a, b), Math.max(a, b), source);
        }
    }

    /**
     * A published power law at one voltage.
     *
     * @param exponentLow the exponent, or the lower end of its range
     * @param exponentHigh the upper end
     * @param lowRatio the smaller of (U/U0)^k over the range
     * @param highRatio the greater
     * @param source who published it
     */
    public record Published(double exponentLow, double exponentHigh, double lowRatio, double highRatio, Source source) {

        /**
         * Refuses nulls.
         *
         * @param exponentLow the exponent, or the lower end of its range
         * @param exponentHigh the upper end
         * @param lowRatio the smaller of (U/U0)^k over the range
         * @param highRatio the greater
         * @param source who published it
         * @throws NullPointerException if one that is required is null
         */
        public Published {
            Objects.requireNonNull(source, "source");
        }
    }

    /**
     * One quantity at one voltage.
     *
     * @param quantity what
     * @param physicsRatio x/x0 from the heat balance, nothing for life
     * @param physicsExponent the local exponent at the rated voltage, nothing for life
     * @param published the published laws, best standing first
     */
    public record Row(
            Quantity quantity, OptionalDouble physicsRatio, OptionalDouble physicsExponent, List<Published> published) {

        /**
         * Refuses nulls.
         *
         * @param quantity what
         * @param physicsRatio x/x0 from the heat balance, nothing for life
         * @param physicsExponent the local exponent at the rated voltage, nothing for life
         * @param published the published laws, best standing first
         * @throws NullPointerException if one that is required is null
         */
        public Row {
            Objects.requireNonNull(physicsExponent, "physicsExponent");
            Objects.requireNonNull(physicsRatio, "physicsRatio");
            Objects.requireNonNull(published, "published");
            Objects.requireNonNull(quantity, "quantity");
        }
    }

    private static final Map<Quantity, List<Law>> LAWS = read();
    private static final double STEP = 0.01;

    private final FilamentLamp lamp;

    private VoltageRerating(FilamentLamp lamp) {
        this.lamp = lamp;
    }

    /**
     * Gives the published power laws of a quantity.
     *
     * @param quantity the quantity
     * @return its laws, best standing first
     */
    public static List<Law> laws(Quantity quantity) {
        Objects.requireNonNull(quantity, "quantity");
        return LAWS.getOrDefault(quantity, List.of());
    }

    private static Map<Quantity, List<Law>> read() {
        Table table = Table.read(VoltageRerating.class, "rerating_exponents.csv");
        Map<Quantity, List<Law>> laws = new EnumMap<>(Quantity.class);
        table.groups("quantity")
                .forEach((quantity, rows) -> laws.put(
                        Quantity.valueOf(quantity),
                        rows.stream()
                                .map(row -> new Law(
                                        table.number(row, "exponent_low"),
                                        table.number(row, "exponent_high"),
                                        table.source(row)))
                                .sorted((a, b) -> Boolean.compare(
                                        a.source().standing() != Standing.SEEN,
                                        b.source().standing() != Standing.SEEN))
                                .toList()));
        return Collections.unmodifiableMap(laws);
    }

    /**
     * Rerates a lamp.
     *
     * @param lamp the lamp
     * @return its rerating
     */
    public static VoltageRerating of(FilamentLamp lamp) {
        Objects.requireNonNull(lamp, "lamp");
        return new VoltageRerating(lamp);
    }

    /**
     * Compares physics and publications at a voltage.
     *
     * @param voltage U at the lamp, above 0
     * @return one row a quantity
     * @throws IllegalArgumentException if the filament would not settle below 3600 K or not start above 300 K
     */
    public List<Row> at(Voltage voltage) {
        return Arrays.stream(Quantity.values())
                .map(quantity -> row(quantity, voltage))
                .toList();
    }

    /**
     * Compares physics and publications for one quantity.
     *
     * @param quantity the quantity
     * @param voltage U at the lamp, above 0
     * @return the row
     * @throws IllegalArgumentException if the filament would not settle below 3600 K or the voltage is 0 V
     */
    public Row row(Quantity quantity, Voltage voltage) {
        double ratedV = lamp.ratedVoltage().inVolts();
        double relative = voltage.inVolts() / ratedV;
        if (!(relative > 0)) {
            throw new IllegalArgumentException(
                    "voltage to rerate " + lamp.label() + " to must be above 0 V, got " + voltage);
        }
        List<Published> published =
                laws(quantity).stream().map(law -> law.at(relative)).toList();
        if (quantity == Quantity.LIFE) {
            return new Row(quantity, OptionalDouble.empty(), OptionalDouble.empty(), published);
        }
        ToDoubleFunction<FilamentOnset> value = value(quantity);
        double rated = value.applyAsDouble(at(ratedV));
        double exponent =
                Math.log(value.applyAsDouble(at(ratedV * (1 + STEP))) / value.applyAsDouble(at(ratedV * (1 - STEP))))
                        / Math.log((1 + STEP) / (1 - STEP));
        return new Row(
                quantity,
                OptionalDouble.of(value.applyAsDouble(at(voltage.inVolts())) / rated),
                OptionalDouble.of(exponent),
                published);
    }

    private FilamentOnset at(double volt) {
        return lamp.switchOn(SupplyConditions.of(Voltage.volts(volt)));
    }

    private static ToDoubleFunction<FilamentOnset> value(Quantity quantity) {
        return switch (quantity) {
            case LIGHT -> FilamentOnset::relativeToRated;
            case POWER -> onset -> onset.steadyPower().inWatts();
            case CURRENT -> onset -> onset.steadyCurrent().inAmperes();
            case EFFICACY ->
                onset -> onset.relativeToRated() / onset.steadyPower().inWatts();
            case COLOUR_TEMPERATURE ->
                onset -> Photometry.colourTemperature(onset.steadyTemperature()).inKelvin();
            case LIFE -> throw new IllegalArgumentException("life has no physics here");
        };
    }
}
