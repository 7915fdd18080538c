package io.github.stoplag.examples.film;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.film.FilmedMoment;
import io.github.stoplag.quantity.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The report as it is printed. */
final class FilmText {
    static final String CAUTION =
            "A model is no proof of safety: a lamp that is seen earlier says nothing of its type approval, of the"
                    + " circuit it hangs on, or of crashes; local codes and licensed practice decide.";

    /** Stands beside the numbers, not only among the reservations. */
    static final String NOT_HELD = "In brackets what holds 95 %, without the error of a film coded with loss.";

    private FilmText() {}

    static List<String> of(
            FilmReading reading, FilmStudy study, List<Criterion> criteria, List<Speed> speeds, boolean invented) {
        List<String> lines = new ArrayList<>();
        lines.add(title(reading, study) + (invented ? " (" + Heading.INVENTED_DATA + ")" : ""));
        FilmAnswer answer = new FilmAnswer(study, criteria, speeds);
        for (FilmAnswer.Said said : answer.first()) {
            lines.add("");
            lines.add(said.heading());
            lines.addAll(Text.columns(headed(answer.header("seen by"), said.lines())));
        }
        if (reading.coded()) {
            lines.add(NOT_HELD);
        }
        study.caveats().forEach(caveat -> lines.addAll(Text.wrapped("- ", caveat)));
        lines.add("");
        lines.add("Moments in ms from the " + zero(study) + ", standard uncertainty u, interval that holds 95 %:");
        lines.add(
                String.format(Locale.ROOT, "%-14s %-4s %-14s %9s %8s   %s", "lamp", "", "moment", "time", "u", "95 %"));
        Stream.concat(study.rows().stream(), study.marked().stream())
                .map(FilmText::line)
                .forEach(lines::add);
        lines.add("");
        criteria.forEach(criterion -> lines.addAll(
                Text.wrapped("seen_" + criterion.word() + ": ", criterion.meaning() + ", " + criterion.criterion())));
        List<List<String>> differences = answer.differences();
        if (!differences.isEmpty()) {
            lines.add("");
            lines.addAll(Text.columns(headed(answer.header("all moments"), differences)));
        }
        lines.add("");
        lines.addAll(Text.wrapped("", CAUTION));
        return lines;
    }

    private static String line(FilmStudy.Row row) {
        FilmedMoment moment = row.estimate();
        return String.format(
                Locale.ROOT,
                "%-14s %-4s %-14s %9.1f %8.2f   %.1f to %.1f",
                row.lamp(),
                row.direction(),
                row.moment(),
                1000 * moment.valueS(),
                1000 * moment.standardUncertaintyS(),
                1000 * moment.loS(),
                1000 * moment.hiS());
    }

    static String title(FilmReading reading, FilmStudy study) {
        return "Lamps in " + reading.name() + ": "
                + String.join(", ", study.lamps().stream().map(Object::toString).toList());
    }

    static String zero(FilmStudy study) {
        return "first light of " + study.reference().label() + " (going out: from its first loss of light)";
    }

    private static List<List<String>> headed(List<String> header, List<List<String>> rows) {
        return Stream.concat(Stream.of(header.subList(0, rows.get(0).size())), rows.stream())
                .toList();
    }
}
