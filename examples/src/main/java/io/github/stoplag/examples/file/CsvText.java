package io.github.stoplag.examples.file;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import io.github.stoplag.quantity.Numbers;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/** Tables of results as comma-separated text. */
public final class CsvText {
    private CsvText() {}

    public static String of(List<String> header, Stream<List<String>> rows) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
            csv.writeRecord(header);
            rows.forEach(csv::writeRecord);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /** Gives a number with a fixed count of decimals, or nothing where the quantity does not exist. */
    public static <T> String field(Optional<T> value, ToDoubleFunction<T> in, int decimals) {
        return value.map(v -> Numbers.fixed(in.applyAsDouble(v), decimals)).orElse("");
    }
}
