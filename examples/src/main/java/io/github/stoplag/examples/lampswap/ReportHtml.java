package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.HtmlPage;
import io.github.stoplag.examples.draw.Markup;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.Resource;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.source.Table;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The report as one page that needs nothing else: no script, no network, no other file. */
final class ReportHtml {
    private final LampSwap swap;
    private final Markup out;
    private final HtmlPage page;

    private ReportHtml(LampSwap swap, Markup out) {
        this.swap = swap;
        this.out = out;
        this.page = new HtmlPage(out);
    }

    static String of(LampSwap swap, List<Figure> figures) {
        return HtmlPage.text(
                "Lamp swap: " + swap.scenario().heading().title(), out -> new ReportHtml(swap, out).body(figures));
    }

    private void body(List<Figure> figures) {
        head(swap, out);
        answer(swap, out);
        page.paragraph("On one page, to print and hand on: " + LampSwapCommand.SUMMARY_PAGE + ", beside this page.");
        page.heading("By day and by night");
        page.table(FirstLook.HEADER, new FirstLook(swap).rows());
        sets();
        goingOut();
        results();
        List<Figure> charts = figures.stream().filter(figure -> !isRoad(figure)).toList();
        page.figure(charts.get(0));
        out.open("div", "class", "pair").line();
        charts.subList(1, charts.size()).forEach(page::figure);
        out.close().line();
        roads(figures.stream().filter(ReportHtml::isRoad).toList());
        comparison();
        assumptions();
        sources();
        cautions();
        evidence();
    }

    private static boolean isRoad(Figure figure) {
        return figure.id().startsWith("road");
    }

    /** The roads of the first look in full view, the others behind a line to open. */
    private void roads(List<Figure> roads) {
        List<String> first = swap.scenario().firstLook().stream()
                .map(leg -> Text.speed(leg.speed()))
                .toList();
        List<Figure> others = new ArrayList<>();
        for (Figure road : roads) {
            if (first.stream().anyMatch(road.title()::contains)) {
                page.figure(road);
            } else {
                others.add(road);
            }
        }
        if (!others.isEmpty()) {
            out.open("details")
                    .element("summary", "Both vehicles at the other speeds")
                    .line();
            others.forEach(page::figure);
            out.close().line();
        }
    }

    /** Writes what the scenario calls itself, and whether its data are invented. */
    static void head(LampSwap swap, Markup out) {
        Heading heading = swap.scenario().heading();
        out.element("h1", heading.title()).line();
        if (heading.invented()) {
            out.open("p")
                    .element("span", Heading.INVENTED_DATA, "class", "mark")
                    .text(
                            swap.filmed()
                                    ? " Vehicles, traffic and the lamps that are not filmed are made up; filmed: "
                                            + String.join(
                                                    ", ",
                                                    filmed(swap)
                                                            .map(LampSwap.Lamp::name)
                                                            .toList())
                                            + "."
                                    : " Vehicles, traffic and lamps of this scenario are made up to show the method.")
                    .close()
                    .line();
        }
    }

    /** Writes the answer: for each candidate how much earlier, how far, and how it ends. */
    static void answer(LampSwap swap, Markup out) {
        String now = swap.lamps().get(0).name();
        out.open("div", "class", "answers").line();
        for (FirstLook.Change change : new FirstLook(swap).changes()) {
            out.open("div", "class", "answer")
                    .open("p")
                    .text(change.instead() + ": seen ")
                    .element("strong", change.earlier())
                    .text(".")
                    .close()
                    .open("ul")
                    .line();
            for (FirstLook.AtSpeed at : change.speeds()) {
                out.open("li")
                        .text(at.speed() + ": ")
                        .element("strong", at.distance())
                        .text("; " + change.lamp() + ": " + at.then() + "; " + now + ": " + at.now() + ".")
                        .close()
                        .line();
            }
            out.element("li", change.others() + ".").close().close().line();
        }
        out.close().line();
        films(swap, out);
    }

    /** Says what the numbers leave open, near the numbers. */
    private static void films(LampSwap swap, Markup out) {
        swap.ratingLeavesOpen()
                .ifPresent(said -> out.element("p", said, "class", "films").line());
        if (!swap.filmed()) {
            return;
        }
        out.element(
                "p",
                swap.filmsBanded()
                        ? "Intervals of filmed lamps hold 95 % of what the film leaves possible. What they leave out:"
                        : "The film's file tells no uncertainty: none is in these numbers. Besides:",
                "class",
                "films");
        out.open("ul", "class", "films").line();
        Map<String, List<String>> lampsByText = new LinkedHashMap<>();
        filmed(swap)
                .forEach(lamp -> lamp.onset()
                        .evidence()
                        .caveats()
                        .forEach(caveat -> lampsByText
                                .computeIfAbsent(caveat.text(), text -> new ArrayList<>())
                                .add(lamp.name())));
        lampsByText.forEach((text, lamps) ->
                out.element("li", String.join(", ", lamps) + ": " + text).line());
        out.close().line();
    }

    private static Stream<LampSwap.Lamp> filmed(LampSwap swap) {
        return swap.lamps().stream().filter(LampSwap.Lamp::filmed);
    }

    private void sets() {
        List<String> said = SetShares.of(swap).toList();
        if (!said.isEmpty()) {
            page.heading("Several lamps");
            page.list(said.stream());
            page.paragraph(
                    "Lamps apart are seen each on its own: which of the three readings holds for a driver nobody has"
                            + " measured, so the share kept is a range.");
        }
    }

    private void goingOut() {
        page.heading("Going out");
        page.table(GoingOut.HEADER, new GoingOut(swap).rows());
        page.list(new GoingOut(swap).notes());
    }

    private void results() {
        page.heading("At every speed, by " + swap.scenario().criterion().meaning());
        page.paragraph(
                "Extra distance: what the vehicle behind travels between the moments at which the earlier lamp and"
                        + " this one are seen. Gap needed: the smallest gap without contact. Outcome: at the gap kept.");
        page.table(
                List.of("speed", "lamp", "outcome", "gap kept", "gap needed", "extra distance"),
                swap.rows().stream()
                        .map(row -> List.of(
                                Text.speed(row.leg().speed()),
                                row.lamp().name(),
                                row.ending().phrase(),
                                Text.distance(row.leg().gap()),
                                ReportText.metres(row.ending().gapNeededM()),
                                ReportText.metres(row.extraM()))));
    }

    private void comparison() {
        page.heading("Other ways to say when a lamp is seen");
        page.paragraph(
                "The first row is the one used above. The others are models of the eye and conventions of measurement"
                        + " too; where they differ, the difference is the doubt to keep in mind. " + Criterion.SCALES);
        page.table(List.of("seen by", "lamp", "seen after", "earlier by"), ReportText.comparison(swap));
        page.list(swap.scenario().criteria().stream()
                .map(criterion -> criterion.scaled() + ": " + criterion.criterion() + "."));
    }

    private void assumptions() {
        page.heading("What was assumed");
        page.paragraph("The leader's brakes start their response when its stop-lamp circuit closes (time 0). The driver"
                + " behind starts to react when the lamp is seen, and not to anything else. Both brake in a"
                + " straight line, each at its own constant deceleration once the brakes have built up. A default"
                + " is a value that the scenario file leaves out.");
        page.table(
                List.of("key", "value", "from"),
                swap.scenario().inputs().stream().map(used -> List.of(used.key(), used.value(), origin(used))));
    }

    private String origin(ScenarioFile.Used used) {
        return used.isDefault() ? "default" : "file";
    }

    private void sources() {
        page.heading("Where each figure comes from");
        for (LampSwap.Lamp lamp : swap.lamps()) {
            out.element("h3", lamp.onset().label()).line();
            page.list(Stream.of(
                            lamp.onset().basis().stream(),
                            lamp.onset().riseTime(0.1, 0.9).stream()
                                    .map(rise -> "rise from 10 % to 90 %: " + Text.milliseconds(rise.inSeconds())),
                            lamp.caveats().map(caveat -> "caveat: " + caveat.text()))
                    .flatMap(lines -> lines));
        }
        out.element("h3", "Intensity and current").line();
        page.list(swap.notes());
        out.element("h3", "Motion").line();
        page.list(Stream.of(
                "Extra distance = speed × difference of the two moments. Outcome and gap needed: exact from the phases"
                        + " of constant jerk of both vehicles, without time steps."));
    }

    private void cautions() {
        page.heading("Cautions");
        out.open("ul", "class", "warn").line();
        Resource.text("cautions.txt")
                .lines()
                .forEach(line -> out.element("li", line).line());
        out.close().line();
    }

    private void evidence() {
        page.heading("What lamps did in the laboratory and on the road");
        page.paragraph("The evidence is mixed: drivers in laboratories respond earlier to a lamp that rises faster; in"
                + " traffic the effect is small, fades, or is not found. Standing says whether a figure was read"
                + " in its source.");
        Table table = Table.read(ReportHtml.class, "lamp_evidence.csv");
        List<String> columns = List.of("study", "setting", "compared", "effect", "note", "verdict", "standing");
        page.table(
                columns,
                table.rows().stream().map(row -> columns.stream().map(row::get).toList()));
    }
}
