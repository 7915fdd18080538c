package io.github.stoplag.examples.gallery;

import io.github.stoplag.chance.Distribution;
import io.github.stoplag.examples.draw.DistributionChart;
import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.LineChart;
import io.github.stoplag.examples.draw.ProbabilityChart;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lampswap.LampSwap;
import io.github.stoplag.examples.lampswap.Scenario;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.sweep.Axis;
import io.github.stoplag.sweep.Design;
import io.github.stoplag.sweep.Histogram;
import io.github.stoplag.sweep.Interval;
import io.github.stoplag.sweep.LampTally;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.Plan;
import io.github.stoplag.sweep.Proportion;
import io.github.stoplag.sweep.Sweep;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Pictures of many drivers, brakes and lamps at once. */
final class GallerySweeps {
    private static final List<String> LAMPS = List.of("filament", "led");
    private static final List<String> NAMES = List.of("filament", "LED");
    private static final String SHARED = "invented data; both at 80 km/h; share of the drawn scenarios, no crash rate";

    private GallerySweeps() {}

    /** Drivers and brakes that spread around those of the scenario, at 80 km/h; all spreads are invented. */
    static Plan traffic(LampSwap swap, Design design) {
        Scenario scenario = swap.scenario();
        double reactionS = scenario.follower().reaction().inSeconds();
        double leaderMps2 = scenario.leader().deceleration().inMps2();
        double followerMps2 = scenario.follower().deceleration().inMps2();
        double filamentS = swap.lamps().get(0).seen().orElseThrow().inSeconds();
        return Plan.of(design, 1)
                .axis(Axis.drawn("reaction", "s", new Distribution.LogNormal(Math.log(reactionS), 0.3)))
                .axis(Axis.drawn("leader_decel", "mps2", new Distribution.TruncatedNormal(leaderMps2, 1, 3, 9)))
                .axis(Axis.drawn("follower_decel", "mps2", new Distribution.TruncatedNormal(followerMps2, 1, 3, 9)))
                .axis(Axis.drawn("lamp_latency_filament", "s", new Distribution.LogNormal(Math.log(filamentS), 0.2)));
    }

    private static PairTally swept(LampSwap swap, Plan traffic, Axis gap) {
        double ledS = swap.lamps().get(1).seen().orElseThrow().inSeconds();
        Plan plan = traffic.axis(Axis.constant("speed", "mps", 80 / 3.6))
                .axis(Axis.constant("lamp_latency_led", "s", ledS))
                .axis(gap);
        PairModel model = PairModel.of(plan, "filament", "led");
        return Sweep.of(plan, model).run(() -> new PairTally(model)).tally();
    }

    /** How probable a contact is at each gap, from 8192 scenarios for each, with Wilson's interval at 95 %. */
    static Figure probability(LampSwap swap) {
        // tables of quantiles do not pay for so few draws
        Plan few = traffic(swap, Design.random(8192)).withExactQuantiles();
        List<PairTally> tallies = new ArrayList<>();
        for (int i = 2; i <= 14; i++) {
            tallies.add(swept(swap, few, Axis.constant("time_gap", "s", i / 5.0)));
        }
        List<ProbabilityChart.Curve> curves = new ArrayList<>();
        for (int lamp = 0; lamp < LAMPS.size(); lamp++) {
            List<ProbabilityChart.Point> points = new ArrayList<>();
            for (int i = 0; i < tallies.size(); i++) {
                Proportion contact = tallies.get(i).lamp(LAMPS.get(lamp)).contactProbability();
                Interval interval = contact.wilson(0.95);
                points.add(new ProbabilityChart.Point((i + 2) / 5.0, contact.value(), interval.lo(), interval.hi()));
            }
            String at = Text.digits(100 * points.get(5).ratio()) + " % at 1.4 s";
            curves.add(new ProbabilityChart.Curve(NAMES.get(lamp) + " lamp: " + at, lamp, points));
        }
        return new ProbabilityChart(
                        List.of(SHARED, "bands: 95 % intervals from 8192 scenarios at each gap"),
                        "gap (s)",
                        "probability of contact (%)",
                        curves)
                .figure("probability", "How probable a contact is", labels(curves));
    }

    private static String labels(List<ProbabilityChart.Curve> curves) {
        return curves.stream()
                .map(ProbabilityChart.Curve::label)
                .collect(Collectors.joining("; ", "Probability of contact with the ", "."));
    }

    /** How fast the contacts are, gaps spread evenly from 0.6 s to 2 s, 262,144 scenarios. */
    static Figure closing(LampSwap swap) {
        Axis gap = Axis.drawn("time_gap", "s", new Distribution.Uniform(0.6, 2));
        PairTally tally = swept(swap, traffic(swap, Design.latinHypercube(262_144)), gap);
        List<DistributionChart.Steps> steps = new ArrayList<>();
        for (int lamp = 0; lamp < LAMPS.size(); lamp++) {
            LampTally contacts = tally.lamp(LAMPS.get(lamp));
            Histogram histogram = contacts.closingSpeedHistogramMps();
            double medianKmh = 3.6 * contacts.closingSpeedQuantilesMps().quantile(0.5);
            steps.add(new DistributionChart.Steps(
                    NAMES.get(lamp) + " lamp: "
                            + Text.digits(100 * contacts.contactProbability().value())
                            + " % in contact, half of them below " + Text.digits(medianKmh) + " km/h",
                    lamp,
                    IntStream.rangeClosed(0, 40)
                            .mapToObj(i -> 3.6 * histogram.edge(i))
                            .toList(),
                    IntStream.range(0, 40)
                            .mapToObj(i -> 100.0 * histogram.counts()[i] / tally.scenarios())
                            .toList(),
                    OptionalDouble.of(medianKmh)));
        }
        return new DistributionChart(
                        List.of(SHARED, "steps of 1.8 km/h; marks: medians of the contacts"),
                        "closing speed at contact (km/h)",
                        "share of all scenarios (%)",
                        steps)
                .figure(
                        "closing_speed",
                        "How fast the contacts are",
                        steps.stream().map(DistributionChart.Steps::label).collect(Collectors.joining("; ", "", ".")));
    }

    /** How the interval of the contact probability with the filament lamp narrows as the sweep goes on. */
    static Figure convergence(LampSwap swap) {
        PairTally tally = swept(swap, traffic(swap, Design.random(1 << 19)), Axis.constant("time_gap", "s", 1.5));
        List<LineChart.Point> points = new ArrayList<>();
        for (PairTally.TracePoint trace : tally.trace()) {
            Interval interval = trace.contactProbability().get(0).wilson(0.95);
            points.add(new LineChart.Point(trace.scenarios() / 1000.0, 100 * (interval.hi() - interval.lo()) / 2));
        }
        double percent = 100 * tally.lamp("filament").contactProbability().value();
        String label = "filament lamp: in the end " + Numbers.text(percent, 4) + " %, give or take "
                + Numbers.text(points.get(points.size() - 1).y(), 2) + " points";
        return new LineChart(
                        List.of(SHARED, "gap 1.5 s"),
                        "scenarios (thousands)",
                        "half of the 95 % interval (% points)",
                        List.of(new LineChart.Series(label, 0, points, points, false)))
                .figure("convergence", "How the estimate settles", label + ".");
    }
}
