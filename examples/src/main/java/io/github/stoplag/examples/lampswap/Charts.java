package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.LineChart;
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

/** The charts of a lamp swap: the onsets with the moments of being seen, and the distance gained against speed. */
public final class Charts {
    private static final int SAMPLES = 240;
    private static final double FIRST_S = 1e-4;
    /** How the lines of the lamps look, in the order of the lamps; more lamps are in the tables alone. */
    private static final int[] STYLES = {0, 1, 3, 4, 5};

    private static final double MARGIN = 1.05;
    /** The criterion that the one that counts is compared with where there is one candidate alone. */
    private static final int COMPARISON = 1;

    private Charts() {}

    static List<Figure> of(LampSwap swap) {
        return List.of(onset(swap), gainedMetric(swap), gainedUs(swap));
    }

    /** Gives the look of a lamp's line. */
    static int style(int lamp) {
        return STYLES[lamp % STYLES.length];
    }

    private static List<LampSwap.Lamp> drawn(LampSwap swap) {
        return swap.lamps().subList(0, Math.min(STYLES.length, swap.lamps().size()));
    }

    /** How the light of the lamps rises, with the moments at which each is seen. */
    public static Figure onset(LampSwap swap) {
        List<LampSwap.Lamp> lamps = drawn(swap);
        double settledS = lamps.stream()
                .flatMapToDouble(lamp -> DoubleStream.of(
                        lamp.onset().settledS(),
                        lamp.seen().map(TimeSpan::inSeconds).orElse(0.0)))
                .max()
                .orElse(1);
        double endS = MARGIN * settledS;
        List<LineChart.Series> series = IntStream.range(0, lamps.size())
                .mapToObj(i -> onset(lamps.get(i), style(i), endS))
                .toList();
        String description = lamps.stream().map(Charts::inWords).collect(Collectors.joining(" ")) + " Marks: seen by "
                + swap.scenario().criterion().criterion() + ".";
        return new LineChart(
                        notes(swap, "seen by: " + swap.scenario().criterion().brief()),
                        "time since switch-on (ms)",
                        "light, % of final",
                        series)
                .overDecades()
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
        // an LED lamp and a filament differ in scale by a hundred: evenly spaced in the logarithm, from 0.1 ms on
        DoubleStream grid = IntStream.rangeClosed(0, SAMPLES)
                .mapToDouble(i -> FIRST_S * Math.pow(endS / FIRST_S, i / (double) SAMPLES));
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
        for (int lamp = 1; lamp < drawn(swap).size(); lamp++) {
            int candidate = lamp;
            swap.earlier(lamp, 0)
                    .ifPresent(earlier ->
                            series.add(line(swap, candidate, style(candidate), 0, earlier.value(), speedIn, in)));
        }
        if (swap.lamps().size() == 2) {
            swap.earlier(1, COMPARISON)
                    .ifPresent(earlier ->
                            series.add(line(swap, 1, LineChart.COMPARED, COMPARISON, earlier.value(), speedIn, in)));
        }
        Speed top =
                swap.scenario().legs().get(swap.scenario().legs().size() - 1).speed();
        String description =
                "Distance that the vehicle behind travels between the moments at which the lamp fitted now and another are seen. "
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
                        "Distance gained against the " + swap.lamps().get(0).name() + " lamp, " + unitWord,
                        series.isEmpty() ? "Empty: one of the lamps is never seen." : description);
    }

    private static LineChart.Series line(
            LampSwap swap,
            int lamp,
            int style,
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
                swap.lamps().get(lamp).name() + ", " + Text.milliseconds(Math.abs(earlierS))
                        + (earlierS < 0 ? " later: " : " earlier: ")
                        + swap.scenario().criteria().get(criterion).meaning(),
                style,
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
