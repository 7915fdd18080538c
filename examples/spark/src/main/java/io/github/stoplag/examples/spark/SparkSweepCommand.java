package io.github.stoplag.examples.spark;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.sweep.run.Plans;
import io.github.stoplag.sweep.CheckpointFormat;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.SweepResult;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.apache.spark.sql.SparkSession;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The program: runs a plan file as a Spark job, in this process unless spark-submit says where. */
@Command(
        name = "spark-sweep",
        description = {
            "Runs a plan file as a Spark job: the rows of all scenarios as Parquet files, the statistics, a manifest.",
            "Rows and statistics have the same bits as a local run of the plan, for any number of partitions and machines.",
            "Started by spark-submit it runs where that says, else in this process."
        })
public final class SparkSweepCommand implements Callable<Integer> {
    private static final int CHUNKS_PER_PARTITION = 16;
    private static final String SHIPPED = "";

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser
    private CommandSpec spec;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "show this help and end")
    @SuppressWarnings("unused") // the command line parser acts on it
    private boolean help;

    @Option(
            names = "--plan",
            paramLabel = "FILE",
            description = "plan file, on the machine of the driver; default: the plan that comes with the programs")
    private @Nullable Path plan;

    @Option(
            names = "--scenarios",
            paramLabel = "N",
            description = "how many scenarios; default: what the plan file says")
    private @Nullable Long scenarios;

    @Option(names = "--seed", paramLabel = "N", description = "seed of all draws; default: what the plan file says")
    private @Nullable Long seed;

    @Option(
            names = "--partitions",
            paramLabel = "N",
            description =
                    "into how many tasks the plan is cut; the results do not depend on it; default: one for every "
                            + CHUNKS_PER_PARTITION
                            + " chunks of 65,536 scenarios, and at least as many as there are cores")
    private @Nullable Integer partitions;

    @Option(
            names = "--out",
            paramLabel = "FOLDER",
            defaultValue = "${sys:stoplag.output:-examples/spark/target}/sweep",
            description = "folder for the results, on a file system that all machines reach; default: ${DEFAULT-VALUE}")
    private String out = "";

    /** Made by the command line parser. */
    SparkSweepCommand() {}

    /**
     * Runs the program and ends the process with its exit code if that is not 0.
     *
     * @param args the options
     */
    public static void main(String[] args) {
        PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        int exitCode = run(out, err, args);
        if (exitCode != ExitCode.OK) {
            System.exit(exitCode);
        }
    }

    static int run(PrintWriter out, PrintWriter err, String... args) {
        return new CommandLine(new SparkSweepCommand())
                .setOut(out)
                .setErr(err)
                .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
                .setParameterExceptionHandler((e, given) -> {
                    err.println(new InputException(String.valueOf(e.getMessage())).getMessage() + " (see --help)");
                    return ExitCode.USAGE;
                })
                .setExecutionExceptionHandler((e, line, parsed) -> {
                    if (e instanceof InputException) {
                        err.println(e.getMessage());
                        return ExitCode.USAGE;
                    }
                    throw e;
                })
                .execute(args);
    }

    @Override
    public Integer call() throws IOException {
        PlanText text = text();
        PlanFile file = text.plan();
        if (partitions != null && partitions < 1) {
            throw new InputException("--partitions must be at least 1, got " + partitions);
        }
        try (SparkSession spark = Sessions.open()) {
            ResultFolder folder = ResultFolder.open(out, spark.sparkContext().hadoopConfiguration());
            int tasks = partitions != null
                    ? partitions
                    : tasks(file.plan().chunks(), spark.sparkContext().defaultParallelism());
            folder.begin();
            SweepResult<PairTally> result = new SparkSweep(spark, text, tasks).run(folder.rows());
            byte[] statistics = statistics(result);
            folder.write(ResultFolder.STATISTICS, statistics);
            folder.write(
                    ResultFolder.MANIFEST,
                    JobReport.manifest(file, result, statistics, spark.version())
                            .getBytes(StandardCharsets.UTF_8));
            PrintWriter printer = spec.commandLine().getOut();
            JobReport.lines(file, result).forEach(printer::println);
            printer.println();
            printer.println("Ran on " + spark.sparkContext().master() + " in " + tasks + " tasks.");
            printer.println("Written to " + folder + ": " + ResultFolder.ROWS + " (Parquet), " + ResultFolder.STATISTICS
                    + ", " + ResultFolder.MANIFEST + ".");
        }
        return ExitCode.OK;
    }

    private PlanText text() throws IOException {
        PlanText text;
        if (plan == null) {
            text = PlanText.of(Plans.SHIPPED, SHIPPED);
        } else {
            // reading it as a file first gives the clear complaint
            Plans.read(plan);
            text = PlanText.of(plan.toString(), Files.readString(plan).replaceFirst("^\uFEFF", ""));
        }
        try {
            PlanText changed = text.withScenarios(scenarios == null ? text.scenarios() : scenarios)
                    .withSeed(seed == null ? text.seed() : seed);
            changed.plan();
            return changed;
        } catch (IllegalArgumentException e) {
            throw new InputException("--scenarios = " + scenarios + ": " + e.getMessage(), e);
        }
    }

    private static int tasks(long chunks, int cores) {
        long byChunks = (chunks + CHUNKS_PER_PARTITION - 1) / CHUNKS_PER_PARTITION;
        return (int) Math.min(Integer.MAX_VALUE, Math.min(chunks, Math.max(cores, byChunks)));
    }

    private static byte[] statistics(SweepResult<PairTally> result) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        CheckpointFormat.of(result.plan()).write(result, new DataOutputStream(bytes));
        return bytes.toByteArray();
    }
}
