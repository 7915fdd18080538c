package io.github.stoplag.examples.sweep;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.HtmlPage;
import io.github.stoplag.examples.file.Heading;
import java.util.List;

/** The report of a sweep as a page. */
final class SweepPage {
    private SweepPage() {}

    static String of(SweepStudy study, List<Figure> figures) {
        String title = study.plan().title();
        return HtmlPage.text(title, out -> {
            HtmlPage page = new HtmlPage(out);
            out.element("h1", title).line();
            if (study.plan().invented()) {
                out.open("p")
                        .element("span", Heading.INVENTED_DATA, "class", "mark")
                        .close()
                        .line();
            }
            out.element("pre", String.join("\n", SweepText.of(study)), "class", "wide", "tabindex", "0")
                    .line();
            figures.forEach(page::figure);
            page.heading("Plan");
            page.paragraph("The values of all scenarios follow from these lines; their SHA-256 is "
                    + study.plan().digest() + ".");
            out.element("pre", study.plan().text(), "class", "wide", "tabindex", "0")
                    .line();
        });
    }
}
