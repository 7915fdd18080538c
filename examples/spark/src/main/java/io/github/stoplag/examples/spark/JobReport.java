package io.github.stoplag.examples.spark;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.stoplag.examples.sweep.ContactText;
import io.github.stoplag.examples.sweep.run.Manifest;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.SweepResult;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/** What a job found, in words and as a manifest. */
final class JobReport {
    private JobReport() {}

    /** The figures in the words of the program {@code sweep}. */
    static List<String> lines(PlanFile file, SweepResult<PairTally> result) {
        List<String> lines = new ArrayList<>(ContactText.of(file, result));
        lines.addAll(ContactText.rejects(result));
        return lines;
    }

    /**
     * The manifest. The digest of the statistics tells whether two runs gave the same bits.
     *
     * @param statistics the content of the file of statistics
     * @param sparkVersion the version of Spark that ran it
     */
    static String manifest(PlanFile file, SweepResult<PairTally> result, byte[] statistics, String sparkVersion)
            throws JsonProcessingException {
        ObjectNode root = Manifest.of(file, result);
        root.put("spark_version", sparkVersion);
        ObjectNode rows = root.putObject("rows");
        rows.put("format", "parquet");
        rows.put("folder", ResultFolder.ROWS);
        rows.put("scenarios_written", result.scenarios());
        ArrayNode columns = rows.putArray("columns");
        columns.add(RowSchema.SCENARIO);
        RowSchema.columns(file).forEach(columns::add);
        ObjectNode saved = root.putArray("files").addObject();
        saved.put("name", ResultFolder.STATISTICS);
        saved.put("bytes", statistics.length);
        saved.put("sha256", sha256(statistics));
        return Manifest.print(root);
    }

    private static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
