package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.file.MeasuredCsv;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.program.ScenarioCommand;
import io.github.stoplag.lamp.MeasuredLamp;
import java.nio.file.Path;
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
            "onset.svg, distance_metric.svg, distance_us.svg, road_1.svg, ... (one for each speed).",
            "Exit code: 0 done; 1 failed; 2 an input cannot be used: one line says why,",
            "and nothing is written."
        })
public final class LampSwapCommand extends ScenarioCommand {
    private static final String SUMMARY = "summary.csv";
    private static final String REPORT = "report.html";
    static final String SUMMARY_PAGE = "summary.html";
    private static final List<String> PICTURES = List.of("onset.svg", "distance_metric.svg", "distance_us.svg");
    private static final Pattern ROAD = Pattern.compile("road(_[1-9][0-9]*)?\\.svg");

    @Option(
            names = "--measured",
            paramLabel = "FILE",
            description = "a filmed lamp in place of the filament lamp: CSV with the header time_s,relative_brightness;"
                    + " time 0 is when the lamp's circuit closes; it gives the rise, the scenario the candela")
    private @Nullable Path measured;

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
        return Stream.concat(Stream.of(SUMMARY_PAGE, REPORT, SUMMARY), PICTURES.stream())
                .toList();
    }

    @Override
    protected boolean mayWrite(String name) {
        return super.mayWrite(name) || ROAD.matcher(name).matches();
    }

    @Override
    protected Results results(ScenarioFile file) {
        MeasuredLamp filmed = measured == null ? null : MeasuredCsv.read(measured);
        LampSwap swap = LampSwap.of(Scenario.of(file, filmed));
        List<Figure> figures = Stream.concat(Charts.of(swap).stream(), RoadDiagram.all(swap).stream())
                .toList();
        Map<String, String> files = new LinkedHashMap<>();
        files.put(SUMMARY_PAGE, SummaryHtml.of(swap, figures.get(0)));
        files.put(REPORT, ReportHtml.of(swap, figures));
        files.put(SUMMARY, SummaryCsv.of(swap));
        figures.forEach(figure -> files.put(figure.fileName(), figure.svg()));
        return new Results(ReportText.of(swap), files);
    }
}
