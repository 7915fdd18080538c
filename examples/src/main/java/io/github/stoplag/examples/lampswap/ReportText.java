package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The printed report: the decisive figures on a screenful of plain text. */
final class ReportText {
    private static final String LAMP_ROW = "  %-9s %10s %10s %10s %10s";
    private static final String SEEN_ROW = "  %-38s %10s %10s %10s";
    private static final String ROW = "  %-18s %-8s  %-20s  %-22s  %s";

    private ReportText() {}

    static List<String> of(LampSwap swap) {
        Scenario scenario = swap.scenario();
        List<String> lines = new ArrayList<>();
        lines.add(scenario.heading().toString());
        lines.addAll(Text.wrapped("", "Seen means: " + scenario.criterion().criterion()));
        lines.add("");
        lines.add(format(LAMP_ROW, "lamp", "10 % light", "90 % light", "seen", "intensity"));
        for (LampSwap.Lamp lamp : swap.lamps()) {
            lines.add(format(
                    LAMP_ROW,
                    lamp.name(),
                    time(lamp.onset().timeToLevel(0.1)),
                    time(lamp.onset().timeToLevel(0.9)),
                    time(lamp.seen()),
                    Text.digits(lamp.light().endCd()) + " cd"));
            if (lamp.detection() instanceof Detection.NeverSeen never) {
                lines.add("    never seen: " + never.reason());
            }
        }
        lines.add("");
        lines.add(gain(swap));
        lines.add("");
        lines.add(format(
                SEEN_ROW,
                "other ways to say when a lamp is seen",
                swap.lamps().get(0).name(),
                "LED",
                "gain"));
        comparison(swap).skip(1).forEach(row -> lines.add(format(SEEN_ROW, row.toArray())));
        lines.addAll(Text.wrapped("  ", Criterion.SCALES));
        lines.add("");
        lines.add(format(ROW, "speed", "lamp", "extra distance", "gap needed", "outcome at the gap kept"));
        swap.rows().forEach(row -> lines.add(row(row)));
        lines.add("");
        swap.lamps().stream()
                .flatMap(LampSwap.Lamp::caveats)
                .distinct()
                .forEach(caveat -> lines.addAll(Text.wrapped("", "Caveat: " + caveat)));
        lines.add("A gain counts only if the driver behind responds to the lamp's onset; it is not a crash forecast.");
        lines.add("Lamp law, type approval, hot load resistors, fuses: read the cautions in report.html.");
        return lines;
    }

    /** Says in a sentence by how much the LED lamp is seen earlier. */
    static String gain(LampSwap swap) {
        String how = " (by " + swap.scenario().criterion().brief() + ").";
        return swap.earlier(1, 0)
                .map(earlier -> "The LED lamp is seen " + Text.milliseconds(Math.abs(earlier.inSeconds()))
                        + (earlier.inSeconds() < 0 ? " later" : " earlier") + " than the "
                        + swap.lamps().get(0).name() + " lamp" + how)
                .orElse("One of the lamps is never seen, so there is no gain to state" + how);
    }

    /** Gives for each criterion its name, when both lamps are seen, and the gain. */
    static Stream<List<String>> comparison(LampSwap swap) {
        return IntStream.range(0, swap.scenario().criteria().size())
                .mapToObj(i -> List.of(
                        swap.scenario().criteria().get(i).scaled(),
                        time(swap.lamps().get(0).seen(i)),
                        time(swap.lamps().get(1).seen(i)),
                        swap.earlier(1, i)
                                .map(earlier -> Text.milliseconds(earlier.inSeconds()))
                                .orElse("-")));
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
