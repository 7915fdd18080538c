package io.github.stoplag.examples.film;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.HtmlPage;
import io.github.stoplag.examples.draw.Markup;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.Resource;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.film.FilmedChange;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.sweep.Measurand.Contribution;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The report as one page that needs nothing else: no script, no network, no other file. */
final class FilmPage {
    private final FilmReading reading;
    private final FilmStudy study;
    private final List<Criterion> criteria;
    private final List<Speed> speeds;
    private final Markup out;
    private final HtmlPage page;

    private FilmPage(FilmReading reading, FilmStudy study, List<Criterion> criteria, List<Speed> speeds, Markup out) {
        this.reading = reading;
        this.study = study;
        this.criteria = criteria;
        this.speeds = speeds;
        this.out = out;
        this.page = new HtmlPage(out);
    }

    static String of(
            FilmReading reading,
            FilmStudy study,
            List<Criterion> criteria,
            List<Speed> speeds,
            List<Figure> figures,
            boolean invented) {
        return HtmlPage.text(
                "Film of lamps: " + reading.name(),
                out -> new FilmPage(reading, study, criteria, speeds, out).body(figures, invented));
    }

    private void body(List<Figure> figures, boolean invented) {
        out.element("h1", "When the lamps of a film are seen").line();
        if (invented) {
            out.open("p")
                    .element("span", Heading.INVENTED_DATA, "class", "mark")
                    .text(" The film is made by a modelled camera of modelled lamps, to show the method.")
                    .close()
                    .line();
        }
        page.paragraph(FilmText.title(reading, study) + ". Times are from the " + FilmText.zero(study) + ".");
        road();
        figures.forEach(page::figure);
        moments();
        budget();
        notes();
    }

    private void road() {
        page.heading("What it means on the road");
        page.paragraph(
                "Extra distance: what a vehicle behind travels between the moments at which both lamps are seen.");
        page.table(
                List.of("lamp", "moment", "after " + study.reference().label(), "speed", "extra distance"),
                study.differences().stream()
                        .flatMap(d -> speeds.stream()
                                .map(speed -> List.of(
                                        d.lamp(),
                                        d.moment(),
                                        Text.digits(1000 * d.timeS()) + " ms (" + FilmCharts.interval(d.loS(), d.hiS())
                                                + ")",
                                        Text.speed(speed),
                                        FilmText.metres(d, speed)))));
    }

    private void moments() {
        page.heading("Moments of each lamp");
        page.table(
                List.of("lamp", "goes", "moment", "time", "standard uncertainty", "95 % interval"),
                Stream.concat(study.rows().stream(), study.marked().stream())
                        .map(row -> List.of(
                                row.lamp(),
                                row.direction(),
                                row.moment(),
                                ms(row.estimate().valueS()),
                                String.format(
                                        Locale.ROOT,
                                        "%.2f ms",
                                        1000 * row.estimate().standardUncertaintyS()),
                                FilmCharts.interval(
                                        row.estimate().loS(), row.estimate().hiS()))));
        page.list(criteria.stream()
                .map(criterion ->
                        "seen_" + criterion.word() + ": " + criterion.meaning() + ", " + criterion.criterion()));
    }

    private static String ms(double timeS) {
        return Numbers.fixed(1000 * timeS, 1) + " ms";
    }

    private void budget() {
        page.heading("Where the uncertainty comes from");
        page.table(
                List.of("lamp", "moment", "source", "contribution"),
                study.changes().stream()
                        .filter(change -> change.filmed().rising())
                        .flatMap(this::contributions));
    }

    private Stream<List<String>> contributions(FilmStudy.Change change) {
        FilmedChange counted = change.counted();
        return counted.level(0.5).budget().stream()
                .sorted(Comparator.comparingDouble((Contribution c) -> -Math.abs(c.contribution())))
                .map(c -> List.of(
                        change.lamp(),
                        "half of the light, on",
                        c.input().replaceAll("_s$", "").replace('_', ' '),
                        String.format(Locale.ROOT, "%.2f ms", 1000 * Math.abs(c.contribution()))));
    }

    private void notes() {
        page.heading("What to keep in mind");
        page.list(study.caveats().stream());
        page.heading("Cautions");
        out.open("ul", "class", "warn").line();
        Resource.text("cautions.txt")
                .lines()
                .forEach(line -> out.element("li", line).line());
        out.close().line();
        page.heading("What the camera is taken for");
        page.list(study.camera().evidence().basis().stream());
    }
}
