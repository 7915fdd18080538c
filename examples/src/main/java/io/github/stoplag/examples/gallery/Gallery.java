package io.github.stoplag.examples.gallery;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.HtmlPage;
import io.github.stoplag.examples.draw.Markup;
import io.github.stoplag.examples.lamps.LampInput;
import io.github.stoplag.examples.lampswap.Charts;
import io.github.stoplag.examples.lampswap.DecisiveInstants;
import io.github.stoplag.examples.lampswap.LampSwap;
import io.github.stoplag.examples.lampswap.RoadDiagram;
import io.github.stoplag.examples.lampswap.Scenario;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Every kind of picture, made from one invented scenario, each with the code that made it. */
public final class Gallery {
    static final String PAGE = "gallery.html";
    static final String INDEX = "README.md";
    static final String TITLE = "Gallery of pictures";
    static final String ABOUT =
            "All pictures are made from the shipped scenario of a community minibus and a car behind"
                    + " it. Its figures, and the spreads of drivers and brakes, are invented. A probability here is the share"
                    + " of the drawn scenarios, in each of which the vehicle ahead brakes: it is no crash rate. A model is no"
                    + " proof of safety.";

    private static final String CODE = "The code that made it";

    private static final List<Exhibit> EXHIBITS = List.of(
            new Exhibit("onset", Charts::onset, List.of(new Cut(Charts.class, "onset", "point"))),
            new Exhibit("decay", GalleryLamps::decay, List.of(new Cut(GalleryLamps.class, "decay", "falling"))),
            new Exhibit(
                    "distance_metric", Charts::gainedMetric, List.of(new Cut(Charts.class, "gainedMetric", "line"))),
            new Exhibit("distance_us", Charts::gainedUs, List.of(new Cut(Charts.class, "gainedUs", "line"))),
            new Exhibit(
                    "stopping_metric",
                    swap -> GalleryStops.stopping(swap, true),
                    List.of(new Cut(GalleryStops.class, "stopping", "parts"))),
            new Exhibit(
                    "stopping_us",
                    swap -> GalleryStops.stopping(swap, false),
                    List.of(new Cut(GalleryStops.class, "stopping", "parts"))),
            new Exhibit(
                    "road",
                    RoadDiagram::of,
                    List.of(new Cut(RoadDiagram.class, "of"), new Cut(DecisiveInstants.class, "instants", "at"))),
            new Exhibit("gap_time", GalleryPairs::gap, List.of(new Cut(GalleryPairs.class, "gap", "gapM"))),
            new Exhibit(
                    "time_space_pair",
                    GalleryPairs::timeSpacePair,
                    List.of(new Cut(GalleryPairs.class, "timeSpacePair", "chain"))),
            new Exhibit(
                    "time_space_chain",
                    GalleryPairs::timeSpaceChain,
                    List.of(new Cut(GalleryPairs.class, "timeSpaceChain", "chain"))),
            new Exhibit(
                    "outcomes_filament",
                    swap -> GalleryPairs.outcomes(swap, 0),
                    List.of(new Cut(GalleryPairs.class, "outcomes", "closingKmh"))),
            new Exhibit(
                    "outcomes_led",
                    swap -> GalleryPairs.outcomes(swap, 1),
                    List.of(new Cut(GalleryPairs.class, "outcomes", "closingKmh"))),
            new Exhibit(
                    "probability",
                    GallerySweeps::probability,
                    List.of(new Cut(GallerySweeps.class, "traffic", "swept", "probability"))),
            new Exhibit(
                    "closing_speed",
                    GallerySweeps::closing,
                    List.of(new Cut(GallerySweeps.class, "traffic", "swept", "closing"))),
            new Exhibit(
                    "tornado",
                    GallerySensitivity::tornado,
                    List.of(
                            new Cut(GallerySweeps.class, "traffic"),
                            new Cut(GallerySensitivity.class, "gapNeeded", "tornado"))),
            new Exhibit(
                    "sensitivity",
                    GallerySensitivity::sensitivity,
                    List.of(
                            new Cut(GallerySweeps.class, "traffic"),
                            new Cut(GallerySensitivity.class, "gapNeeded", "sensitivity"))),
            new Exhibit(
                    "convergence",
                    GallerySweeps::convergence,
                    List.of(new Cut(GallerySweeps.class, "traffic", "swept", "convergence"))));

    private Gallery() {}

    /**
     * A picture to be made.
     *
     * @param id its name
     * @param maker makes it
     * @param cuts the methods to show
     */
    private record Exhibit(String id, Function<LampSwap, Figure> maker, List<Cut> cuts) {
        String code() {
            return cuts.stream().map(Cut::text).collect(Collectors.joining("\n\n"));
        }
    }

    /**
     * Methods of a class.
     *
     * @param source the class
     * @param methods their names
     */
    private record Cut(Class<?> source, List<String> methods) {
        Cut(Class<?> source, String... methods) {
            this(source, List.of(methods));
        }

        String text() {
            return "// " + source.getSimpleName() + ".java\n\n" + MethodText.of(source, methods);
        }
    }

    /**
     * A picture with its code.
     *
     * @param figure the picture
     * @param code the methods that made it
     */
    record Shown(Figure figure, String code) {}

    /** Both vehicles and lamps of the shipped scenario, with the moments at which the lamps are seen. */
    static LampSwap scenario() {
        return LampSwap.of(Scenario.shipped());
    }

    private static String scenarioCode() {
        return new Cut(Gallery.class, "scenario").text() + "\n\n" + new Cut(LampSwap.class, "lamp").text() + "\n\n"
                + new Cut(LampInput.class, "ofBulb").text();
    }

    public static List<String> pictures() {
        return EXHIBITS.stream().map(exhibit -> exhibit.id + ".svg").toList();
    }

    /** Makes all pictures. */
    static List<Shown> of(LampSwap swap) {
        return EXHIBITS.stream()
                .map(exhibit -> new Shown(exhibit.maker.apply(swap), exhibit.code()))
                .toList();
    }

    /** Gives the gallery as a page of its own. */
    static String html(List<Shown> shown) {
        return HtmlPage.text(TITLE, out -> {
            HtmlPage page = new HtmlPage(out);
            out.element("h1", TITLE).line();
            page.paragraph(ABOUT);
            code(out, page, "The scenario, in code", scenarioCode());
            for (Shown picture : shown) {
                page.heading(picture.figure.heading());
                page.figure(picture.figure);
                page.paragraph(picture.figure.description());
                code(out, page, CODE, picture.code);
            }
        });
    }

    private static void code(Markup out, HtmlPage page, String summary, String code) {
        out.open("details").element("summary", summary);
        page.code(code);
        out.close().line();
    }

    /** Gives the gallery as an index in Markdown that shows the picture files beside it. */
    static String markdown(List<Shown> shown) {
        StringBuilder text = new StringBuilder("# " + TITLE + "\n\n" + ABOUT + "\n");
        code(text, "The scenario, in code", scenarioCode());
        for (Shown picture : shown) {
            text.append("\n## ").append(picture.figure.heading()).append("\n\n![");
            text.append(picture.figure.title()).append("](").append(picture.figure.fileName());
            text.append(")\n\n").append(picture.figure.description()).append('\n');
            code(text, CODE, picture.code);
        }
        return text.toString();
    }

    private static void code(StringBuilder text, String summary, String code) {
        text.append("\n<details><summary>").append(summary).append("</summary>\n\n```java\n");
        text.append(code).append("\n```\n\n</details>\n");
    }
}
