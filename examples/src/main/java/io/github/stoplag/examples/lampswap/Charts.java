package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.LineChart;
import io.github.stoplag.examples.draw.Scale;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.lamp.OnsetCurve;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The charts of a lamp swap: both onsets with the moments of being seen, and the distance gained against speed. */
public final class Charts {
    private static final int SAMPLES = 240;
    /** The criterion that counts and the one to compare it with. */
    private static final int LINES = 2;

    private static final double MARGIN = 1.05;

    private Charts() {}

    static List<Figure> of(LampSwap swap) {
        return List.of(onset(swap), gainedMetric(swap), gainedUs(swap));
    }

    /** How the light of both lamps rises, with the moments at which each is seen. */
    public static Figure onset(LampSwap swap) {
        double settledS = swap.lamps().stream()
                .flatMapToDouble(lamp -> DoubleStream.of(
                        lamp.onset().settledS(),
                        lamp.seen().map(TimeSpan::inSeconds).orElse(0.0)))
                .max()
                .orElse(1);
        double endS = Scale.over(new double[] {MARGIN * settledS * 1000}, 0, 1).hi() / 1000;
        List<LineChart.Series> series = IntStream.range(0, swap.lamps().size())
                .mapToObj(i -> onset(swap.lamps().get(i), i, endS))
                .toList();
        String description = swap.lamps().stream().map(Charts::inWords).collect(Collectors.joining(" "))
                + " Marks: seen by " + swap.scenario().criterion().criterion() + ".";
        return new LineChart(
                        notes(swap, "seen by: " + swap.scenario().criterion().brief()),
                        "time since switch-on (ms)",
                        "light, % of final",
                        series)
                .figure("onset", "How the light rises, and when it is seen", description);
    }

    private static String inWords(LampSwap.Lamp lamp) {
        OnsetCurve onset = lamp.onset();
        return "The " + lamp.name() + " lamp has 10 % of its final light after " + time(onset.timeToLevel(0.1))
                + ", 90 % after " + time(onset.timeToLevel(0.9)) + "; seen: " + time(lamp.seen()) + ".";
    }

    private static String time(Optional<TimeSpan> time) {
        return time.map(t -> Text.milliseconds(t.inSeconds())).orElse("never");
    }

    private static LineChart.Series onset(LampSwap.Lamp lamp, int style, double endS) {
        // the two lamps differ in scale by a hundred, so the samples crowd towards switch-on
        DoubleStream grid =
                IntStream.rangeClosed(0, SAMPLES).mapToDouble(i -> endS * Math.pow(i / (double) SAMPLES, 3));
        Optional<TimeSpan> seen = lamp.seen();
        List<LineChart.Point> points = DoubleStream.concat(grid, seen.stream().mapToDouble(TimeSpan::inSeconds))
                .sorted()
                .mapToObj(t -> point(lamp, t))
                .toList();
        return new LineChart.Series(
                lamp.name() + ": " + (seen.isPresent() ? "seen after " + time(seen) : Verdict.NEVER_SEEN),
                style,
                points,
                seen.stream().map(t -> point(lamp, t.inSeconds())).toList(),
                true);
    }

    private static LineChart.Point point(LampSwap.Lamp lamp, double timeS) {
        return new LineChart.Point(timeS * 1000, 100 * lamp.onset().relativeIntensity(timeS));
    }

    /** What the vehicle behind travels between the moments at which the lamps are seen, in metres. */
    public static Figure gainedMetric(LampSwap swap) {
        return gained(swap, "distance_metric", "in metres", "km/h", Speed::inKmh, "m", Distance::inMetres);
    }

    /** The same in feet. */
    public static Figure gainedUs(LampSwap swap) {
        return gained(swap, "distance_us", "in feet", "mph", Speed::inMph, "ft", Distance::inFeet);
    }

    private static Figure gained(
            LampSwap swap,
            String id,
            String unitWord,
            String speedUnit,
            ToDoubleFunction<Speed> speedIn,
            String unit,
            ToDoubleFunction<Distance> in) {
        List<LineChart.Series> series = new ArrayList<>();
        for (int i = 0; i < LINES; i++) {
            int criterion = i;
            swap.earlier(1, i).ifPresent(earlier -> series.add(line(swap, criterion, earlier.inSeconds(), speedIn, in)));
        }
        Speed top =
                swap.scenario().legs().get(swap.scenario().legs().size() - 1).speed();
        String description =
                "Distance that the vehicle behind travels between the moments at which the two lamps are seen. "
                        + series.stream()
                                .map(s -> s.label() + ": "
                                        + Text.digits(s.points()
                                                .get(s.points().size() - 1)
                                                .y()) + " " + unit + " at " + Text.digits(speedIn.applyAsDouble(top))
                                        + " " + speedUnit + ".")
                                .collect(Collectors.joining(" "));
        return new LineChart(notes(swap), "speed (" + speedUnit + ")", "distance gained (" + unit + ")", series)
                .figure(
                        id,
                        "Distance gained by the LED lamp, " + unitWord,
                        series.isEmpty() ? "Empty: one of the lamps is never seen." : description);
    }

    private static LineChart.Series line(
            LampSwap swap,
            int criterion,
            double earlierS,
            ToDoubleFunction<Speed> speedIn,
            ToDoubleFunction<Distance> in) {
        List<LineChart.Point> marks = swap.scenario().legs().stream()
                .map(leg -> new LineChart.Point(
                        speedIn.applyAsDouble(leg.speed()),
                        in.applyAsDouble(Distance.metres(1)) * leg.speed().inMps() * earlierS))
                .toList();
        return new LineChart.Series(
                Text.milliseconds(Math.abs(earlierS))
                        + (earlierS < 0 ? " later: " : " earlier: ")
                        + swap.scenario().criteria().get(criterion).meaning(),
                criterion == 0 ? 1 : LineChart.COMPARED,
                Stream.concat(Stream.of(new LineChart.Point(0, 0)), marks.stream())
                        .toList(),
                marks,
                false);
    }

    private static List<String> notes(LampSwap swap, String... more) {
        return Stream.concat(swap.scenario().heading().marks().stream(), Stream.of(more))
                .toList();
    }
}
