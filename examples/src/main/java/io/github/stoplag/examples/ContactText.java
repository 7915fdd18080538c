package io.github.stoplag.examples;

import io.github.stoplag.examples.sweep.PlanFile;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.sweep.LampTally;
import io.github.stoplag.sweep.PairModel;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.PairedProportions;
import io.github.stoplag.sweep.Proportion;
import io.github.stoplag.sweep.QuantileSketch;
import io.github.stoplag.sweep.SweepResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What a sweep of a plan file counted, as printed: contacts of each lamp, comparisons, closing speeds, rejected scenarios. */
public final class ContactText {
    private final PlanFile plan;
    private final SweepResult<PairTally> result;
    private final List<String> lines = new ArrayList<>();

    private ContactText(PlanFile plan, SweepResult<PairTally> result) {
        this.plan = plan;
        this.result = result;
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
                + plan.hash().substring(0, 12));
        lines.addAll(Text.wrapped("", PairModel.STATEMENT));
    }

    private void contacts() {
        lines.add("");
        lines.add(String.format(
                Locale.ROOT, "  %-12s %14s %12s  %s", "lamp", "contacts", "probability", "95 % interval"));
        for (String lamp : plan.lamps()) {
            Proportion p = result.tally().lamp(lamp).contactProbability();
            lines.add(String.format(
                    Locale.ROOT,
                    "  %-12s %14s %12s  %s",
                    lamp,
                    SweepText.count(p.hits()),
                    SweepText.percent(p.value()),
                    SweepText.percent(p.wilson(SweepStudy.CONFIDENCE))));
        }
        String first = plan.lamps().get(0);
        plan.lamps().stream().skip(1).forEach(other -> {
            PairedProportions pair = result.tally().compare(first, other);
            lines.add("  " + first + " less " + other + ", on the same draws: " + SweepText.percent(pair.difference())
                    + ", 95 % interval " + SweepText.percent(pair.differenceInterval(SweepStudy.CONFIDENCE)));
        });
    }

    private void closingSpeeds() {
        List<String> lamps = plan.lamps().stream()
                .filter(lamp -> result.tally().lamp(lamp).closingSpeedMps().count() > 0)
                .toList();
        if (lamps.isEmpty()) {
            return;
        }
        lines.add("");
        lines.add("Closing speed of the contacts in km/h, each quantile within "
                + Numbers.text(100 * QuantileSketch.RELATIVE_ERROR, 1) + " % of an exact one:");
        lines.add(String.format(
                Locale.ROOT,
                "  %-12s %8s%s",
                "lamp",
                "mean",
                SweepTables.QUANTILES.stream()
                        .map(q -> String.format(Locale.ROOT, "%8s", Numbers.text(100 * q) + " %"))
                        .collect(Collectors.joining())));
        for (String name : lamps) {
            LampTally lamp = result.tally().lamp(name);
            lines.add(String.format(
                    Locale.ROOT,
                    "  %-12s %8s%s",
                    name,
                    SweepText.kmh(lamp.closingSpeedMps().mean()),
                    SweepTables.QUANTILES.stream()
                            .map(q -> String.format(
                                    Locale.ROOT,
                                    "%8s",
                                    SweepText.kmh(
                                            lamp.closingSpeedQuantilesMps().quantile(q))))
                            .collect(Collectors.joining())));
        }
    }
}
