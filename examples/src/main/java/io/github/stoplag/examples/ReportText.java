package io.github.stoplag.examples;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** The printed report: the decisive figures on a screenful of plain text. */
final class ReportText {
    private static final String LAMP_ROW = "  %-9s %10s %10s %10s %10s";
    private static final String ROW = "  %-18s %-8s  %-19s  %-20s  %s";

    private ReportText() {}

    static List<String> of(LampSwap swap) {
        Scenario scenario = swap.scenario();
        List<String> lines = new ArrayList<>();
        lines.add(scenario.title() + (scenario.invented() ? " (invented data)" : ""));
        lines.add("Seen means: " + scenario.detector().criterion());
        lines.add("");
        lines.add(format(LAMP_ROW, "lamp", "10 % light", "90 % light", "seen", "intensity"));
        for (LampSwap.Lamp lamp : swap.lamps()) {
            lines.add(format(
                    LAMP_ROW,
                    lamp.name(),
                    time(lamp.onset().timeToLevel(0.1)),
                    time(lamp.onset().timeToLevel(0.9)),
                    time(lamp.seen()),
                    Text.digits(lamp.intensity().inCandela()) + " cd"));
            if (lamp.detection() instanceof Detection.NeverSeen never) {
                lines.add("    never seen: " + never.reason());
            }
        }
        lines.add("");
        lines.add(gain(swap));
        lines.add("");
        lines.add(format(ROW, "speed", "lamp", "extra distance", "gap needed", "outcome at the gap kept"));
        swap.rows().forEach(row -> lines.add(row(row)));
        lines.add("");
        swap.lamps().stream()
                .flatMap(lamp -> lamp.onset().caveats().stream())
                .forEach(caveat -> lines.add("Caveat: " + caveat));
        lines.add("A gain counts only if the driver behind responds to the lamp's onset; it is not a crash forecast.");
        lines.add("Lamp law, type approval, hot load resistors, fuses: read the cautions in report.html.");
        return lines;
    }

    /** Says in one or two sentences by how much the LED lamp is seen earlier. */
    static String gain(LampSwap swap) {
        return gain(swap, false) + "\n" + gain(swap, true);
    }

    private static String gain(LampSwap swap, boolean byOther) {
        OptionalDouble earlierS = swap.earlierS(byOther);
        String how = byOther
                ? "for comparison, by " + swap.scenario().otherDetector().criterion()
                : "by " + swap.scenario().detector().criterion();
        if (earlierS.isEmpty()) {
            return "One of the lamps is never seen, so there is no gain to state (" + how + ").";
        }
        double gainS = earlierS.getAsDouble();
        String than = " than the " + swap.lamps().get(0).name() + " lamp (" + how + ").";
        return "The LED lamp is seen " + Text.milliseconds(Math.abs(gainS)) + (gainS < 0 ? " later" : " earlier")
                + than;
    }

    private static String row(LampSwap.Row row) {
        Verdict verdict = Verdict.of(row);
        return format(
                ROW,
                Text.speed(row.leg().speed()),
                row.lamp().name(),
                distance(row.extraDistance()),
                distance(verdict.gapNeeded()),
                verdict.phrase());
    }

    static String distance(Optional<Distance> distance) {
        return distance.map(d -> d.inMetres() == 0 ? "0" : Text.distance(d)).orElse("-");
    }

    private static String time(Optional<TimeSpan> time) {
        return time.map(t -> Text.milliseconds(t.inSeconds())).orElse("never");
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values).stripTrailing();
    }
}
