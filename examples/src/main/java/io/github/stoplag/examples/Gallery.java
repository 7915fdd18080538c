package io.github.stoplag.examples;

import java.util.List;
import java.util.function.Function;

/** Every kind of picture, made from one invented scenario, each with the code that made it. */
final class Gallery {
    static final String PAGE = "gallery.html";
    static final String INDEX = "README.md";
    static final String TITLE = "Gallery of pictures";
    static final String ABOUT =
            "All pictures are made from the shipped scenario of a community minibus and a car behind"
                    + " it. Its figures, and the spreads of drivers and brakes, are invented. A probability here is the share"
                    + " of the drawn scenarios, in each of which the vehicle ahead brakes: it is no crash rate. A model is no"
                    + " proof of safety.";

    private static final List<Exhibit> EXHIBITS = List.of(
            new Exhibit("onset", Charts.class, List.of("onset", "point"), Charts::onset),
            new Exhibit("decay", GalleryLamps.class, List.of("decay", "falling"), GalleryLamps::decay),
            new Exhibit("distance_metric", Charts.class, List.of("gainedMetric", "line"), Charts::gainedMetric),
            new Exhibit("distance_us", Charts.class, List.of("gainedUs"), Charts::gainedUs),
            new Exhibit(
                    "stopping_metric",
                    GalleryStops.class,
                    List.of("stopping", "parts"),
                    swap -> GalleryStops.stopping(swap, true)),
            new Exhibit(
                    "stopping_us", GalleryStops.class, List.of("stopping"), swap -> GalleryStops.stopping(swap, false)),
            new Exhibit("road", RoadDiagram.class, List.of("of"), RoadDiagram::of),
            new Exhibit("gap_time", GalleryPairs.class, List.of("gap", "gapM"), GalleryPairs::gap),
            new Exhibit(
                    "time_space_pair",
                    GalleryPairs.class,
                    List.of("timeSpacePair", "chain"),
                    GalleryPairs::timeSpacePair),
            new Exhibit(
                    "time_space_chain",
                    GalleryPairs.class,
                    List.of("timeSpaceChain", "chain"),
                    GalleryPairs::timeSpaceChain),
            new Exhibit(
                    "outcomes_filament",
                    GalleryPairs.class,
                    List.of("outcomes", "closingKmh"),
                    swap -> GalleryPairs.outcomes(swap, 0)),
            new Exhibit(
                    "outcomes_led", GalleryPairs.class, List.of("outcomes"), swap -> GalleryPairs.outcomes(swap, 1)),
            new Exhibit(
                    "probability",
                    GallerySweeps.class,
                    List.of("traffic", "swept", "probability"),
                    GallerySweeps::probability),
            new Exhibit("closing_speed", GallerySweeps.class, List.of("swept", "closing"), GallerySweeps::closing),
            new Exhibit(
                    "tornado", GallerySensitivity.class, List.of("gapNeeded", "tornado"), GallerySensitivity::tornado),
            new Exhibit(
                    "sensitivity",
                    GallerySensitivity.class,
                    List.of("gapNeeded", "sensitivity"),
                    GallerySensitivity::sensitivity),
            new Exhibit(
                    "convergence", GallerySweeps.class, List.of("swept", "convergence"), GallerySweeps::convergence));

    private Gallery() {}

    /**
     * A picture to be made.
     *
     * @param id its name
     * @param source the class whose methods make it
     * @param methods the methods to show
     * @param maker makes it
     */
    private record Exhibit(String id, Class<?> source, List<String> methods, Function<LampSwap, Figure> maker) {}

    /**
     * A picture with its code.
     *
     * @param figure the picture
     * @param file the name of the source file
     * @param code the methods that made it
     */
    record Shown(Figure figure, String file, String code) {}

    static List<String> pictures() {
        return EXHIBITS.stream().map(exhibit -> exhibit.id + ".svg").toList();
    }

    /** Makes all pictures. */
    static List<Shown> of(LampSwap swap) {
        return EXHIBITS.stream()
                .map(exhibit -> new Shown(
                        exhibit.maker.apply(swap),
                        exhibit.source.getSimpleName() + ".java",
                        MethodText.of(exhibit.source, exhibit.methods)))
                .toList();
    }

    /** Gives the gallery as a page of its own. */
    static String html(List<Shown> shown) {
        return HtmlPage.text(TITLE, out -> {
            HtmlPage page = new HtmlPage(out);
            out.element("h1", TITLE).line();
            page.paragraph(ABOUT);
            for (Shown picture : shown) {
                page.heading(picture.figure.heading());
                page.figure(picture.figure);
                page.paragraph(picture.figure.description());
                out.open("details").element("summary", "The code that made it, from " + picture.file);
                page.code(picture.code);
                out.close().line();
            }
        });
    }

    /** Gives the gallery as an index in Markdown that shows the picture files beside it. */
    static String markdown(List<Shown> shown) {
        StringBuilder text = new StringBuilder("# " + TITLE + "\n\n" + ABOUT + "\n");
        for (Shown picture : shown) {
            text.append("\n## ").append(picture.figure.heading()).append("\n\n![");
            text.append(picture.figure.title()).append("](").append(picture.figure.fileName());
            text.append(")\n\n")
                    .append(picture.figure.description())
                    .append("\n\n<details><summary>The code that made");
            text.append(" it, from ").append(picture.file).append("</summary>\n\n```java\n");
            text.append(picture.code).append("\n```\n\n</details>\n");
        }
        return text.toString();
    }
}
