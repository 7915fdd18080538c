package io.github.stoplag.examples.gallery;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.LineChart;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lampswap.LampSwap;
import io.github.stoplag.examples.lampswap.Scenario;
import io.github.stoplag.lamp.FilamentDecay;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Pictures of the lamps alone. */
final class GalleryLamps {
    private GalleryLamps() {}

    /** How the light of both lamps falls. The LED lamp is taken to go dark at once. */
    static Figure decay(LampSwap swap) {
        Scenario scenario = swap.scenario();
        FilamentDecay filament = swap.filament().orElseThrow().switchOff(scenario.supply());
        double tenthMs = 1000 * filament.timeToLevelS(0.1).orElseThrow();
        String filamentLabel = "filament: 10 % of its light left after " + Text.digits(tenthMs) + " ms";
        return new LineChart(
                        List.of("invented data", "the LED lamp is taken to go dark at once"),
                        "time since switch-off (ms)",
                        "light, % of the light before",
                        List.of(
                                falling(filamentLabel, 0, filament::relativeIntensity, tenthMs, 10),
                                falling("LED: dark at once", 1, t -> t > 0 ? 0 : 1, 0, 0)))
                .figure("decay", "How the light falls", filamentLabel + ". The LED lamp is dark at once.");
    }

    /** Samples a fall of light over 400 ms, from a moment just before switch-off on. */
    private static LineChart.Series falling(
            String label, int style, DoubleUnaryOperator light, double markMs, double markPercent) {
        DoubleStream timesS = DoubleStream.concat(
                DoubleStream.of(-Double.MIN_VALUE, 1e-6),
                IntStream.rangeClosed(1, 200).mapToDouble(i -> i / 500.0));
        return new LineChart.Series(
                label,
                style,
                timesS.mapToObj(t -> new LineChart.Point(1000 * t, 100 * light.applyAsDouble(t)))
                        .toList(),
                List.of(new LineChart.Point(markMs, markPercent)),
                false);
    }
}
