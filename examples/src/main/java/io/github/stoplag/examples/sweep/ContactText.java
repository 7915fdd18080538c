package io.github.stoplag.examples.sweep;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.sweep.Interval;
import io.github.stoplag.sweep.LampTally;
import io.github.stoplag.sweep.Moments;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.PairedProportions;
import io.github.stoplag.sweep.PlanFile;
import io.github.stoplag.sweep.Proportion;
import io.github.stoplag.sweep.QuantileSketch;
import io.github.stoplag.sweep.SamplingError;
import io.github.stoplag.sweep.SweepResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a sweep of a plan file counted, as printed: contacts of each lamp, comparisons, closing speeds, rejected
 * scenarios.
 */
public final class ContactText {
    private static final String NOTHING = "-";
    private static final double KMH = 3.6;

    private final PlanFile plan;
    private final SweepResult<PairTally> result;
    private final SamplingError error;
    private final List<String> lines = new ArrayList<>();

    private ContactText(PlanFile plan, SweepResult<PairTally> result) {
        this.plan = plan;
        this.result = result;
        this.error = SamplingError.of(plan.plan());
    }

    /**
     * Prints contacts and closing speeds under a heading.
     *
     * @param plan the plan
     * @param result what its run gave
     * @return the lines
     */
    public static List<String> of(PlanFile plan, SweepResult<PairTally> result) {
        ContactText text = new ContactText(plan, result);
        text.head();
        if (result.scenarios() > result.rejected()) {
            text.contacts();
            text.closingSpeeds();
        }
        return text.lines;
    }

    /**
     * Prints how many scenarios were rejected and why.
     *
     * @param result what a run gave
     * @return the lines, the first one empty
     */
    public static List<String> rejects(SweepResult<?> result) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        long rejected = result.rejected();
        lines.add(
                rejected == 0 ? "No scenario was rejected." : SweepText.count(rejected) + " scenarios were rejected:");
        result.rejects().forEach(entry -> lines.addAll(Text.wrapped("  ", entry.toString())));
        return lines;
    }

    private void head() {
        lines.add(plan.title() + (plan.invented() ? ". Data are invented." : ""));
        lines.add(SweepText.count(result.scenarios()) + " scenarios, "
                + plan.plan().design().kind().name().toLowerCase(Locale.ROOT).replace('_', ' ')
                + " design, seed " + plan.plan().seed() + ", plan "
                + plan.digest().substring(0, 12));
        lines.addAll(Text.wrapped("", plan.pairModel().population()));
        lines.addAll(Text.wrapped("", coverage(plan)));
        lines.addAll(Text.wrapped("", PairModel.STATEMENT));
    }

    /**
     * Says what the intervals of a plan's results cover and what they leave out.
     *
     * @param plan the plan
     * @return one or two sentences
     */
    public static String coverage(PlanFile plan) {
        String covered = SamplingError.of(plan.plan()) == SamplingError.NONE
                ? "There are no intervals"
                : "Intervals cover sampling alone, the scatter of so many draws";
        return covered + ": not what is unknown of the axes' distributions, of the drivers, and of the lamps ("
                + String.join(", ", plan.leftOut()) + "), which can matter far more.";
    }

    private void contacts() {
        lines.add("");
        lines.add(String.format(
                        Locale.ROOT,
                        "  %-12s %14s %12s  %s",
                        "lamp",
                        "contacts",
                        "probability",
                        intervals() ? "95 % interval" : "")
                .stripTrailing());
        for (String lamp : plan.lamps()) {
            Proportion p = result.tally().lamp(lamp).contactProbability();
            lines.add(String.format(
                            Locale.ROOT,
                            "  %-12s %14s %12s  %s",
                            lamp,
                            SweepText.count(p.hits()),
                            SweepText.percent(p.value()),
                            intervals() ? SweepText.percent(p.wilson(SweepStudy.CONFIDENCE)) : "")
                    .stripTrailing());
        }
        String first = plan.pairModel().reference();
        plan.pairModel().others().forEach(other -> {
            PairedProportions pair = result.tally().compare(first, other);
            lines.add("  " + first + " less " + other + ", on the same draws: " + SweepText.percent(pair.difference())
                    + (intervals()
                            ? ", 95 % interval " + SweepText.percent(pair.differenceInterval(SweepStudy.CONFIDENCE))
                            : ""));
        });
        if (!error.note().isEmpty()) {
            lines.addAll(Text.wrapped("  ", error.note()));
        }
    }

    private boolean intervals() {
        return error != SamplingError.NONE;
    }

    private void closingSpeeds() {
        List<String> lamps = plan.lamps().stream()
                .filter(lamp -> result.tally().lamp(lamp).closingSpeedMps().count() > 0)
                .toList();
        if (lamps.isEmpty()) {
            return;
        }
        lines.add("");
        lines.addAll(Text.wrapped(
                "",
                "Closing speed of the contacts in km/h, each quantile within "
                        + Numbers.text(100 * QuantileSketch.RELATIVE_ERROR, 1) + " % of an exact one"
                        + (intervals()
                                ? "; ± to the farther end of the 95 % interval, - where contacts are too few:"
                                : ":")));
        lines.add(row("lamp", "mean", SweepTables.QUANTILES.stream().map(q -> Numbers.text(100 * q) + " %")));
        for (String name : lamps) {
            LampTally lamp = result.tally().lamp(name);
            lines.add(row(name, SweepText.kmh(lamp.closingSpeedMps().mean()), quantiles(lamp)));
            if (intervals()) {
                lines.add(row("  ±", meanHalf(lamp), halves(lamp)));
            }
        }
    }

    private static String row(String name, String mean, Stream<String> quantiles) {
        return String.format(
                Locale.ROOT,
                "  %-12s %8s%s",
                name,
                mean,
                quantiles.map(q -> String.format(Locale.ROOT, "%8s", q)).collect(Collectors.joining()));
    }

    private Stream<String> quantiles(LampTally lamp) {
        QuantileSketch sketch = lamp.closingSpeedQuantilesMps();
        return SweepTables.QUANTILES.stream()
                .map(q ->
                        intervals() && sketch.interval(q, SweepStudy.CONFIDENCE).isEmpty()
                                ? NOTHING
                                : SweepText.kmh(sketch.quantile(q)));
    }

    private static Stream<String> halves(LampTally lamp) {
        QuantileSketch sketch = lamp.closingSpeedQuantilesMps();
        return SweepTables.QUANTILES.stream()
                .map(q -> sketch.interval(q, SweepStudy.CONFIDENCE)
                        .map(interval -> half(interval, sketch.quantile(q)))
                        .orElse(NOTHING));
    }

    private static String meanHalf(LampTally lamp) {
        Moments speed = lamp.closingSpeedMps();
        return speed.count() < 2 ? NOTHING : half(speed.meanInterval(SweepStudy.CONFIDENCE), speed.mean());
    }

    private static String half(Interval interval, double valueMps) {
        return Numbers.fixed(KMH * Math.max(interval.hi() - valueMps, valueMps - interval.lo()), 2);
    }
}
