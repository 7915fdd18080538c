package io.github.stoplag.examples.following;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.following.BrakingVehicle;
import io.github.stoplag.following.Chain;
import io.github.stoplag.following.ChainDifference;
import io.github.stoplag.following.ChainLink;
import io.github.stoplag.following.GapNeeded;
import io.github.stoplag.following.Impact;
import io.github.stoplag.following.LatencyBorder;
import io.github.stoplag.following.Pair;
import io.github.stoplag.following.PairOutcome;
import io.github.stoplag.following.TimeToCollision;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The printed outcome of a pair or chain. */
final class FollowingText {
    private static final int LISTED = 24;

    private FollowingText() {}

    static List<String> of(ChainRun run) {
        FollowingScenario scenario = run.scenario();
        List<String> lines = new ArrayList<>();
        lines.add(scenario.title() + (scenario.invented() ? " (invented data)" : ""));
        lines.add("Time 0: vehicle 1 presses its brake pedal and its stop-lamp circuit closes.");
        lines.add("");
        lines.add(row("vehicle", "speed", "gap ahead", "pedal", "gap needed", "least TTC", "outcome"));
        lines.add(first(run));
        run.links().stream().limit(LISTED).forEach(link -> lines.add(row(run, link)));
        if (run.links().size() > LISTED) {
            lines.add("  ... " + (run.links().size() - LISTED) + " more vehicles are in events.csv");
        }
        lines.add("");
        lines.add(summary(run.links()));
        run.links().stream()
                .filter(link -> link.contact().isPresent())
                .limit(1)
                .forEach(link -> lines.add(impact(run, link)));
        if (run.count() == 2) {
            lines.add(border(scenario.chain()));
        }
        scenario.change().ifPresent(change -> lines.addAll(change(scenario, change)));
        lines.add("");
        lines.add("All motions are prescribed; motion after a contact is not modelled.");
        if (run.links().stream().anyMatch(link -> !link.undisturbed())) {
            lines.add("* One of the two touches another vehicle: what would happen if it had not.");
        }
        if (run.links().stream().anyMatch(link -> link.contact().isPresent())) {
            lines.add(Impact.INJURY.text());
        }
        lines.add("A faster lamp helps only a driver who responds to it. The model is no proof of safety.");
        return lines;
    }

    private static String first(ChainRun run) {
        return row(
                ChainRun.name(0),
                speed(run.scenario().chain().members().get(0).vehicle().speed()),
                "-",
                pedal(run, 0),
                "-",
                "-",
                run.motions().get(0).restS().isPresent() ? "" : "does not brake: its lamp stays dark");
    }

    private static String row(ChainRun run, ChainLink link) {
        int index = link.follower();
        Chain.Member member = run.scenario().chain().members().get(index);
        Speed speed = member.vehicle().speed();
        GapNeeded needed = run.scenario().chain().encounter(index).gapNeeded();
        return row(
                ChainRun.name(index),
                speed(speed),
                Text.metres(member.gap())
                        + (speed.inMps() > 0
                                ? " = " + Numbers.fixed(member.gap().inMetres() / speed.inMps(), 2) + " s"
                                : ""),
                pedal(run, index),
                needed.gap().map(Text::metres).orElse("none helps"),
                link.contact().isPresent() ? "-" : leastTtc(run, index),
                outcome(link));
    }

    private static String pedal(ChainRun run, int index) {
        return run.pedalS(index).map(s -> Numbers.fixed(s, 2) + " s").orElse("never");
    }

    private static String leastTtc(ChainRun run, int index) {
        TimeToCollision.Smallest smallest =
                run.scenario().chain().encounter(index).timeToCollision().smallest();
        return smallest instanceof TimeToCollision.Smallest.Reached reached
                ? Numbers.fixed(reached.value().inSeconds(), 2) + " s"
                : "no closing";
    }

    /** Says a link's outcome in one phrase. */
    static String outcome(ChainLink link) {
        String mark = link.undisturbed() ? "" : " *";
        if (link.outcome() instanceof PairOutcome.Contact contact) {
            return "contact at " + Numbers.fixed(contact.at().inSeconds(), 2) + " s, closing at " + closing(contact)
                    + mark;
        }
        PairOutcome.NoContact clear = (PairOutcome.NoContact) link.outcome();
        return (clear.grazing() ? "just touches" : "no contact, " + Text.metres(clear.smallestGap()) + " left") + mark;
    }

    private static String closing(PairOutcome.Contact contact) {
        return Numbers.fixed(contact.closingSpeed().inMps(), 1) + " m/s ("
                + contact.closingSpeed().format("km/h", 0) + ")";
    }

    private static String summary(List<ChainLink> links) {
        long contacts =
                links.stream().filter(link -> link.contact().isPresent()).count();
        if (contacts == 0) {
            return "Nobody touches anybody.";
        }
        ChainLink first = links.stream()
                .filter(link -> link.contact().isPresent())
                .min((a, b) -> Double.compare(ChainRun.atS(a.outcome()), ChainRun.atS(b.outcome())))
                .orElseThrow();
        String many = contacts + " of " + links.size() + " gaps end in contact; first vehicle ";
        return (links.size() == 1 ? "Contact: vehicle " : many)
                + ChainRun.name(first.follower()) + " into vehicle " + ChainRun.name(first.follower() - 1) + " at "
                + Numbers.fixed(ChainRun.atS(first.outcome()), 2) + " s.";
    }

    private static String impact(ChainRun run, ChainLink link) {
        Impact impact = EventsCsv.impact(run, link).orElseThrow();
        return "There vehicle " + ChainRun.name(link.follower()) + " (" + impact.followerMass() + ") loses "
                + Numbers.fixed(impact.followerChange().inMps(), 1) + " m/s, vehicle "
                + ChainRun.name(link.follower() - 1) + " (" + impact.leaderMass() + ") gains "
                + Numbers.fixed(impact.leaderChange().inMps(), 1) + " m/s, "
                + Numbers.text(impact.energyLostJ() / 1000, 2) + " kJ are lost (restitution "
                + Numbers.text(impact.restitutionRatio()) + ").";
    }

    private static String border(Chain chain) {
        BrakingVehicle leader = chain.members().get(0).vehicle();
        Chain.Member behind = chain.members().get(1);
        if (leader.deceleration().inMps2() == 0) {
            return "The leader does not brake, so its lamp plays no part.";
        }
        if (behind.vehicle().deceleration().inMps2() == 0) {
            return "The follower does not respond, so the lamp plays no part.";
        }
        LatencyBorder border = Pair.of(
                        leader,
                        behind.vehicle(),
                        behind.gap(),
                        chain.members().get(0).lampLatency())
                .largestLampLatency();
        if (border instanceof LatencyBorder.UpTo upTo) {
            return "Contact is avoided up to a lamp latency of "
                    + Text.milliseconds(upTo.latency().inSeconds()) + "; it is "
                    + Text.milliseconds(chain.members().get(0).lampLatency().inSeconds()) + " here.";
        }
        return border instanceof LatencyBorder.Any any
                ? "Whatever the lamp: " + any.reason() + "."
                : "Whatever the lamp: " + ((LatencyBorder.None) border).reason() + ".";
    }

    private static List<String> change(FollowingScenario scenario, FollowingScenario.Change change) {
        ChainDifference difference =
                scenario.chain().differenceTo(scenario.chain().withLampLatency(change.index(), change.latency()));
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add("With a lamp latency of " + Text.milliseconds(change.latency().inSeconds()) + " instead of "
                + Text.milliseconds(scenario.chain()
                        .members()
                        .get(change.index())
                        .lampLatency()
                        .inSeconds())
                + " on vehicle " + ChainRun.name(change.index()) + ", contacts: " + difference.contactsBefore()
                + " before, " + difference.contactsAfter() + " with it.");
        difference.changed().stream()
                .limit(LISTED)
                .forEach(link -> lines.add("  vehicle " + ChainRun.name(link.follower()) + ": "
                        + String.join("; ", link.difference().lines())));
        if (difference.changed().isEmpty()) {
            lines.add("  no gap needed and no outcome changes");
        }
        return lines;
    }

    private static String speed(Speed speed) {
        return speed.format("km/h", 0);
    }

    private static String row(Object... cells) {
        return String.format(Locale.ROOT, "  %-7s %9s  %-17s %8s  %-10s  %-10s  %s", cells)
                .stripTrailing();
    }
}
