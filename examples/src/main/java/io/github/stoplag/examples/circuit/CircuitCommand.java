package io.github.stoplag.examples.circuit;

import io.github.stoplag.examples.file.CsvText;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.examples.file.ScenarioFile;
import io.github.stoplag.examples.program.ScenarioCommand;
import io.github.stoplag.source.Standing;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import picocli.CommandLine.Command;

/** The program {@code circuit}: the electrical side of a lamp swap. */
@Command(
        name = "circuit",
        description = {
            "Works out the electrical side of a lamp swap: outage monitor, load resistor,",
            "flasher, harness, isolating diode, fuse; with what to mind."
        },
        footer = {
            "",
            "Writes circuit.csv and two pictures: current.svg, diode_onset.svg.",
            "Exit code: 0 done; 1 failed; 2 an input cannot be used: one line says why,",
            "and nothing is written."
        })
public final class CircuitCommand extends ScenarioCommand {
    private static final String TABLE = "circuit.csv";
    private static final List<String> HEADER = List.of("quantity", "value", "unit", "basis", "standing");

    @Override
    protected String shipped() {
        return CircuitScenario.SHIPPED;
    }

    @Override
    protected ScenarioFile.Vocabulary vocabulary() {
        return CircuitScenario.VOCABULARY;
    }

    @Override
    protected List<String> fileNames() {
        return Stream.concat(Stream.of(TABLE), CircuitCharts.FILES.stream()).toList();
    }

    @Override
    protected Results results(ScenarioFile file) {
        CircuitStudy study = CircuitStudy.of(CircuitScenario.of(file));
        List<CircuitSection> sections = study.sections();
        Map<String, String> files = new LinkedHashMap<>();
        files.put(TABLE, csv(study.scenario().heading(), sections));
        CircuitCharts.of(study).forEach(figure -> files.put(figure.fileName(), figure.svg()));
        return new Results(CircuitText.of(study, sections), files);
    }

    private static String csv(Heading heading, List<CircuitSection> sections) {
        String standing = Standing.DERIVED + (heading.invented() ? " from " + Heading.INVENTED_DATA : "");
        return CsvText.of(
                HEADER,
                sections.stream()
                        .flatMap(section -> section.rows().stream())
                        .map(row -> List.of(row.quantity(), row.value(), row.unit(), row.basis(), standing)));
    }
}
