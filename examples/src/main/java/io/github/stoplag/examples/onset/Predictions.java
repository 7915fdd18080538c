package io.github.stoplag.examples.onset;

import io.github.stoplag.lamp.BulbCatalogue;
import io.github.stoplag.lamp.BulbFilament;
import io.github.stoplag.lamp.BulbRating;
import io.github.stoplag.lamp.FilamentLamp;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.lamp.VoltageRerating;
import io.github.stoplag.source.Table;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleSupplier;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * Every published figure with the library's own: the program's table, the voltage exponents, the fluxes of the
 * catalogue.
 */
final class Predictions {
    private static final String INPUT = "input";

    private Predictions() {}

    static List<Prediction> all() {
        return Stream.of(tabled(), exponents(), fluxes()).flatMap(List::stream).toList();
    }

    private static List<Prediction> tabled() {
        Map<String, DoubleSupplier> computed = new HashMap<>(LampPredictions.computed());
        computed.putAll(EyePredictions.computed());
        computed.putAll(TungstenPredictions.computed());
        Table table = Table.read(Predictions.class, "published_onset.csv");
        return table.rows().stream()
                .map(row -> prediction(table, row, computed))
                .toList();
    }

    private static Prediction prediction(Table table, Map<String, String> row, Map<String, DoubleSupplier> computed) {
        String quantity = table.text(row, "quantity");
        double published = table.number(row, "published");
        String unit = table.text(row, "unit");
        if (table.text(row, "role").equals(INPUT)) {
            return Prediction.input(quantity, published, unit, table.source(row));
        }
        DoubleSupplier supplier = computed.get(table.text(row, "id"));
        if (supplier == null) {
            throw new IllegalStateException("published_onset.csv: nothing computes " + table.text(row, "id"));
        }
        return Prediction.of(quantity, published, supplier.getAsDouble(), unit, table.source(row));
    }

    /**
     * Sets the published power laws of rerating beside the heat balance of the laboratory's bulb; life has no physics.
     */
    private static List<Prediction> exponents() {
        FilamentLamp bulb = LaboratoryLamps.bulb();
        List<Prediction> predictions = new ArrayList<>();
        for (VoltageRerating.Row row : VoltageRerating.of(bulb).at(bulb.ratedVoltage())) {
            if (row.physicsExponent().isPresent()) {
                String name = "exponent of "
                        + row.quantity().name().toLowerCase(Locale.ROOT).replace('_', ' ') + " on voltage, at 12.8 V";
                for (VoltageRerating.Published published : row.published()) {
                    DoubleStream.of(published.exponentLow(), published.exponentHigh())
                            .distinct()
                            .forEach(exponent -> predictions.add(Prediction.of(
                                    name, exponent, row.physicsExponent().getAsDouble(), "1", published.source())));
                }
            }
        }
        return predictions;
    }

    /** Predicts each bulb's flux from volts, watts and life alone, where these are known to tell it. */
    static List<Prediction> fluxes() {
        return fluxes(true);
    }

    /** {@return the same outside that range, where nothing is claimed} */
    static List<Prediction> fluxesOutOfRange() {
        return fluxes(false);
    }

    private static List<Prediction> fluxes(boolean told) {
        Map<List<Object>, Prediction> once = new LinkedHashMap<>();
        for (BulbRating bulb : BulbCatalogue.published()) {
            BulbFilament rated = bulb.major();
            FilamentLamp unlit = rated.unlit(bulb.fill(), bulb.fillStanding()).build();
            if (unlit.ratingTellsLight() == told) {
                once.putIfAbsent(
                        List.of(rated.testVoltage(), rated.power(), rated.clearFlux(), rated.lifeHours()),
                        Prediction.of(
                                "flux of " + bulb + " from its volts, watts and life alone, clear glass",
                                rated.clearFlux().inLumens(),
                                unlit.predictedFlux().inLumens(),
                                "lm",
                                rated.source()));
            }
        }
        return List.copyOf(once.values());
    }
}
