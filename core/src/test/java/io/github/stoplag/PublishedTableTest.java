package io.github.stoplag;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import io.github.stoplag.source.Standing;
import io.github.stoplag.source.Table;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.DoubleSupplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Compares every row of published tables with what the library computes: one test a row. A table names its source in
 * its first line, and where rows differ in a column source; a row has the columns case, quantity, published, unit,
 * tolerance (absolute) and standing, and the inputs its kind needs.
 */
public abstract class PublishedTableTest {
    /** The tables, as resources beside the test class. */
    protected abstract List<String> tables();

    /** The library's value for a row, in the row's unit. */
    protected abstract double compute(Row row);

    /** The cases that the class knows to compute one by one, if it does; each must be published then. */
    protected Set<String> cases() {
        return Set.of();
    }

    /** The library's value for a row whose case alone says what to compute. */
    protected static double compute(Map<String, DoubleSupplier> byCase, Row row) {
        DoubleSupplier how = byCase.get(row.text("case"));
        assertThat(how).as("how to compute %s", row.text("case")).isNotNull();
        return Objects.requireNonNull(how).getAsDouble();
    }

    @Test
    void everyComputedCaseIsPublished() {
        assertThat(tables().stream()
                        .flatMap(resource -> Table.read(getClass(), resource).rows().stream())
                        .map(fields -> fields.get("case"))
                        .collect(Collectors.toSet()))
                .containsAll(cases());
    }

    @TestFactory
    Stream<DynamicTest> everyPublishedRow() {
        return tables().stream().flatMap(this::testsOf);
    }

    private Stream<DynamicTest> testsOf(String resource) {
        Table table = Table.read(getClass(), resource);
        assertThat(table.source()).as("source of " + resource).isNotBlank();
        assertThat(table.rows()).as("rows of " + resource).isNotEmpty();
        return table.rows().stream().map(fields -> {
            Row row = new Row(table, fields);
            String label = resource + " " + row.text("case") + " " + row.text("quantity");
            return dynamicTest(label, () -> check(row, label));
        });
    }

    private void check(Row row, String label) {
        Standing standing = Standing.of(row.text("standing"));
        assertThat(row.fields().getOrDefault("source", row.table().source()))
                .as("source of %s", label)
                .isNotBlank();
        double published = row.number("published");
        double computed = compute(row);
        assertThat(Math.abs(computed - published))
                .as("%s (%s): published %s, computed %s %s", label, standing, published, computed, row.text("unit"))
                .isLessThanOrEqualTo(row.number("tolerance"));
    }

    /** One row of a published table. */
    protected record Row(Table table, Map<String, String> fields) {
        public String text(String column) {
            return Objects.requireNonNull(fields.get(column), "no column " + column);
        }

        public double number(String column) {
            return table.number(fields, column);
        }

        public double numberOr(String column, double absent) {
            String text = fields.get(column);
            return text == null || text.isBlank() ? absent : number(column);
        }
    }
}
