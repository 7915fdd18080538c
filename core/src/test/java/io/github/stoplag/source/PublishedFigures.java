package io.github.stoplag.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Set;
import java.util.function.DoubleSupplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Compares a resource file of published figures with what the library computes: one test a row.
 *
 * <p>Columns: id, quantity, value, tolerance (absolute), unit, conditions, source, standing.
 */
public abstract class PublishedFigures {
    private final Table table;
    private final Map<String, DoubleSupplier> computed;

    protected PublishedFigures(String resource, Map<String, DoubleSupplier> computed) {
        this.table = Table.read(getClass(), resource);
        this.computed = computed;
    }

    @TestFactory
    final Stream<DynamicTest> published() {
        return table.rows().stream()
                .map(row -> DynamicTest.dynamicTest(text(row, "id") + ": " + text(row, "quantity"), () -> {
                    assertThat(computed.get(text(row, "id")))
                            .as("how to compute %s", text(row, "id"))
                            .isNotNull()
                            .satisfies(supplier -> assertThat(supplier.getAsDouble())
                                    .as(
                                            "%s in %s, source: %s",
                                            text(row, "quantity"), text(row, "unit"), text(row, "source"))
                                    .isCloseTo(
                                            table.number(row, "value"), Offset.offset(table.number(row, "tolerance"))));
                }));
    }

    @Test
    final void everyFigureHasASourceAndAKnownStanding() {
        for (Map<String, String> row : table.rows()) {
            assertThat(text(row, "source")).as(text(row, "id")).isNotBlank();
            assertThat(Standing.of(text(row, "standing"))).as(text(row, "id")).isNotNull();
        }
    }

    @Test
    final void everyComputedFigureIsPublished() {
        Set<String> ids = table.rows().stream().map(row -> text(row, "id")).collect(Collectors.toSet());
        assertThat(ids).isEqualTo(computed.keySet());
    }

    private static String text(Map<String, String> row, String column) {
        return String.valueOf(row.get(column));
    }
}
