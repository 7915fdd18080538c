package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** The pictures and the page as a reader's program meets them. */
class PagesTest {
    @TempDir
    Path folder;

    private String produced(String name, String... more) throws IOException {
        Path results = folder.resolve("results");
        assertThat(Program.lampSwap(results, more).exitCode()).isZero();
        return Files.readString(results.resolve(name));
    }

    private static Document parse(String xml) throws IOException, SAXException, ParserConfigurationException {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
    }

    private static void assertSelfContained(String text) {
        assertThat(text.replace("http://www.w3.org/2000/svg", "").replace("http://www.w3.org/1999/xhtml", ""))
                .doesNotContain("http:", "https:", "href=", "src=", "url(", "@import", "<script", "<image", "<iframe")
                .doesNotContainPattern("\\son[a-z]+=");
    }

    @ParameterizedTest
    @ValueSource(strings = {"onset.svg", "distance_metric.svg", "distance_us.svg", "road.svg"})
    void pictureHasTitleDescriptionTextAndNothingFromOutside(String name) throws Exception {
        String svg = produced(name);
        Element root = parse(svg).getDocumentElement();
        assertThat(root.getLocalName()).isEqualTo("svg");
        assertThat(root.getAttribute("role")).isEqualTo("img");
        Element title = first(root, "title");
        Element description = first(root, "desc");
        assertThat(root.getAttribute("aria-labelledby"))
                .isEqualTo(title.getAttribute("id") + " " + description.getAttribute("id"));
        assertThat(title.getTextContent()).contains("invented data");
        assertThat(description.getTextContent()).matches("(?s).*[0-9] (ms|m|ft|km/h).*");
        assertThat(root.getElementsByTagNameNS("*", "text").getLength()).isGreaterThan(8);
        assertThat(svg.length()).isLessThan(20_000);
        assertThat(svg).contains("prefers-color-scheme:dark");
        assertSelfContained(svg);
    }

    private static Element first(Element root, String name) {
        return (Element) root.getElementsByTagNameNS("*", name).item(0);
    }

    @Test
    void nothingIsDrawnOutsideThePicture() throws Exception {
        for (String name : new String[] {"onset.svg", "distance_metric.svg", "distance_us.svg", "road.svg"}) {
            Element root = parse(produced(name)).getDocumentElement();
            double width = LineChart.WIDTH;
            assertThat(root.getAttribute("viewBox")).startsWith("0 0 640 ");
            NodeList texts = root.getElementsByTagNameNS("*", "text");
            for (int i = 0; i < texts.getLength(); i++) {
                Element text = (Element) texts.item(i);
                if (!text.hasAttribute("transform")) {
                    double x = Double.parseDouble(text.getAttribute("x"));
                    // 0.54 em is wider than the average letter of the fonts asked for
                    double length = text.getTextContent().length() * 0.54 * size(text);
                    double start = x
                            - length
                                    * switch (text.getAttribute("text-anchor")) {
                                        case "middle" -> 0.5;
                                        case "end" -> 1;
                                        default -> 0;
                                    };
                    assertThat(start).as(name + ": " + text.getTextContent()).isGreaterThan(-6);
                    assertThat(start + length)
                            .as(name + ": " + text.getTextContent())
                            .isLessThan(width + 6);
                }
            }
        }
    }

    private static double size(Element text) {
        return switch (text.getAttribute("class")) {
            case "sl-title" -> 19;
            case "sl-note" -> 15;
            default -> 17;
        };
    }

    @Test
    void pageIsWellFormedSelfContainedAndSaysWhatItRestsOn() throws Exception {
        String html = produced("report.html");
        assertThat(html).startsWith("<!DOCTYPE html>\n<html");
        Document page = parse(html);
        assertThat(page.getElementsByTagNameNS("http://www.w3.org/2000/svg", "svg")
                        .getLength())
                .isEqualTo(4);
        assertSelfContained(html);
        Set<String> ids = new HashSet<>();
        NodeList all = page.getElementsByTagNameNS("*", "*");
        for (int i = 0; i < all.getLength(); i++) {
            String id = ((Element) all.item(i)).getAttribute("id");
            assertThat(id.isEmpty() || ids.add(id)).as("id " + id + " once").isTrue();
        }
        assertThat(page.getDocumentElement().getTextContent())
                .contains("invented data")
                .contains("What was assumed", "follower.reaction", "detector.eye.threshold")
                .contains(
                        "Where each figure comes from",
                        "tungsten resistivity",
                        "filament from its rating: 26 W at 13.5 V")
                .contains("Lamp law and type approval", "Load resistors get hot", "Fuses and outage monitors")
                .contains("A kinematic gain is not a crash forecast")
                .contains("DOT HS 811 712", "no conclusion", "75 crashes with it against 67 without");
    }

    @Test
    void realScenarioIsNotMarkedInventedAndItsTitleIsEscaped() throws Exception {
        String html = produced(
                "report.html",
                "--scenario",
                Program.scenario(folder, "invented", "no", "title", "Bus <1> & \"2\"")
                        .toString());
        Document page = parse(html);
        assertThat(page.getElementsByTagNameNS("*", "h1").item(0).getTextContent())
                .isEqualTo("Bus <1> & \"2\"");
        assertThat(page.getDocumentElement().getTextContent()).doesNotContain("invented data");
    }

    @Test
    void picturesStayLegibleWhenNothingIsSeen() throws Exception {
        String html = produced(
                "report.html",
                "--scenario",
                Program.scenario(folder, "detector.eye.threshold", "500 cd", "speeds", "250 km/h")
                        .toString());
        assertThat(parse(html).getDocumentElement().getTextContent())
                .contains("With the filament lamp: never seen", "With the LED lamp: never seen");
    }
}
