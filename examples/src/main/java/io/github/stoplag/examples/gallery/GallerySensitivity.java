package io.github.stoplag.examples.gallery;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.SensitivityChart;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.draw.TornadoChart;
import io.github.stoplag.examples.lampswap.LampSwap;
import io.github.stoplag.examples.lampswap.Scenario;
import io.github.stoplag.kernel.GapEvent;
import io.github.stoplag.kernel.GapKernel;
import io.github.stoplag.sweep.Design;
import io.github.stoplag.sweep.Model;
import io.github.stoplag.sweep.OneAtATime;
import io.github.stoplag.sweep.SobolIndices;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** Pictures of what the gap needed depends on. */
final class GallerySensitivity {
    private static final List<String> COLUMNS =
            List.of("reaction_s", "leader_decel_mps2", "follower_decel_mps2", "lamp_latency_filament_s");
    private static final List<String> INPUTS = List.of(
            "reaction of the driver behind (s)",
            "braking of the vehicle ahead (m/s²)",
            "braking of the vehicle behind (m/s²)",
            "time until the filament lamp is seen (s)");

    private GallerySensitivity() {}

    /** The gap needed to stay clear of the vehicle ahead, as a model of a sweep. */
    private static Model gapNeeded(Scenario scenario) {
        double deadS = scenario.follower().response().deadTime().inSeconds();
        double buildUpS = scenario.follower().response().buildUp().inSeconds();
        double speedMps = 80 / 3.6;
        return Model.ofRows(COLUMNS, List.of("gap_needed_m"), (in, out) -> {
            double onsetS = in[3] + in[0] + deadS;
            out[0] = GapKernel.pairGapNeededM(
                    speedMps, deadS, buildUpS, in[1], speedMps, onsetS, buildUpS, in[2], new GapEvent());
        });
    }

    /** How far the gap needed moves when one input goes from its 10 % to its 90 % quantile. */
    static Figure tornado(LampSwap swap) {
        List<OneAtATime.Curve> curves = OneAtATime.curves(
                GallerySweeps.traffic(swap, Design.random(1)), gapNeeded(swap.scenario()), "gap_needed_m", 5);
        List<TornadoChart.Swing> swings = curves.stream()
                .map(curve -> new TornadoChart.Swing(
                        INPUTS.get(COLUMNS.indexOf(curve.column())) + ": "
                                + Text.digits(curve.at().get(0)) + " to "
                                + Text.digits(curve.at().get(4)),
                        curve.output().get(0),
                        curve.output().get(4)))
                .toList();
        double baseM = curves.get(0).output().get(2);
        TornadoChart.Swing widest = swings.stream()
                .max(Comparator.comparingDouble(TornadoChart.Swing::width))
                .orElseThrow();
        return new TornadoChart(
                        List.of("invented data; both at 80 km/h; each input from its 10 % to its 90 % quantile"),
                        "gap needed to avoid contact (m)",
                        baseM,
                        swings)
                .figure(
                        "tornado",
                        "What moves the gap needed, one input at a time",
                        "With all inputs at their medians " + Text.digits(baseM) + " m are needed. Widest swing: "
                                + widest.label() + " moves it from " + Text.digits(widest.atLow()) + " m to "
                                + Text.digits(widest.atHigh()) + " m.");
    }

    /** Whose spread makes the gap needed spread, alone and together with the others. */
    static Figure sensitivity(LampSwap swap) {
        SobolIndices shares = SobolIndices.of(
                GallerySweeps.traffic(swap, Design.random(65_536)), gapNeeded(swap.scenario()), "gap_needed_m", 2);
        List<SensitivityChart.Index> indices = shares.indices().stream()
                .map(index -> new SensitivityChart.Index(
                        INPUTS.get(COLUMNS.indexOf(index.column())).replaceAll(" \\(.*", ""),
                        index.first(),
                        1.96 * index.firstStandardError(),
                        index.total(),
                        1.96 * index.totalStandardError()))
                .toList();
        return new SensitivityChart(
                        List.of("invented data; gap needed with both at 80 km/h; whiskers: 1.96 standard errors"),
                        indices)
                .figure(
                        "sensitivity",
                        "Whose spread makes the gap needed spread",
                        indices.stream()
                                .map(index -> index.label() + ": " + Text.digits(100 * index.first()) + " % alone, "
                                        + Text.digits(100 * index.total()) + " % in total")
                                .collect(Collectors.joining("; ", "Shares of the variance. ", ".")));
    }
}
