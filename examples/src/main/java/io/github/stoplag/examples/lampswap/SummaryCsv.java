package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.file.CsvText;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.List;

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

    private SummaryCsv() {}

    static String of(LampSwap swap) {
        return CsvText.of(HEADER, swap.rows().stream().map(SummaryCsv::fields));
    }

    private static List<String> fields(LampSwap.Row row) {
        LampSwap.Lamp lamp = row.lamp();
        Verdict verdict = Verdict.of(row.pair());
        return List.of(
                Numbers.fixed(row.leg().speed().inKmh(), 2),
                Numbers.fixed(row.leg().speed().inMph(), 2),
                lamp.name(),
                CsvText.field(lamp.onset().timeToLevel(0.1), TimeSpan::inSeconds, 5),
                CsvText.field(lamp.onset().timeToLevel(0.9), TimeSpan::inSeconds, 5),
                CsvText.field(lamp.seen(), TimeSpan::inSeconds, 5),
                lamp.detection().criterion(),
                CsvText.field(row.extraDistance(), Distance::inMetres, 3),
                CsvText.field(row.extraDistance(), Distance::inFeet, 2),
                CsvText.field(verdict.gapNeeded(), Distance::inMetres, 3),
                verdict.word(),
                CsvText.field(verdict.closingSpeed(), Speed::inKmh, 2),
                CsvText.field(verdict.closingSpeed(), Speed::inMph, 2));
    }
}
