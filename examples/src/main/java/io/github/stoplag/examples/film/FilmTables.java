package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.CsvText;
import io.github.stoplag.examples.lamps.FilmedInput;
import io.github.stoplag.film.FilmedChange.BandPoint;
import io.github.stoplag.film.GreySeries;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** The results as tables. */
final class FilmTables {
    private static final List<String> ESTIMATE =
            List.of("time_s", "standard_uncertainty_s", "lo_s", "hi_s", "coverage");

    private static final List<String> MOMENTS = joined(List.of("lamp", "direction", "moment"), ESTIMATE);

    private FilmTables() {}

    static String moments(List<FilmStudy.Row> rows) {
        return CsvText.of(
                MOMENTS,
                rows.stream()
                        .map(row -> List.of(
                                row.lamp(),
                                row.direction(),
                                row.moment(),
                                seconds(row.estimate().valueS()),
                                seconds(row.estimate().standardUncertaintyS()),
                                seconds(row.estimate().loS()),
                                seconds(row.estimate().hiS()),
                                Numbers.text(row.estimate().coverage()))));
    }

    static String differences(FilmStudy study, List<Speed> speeds) {
        return CsvText.of(
                joined(
                        joined(List.of("lamp", "reference", "direction", "moment"), ESTIMATE),
                        List.of("speed_kmh", "extra_m", "standard_uncertainty_m", "lo_m", "hi_m")),
                study.differences().stream()
                        .flatMap(d -> speeds.stream()
                                .map(speed -> List.of(
                                        d.lamp(),
                                        study.reference().label(),
                                        d.rising() ? "on" : "off",
                                        d.moment(),
                                        seconds(d.timeS()),
                                        seconds(d.uncertaintyS()),
                                        seconds(d.loS()),
                                        seconds(d.hiS()),
                                        "0.95",
                                        Numbers.text(speed.inKmh(), 6),
                                        metres(d.timeS(), speed),
                                        metres(d.uncertaintyS(), speed),
                                        metres(d.loS(), speed),
                                        metres(d.hiS(), speed)))));
    }

    static String curves(FilmStudy study) {
        List<List<String>> rows = new ArrayList<>();
        for (FilmStudy.Change change : study.changes()) {
            for (BandPoint point : change.counted().band()) {
                rows.add(List.of(
                        change.lamp(),
                        change.filmed().rising() ? "on" : "off",
                        Numbers.text(point.levelRatio()),
                        seconds(point.timeS()),
                        seconds(point.loS()),
                        seconds(point.hiS())));
            }
        }
        return CsvText.of(FilmedInput.CURVES, rows.stream());
    }

    static String caveats(FilmStudy study) {
        return CsvText.of(FilmedInput.CAVEATS, study.reservations().stream().map(r -> List.of(r.lamp(), r.text())));
    }

    /** The grey values as read, in a form that the program reads too. */
    static String grey(List<LampSeries> lamps) {
        GreySeries first = lamps.get(0).series();
        List<String> header = new ArrayList<>(List.of("frame"));
        if (first.isStamped()) {
            header.add("time_s");
        }
        lamps.forEach(lamp -> header.add(lamp.name()));
        return CsvText.of(header, IntStream.range(0, first.size()).mapToObj(i -> {
            List<String> row = new ArrayList<>(List.of(String.valueOf(first.frame(i))));
            if (first.isStamped()) {
                row.add(Numbers.fixed(first.stampS(i), 6));
            }
            lamps.forEach(lamp -> row.add(Numbers.fixed(lamp.series().grey(i), 3)));
            return row;
        }));
    }

    private static List<String> joined(List<String> first, List<String> then) {
        List<String> all = new ArrayList<>(first);
        all.addAll(then);
        return all;
    }

    private static String seconds(double timeS) {
        return Numbers.fixed(timeS, 6);
    }

    private static String metres(double timeS, Speed speed) {
        return Numbers.fixed(timeS * speed.inMps(), 3);
    }
}
