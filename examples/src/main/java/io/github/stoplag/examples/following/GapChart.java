package io.github.stoplag.examples.following;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.LineChart;
import io.github.stoplag.examples.draw.Markup;
import io.github.stoplag.examples.draw.Plot;
import io.github.stoplag.examples.draw.Scale;
import io.github.stoplag.following.ChainLink;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** The gap between each vehicle and the one ahead over time, up to a contact. */
final class GapChart {
    private static final int WIDTH = LineChart.WIDTH;
    private static final int LEFT = 74;
    private static final int RIGHT = 46;
    private static final int PLOT_HEIGHT = 320;
    private static final int LEGEND_STEP = 26;
    private static final int FOOT = 68;
    private static final int SAMPLES = 120;
    private static final int NAMED = 5;
    private static final int[] STYLES = {0, 1, 3, 4, 5};
    private static final String TITLE = "The gap to the vehicle ahead";

    private final ChainRun run;
    private final List<ChainLink> links;
    private final int plotTop;
    private final Plot plot;

    private GapChart(ChainRun run) {
        this.run = run;
        this.links = run.links().stream().limit(ChainRun.SHOWN - 1L).toList();
        this.plotTop = 66 + LEGEND_STEP * (Math.min(links.size(), NAMED) + 1) + 14;
        double[] gaps = links.stream()
                .flatMapToDouble(link -> times(link).stream().mapToDouble(t -> gapM(link, t)))
                .toArray();
        this.plot = new Plot(
                Scale.over(new double[] {run.endS()}, LEFT, WIDTH - RIGHT),
                Scale.over(gaps, plotTop + PLOT_HEIGHT, plotTop));
    }

    static Figure of(ChainRun run) {
        GapChart chart = new GapChart(run);
        return new Figure(
                "gap_time",
                TITLE + (run.scenario().invented() ? "; invented data" : ""),
                chart.links.stream().map(TimeSpaceDiagram::inWords).collect(Collectors.joining(" ")),
                WIDTH,
                chart.plotTop + PLOT_HEIGHT + FOOT,
                chart::draw);
    }

    private double gapM(ChainLink link, double timeS) {
        return Math.max(0, run.gapM(link.follower(), timeS).orElseThrow());
    }

    private List<Double> times(ChainLink link) {
        double endS = link.contact().map(contact -> contact.at().inSeconds()).orElse(run.endS());
        double smallestS = Math.min(endS, ChainRun.atS(link.outcome()));
        return DoubleStream.concat(
                        IntStream.rangeClosed(0, SAMPLES).mapToDouble(i -> endS * i / SAMPLES),
                        DoubleStream.of(smallestS))
                .sorted()
                .boxed()
                .toList();
    }

    private void draw(Markup out) {
        out.element("text", TITLE, "class", "sl-title", "x", "12", "y", "28").line();
        out.element("text", TimeSpaceDiagram.note(run), "class", "sl-note", "x", "12", "y", "52")
                .line();
        plot.axes(out, "time (s)", "gap (m)");
        for (int i = 0; i < links.size(); i++) {
            line(out, links.get(i), style(i));
        }
        for (int i = 0; i < Math.min(links.size(), NAMED); i++) {
            double y = 80 + LEGEND_STEP * i;
            Plot.segment(out, style(i), 16, y - 6, 66, y - 6);
            out.element(
                            "text",
                            ChainRun.name(links.get(i).follower()) + " behind "
                                    + ChainRun.name(links.get(i).follower() - 1) + ": "
                                    + FollowingText.outcome(links.get(i)),
                            "x",
                            "76",
                            "y",
                            px(y))
                    .line();
        }
        double y = 80 + LEGEND_STEP * Math.min(links.size(), NAMED);
        TimeSpaceDiagram.cross(out, 41, y - 6);
        out.element("text", "contact;", "x", "76", "y", px(y));
        out.empty("circle", "class", "sl-open sl-2", "cx", "156", "cy", px(y - 6), "r", "5");
        String disturbed = links.stream().allMatch(ChainLink::undisturbed) ? "" : "; * one of the two touches another";
        out.element("text", "smallest gap" + disturbed, "x", "170", "y", px(y)).line();
    }

    private static String style(int link) {
        return "sl-line sl-" + STYLES[link % STYLES.length];
    }

    private void line(Markup out, ChainLink link, String style) {
        List<Double> times = times(link);
        String points = times.stream()
                .map(t -> px(plot.x().at(t)) + "," + px(plot.y().at(gapM(link, t))))
                .collect(Collectors.joining(" "));
        out.empty("polyline", "class", style, "points", points).line();
        double atS = Math.min(run.endS(), ChainRun.atS(link.outcome()));
        double x = plot.x().at(atS);
        double y = plot.y().at(gapM(link, atS));
        if (link.contact().isPresent()) {
            TimeSpaceDiagram.cross(out, x, y);
        } else {
            out.empty("circle", "class", "sl-open sl-2", "cx", px(x), "cy", px(y), "r", "5");
        }
        if (link.contact().isEmpty() && links.size() > NAMED) {
            return;
        }
        double lastS = times.get(times.size() - 1);
        out.element(
                        "text",
                        ChainRun.name(link.follower()),
                        "class",
                        "sl-note",
                        "x",
                        px(plot.x().at(lastS) + 10),
                        "y",
                        px(plot.y().at(gapM(link, lastS)) - 8))
                .line();
    }

    private static String px(double value) {
        return LineChart.px(value);
    }
}
