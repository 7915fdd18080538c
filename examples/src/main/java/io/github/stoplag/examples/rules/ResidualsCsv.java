package io.github.stoplag.examples.rules;

import io.github.stoplag.braking.PublishedRow;
import io.github.stoplag.braking.PublishedRule;
import io.github.stoplag.braking.Residual;
import io.github.stoplag.examples.file.CsvText;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Source;
import io.github.stoplag.source.Standing;
import java.util.List;

/** The table of residuals: a row for each printed figure; why one differs stands behind its source. */
final class ResidualsCsv {
    static final List<String> HEADER =
            List.of("rule", "case", "published", "computed", "unit", "residual", "standing", "source");
    private static final int DIGITS = 9;
    // conversions between feet and metres leave less than this
    private static final double DUST = 1e-9;

    private ResidualsCsv() {}

    static String of(List<RuleResiduals> rules) {
        return CsvText.of(
                HEADER,
                rules.stream()
                        .flatMap(rule -> rule.residuals().stream().map(residual -> fields(rule.rule(), residual))));
    }

    private static List<String> fields(PublishedRule rule, Residual residual) {
        PublishedRow row = residual.row();
        return List.of(
                rule.key(),
                row.condition(),
                row.printed(),
                Numbers.text(residual.computed(), DIGITS),
                row.unit(),
                Math.abs(residual.value()) < DUST ? "0" : Numbers.text(residual.value(), DIGITS),
                row.source().standing().toString(),
                source(row.source()) + (row.note().isEmpty() ? "" : "; note: " + row.note()) + derived(rule));
    }

    /** A rule worked out from printed figures is no check of them, which its rows must say. */
    private static String derived(PublishedRule rule) {
        return rule.rule().source().standing() == Standing.DERIVED
                ? "; the rule is derived from printed figures" + (rule.note().isEmpty() ? "" : ": " + rule.note())
                : "";
    }

    static String source(Source source) {
        return source.document() + (source.place().isEmpty() ? "" : ", " + source.place());
    }
}
