package io.github.stoplag.examples.onset;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.sweep.FilamentUncertainty.Budget;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The printed report of {@code onset}. */
final class OnsetText {
    private static final String COURSE = "  %-22s %8s %8s %8s %8s   %8s %8s";
    private static final String PREDICTION = "  %10s %10s %-7s %7s  %-6s ";
    private static final String BUDGET = "  %-26s %16s %30s";
    private static final String FLASH = "  %-9s %5s Hz %10s %10s %10s %10s   %s";

    private OnsetText() {}

    static List<String> of(List<OnsetCourse> courses, List<Prediction> predictions, List<Flashes> flashes) {
        List<String> lines = new ArrayList<>();
        lines.add("How stop lamps come on and go off, and published figures beside the model's own");
        lines.addAll(Text.wrapped(
                "",
                "One set of inputs for all: bulb 1157 from its rating, 12.8 V, red lens; an eye that sums light with a time"
                        + " constant of " + LaboratoryLamps.EYE_TIME_CONSTANT + " and a threshold of "
                        + LaboratoryLamps.EYE_THRESHOLD + "."));
        courses(lines, courses);
        predictions(lines, predictions);
        budgets(lines);
        flashes(lines, flashes);
        lines.add("");
        lines.add("What it rests on");
        LaboratoryLamps.standard().basis().forEach(item -> lines.addAll(Text.wrapped("  - ", item)));
        lines.add("");
        lines.add("Caveats");
        courses.stream()
                .flatMap(course -> course.caveats().stream())
                .distinct()
                .forEach(caveat -> lines.addAll(Text.wrapped("  - ", caveat.toString())));
        lines.addAll(
                Text.wrapped(
                        "  - ",
                        "Laboratory gains are large, gains in traffic small or none: an earlier lamp helps a driver who looks and"
                                + " responds to it. The model is no proof of safety; a lamp is approved together with its bulb."));
        lines.add("");
        return lines;
    }

    private static void courses(List<String> lines, List<OnsetCourse> courses) {
        lines.add("");
        lines.add(format(COURSE, "light on, off (ms)", "1 %", "10 %", "50 %", "90 %", "to 50 %", "to 10 %"));
        for (OnsetCourse course : courses) {
            lines.add(format(
                    COURSE,
                    course.name(),
                    ms(course.riseS(0.01)),
                    ms(course.riseS(0.1)),
                    ms(course.riseS(0.5)),
                    ms(course.riseS(0.9)),
                    ms(course.fallS().apply(0.5)),
                    ms(course.fallS().apply(0.1))));
        }
        courses.forEach(course -> lines.addAll(Text.wrapped("  - ", course.name() + ": " + course.what())));
    }

    private static String ms(OptionalDouble timeS) {
        return timeS.isPresent() ? Numbers.fixed(1000 * timeS.getAsDouble(), 0) : "never";
    }

    private static void predictions(List<String> lines, List<Prediction> predictions) {
        lines.add("");
        lines.add(format(PREDICTION, "published", "predicted", "unit", "error", "known") + " quantity");
        for (Prediction prediction : predictions) {
            OptionalDouble error = prediction.relativeError();
            String figures = String.format(
                    Locale.ROOT,
                    PREDICTION,
                    Numbers.text(prediction.published()),
                    prediction.predictedText(),
                    prediction.unit().equals("1") ? "" : prediction.unit(),
                    error.isPresent() ? percent(error.getAsDouble()) : "",
                    known(prediction));
            lines.addAll(Text.wrapped(figures, prediction.quantity()));
        }
        lines.addAll(Text.wrapped(
                "  ",
                "known: seen, mem = from memory, der = derived, trade = common practice without a source. Volts, watts and"
                        + " life tell a bulb's light from 3 W (above 16 V from 10 W), up to 3000 h, without halogen: there "
                        + missed(Predictions.fluxes())
                        + ". Outside, where nothing is claimed, "
                        + missed(Predictions.fluxesOutOfRange()) + "; their errors: "
                        + Predictions.fluxesOutOfRange().stream()
                                .map(prediction -> prediction.quantity()
                                                .split(" ", 3)[2]
                                                .split(" from ", 2)[0] + " "
                                        + percent(prediction.relativeError().orElseThrow()))
                                .collect(Collectors.joining(", "))
                        + "."));
    }

    private static String missed(List<Prediction> fluxes) {
        long off = fluxes.stream()
                .filter(prediction -> Math.abs(prediction.relativeError().orElseThrow()) > 0.25)
                .count();
        return off + " of " + fluxes.size() + " fluxes are off by more than 25 %";
    }

    private static void budgets(List<String> lines) {
        lines.add("");
        lines.add(format(BUDGET, "standard uncertainty (ms)", "50 % of light", "seen, mean of 42 cd and 5 cd"));
        Budget half = LampPredictions.halfLight();
        Budget seen = EyePredictions.filamentSeen();
        for (int i = 0; i < half.contributions().size(); i++) {
            String input = half.contributions().get(i).input();
            lines.add(format(
                    BUDGET,
                    "- " + input.replace("_ratio", "").replace('_', ' '),
                    signedMs(half.contributions().get(i).contribution()),
                    signedMs(seen.contributions().get(i).contribution())));
        }
        lines.add(format(
                BUDGET,
                "all together",
                Numbers.fixed(1000 * half.time().standardUncertainty(), 1),
                Numbers.fixed(1000 * seen.time().standardUncertainty(), 1)));
        lines.add(format(BUDGET, "the time, 95 % interval", interval(half), interval(seen)));
        half.basis().forEach(item -> lines.addAll(Text.wrapped("  - ", item)));
    }

    private static String signedMs(double seconds) {
        return (seconds < 0 ? "" : "+") + Numbers.fixed(1000 * seconds, 1);
    }

    private static String interval(Budget budget) {
        return Numbers.fixed(1000 * budget.time().value(), 0) + " ["
                + Numbers.fixed(1000 * budget.time().coverage().lo(), 0) + ", "
                + Numbers.fixed(1000 * budget.time().coverage().hi(), 0) + "]";
    }

    private static String percent(double ratio) {
        String rounded = Numbers.fixed(100 * ratio, 0);
        return (rounded.equals("0") || ratio < 0 ? "" : "+") + rounded + " %";
    }

    private static String known(Prediction prediction) {
        return switch (prediction.source().standing()) {
            case FROM_MEMORY -> "mem";
            case DERIVED -> "der";
            case COMMON_PRACTICE -> "trade";
            case SEEN, ASSUMED, INVENTED -> prediction.source().standing().toString();
        };
    }

    private static void flashes(List<String> lines, List<Flashes> flashes) {
        lines.add("");
        lines.add(
                format(FLASH, "flashing", "at", "first peak", "peak", "trough", "modulation", "emergency stop signal"));
        for (Flashes flash : flashes) {
            lines.add(format(
                    FLASH,
                    flash.lamp(),
                    Numbers.text(flash.frequencyHz()),
                    percentOf(flash.light().firstPeakRatio()),
                    percentOf(flash.light().peakRatio()),
                    percentOf(flash.light().troughRatio()),
                    percentOf(flash.light().modulationDepth()),
                    flash.emergencySignal() ? "within UN R48" : ""));
        }
        lines.addAll(Text.wrapped(
                "  ",
                "On for half of each cycle; peaks over the steady light. A filament neither gets bright nor dark at high"
                        + " frequencies: the emergency stop signal, 3 to 5 Hz, ends at 4 Hz where a filament is used."
                        + " No published depth of modulation was found to compare with."));
    }

    private static String percentOf(double ratio) {
        return Numbers.fixed(100 * ratio, 0) + " %";
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values).stripTrailing();
    }
}
