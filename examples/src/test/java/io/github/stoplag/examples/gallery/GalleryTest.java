package io.github.stoplag.examples.gallery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.examples.Pictures;
import io.github.stoplag.examples.Program;
import io.github.stoplag.examples.file.Resource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The gallery: every picture is good, is shown with the code that was run, and is the one committed. */
class GalleryTest {
    private static final Path COMMITTED = Path.of("gallery");
    private static final Path SOURCE = Path.of("src", "main", "java", "io", "github", "stoplag", "examples");
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]+)?");

    @TempDir
    static Path folder;

    private static Path page = Path.of("");
    private static Path index = Path.of("");

    @BeforeAll
    static void run() {
        page = folder.resolve("page");
        index = folder.resolve("index");
        Program run = Program.into(page, "gallery");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out()).contains("invented data").contains("gallery.html and 17 pictures.");
        assertThat(Program.into(index, "gallery", "--markdown").exitCode()).isZero();
    }

    static List<String> pictures() {
        return Gallery.pictures();
    }

    @ParameterizedTest
    @MethodSource("pictures")
    void pictureIsGoodAndMarkedInvented(String name) throws Exception {
        String svg = Files.readString(page.resolve(name));
        Pictures.assertGood(svg);
        assertThat(Pictures.title(svg)).contains("invented data");
    }

    /** Non-regression: the pictures and the index kept with the sources are those the program makes now. */
    @Test
    void committedGalleryIsWhatTheProgramMakes() throws IOException {
        try (Stream<Path> kept = Files.list(COMMITTED);
                Stream<Path> made = Files.list(index)) {
            assertThat(kept.map(Path::getFileName))
                    .as(renewal("the files"))
                    .containsExactlyInAnyOrderElementsOf(
                            made.map(Path::getFileName).toList());
        }
        try (Stream<Path> made = Files.list(index)) {
            for (Path file : made.toList()) {
                assertSame(Files.readString(COMMITTED.resolve(file.getFileName())), Files.readString(file), file);
            }
        }
    }

    /** Words must be the same, numbers may differ by what another processor's last bit can make of them. */
    private static void assertSame(String kept, String made, Path file) {
        String what = renewal(String.valueOf(file.getFileName()));
        assertThat(NUMBER.matcher(kept).replaceAll("#"))
                .as(what)
                .isEqualTo(NUMBER.matcher(made).replaceAll("#"));
        List<Double> numbers = numbers(made);
        assertThat(numbers(kept))
                .as(what)
                .zipSatisfy(numbers, (a, b) -> assertThat(a).isCloseTo(b, within(0.11)));
    }

    private static List<Double> numbers(String text) {
        return NUMBER.matcher(text)
                .results()
                .map(MatchResult::group)
                .map(Double::valueOf)
                .toList();
    }

    private static String renewal(String what) {
        return what + " in examples/gallery; to renew them, look at the new ones, then run: mvn -q -pl examples -am"
                + " compile exec:java -Dexec.args=\"gallery --markdown --out examples/gallery\"";
    }

    @Test
    void pageShowsEveryPictureWithItsCodeAndNeedsNothingElse() throws Exception {
        String html = Files.readString(page.resolve("gallery.html"));
        Document parsed = Pictures.parse(html);
        Pictures.assertSelfContained(html);
        assertThat(parsed.getElementsByTagNameNS("http://www.w3.org/2000/svg", "svg")
                        .getLength())
                .isEqualTo(Gallery.pictures().size());
        NodeList codes = parsed.getElementsByTagNameNS("*", "code");
        assertThat(codes.getLength()).isEqualTo(1 + Gallery.pictures().size());
        assertThat(codes.item(0).getTextContent()).contains("static LampSwap scenario()", "switchOn(");
        for (int i = 1; i < codes.getLength(); i++) {
            assertThat(codes.item(i).getTextContent()).contains("static Figure ");
        }
        Pictures.assertIdsStandOnce(parsed);
        assertThat(parsed.getDocumentElement().getTextContent())
                .contains("invented", "no crash rate", "A model is no proof of safety");
    }

    /** The shown code is cut out of copies of the sources; they must be the sources. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "gallery/Gallery",
                "gallery/GalleryLamps",
                "gallery/GalleryPairs",
                "gallery/GalleryStops",
                "gallery/GallerySweeps",
                "gallery/GallerySensitivity",
                "lampswap/Charts",
                "lampswap/DecisiveInstants",
                "lampswap/LampSwap",
                "lampswap/RoadDiagram"
            })
    void codeIsCutOutOfTheSourceThatIsCompiled(String type) throws IOException {
        assertThat(Resource.text(type + ".java")).isEqualTo(Files.readString(SOURCE.resolve(type + ".java")));
    }

    @Test
    void methodsAreCutOutWhole() throws IOException {
        String code = MethodText.of(GalleryPairs.class, List.of("gap", "gapM"));
        assertThat(code)
                .startsWith("/** How the gap shrinks")
                .contains("static Figure gap(LampSwap swap) {", "private static LineChart.Series gap(Pair pair")
                .endsWith("return Math.max(0, gapM);\n}");
        assertThat(code.chars().filter(c -> c == '{').count())
                .isEqualTo(code.chars().filter(c -> c == '}').count());
        assertThatThrownBy(() -> MethodText.of(GalleryPairs.class, List.of("nothing")))
                .hasMessage("no method nothing in the source of GalleryPairs");
    }

    /**
     * The parts of a bar against the closed form of a stop: v (lag + reaction + dead + build-up/2) + v²/2a − a t²/24.
     */
    @ParameterizedTest
    @CsvSource({"stopping_metric, 3.6, 1", "stopping_us, 2.2369362920544, 0.3048"})
    void barsSumUpToTheClosedForm(String name, double unitsPerMps, double unitM) throws Exception {
        Element root =
                Pictures.parse(Files.readString(page.resolve(name + ".svg"))).getDocumentElement();
        String description = root.getElementsByTagNameNS("*", "desc").item(0).getTextContent();
        List<MatchResult> stops = Pattern.compile("([0-9.]+) (?:m|ft) from ([0-9]+)")
                .matcher(description)
                .results()
                .toList();
        assertThat(stops).hasSizeGreaterThan(5);
        for (MatchResult stop : stops) {
            double v = Double.parseDouble(stop.group(2)) / unitsPerMps;
            double expectedM = v * (0.128 + 1.3 + 0.1 + 0.1) + v * v / 12 - 6 * 0.04 / 24;
            assertThat(Double.parseDouble(stop.group(1)) * unitM).isCloseTo(expectedM, within(0.006 * expectedM));
        }
    }

    /** At equal speeds and from then on equal reaction, the outcome with the later lamp is never milder in the map. */
    @Test
    void mapWithTheLaterLampHasNoFewerContacts() throws Exception {
        assertThat(without("outcomes_filament")).isLessThan(without("outcomes_led"));
    }

    private static long without(String name) throws IOException {
        String svg = Files.readString(page.resolve(name + ".svg"));
        return Pattern.compile("class=\"sl-none\"").matcher(svg).results().count();
    }
}
