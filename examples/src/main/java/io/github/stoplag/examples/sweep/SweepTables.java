package io.github.stoplag.examples.sweep;

import io.github.stoplag.examples.file.CsvText;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.sweep.ConditionalTally;
import io.github.stoplag.sweep.ContactMap;
import io.github.stoplag.sweep.Interval;
import io.github.stoplag.sweep.LampTally;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.PairedProportions;
import io.github.stoplag.sweep.Proportion;
import io.github.stoplag.sweep.QuantileSketch;
import io.github.stoplag.sweep.SamplingError;
import io.github.stoplag.sweep.Sensitivities;
import io.github.stoplag.sweep.SobolIndices;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/** The tables of a sweep as comma-separated text. */
final class SweepTables {
    static final List<String> NAMES =
            List.of("summary.csv", "convergence.csv", "contacts.csv", "sensitivities.csv", "one_at_a_time.csv");

    static final List<Double> QUANTILES = List.of(0.05, 0.25, 0.5, 0.75, 0.95, 0.99);
    private static final int DIGITS = 8;
    private static final int POINTS = 21;

    private SweepTables() {}

    static Map<String, String> of(SweepStudy study) {
        Map<String, String> tables = new LinkedHashMap<>();
        tables.put(NAMES.get(0), summary(study));
        tables.put(NAMES.get(1), convergence(study));
        tables.put(NAMES.get(2), contacts(study));
        tables.put(NAMES.get(3), sensitivities(study));
        tables.put(NAMES.get(4), oneAtATime(study));
        return tables;
    }

    private static String summary(SweepStudy study) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(row("scenarios", "1", "all", study.outcome().result().scenarios()));
        rows.add(row("rejected", "1", "all", study.outcome().result().rejected()));
        if (study.anyValid()) {
            study.lamps().forEach(lamp -> lamp(rows, study, study.tally().lamp(lamp)));
            String first = study.reference();
            study.others().forEach(other -> {
                PairedProportions pair = study.tally().compare(first, other);
                rows.add(with(
                        study,
                        row("contact_probability_difference", "1", first + " less " + other, pair.difference()),
                        () -> pair.differenceInterval(SweepStudy.CONFIDENCE)));
            });
            study.gapIntegrated()
                    .ifPresent(found -> study.lamps().forEach(lamp -> integrated(rows, found.tally(), lamp)));
        }
        return CsvText.of(
                List.of(
                        "quantity",
                        "unit",
                        "lamp",
                        "value",
                        "interval_lo",
                        "interval_hi",
                        "confidence",
                        "sketch_error"),
                rows.stream());
    }

    private static void integrated(List<List<String>> rows, ConditionalTally tally, String lamp) {
        rows.add(with(
                row(
                        "contact_probability_gap_integrated",
                        "1",
                        lamp,
                        tally.contactProbability(lamp).mean()),
                tally.contactInterval(lamp, SweepStudy.CONFIDENCE)));
    }

    private static void lamp(List<List<String>> rows, SweepStudy study, LampTally lamp) {
        Proportion p = lamp.contactProbability();
        rows.add(row("contacts", "1", lamp.lamp(), p.hits()));
        rows.add(with(
                study, row("contact_probability", "1", lamp.lamp(), p.value()), () -> p.wilson(SweepStudy.CONFIDENCE)));
        rows.add(row("smallest_gap_mean", "m", lamp.lamp(), lamp.smallestGapM().mean()));
        if (p.hits() >= 2) {
            rows.add(with(
                    study,
                    row(
                            "closing_speed_mean",
                            "m/s",
                            lamp.lamp(),
                            lamp.closingSpeedMps().mean()),
                    () -> lamp.closingSpeedMps().meanInterval(SweepStudy.CONFIDENCE)));
            rows.add(row(
                    "closing_speed_max",
                    "m/s",
                    lamp.lamp(),
                    lamp.closingSpeedMps().max()));
        }
        if (p.hits() > 0) {
            QUANTILES.forEach(share -> quantile(rows, study, lamp, share));
        }
    }

    private static void quantile(List<List<String>> rows, SweepStudy study, LampTally lamp, double share) {
        QuantileSketch sketch = lamp.closingSpeedQuantilesMps();
        Optional<Interval> interval = sketch.interval(share, SweepStudy.CONFIDENCE);
        boolean exact = study.samplingError() == SamplingError.NONE;
        if (exact || interval.isPresent()) {
            List<String> row =
                    row("closing_speed_quantile_" + Numbers.text(share), "m/s", lamp.lamp(), sketch.quantile(share));
            List<String> all = new ArrayList<>(exact ? row : with(row, interval.orElseThrow()));
            all.set(all.size() - 1, text(sketch.quantile(share) * QuantileSketch.RELATIVE_ERROR));
            rows.add(all);
        }
    }

    private static List<String> row(String quantity, String unit, String lamp, double value) {
        return List.of(quantity, unit, lamp, text(value), "", "", "", "");
    }

    private static List<String> row(String quantity, String unit, String lamp, long count) {
        return List.of(quantity, unit, lamp, Long.toString(count), "", "", "", "");
    }

    private static List<String> with(List<String> row, Interval interval) {
        List<String> all = new ArrayList<>(row.subList(0, 4));
        all.addAll(List.of(text(interval.lo()), text(interval.hi()), text(interval.confidence()), ""));
        return all;
    }

    private static List<String> with(SweepStudy study, List<String> row, Supplier<Interval> interval) {
        return study.samplingError() == SamplingError.NONE ? row : with(row, interval.get());
    }

    private static String convergence(SweepStudy study) {
        List<List<String>> rows = new ArrayList<>();
        for (PairTally.TracePoint point : study.tally().trace()) {
            for (int lamp = 0; lamp < study.lamps().size(); lamp++) {
                List<String> row = new ArrayList<>(
                        List.of(Long.toString(point.scenarios()), study.lamps().get(lamp)));
                row.addAll(proportion(study, point.contactProbability().get(lamp)));
                rows.add(row);
            }
        }
        return CsvText.of(
                List.of(
                        "scenarios",
                        "lamp",
                        "contacts",
                        "valid_scenarios",
                        "contact_probability",
                        "interval_lo",
                        "interval_hi"),
                rows.stream());
    }

    private static List<String> proportion(SweepStudy study, Proportion p) {
        Interval wilson = p.wilson(SweepStudy.CONFIDENCE);
        boolean exact = study.samplingError() == SamplingError.NONE;
        return List.of(
                Long.toString(p.hits()),
                Long.toString(p.count()),
                text(p.value()),
                exact ? "" : text(wilson.lo()),
                exact ? "" : text(wilson.hi()));
    }

    private static String contacts(SweepStudy study) {
        ContactMap map = study.outcome().map();
        List<List<String>> rows = new ArrayList<>();
        for (String lamp : study.lamps()) {
            for (int x = 0; x < map.gap().count(); x++) {
                for (int y = 0; y < map.speed().count(); y++) {
                    List<String> row = new ArrayList<>(List.of(
                            lamp,
                            text(map.gap().edge(x)),
                            text(map.gap().edge(x + 1)),
                            text(map.speed().edge(y)),
                            text(map.speed().edge(y + 1))));
                    map.at(lamp, x, y).ifPresent(p -> {
                        row.addAll(proportion(study, p));
                        rows.add(row);
                    });
                }
            }
        }
        String gap = map.gap().column();
        return CsvText.of(
                List.of(
                        "lamp",
                        "from_" + gap,
                        "to_" + gap,
                        "from_speed_mps",
                        "to_speed_mps",
                        "contacts",
                        "valid_scenarios",
                        "contact_probability",
                        "interval_lo",
                        "interval_hi"),
                rows.stream());
    }

    private static String sensitivities(SweepStudy study) {
        List<List<String>> rows = new ArrayList<>();
        for (Sensitivities s : study.sensitivities()) {
            indices(rows, s.lamp(), "contact", s.contact());
            indices(rows, s.lamp(), "closing_speed_mps, 0 without contact", s.closingSpeed());
        }
        return CsvText.of(
                List.of(
                        "lamp",
                        "result",
                        "column",
                        "first_order",
                        "first_order_standard_error",
                        "total",
                        "total_standard_error"),
                rows.stream());
    }

    private static void indices(List<List<String>> rows, String lamp, String result, List<SobolIndices.Index> all) {
        all.forEach(i -> rows.add(List.of(
                lamp,
                result,
                i.column(),
                text(i.first()),
                text(i.firstStandardError()),
                text(i.total()),
                text(i.totalStandardError()))));
    }

    private static String oneAtATime(SweepStudy study) {
        List<List<String>> rows = new ArrayList<>();
        for (String lamp : study.lamps()) {
            Sensitivities.closingSpeedCurves(study.plan(), lamp, POINTS)
                    .forEach(curve -> IntStream.range(0, curve.at().size())
                            .forEach(i -> rows.add(List.of(
                                    lamp,
                                    curve.column(),
                                    text(curve.at().get(i)),
                                    text(curve.output().get(i))))));
        }
        return CsvText.of(List.of("lamp", "column", "value", "closing_speed_mps"), rows.stream());
    }

    private static String text(double value) {
        return Double.isNaN(value) ? "" : Numbers.text(value, DIGITS);
    }
}
