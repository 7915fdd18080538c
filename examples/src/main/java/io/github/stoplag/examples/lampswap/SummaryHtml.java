package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.HtmlPage;
import io.github.stoplag.examples.draw.Markup;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.file.Heading;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The answer on one printed page, A4 or US letter, to hand on. */
final class SummaryHtml {
    private static final String STYLE = """
            @page{margin:10mm 12mm}
            @media print{body{padding:0;max-width:none;font-size:8.6pt;line-height:1.28}h1{font-size:14pt;margin:0 0 4pt}
            h2{font-size:11pt;margin:7pt 0 3pt}p,ul{margin:3pt 0}figure{margin:5pt auto;width:88mm}
            .answers{display:grid;grid-template-columns:repeat(auto-fit,minmax(80mm,1fr));gap:4pt}
            th,td{padding:1pt 6pt 1pt 0;white-space:nowrap}table{font-size:7.4pt}.answer{padding:2pt 8pt;margin:3pt 0}.answer p,.answer ul{margin:2pt 0}
            .warn{padding:3pt 8pt 3pt 18pt;font-size:8.2pt}.warn li{margin:1pt 0}.films{font-size:7.8pt}td:last-child{white-space:normal}}
            """;

    /** With more lamps, one fewer if a film has its reservations, the page has no room for the picture. */
    private static final int MOST_WITH_PICTURE = 3;

    private SummaryHtml() {}

    /**
     * Writes the page.
     *
     * @param figure the picture that goes with it, if there is room
     */
    static String of(LampSwap swap, Figure figure) {
        Heading heading = swap.scenario().heading();
        return HtmlPage.text("Lamp swap on one page: " + heading.title(), STYLE, out -> write(swap, figure, out));
    }

    private static void write(LampSwap swap, Figure figure, Markup out) {
        HtmlPage page = new HtmlPage(out);
        FirstLook first = new FirstLook(swap);
        ReportHtml.head(swap, out);
        ReportHtml.answer(swap, out);
        page.heading("By day and by night");
        page.table(FirstLook.HEADER, first.furtherRows());
        if (swap.lamps().size() + (swap.banded() ? 1 : 0) <= MOST_WITH_PICTURE) {
            page.figure(figure);
        }
        page.paragraph("Seen above: by " + swap.scenario().criterion().criterion() + ". Driver behind: "
                + swap.scenario().follower().reaction() + " from seeing the lamp to the brake pedal, then "
                + swap.scenario().follower().deceleration() + "; vehicle in front: "
                + swap.scenario().leader().deceleration() + ". Gaps: "
                + String.join(
                        "; ",
                        swap.scenario().firstLook().stream()
                                .map(leg -> Text.distance(leg.gap()) + " at " + Text.speed(leg.speed()))
                                .toList())
                + ".");
        out.open("ul", "class", "warn").line();
        cautions(swap).forEach(caution -> out.element("li", caution).line());
        out.close().line();
    }

    private static Stream<String> cautions(LampSwap swap) {
        List<String> caveats = swap.lamps().stream()
                .flatMap(LampSwap.Lamp::caveats)
                .map(caveat -> caveat.text())
                .distinct()
                .toList();
        return Stream.concat(
                Stream.of(
                        "Stop lamps are type-approved: swapping the light source may be unlawful where you are. Local codes and licensed"
                                + " practice come first.",
                        "Load resistors get hot enough to burn; wiring needs its fuse.",
                        "A model is no proof of safety. A gain counts only if the driver behind responds to the lamp's onset; it is not a"
                                + " crash forecast."),
                Optional.of(caveats.size()).filter(count -> count > 0).stream()
                        .map(
                                count -> count + (count == 1 ? " caveat" : " caveats")
                                        + " on the lamps' light and on seeing it, and where each figure comes from: report.html."));
    }
}
