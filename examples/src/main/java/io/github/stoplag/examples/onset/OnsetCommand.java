package io.github.stoplag.examples.onset;

import io.github.stoplag.examples.program.ProgramCommand;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import picocli.CommandLine.Command;

/** The program {@code onset}: rise and decay of stop lamps, and published figures beside the model's own. */
@Command(
        name = "onset",
        description = {
            "Shows how the light of stop lamps rises and falls, and sets published figures",
            "beside what the library predicts with one set of inputs."
        },
        footer = {
            "",
            "Writes curves.csv, predictions.csv, flashing.csv and two pictures: rise.svg,",
            "decay.svg.",
            "Exit code: 0 done; 1 failed; 2 an input cannot be used: one line says why,",
            "and nothing is written."
        })
public final class OnsetCommand extends ProgramCommand {
    private static final String CURVES = "curves.csv";
    private static final String PREDICTIONS = "predictions.csv";
    private static final String FLASHING = "flashing.csv";

    @Override
    protected List<String> fileNames() {
        return Stream.concat(Stream.of(CURVES, PREDICTIONS, FLASHING), OnsetCharts.FILES.stream())
                .toList();
    }

    @Override
    protected Results results() {
        List<OnsetCourse> courses = OnsetCourse.all();
        List<Prediction> predictions = Predictions.all();
        List<Flashes> flashes = Flashes.all();
        Map<String, String> files = new LinkedHashMap<>();
        files.put(CURVES, OnsetCharts.csv(courses));
        files.put(PREDICTIONS, Prediction.csv(predictions));
        files.put(FLASHING, Flashes.csv(flashes));
        OnsetCharts.of(courses).forEach(figure -> files.put(figure.fileName(), figure.svg()));
        return new Results(OnsetText.of(courses, predictions, flashes), files);
    }
}
