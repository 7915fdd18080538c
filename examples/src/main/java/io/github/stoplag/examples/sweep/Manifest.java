package io.github.stoplag.examples.sweep;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.Rejects;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;
import java.util.Properties;

/**
 * What a run of a sweep was and which files it left, as JSON beside them. It holds no time of day; the Java version is the only field that
 * may differ between two runs of one plan.
 */
public final class Manifest {
    /** The file's name. */
    public static final String FILE = "manifest.json";

    private static final String UNFINISHED = FILE + ".unfinished";

    private Manifest() {}

    /**
     * Says whether a file name is that of a manifest, finished or not.
     *
     * @param name the name
     * @return true if it is
     */
    public static boolean isName(String name) {
        return name.equals(FILE) || name.equals(UNFINISHED);
    }

    /**
     * Writes the manifest into the folder of the files it lists, under another name first.
     *
     * @param outcome what the run gave
     * @param folder the folder
     * @param files the names of the files to list
     * @throws IOException if a file cannot be read or the manifest not written
     */
    public static void write(SweepOutcome outcome, Path folder, List<String> files) throws IOException {
        Path fresh = folder.resolve(UNFINISHED);
        Files.writeString(fresh, text(outcome, folder, files));
        Files.move(fresh, folder.resolve(FILE), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    private static String text(SweepOutcome outcome, Path folder, List<String> files) throws IOException {
        ObjectNode root = new ObjectMapper().createObjectNode();
        root.put("statement", PairModel.STATEMENT);
        root.put("title", outcome.plan().title());
        root.put("data_invented", outcome.plan().invented());
        root.put("stoplag_version", version());
        root.put("java_version", System.getProperty("java.version"));
        ArrayNode plan = root.putArray("plan");
        outcome.plan().text().lines().forEach(plan::add);
        root.put("plan_sha256", outcome.plan().hash());
        root.put("seed", outcome.plan().plan().seed());
        root.put("scenarios_planned", outcome.plan().plan().size());
        root.put("scenarios_counted", outcome.result().scenarios());
        root.put("complete", outcome.result().complete());
        if (outcome.result().scenarios() > outcome.result().rejected()) {
            ObjectNode contacts = root.putObject("contacts");
            outcome.plan()
                    .lamps()
                    .forEach(lamp -> contacts.put(
                            lamp,
                            outcome.result()
                                    .tally()
                                    .lamp(lamp)
                                    .contactProbability()
                                    .hits()));
        }
        rejects(root, outcome.result().rejects());
        rows(root.putObject("rows"), outcome);
        ArrayNode list = root.putArray("files");
        for (String name : files) {
            ObjectNode entry = list.addObject();
            entry.put("name", name);
            entry.put("bytes", Files.size(folder.resolve(name)));
            entry.put("sha256", Sha256.of(folder.resolve(name)));
        }
        return print(root);
    }

    private static void rejects(ObjectNode root, List<Rejects.Entry> rejects) {
        ArrayNode list = root.putArray("rejected");
        for (Rejects.Entry reject : rejects) {
            ObjectNode entry = list.addObject();
            entry.put("reason", reject.reason());
            entry.put("scenarios", reject.count());
            entry.put("first_scenario", reject.firstIndex());
            entry.put("first_inputs", reject.firstInputs());
        }
    }

    private static void rows(ObjectNode rows, SweepOutcome outcome) {
        rows.put("format", outcome.rows().format().toString().toLowerCase(Locale.ROOT));
        rows.put("scenarios_written", outcome.rowsWritten());
        rows.put("scenarios_per_part", RowFiles.PART_ROWS);
        rows.put(
                "note", "the first scenarios of the plan, in its order; the statistics are over all scenarios counted");
        ArrayNode columns = rows.putArray("columns");
        columns.add(PartWriter.SCENARIO);
        outcome.columns().forEach(columns::add);
    }

    private static String print(ObjectNode root) throws JsonProcessingException {
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(lines);
        printer.indentArraysWith(lines);
        return new ObjectMapper().writer(printer).writeValueAsString(root) + "\n";
    }

    /** The version of the library as the build writes it into a resource. */
    static String version() {
        Properties build = new Properties();
        try (InputStream in = Manifest.class.getResourceAsStream("build.properties")) {
            build.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return build.getProperty("version");
    }
}
