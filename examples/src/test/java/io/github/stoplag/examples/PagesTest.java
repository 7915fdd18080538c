package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.examples.draw.LineChart;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The pictures and the page as a reader's program meets them. */
class PagesTest {
    @TempDir
    Path folder;

    private String produced(String name, String... more) throws IOException {
        Path results = folder.resolve("results");
        assertThat(Program.lampSwap(results, more).exitCode()).isZero();
        return Files.readString(results.resolve(name));
    }

    @ParameterizedTest
    @ValueSource(strings = {"onset.svg", "distance_metric.svg", "distance_us.svg", "road_6.svg"})
    void pictureHasTitleDescriptionTextAndNothingFromOutside(String name) throws Exception {
        String svg = produced(name);
        Pictures.assertGood(svg);
        assertThat(Pictures.title(svg)).contains("invented data");
    }

    /** A silhouette grows with the scale of the road, which is largest at low speeds and small gaps. */
    @ParameterizedTest
    @CsvSource({"5 km/h, 0.2 s", "5 km/h, 0 s", "30 km/h, 0.2 s", "30 km/h, 1.5 s", "250 km/h, 1.5 s"})
    void vehiclesStayClearOfEveryText(String speed, String gap) throws Exception {
        String svg = produced(
                "road_1.svg",
                "--scenario",
                Program.scenario(folder, "speeds", speed, "following.gap", gap).toString());
        Pictures.assertGood(svg);
        Element root = Pictures.parse(svg).getDocumentElement();
        List<Pictures.Box> texts = Pictures.texts(root);
        List<Pictures.Box> outlines = Pictures.outlines(root);
        assertThat(outlines).hasSizeGreaterThanOrEqualTo(12);
        for (Pictures.Box outline : outlines) {
            assertThat(texts).as("%s", outline).noneMatch(outline::meets);
            assertThat(outline.left()).isGreaterThanOrEqualTo(0);
            assertThat(outline.right()).isLessThanOrEqualTo(LineChart.WIDTH);
        }
    }

    @Test
    void pageIsWellFormedSelfContainedAndSaysWhatItRestsOn() throws Exception {
        String html = produced("report.html");
        assertThat(html).startsWith("<!DOCTYPE html>\n<html");
        Document page = Pictures.parse(html);
        assertThat(page.getElementsByTagNameNS("http://www.w3.org/2000/svg", "svg")
                        .getLength())
                .isEqualTo(9);
        Pictures.assertSelfContained(html);
        Pictures.assertIdsStandOnce(page);
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
        Document page = Pictures.parse(html);
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
        assertThat(Pictures.parse(html).getDocumentElement().getTextContent())
                .contains("With the filament lamp: never seen", "With the LED lamp: never seen");
    }
}
