package io.github.stoplag.examples;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
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

    private SummaryCsv() {}

    static String of(LampSwap swap) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
            csv.writeRecord(HEADER);
            swap.rows().forEach(row -> csv.writeRecord(fields(row)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static List<String> fields(LampSwap.Row row) {
        LampSwap.Lamp lamp = row.lamp();
        Verdict verdict = Verdict.of(row);
        return List.of(
                Numbers.fixed(row.leg().speed().inKmh(), 2),
                Numbers.fixed(row.leg().speed().inMph(), 2),
                lamp.name(),
                field(lamp.onset().timeToLevel(0.1), TimeSpan::inSeconds, 5),
                field(lamp.onset().timeToLevel(0.9), TimeSpan::inSeconds, 5),
                field(lamp.seen(), TimeSpan::inSeconds, 5),
                lamp.detection().criterion(),
                field(row.extraDistance(), Distance::inMetres, 3),
                field(row.extraDistance(), Distance::inFeet, 2),
                field(verdict.gapNeeded(), Distance::inMetres, 3),
                verdict.word(),
                field(verdict.closingSpeed(), Speed::inKmh, 2),
                field(verdict.closingSpeed(), Speed::inMph, 2));
    }

    private static <T> String field(Optional<T> value, ToDoubleFunction<T> in, int decimals) {
        return value.map(v -> Numbers.fixed(in.applyAsDouble(v), decimals)).orElse("");
    }
}
