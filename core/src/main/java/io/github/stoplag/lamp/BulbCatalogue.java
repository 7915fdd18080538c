package io.github.stoplag.lamp;

import io.github.stoplag.quantity.LuminousFlux;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Signal bulbs by category: those of UN Regulation No. 37 and American trade numbers, each row with its standing.
 *
 * <p>The rows stand in {@code bulbs.csv}. No regulation tells what a bulb is filled with: gas from 15 W up is common
 * practice, below that the fill is assumed and results say what the other one would change. For a trade number the flux
 * is 4π times its mean spherical candela. Where a bulb is coloured, the clear flux is that of the same filament in
 * clear glass.
 */
public final class BulbCatalogue {
    private static final Catalogue<BulbRating> PUBLISHED =
            Catalogue.read("bulb", BulbCatalogue.class, "bulbs.csv", BulbCatalogue::rating, BulbRating::toString);

    private static final String CAR = " " + Voltage.volts(12);

    private BulbCatalogue() {}

    /** {@return all bulbs, in the order of the table} */
    public static List<BulbRating> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a bulb for 12 V vehicles.
     *
     * @param category its name, for example {@code P21W} or {@code 1157}
     * @return the bulb
     * @throws IllegalArgumentException if there is none; the message offers the nearest
     */
    public static BulbRating published(String category) {
        Objects.requireNonNull(category, "category");
        return PUBLISHED.get(category + CAR);
    }

    /**
     * Finds a bulb.
     *
     * @param category its name
     * @param system the nominal voltage of the vehicle
     * @return the bulb
     * @throws IllegalArgumentException if there is none; the message offers the nearest
     */
    public static BulbRating published(String category, Voltage system) {
        Objects.requireNonNull(category, "category");
        Objects.requireNonNull(system, "system");
        return PUBLISHED.get(category + " " + system);
    }

    private static BulbRating rating(Table table, Map<String, String> row) {
        return new BulbRating(
                table.text(row, "category"),
                Voltage.volts(table.number(row, "system_V")),
                table.text(row, "colour"),
                BulbFill.valueOf(table.text(row, "fill")),
                Standing.of(table.text(row, "fill_standing")),
                Standing.of(table.text(row, "power_standing")),
                filament(table, row, "major"),
                table.text(row, "minor_W").isEmpty() ? Optional.empty() : Optional.of(filament(table, row, "minor")));
    }

    private static BulbFilament filament(Table table, Map<String, String> row, String which) {
        double fluxLm = table.number(row, which + "_lm");
        return new BulbFilament(
                Power.watts(table.number(row, which + "_nominal_W")),
                Voltage.volts(table.number(row, which + "_V")),
                Power.watts(table.number(row, which + "_W")),
                table.text(row, which + "_rule"),
                LuminousFlux.lumens(fluxLm),
                optional(table, row, which + "_lm_tolerance_percent"),
                LuminousFlux.lumens(optional(table, row, which + "_clear_lm").orElse(fluxLm)),
                optional(table, row, which + "_life_h"),
                table.source(row));
    }

    private static Optional<Double> optional(Table table, Map<String, String> row, String column) {
        return table.text(row, column).isEmpty() ? Optional.empty() : Optional.of(table.number(row, column));
    }
}
