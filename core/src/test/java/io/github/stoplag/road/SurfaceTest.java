package io.github.stoplag.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.source.PublishedRange;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import org.junit.jupiter.api.Test;

class SurfaceTest {
    @Test
    void everySurfaceHasARangeAndASource() {
        assertThat(Surface.published()).hasSizeGreaterThan(30).allSatisfy(surface -> {
            assertThat(surface.source().document()).isNotBlank();
            assertThat(surface.low()).isLessThanOrEqualTo(surface.high());
            assertThat(Surface.published(surface.id())).isEqualTo(surface);
        });
        for (Surface.Condition condition : Surface.Condition.values()) {
            assertThat(Surface.published(condition)).as(condition.name()).hasSizeGreaterThan(1);
        }
    }

    /** Where one source gives both, the peak is not below the sliding value. */
    @Test
    void peaksAreNotBelowSlidingValues() {
        for (String material : new String[] {"asphalt-dry", "asphalt-wet", "gravel", "snow-hard-packed", "ice"}) {
            assertThat(Surface.published(material + "-peak").high())
                    .as(material)
                    .isGreaterThanOrEqualTo(
                            Surface.published(material + "-sliding").high());
        }
    }

    /** Noon 1994: ice 0.10 to 0.15, snow 0.20 to 0.25 (seen). */
    @Test
    void aSingleValueCarriesItsRangeAlong() {
        SourcedFriction middle = Surface.published("ice-1994").friction(0.5);
        assertThat(middle.friction().inRatio()).isCloseTo(0.125, within(1e-15));
        assertThat(middle.source().standing()).isEqualTo(Standing.SEEN);
        assertThat(middle.caveats())
                .singleElement()
                .hasToString("friction 0.125 of ice, ice, is taken from a published range 0.1 to 0.15");
        assertThat(Surface.published("snow-packed-1990").friction(0).caveats())
                .last()
                .hasToString("the friction range of snow, packed, below 30 mph is known from memory");
        assertThat(middle.caveats()).isUnmodifiable();
    }

    @Test
    void namesWhatIsWrong() {
        assertThatThrownBy(() -> Surface.published("glass"))
                .hasMessageStartingWith("surface must be one of grass-wet-1994, gravel-1994, ")
                .hasMessageEndingWith("got \"glass\"");
        assertThatThrownBy(() -> Surface.published("ice-1994").friction(2))
                .hasMessage("share of the friction range must be in [0, 1], got 2");
        assertThatThrownBy(() -> new Surface(
                        "x",
                        "test road",
                        Surface.Condition.DRY,
                        Surface.Kind.PEAK,
                        FrictionCoefficient.of(0.8),
                        FrictionCoefficient.of(0.7),
                        Source.assumed("test"),
                        ""))
                .hasMessage("friction range of test road must have low <= high, got 0.8 and 0.7");
        assertThatThrownBy(() -> new PublishedRange("r", "test", 2, 1, "", Source.assumed("test"), ""))
                .hasMessage("published range r must have low <= high, got 2 and 1");
    }
}
