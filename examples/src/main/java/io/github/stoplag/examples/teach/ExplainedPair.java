package io.github.stoplag.examples.teach;

import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.Solution;
import io.github.stoplag.worked.Style;
import io.github.stoplag.worked.Unit;
import io.github.stoplag.worked.WorkedChain;
import io.github.stoplag.worked.WorkedGap;
import io.github.stoplag.worked.WorkedPair;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** Questions on two vehicles and on chains of them. */
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
        return gap(parts, pair.followerSpeed())
                .map(gap -> pair.outcome(style, gap))
                .orElseGet(() -> pair.gapNeeded(style));
    }

    private static Given own(QuestionParts parts, Slot own, Slot both) {
        return parts.find(own).or(() -> parts.find(both)).orElseGet(() -> asTheOther(parts, own));
    }

    /** "2 s behind a car at 60 mph": the other is as fast. */
    private static Given asTheOther(QuestionParts parts, Slot own) {
        Slot other = own.equals(Slot.LEADER_SPEED) ? Slot.FOLLOWER_SPEED : Slot.LEADER_SPEED;
        Given speed = parts.takes(other) && parts.find(other).isPresent() && !parts.takes(Slot.CLOSING)
                ? parts.need(other)
                : parts.need(Slot.SPEED);
        return parts.orAssume(own, speed, "both are equally fast");
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

    /** The gap as a length; a time gap is that of the follower's speed. */
    private static Optional<Given> gap(QuestionParts parts, Given speed) {
        Optional<Given> time = parts.find(Slot.TIME_GAP);
        if (time.isPresent() && parts.find(Slot.GAP).isPresent()) {
            throw new InputException("one gap in metres or in seconds, got "
                    + parts.need(Slot.GAP).amount() + " and " + time.get().amount());
        }
        return time.map(each -> {
                    double metres = speed.amount().in(Unit.MPS) * each.amount().in(Unit.SECOND);
                    return Given.of(
                            new BigDecimal(metres).round(new MathContext(6)).doubleValue(),
                            Unit.METRE,
                            "time gap " + each.amount() + " at " + speed.amount());
                })
                .or(() -> parts.find(Slot.GAP));
    }

    static Solution gapLength(QuestionParts parts, Style style) {
        return WorkedGap.ofTime(style, parts.need(Slot.SPEED), parts.need(Slot.TIME_GAP_BARE));
    }

    static Solution gapTime(QuestionParts parts, Style style) {
        return WorkedGap.inTime(style, parts.need(Slot.SPEED), parts.need(Slot.GAP));
    }

    static Solution collision(QuestionParts parts, Style style) {
        Given gap = parts.need(Slot.GAP);
        Optional<Given> closing = parts.find(Slot.CLOSING);
        if (closing.isPresent()) {
            parts.onlyOne("closing speed or pair of speeds", Slot.CLOSING, Slot.SPEED, Slot.LEADER_SPEED);
            parts.assume("the closing speed is that of the follower seen from the leader");
            return WorkedGap.timeToCollision(style, closing.get(), Given.of(0, Unit.MPS, "seen from itself"), gap);
        }
        return WorkedGap.timeToCollision(
                style, own(parts, Slot.FOLLOWER_SPEED, Slot.SPEED), parts.need(Slot.LEADER_SPEED), gap);
    }

    /** A chain of equal vehicles, equally far apart. */
    static Solution chain(QuestionParts parts, Style style) {
        Given count = parts.need(Slot.VEHICLES);
        double vehicles = count.amount().number().doubleValue();
        if (!(vehicles >= 2 && vehicles <= 20 && vehicles == Math.rint(vehicles))) {
            throw new InputException("a chain has 2 to 20 vehicles, got " + count.amount());
        }
        Given speed = parts.need(Slot.SPEED);
        Given reaction = ExplainedStop.reaction(parts, Slot.REACTION_NAMED);
        Given lamp = parts.orAssume(Slot.LAMP, Given.of(0, Unit.SECOND), "lamps that light at once");
        ExplainedStop.oneRoad(parts, Slot.DECELERATION);
        Optional<Given> gap = gap(parts, speed);
        boolean brakes = parts.road().isPresent()
                || parts.find(Slot.DECELERATION).isPresent()
                || parts.find(Slot.FRICTION).isPresent();
        Given deceleration = gap.isPresent() || brakes
                ? ExplainedStop.deceleration(parts, Slot.DECELERATION)
                : Given.of(5, Unit.MPS2, "does not enter");
        WorkedChain.Vehicle vehicle = new WorkedChain.Vehicle(
                deceleration, reaction, lamp, gap.orElse(Given.of(0, Unit.METRE, "does not enter")));
        WorkedChain chain = new WorkedChain(speed, Collections.nCopies((int) vehicles, vehicle));
        parts.assume("all vehicles are alike and equally far apart, and all drivers react alike");
        return gap.isPresent() ? chain.tightest(style) : chain.pedalTime(style, (int) vehicles);
    }
}
