package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.TimeSpan;
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
     * @param earlier how much earlier it is seen
     * @param others the same by day, by night, and over all criteria
     * @param speeds what that is at each speed
     */
    record Change(String lamp, String earlier, String others, List<AtSpeed> speeds) {}

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
                earlier(lamp, 0),
                others(lamp),
                swap.scenario().firstLook().stream()
                        .map(leg -> new AtSpeed(
                                Text.speed(leg.speed()),
                                distance(leg, lamp, 0),
                                swap.verdict(leg, lamp, 0).phrase(),
                                swap.verdict(leg, 0, 0).phrase()))
                        .toList());
    }

    private String others(int lamp) {
        List<Criterion> criteria = swap.scenario().criteria();
        List<String> parts = new ArrayList<>();
        Criterion.firstLook(criteria).stream()
                .filter(criterion -> criterion > 0)
                .forEach(criterion -> parts.add(criteria.get(criterion).meaning() + ": " + earlier(lamp, criterion)));
        double[] all = IntStream.range(0, criteria.size())
                .mapToObj(criterion -> swap.earlier(lamp, criterion))
                .flatMap(Optional::stream)
                .mapToDouble(TimeSpan::inSeconds)
                .toArray();
        if (all.length > 1) {
            parts.add("over " + all.length + " ways to say when a lamp is seen: "
                    + inWords(DoubleStream.of(all).min().orElseThrow()) + " to "
                    + inWords(DoubleStream.of(all).max().orElseThrow()));
        }
        return String.join("; ", parts);
    }

    private String earlier(int lamp, int criterion) {
        return swap.earlier(lamp, criterion)
                .map(time -> inWords(time.inSeconds()))
                .orElse("no gain to state, as one of the lamps is never seen");
    }

    private String distance(Scenario.Leg leg, int lamp, int criterion) {
        return swap.earlier(lamp, criterion)
                .map(time -> Text.distance(Distance.metres(leg.speed().inMps() * Math.abs(time.inSeconds())))
                        + word(time.inSeconds()))
                .orElse("-");
    }

    private static String inWords(double earlierS) {
        return Text.milliseconds(Math.abs(earlierS)) + word(earlierS);
    }

    private static String word(double earlierS) {
        return earlierS < 0 ? " later" : " earlier";
    }

    /** Gives the table: a row for each speed, criterion of the first look, and lamp. */
    Stream<List<String>> rows() {
        return rows(Criterion.firstLook(swap.scenario().criteria()));
    }

    /** Gives the rows of day and night alone, where the answer has told of the criterion that counts. */
    Stream<List<String>> furtherRows() {
        return rows(Criterion.firstLook(swap.scenario().criteria()).stream()
                .filter(criterion -> criterion > 0)
                .toList());
    }

    private Stream<List<String>> rows(List<Integer> shown) {
        List<Criterion> criteria = swap.scenario().criteria();
        return swap.scenario().firstLook().stream()
                .flatMap(leg -> shown.stream()
                        .flatMap(criterion -> IntStream.range(0, swap.lamps().size())
                                .mapToObj(lamp -> List.of(
                                        Text.speed(leg.speed()),
                                        criteria.get(criterion).meaning(),
                                        swap.lamps().get(lamp).name(),
                                        lamp == 0 ? "-" : signed(lamp, criterion),
                                        lamp == 0 ? "-" : distance(leg, lamp, criterion),
                                        swap.verdict(leg, lamp, criterion).phrase()))));
    }

    private String signed(int lamp, int criterion) {
        return swap.earlier(lamp, criterion)
                .map(time -> Text.milliseconds(time.inSeconds()))
                .orElse("-");
    }
}
