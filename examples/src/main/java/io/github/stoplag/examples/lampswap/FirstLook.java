package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.examples.lamps.Estimated;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The answer in the first lines: what each candidate changes at two speeds, by the criterion that counts, by day and by
 * night.
 */
final class FirstLook {
    /** What its table tells of each speed, criterion and lamp. */
    static final List<String> HEADER = List.of("speed", "seen by", "lamp", "earlier", "that is", "outcome");

    private final LampSwap swap;

    FirstLook(LampSwap swap) {
        this.swap = swap;
    }

    /**
     * What a candidate changes.
     *
     * @param lamp its name
     * @param instead which lamp instead of which
     * @param earlier how much earlier it is seen
     * @param others the same by day, by night, and over all criteria
     * @param speeds what that is at each speed
     */
    record Change(String lamp, String instead, String earlier, String others, List<AtSpeed> speeds) {}

    /**
     * What a candidate changes at a speed.
     *
     * @param speed the speed
     * @param distance what the vehicle behind travels between the moments at which the lamps are seen
     * @param then how it ends with the candidate
     * @param now how it ends with the lamp fitted now
     */
    record AtSpeed(String speed, String distance, String then, String now) {}

    /** Gives one change for each candidate. */
    List<Change> changes() {
        return IntStream.range(1, swap.lamps().size()).mapToObj(this::change).toList();
    }

    private Change change(int lamp) {
        return new Change(
                swap.lamps().get(lamp).name(),
                called(lamp) + " instead of the " + called(0),
                (several(lamp) ? "with its first lamp " : "") + earlier(lamp, 0) + uncertainty(lamp),
                others(lamp),
                swap.scenario().firstLook().stream()
                        .map(leg -> new AtSpeed(
                                Text.speed(leg.speed()),
                                distance(leg, lamp),
                                swap.ending(leg, lamp, 0).phrase(),
                                swap.ending(leg, 0, 0).phrase()))
                        .toList());
    }

    private String called(int lamp) {
        return swap.lamps().get(lamp).called();
    }

    private boolean several(int lamp) {
        return swap.lamps().get(lamp).light().set().isPresent();
    }

    private String others(int lamp) {
        List<Criterion> criteria = swap.scenario().criteria();
        List<String> parts = new ArrayList<>();
        Criterion.firstLook(criteria).stream()
                .filter(criterion -> criterion > 0)
                .forEach(criterion -> parts.add(criteria.get(criterion).meaning() + ": " + earlier(lamp, criterion)));
        lookedAtOne(lamp)
                .ifPresent(time -> parts.add(0, "if each driver looks at one of its lamps: on average " + time));
        double[] all = IntStream.range(0, criteria.size())
                .mapToObj(criterion -> swap.earlier(lamp, criterion))
                .flatMap(Optional::stream)
                .mapToDouble(Estimated::value)
                .toArray();
        if (all.length > 1) {
            parts.add("over " + all.length + " ways to say when a lamp is seen: "
                    + inWords(Estimated.exactly(DoubleStream.of(all).min().orElseThrow()))
                    + " to "
                    + inWords(Estimated.exactly(DoubleStream.of(all).max().orElseThrow())));
        }
        return String.join("; ", parts);
    }

    /** Says for a set what the first lamp alone does not: the mean over its lamps. */
    private Optional<String> lookedAtOne(int lamp) {
        return swap.lamps()
                .get(lamp)
                .light()
                .set()
                .flatMap(set -> swap.lamps()
                        .get(0)
                        .seen()
                        .flatMap(now -> swap.scenario()
                                .criterion()
                                .detect(set)
                                .lookedAtOne()
                                .time()
                                .map(then -> inWords(Estimated.exactly(now.inSeconds() - then.inSeconds())))));
    }

    private String earlier(int lamp, int criterion) {
        return swap.earlier(lamp, criterion)
                .map(FirstLook::inWords)
                .orElse("no gain to state, as one of the lamps is never seen");
    }

    private String distance(Scenario.Leg leg, int lamp) {
        Estimated none = Estimated.exactly(0);
        return distance(leg, lamp, 0)
                + forward(swap.earlier(lamp, 0).orElse(none))
                        .times(leg.speed().inMps())
                        .between(2, "m");
    }

    private String distance(Scenario.Leg leg, int lamp, int criterion) {
        return swap.earlier(lamp, criterion)
                .map(time -> Text.distance(Distance.metres(
                                forward(time).times(leg.speed().inMps()).value()))
                        + word(time))
                .orElse("-");
    }

    private static String inWords(Estimated earlierS) {
        Estimated time = forward(earlierS);
        return ReportText.milliseconds(time) + word(earlierS) + ReportText.between(time);
    }

    private String uncertainty(int lamp) {
        return swap.earlier(lamp, 0)
                .filter(time -> !time.exact())
                .map(time -> ", standard uncertainty " + Numbers.text(1000 * time.uncertainty(), 2) + " ms")
                .orElse("");
    }

    private static Estimated forward(Estimated earlier) {
        return earlier.times(earlier.value() < 0 ? -1 : 1);
    }

    private static String word(Estimated earlier) {
        return earlier.value() < 0 ? " later" : " earlier";
    }

    /** Gives the table: a row for each speed, criterion of the first look, and lamp. */
    Stream<List<String>> rows() {
        return rows(Criterion.firstLook(swap.scenario().criteria()), false);
    }

    /** Gives the rows of day and night alone, where the answer has told of the criterion that counts. */
    Stream<List<String>> furtherRows() {
        return rows(
                Criterion.firstLook(swap.scenario().criteria()).stream()
                        .filter(criterion -> criterion > 0)
                        .toList(),
                true);
    }

    private Stream<List<String>> rows(List<Integer> shown, boolean inFull) {
        List<Criterion> criteria = swap.scenario().criteria();
        return swap.scenario().firstLook().stream()
                .flatMap(leg -> shown.stream()
                        .flatMap(criterion -> IntStream.range(0, swap.lamps().size())
                                .mapToObj(lamp -> List.of(
                                        Text.speed(leg.speed()),
                                        criteria.get(criterion).meaning(),
                                        swap.lamps().get(lamp).name(),
                                        lamp == 0 ? "-" : signed(lamp, criterion, inFull),
                                        lamp == 0 ? "-" : distance(leg, lamp, criterion),
                                        inFull
                                                ? swap.ending(leg, lamp, criterion)
                                                        .phrase()
                                                : swap.ending(leg, lamp, criterion)
                                                        .shortly()))));
    }

    private String signed(int lamp, int criterion, boolean inFull) {
        return swap.earlier(lamp, criterion)
                .map(time -> ReportText.milliseconds(time) + (inFull ? ReportText.between(time) : ""))
                .orElse("-");
    }
}
