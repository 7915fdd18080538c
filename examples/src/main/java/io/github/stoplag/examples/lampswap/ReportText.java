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

/** The printed report: the answer first, then what it is made of. */
final class ReportText {
    private static final String AT_SPEED = "  %-17s %-27s %s";
    private static final String LAMP_ROW = "  %-16s %10s %10s %10s %10s";
    private static final String SEEN_ROW = "  %-36s %-16s %10s %10s";
    private static final String ROW = "  %-17s %-16s  %-20s  %-22s  %s";

    private ReportText() {}

    static List<String> of(LampSwap swap) {
        List<String> lines = new ArrayList<>();
        lines.add(swap.scenario().heading().toString());
        answer(swap, lines);
        lines.add("");
        lines.addAll(
                Text.wrapped("", "Seen means: " + swap.scenario().criterion().criterion()));
        lamps(swap, lines);
        lines.add("");
        lines.add("By day and by night, at the gap kept:");
        grouped(new FirstLook(swap).rows(), 2)
                .forEach(row -> lines.add(format(
                        "  %-17s %-32s %-16s %8s  %s", row.get(0), row.get(1), row.get(2), row.get(3), row.get(5))));
        lines.add("");
        lines.add(format(SEEN_ROW, "all ways to say when it is seen", "lamp", "seen", "earlier"));
        grouped(comparison(swap), 1).forEach(row -> lines.add(format(SEEN_ROW, row.toArray())));
        lines.addAll(Text.wrapped("  ", Criterion.SCALES));
        lines.add("");
        lines.add(format(ROW, "speed", "lamp", "extra distance", "gap needed", "outcome at the gap kept"));
        grouped(swap.rows().stream().map(ReportText::row), 1).forEach(row -> lines.add(format(ROW, row.toArray())));
        lines.add("");
        swap.lamps().stream()
                .flatMap(LampSwap.Lamp::caveats)
                .distinct()
                .forEach(caveat -> lines.addAll(Text.wrapped("", "Caveat: " + caveat)));
        lines.add("A gain counts only if the driver behind responds to the lamp's onset; it is not a crash forecast.");
        lines.add("Lamp law, type approval, hot load resistors, fuses: read the cautions in report.html.");
        return lines;
    }

    private static void answer(LampSwap swap, List<String> lines) {
        String now = swap.lamps().get(0).name();
        for (FirstLook.Change change : new FirstLook(swap).changes()) {
            lines.add("");
            lines.add(change.lamp() + " lamp instead of the " + now + " lamp: seen " + change.earlier());
            for (FirstLook.AtSpeed at : change.speeds()) {
                lines.add(format(AT_SPEED, at.speed(), at.distance(), change.lamp() + ": " + at.then()));
                lines.add(format(AT_SPEED, "", "", now + ": " + at.now()));
            }
            lines.addAll(Text.wrapped("  ", change.others()));
        }
    }

    private static void lamps(LampSwap swap, List<String> lines) {
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
    }

    /**
     * Gives for each criterion and lamp: name of the criterion, lamp, when it is seen, and how much earlier than the
     * lamp fitted now.
     */
    static Stream<List<String>> comparison(LampSwap swap) {
        return IntStream.range(0, swap.scenario().criteria().size())
                .boxed()
                .flatMap(criterion -> IntStream.range(0, swap.lamps().size())
                        .mapToObj(lamp -> List.of(
                                swap.scenario().criteria().get(criterion).scaled(),
                                swap.lamps().get(lamp).name(),
                                time(swap.lamps().get(lamp).seen(criterion)),
                                lamp == 0
                                        ? "-"
                                        : swap.earlier(lamp, criterion)
                                                .map(earlier -> Text.milliseconds(earlier.inSeconds()))
                                                .orElse("-"))));
    }

    private static List<String> row(LampSwap.Row row) {
        Verdict verdict = Verdict.of(row.pair());
        return List.of(
                Text.speed(row.leg().speed()),
                row.lamp().name(),
                distance(row.extraDistance()),
                distance(verdict.gapNeeded()),
                verdict.phrase());
    }

    /** Leaves the first fields empty where they are those of the row before. */
    private static Stream<List<String>> grouped(Stream<List<String>> rows, int fields) {
        List<List<String>> all = rows.toList();
        return IntStream.range(0, all.size()).mapToObj(i -> {
            List<String> row = new ArrayList<>(all.get(i));
            for (int f = 0;
                    f < fields
                            && i > 0
                            && all.get(i - 1).get(f).equals(all.get(i).get(f));
                    f++) {
                row.set(f, "");
            }
            return row;
        });
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
