package io.github.stoplag.examples.spark;

import io.github.stoplag.sweep.CheckpointFormat;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.SweepResult;
import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import org.apache.spark.api.java.function.MapPartitionsFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;

/**
 * A plan's sweep on Spark: each partition is a stretch of whole chunks; rows go from the tasks to Parquet files, the
 * chunks' statistics to the driver, which absorbs them in chunk order. Rows and statistics have the bits of a local run
 * for any number of partitions.
 */
final class SparkSweep {
    private final SparkSession spark;
    private final PlanText text;
    private final int partitions;

    /**
     * Prepares a job.
     *
     * @param spark the session
     * @param text the plan
     * @param partitions into how many parts it is cut, at least 1
     */
    SparkSweep(SparkSession spark, PlanText text, int partitions) {
        this.spark = spark;
        this.text = text;
        this.partitions = partitions;
    }

    /**
     * Runs it.
     *
     * @param rows the folder for the Parquet files, replaced
     * @return the statistics over all scenarios
     */
    SweepResult<PairTally> run(String rows) {
        PlanFile file = text.plan();
        ChunkStatistics statistics = new ChunkStatistics();
        // without a name: Spark keeps the value of a named one for every finished task
        spark.sparkContext().register(statistics);
        Dataset<Row> computed = spark.range(0, file.plan().chunks(), 1, partitions)
                .mapPartitions(compute(text, statistics), Encoders.row(RowSchema.of(file)));
        computed.write().mode(SaveMode.Overwrite).parquet(rows);
        return absorbed(file, statistics.value());
    }

    // static, so that what travels holds the plan's text and no session
    private static MapPartitionsFunction<Long, Row> compute(PlanText text, ChunkStatistics statistics) {
        return chunks -> new ChunkRows(text.plan(), chunks, (chunk, bytes) -> statistics.add(Map.entry(chunk, bytes)));
    }

    /** Absorbs saved chunks in their order; fails if one is missing. */
    static SweepResult<PairTally> absorbed(PlanFile file, Map<Long, byte[]> chunks) {
        CheckpointFormat format = CheckpointFormat.of(file.plan());
        SweepResult<PairTally> total = SweepResult.none(file.plan(), new PairTally(file.pairModel()));
        try {
            for (byte[] chunk : chunks.values()) {
                total = total.absorb(format.read(
                        new DataInputStream(new ByteArrayInputStream(chunk)), new PairTally(file.pairModel())));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (!total.complete()) {
            throw new IllegalStateException("the job gave the statistics of " + chunks.size() + " chunks of "
                    + file.plan().chunks());
        }
        return total;
    }
}
