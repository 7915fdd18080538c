package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pages as a browser shows them. */
class BrowserTest {
    private static final int PHONE = 380;
    private static final int DESK = 900;

    @TempDir
    Path folder;

    private String report() throws IOException {
        Path results = folder.resolve("results");
        assertThat(Program.lampSwap(results).exitCode()).isZero();
        return Files.readString(results.resolve("report.html"));
    }

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void everyPictureOfTheReportHasAHeight(int width) throws IOException {
        List<HeadlessBrowser.Box> pictures = HeadlessBrowser.orSkip().boxes(report(), "figure svg", width, false);
        assertThat(pictures).hasSize(4).allSatisfy(picture -> {
            assertThat(picture.height()).isGreaterThan(150);
            assertThat(picture.width()).isBetween(0.8 * width, width + 0.0);
        });
    }

    @Test
    void reportFollowsALightAndADarkBackground() throws IOException {
        HeadlessBrowser browser = HeadlessBrowser.orSkip();
        String html = report();
        BufferedImage light = browser.picture(html, DESK, 1200, false);
        BufferedImage dark = browser.picture(html, DESK, 1200, true);
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
