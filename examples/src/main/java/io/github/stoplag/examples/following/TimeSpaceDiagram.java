package io.github.stoplag.examples.following;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.LineChart;
import io.github.stoplag.examples.draw.Markup;
import io.github.stoplag.examples.draw.Plot;
import io.github.stoplag.examples.draw.Scale;
import io.github.stoplag.following.ChainLink;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Where every vehicle is at every time: each a band from rear to front, with lamps, brakes and contacts marked. */
public final class TimeSpaceDiagram {
    private static final int WIDTH = LineChart.WIDTH;
    private static final int LEFT = 74;
    private static final int RIGHT = 24;
    private static final int PLOT_HEIGHT = 420;
    private static final int LEGEND_STEP = 26;
    private static final int FOOT = 68;
    private static final int SAMPLES = 160;
    private static final int ALL_NUMBERED = 8;
    private static final double NUMBERED_AT = 0.08;

    private final ChainRun run;
    private final int shown;
    private final int plotTop;
    private final Plot plot;

    private TimeSpaceDiagram(ChainRun run) {
        this.run = run;
        this.shown = Math.min(run.count(), ChainRun.SHOWN);
        this.plotTop = 80 + 4 * LEGEND_STEP;
        double[] positions = IntStream.range(0, shown)
                .mapToObj(i -> DoubleStream.of(run.rearM(i, 0), run.frontM(i, run.endS())))
                .flatMapToDouble(ends -> ends)
                .toArray();
        this.plot = new Plot(
                Scale.over(new double[] {run.endS()}, LEFT, WIDTH - RIGHT),
                Scale.over(positions, plotTop + PLOT_HEIGHT, plotTop));
    }

    public static Figure of(ChainRun run) {
        TimeSpaceDiagram diagram = new TimeSpaceDiagram(run);
        return new Figure(
                "time_space",
                title(run) + (run.scenario().invented() ? "; invented data" : ""),
                "Each vehicle is a band from rear to front over time, driving upwards. "
                        + run.links().stream()
                                .limit(ChainRun.SHOWN - 1L)
                                .map(TimeSpaceDiagram::inWords)
                                .collect(Collectors.joining(" ")),
                WIDTH,
                diagram.plotTop + PLOT_HEIGHT + FOOT,
                diagram::draw);
    }

    private static String title(ChainRun run) {
        return "Where the " + (run.count() == 2 ? "two" : String.valueOf(run.count())) + " vehicles are";
    }

    /** Says a link's outcome in a sentence. */
    static String inWords(ChainLink link) {
        return "Vehicle " + ChainRun.name(link.follower()) + " behind vehicle " + ChainRun.name(link.follower() - 1)
                + ": " + FollowingText.outcome(link) + ".";
    }

    /** The line under the heading: what kind of data, and how much of it is shown. */
    static String note(ChainRun run) {
        return Stream.of(
                        run.scenario().invented() ? "invented data" : "",
                        run.count() > ChainRun.SHOWN
                                ? "first " + ChainRun.SHOWN + " of " + run.count() + " vehicles"
                                : "",
                        "time 0: vehicle 1 presses its brake pedal")
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining("; "));
    }

    private void draw(Markup out) {
        out.element("text", title(run), "class", "sl-title", "x", "12", "y", "28")
                .line();
        out.element("text", note(run), "class", "sl-note", "x", "12", "y", "52").line();
        legend(out);
        plot.axes(out, "time (s)", "position (m)");
        for (int i = shown - 1; i >= 0; i--) {
            vehicle(out, i);
        }
        for (int i = 0; i < shown; i++) {
            marks(out, i);
            if (shown <= ALL_NUMBERED || i % 2 == 0) {
                number(out, i);
            }
        }
        run.links().stream().limit(shown - 1L).forEach(link -> contact(out, link));
    }

    private void legend(Markup out) {
        double y = 80;
        out.empty("rect", "class", "sl-body", "x", "16", "y", px(y - 11), "width", "50", "height", "10");
        out.element("text", "vehicle, rear to front; after a contact", "x", "76", "y", px(y));
        Plot.segment(out, "sl-thin sl-2", 392, y - 6, 442, y - 6);
        out.element("text", "as prescribed only", "x", "452", "y", px(y)).line();
        lamp(out, 41, y + LEGEND_STEP - 6);
        out.element("text", "its stop-lamp circuit closes", "x", "76", "y", px(y + LEGEND_STEP));
        brake(out, 41, y + 2 * LEGEND_STEP - 6);
        out.element("text", "its brakes begin to act", "x", "76", "y", px(y + 2 * LEGEND_STEP));
        cross(out, 41, y + 3 * LEGEND_STEP - 6);
        out.element("text", "contact (its motion afterwards is not modelled)", "x", "76", "y", px(y + 3 * LEGEND_STEP))
                .line();
    }

    private void vehicle(Markup out, int index) {
        double untilS = Math.min(run.endS(), run.touchedS().get(index));
        List<Double> times = times(index, 0, untilS);
        Stream<String> front = times.stream().map(t -> point(t, run.frontM(index, t)));
        List<String> rear = new ArrayList<>(
                times.stream().map(t -> point(t, run.rearM(index, t))).toList());
        Collections.reverse(rear);
        out.empty(
                        "polygon",
                        "class",
                        "sl-body",
                        "points",
                        Stream.concat(front, rear.stream()).collect(Collectors.joining(" ")))
                .line();
        if (untilS < run.endS()) {
            String after = times(index, untilS, run.endS()).stream()
                    .map(t -> point(t, run.frontM(index, t)))
                    .collect(Collectors.joining(" "));
            out.empty("polyline", "class", "sl-thin sl-2", "points", after).line();
        }
    }

    private List<Double> times(int index, double fromS, double toS) {
        int samples = Math.max(24, SAMPLES / shown);
        return DoubleStream.concat(
                        IntStream.rangeClosed(0, samples).mapToDouble(i -> fromS + (toS - fromS) * i / samples),
                        run.motions().get(index).phases().stream()
                                .mapToDouble(phase -> phase.startS())
                                .filter(t -> t > fromS && t < toS))
                .sorted()
                .boxed()
                .toList();
    }

    private void number(Markup out, int index) {
        double atS = NUMBERED_AT * run.endS();
        out.element(
                "text",
                ChainRun.name(index),
                "class",
                "sl-note",
                "x",
                px(plot.x().at(atS) - 6),
                "y",
                px(plot.y().at(run.frontM(index, atS)) - 6),
                "text-anchor",
                "end");
    }

    private void marks(Markup out, int index) {
        run.pedalS(index)
                .filter(t -> t <= Math.min(run.endS(), run.touchedS().get(index)))
                .ifPresent(t -> lamp(out, plot.x().at(t), plot.y().at(run.rearM(index, t))));
        run.motions().get(index).phases().stream()
                .filter(phase -> phase.speedMps() > 0 && (phase.decelMps2() > 0 || phase.jerkMps3() > 0))
                .mapToDouble(phase -> phase.startS())
                .filter(t -> t <= Math.min(run.endS(), run.touchedS().get(index)))
                .limit(1)
                .forEach(t -> brake(out, plot.x().at(t), plot.y().at(run.frontM(index, t))));
        out.line();
    }

    private void contact(Markup out, ChainLink link) {
        link.contact().ifPresent(contact -> {
            double t = contact.at().inSeconds();
            cross(out, plot.x().at(t), plot.y().at(run.frontM(link.follower(), t)));
            out.line();
        });
    }

    private static void lamp(Markup out, double x, double y) {
        out.empty("circle", "class", "sl-lit", "cx", px(x), "cy", px(y), "r", "5");
    }

    private static void brake(Markup out, double x, double y) {
        out.empty("circle", "class", "sl-open sl-1", "cx", px(x), "cy", px(y), "r", "5");
    }

    /** Marks a contact. */
    static void cross(Markup out, double x, double y) {
        Plot.segment(out, "sl-cross", x - 8, y - 8, x + 8, y + 8);
        Plot.segment(out, "sl-cross", x - 8, y + 8, x + 8, y - 8);
    }

    private String point(double timeS, double positionM) {
        return px(plot.x().at(timeS)) + "," + px(plot.y().at(positionM));
    }

    private static String px(double value) {
        return LineChart.px(value);
    }
}
