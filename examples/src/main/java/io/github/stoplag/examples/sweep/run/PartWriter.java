package io.github.stoplag.examples.sweep.run;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Writes one part file of rows of doubles. */
interface PartWriter extends Closeable {
    /** The name of the first column, which numbers the scenarios. */
    String SCENARIO = "scenario";

    /**
     * Adds a row.
     *
     * @param scenario its index in the plan
     * @param columns the columns
     * @param row which element of each
     */
    void write(long scenario, double[][] columns, int row) throws IOException;

    static PartWriter open(RowFormat format, Path file, List<String> columns) throws IOException {
        return switch (format) {
            case CSV -> new CsvPart(file, columns);
            case PARQUET -> new ParquetPart(file, columns);
        };
    }
}
