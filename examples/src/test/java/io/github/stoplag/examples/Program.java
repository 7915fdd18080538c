package io.github.stoplag.examples;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.stoplag.examples.file.Resource;
import io.github.stoplag.examples.lampswap.Scenario;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A run of the program in this process, and what it printed. */
public record Program(int exitCode, String out, String err) {
    public static Program run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exitCode = Main.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
        return new Program(exitCode, out.toString(), err.toString());
    }

    public static Program lampSwap(Path results, String... more) {
        return into(results, "lamp-swap", more);
    }

    /** Runs a program with a folder for its results. */
    public static Program into(Path results, String program, String... more) {
        List<String> args = new ArrayList<>(List.of(program, "--out", results.toString()));
        args.addAll(Arrays.asList(more));
        return run(args.toArray(String[]::new));
    }

    /** Writes the shipped scenario with some keys set to other values. */
    public static Path scenario(Path folder, String... keysAndValues) {
        return changed(folder, Scenario.SHIPPED, keysAndValues);
    }

    /** Writes a shipped scenario with some keys set to other values. */
    public static Path changed(Path folder, String shipped, String... keysAndValues) {
        String text = Resource.text(shipped);
        for (int i = 0; i < keysAndValues.length; i += 2) {
            String line = "(?m)^" + Pattern.quote(keysAndValues[i]) + " = .*$";
            Matcher old = Pattern.compile(line).matcher(text);
            String entry = keysAndValues[i] + " = " + keysAndValues[i + 1];
            text = old.find() ? old.replaceAll(Matcher.quoteReplacement(entry)) : text + entry + "\n";
        }
        return write(folder.resolve("scenario.properties"), text);
    }

    public static Path write(Path file, String text) {
        try {
            return Files.writeString(file, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static List<NamedCsvRecord> summary(Path results) {
        return csv(results.resolve("summary.csv"));
    }

    public static List<NamedCsvRecord> csv(Path file) {
        try (CsvReader<NamedCsvRecord> rows =
                CsvReader.builder().detectBomHeader(true).ofNamedCsvRecord(file)) {
            return rows.stream().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
