package io.github.stoplag.examples.rules;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.braking.PublishedRule;
import io.github.stoplag.examples.Program;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program {@code stopping-tables} as a user runs it. */
class StoppingTablesRunTest {
    @TempDir
    Path folder;

    private Program run(String... more) {
        String[] args = new String[3 + more.length];
        args[0] = "stopping-tables";
        args[1] = "--out";
        args[2] = results().toString();
        System.arraycopy(more, 0, args, 3, more.length);
        return Program.run(args);
    }

    private Path results() {
        return folder.resolve("stopping-tables");
    }

    @Test
    void everyFigureOfEveryRuleIsWrittenAndExplained() throws IOException {
        Program run = run();
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        Path file = results().resolve("residuals.csv");
        assertThat(Files.readString(file)).startsWith("rule,case,published,computed,unit,residual,standing,source\n");
        List<NamedCsvRecord> rows = Program.csv(file);
        assertThat(rows)
                .hasSize(PublishedRule.published().stream()
                        .mapToInt(rule -> rule.rows().size())
                        .sum());
        for (NamedCsvRecord row : rows) {
            double published = Double.parseDouble(row.getField("published"));
            double computed = Double.parseDouble(row.getField("computed"));
            double residual = Double.parseDouble(row.getField("residual"));
            assertThat(Math.abs(published - computed - residual)).as("%s", row).isLessThan(1e-5);
            int point = row.getField("published").indexOf('.');
            int decimals = point < 0 ? 0 : row.getField("published").length() - point - 1;
            assertThat(Math.abs(residual) <= 0.5 * Math.pow(10, -decimals) + 1e-6
                            || row.getField("source").contains("; note: "))
                    .as("explained: %s", row)
                    .isTrue();
            assertThat(row.getField("standing")).isNotBlank();
        }
        assertThat(run.out())
                .contains(" 0 differ without.")
                .doesNotContain("NOT EXPLAINED")
                .contains("It is no proof of safety")
                .contains("residuals.csv with " + rows.size() + " figures.");
        PublishedRule.published()
                .forEach(rule -> assertThat(run.out())
                        .contains(System.lineSeparator() + rule.key() + ": "
                                + rule.rule().name()));
    }

    @Test
    void oneRuleCanBePrintedAlone() {
        Program run = run("--rule", "uk-highway-code");
        assertThat(run.exitCode()).isZero();
        List<String> lines = run.out().lines().toList();
        assertThat(lines).contains("uk-highway-code: UK Highway Code typical stopping distance");
        assertThat(lines).filteredOn(line -> line.startsWith("  40 mph")).hasSize(2);
        assertThat(lines.stream().filter(line -> line.startsWith("  40 mph ")).findFirst())
                .hasValueSatisfying(line ->
                        assertThat(line.replaceAll(" +", " ")).isEqualTo(" 40 mph 12 m 0 24 m 0 36 m 0 118 ft -2 [1]"));
        assertThat(run.out()).contains("1 rule, 25 printed figures: 24 agree").doesNotContain("aashto");
        // the file holds all rules all the same
        assertThat(Program.csv(results().resolve("residuals.csv"))).hasSizeGreaterThan(500);
    }

    @Test
    void unknownRuleAndForeignFolderAreRefused() throws IOException {
        Program unknown = run("--rule", "uk-highway");
        assertThat(unknown.exitCode()).isEqualTo(2);
        assertThat(unknown.err())
                .startsWith("--rule = uk-highway: stopping rule must be one of uk-highway-code, ")
                .hasLineCount(1);
        assertThat(results()).doesNotExist();
        Files.createDirectory(results());
        Files.writeString(results().resolve("cat.jpg"), "precious");
        Program foreign = run();
        assertThat(foreign.exitCode()).isEqualTo(2);
        assertThat(foreign.err()).contains("holds cat.jpg, which this program did not write");
        assertThat(results().resolve("cat.jpg")).hasContent("precious");
    }
}
