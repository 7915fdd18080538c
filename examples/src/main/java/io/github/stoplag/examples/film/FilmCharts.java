package io.github.stoplag.examples.film;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.LineChart;
import io.github.stoplag.examples.draw.LineChart.Point;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.film.FilmedChange.BandPoint;
import io.github.stoplag.film.FilmedMoment;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/** The light of each lamp over time with its band, coming on and going out. */
final class FilmCharts {
    private static final int[] STYLES = {0, 1, 3, 4};

    private FilmCharts() {}

    static List<Figure> of(FilmStudy study, String marked) {
        List<Figure> figures = new ArrayList<>();
        for (boolean rising : new boolean[] {true, false}) {
            List<FilmStudy.Change> changes = study.changes().stream()
                    .filter(change -> change.filmed().rising() == rising)
                    .limit(STYLES.length)
                    .toList();
            if (!changes.isEmpty()) {
                figures.add(figure(study, changes, rising, marked));
            }
        }
        return figures;
    }

    private static Figure figure(FilmStudy study, List<FilmStudy.Change> changes, boolean rising, String marked) {
        List<LineChart.Series> series = new ArrayList<>();
        for (int i = 0; i < changes.size(); i++) {
            series.add(series(changes.get(i), STYLES[i]));
        }
        String what = rising ? "Light coming on" : "Light going out";
        String zero = "from the " + (rising ? "first light" : "first loss of light") + " of "
                + study.reference().label();
        return new LineChart(
                        List.of("time " + zero, "areas: 95 % of what is possible; marks: 1, 10, 50, 90 %" + marked),
                        "time in ms",
                        "share of the switched light in %",
                        series)
                .figure(rising ? "on" : "off", what, description(changes));
    }

    private static LineChart.Series series(FilmStudy.Change change, int style) {
        List<Point> line = new ArrayList<>();
        List<Point> early = new ArrayList<>();
        List<Point> late = new ArrayList<>();
        for (BandPoint point : change.counted().band()) {
            line.add(point(point.timeS(), point.levelRatio()));
            early.add(point(point.loS(), point.levelRatio()));
            late.add(point(point.hiS(), point.levelRatio()));
        }
        Collections.reverse(late);
        early.addAll(late);
        List<Point> marks = FilmStudy.LEVELS.stream()
                .map(level -> point(change.counted().level(level).valueS(), level))
                .toList();
        return new LineChart.Series(label(change), style, line, marks, true, early);
    }

    private static Point point(double timeS, double levelRatio) {
        return new Point(1000 * timeS, 100 * levelRatio);
    }

    private static String label(FilmStudy.Change change) {
        FilmedMoment half = change.counted().level(0.5);
        return change.lamp() + ", half at " + pm(half);
    }

    /** Gives a moment with its expanded uncertainty as text. */
    static String pm(FilmedMoment moment) {
        return Text.digits(1000 * moment.valueS()) + " ms (" + interval(moment.loS(), moment.hiS()) + ")";
    }

    static String interval(double loS, double hiS) {
        return String.format(Locale.ROOT, "%.1f to %.1f ms", 1000 * loS, 1000 * hiS);
    }

    private static String description(List<FilmStudy.Change> changes) {
        return String.join("; ", changes.stream().map(FilmCharts::label).toList());
    }
}
