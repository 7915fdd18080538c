package io.github.stoplag.examples;

import io.github.stoplag.sight.Detection;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.stream.Stream;

/** The report as one page that needs nothing else: no script, no network, no other file. */
final class ReportHtml {
    private static final String STYLE = """
            :root{color-scheme:light dark;--ink:#1c232b;--page:#ffffff;--line:#d5dae0;--warn:#fff4d6}
            @media (prefers-color-scheme:dark){:root{--ink:#eef2f6;--page:#14191f;--line:#36404a;--warn:#3a2f12}}
            body{margin:0 auto;max-width:52rem;padding:1rem;background:var(--page);color:var(--ink);
            font:1rem/1.5 system-ui,"Segoe UI","DejaVu Sans",Arial,sans-serif}
            h1{font-size:1.6rem;line-height:1.25}h2{font-size:1.25rem;margin-top:2.2rem}
            .mark{display:inline-block;border:2px solid;border-radius:.3rem;padding:0 .5rem;font-weight:600}
            figure{margin:1.2rem 0;border:1px solid var(--line);border-radius:.4rem;overflow:hidden}
            figure svg{display:block;width:100%;height:auto}
            .wide{overflow-x:auto}
            table{border-collapse:collapse;width:100%;font-size:.92rem}
            table.many{min-width:42rem}
            th,td{border-bottom:1px solid var(--line);padding:.35rem .6rem .35rem 0;text-align:left;vertical-align:top}
            .warn{background:var(--warn);border-radius:.4rem;padding:.6rem 1rem .6rem 2rem}
            .warn li{margin:.5rem 0}
            @media print{figure,tr{break-inside:avoid}}
            """;

    private static final String NO_BREAK_SPACE = "\u00a0";

    private final LampSwap swap;
    private final Markup out;

    private ReportHtml(LampSwap swap, Markup out) {
        this.swap = swap;
        this.out = out;
    }

    static String of(LampSwap swap, List<Figure> figures) {
        return "<!DOCTYPE html>\n" + Markup.text(out -> new ReportHtml(swap, out).page(figures)) + "\n";
    }

    private void page(List<Figure> figures) {
        Scenario scenario = swap.scenario();
        out.open("html", "lang", "en", "xmlns", "http://www.w3.org/1999/xhtml")
                .line()
                .open("head")
                .line();
        out.empty("meta", "charset", "utf-8").line();
        out.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1")
                .line();
        out.element("title", "Lamp swap: " + scenario.title()).line();
        out.element("style", "\n" + STYLE + Figure.STYLE)
                .line()
                .close()
                .line()
                .open("body")
                .line();
        out.element("h1", scenario.title()).line();
        if (scenario.invented()) {
            out.open("p")
                    .element("span", "invented data", "class", "mark")
                    .text(" Vehicles, traffic and lamps of this scenario are made up to show the method.")
                    .close()
                    .line();
        }
        out.open("p");
        swap.lamps().forEach(lamp -> out.text(seen(lamp) + " "));
        out.close().line();
        ReportText.gain(swap).lines().forEach(line -> paragraph(line));
        results();
        figures.forEach(this::figure);
        assumptions();
        sources();
        cautions();
        evidence();
        out.close().close();
    }

    private String seen(LampSwap.Lamp lamp) {
        return lamp.detection() instanceof Detection.Seen seen
                ? "The " + lamp.name() + " lamp is seen "
                        + Text.milliseconds(seen.at().inSeconds()) + " after its circuit closes."
                : "The " + lamp.name() + " lamp is never seen: " + ((Detection.NeverSeen) lamp.detection()).reason()
                        + ".";
    }

    private void results() {
        heading("What it means on the road");
        paragraph(
                "Extra distance: what the vehicle behind travels between the moments at which the earlier lamp and this one are seen."
                        + " Gap needed: the smallest gap without contact. Outcome: at the gap kept.");
        table(
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

    private void figure(Figure figure) {
        out.open("figure").line();
        figure.writeInto(out);
        out.line().close().line();
    }

    private void assumptions() {
        heading("What was assumed");
        paragraph(
                "The leader's brakes start their response when its stop-lamp circuit closes (time 0). The driver behind starts to"
                        + " react when the lamp is seen, and not to anything else. Both brake in a straight line, each at its own constant"
                        + " deceleration once the brakes have built up. A default is a value that the scenario file leaves out.");
        table(
                List.of("key", "value", "from"),
                swap.scenario().inputs().stream()
                        .map(used -> List.of(used.key(), used.value(), used.isDefault() ? "default" : "file")));
    }

    private void sources() {
        heading("Where each figure comes from");
        for (LampSwap.Lamp lamp : swap.lamps()) {
            out.element("h3", lamp.onset().label()).line();
            list(Stream.of(
                            lamp.onset().basis().stream(),
                            lamp.onset().riseTime(0.1, 0.9).stream()
                                    .map(rise -> "rise from 10 % to 90 %: " + Text.milliseconds(rise.inSeconds())),
                            lamp.onset().caveats().stream().map(caveat -> "caveat: " + caveat.text()))
                    .flatMap(lines -> lines));
        }
        out.element("h3", "Intensity and current").line();
        list(swap.notes().stream());
        out.element("h3", "Seeing").line();
        list(
                Stream.of(
                        "Used: " + swap.scenario().detector().criterion() + ".",
                        "For comparison: " + swap.scenario().otherDetector().criterion() + ".",
                        "The criterion is a model of the eye; the two differ, and the difference is the doubt to keep in mind."));
        out.element("h3", "Motion").line();
        list(Stream.of(
                "Extra distance = speed × difference of the two moments. Outcome and gap needed: exact from the phases of"
                        + " constant jerk of both vehicles, without time steps."));
    }

    private void cautions() {
        heading("Cautions");
        out.open("ul", "class", "warn").line();
        Resource.text("cautions.txt")
                .lines()
                .forEach(line -> out.element("li", line).line());
        out.close().line();
    }

    private void evidence() {
        heading("What lamps did in the laboratory and on the road");
        paragraph(
                "The evidence is mixed: drivers in laboratories respond earlier to a lamp that rises faster; in traffic the"
                        + " effect is small, fades, or is not found. Standing says whether a figure was read in its source.");
        Table table = Table.read(ReportHtml.class, "lamp_evidence.csv");
        List<String> columns = List.of("study", "setting", "compared", "effect", "note", "verdict", "standing");
        table(
                columns,
                table.rows().stream().map(row -> columns.stream().map(row::get).toList()));
    }

    private void heading(String text) {
        out.element("h2", text).line();
    }

    private void paragraph(String text) {
        out.element("p", text).line();
    }

    private void list(Stream<String> items) {
        List<String> texts = items.toList();
        if (!texts.isEmpty()) {
            out.open("ul").line();
            texts.forEach(text -> out.element("li", text).line());
            out.close().line();
        }
    }

    private void table(List<String> header, Stream<List<String>> rows) {
        out.open("div", "class", "wide", "tabindex", "0")
                .open("table", "class", header.size() > 4 ? "many" : "few")
                .line()
                .open("thead")
                .open("tr");
        header.forEach(name -> out.element("th", name, "scope", "col"));
        out.close().close().line().open("tbody").line();
        rows.forEach(row -> {
            out.open("tr");
            row.forEach(field -> out.element("td", unbroken(field)));
            out.close().line();
        });
        out.close().close().close().line();
    }

    /** Keeps a number and its unit, and feet and their inches, on one line. */
    private static String unbroken(String text) {
        return text.replaceAll("(?<=[0-9]) (?=(km/h|mph|m|ft|in|ms|s)\\b)", NO_BREAK_SPACE)
                .replaceAll("(?<=ft) (?=[0-9])", NO_BREAK_SPACE);
    }
}
