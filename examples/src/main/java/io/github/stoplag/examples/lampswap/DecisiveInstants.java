package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.following.Pair;
import io.github.stoplag.quantity.Distance;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * What happens when, and where both vehicles then are, at one speed.
 *
 * @param leg the speed with its gap
 * @param groups the start, then one group for each lamp
 */
public record DecisiveInstants(Scenario.Leg leg, List<Group> groups) {
    /**
     * An instant.
     *
     * @param what what happens, with its time
     * @param followerFrontM the follower's front, from where it was at time 0
     * @param leaderRearM the leader's rear, from the same origin
     * @param contact whether the vehicles touch
     */
    record Instant(String what, double followerFrontM, double leaderRearM, boolean contact) {}

    /**
     * The instants with one lamp.
     *
     * @param heading the lamp, empty for the start
     * @param style the lamp's line style
     * @param instants in order of time, none if the lamp is never seen
     */
    record Group(String heading, int style, List<Instant> instants) {}

    /** At the higher speed of the first look, or else the first or highest at which the lamps end differently. */
    public static DecisiveInstants of(LampSwap swap) {
        return at(swap, tellingLeg(swap));
    }

    /** At any speed. */
    static DecisiveInstants at(LampSwap swap, Scenario.Leg leg) {
        List<Group> groups = new ArrayList<>();
        groups.add(new Group(
                "",
                0,
                List.of(new Instant(
                        "0.000 s: the stop-lamp circuit closes; gap " + Text.distance(leg.gap()),
                        0,
                        leg.gap().inMetres(),
                        false))));
        List<LampSwap.Row> rows = swap.at(leg);
        for (int i = 0; i < rows.size(); i++) {
            groups.add(group(swap.scenario(), rows.get(i), Charts.style(i)));
        }
        return new DecisiveInstants(leg, List.copyOf(groups));
    }

    double farthestM() {
        return groups.stream()
                .flatMap(group -> group.instants().stream())
                .mapToDouble(Instant::leaderRearM)
                .max()
                .orElse(0);
    }

    /** Says all of it in words. */
    String inWords() {
        StringBuilder words = new StringBuilder();
        for (Group group : groups) {
            words.append(group.heading.isEmpty() ? "" : group.heading + ": ");
            group.instants.forEach(instant -> words.append(instant.what).append(". "));
        }
        return words.toString().strip();
    }

    private static Scenario.Leg tellingLeg(LampSwap swap) {
        List<Scenario.Leg> legs = swap.scenario().legs();
        List<Scenario.Leg> first = swap.scenario().firstLook();
        return Stream.concat(Stream.of(first.get(first.size() - 1)), legs.stream())
                .filter(leg -> swap.at(leg).stream()
                                .map(row -> row.ending().verdict().word())
                                .distinct()
                                .count()
                        > 1)
                .findFirst()
                .orElse(legs.get(legs.size() - 1));
    }

    private static Group group(Scenario scenario, LampSwap.Row row, int style) {
        String heading = "With the " + row.lamp().name() + " lamp";
        return row.ending()
                .pair()
                .map(pair -> new Group(heading, style, instants(scenario.follower(), row, pair)))
                .orElseGet(() -> new Group(heading + ": never seen", style, List.of()));
    }

    private static List<Instant> instants(Scenario.Vehicle follower, LampSwap.Row row, Pair pair) {
        Verdict verdict = row.ending().verdict();
        double seenS = row.lamp().seen().orElseThrow().inSeconds();
        double brakeS = seenS
                + follower.reaction().inSeconds()
                + follower.response().deadTime().inSeconds();
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
}
