package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.lamps.FilmedCurves;
import io.github.stoplag.examples.lamps.FilmedInput;
import io.github.stoplag.examples.program.ScenarioCommand;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The program {@code lamp-swap}: from a scenario to a printed report, a table, pictures and a page. */
@Command(
        name = "lamp-swap",
        description = {
            "Says how much earlier the driver behind sees one stop lamp than another,",
            "and what that time buys: metres, a stop or a collision, over many speeds."
        },
        footer = {
            "",
            "Writes summary.html (one page to hand on), report.html, summary.csv and pictures:",
            "onset.svg, distance_metric.svg, distance_us.svg, road_1.svg, ... (one for each speed);",
            "uncertainty.csv if a lamp comes from the program film.",
            "Exit code: 0 done; 1 failed; 2 an input cannot be used: one line says why,",
            "and nothing is written."
        })
public final class LampSwapCommand extends ScenarioCommand {
    private static final String SUMMARY = "summary.csv";
    private static final String UNCERTAINTY = "uncertainty.csv";
    private static final String REPORT = "report.html";
    static final String SUMMARY_PAGE = "summary.html";
    private static final List<String> PICTURES = List.of("onset.svg", "distance_metric.svg", "distance_us.svg");
    private static final Pattern ROAD = Pattern.compile("road(_[1-9][0-9]*)?\\.svg");

    @Option(
            names = "--measured",
            paramLabel = "FILE[,LAMP]",
            description =
                    "a filmed lamp in place of the one fitted now: CSV with the header time_s,relative_brightness,"
                            + " time 0 when its circuit closes; or a folder that film wrote, and behind a comma the lamp;"
                            + " it gives the rise, the scenario the candela")
    private @Nullable String measured;

    @Override
    protected String shipped() {
        return Scenario.SHIPPED;
    }

    @Override
    protected ScenarioFile.Vocabulary vocabulary() {
        return Scenario.VOCABULARY;
    }

    @Override
    protected List<String> fileNames() {
        return Stream.concat(Stream.of(SUMMARY_PAGE, REPORT, SUMMARY, UNCERTAINTY), PICTURES.stream())
                .toList();
    }

    @Override
    protected boolean mayWrite(String name) {
        return super.mayWrite(name) || ROAD.matcher(name).matches();
    }

    @Override
    protected Results results(ScenarioFile file) {
        FilmedCurves filmed = measured == null ? null : FilmedInput.read(measured, file.get(FilmedInput.ZERO_DELAY));
        LampSwap swap = LampSwap.of(Scenario.of(file, filmed));
        List<Figure> figures = Stream.concat(Charts.of(swap).stream(), RoadDiagram.all(swap).stream())
                .toList();
        Map<String, String> files = new LinkedHashMap<>();
        files.put(SUMMARY_PAGE, SummaryHtml.of(swap, figures.get(0)));
        files.put(REPORT, ReportHtml.of(swap, figures));
        files.put(SUMMARY, SummaryCsv.of(swap));
        if (swap.banded()) {
            files.put(UNCERTAINTY, SummaryCsv.uncertainty(swap));
        }
        figures.forEach(figure -> files.put(figure.fileName(), figure.svg()));
        return new Results(ReportText.of(swap), files);
    }
}
