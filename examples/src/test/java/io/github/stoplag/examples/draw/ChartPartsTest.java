package io.github.stoplag.examples.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.stoplag.examples.Pictures;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The chart parts that take plain figures: what is drawn stands where the figures say. */
class ChartPartsTest {
    private static final List<String> NOTES = List.of("invented data");

    private static Figure bars() {
        return new StackedBars(
                        NOTES,
                        "stopping distance (m)",
                        "speed (km/h)",
                        List.of(
                                new StackedBars.Part("reaction", 1),
                                new StackedBars.Part("lamp lag", 4),
                                new StackedBars.Part("braking", 2)),
                        List.of(
                                new StackedBars.Bar("50", List.of(13.9, 1.4, 20.0)),
                                new StackedBars.Bar("100", List.of(27.8, 2.8, 69.4))),
                        "m")
                .figure("bars", "Stopping distance by part", "Stops in 35.3 m and 100 m.");
    }

    private static Figure heat() {
        List<List<OptionalDouble>> cells = new ArrayList<>();
        for (int row = 0; row < 3; row++) {
            int at = row;
            cells.add(IntStream.range(0, 5)
                    .mapToObj(
                            column -> column > at ? OptionalDouble.of(12.0 * column - 7 * at) : OptionalDouble.empty())
                    .toList());
        }
        return new HeatMap(
                        NOTES,
                        "speed (km/h)",
                        "gap (m)",
                        "no contact",
                        "km/h",
                        List.of(10.0, 20.0, 30.0, 40.0),
                        List.of(30.0, 50.0, 70.0, 90.0, 110.0),
                        List.of(10.0, 20.0, 30.0),
                        cells)
                .figure("heat", "Closing speed at contact", "At 110 km/h and 10 m contact at 48 km/h.");
    }

    private static Figure probability() {
        return new ProbabilityChart(
                        NOTES,
                        "gap (s)",
                        "contact probability (%)",
                        List.of(
                                new ProbabilityChart.Curve("filament", 0, points(0.8)),
                                new ProbabilityChart.Curve("LED", 1, points(0.6))))
                .figure("probability", "How probable a contact is", "At 1 s 40 % with the filament lamp.");
    }

    private static List<ProbabilityChart.Point> points(double top) {
        return IntStream.rangeClosed(0, 8)
                .mapToObj(i -> {
                    double p = top * Math.exp(-0.1 * i * i);
                    return new ProbabilityChart.Point(0.25 * i, p, 0.9 * p, Math.min(1, 1.1 * p));
                })
                .toList();
    }

    private static Figure distribution() {
        return new DistributionChart(
                        NOTES,
                        "closing speed (km/h)",
                        "contacts, % of all draws in each 5 km/h",
                        List.of(
                                new DistributionChart.Steps(
                                        "filament: half below 12 km/h",
                                        0,
                                        List.of(0.0, 5.0, 10.0, 15.0, 20.0),
                                        List.of(3.0, 5.0, 4.0, 1.0),
                                        OptionalDouble.of(12)),
                                new DistributionChart.Steps(
                                        "LED: half below 9 km/h",
                                        1,
                                        List.of(0.0, 5.0, 10.0, 15.0, 20.0),
                                        List.of(3.0, 4.0, 2.0, 0.5),
                                        OptionalDouble.of(9))))
                .figure("distribution", "How fast contacts are", "Half of the contacts below 12 km/h and 9 km/h.");
    }

    private static Figure tornado() {
        return new TornadoChart(
                        NOTES,
                        "closing speed (km/h)",
                        20,
                        List.of(
                                new TornadoChart.Swing("gap: 20 m to 30 m", 26, 12),
                                new TornadoChart.Swing("reaction: 0.8 s to 1.6 s", 6, 31),
                                new TornadoChart.Swing("build-up: 0.1 s to 0.3 s", 21, 24)))
                .figure("tornado", "What moves the closing speed", "The reaction moves it from 6 km/h to 31 km/h.");
    }

    private static Figure sensitivity() {
        return new SensitivityChart(
                        NOTES,
                        List.of(
                                new SensitivityChart.Index("gap", 0.12, 0.02, 0.2, 0.03),
                                new SensitivityChart.Index("reaction", 0.6, 0.03, 0.75, 0.04)))
                .figure("sensitivity", "Whose spread matters", "The reaction alone brings 60 % of the variance.");
    }

    static Stream<Figure> figures() {
        return Stream.of(bars(), heat(), probability(), distribution(), tornado(), sensitivity());
    }

    @ParameterizedTest
    @MethodSource("figures")
    void isWellFormedTitledLabelledAndSelfContained(Figure figure) throws Exception {
        String svg = figure.svg();
        Pictures.assertGood(svg);
        assertThat(Pictures.title(svg)).contains("invented data");
        assertThat(texts(svg)).anyMatch(text -> text.matches(".*\\((m|s|km/h|%)\\)"));
    }

    @Test
    void barsAreAsLongAsTheirParts() throws Exception {
        List<Element> boxes = ofClass(bars().svg(), "rect", "sl-cell");
        // three of the legend, then two bars of three parts
        assertThat(boxes).hasSize(9);
        double perMetre = width(boxes.get(6)) / 27.8;
        assertThat(width(boxes.get(3))).isCloseTo(13.9 * perMetre, within());
        assertThat(width(boxes.get(7))).isCloseTo(2.8 * perMetre, within());
        assertThat(number(boxes.get(8), "x")).isCloseTo(number(boxes.get(7), "x") + width(boxes.get(7)), within());
        assertThat(texts(bars().svg())).contains("35.3 m", "100 m", "50", "100", "27.8");
    }

    @Test
    void cellsHoldTheirFiguresAndLinesPartTheClasses() throws Exception {
        String svg = heat().svg();
        assertThat(texts(svg)).contains("48", "34", "no contact", "below 10 km/h", "40 km/h and above");
        // legend and cells
        assertThat(ofClass(svg, "rect", "sl-none")).hasSize(1 + 6);
        assertThat(ofClass(svg, "rect", "sl-r4")).hasSize(1 + 2);
        assertThat(ofClass(svg, "path", "sl-rim").get(0).getAttribute("d").split("M", -1))
                .hasSizeGreaterThan(10);
    }

    @Test
    void bandLiesAroundItsCurve() throws Exception {
        String svg = probability().svg();
        Element band = ofClass(svg, "polygon", "sl-area").get(0);
        String[] points = band.getAttribute("points").split(" ", -1);
        String[] line =
                ofClass(svg, "polyline", "sl-0").get(0).getAttribute("points").split(" ", -1);
        assertThat(points).hasSize(2 * line.length);
        for (int i = 0; i < line.length; i++) {
            double upper = Double.parseDouble(points[i].split(",", -1)[1]);
            double lower = Double.parseDouble(points[points.length - 1 - i].split(",", -1)[1]);
            assertThat(Double.parseDouble(line[i].split(",", -1)[1])).isBetween(upper, lower);
        }
    }

    @Test
    void widestSwingComesFirstAndBarsMeetAtTheBase() throws Exception {
        String svg = tornado().svg();
        assertThat(texts(svg).stream().filter(text -> text.contains(": ")).toList())
                .containsExactly("reaction: 0.8 s to 1.6 s", "gap: 20 m to 30 m", "build-up: 0.1 s to 0.3 s");
        List<Element> bars = ofClass(svg, "rect", "sl-cell").subList(2, 8);
        double base = number(ofClass(svg, "line", "sl-rim").get(0), "x1");
        Element low = bars.get(0);
        Element high = bars.get(1);
        assertThat(number(low, "x") + width(low)).isCloseTo(base, within());
        assertThat(number(high, "x")).isCloseTo(base, within());
        assertThat(width(low) / width(high)).isCloseTo(14.0 / 11, Offset.offset(0.01));
    }

    @Test
    void impossibleFiguresAreRefused() {
        assertThatThrownBy(() -> new ProbabilityChart.Point(1, 0.5, 0.6, 0.7))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a probability with its interval must have 0 <= lo <= p <= hi <= 1, got 0.6, 0.5, 0.7");
        assertThatThrownBy(
                        () -> new DistributionChart.Steps("x", 0, List.of(1.0), List.of(1.0), OptionalDouble.empty()))
                .hasMessage("a distribution needs at least 1 bin and one more edge than bins, got 1 edges and 1 bins");
        assertThatThrownBy(() -> new HeatMap(
                        NOTES, "", "", "", "", List.of(), List.of(1.0, 2.0), List.of(1.0), List.of(List.of())))
                .hasMessageContaining("one cell for each of 1 rows and 2 columns, got 1 rows of [0]");
    }

    private static Offset<Double> within() {
        return Offset.offset(0.2);
    }

    private static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }

    private static double width(Element box) {
        return number(box, "width");
    }

    private static List<String> texts(String svg) throws Exception {
        return all(svg, "text").map(Element::getTextContent).toList();
    }

    private static List<Element> ofClass(String svg, String name, String style) throws Exception {
        return all(svg, name)
                .filter(element ->
                        List.of(element.getAttribute("class").split(" ", -1)).contains(style))
                .toList();
    }

    private static Stream<Element> all(String svg, String name) throws Exception {
        NodeList found = Pictures.parse(svg).getElementsByTagNameNS("*", name);
        return IntStream.range(0, found.getLength()).mapToObj(i -> (Element) found.item(i));
    }
}
