package io.github.stoplag.source;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A published table kept as a CSV resource: comment lines that start with {@code #}, one header line whose names carry
 * the units, then rows. Fields that hold a comma stand in double quotes, a quote inside them doubled. The first comment
 * line reads {@code # source: ...}.
 *
 * <p>It reads the library's own resources, which tests check; files from users are read by a CSV library at the edge.
 *
 * <p>Internal: it is public for the library's other packages, not for users, who find what is published by
 * {@code published()}.
 */
public final class Table {
    private final String name;
    private final String source;
    private final List<Map<String, String>> rows;

    private Table(String name, String source, List<Map<String, String>> rows) {
        this.name = name;
        this.source = source;
        this.rows = rows;
    }

    /**
     * Reads a table that lies beside a class.
     *
     * @param owner the class beside which the resource lies
     * @param resource the file name
     * @return the table
     * @throws IllegalArgumentException if there is no such resource or a row has not as many fields as the header
     */
    public static Table read(Class<?> owner, String resource) {
        try (InputStream in = owner.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalArgumentException("no table " + resource + " beside " + owner.getName());
            }
            return parse(resource, new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Table parse(String name, BufferedReader reader) throws IOException {
        String source = "";
        List<String> header = List.of();
        List<Map<String, String>> rows = new ArrayList<>();
        int number = 0;
        for (String line = reader.readLine(); line != null; line = reader.readLine()) {
            number++;
            if (line.startsWith("#")) {
                String comment = line.substring(1).strip();
                if (comment.startsWith("source:")) {
                    source = comment.substring("source:".length()).strip();
                }
            } else if (!line.isBlank()) {
                List<String> fields = fields(line);
                if (header.isEmpty()) {
                    header = fields;
                } else {
                    rows.add(row(name, number, header, fields));
                }
            }
        }
        return new Table(name, source, List.copyOf(rows));
    }

    private static Map<String, String> row(String name, int number, List<String> header, List<String> fields) {
        if (fields.size() != header.size()) {
            throw new IllegalArgumentException("table " + name + " line " + number + " has " + fields.size()
                    + " fields, its header has " + header.size());
        }
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < header.size(); i++) {
            row.put(header.get(i), fields.get(i));
        }
        return row;
    }

    private static List<String> fields(String line) {
        List<String> fields = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"' && quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                field.append(c);
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                fields.add(field.toString());
                field.setLength(0);
            } else {
                field.append(c);
            }
        }
        fields.add(field.toString());
        return fields;
    }

    /**
     * Gives the text of the {@code # source:} line.
     *
     * @return where the table comes from, empty if it does not say
     */
    public String source() {
        return source;
    }

    /**
     * Gives the rows as text by column name.
     *
     * @return the rows in order
     */
    public List<Map<String, String>> rows() {
        return rows;
    }

    /**
     * Gives the rows together that have the same text in a column.
     *
     * @param column the column's name
     * @return the rows by that text, both in the order of the table
     * @throws IllegalArgumentException if there is no such column
     */
    public Map<String, List<Map<String, String>>> groups(String column) {
        Map<String, List<Map<String, String>>> groups = new LinkedHashMap<>();
        for (Map<String, String> row : rows) {
            groups.computeIfAbsent(text(row, column), key -> new ArrayList<>()).add(row);
        }
        return groups;
    }

    /**
     * Gives one column as numbers.
     *
     * @param column the column's name
     * @return its values in row order
     * @throws IllegalArgumentException if a row has no such column or no number in it
     */
    public double[] numbers(String column) {
        return rows.stream().mapToDouble(row -> number(row, column)).toArray();
    }

    /**
     * Gives one field of a row as a number.
     *
     * @param row one of {@link #rows()}
     * @param column the column's name
     * @return its value
     * @throws IllegalArgumentException if the row has no such column or no number in it
     */
    public double number(Map<String, String> row, String column) {
        String text = text(row, column);
        try {
            return Double.parseDouble(text.strip());
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    "table " + name + " column " + column + " must hold a number, got \"" + text + "\"", e);
        }
    }

    /**
     * Gives one field of a row as text.
     *
     * @param row one of {@link #rows()}
     * @param column the column's name
     * @return its text, possibly empty
     * @throws IllegalArgumentException if the row has no such column
     */
    public String text(Map<String, String> row, String column) {
        String text = row.get(column);
        if (text == null) {
            throw new IllegalArgumentException("table " + name + " has no column " + column);
        }
        return text;
    }

    /**
     * Gives the source of a row from its columns {@code document}, {@code place} and {@code standing}.
     *
     * @param row one of {@link #rows()}
     * @return the source
     * @throws IllegalArgumentException if a column is missing, the document is empty or the standing unknown
     */
    public Source source(Map<String, String> row) {
        return new Source(text(row, "document"), text(row, "place"), Standing.of(text(row, "standing")));
    }
}
