package io.github.stoplag.examples;

import io.github.stoplag.following.Pair;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.TimeSpan;
import java.util.ArrayList;
import java.util.List;

/** Both vehicles from the side at the decisive instants of one speed, lengths, heights and distances to one scale. */
final class RoadDiagram {
    private static final int WIDTH = 640;
    private static final int MARGIN = 14;
    private static final int ROW = 64;
    private static final int HEADING = 34;
    private static final int TITLE = 66;
    private static final int FOOT = 64;

    private final LampSwap swap;
    private final List<LampSwap.Row> rows;
    private final List<Group> groups;
    private final Axis metres;

    /** An instant: what happens and where both vehicles are, the follower's front at the origin at time 0. */
    private record Instant(String what, double followerFrontM, double leaderRearM, boolean contact) {}

    private record Group(String heading, int style, List<Instant> instants) {}

    private RoadDiagram(LampSwap swap) {
        this.swap = swap;
        Scenario.Leg leg = tellingLeg(swap);
        this.rows = swap.rows().stream().filter(row -> row.leg().equals(leg)).toList();
        this.groups = new ArrayList<>();
        groups.add(new Group(
                "",
                0,
                List.of(new Instant(
                        "0.00 s: the stop-lamp circuit closes; gap " + Text.distance(leg.gap()),
                        0,
                        leg.gap().inMetres(),
                        false))));
        for (int i = 0; i < rows.size(); i++) {
            groups.add(group(rows.get(i), i));
        }
        double farthest = groups.stream()
                        .flatMap(group -> group.instants().stream())
                        .mapToDouble(Instant::leaderRearM)
                        .max()
                        .orElse(0)
                + swap.scenario().leader().length().inMetres();
        double back = swap.scenario().follower().length().inMetres();
        this.metres = new Axis(-back, farthest, Axis.roundStep(farthest), MARGIN, (double) WIDTH - MARGIN);
    }

    /** Draws the first speed at which the lamps end differently, or the highest speed if there is none. */
    static Figure of(LampSwap swap) {
        RoadDiagram diagram = new RoadDiagram(swap);
        String title =
                "Both vehicles at " + Text.speed(diagram.rows.get(0).leg().speed());
        StringBuilder description = new StringBuilder("Side view to scale, driving to the right. ");
        for (Group group : diagram.groups) {
            description.append(group.heading.isEmpty() ? "" : group.heading + ": ");
            group.instants.forEach(instant -> description.append(instant.what).append(". "));
        }
        return new Figure(
                "road",
                title + (swap.scenario().invented() ? " (invented data)" : ""),
                description.toString().strip(),
                WIDTH,
                diagram.height(),
                out -> diagram.draw(out, title));
    }

    private static Scenario.Leg tellingLeg(LampSwap swap) {
        List<Scenario.Leg> legs = swap.scenario().legs();
        return legs.stream()
                .filter(leg -> swap.rows().stream()
                                .filter(row -> row.leg().equals(leg))
                                .map(row -> Verdict.of(row).word())
                                .distinct()
                                .count()
                        > 1)
                .findFirst()
                .orElse(legs.get(legs.size() - 1));
    }

    private Group group(LampSwap.Row row, int style) {
        String heading = "With the " + row.lamp().name() + " lamp";
        return row.pair()
                .map(pair -> new Group(heading, style, instants(row, pair)))
                .orElseGet(() -> new Group(heading + ": never seen", style, List.of()));
    }

    private List<Instant> instants(LampSwap.Row row, Pair pair) {
        Verdict verdict = Verdict.of(row);
        double seenS = row.lamp().seenS(false).orElseThrow();
        Scenario.Vehicle follower = swap.scenario().follower();
        TimeSpan dead = follower.response().deadTime();
        double brakeS = seenS + follower.reaction().inSeconds() + dead.inSeconds();
        boolean contact = verdict.closingSpeed().isPresent();
        double endS = verdict.endS().orElseThrow();
        List<Instant> instants = new ArrayList<>();
        for (double timeS : new double[] {seenS, brakeS}) {
            if (!contact || timeS < endS) {
                String what = timeS == seenS ? "the lamp is seen;" : "the follower's brakes bite;";
                instants.add(at(pair, timeS, what, row.leg().gap(), false));
            }
        }
        instants.add(at(
                pair, endS, contact ? verdict.phrase() : "smallest", row.leg().gap(), contact));
        return instants;
    }

    private static Instant at(Pair pair, double timeS, String what, Distance gap, boolean contact) {
        double front = pair.followerTrajectory().positionAtM(timeS);
        double rear = gap.inMetres() + pair.leaderTrajectory().positionAtM(timeS);
        String left = contact ? "" : " gap " + Text.distance(Distance.metres(Math.max(0, rear - front)));
        return new Instant(Text.seconds(timeS) + ": " + what + left, front, contact ? front : rear, contact);
    }

    private int height() {
        int instants = groups.stream().mapToInt(group -> group.instants.size()).sum();
        return TITLE + instants * ROW + rows.size() * HEADING + FOOT;
    }

    private void draw(Markup out, String title) {
        out.element("text", title, "class", "sl-title", "x", px(MARGIN), "y", "28")
                .line();
        out.element(
                "text",
                (swap.scenario().invented() ? "invented data; " : "")
                        + "side view to scale, heights taken as 2.6 m and 1.5 m",
                "class",
                "sl-note",
                "x",
                px(MARGIN),
                "y",
                "51");
        double y = TITLE;
        for (Group group : groups) {
            if (!group.heading.isEmpty()) {
                out.empty(
                        "line",
                        "class",
                        "sl-line sl-" + group.style,
                        "x1",
                        px(MARGIN),
                        "x2",
                        "54",
                        "y1",
                        px(y + 20),
                        "y2",
                        px(y + 20));
                out.element("text", group.heading, "class", "sl-title", "x", "64", "y", px(y + 26))
                        .line();
                y += HEADING;
            }
            for (Instant instant : group.instants) {
                row(out, instant, y + ROW - 12);
                y += ROW;
            }
        }
        scale(out, y + 14);
    }

    private void row(Markup out, Instant instant, double ground) {
        out.element("text", instant.what, "x", px(MARGIN), "y", px(ground - 34));
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
                instant.followerFrontM,
                swap.scenario().follower().length().inMetres(),
                ground);
        Silhouette.minibus(
                out,
                metres,
                instant.leaderRearM,
                swap.scenario().leader().length().inMetres(),
                ground);
        if (instant.contact) {
            double x = metres.at(instant.leaderRearM);
            out.empty("path", "class", "sl-axis", "d", "M" + px(x) + " " + px(ground - 28) + "V" + px(ground + 8));
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
        double step = Axis.roundStep(most);
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
