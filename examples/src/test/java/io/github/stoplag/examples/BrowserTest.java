package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.examples.gallery.Gallery;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pages as a browser shows them. */
class BrowserTest {
    private static final int PHONE = 380;
    private static final int DESK = 900;

    @TempDir
    static Path folder;

    private static HeadlessBrowser browser;
    private static String report = "";
    private static String gallery = "";

    @BeforeAll
    static void run() throws IOException {
        browser = HeadlessBrowser.orSkip();
        assertThat(Program.lampSwap(folder.resolve("results")).exitCode()).isZero();
        report = Files.readString(folder.resolve("results").resolve("report.html"));
        assertThat(Program.into(folder.resolve("gallery"), "gallery").exitCode())
                .isZero();
        gallery = Files.readString(folder.resolve("gallery").resolve("gallery.html"));
    }

    /** In the fonts of the computer at hand. */
    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void textsOfTheGalleryStayInTheirPicturesAndClearOfEachOther(int width) throws IOException {
        List<HeadlessBrowser.Box> boxes = browser.boxes(gallery, "figure svg, figure svg text", width, false);
        List<HeadlessBrowser.Box> pictures =
                boxes.stream().filter(box -> box.height() > 0.5 * width).toList();
        assertThat(pictures).hasSize(Gallery.pictures().size());
        int texts = 0;
        for (HeadlessBrowser.Box picture : pictures) {
            List<HeadlessBrowser.Box> inside = boxes.stream()
                    .filter(box -> !box.equals(picture) && box.meets(picture))
                    .map(HeadlessBrowser.Box::letters)
                    .toList();
            for (int i = 0; i < inside.size(); i++) {
                HeadlessBrowser.Box text = inside.get(i);
                assertThat(picture.holds(text)).as("%s in %s", text, picture).isTrue();
                assertThat(inside.subList(i + 1, inside.size())).as("%s", text).noneMatch(text::meets);
            }
            texts += inside.size();
        }
        assertThat(texts).isEqualTo(boxes.size() - pictures.size()).isGreaterThan(300);
    }

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void everyPictureOfTheReportHasAHeight(int width) throws IOException {
        List<HeadlessBrowser.Box> pictures = browser.boxes(report, "figure svg", width, false);
        assertThat(pictures).hasSize(9).allSatisfy(picture -> {
            assertThat(picture.height()).isGreaterThan(150);
            assertThat(picture.width()).isBetween(0.8 * width, width + 0.0);
        });
    }

    @Test
    void reportFollowsALightAndADarkBackground() throws IOException {
        BufferedImage light = browser.picture(report, DESK, 1200, false);
        BufferedImage dark = browser.picture(report, DESK, 1200, true);
        assertThat(new int[] {light.getWidth(), light.getHeight()}).containsExactly(DESK, 1200);
        assertThat(light.getRGB(2, 2)).isEqualTo(0xffffffff);
        assertThat(dark.getRGB(2, 2)).isEqualTo(0xff14191f);
        for (BufferedImage image : List.of(light, dark)) {
            int page = image.getRGB(2, 2);
            assertThat(IntStream.range(0, DESK * 1200)
                            .filter(i -> image.getRGB(i % DESK, i / DESK) != page)
                            .count())
                    .isGreaterThan(20_000);
        }
    }
}
