package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.HtmlPage;
import io.github.stoplag.examples.draw.Markup;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.Resource;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.source.Table;
import java.util.List;
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
        Heading heading = swap.scenario().heading();
        out.element("h1", heading.title()).line();
        if (heading.invented()) {
            out.open("p")
                    .element("span", Heading.INVENTED_DATA, "class", "mark")
                    .text(
                            swap.filmed()
                                    ? " Vehicles, traffic and the LED lamp of this scenario are made up to show the"
                                            + " method; the measured lamp is the one filmed."
                                    : " Vehicles, traffic and lamps of this scenario are made up to show the method.")
                    .close()
                    .line();
        }
        out.open("p");
        swap.lamps().forEach(lamp -> out.text(seen(lamp) + " "));
        out.close().line();
        page.paragraph(ReportText.gain(swap));
        results();
        figures.forEach(page::figure);
        comparison();
        assumptions();
        sources();
        cautions();
        evidence();
    }

    private String seen(LampSwap.Lamp lamp) {
        return lamp.detection() instanceof Detection.Seen seen
                ? "The " + lamp.name() + " lamp is seen "
                        + Text.milliseconds(seen.at().inSeconds()) + " after its circuit closes."
                : "The " + lamp.name() + " lamp is never seen: " + ((Detection.NeverSeen) lamp.detection()).reason()
                        + ".";
    }

    private void results() {
        page.heading("What it means on the road");
        page.paragraph(
                "Extra distance: what the vehicle behind travels between the moments at which the earlier lamp and this one are seen."
                        + " Gap needed: the smallest gap without contact. Outcome: at the gap kept.");
        page.table(
                List.of("speed", "lamp", "outcome", "gap kept", "gap needed", "extra distance"),
                swap.rows().stream().map(row -> {
                    Verdict verdict = Verdict.of(row);
                    return List.of(
                            Text.speed(row.leg().speed()),
                            row.lamp().name(),
                            verdict.phrase(),
                            Text.distance(row.leg().gap()),
                            ReportText.distance(verdict.gapNeeded()),
                            ReportText.distance(row.extraDistance()));
                }));
    }

    private void comparison() {
        page.heading("Other ways to say when a lamp is seen");
        page.paragraph(
                "The first row is the one used above. The others are models of the eye and conventions of measurement"
                        + " too; where they differ, the difference is the doubt to keep in mind. " + Criterion.SCALES);
        page.table(
                List.of("seen by", swap.lamps().get(0).name() + " lamp", "LED lamp", "gained by the LED lamp"),
                ReportText.comparison(swap));
        page.list(swap.scenario().criteria().stream()
                .map(criterion -> criterion.scaled() + ": " + criterion.criterion() + "."));
    }

    private void assumptions() {
        page.heading("What was assumed");
        page.paragraph(
                "The leader's brakes start their response when its stop-lamp circuit closes (time 0). The driver behind starts to"
                        + " react when the lamp is seen, and not to anything else. Both brake in a straight line, each at its own constant"
                        + " deceleration once the brakes have built up. A default is a value that the scenario file leaves out.");
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
                "Extra distance = speed × difference of the two moments. Outcome and gap needed: exact from the phases of"
                        + " constant jerk of both vehicles, without time steps."));
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
        page.paragraph(
                "The evidence is mixed: drivers in laboratories respond earlier to a lamp that rises faster; in traffic the"
                        + " effect is small, fades, or is not found. Standing says whether a figure was read in its source.");
        Table table = Table.read(ReportHtml.class, "lamp_evidence.csv");
        List<String> columns = List.of("study", "setting", "compared", "effect", "note", "verdict", "standing");
        page.table(
                columns,
                table.rows().stream().map(row -> columns.stream().map(row::get).toList()));
    }
}
