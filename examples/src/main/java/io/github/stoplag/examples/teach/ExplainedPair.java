package io.github.stoplag.examples.teach;

import io.github.stoplag.driver.DriverResponse;
import io.github.stoplag.driver.LogNormalReaction;
import io.github.stoplag.driver.ReactionStudy;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.Solution;
import io.github.stoplag.worked.Style;
import io.github.stoplag.worked.Unit;
import io.github.stoplag.worked.WorkedDriver;
import io.github.stoplag.worked.WorkedPair;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Questions on two vehicles and on drivers. */
final class ExplainedPair {
    private ExplainedPair() {}

    static Solution follow(QuestionParts parts, Style style) {
        WorkedPair pair = new WorkedPair(
                own(parts, Slot.LEADER_SPEED, Slot.SPEED),
                deceleration(parts, Slot.LEADER_DECELERATION),
                own(parts, Slot.FOLLOWER_SPEED, Slot.SPEED),
                deceleration(parts, Slot.FOLLOWER_DECELERATION),
                delay(parts));
        unused(parts, Slot.SPEED, Slot.LEADER_SPEED, Slot.FOLLOWER_SPEED);
        unused(parts, Slot.DECELERATION, Slot.LEADER_DECELERATION, Slot.FOLLOWER_DECELERATION);
        return parts.find(Slot.GAP).map(gap -> pair.outcome(style, gap)).orElseGet(() -> pair.gapNeeded(style));
    }

    private static Given own(QuestionParts parts, Slot own, Slot both) {
        return parts.find(own).orElseGet(() -> parts.need(both));
    }

    private static Given deceleration(QuestionParts parts, Slot own) {
        Optional<Given> stated = parts.find(own);
        boolean ofBoth = parts.find(Slot.LEADER_DECELERATION).isPresent()
                && parts.find(Slot.FOLLOWER_DECELERATION).isPresent();
        ExplainedStop.oneRoad(parts, ofBoth ? own : Slot.DECELERATION);
        return stated.orElseGet(() -> ExplainedStop.deceleration(parts, Slot.DECELERATION));
    }

    /** Refuses a value for both where each has its own. */
    private static void unused(QuestionParts parts, Slot both, Slot leader, Slot follower) {
        if (parts.find(both).isPresent()
                && parts.find(leader).isPresent()
                && parts.find(follower).isPresent()) {
            throw new InputException("follow has a " + leader.name() + " and a " + follower.name() + ", and a "
                    + both.name() + " for both besides; leave one out");
        }
    }

    /** What passes between the brakes of the two: the lamp, the driver, the brakes behind. */
    private static Given delay(QuestionParts parts) {
        Given reaction = ExplainedStop.reaction(parts, Slot.REACTION);
        BigDecimal seconds = seconds(reaction);
        List<String> sum = new ArrayList<>();
        for (Slot slot : List.of(Slot.LAMP, Slot.BRAKES)) {
            Optional<Given> stated = parts.find(slot);
            if (stated.isPresent()) {
                seconds = seconds.add(seconds(stated.get()));
                sum.add(slot.name() + " " + stated.get().amount());
            } else {
                parts.assume("no " + slot.name() + " given: left out");
            }
        }
        sum.add("reaction time " + reaction.amount());
        return Given.of(seconds.doubleValue(), Unit.SECOND, String.join(" + ", sum));
    }

    private static BigDecimal seconds(Given given) {
        return BigDecimal.valueOf(given.amount().in(Unit.SECOND));
    }

    static Solution percentile(QuestionParts parts, Style style) {
        Given percentile = parts.need(Slot.PERCENTILE);
        if (parts.named().isEmpty()) {
            return WorkedDriver.percentile(style, parts.need(Slot.MEAN), parts.need(Slot.SD), percentile);
        }
        if (parts.find(Slot.MEAN).isPresent() || parts.find(Slot.SD).isPresent()) {
            throw new InputException("percentile takes a study, or mean and sd, not both");
        }
        ReactionStudy study = ReactionStudy.published(parts.named().get());
        Optional<LogNormalReaction> logNormal = study.response()
                .map(DriverResponse::reaction)
                .filter(LogNormalReaction.class::isInstance)
                .map(LogNormalReaction.class::cast);
        LogNormalReaction reaction = logNormal.orElseThrow(() -> new InputException("study " + study.id()
                + " gives no log-normal distribution; those that do: " + String.join(", ", logNormalStudies())));
        study.caveats().forEach(caveat -> parts.assume(caveat.text()));
        String from = study.situation() + ": " + study.source();
        return WorkedDriver.percentile(
                style,
                time(reaction.mean().inSeconds(), from),
                time(reaction.standardDeviation().inSeconds(), from),
                percentile);
    }

    private static Given time(double seconds, String from) {
        return Given.of(new BigDecimal(seconds).round(new MathContext(4)).doubleValue(), Unit.SECOND, from);
    }

    private static List<String> logNormalStudies() {
        return ReactionStudy.published().stream()
                .filter(study -> study.response()
                        .filter(response -> response.reaction() instanceof LogNormalReaction)
                        .isPresent())
                .map(ReactionStudy::id)
                .toList();
    }
}
