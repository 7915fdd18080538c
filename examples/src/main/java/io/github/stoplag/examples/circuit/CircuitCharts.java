package io.github.stoplag.examples.circuit;

import io.github.stoplag.circuit.CurrentDraw;
import io.github.stoplag.circuit.FeedOnset;
import io.github.stoplag.circuit.OutageVerdict;
import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.LineChart;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.lamp.FilamentOnset;
import io.github.stoplag.quantity.Voltage;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The charts of {@code circuit}: current against supply with the monitor's band, and the onset behind the diode. */
final class CircuitCharts {
    static final List<String> FILES = List.of("current.svg", "diode_onset.svg");
    private static final int SAMPLES = 160;
    private static final double BEYOND = 1.1;

    private CircuitCharts() {}

    static List<Figure> of(CircuitStudy study) {
        return List.of(current(study), onset(study));
    }

    private static Figure current(CircuitStudy study) {
        List<LineChart.Series> series = new ArrayList<>();
        series.add(current(study, "filament bulb", 0, study.filament()));
        series.add(current(study, "LED lamp alone", 1, study.scenario().led()));
        study.resistor()
                .ifPresent(r -> series.add(current(
                        study, "LED lamp with " + Text.digits(r.nominal().inOhms()) + " ohm", 3, study.ledAtLeast())));
        OutageVerdict verdict =
                study.scenario().monitor().judge(study.scenario().led());
        double failedA = verdict.failedBelow().inAmperes();
        double healthyA = verdict.healthyFrom().inAmperes();
        String band = "monitor undecided: " + Text.digits(failedA) + " to " + Text.digits(healthyA) + " A";
        return new LineChart(
                        notes(study, "marks: lowest, usual and highest supply"),
                        "supply voltage (V)",
                        "current of one lamp (A)",
                        series)
                .withBands(List.of(new LineChart.Band(band, failedA, healthyA)))
                .figure(
                        "current",
                        "What the outage monitor sees",
                        "Below " + Text.digits(failedA) + " A the monitor surely reports a failure, from "
                                + Text.digits(healthyA) + " A on a healthy lamp. "
                                + series.stream()
                                        .map(s -> s.label() + " at the lowest supply: "
                                                + Text.digits(s.marks().get(0).y()) + " A.")
                                        .collect(Collectors.joining(" ")));
    }

    private static LineChart.Series current(CircuitStudy study, String label, int style, CurrentDraw load) {
        CircuitScenario.Supply supply = study.scenario().supply();
        double most = supply.highest().inVolts() * BEYOND;
        return new LineChart.Series(
                label,
                style,
                IntStream.rangeClosed(0, SAMPLES)
                        .mapToObj(i -> point(load, most * i / SAMPLES))
                        .toList(),
                Stream.of(supply.lowest(), supply.nominal(), supply.highest())
                        .map(voltage -> point(load, voltage.inVolts()))
                        .toList(),
                false);
    }

    private static LineChart.Point point(CurrentDraw load, double volts) {
        return new LineChart.Point(volts, load.current(Voltage.volts(volts)).inAmperes());
    }

    private static Figure onset(CircuitStudy study) {
        FeedOnset onset = FeedParts.onset(study);
        double endS = onset.slowest().timeToLevelS(0.99).orElseThrow();
        String later = Text.milliseconds(
                onset.delayByDiode(FeedParts.TOLD_LEVEL).latest().inSeconds());
        double ratio = onset.lightAgainstDirectRatio();
        return new LineChart(
                        notes(
                                study,
                                "added filament lamp at "
                                        + study.scenario().supply().nominal()),
                        "time since switch-on (ms)",
                        "light, % of final without diode",
                        List.of(
                                light("without the diode", 0, onset.direct(), 1, endS),
                                light(
                                        "behind the diode: half its light " + later + " later",
                                        3,
                                        onset.slowest(),
                                        ratio,
                                        endS)))
                .figure(
                        "diode_onset",
                        "What the isolating diode costs the added lamp",
                        "Behind the diode the lamp ends at " + Text.digits(100 * ratio)
                                + " % of the light it has without it, and reaches half of its own final light " + later
                                + " later.");
    }

    private static LineChart.Series light(String label, int style, FilamentOnset onset, double ratio, double endS) {
        double half = onset.timeToLevelS(FeedParts.TOLD_LEVEL).orElseThrow();
        return new LineChart.Series(
                label,
                style,
                IntStream.rangeClosed(0, SAMPLES)
                        .mapToDouble(i -> endS * i / SAMPLES)
                        .mapToObj(t -> new LineChart.Point(1000 * t, 100 * ratio * onset.relativeIntensity(t)))
                        .toList(),
                List.of(new LineChart.Point(1000 * half, 100 * ratio * FeedParts.TOLD_LEVEL)),
                true);
    }

    private static List<String> notes(CircuitStudy study, String more) {
        return Stream.concat(study.scenario().heading().marks().stream(), Stream.of(more))
                .toList();
    }
}
