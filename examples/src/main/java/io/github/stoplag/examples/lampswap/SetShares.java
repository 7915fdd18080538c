package io.github.stoplag.examples.lampswap;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.lamps.Criterion;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.sight.Detection;
import io.github.stoplag.sight.LampSet;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** What a set keeps of the gain of its fastest lamp: a range, for nobody knows which lamp a driver looks at. */
final class SetShares {
    private SetShares() {}

    /** Says it for each set among the lamps, by the criterion that counts. */
    static Stream<String> of(LampSwap swap) {
        Criterion criterion = swap.scenario().criterion();
        return swap.lamps().stream()
                .flatMap(lamp -> lamp.light().set().stream().map(set -> said(lamp.name(), set, criterion)));
    }

    private static String said(String name, LampSet set, Criterion criterion) {
        LampSet.Outcome outcome = criterion.detect(set);
        List<String> names = set.members().stream().map(LampSet.Member::name).toList();
        String moments = name + " is a set of " + String.join(", ", names) + ": seen " + time(outcome.detection())
                + " after switch-on with its first lamp (" + outcome.first().name() + "), " + time(outcome.together())
                + " if its lights added up, " + time(outcome.lookedAtOne())
                + " on average if each driver looks at one.";
        return criterion
                .kept(set)
                .map(kept -> moments + kept(names.size(), kept))
                .orElse(moments);
    }

    private static String kept(int lamps, LampSet.Kept kept) {
        List<String> shares = DoubleStream.of(kept.firstRatio(), kept.togetherRatio(), kept.lookedAtOneRatio())
                .mapToObj(ratio -> Numbers.fixed(100 * ratio, 0) + " %")
                .toList();
        return String.format(
                Locale.ROOT,
                " Of what %d lamps like the first would gain over %d like the last it keeps %s, %s and %s.",
                lamps,
                lamps,
                shares.get(0),
                shares.get(1),
                shares.get(2));
    }

    private static String time(Detection detection) {
        return detection.time().map(at -> Text.milliseconds(at.inSeconds())).orElse("never");
    }
}
