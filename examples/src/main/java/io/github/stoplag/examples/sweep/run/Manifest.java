package io.github.stoplag.examples.sweep.run;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.stoplag.examples.program.Build;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.Rejects;
import io.github.stoplag.sweep.SweepResult;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * What a run of a sweep was and which files it left, as JSON beside them. It holds no time of day; the Java version is
 * the only field that may differ between two runs of one plan.
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
        WholeFile.place(fresh, folder.resolve(FILE));
    }

    private static String text(SweepOutcome outcome, Path folder, List<String> files) throws IOException {
        ObjectNode root = of(outcome.plan(), outcome.result());
        rows(root.putObject("rows"), outcome);
        ArrayNode list = root.putArray("files");
        for (String name : files) {
            WholeFile.force(folder.resolve(name));
            WholeFile file = WholeFile.of(folder.resolve(name));
            ObjectNode entry = list.addObject();
            entry.put("name", name);
            entry.put("bytes", file.bytes());
            entry.put("sha256", file.sha256());
        }
        return print(root);
    }

    /**
     * Says what a run was and what it counted, without the files.
     *
     * @param plan the plan
     * @param result what its run gave
     * @return the fields, to which those about files are added
     */
    public static ObjectNode of(PlanFile plan, SweepResult<PairTally> result) {
        ObjectNode root = new ObjectMapper().createObjectNode();
        root.put("statement", PairModel.STATEMENT);
        root.put("title", plan.title());
        root.put("data_invented", plan.invented());
        root.put("stoplag_version", Build.stoplagVersion());
        root.put("java_version", System.getProperty("java.version"));
        ArrayNode lines = root.putArray("plan");
        plan.text().lines().forEach(lines::add);
        root.put("plan_sha256", plan.digest());
        root.put("seed", plan.plan().seed());
        root.put("scenarios_planned", plan.plan().size());
        root.put("scenarios_counted", result.scenarios());
        root.put("complete", result.complete());
        if (result.scenarios() > result.rejected()) {
            ObjectNode contacts = root.putObject("contacts");
            for (String lamp : plan.lamps()) {
                contacts.put(
                        lamp, result.tally().lamp(lamp).contactProbability().hits());
            }
        }
        rejects(root, result.rejects());
        ArrayNode assumptions = root.putArray("assumptions");
        plan.pairModel().assumptions().forEach(assumptions::add);
        ArrayNode notes = root.putArray("sources_and_caveats");
        plan.notes().forEach(notes::add);
        return root;
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

    /**
     * Prints a manifest.
     *
     * @param root its fields
     * @return the text of the file
     * @throws JsonProcessingException if the fields cannot be printed
     */
    public static String print(ObjectNode root) throws JsonProcessingException {
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(lines);
        printer.indentArraysWith(lines);
        return new ObjectMapper().writer(printer).writeValueAsString(root) + "\n";
    }
}
