package io.github.stoplag.examples;

import io.github.stoplag.lamp.MeasuredLamp;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The program {@code lamp-swap}: from a scenario to a printed report, a table, pictures and a page. */
@Command(
        name = "lamp-swap",
        description = {
            "Says how much earlier the driver behind sees one stop lamp than another,",
            "and what that time buys: metres, a stop or a collision, over many speeds."
        },
        footer = {
            "",
            "Writes summary.csv, report.html and four pictures: onset.svg,",
            "distance_metric.svg, distance_us.svg, road.svg.",
            "Exit code: 0 done; 1 failed; 2 an input cannot be used: one line says why,",
            "and nothing is written."
        })
final class LampSwapCommand implements Callable<Integer> {
    private static final String SUMMARY = "summary.csv";
    private static final String REPORT = "report.html";
    private static final List<String> PICTURES =
            List.of("onset.svg", "distance_metric.svg", "distance_us.svg", "road.svg");

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
            names = "--scenario",
            paramLabel = "FILE",
            description =
                    "a scenario in the form that --print-scenario shows; default: the shipped minibus, invented data")
    private @Nullable Path scenario;

    @Option(
            names = "--measured",
            paramLabel = "FILE",
            description = "a filmed lamp in place of the filament lamp: CSV with the header time_s,relative_brightness;"
                    + " time 0 is when the lamp's circuit closes")
    private @Nullable Path measured;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "${sys:stoplag.output:-examples/target}/lamp-swap",
            description = "folder for the results, replaced as a whole; default: examples/target/lamp-swap")
    private Path out = Path.of("");

    @Option(
            names = "--print-scenario",
            description = "print the shipped scenario with its comments, to be edited, and end")
    private boolean printScenario;

    @Override
    public Integer call() throws IOException {
        PrintWriter printer = spec.commandLine().getOut();
        if (printScenario) {
            printer.print(ScenarioFile.shippedText());
            printer.flush();
            return ExitCode.OK;
        }
        OutputFolder folder = OutputFolder.of(
                out,
                Stream.concat(Stream.of(SUMMARY, REPORT), PICTURES.stream()).toList());
        Scenario asked = Scenario.of(scenario == null ? ScenarioFile.shipped() : ScenarioFile.read(scenario));
        MeasuredLamp filmed = measured == null ? null : MeasuredCsv.read(measured);
        LampSwap swap = LampSwap.of(asked, filmed);
        folder.replaceWith(files(swap));
        ReportText.of(swap).forEach(printer::println);
        printer.println("Written to " + OutputFolder.shown(out) + ": " + SUMMARY + ", " + REPORT + " and 4 pictures.");
        return ExitCode.OK;
    }

    private static Map<String, String> files(LampSwap swap) {
        List<Figure> figures = Stream.concat(Charts.of(swap).stream(), Stream.of(RoadDiagram.of(swap)))
                .toList();
        Map<String, String> files = new LinkedHashMap<>();
        files.put(SUMMARY, SummaryCsv.of(swap));
        figures.forEach(figure -> files.put(figure.fileName(), figure.svg()));
        files.put(REPORT, ReportHtml.of(swap, figures));
        return files;
    }
}
