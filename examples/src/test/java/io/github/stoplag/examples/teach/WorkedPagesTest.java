package io.github.stoplag.examples.teach;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.stoplag.examples.HeadlessBrowser;
import io.github.stoplag.examples.program.UnitChoice;
import io.github.stoplag.worked.ExerciseSheet;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Worked solutions and sheets as a browser shows them. */
class WorkedPagesTest {
    private static final String PAGE = Question.of("stop from 60 mph, 1.5 s, wet asphalt, 3 % down")
            .document(UnitChoice.BOTH.systems())
            .toHtml();

    /** MathML that the browser did not lay out would have no height, or the fractions that of a line. */
    @ParameterizedTest
    @ValueSource(ints = {380, 900})
    void formulasAreLaidOutWithinThePage(int width) throws IOException {
        HeadlessBrowser browser = HeadlessBrowser.orSkip();
        List<HeadlessBrowser.Box> fractions = browser.boxes(PAGE, "mfrac", width, false);
        assertThat(fractions)
                .hasSizeGreaterThan(10)
                .allSatisfy(box -> assertThat(box.height()).isGreaterThan(26));
        assertThat(browser.boxes(PAGE, ".equation, h1, h2, li, p", width, false))
                .allSatisfy(box -> {
                    assertThat(box.left()).isGreaterThanOrEqualTo(0);
                    assertThat(box.left() + box.width()).isLessThanOrEqualTo(width);
                });
    }

    @Test
    void sheetFollowsALightAndADarkBackground() throws IOException {
        HeadlessBrowser browser = HeadlessBrowser.orSkip();
        String sheet = ExerciseSheet.of(1, 5).key().toHtml();
        BufferedImage light = browser.picture(sheet, 600, 800, false);
        BufferedImage dark = browser.picture(sheet, 600, 800, true);
        assertThat(light.getRGB(2, 2)).isEqualTo(0xffffffff);
        assertThat(dark.getRGB(2, 2)).isEqualTo(0xff14191f);
    }
}
