package io.github.stoplag.examples.film;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.film.FilmedLamp;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/** What a film says in its first lines, and how moments and differences are put in words. */
final class FilmAnswer {
    private final FilmStudy study;
    private final List<Criterion> criteria;
    private final List<Speed> speeds;

    FilmAnswer(FilmStudy study, List<Criterion> criteria, List<Speed> speeds) {
        this.study = study;
        this.criteria = criteria;
        this.speeds = speeds;
    }

    /**
     * What is said of one lamp.
     *
     * @param heading which lamp against which
     * @param lines for each way of seeing: its name, then the time and the distances
     */
    record Said(String heading, List<List<String>> lines) {}

    /** Gives the answer for each lamp: against the reference, or for the only lamp from its own first light. */
    List<Said> first() {
        List<String> looked = Criterion.firstLook(criteria).stream()
                .map(i -> "seen_" + criteria.get(i).word())
                .toList();
        List<Said> all = new ArrayList<>();
        for (String lamp : study.lamps().stream().map(FilmedLamp::label).toList()) {
            List<List<String>> lines = study.differences().stream()
                    .filter(d -> d.lamp().equals(lamp) && looked.contains(d.moment()))
                    .map(this::line)
                    .toList();
            if (!lines.isEmpty()) {
                all.add(new Said(
                        lamp + ": how much later it is seen than "
                                + study.reference().label() + ", and the road travelled meanwhile:",
                        lines));
            }
        }
        return all.isEmpty() ? alone(looked) : all;
    }

    private List<Said> alone(List<String> looked) {
        List<List<String>> lines = study.rows().stream()
                .filter(row -> looked.contains(row.moment())
                        || (!row.rising() && row.moment().equals("level_10pct")))
                .map(row -> List.of(
                        row.lamp() + ": " + named(row.moment(), row.rising()),
                        interval(
                                1000 * row.estimate().valueS(),
                                1000 * row.estimate().loS(),
                                1000 * row.estimate().hiS(),
                                1,
                                "ms")))
                .toList();
        return List.of(
                new Said("Counted from the first light of " + study.reference().label() + ":", lines));
    }

    private List<String> line(FilmStudy.Difference d) {
        return Stream.concat(
                        Stream.of(named(d.moment(), d.rising()), time(d)),
                        speeds.stream().map(speed -> metres(d, speed)))
                .toList();
    }

    /** Gives the heads of the columns of a difference. */
    List<String> header(String first) {
        return Stream.concat(
                        Stream.of(first, "after " + study.reference().label()),
                        speeds.stream().map(speed -> "at " + Text.speed(speed)))
                .toList();
    }

    /** Gives all differences of a direction: lamp and moment, time, and the distance at each speed. */
    List<List<String>> differences() {
        boolean several = study.lamps().size() > 2;
        return study.differences().stream()
                .map(d -> {
                    List<String> row = new ArrayList<>(line(d));
                    row.set(0, (several ? d.lamp() + ": " : "") + row.get(0));
                    return row;
                })
                .toList();
    }

    static String time(FilmStudy.Difference d) {
        return interval(1000 * d.timeS(), 1000 * d.loS(), 1000 * d.hiS(), 1, "ms");
    }

    static String metres(FilmStudy.Difference d, Speed speed) {
        double mps = speed.inMps();
        return interval(mps * d.timeS(), mps * d.loS(), mps * d.hiS(), 2, "m");
    }

    private static String interval(double value, double lo, double hi, int decimals, String unit) {
        return Numbers.fixed(value, decimals) + " " + unit + " (" + Numbers.fixed(lo, decimals) + " to "
                + Numbers.fixed(hi, decimals) + ")";
    }

    /** Puts a moment's name in tables into words. */
    String named(String moment, boolean rising) {
        if (moment.startsWith("level_")) {
            String share = moment.replaceAll("[^0-9]", "") + " % of the light";
            return rising ? share : "going out, " + share;
        }
        String word = moment.replaceFirst("^[a-z]+_", "");
        Function<Criterion, String> meaning = Criterion::meaning;
        return criteria.stream()
                .filter(criterion -> moment.equals("seen_" + criterion.word()))
                .findFirst()
                .map(meaning)
                .orElse("marked: " + word.replace('_', ' ') + (rising ? "" : ", going out"));
    }
}
