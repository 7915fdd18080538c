package io.github.stoplag.examples.gallery;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lampswap.LampSwap;
import io.github.stoplag.examples.program.ProgramCommand;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The program {@code gallery}: every kind of picture with the code that made it. */
@Command(
        name = "gallery",
        description = {
            "Makes every kind of picture from the shipped scenario, invented data, and a page",
            "that shows each with the code that made it."
        },
        footer = {
            "",
            "Writes gallery.html, which needs nothing else, and the pictures as SVG files.",
            "Exit code: 0 done; 1 failed; 2 an input cannot be used: one line says why,",
            "and nothing is written."
        })
public final class GalleryCommand extends ProgramCommand {
    @Option(
            names = "--markdown",
            description = "write an index in Markdown, README.md, instead of the page, as in examples/gallery")
    private boolean markdown;

    @Override
    protected List<String> fileNames() {
        return Stream.concat(Stream.of(markdown ? Gallery.INDEX : Gallery.PAGE), Gallery.pictures().stream())
                .toList();
    }

    @Override
    protected Results results() {
        LampSwap swap = Gallery.scenario();
        List<Gallery.Shown> shown = Gallery.of(swap);
        Map<String, String> files = new LinkedHashMap<>();
        if (markdown) {
            files.put(Gallery.INDEX, Gallery.markdown(shown));
        } else {
            files.put(Gallery.PAGE, Gallery.html(shown));
        }
        shown.forEach(picture ->
                files.put(picture.figure().fileName(), picture.figure().svg()));
        List<String> lines = Stream.concat(
                        Stream.of(swap.scenario().heading().toString(), ""),
                        shown.stream()
                                .map(Gallery.Shown::figure)
                                .flatMap(figure -> Text.wrapped("  " + figure.id() + ": ", figure.heading()).stream()))
                .toList();
        return new Results(lines, files);
    }
}
