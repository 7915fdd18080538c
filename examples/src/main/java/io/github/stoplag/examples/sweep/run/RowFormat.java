package io.github.stoplag.examples.sweep.run;

import java.io.IOException;
import java.nio.file.Path;

/** The forms of a file of scenarios. */
public enum RowFormat {
    /** Comma-separated text with a header; what does not exist is an empty field. */
    CSV("csv"),
    /** Apache Parquet; what does not exist is null. */
    PARQUET("parquet");

    private final String suffix;

    RowFormat(String suffix) {
        this.suffix = suffix;
    }

    /**
     * Names a part file.
     *
     * @param part its number from 0
     * @return for example {@code part-00000.csv}
     */
    public String fileName(long part) {
        String digits = Long.toString(part);
        return "part-" + "0".repeat(Math.max(0, 5 - digits.length())) + digits + "." + suffix;
    }

    /** Counts the scenarios in a part file as it stands. */
    long rowsIn(Path part) throws IOException {
        return switch (this) {
            case CSV -> CsvPart.rows(part);
            case PARQUET -> ParquetPart.rows(part);
        };
    }

    /**
     * Says whether a file name is that of a part in any form.
     *
     * @param name the name
     * @return true if it is
     */
    public static boolean isPart(String name) {
        return name.matches("part-[0-9]{5,}\\.(csv|parquet)");
    }
}
