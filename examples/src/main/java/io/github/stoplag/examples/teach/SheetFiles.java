package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.file.CsvText;
import io.github.stoplag.worked.Document;
import io.github.stoplag.worked.Exercise;
import io.github.stoplag.worked.ExerciseSheet;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** The files of one sheet: what students get and what the teacher keeps stand in different files. */
final class SheetFiles {
    /** How a sheet can be written. */
    enum Format {
        HTML,
        MARKDOWN,
        CSV,
        QTI
    }

    // a fixed time in the zip, so that the same seed gives the same bytes
    private static final LocalDateTime UNDATED = LocalDateTime.of(1980, 1, 1, 0, 0);

    private static final String NAME = "Name: ____________________ \u00a0 Date: ____________";
    private static final List<String> FREE =
            List.of(NAME, "Give every answer with its unit; a number without its unit is marked as such.");
    private static final List<String> CHOICES = List.of(NAME, "Choose one answer to each question.");

    private SheetFiles() {}

    /** Names all files that a sheet can have. */
    static Stream<String> names(String suffix) {
        return Stream.of(
                "sheet" + suffix + ".html",
                "key" + suffix + ".html",
                "sheet" + suffix + ".md",
                "key" + suffix + ".md",
                "answers-blank" + suffix + ".csv",
                "key" + suffix + ".csv",
                "key" + suffix + ".qti.zip");
    }

    /**
     * Writes the files.
     *
     * @param made how the sheet was made, for the key
     */
    static Map<String, byte[]> of(
            ExerciseSheet sheet, String suffix, boolean choices, List<Format> formats, String made) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        Document questions = noted(choices ? sheet.multipleChoice() : sheet.questions(), choices ? CHOICES : FREE);
        Document key = noted(sheet.key(), List.of(made));
        for (Format format : formats) {
            switch (format) {
                case HTML -> {
                    files.put("sheet" + suffix + ".html", utf8(questions.toHtml()));
                    files.put("key" + suffix + ".html", utf8(key.toHtml()));
                }
                case MARKDOWN -> {
                    files.put("sheet" + suffix + ".md", utf8(questions.toMarkdown()));
                    files.put("key" + suffix + ".md", utf8(key.toMarkdown()));
                }
                case CSV -> {
                    files.put("answers-blank" + suffix + ".csv", csv(blank(sheet.exercises())));
                    files.put("key" + suffix + ".csv", csv(sheet.toCsv()));
                }
                case QTI -> files.put("key" + suffix + ".qti.zip", zip(sheet.toQti()));
            }
        }
        return files;
    }

    /** Puts lines below the title. */
    private static Document noted(Document document, List<String> notes) {
        List<Document.Block> blocks = new ArrayList<>(document.blocks());
        for (int i = 0; i < notes.size(); i++) {
            blocks.add(1 + i, new Document.Paragraph(notes.get(i)));
        }
        return new Document(document.title(), blocks);
    }

    private static String blank(List<Exercise> exercises) {
        return CsvText.of(
                AnswerFile.HEADER,
                IntStream.rangeClosed(1, exercises.size()).mapToObj(number -> List.of(String.valueOf(number), "")));
    }

    /** With a byte order mark, by which spreadsheets know UTF-8. */
    static byte[] csv(String text) {
        return utf8("\uFEFF" + text);
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] zip(Map<String, String> files) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, String> file : files.entrySet()) {
                ZipEntry entry = new ZipEntry(file.getKey());
                entry.setTimeLocal(UNDATED);
                zip.putNextEntry(entry);
                zip.write(utf8(file.getValue()));
                zip.closeEntry();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }
}
