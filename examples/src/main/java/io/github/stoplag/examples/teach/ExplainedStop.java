package io.github.stoplag.examples.teach;

import io.github.stoplag.braking.PublishedRule;
import io.github.stoplag.driver.ReactionStudy;
import io.github.stoplag.examples.file.InputException;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.worked.Amount;
import io.github.stoplag.worked.Given;
import io.github.stoplag.worked.Solution;
import io.github.stoplag.worked.Style;
import io.github.stoplag.worked.Unit;
import io.github.stoplag.worked.WorkedBraking;
import io.github.stoplag.worked.WorkedDriver;
import io.github.stoplag.worked.WorkedRoad;
import io.github.stoplag.worked.WorkedRule;
import io.github.stoplag.worked.WorkedStop;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;

/** Questions on one vehicle. */
final class ExplainedStop {
    private static final String SURPRISED = "green-2000-surprise";
    private static final MathContext DIGITS = new MathContext(6);

    private ExplainedStop() {}

    static Solution stop(QuestionParts parts, Style style) {
        Solution worked = stopping(parts, style);
        parts.find(Slot.ROOM).ifPresent(room -> {
            double overM =
                    worked.answer().carried().in(Unit.METRE) - room.amount().in(Unit.METRE);
            Unit unit = worked.answer().carried().unit();
            String by = Numbers.fixed(Amount.of(Math.abs(overM), Unit.METRE).in(unit), 1) + " " + unit.symbol();
            parts.assumeFirst(
                    overM > 0
                            ? "the room asked about, " + room.amount() + ", is too short, by " + by
                                    + "; how fast the vehicle is there: ask impact speed with the reaction time"
                            : "the room asked about, " + room.amount() + ", is enough, with " + by + " to spare");
        });
        return worked;
    }

    private static Solution stopping(QuestionParts parts, Style style) {
        Given speed = parts.need(Slot.SPEED);
        Given reaction = reaction(parts, Slot.REACTION);
        oneRoad(parts, Slot.DECELERATION);
        Optional<Given> deceleration = parts.find(Slot.DECELERATION);
        Optional<Given> buildUp = parts.find(Slot.BUILD_UP);
        if (deceleration.isEmpty() && buildUp.isEmpty()) {
            Given friction = friction(parts);
            Given grade = grade(parts);
            holds(friction, grade);
            return WorkedStop.stoppingOnRoad(style, speed, reaction, friction, grade);
        }
        Given braking = deceleration(parts, Slot.DECELERATION);
        buildUp.ifPresent(time -> outlasts(speed, braking, time));
        return buildUp.isPresent()
                ? WorkedStop.stoppingDistance(style, speed, reaction, buildUp.get(), braking)
                : WorkedStop.stoppingDistance(style, speed, reaction, braking);
    }

    static Solution brake(QuestionParts parts, Style style) {
        oneRoad(parts, Slot.DECELERATION);
        return WorkedStop.brakingDistance(style, parts.need(Slot.SPEED), deceleration(parts, Slot.DECELERATION));
    }

    static Solution brakingTime(QuestionParts parts, Style style) {
        oneRoad(parts, Slot.DECELERATION);
        Given speed = parts.need(Slot.SPEED);
        Given braking = deceleration(parts, Slot.DECELERATION);
        Optional<Given> reaction = parts.find(Slot.REACTION);
        if (reaction.isEmpty()) {
            parts.assume("counted from the brakes on; write reaction 1.5 s to count the driver's reaction too");
        }
        return reaction.map(time -> WorkedBraking.stoppingTime(style, speed, time, braking))
                .orElseGet(() -> WorkedBraking.brakingTime(style, speed, braking));
    }

    /** The speed left after a distance; with a reaction time only what is left of the distance is braked over. */
    static Solution speedLeft(QuestionParts parts, Style style) {
        oneRoad(parts, Slot.DECELERATION);
        Given speed = parts.need(Slot.SPEED);
        Given distance = parts.need(Slot.BRAKING_DISTANCE);
        Given braking = deceleration(parts, Slot.DECELERATION);
        Optional<Given> reaction = parts.find(Slot.REACTION_NAMED);
        if (reaction.isEmpty()) {
            parts.assume("the whole distance is braked over, the driver's reaction lies before it");
            return left(style, speed, braking, distance);
        }
        double leftM = distance.amount().in(Unit.METRE)
                - speed.amount().in(Unit.MPS) * reaction.get().amount().in(Unit.SECOND);
        if (!(leftM > 0)) {
            throw new InputException("the whole distance of " + distance.amount()
                    + " is gone within the reaction time: the vehicle arrives with its full " + speed.amount());
        }
        Unit length = distance.amount().unit();
        double left = new BigDecimal(
                        Unit.METRE.equals(length)
                                ? leftM
                                : leftM / Amount.of(1, length).in(Unit.METRE))
                .round(DIGITS)
                .doubleValue();
        String from = distance.amount() + " less " + reaction.get().amount() + " at " + speed.amount();
        return left(style, speed, braking, Given.of(left, length, from));
    }

    private static Solution left(Style style, Given speed, Given braking, Given distance) {
        double mps = speed.amount().in(Unit.MPS);
        double neededM = mps * mps / (2 * braking.amount().in(Unit.MPS2));
        if (neededM <= distance.amount().in(Unit.METRE)) {
            throw new InputException("no speed is left: the vehicle stops within " + Numbers.fixed(neededM, 1)
                    + " m of braking, which is no more than " + distance.amount());
        }
        return WorkedBraking.speedLeft(style, speed, braking, distance);
    }

    static Solution dragFactor(QuestionParts parts, Style style) {
        return WorkedBraking.dragFactor(style, parts.need(Slot.SPEED), parts.need(Slot.BRAKING_DISTANCE));
    }

    static Solution uncertainty(QuestionParts parts, Style style) {
        if (parts.spread(Slot.SPEED).isEmpty()
                && parts.spread(Slot.REACTION).isEmpty()
                && parts.spread(Slot.DECELERATION).isEmpty()) {
            throw new InputException("uncertainty needs the standard uncertainty of a number, written like 60 ± 2 mph");
        }
        parts.assume("coverage factor 2: about 95 % of the values, if they are normally distributed");
        return WorkedDriver.uncertainty(
                style,
                uncertain(parts, Slot.SPEED, parts.need(Slot.SPEED)),
                uncertain(parts, Slot.REACTION, reaction(parts, Slot.REACTION)),
                uncertain(parts, Slot.DECELERATION, parts.need(Slot.DECELERATION)),
                2);
    }

    private static WorkedDriver.Uncertain uncertain(QuestionParts parts, Slot slot, Given value) {
        return new WorkedDriver.Uncertain(value, parts.spread(slot).orElseGet(() -> {
            parts.assume("no uncertainty of the " + slot.name() + " given: left out");
            return Given.of(0, value.amount().unit(), "left out");
        }));
    }

    static Solution hydroplane(QuestionParts parts, Style style) {
        return WorkedRoad.hydroplaning(style, parts.need(Slot.PRESSURE));
    }

    static Solution react(QuestionParts parts, Style style) {
        return WorkedStop.reactionDistance(style, parts.need(Slot.SPEED), reaction(parts, Slot.REACTION));
    }

    static Solution skid(QuestionParts parts, Style style) {
        parts.onlyOne("friction", Slot.FRICTION);
        Given friction = friction(parts);
        Given grade = grade(parts);
        holds(friction, grade);
        return WorkedStop.skidSpeed(style, parts.need(Slot.MARKS), friction, grade);
    }

    static Solution energy(QuestionParts parts, Style style) {
        return WorkedBraking.kineticEnergy(style, parts.need(Slot.MASS), parts.need(Slot.SPEED));
    }

    static Solution deceleration(QuestionParts parts, Style style) {
        parts.onlyOne("distance or time", Slot.BRAKING_DISTANCE, Slot.BRAKING_TIME);
        Given speed = parts.need(Slot.SPEED);
        return parts.find(Slot.BRAKING_TIME)
                .map(time -> WorkedBraking.decelerationFromTime(style, speed, time))
                .orElseGet(
                        () -> WorkedBraking.decelerationFromDistance(style, speed, parts.need(Slot.BRAKING_DISTANCE)));
    }

    static Solution rule(QuestionParts parts, Style style) {
        String key = parts.named().orElseThrow(() -> parts.missing("the key of a rule"));
        Given speed = parts.need(Slot.SPEED);
        // this rule is printed in feet and, rounded part by part, in metres
        return key.equals("uk-highway-code")
                ? WorkedRule.highwayCode(style, speed)
                : WorkedRule.published(style, PublishedRule.published(key), speed);
    }

    static Given reaction(QuestionParts parts, Slot slot) {
        ReactionStudy study = ReactionStudy.published(SURPRISED);
        return parts.orAssume(
                slot,
                Given.of(study.central().inSeconds(), Unit.SECOND),
                study.situation() + ", " + study.source().document() + ", "
                        + study.source().standing() + "; one driver differs from another");
    }

    static Given grade(QuestionParts parts) {
        return parts.orAssume(Slot.GRADE, Given.of(0, Unit.PERCENT), "a level road");
    }

    static Given friction(QuestionParts parts) {
        Optional<Given> stated = parts.find(Slot.FRICTION);
        if (stated.isPresent()) {
            return stated.get();
        }
        RoadWords road = parts.road()
                .or(() -> assumedRoad(parts))
                .orElseThrow(() -> parts.missing("a surface ("
                        + String.join(", ", RoadWords.words()) + "), a friction coefficient (friction 0.5)"
                        + (parts.takes(Slot.DECELERATION) ? " or a deceleration (7 m/s²)" : "")));
        road.assumptions().forEach(parts::assume);
        return road.friction();
    }

    /** The road where none is stated; none where the friction is what the answer hangs on, as evidence does. */
    private static Optional<RoadWords> assumedRoad(QuestionParts parts) {
        if (!parts.mayAssumeRoad()) {
            return Optional.empty();
        }
        parts.assumeFirst("no surface given: dry asphalt assumed; a wet, snowy or icy road takes far longer, write wet"
                + " asphalt, snow or ice");
        return RoadWords.of("dry asphalt");
    }

    /** Refuses two statements about how hard the road lets one brake. */
    static void oneRoad(QuestionParts parts, Slot deceleration) {
        parts.onlyOne("friction, surface or deceleration", deceleration, Slot.FRICTION);
        if (parts.find(deceleration).isPresent() && parts.find(Slot.GRADE).isPresent()) {
            throw new InputException("a grade goes with a surface or a friction coefficient; a " + deceleration.name()
                    + " already holds it");
        }
    }

    /** Refuses a downgrade that no friction holds a vehicle on. */
    private static void holds(Given friction, Given grade) {
        if (!(friction.amount().in(Unit.NONE) + grade.amount().in(Unit.NONE) > 0)) {
            throw new InputException("the vehicle never stops: friction " + friction.amount()
                    + " does not outweigh the grade of " + grade.amount());
        }
    }

    /** Refuses a speed that is gone before the brakes are fully on. */
    private static void outlasts(Given speed, Given braking, Given buildUp) {
        double lostMps = braking.amount().in(Unit.MPS2) * buildUp.amount().in(Unit.SECOND) / 2;
        if (lostMps > 0 && !(speed.amount().in(Unit.MPS) > lostMps)) {
            throw new InputException("the vehicle stops before its brakes have built up: " + speed.amount()
                    + " is not above the " + Numbers.fixed(lostMps, 2) + " m/s lost within " + buildUp.amount()
                    + "; give a higher speed or a shorter build-up");
        }
    }

    /** The deceleration as stated, or that of all wheels on the friction and grade of the road. */
    static Given deceleration(QuestionParts parts, Slot slot) {
        Optional<Given> stated = parts.find(slot);
        if (stated.isPresent()) {
            return stated.get();
        }
        Given friction = friction(parts);
        Given grade = grade(parts);
        holds(friction, grade);
        double mu = friction.amount().in(Unit.NONE);
        double slope = grade.amount().in(Unit.NONE);
        double decelMps2 = Deceleration.STANDARD_GRAVITY_MPS2 * (mu + slope) / Math.sqrt(1 + slope * slope);
        double rounded = new BigDecimal(decelMps2).round(DIGITS).doubleValue();
        parts.assume("all wheels use the full friction");
        String formula = slope == 0
                ? Numbers.text(mu) + " × 9.80665 m/s²"
                : "9.80665 m/s² × (" + Numbers.text(mu) + (slope < 0 ? " − " : " + ") + Numbers.text(Math.abs(slope))
                        + ")/√(1 + " + Numbers.text(Math.abs(slope)) + "²)";
        return Given.of(rounded, Unit.MPS2, formula + "; friction " + friction.from());
    }
}
