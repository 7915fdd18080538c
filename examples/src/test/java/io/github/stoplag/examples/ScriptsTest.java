package io.github.stoplag.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.sweep.PairModel;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;

/** Runs the scripts that are meant to be copied. The printed figures are our own output: non-regression. */
class ScriptsTest {
    private static final Path SCRIPTS = Path.of("src", "main", "scripts");

    @TempDir
    Path folder;

    @Test
    @ResourceLock(Resources.SYSTEM_PROPERTIES)
    void shellScriptPrintsAndWrites() throws IOException {
        String before = System.getProperty("stoplag.output", "");
        System.setProperty("stoplag.output", folder.toString());
        String printed;
        try {
            printed = DocumentedExamplesTest.run(Files.readString(SCRIPTS.resolve("sweep.jsh")));
        } finally {
            if (before.isEmpty()) {
                System.clearProperty("stoplag.output");
            } else {
                System.setProperty("stoplag.output", before);
            }
        }
        assertThat(printed.replace("\r\n", "\n")).isEqualTo("""
                filament: 0.5355 (107098 of 200000), [0.5333, 0.5377] at 95 %
                led: 0.4916 (98317 of 200000), [0.4894, 0.4938] at 95 %
                filament less led: difference 0.0439, [0.04301, 0.0448] at 95 %
                """ + PairModel.STATEMENT + "\n");
        List<NamedCsvRecord> rows = Program.csv(folder.resolve("contacts.csv"));
        assertThat(rows)
                .hasSize(2)
                .allSatisfy(row -> assertThat(row.getField("scenarios")).isEqualTo("200000"));
        assertThat(Long.parseLong(rows.get(0).getField("contacts")))
                .isGreaterThan(Long.parseLong(rows.get(1).getField("contacts")));
    }

    @Test
    void singleFileRunsFromItsSource() throws Exception {
        Path csv = folder.resolve("contact_by_gap.csv");
        Process child = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        SCRIPTS.resolve("ContactByGap.java").toString(),
                        csv.toString())
                .redirectErrorStream(true)
                .start();
        String printed = new String(child.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(printed.replace("\r\n", "\n")).isEqualTo("""
                gap 10 m: 0.9989 (95 % 0.9986 to 0.9990)
                gap 20 m: 0.9025 (95 % 0.9006 to 0.9043)
                gap 30 m: 0.6361 (95 % 0.6331 to 0.6391)
                gap 40 m: 0.3779 (95 % 0.3749 to 0.3809)
                gap 50 m: 0.2069 (95 % 0.2044 to 0.2094)
                """ + PairModel.STATEMENT + "\n");
        assertThat(child.waitFor()).isZero();
        List<NamedCsvRecord> rows = Program.csv(csv);
        assertThat(rows).hasSize(5);
        for (NamedCsvRecord row : rows) {
            double share = Double.parseDouble(row.getField("contacts")) / Double.parseDouble(row.getField("scenarios"));
            assertThat(Double.parseDouble(row.getField("contact_probability"))).isCloseTo(share, offset(1e-15));
        }
    }
}
