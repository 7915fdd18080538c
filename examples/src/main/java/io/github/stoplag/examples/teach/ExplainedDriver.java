package io.github.stoplag.examples.teach;

import io.github.stoplag.driver.DriverResponse;
import io.github.stoplag.driver.LogNormalReaction;
import io.github.stoplag.driver.ReactionStudy;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.Solution;
import io.github.stoplag.worked.Style;
import io.github.stoplag.worked.Unit;
import io.github.stoplag.worked.WorkedDriver;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;

/** Questions on how drivers differ. */
final class ExplainedDriver {
    private static final String BRAKE_LAMPS = "sivak-1982";

    private ExplainedDriver() {}

    /** A percentile, of the drivers who respond or of all, those who never respond among them. */
    static Solution percentile(QuestionParts parts, Style style) {
        Given percentile = parts.need(Slot.PERCENTILE);
        boolean stated =
                parts.find(Slot.MEAN).isPresent() || parts.find(Slot.SD).isPresent();
        if (stated && parts.named().isPresent()) {
            throw new InputException("percentile takes a study, or mean and sd, not both");
        }
        if (stated) {
            return worked(parts, style, parts.need(Slot.MEAN), parts.need(Slot.SD), percentile, Optional.empty());
        }
        String name = parts.named().orElseGet(() -> {
            parts.assume("no study given: " + BRAKE_LAMPS + " taken, drivers behind a braking car");
            return BRAKE_LAMPS;
        });
        ReactionStudy study = ReactionStudy.published(name);
        LogNormalReaction reaction = logNormal(study)
                .orElseThrow(() ->
                        new InputException("study " + study.id() + " gives no log-normal distribution; those that do: "
                                + String.join(", ", logNormalStudies())));
        study.caveats().forEach(caveat -> parts.assume(caveat.text()));
        String from = study.situation() + ": " + study.source();
        double share = study.response().map(DriverResponse::respondingShare).orElse(1.0);
        Optional<Given> responding = share < 1 ? Optional.of(percent(share, from)) : Optional.empty();
        return worked(
                parts,
                style,
                time(reaction.mean().inSeconds(), from),
                time(reaction.standardDeviation().inSeconds(), from),
                percentile,
                responding);
    }

    static Solution ruler(QuestionParts parts, Style style) {
        return WorkedDriver.rulerDrop(style, parts.need(Slot.DROP));
    }

    private static Solution worked(
            QuestionParts parts, Style style, Given mean, Given sd, Given percentile, Optional<Given> study) {
        Optional<Given> responding = parts.find(Slot.RESPONDING).or(() -> study);
        if (parts.isOfAll()) {
            return WorkedDriver.percentileOfAll(
                    style,
                    mean,
                    sd,
                    percentile,
                    responding.orElse(Given.of(100, Unit.PERCENT, "no other share known")));
        }
        responding.ifPresent(share -> {
            double ofAll = percentile.amount().in(Unit.PERCENT) * share.amount().in(Unit.NONE);
            parts.assume("only " + share.amount() + " of the drivers responded (" + share.from() + "): "
                    + percentile.amount() + " of those are " + Numbers.fixed(ofAll, 1)
                    + " % of all; write \"of all drivers\" to ask for a percentile of all");
        });
        return WorkedDriver.percentile(style, mean, sd, percentile);
    }

    private static Given percent(double ratio, String from) {
        return Given.of(new BigDecimal(100 * ratio).round(new MathContext(4)).doubleValue(), Unit.PERCENT, from);
    }

    private static Given time(double seconds, String from) {
        return Given.of(new BigDecimal(seconds).round(new MathContext(4)).doubleValue(), Unit.SECOND, from);
    }

    private static Optional<LogNormalReaction> logNormal(ReactionStudy study) {
        return study.response()
                .map(DriverResponse::reaction)
                .filter(LogNormalReaction.class::isInstance)
                .map(LogNormalReaction.class::cast);
    }

    private static List<String> logNormalStudies() {
        return ReactionStudy.published().stream()
                .filter(study -> logNormal(study).isPresent())
                .map(ReactionStudy::id)
                .toList();
    }
}
