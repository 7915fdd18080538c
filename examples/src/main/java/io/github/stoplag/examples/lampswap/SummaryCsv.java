package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.file.CsvText;
import io.github.stoplag.examples.lamps.Estimated;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** The table of results: a row for each speed and lamp, a field left empty where the quantity does not exist. */
final class SummaryCsv {
    static final List<String> HEADER = List.of(
            "speed_kmh",
            "speed_mph",
            "lamp",
            "time_to_10pct_s",
            "time_to_90pct_s",
            "detected_s",
            "detector",
            "extra_distance_m",
            "extra_distance_ft",
            "gap_needed_m",
            "outcome",
            "closing_speed_kmh",
            "closing_speed_mph");
    private static final List<String> UNCERTAINTY = List.of(
            "speed_kmh",
            "lamp",
            "detected_s",
            "detected_standard_uncertainty_s",
            "detected_lo_s",
            "detected_hi_s",
            "extra_distance_lo_m",
            "extra_distance_hi_m",
            "gap_needed_lo_m",
            "gap_needed_hi_m",
            "coverage");
    private static final int SECONDS = 5;
    private static final int METRES = 3;

    private SummaryCsv() {}

    static String of(LampSwap swap) {
        return CsvText.of(HEADER, swap.rows().stream().map(SummaryCsv::fields));
    }

    private static List<String> fields(LampSwap.Row row) {
        LampSwap.Lamp lamp = row.lamp();
        Verdict verdict = row.ending().verdict();
        return List.of(
                Numbers.fixed(row.leg().speed().inKmh(), 2),
                Numbers.fixed(row.leg().speed().inMph(), 2),
                lamp.name(),
                CsvText.field(lamp.onset().timeToLevel(0.1), TimeSpan::inSeconds, 5),
                CsvText.field(lamp.onset().timeToLevel(0.9), TimeSpan::inSeconds, 5),
                CsvText.field(lamp.seen(), TimeSpan::inSeconds, 5),
                lamp.detection().criterion(),
                CsvText.field(row.extraM(), Estimated::value, METRES),
                CsvText.field(row.extraM().map(extra -> Distance.metres(extra.value())), Distance::inFeet, 2),
                CsvText.field(verdict.gapNeeded(), Distance::inMetres, 3),
                verdict.word(),
                CsvText.field(verdict.closingSpeed(), Speed::inKmh, 2),
                CsvText.field(verdict.closingSpeed(), Speed::inMph, 2));
    }

    /** Gives the intervals that films and ratings leave; empty for a lamp without one, and where there is no end. */
    static String uncertainty(LampSwap swap) {
        return CsvText.of(UNCERTAINTY, swap.rows().stream().map(SummaryCsv::intervals));
    }

    private static List<String> intervals(LampSwap.Row row) {
        Optional<Estimated> seen = row.lamp().moments().get(0);
        Optional<Estimated> needed = row.ending().gapNeededM();
        return List.of(
                Numbers.fixed(row.leg().speed().inKmh(), 2),
                row.lamp().name(),
                CsvText.field(seen, Estimated::value, SECONDS),
                end(seen, Estimated::uncertainty, SECONDS),
                end(seen, Estimated::lo, SECONDS),
                end(seen, Estimated::hi, SECONDS),
                end(row.extraM(), Estimated::lo, METRES),
                end(row.extraM(), Estimated::hi, METRES),
                end(needed, Estimated::lo, METRES),
                end(needed, Estimated::hi, METRES),
                "0.95");
    }

    private static String end(Optional<Estimated> estimated, ToDoubleFunction<Estimated> what, int decimals) {
        return CsvText.field(
                estimated.filter(e -> !e.exact() && Double.isFinite(what.applyAsDouble(e))), what, decimals);
    }
}
