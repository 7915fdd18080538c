package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.examples.lamps.Estimated;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.source.Caveat;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The printed report: the answer first, then what it is made of. */
final class ReportText {
    /** From this standard uncertainty on, tenths of a millisecond say nothing. */
    private static final double COARSE_S = 0.005;

    private static final String LAMP_ROW = "  %-16s %10s %10s %10s %10s";

    private ReportText() {}

    static List<String> of(LampSwap swap) {
        List<String> lines = new ArrayList<>();
        lines.add(swap.scenario().heading().toString());
        answer(swap, lines);
        lines.add("");
        lines.addAll(
                Text.wrapped("", "Seen means: " + swap.scenario().criterion().criterion()));
        lamps(swap, lines);
        SetShares.of(swap).forEach(said -> lines.addAll(Text.wrapped("  ", said)));
        goingOut(new GoingOut(swap), lines);
        lines.add("");
        lines.add("By day and by night, at the gap kept:");
        lines.addAll(Text.columns(grouped(new FirstLook(swap).rows(), 2)
                .map(row -> List.of(row.get(0), row.get(1), row.get(2), row.get(3), row.get(5)))
                .toList()));
        lines.add("");
        lines.addAll(Text.columns(Stream.concat(
                        Stream.of(List.of("all ways to say when it is seen", "lamp", "seen", "earlier")),
                        grouped(comparison(swap), 1))
                .toList()));
        lines.addAll(Text.wrapped("  ", Criterion.SCALES));
        lines.add("");
        lines.addAll(Text.columns(Stream.concat(
                        Stream.of(List.of("speed", "lamp", "extra distance", "gap needed", "outcome at the gap kept")),
                        grouped(swap.rows().stream().map(ReportText::row), 1))
                .toList()));
        if (swap.banded()) {
            lines.add("  The interval of each of these figures: report.html, uncertainty.csv.");
        }
        lines.add("");
        lines.add("A gain counts only if the driver behind responds to the lamp's onset; it is not a crash forecast.");
        lines.add("Lamp law, type approval, hot load resistors, fuses: read the cautions in report.html.");
        return lines;
    }

    private static void answer(LampSwap swap, List<String> lines) {
        String now = swap.lamps().get(0).name();
        for (FirstLook.Change change : new FirstLook(swap).changes()) {
            lines.add("");
            lines.add(change.instead() + ": seen " + change.earlier());
            change.speeds().forEach(at -> {
                lines.add("  " + at.speed() + "  " + at.distance());
                lines.addAll(Text.wrapped("    ", change.lamp() + ": " + at.then()));
                lines.addAll(Text.wrapped("    ", now + ": " + at.now()));
            });
            lines.addAll(Text.wrapped("  ", change.others()));
        }
        swap.ratingLeavesOpen().ifPresent(said -> {
            lines.add("");
            lines.addAll(Text.wrapped("", said));
        });
    }

    private static void goingOut(GoingOut out, List<String> lines) {
        lines.add("");
        Stream.concat(Stream.of(GoingOut.HEADER), out.rows())
                .forEach(row -> lines.add(format("  %-16s %10s %18s %20s", row.toArray())));
        out.notes().forEach(note -> lines.addAll(Text.wrapped("  ", note)));
    }

    private static void lamps(LampSwap swap, List<String> lines) {
        lines.add(format(LAMP_ROW, "lamp", "10 % light", "90 % light", "seen", "intensity"));
        Set<Caveat> told = new HashSet<>();
        for (LampSwap.Lamp lamp : swap.lamps()) {
            lines.add(format(
                    LAMP_ROW,
                    lamp.name(),
                    level(lamp.onset().timeToLevel(0.1)),
                    level(lamp.onset().timeToLevel(0.9)),
                    time(lamp.moments().get(0)),
                    Text.digits(lamp.light().endCd()) + " cd"));
            lamp.moments().get(0).filter(at -> !at.exact()).ifPresent(at -> lines.add(left(lamp, at)));
            lamp.caveats().filter(told::add).forEach(caveat -> lines.addAll(Text.wrapped("    ", "Caveat: " + caveat)));
            if (lamp.detection() instanceof Detection.NeverSeen never) {
                lines.add("    never seen: " + never.reason());
            }
        }
    }

    private static String left(LampSwap.Lamp lamp, Estimated at) {
        return "    " + (lamp.filmed() ? "filmed" : "from its rating") + ": seen after " + milliseconds(at)
                + between(at) + " (95 %), standard" + " uncertainty "
                + Numbers.text(1000 * at.uncertainty(), 2) + " ms";
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
                                time(swap.lamps().get(lamp).moments().get(criterion)),
                                lamp == 0
                                        ? "-"
                                        : swap.earlier(lamp, criterion)
                                                .map(ReportText::milliseconds)
                                                .orElse("-"))));
    }

    private static List<String> row(LampSwap.Row row) {
        return List.of(
                Text.speed(row.leg().speed()),
                row.lamp().name(),
                metres(row.extraM().map(ReportText::alone)),
                metres(row.ending().gapNeededM().map(ReportText::alone)),
                row.ending().shortly());
    }

    /** The page and the table of uncertainties have the room for intervals. */
    private static Estimated alone(Estimated figure) {
        return Estimated.exactly(figure.value());
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

    static String metres(Optional<Estimated> metres) {
        return metres.map(m -> m.value() == 0 ? "0" : Text.distance(Distance.metres(m.value())) + m.between(2, "m"))
                .orElse("-");
    }

    private static String level(Optional<TimeSpan> time) {
        return time(time.map(t -> Estimated.exactly(t.inSeconds())));
    }

    private static String time(Optional<Estimated> time) {
        return time.map(ReportText::milliseconds).orElse("never");
    }

    /** Writes a time, to the tenth of a millisecond where its interval is narrow enough. */
    static String milliseconds(Estimated time) {
        return time.exact()
                ? Text.milliseconds(time.value())
                : Numbers.fixed(1000 * time.value(), decimals(time)) + " ms";
    }

    /** Writes the interval of a time as the end of a phrase, nothing if there is none. */
    static String between(Estimated time) {
        return time.times(1000).between(decimals(time), "ms");
    }

    private static int decimals(Estimated time) {
        return Double.isFinite(time.uncertainty()) && Math.abs(time.uncertainty()) < COARSE_S ? 1 : 0;
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values).stripTrailing();
    }
}
