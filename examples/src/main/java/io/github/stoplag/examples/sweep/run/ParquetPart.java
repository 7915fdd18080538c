package io.github.stoplag.examples.sweep.run;

import blue.strategic.parquet.ParquetReader;
import blue.strategic.parquet.ParquetWriter;
import blue.strategic.parquet.ValueWriter;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.parquet.hadoop.metadata.BlockMetaData;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName;
import org.apache.parquet.schema.Type;
import org.apache.parquet.schema.Types;

/** A part as Apache Parquet: a 64-bit scenario index and doubles, null where a quantity does not exist. */
final class ParquetPart implements PartWriter {
    private final String[] names;
    private final ParquetWriter<Long> parquet;
    // what the row being written is taken from
    private double[][] values = new double[0][];
    private int at;

    ParquetPart(Path file, List<String> columns) throws IOException {
        List<Type> fields = new ArrayList<>();
        fields.add(Types.required(PrimitiveTypeName.INT64).named(SCENARIO));
        columns.forEach(
                column -> fields.add(Types.optional(PrimitiveTypeName.DOUBLE).named(column)));
        names = columns.toArray(String[]::new);
        parquet = ParquetWriter.writeFile(new MessageType("scenarios", fields), file.toFile(), this::fields);
    }

    private void fields(Long scenario, ValueWriter to) {
        to.write(SCENARIO, scenario);
        for (int c = 0; c < names.length; c++) {
            double value = values[c][at];
            if (!Double.isNaN(value)) {
                to.write(names[c], value);
            }
        }
    }

    @Override
    public void write(long scenario, double[][] columns, int row) throws IOException {
        values = columns;
        at = row;
        parquet.write(scenario);
    }

    @Override
    public void close() throws IOException {
        parquet.close();
    }

    /** Counts the rows of a file by what it says at its end. */
    static long rows(Path file) throws IOException {
        return ParquetReader.readMetadata(file.toFile()).getBlocks().stream()
                .mapToLong(BlockMetaData::getRowCount)
                .sum();
    }
}
