package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.examples.draw.LineChart;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** What every picture of every program has to be. */
public final class Pictures {
    private Pictures() {}

    public static Document parse(String xml) throws IOException, SAXException, ParserConfigurationException {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
    }

    public static void assertSelfContained(String text) {
        assertThat(text.replace("http://www.w3.org/2000/svg", "").replace("http://www.w3.org/1999/xhtml", ""))
                .doesNotContain("http:", "https:", "href=", "src=", "url(", "@import", "<script", "<image", "<iframe")
                .doesNotContainPattern("\\son[a-z]+=");
    }

    public static void assertIdsStandOnce(Document page) {
        Set<String> ids = new HashSet<>();
        for (Element element : all(page.getDocumentElement(), "*")) {
            String id = element.getAttribute("id");
            assertThat(id.isEmpty() || ids.add(id)).as("id " + id + " once").isTrue();
        }
    }

    /** A title, a description with a figure, text as text, nothing from outside, both backgrounds, no text cut off. */
    public static void assertGood(String svg) throws Exception {
        Element root = parse(svg).getDocumentElement();
        assertThat(root.getLocalName()).isEqualTo("svg");
        assertThat(root.getAttribute("role")).isEqualTo("img");
        Element title = first(root, "title");
        Element description = first(root, "desc");
        assertThat(root.getAttribute("aria-labelledby"))
                .isEqualTo(title.getAttribute("id") + " " + description.getAttribute("id"));
        assertThat(description.getTextContent()).matches("(?s).*[0-9] (ms|m|ft|km/h|A|%).*");
        assertThat(root.getElementsByTagNameNS("*", "text").getLength()).isGreaterThan(8);
        assertThat(svg.length()).isLessThan(24_000);
        assertThat(svg).contains("prefers-color-scheme:dark");
        assertSelfContained(svg);
        assertNothingOutside(root);
    }

    public static String title(String svg) throws Exception {
        return first(parse(svg).getDocumentElement(), "title").getTextContent();
    }

    private static Element first(Element root, String name) {
        return (Element) root.getElementsByTagNameNS("*", name).item(0);
    }

    /** A box in the coordinates of the drawing. */
    record Box(String what, double left, double top, double right, double bottom) {
        boolean meets(Box other) {
            return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
        }
    }

    /** Gives the boxes of all texts that are not turned. */
    static List<Box> texts(Element root) {
        List<Box> boxes = new ArrayList<>();
        for (Element text : all(root, "text")) {
            if (!text.hasAttribute("transform")) {
                double x = Double.parseDouble(text.getAttribute("x"));
                double y = Double.parseDouble(text.getAttribute("y"));
                // 0.54 em is wider than the average letter of the fonts asked for
                double length = text.getTextContent().length() * 0.54 * size(text);
                double start = x
                        - length
                                * switch (text.getAttribute("text-anchor")) {
                                    case "middle" -> 0.5;
                                    case "end" -> 1;
                                    default -> 0;
                                };
                boxes.add(new Box(
                        text.getTextContent(), start, y - 0.75 * size(text), start + length, y + 0.22 * size(text)));
            }
        }
        return boxes;
    }

    /** Gives the boxes of all outlines, which are polygons. */
    static List<Box> outlines(Element root) {
        return all(root, "polygon").stream()
                .map(polygon -> {
                    double[] xy = Stream.of(polygon.getAttribute("points").split("[ ,]"))
                            .mapToDouble(Double::parseDouble)
                            .toArray();
                    DoubleSummaryStatistics x = every(xy, 0);
                    DoubleSummaryStatistics y = every(xy, 1);
                    return new Box(polygon.getAttribute("class"), x.getMin(), y.getMin(), x.getMax(), y.getMax());
                })
                .toList();
    }

    private static DoubleSummaryStatistics every(double[] xy, int first) {
        return IntStream.range(0, xy.length / 2)
                .mapToDouble(i -> xy[2 * i + first])
                .summaryStatistics();
    }

    private static List<Element> all(Element root, String name) {
        NodeList found = root.getElementsByTagNameNS("*", name);
        return IntStream.range(0, found.getLength())
                .mapToObj(i -> (Element) found.item(i))
                .toList();
    }

    private static void assertNothingOutside(Element root) {
        assertThat(root.getAttribute("viewBox")).startsWith("0 0 640 ");
        assertThat(texts(root)).allSatisfy(text -> {
            assertThat(text.left()).isGreaterThan(-6);
            assertThat(text.right()).isLessThan(LineChart.WIDTH + 6.0);
        });
        double height = Double.parseDouble(root.getAttribute("viewBox").substring("0 0 640 ".length()));
        for (Element text : all(root, "text")) {
            if (text.hasAttribute("transform")) {
                double middle = Double.parseDouble(
                        text.getAttribute("transform").replaceAll("translate\\(\\S+ (\\S+)\\) rotate\\(-90\\)", "$1"));
                double half = text.getTextContent().length() * 0.54 * size(text) / 2;
                assertThat(middle - half).as(text.getTextContent()).isGreaterThan(0);
                assertThat(middle + half).as(text.getTextContent()).isLessThan(height);
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
}
