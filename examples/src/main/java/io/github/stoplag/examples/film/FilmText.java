package io.github.stoplag.examples.film;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.film.FilmedMoment;
import io.github.stoplag.quantity.Numbers;
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

    private FilmText() {}

    static List<String> of(
            FilmReading reading, FilmStudy study, List<Criterion> criteria, List<Speed> speeds, boolean invented) {
        List<String> lines = new ArrayList<>();
        lines.add(title(reading, study) + (invented ? " (" + Heading.INVENTED_DATA + ")" : ""));
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
        lines.add("");
        for (FilmStudy.Difference difference : study.differences()) {
            speeds.forEach(speed -> lines.addAll(Text.wrapped("", sentence(study, difference, speed))));
        }
        lines.add("");
        study.caveats().forEach(caveat -> lines.addAll(Text.wrapped("- ", caveat)));
        lines.addAll(Text.wrapped("- ", CAUTION));
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

    /** Says what a difference is on the road. */
    static String sentence(FilmStudy study, FilmStudy.Difference d, Speed speed) {
        return d.lamp() + " " + d.moment() + ": " + Text.digits(1000 * d.timeS()) + " ms after "
                + study.reference().label() + " (" + FilmCharts.interval(d.loS(), d.hiS()) + "); at "
                + Text.speed(speed) + " " + metres(d, speed);
    }

    static String metres(FilmStudy.Difference d, Speed speed) {
        return Numbers.fixed(speed.inMps() * d.timeS(), 2) + " m of travel ("
                + Numbers.fixed(speed.inMps() * d.loS(), 2) + " to " + Numbers.fixed(speed.inMps() * d.hiS(), 2)
                + " m)";
    }
}
