package io.github.stoplag.examples.sweep;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.examples.file.Resource;
import io.github.stoplag.examples.program.Interruption;
import io.github.stoplag.examples.program.OutputCommand;
import io.github.stoplag.examples.program.OutputFolder;
import io.github.stoplag.examples.sweep.run.Manifest;
import io.github.stoplag.examples.sweep.run.Plans;
import io.github.stoplag.examples.sweep.run.RowFormat;
import io.github.stoplag.examples.sweep.run.SweepJob;
import io.github.stoplag.examples.sweep.run.SweepOutcome;
import io.github.stoplag.examples.sweep.run.SweepRows;
import io.github.stoplag.sweep.PlanFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Option;

/**
 * The program {@code sweep}: from a plan file to contact probabilities over millions of scenarios, tables, rows and
 * pictures.
 */
@Command(
        name = "sweep",
        description = {
            "Says how probable contact is, given that the leader brakes, over millions",
            "of drawn scenarios, for each stop lamp on the same draws. Not a crash rate."
        },
        footer = {
            "",
            "Writes manifest.json (plan, seed, counts, files with SHA-256), report.html,",
            "result.json (contact probability of each lamp, difference, intervals and what",
            "they cover), up to five pictures, scenarios as part-00000.parquet, ..., and",
            "the tables",
            "  summary.csv         contact probabilities, closing speeds, difference of lamps",
            "  convergence.csv     contact probability after 1, 2, 4, ... chunks",
            "  contacts.csv        contacts by gap and speed, without the outermost 0.5 %%",
            "                      of a drawn one at either end",
            "  sensitivities.csv   shares of variance, first order and total",
            "  one_at_a_time.csv   closing speed along each axis, the others in their middle",
            "Until a run is done its files are in DIR.unfinished; the folder DIR is then",
            "replaced as a whole. A run cut off by Ctrl-C or a crash goes on with --resume",
            "and ends with the same bits; a part file that was lost or damaged meanwhile is",
            "made anew. Only one run at a time can have a folder: DIR.unfinished.lock.",
            "Exit code: 0 done; 1 failed or cut off; 2 an input cannot be used: one line",
            "says why, and nothing is written."
        })
public final class SweepCommand extends OutputCommand {
    private static final String REPORT = "report.html";
    private static final String UNFINISHED = ".unfinished";
    private static final String ALL = "all";
    private static final String NONE = "none";

    @Option(
            names = "--plan",
            paramLabel = "FILE",
            description = "a plan in the form that --print-plan shows; default: a shipped one, invented data")
    private @Nullable Path planPath;

    @Option(names = "--print-plan", description = "print the shipped plan with its comments, to be edited, and end")
    private boolean printPlan;

    @Option(
            names = "--scenarios",
            paramLabel = "N",
            description = "scenarios in place of the plan's; in a grid: per combination")
    private @Nullable Long scenarios;

    @Option(names = "--seed", paramLabel = "N", description = "seed in place of the plan's")
    private @Nullable Long seed;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "threads; the results do not depend on it; default: one for each processor")
    private int threads = Runtime.getRuntime().availableProcessors();

    @Option(
            names = "--rows",
            paramLabel = "N",
            defaultValue = "65536",
            description = "how many scenarios go into part files, from the first on: a number, all or none; default:"
                    + " ${DEFAULT-VALUE}. The statistics are over all scenarios in any case")
    private String rows = "";

    @Option(
            names = "--format",
            paramLabel = "FORM",
            defaultValue = "parquet",
            description = "form of the part files, csv or parquet; default: ${DEFAULT-VALUE}")
    private String format = "";

    @Option(
            names = "--checkpoint",
            paramLabel = "N",
            description = "write down the state after every N chunks of 65536 scenarios; default: ${DEFAULT-VALUE}")
    private int checkpoint = SweepJob.CHECKPOINT_CHUNKS;

    @Option(names = "--resume", description = "go on with the run of this plan that was cut off")
    private boolean resume;

    @Option(names = "--restart", description = "discard a run that was cut off and start anew")
    private boolean restart;

    @Override
    public Integer call() {
        if (printPlan) {
            printer().print(Resource.text(Plans.SHIPPED));
            printer().flush();
            return ExitCode.OK;
        }
        PlanFile plan = plan();
        SweepRows wanted = new SweepRows(form(), rowCount());
        inRange("--threads", threads, 1024);
        inRange("--checkpoint", checkpoint, 1_000_000);
        OutputFolder folder = OutputFolder.of(out(), SweepCommand::isOwn);
        Path work = out().resolveSibling(out().getFileName() + UNFINISHED);
        OutputFolder.of(work, SweepCommand::isOwn);
        if (resume && restart) {
            throw new InputException("--resume and --restart: give one of the two");
        }
        try (SweepJob job = SweepJob.open(plan, wanted, work, threads, checkpoint);
                Interruption interruption = new Interruption()) {
            prepare(work);
            SweepProgress progress = new SweepProgress(errors(), SweepProgress.onTerminal());
            SweepOutcome outcome = resume ? job.resume(progress, interruption) : job.start(progress, interruption);
            job.remade().forEach(part -> errors().println(part + " was missing or damaged and was made anew."));
            return outcome.result().complete() ? finish(outcome, folder, work) : cutOff(outcome, work);
        }
    }

    private static boolean isOwn(String name) {
        return SweepJob.isOwn(name)
                || Manifest.isName(name)
                || name.equals(REPORT)
                || name.equals(SweepResultJson.FILE)
                || SweepTables.NAMES.contains(name)
                || SweepCharts.IDS.stream().anyMatch(id -> name.equals(id + ".svg"));
    }

    private PlanFile plan() {
        PlanFile plan = planPath == null ? Plans.shipped() : Plans.read(planPath);
        try {
            plan = scenarios == null ? plan : plan.withScenarios(scenarios);
        } catch (IllegalArgumentException e) {
            throw new InputException("--scenarios = " + scenarios + ": " + e.getMessage(), e);
        }
        return seed == null ? plan : plan.withSeed(seed);
    }

    private RowFormat form() {
        try {
            return RowFormat.valueOf(format.toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException e) {
            throw new InputException("--format = " + format + ": must be csv or parquet", e);
        }
    }

    private long rowCount() {
        if (rows.equals(ALL)) {
            return Long.MAX_VALUE;
        }
        if (rows.equals(NONE)) {
            return 0;
        }
        if (!rows.matches("[0-9]{1,18}")) {
            throw new InputException("--rows = " + rows + ": must be a whole number of at least 0, all or none");
        }
        return Long.parseLong(rows);
    }

    private static void inRange(String option, int value, int most) {
        if (value < 1 || value > most) {
            throw new InputException(option + " = " + value + ": must be in [1, " + most + "]");
        }
    }

    private void prepare(Path work) {
        if (!resume && !restart && SweepJob.wasCutOff(work)) {
            throw new InputException(
                    work + ": holds a run that was cut off; go on with --resume or discard it with --restart");
        }
        if (!resume && Files.exists(work)) {
            OutputFolder.deleteAll(work);
        }
    }

    private int cutOff(SweepOutcome outcome, Path work) {
        write(work, () -> Manifest.write(outcome, work, outcome.partNames()));
        errors().println("Cut off after " + SweepText.count(outcome.result().scenarios()) + " of "
                + SweepText.count(outcome.plan().plan().size()) + " scenarios; --resume goes on.");
        return ExitCode.SOFTWARE;
    }

    private int finish(SweepOutcome outcome, OutputFolder folder, Path work) {
        SweepStudy study = SweepStudy.of(outcome, threads);
        List<Figure> figures = SweepCharts.of(study);
        Map<String, String> files = new LinkedHashMap<>(SweepTables.of(study));
        figures.forEach(figure -> files.put(figure.fileName(), figure.svg()));
        files.put(REPORT, SweepPage.of(study, figures));
        write(work, () -> {
            files.put(SweepResultJson.FILE, SweepResultJson.of(study));
            for (Map.Entry<String, String> file : files.entrySet()) {
                Files.writeString(work.resolve(file.getKey()), file.getValue());
            }
            List<String> all = new ArrayList<>(Stream.concat(files.keySet().stream(), outcome.partNames().stream())
                    .sorted()
                    .toList());
            Manifest.write(outcome, work, all);
            removeAllBut(all, work);
        });
        folder.replaceWith(work);
        // only now: cut off before, the run can still be taken up
        write(out(), () -> SweepJob.forget(out()));
        SweepText.of(study).forEach(printer()::println);
        printer()
                .println("Written to " + OutputFolder.shown(out()) + ": manifest.json, " + REPORT + ", "
                        + SweepResultJson.FILE + ", "
                        + SweepTables.NAMES.size() + " tables, " + figures.size() + " pictures, "
                        + outcome.partNames().size() + " part file(s).");
        pages(out(), List.of(REPORT));
        return ExitCode.OK;
    }

    /** Removes what an earlier attempt left; the checkpoint stays until the folder is in place. */
    private static void removeAllBut(List<String> listed, Path work) throws IOException {
        try (Stream<Path> files = Files.list(work)) {
            for (Path file : files.toList()) {
                String name = String.valueOf(file.getFileName());
                if (!listed.contains(name) && !name.equals(Manifest.FILE) && !SweepJob.isState(name)) {
                    Files.delete(file);
                }
            }
        }
    }

    /** Something that writes files. */
    private interface Writing {
        void run() throws IOException;
    }

    private void write(Path work, Writing writing) {
        try {
            writing.run();
        } catch (IOException e) {
            throw new InputException(work + ": cannot be written: " + OutputFolder.reason(e), e);
        }
    }
}
