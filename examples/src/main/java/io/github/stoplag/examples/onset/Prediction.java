package io.github.stoplag.examples.onset;

import io.github.stoplag.examples.file.CsvText;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Source;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * A published figure with the library's own.
 *
 * @param quantity what it is, with its conditions
 * @param published the published figure
 * @param predicted the library's figure; nothing if the published one set a parameter of the model and so proves
 *     nothing
 * @param unit the unit of both, 1 for a plain ratio
 * @param source who published it
 */
record Prediction(String quantity, double published, OptionalDouble predicted, String unit, Source source) {
    /** The mark of a figure that set a parameter. */
    static final String INPUT = " (input, not a prediction)";

    private static final List<String> HEADER =
            List.of("quantity", "published", "predicted", "unit", "relative_error", "standing", "source");
    private static final int DIGITS = 4;

    static Prediction of(String quantity, double published, double predicted, String unit, Source source) {
        return new Prediction(quantity, published, OptionalDouble.of(predicted), unit, source);
    }

    static Prediction input(String quantity, double published, String unit, Source source) {
        return new Prediction(quantity + INPUT, published, OptionalDouble.empty(), unit, source);
    }

    /** Gives (predicted − published)/published. */
    OptionalDouble relativeError() {
        return predicted.isPresent()
                ? OptionalDouble.of(predicted.getAsDouble() / published - 1)
                : OptionalDouble.empty();
    }

    String predictedText() {
        return predicted.isPresent() ? Numbers.text(predicted.getAsDouble(), DIGITS) : "";
    }

    static String csv(List<Prediction> predictions) {
        return CsvText.of(HEADER, predictions.stream().map(Prediction::fields));
    }

    private List<String> fields() {
        OptionalDouble error = relativeError();
        return List.of(
                quantity,
                Numbers.text(published),
                predictedText(),
                unit,
                error.isPresent() ? Numbers.fixed(error.getAsDouble(), 3) : "",
                source.standing().toString(),
                String.join(
                        ", ",
                        Stream.of(source.document(), source.place())
                                .filter(text -> !text.isEmpty())
                                .toList()));
    }
}
