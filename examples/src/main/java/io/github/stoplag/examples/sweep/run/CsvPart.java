package io.github.stoplag.examples.sweep.run;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** A part as comma-separated text: each number in the fewest digits that read back to the same bits. */
final class CsvPart implements PartWriter {
    private final CsvWriter csv;
    private final String[] fields;

    CsvPart(Path file, List<String> columns) throws IOException {
        csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(file);
        fields = new String[columns.size() + 1];
        List<String> header = new ArrayList<>(columns);
        header.add(0, SCENARIO);
        csv.writeRecord(header);
    }

    @Override
    public void write(long scenario, double[][] columns, int row) {
        fields[0] = Long.toString(scenario);
        for (int c = 0; c < columns.length; c++) {
            double value = columns[c][row];
            fields[c + 1] = Double.isNaN(value) ? "" : ExactText.of(value);
        }
        csv.writeRecord(fields);
    }

    @Override
    public void close() throws IOException {
        csv.close();
    }

    /** Counts the rows of a file without its header. */
    static long rows(Path file) throws IOException {
        try (Stream<String> lines = Files.lines(file)) {
            return lines.count() - 1;
        }
    }
}
