package io.github.stoplag.examples.sweep;

import io.github.stoplag.examples.draw.Text;
import io.github.stoplag.examples.sweep.run.SweepOutcome;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.sweep.Interval;
import io.github.stoplag.sweep.Moments;
import io.github.stoplag.sweep.PairTally;
import io.github.stoplag.sweep.SamplingError;
import io.github.stoplag.sweep.Sensitivities;
import io.github.stoplag.sweep.SobolIndices;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The printed report of a sweep. */
final class SweepText {
    private static final int LEADING = 5;
    private static final int DECIMALS = 2;
    private static final double SMALL = 0.01;
    private static final double KMH = 3.6;
    static final double WHISKER = 1.96;

    private final SweepStudy study;
    private final List<String> lines = new ArrayList<>();

    private SweepText(SweepStudy study) {
        this.study = study;
    }

    static List<String> of(SweepStudy study) {
        SweepText text = new SweepText(study);
        text.lines.addAll(ContactText.of(study.plan(), study.outcome().result()));
        if (study.anyValid()) {
            text.gapIntegrated();
            text.sensitivities();
            text.convergence();
        }
        text.lines.addAll(ContactText.rejects(study.outcome().result()));
        text.foundations();
        return text.lines;
    }

    private void sensitivities() {
        lines.add("");
        Sensitivities s = study.sensitivities().get(0);
        if (s.without().isPresent()) {
            lines.add("No shares of variance: " + s.without().get() + ".");
        } else {
            lines.add("Leading sensitivities with the " + s.lamp()
                    + " lamp, as shares of variance ± 1.96 standard errors (" + count(Sensitivities.BASE) + " base");
            lines.add("scenarios, drawn apart"
                    + (s.leftOut() == 0
                            ? ""
                            : "; " + count(s.leftOut())
                                    + " of them left out, because they or a mixture of two are impossible")
                    + "):");
            lines.add(
                    shares("contact", "alone", "total") + "   " + shares("closing speed, 0 without", "alone", "total"));
            for (int i = 0; i < Math.min(LEADING, s.contact().size()); i++) {
                lines.add(index(s.contact().get(i)) + "   "
                        + index(s.closingSpeed().get(i)));
            }
        }
        lines.addAll(Text.wrapped(
                "",
                "Contact probability with one axis held at " + s.heldAt() + ", the others drawn"
                        + (study.plan().plan().correlations().isEmpty()
                                ? ":"
                                : ", one that is correlated with it given the held value:")));
        s.swings().stream()
                .limit(LEADING)
                .forEach(swing -> lines.add(String.format(
                        Locale.ROOT,
                        "  %-26s %9s to %-9s  %7s to %s",
                        swing.column(),
                        Text.digits(swing.low()),
                        Text.digits(swing.high()),
                        percent(swing.atLow().value()),
                        percent(swing.atHigh().value()))));
    }

    private static String index(SobolIndices.Index i) {
        return shares(i.column(), share(i.first(), i.firstStandardError()), share(i.total(), i.totalStandardError()));
    }

    private static String share(double value, double standardError) {
        return Numbers.fixed(100 * value, 1) + " ± " + Numbers.fixed(100 * WHISKER * standardError, 1) + " %";
    }

    private static String shares(String name, String first, String total) {
        return String.format(Locale.ROOT, "  %-24s %12s %12s", name, first, total);
    }

    private void gapIntegrated() {
        study.gapIntegrated().ifPresent(integrated -> {
            lines.add("");
            lines.add("The same with the gap integrated out instead of drawn, over " + count(integrated.draws())
                    + " independent draws of the other axes:");
            for (String lamp : study.lamps()) {
                lines.add(integrated(
                        lamp,
                        integrated.tally().contactProbability(lamp),
                        integrated.tally().contactInterval(lamp, SweepStudy.CONFIDENCE)));
            }
            String first = study.reference();
            study.others()
                    .forEach(other -> lines.add(integrated(
                            first + " less " + other,
                            integrated.tally().difference(first, other),
                            integrated.tally().differenceInterval(first, other, SweepStudy.CONFIDENCE))));
        });
    }

    private static String integrated(String name, Moments p, Interval interval) {
        return String.format(Locale.ROOT, "  %-27s %12s  %s", name, percent(p.mean()), percent(interval));
    }

    private void convergence() {
        lines.add("");
        boolean intervals = study.samplingError() != SamplingError.NONE;
        lines.add("Convergence of the contact probability" + (intervals ? " (95 % interval), " : ", ")
                + String.join(" and ", study.lamps()) + ":");
        for (PairTally.TracePoint point : study.tally().trace()) {
            lines.add(String.format(
                    Locale.ROOT,
                    "  %14s  %s",
                    count(point.scenarios()),
                    point.contactProbability().stream()
                            .map(p -> percent(p.value())
                                    + (intervals ? " (" + percent(p.wilson(SweepStudy.CONFIDENCE)) + ")" : ""))
                            .collect(Collectors.joining("   "))));
        }
    }

    private void foundations() {
        lines.add("");
        lines.add("What it rests on:");
        study.plan().pairModel().assumptions().stream().skip(2).forEach(text -> lines.addAll(Text.wrapped("  ", text)));
        study.plan().notes().forEach(note -> lines.addAll(Text.wrapped("  ", note)));
        SweepOutcome outcome = study.outcome();
        lines.add("");
        lines.add(
                outcome.rowsWritten() == 0
                        ? "No single scenarios are in files; --rows N or --rows all writes them."
                        : "Statistics are over all scenarios; the first " + count(outcome.rowsWritten())
                                + " of them are in "
                                + (outcome.partNames().size() == 1
                                        ? outcome.partNames().get(0)
                                        : outcome.partNames().size() + " part files")
                                + ".");
        lines.add("Lamp law, type approval, hot load resistors, fuses: local codes and licensed practice come first.");
    }

    static String count(long count) {
        return String.format(Locale.ROOT, "%,d", count);
    }

    static String percent(double ratio) {
        return figure(ratio) + " %";
    }

    static String percent(Interval interval) {
        return figure(interval.lo()) + " to " + percent(interval.hi());
    }

    /** Rounds large shares to a hundredth of a per cent and keeps the leading digits of small ones. */
    private static String figure(double ratio) {
        return Math.abs(ratio) >= SMALL
                ? Numbers.fixed(100 * ratio, DECIMALS)
                : Numbers.text(100 * ratio, DECIMALS + 1);
    }

    static String kmh(double speedMps) {
        return Numbers.fixed(speedMps * KMH, 1);
    }
}
