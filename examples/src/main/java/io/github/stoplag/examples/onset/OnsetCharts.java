package io.github.stoplag.examples.onset;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.LineChart;
import io.github.stoplag.examples.draw.Scale;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.file.CsvText;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The courses of the lamps as pictures and as a table. */
final class OnsetCharts {
    static final List<String> FILES = List.of("rise.svg", "decay.svg");
    private static final double UP = 0.9;
    private static final double DOWN = 0.1;
    private static final int SAMPLES = 140;
    private static final double TABLE_STEP_S = 0.002;
    private static final int TABLE_ROWS = 500;

    private OnsetCharts() {}

    static List<Figure> of(List<OnsetCourse> courses) {
        double riseEndS = latest(courses.stream().map(course -> course.riseS(0.99)));
        double fallEndS = latest(courses.stream().map(course -> course.fallS().apply(0.01)));
        return List.of(
                figure(
                        "rise",
                        "How the light of stop lamps rises",
                        "time since switch-on (ms)",
                        "light, % of its own final light",
                        courses.stream()
                                .map(course -> series(
                                        course, course.rise()::relativeIntensity, course.riseS(UP), UP, riseEndS))
                                .toList()),
                figure(
                        "decay",
                        "How the light of stop lamps falls",
                        "time since switch-off (ms)",
                        "light, % of the light before",
                        courses.stream()
                                .map(course -> series(
                                        course, course.decay(), course.fallS().apply(DOWN), DOWN, fallEndS))
                                .toList()));
    }

    private static double latest(Stream<OptionalDouble> times) {
        double latestS = times.flatMapToDouble(OptionalDouble::stream).max().orElse(1);
        return Scale.over(new double[] {1000 * latestS}, 0, 1).hi() / 1000;
    }

    private static Figure figure(String id, String title, String xLabel, String yLabel, List<LineChart.Series> series) {
        return new LineChart(
                        List.of("bulb 1157 behind a red lens; inputs published or assumed"), xLabel, yLabel, series)
                .figure(
                        id,
                        title,
                        series.stream().map(LineChart.Series::label).collect(Collectors.joining(". ", "", ".")));
    }

    private static LineChart.Series series(
            OnsetCourse course, DoubleUnaryOperator light, OptionalDouble markS, double level, double endS) {
        List<LineChart.Point> points = new ArrayList<>();
        points.add(new LineChart.Point(0, 100 * light.applyAsDouble(-Double.MIN_VALUE)));
        IntStream.rangeClosed(0, SAMPLES)
                .mapToDouble(i -> endS * i / SAMPLES)
                // a step must not be drawn as a slope
                .flatMap(t -> t == 0 ? DoubleStream.of(0, 1e-6) : DoubleStream.of(t))
                .forEach(t -> points.add(new LineChart.Point(1000 * t, 100 * light.applyAsDouble(t))));
        return new LineChart.Series(
                course.name() + ": " + when(markS, Numbers.text(100 * level) + " %"),
                course.style(),
                points,
                markS.stream()
                        .mapToObj(s -> new LineChart.Point(1000 * s, 100 * level))
                        .toList(),
                false);
    }

    private static String when(OptionalDouble markS, String level) {
        if (markS.isEmpty()) {
            return "never at " + level;
        }
        return markS.getAsDouble() == 0 ? "at once" : level + " after " + Text.milliseconds(markS.getAsDouble());
    }

    /** Gives the courses as a table: times in seconds, light as a ratio. */
    static String csv(List<OnsetCourse> courses) {
        List<String> header = new ArrayList<>(List.of("time_s"));
        courses.forEach(course -> header.add(course.key() + "_rise_ratio"));
        courses.forEach(course -> header.add(course.key() + "_decay_ratio"));
        return CsvText.of(
                header, IntStream.rangeClosed(0, TABLE_ROWS).mapToObj(i -> fields(courses, i * TABLE_STEP_S)));
    }

    private static List<String> fields(List<OnsetCourse> courses, double timeS) {
        List<String> fields = new ArrayList<>(List.of(Numbers.fixed(timeS, 3)));
        courses.forEach(course -> fields.add(Numbers.fixed(course.rise().relativeIntensity(timeS), 6)));
        courses.forEach(course -> fields.add(Numbers.fixed(course.decay().applyAsDouble(timeS), 6)));
        return fields;
    }
}
