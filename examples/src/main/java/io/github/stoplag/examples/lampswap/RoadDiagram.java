package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Figure;
import io.github.stoplag.examples.draw.LineChart;
import io.github.stoplag.examples.draw.Markup;
import io.github.stoplag.examples.draw.Scale;
import io.github.stoplag.examples.draw.Silhouette;
import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.file.Heading;
import io.github.stoplag.quantity.Distance;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Both vehicles from the side at the decisive instants of one speed, lengths, heights and distances to one scale. */
public final class RoadDiagram {
    private static final int WIDTH = 640;
    private static final int MARGIN = 14;
    private static final int LOWEST_ROW = 64;
    private static final int CAPTION = 38;
    private static final double MOST_PX_PER_METRE = 20;
    private static final int HEADING = 34;
    private static final int TITLE = 66;
    private static final int FOOT = 72;

    private final LampSwap swap;
    private final DecisiveInstants instants;
    private final Scale metres;
    private final double row;

    private RoadDiagram(LampSwap swap, DecisiveInstants instants) {
        this.swap = swap;
        this.instants = instants;
        double back = swap.scenario().follower().length().inMetres();
        double ahead = instants.farthestM() + swap.scenario().leader().length().inMetres();
        double roadPx = WIDTH - 2.0 * MARGIN;
        // at low speeds the road goes on past the leader, so that the vehicles do not fill the page
        double end = Math.max(ahead, roadPx / MOST_PX_PER_METRE - back);
        this.metres = Scale.linear(-back, end, Scale.roundStep(end), MARGIN, (double) WIDTH - MARGIN);
        this.row = Math.max(LOWEST_ROW, CAPTION + Silhouette.MINIBUS_HEIGHT_M * roadPx / (end + back));
    }

    /** Draws both vehicles at the first speed at which the lamps end differently. */
    public static Figure of(LampSwap swap) {
        return new RoadDiagram(swap, DecisiveInstants.of(swap)).figure("road");
    }

    /** Draws both vehicles at each speed, slowest first, those of the first look included. */
    static List<Figure> all(LampSwap swap) {
        List<Scenario.Leg> legs = Stream.of(
                        swap.scenario().legs(), swap.scenario().firstLook())
                .flatMap(List::stream)
                .distinct()
                .sorted(Comparator.comparing(Scenario.Leg::speed))
                .toList();
        return IntStream.range(0, legs.size())
                .mapToObj(i -> new RoadDiagram(swap, DecisiveInstants.at(swap, legs.get(i))).figure("road_" + (i + 1)))
                .toList();
    }

    private Figure figure(String id) {
        String title = "Both vehicles at " + Text.speed(instants.leg().speed());
        return new Figure(
                id,
                title + (swap.scenario().heading().invented() ? "; " + Heading.INVENTED_DATA : ""),
                "Side view to scale, driving to the right. " + instants.inWords(),
                WIDTH,
                height(),
                out -> draw(out, title));
    }

    private int height() {
        int rows = instants.groups().stream()
                .mapToInt(group -> group.instants().size())
                .sum();
        return (int) Math.ceil(TITLE + rows * row + (instants.groups().size() - 1) * HEADING + FOOT);
    }

    private void draw(Markup out, String title) {
        out.element("text", title, "class", "sl-title", "x", px(MARGIN), "y", "28")
                .line();
        out.element(
                "text",
                (swap.scenario().heading().invented() ? Heading.INVENTED_DATA + "; " : "")
                        + "side view to scale, heights taken as 2.6 m and 1.5 m",
                "class",
                "sl-note",
                "x",
                px(MARGIN),
                "y",
                "51");
        double y = TITLE;
        for (DecisiveInstants.Group group : instants.groups()) {
            if (!group.heading().isEmpty()) {
                out.empty(
                        "line",
                        "class",
                        "sl-line sl-" + group.style(),
                        "x1",
                        px(MARGIN),
                        "x2",
                        "54",
                        "y1",
                        px(y + 20),
                        "y2",
                        px(y + 20));
                out.element("text", group.heading(), "class", "sl-title", "x", "64", "y", px(y + 26))
                        .line();
                y += HEADING;
            }
            for (DecisiveInstants.Instant instant : group.instants()) {
                row(out, instant, y + row - 12);
                y += row;
            }
        }
        scale(out, y + 24);
    }

    private void row(Markup out, DecisiveInstants.Instant instant, double ground) {
        out.element("text", instant.what(), "x", px(MARGIN), "y", px(ground - row + 30));
        out.empty(
                "line",
                "class",
                "sl-axis",
                "x1",
                px(metres.from()),
                "x2",
                px(metres.to()),
                "y1",
                px(ground),
                "y2",
                px(ground));
        Silhouette.car(
                out,
                metres,
                instant.followerFrontM(),
                swap.scenario().follower().length().inMetres(),
                ground);
        Silhouette.minibus(
                out,
                metres,
                instant.leaderRearM(),
                swap.scenario().leader().length().inMetres(),
                ground);
        if (instant.contact()) {
            double x = metres.at(instant.leaderRearM());
            out.empty(
                    "path", "class", "sl-axis", "d", "M" + px(x) + " " + px(ground - row + 36) + "V" + px(ground + 8));
        }
        out.line();
    }

    private void scale(Markup out, double y) {
        out.empty("line", "class", "sl-axis", "x1", px(metres.at(0)), "x2", px(metres.to()), "y1", px(y), "y2", px(y));
        ticks(out, y, 1, "m", -1);
        ticks(out, y, Distance.METRES_PER_FOOT, "ft", 1);
    }

    /** Marks round lengths of one unit, above (-1) or below (1) the line. */
    private void ticks(Markup out, double y, double metresPerUnit, String unit, int side) {
        double most = metres.hi() / metresPerUnit;
        double step = Scale.roundStep(most);
        for (double length = 0; length <= most; length += step) {
            double x = metres.at(length * metresPerUnit);
            out.empty("line", "class", "sl-axis", "x1", px(x), "x2", px(x), "y1", px(y), "y2", px(y + 6 * side));
            out.element(
                    "text",
                    Text.digits(length) + (length == 0 ? " " + unit : ""),
                    "x",
                    px(x),
                    "y",
                    px(side < 0 ? y - 10 : y + 24),
                    "text-anchor",
                    "middle");
        }
        out.line();
    }

    private static String px(double value) {
        return LineChart.px(value);
    }
}
