package io.github.stoplag.examples.film;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.HtmlPage;
import io.github.stoplag.examples.draw.Markup;
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
    private final FilmAnswer answer;
    private final Markup out;
    private final HtmlPage page;

    private FilmPage(FilmReading reading, FilmStudy study, List<Criterion> criteria, List<Speed> speeds, Markup out) {
        this.reading = reading;
        this.study = study;
        this.criteria = criteria;
        this.answer = new FilmAnswer(study, criteria, speeds);
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
        first();
        page.list(study.caveats().stream());
        page.paragraph(FilmText.title(reading, study) + ". Times are from the " + FilmText.zero(study) + ".");
        figures.forEach(page::figure);
        road();
        moments();
        budget();
        notes();
    }

    private void first() {
        for (FilmAnswer.Said said : answer.first()) {
            out.open("div", "class", "answer").element("p", said.heading()).open("ul");
            for (List<String> line : said.lines()) {
                out.open("li").text(line.get(0) + ": ").element("strong", HtmlPage.unbroken(line.get(1)));
                for (int i = 2; i < line.size(); i++) {
                    out.text(HtmlPage.unbroken("; " + answer.header("").get(i) + " " + line.get(i)));
                }
                out.close();
            }
            out.close();
            if (reading.coded()) {
                out.element("p", FilmText.NOT_HELD);
            }
            out.close().line();
        }
    }

    private void road() {
        if (!answer.differences().isEmpty()) {
            page.heading("What it means on the road");
            page.paragraph("How much later than " + study.reference().label()
                    + ", and how far a vehicle behind travels meanwhile, with the interval that holds 95 %.");
            page.table(answer.header("moment"), answer.differences().stream());
        }
    }

    private void moments() {
        page.heading("Moments of each lamp");
        page.table(
                List.of("lamp", "goes", "moment", "time", "standard uncertainty", "95 % interval"),
                Stream.concat(study.rows().stream(), study.marked().stream())
                        .map(row -> List.of(
                                row.lamp(),
                                row.direction(),
                                answer.named(row.moment(), true),
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
