package io.github.stoplag.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class CatalogueTest {
    private static final List<String> NAMES = List.of(
            "rain",
            "asphalt-dry",
            "asphalt-wet",
            "concrete-dry",
            "gravel",
            "ice-1994",
            "ice-2007",
            "snow-packed",
            "snow-loose",
            "P21W");
    private static final Catalogue<String> CATALOGUE = Catalogue.of("surface", NAMES, UnaryOperator.identity());

    @Test
    void listsInOrderAndFindsEachByItsName() {
        assertThat(CATALOGUE.list()).isEqualTo(NAMES);
        assertThat(CATALOGUE.list(name -> name.startsWith("ice"))).containsExactly("ice-1994", "ice-2007");
        NAMES.forEach(name -> assertThat(CATALOGUE.get(name)).isEqualTo(name));
    }

    @Test
    void offersTheNearestNamesFirst() {
        assertNearest("ise-1994", "ice-1994");
        assertNearest("ice", "ice-");
        assertNearest("wet asphalt", "asphalt-wet");
        assertNearest("SNOW_LOSE", "snow-loose");
        assertNearest("p21w", "P21W");
        assertNearest("concrete", "concrete-dry");
    }

    private static void assertNearest(String asked, String start) {
        assertThatThrownBy(() -> CATALOGUE.get(asked))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("surface must be one of " + start)
                .hasMessageEndingWith(" and 2 more, got \"" + asked + "\"");
    }

    @Test
    void namesAllOfAFewInTheirOrderWhereNoneIsNear() {
        Catalogue<String> few = Catalogue.of("lens", List.of("red", "amber"), UnaryOperator.identity());
        assertThatThrownBy(() -> few.get("")).hasMessage("lens must be one of red, amber, got \"\"");
        assertThatThrownBy(() -> few.get("00")).hasMessage("lens must be one of red, amber, got \"00\"");
        assertThatThrownBy(() -> few.get("ambre")).hasMessage("lens must be one of amber, red, got \"ambre\"");
    }

    @Test
    void refusesOneNameTwice() {
        assertThatThrownBy(() -> Catalogue.of("lens", List.of("red", "red"), UnaryOperator.identity()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("each lens must have a name of its own, got \"red\" twice");
    }

    @Test
    void cannotBeChanged() {
        List<String> list = CATALOGUE.list();
        assertThatThrownBy(() -> list.add("mud")).isInstanceOf(UnsupportedOperationException.class);
    }

    /** One slip in a name of eight or more characters never loses it among a hundred others. */
    @Test
    void oneSlipIsForgiven() {
        List<String> names = IntStream.range(0, 100)
                .mapToObj(i -> "row-" + (char) ('a' + i % 26) + Integer.toString(i * 7919, 36) + "-" + (1900 + i))
                .toList();
        Catalogue<String> rows = Catalogue.of("row", names, UnaryOperator.identity());
        for (String name : names) {
            for (int i = 0; i < name.length(); i++) {
                String slip = name.substring(0, i) + "!" + name.substring(i + 1);
                assertThatThrownBy(() -> rows.get(slip)).hasMessageContaining(name);
            }
        }
    }
}
