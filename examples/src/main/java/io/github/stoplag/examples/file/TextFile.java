package io.github.stoplag.examples.file;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

/**
 * Opens the user's text files, UTF-8 with or without a byte order mark, and says in one line why one cannot be read.
 */
public final class TextFile {
    private static final int BYTE_ORDER_MARK = 0xFEFF;

    private TextFile() {}

    static Reader open(Path path) throws IOException {
        BufferedReader reader = Files.newBufferedReader(path);
        reader.mark(1);
        if (reader.read() != BYTE_ORDER_MARK) {
            reader.reset();
        }
        return reader;
    }

    /**
     * Reads a file whole.
     *
     * @param path where it is
     * @return its text
     * @throws InputException if it is missing or not text
     */
    public static String text(Path path) {
        StringWriter text = new StringWriter();
        try (Reader reader = open(path)) {
            reader.transferTo(text);
            return text.toString();
        } catch (IOException e) {
            throw unreadable(path, e);
        }
    }

    /**
     * Hands on every row of a CSV file, the header too; lines that start with {@code #} and empty ones are left out.
     *
     * @throws InputException if the file is missing or not a CSV file, and what the taker throws
     */
    static void rows(Path path, Consumer<CsvRecord> taker) {
        rows(path, ',', taker);
    }

    private static char separator(String header) {
        if (header.indexOf(',') >= 0) {
            return ',';
        }
        return header.indexOf(';') < 0 && header.indexOf('\t') >= 0 ? '\t' : ';';
    }

    /**
     * The same for a file that a spreadsheet saved, with semicolons where the comma is the decimal sign, or with
     * tabulators: a header without a comma says so.
     *
     * @throws InputException as {@link #rows(Path, Consumer)} does
     */
    public static void rowsOfSpreadsheet(Path path, Consumer<CsvRecord> taker) {
        String header;
        try (BufferedReader text = new BufferedReader(open(path))) {
            header = text.lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .findFirst()
                    .orElse("");
        } catch (IOException | UncheckedIOException e) {
            throw unreadable(path, e);
        }
        rows(path, separator(header), taker);
    }

    /**
     * Hands on the rows below the header of a CSV file that a program wrote.
     *
     * @param header the heads of its columns
     * @throws InputException if the header is another or a row has another number of fields, and what the taker throws
     */
    public static void table(Path path, List<String> header, Consumer<CsvRecord> taker) {
        boolean[] begun = {false};
        rows(path, row -> {
            if (row.getFieldCount() != header.size()
                    || (!begun[0] && !row.getFields().equals(header))) {
                throw new InputException(path + ": line " + row.getStartingLineNumber() + ": must be "
                        + (begun[0] ? header.size() + " fields, " : "the header ") + String.join(",", header)
                        + ", got \"" + String.join(",", row.getFields()) + "\"");
            }
            if (begun[0]) {
                taker.accept(row);
            }
            begun[0] = true;
        });
    }

    /**
     * Hands on every row of a short table that anybody may have typed into any spreadsheet: parted by commas,
     * semicolons or tabs, which the header says, in UTF-8, UTF-16 or Windows-1252, which the bytes say.
     *
     * @return the name of the encoding
     * @throws InputException as {@link #rows(Path, Consumer)} does
     */
    public static String rowsInAnyEncoding(Path path, Consumer<CsvRecord> taker) {
        Decoded decoded;
        try {
            decoded = Decoded.of(Files.readAllBytes(path));
        } catch (IOException e) {
            throw unreadable(path, e);
        }
        String header = decoded.text()
                .lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .findFirst()
                .orElse("");
        boolean comma = header.indexOf(',') >= 0;
        char separator = comma ? ',' : header.indexOf(';') >= 0 ? ';' : header.indexOf('\t') >= 0 ? '\t' : ',';
        rows(path, () -> new StringReader(decoded.text()), separator, taker);
        return decoded.encoding();
    }

    /** Opens a text. */
    private interface Opening {
        Reader open() throws IOException;
    }

    private static void rows(Path path, char separator, Consumer<CsvRecord> taker) {
        rows(path, () -> open(path), separator, taker);
    }

    private static void rows(Path path, Opening opening, char separator, Consumer<CsvRecord> taker) {
        try (Reader text = opening.open();
                CsvReader<CsvRecord> rows = CsvReader.builder()
                        .fieldSeparator(separator)
                        .commentStrategy(CommentStrategy.SKIP)
                        .skipEmptyLines(true)
                        .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                        .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                        .ofCsvRecord(text)) {
            rows.forEach(taker);
        } catch (IOException | UncheckedIOException e) {
            throw unreadable(path, e);
        } catch (CsvParseException e) {
            throw new InputException(path + ": not a CSV file: " + e.getMessage(), e);
        }
    }

    static InputException unreadable(Path path, Exception e) {
        Throwable cause = e instanceof IOException ? e : e.getCause();
        String why = String.valueOf(cause == null ? e.getMessage() : cause.getMessage());
        if (cause instanceof NoSuchFileException) {
            why = "no such file";
        } else if (cause instanceof AccessDeniedException) {
            why = "no permission to read it";
        } else if (cause instanceof CharacterCodingException) {
            why = "not UTF-8 text; save it as UTF-8 (a spreadsheet may have saved UTF-16 or Windows-1252)";
        }
        return new InputException(path + ": cannot be read: " + why, e);
    }
}
