package io.github.stoplag.examples.teach;

import io.github.stoplag.worked.Solution;
import io.github.stoplag.worked.Style;
import java.util.List;
import java.util.function.BiFunction;

/** What can be asked: the words a question that is sure to be understood begins with, and the parts it takes. */
@SuppressWarnings("ImmutableEnumChecker") // the list is a copy and the function holds no state
enum QuestionKind {
    STOP(
            "stop",
            "stopping distance",
            "stop from 60 mph, 1.5 s, wet asphalt, 3 % down",
            Names.ROAD,
            ExplainedStop::stop,
            Slot.SPEED,
            Slot.REACTION,
            Slot.DECELERATION,
            Slot.FRICTION,
            Slot.GRADE,
            Slot.BUILD_UP,
            Slot.ROOM),
    BRAKE(
            "brake",
            "braking distance",
            "brake from 100 km/h, 7 m/s²",
            Names.ROAD,
            ExplainedStop::brake,
            Slot.SPEED,
            Slot.DECELERATION,
            Slot.FRICTION,
            Slot.GRADE),
    BRAKING_TIME(
            "braking time",
            "time to rest: from the brakes on, or with a reaction time from the event on",
            "braking time from 60 mph, dry asphalt",
            Names.ROAD,
            ExplainedStop::brakingTime,
            Slot.SPEED,
            Slot.REACTION,
            Slot.DECELERATION,
            Slot.FRICTION,
            Slot.GRADE),
    REACT(
            "react",
            "reaction distance",
            "react at 50 km/h, 1.5 s",
            Names.NONE,
            ExplainedStop::react,
            Slot.SPEED,
            Slot.REACTION),
    SKID(
            "skid",
            "speed from skid marks",
            "skid 25 m, dry asphalt",
            Names.ROAD,
            ExplainedStop::skid,
            Slot.MARKS,
            Slot.FRICTION,
            Slot.GRADE),
    SPEED_LEFT(
            "impact speed",
            "speed left after a distance of braking",
            "impact speed from 60 km/h, 20 m, dry asphalt",
            Names.ROAD,
            ExplainedStop::speedLeft,
            Slot.SPEED,
            Slot.BRAKING_DISTANCE,
            Slot.REACTION_NAMED,
            Slot.DECELERATION,
            Slot.FRICTION,
            Slot.GRADE),
    DECELERATION(
            "deceleration",
            "mean deceleration of a measured stop",
            "deceleration 60 mph, 140 ft",
            Names.NONE,
            ExplainedStop::deceleration,
            Slot.SPEED,
            Slot.BRAKING_DISTANCE,
            Slot.BRAKING_TIME),
    DRAG_FACTOR(
            "drag factor from",
            "drag factor of a measured stop",
            "drag factor from 30 mph, 45 ft",
            Names.NONE,
            ExplainedStop::dragFactor,
            Slot.SPEED,
            Slot.BRAKING_DISTANCE),
    FOLLOW(
            "follow",
            "what becomes of a gap behind a braking vehicle; without one, the gap needed",
            "follow at 60 mph, gap 2 s, lamp 0.2 s, wet asphalt",
            Names.ROAD,
            ExplainedPair::follow,
            Slot.SPEED,
            Slot.LEADER_SPEED,
            Slot.FOLLOWER_SPEED,
            Slot.REACTION,
            Slot.LAMP,
            Slot.BRAKES,
            Slot.GAP,
            Slot.TIME_GAP,
            Slot.DECELERATION,
            Slot.LEADER_DECELERATION,
            Slot.FOLLOWER_DECELERATION,
            Slot.FRICTION,
            Slot.GRADE),
    NEED(
            "gap needed",
            "gap needed behind a braking vehicle",
            "gap needed at 60 mph, 1.5 s, wet asphalt",
            Names.ROAD,
            ExplainedPair::follow,
            Slot.SPEED,
            Slot.LEADER_SPEED,
            Slot.FOLLOWER_SPEED,
            Slot.REACTION,
            Slot.LAMP,
            Slot.BRAKES,
            Slot.DECELERATION,
            Slot.LEADER_DECELERATION,
            Slot.FOLLOWER_DECELERATION,
            Slot.FRICTION,
            Slot.GRADE),
    GAP_LENGTH(
            "gap length",
            "length of a time gap",
            "gap length 2 s at 70 mph",
            Names.NONE,
            ExplainedPair::gapLength,
            Slot.TIME_GAP_BARE,
            Slot.SPEED),
    GAP_TIME(
            "gap in seconds",
            "time gap of a distance",
            "gap in seconds 30 m at 100 km/h",
            Names.NONE,
            ExplainedPair::gapTime,
            Slot.GAP,
            Slot.SPEED),
    CHAIN(
            "chain",
            "when the last of a chain brakes; with a gap, the tightest place",
            "chain of 5 cars at 100 km/h, gap 40 m, wet asphalt",
            Names.ROAD,
            ExplainedPair::chain,
            Slot.VEHICLES,
            Slot.SPEED,
            Slot.REACTION_NAMED,
            Slot.LAMP,
            Slot.GAP,
            Slot.TIME_GAP,
            Slot.DECELERATION,
            Slot.FRICTION,
            Slot.GRADE),
    COLLISION(
            "time to collision",
            "time to collision at constant speeds",
            "time to collision 30 m, 60 mph, leader 40 mph",
            Names.STILL,
            ExplainedPair::collision,
            Slot.GAP,
            Slot.SPEED,
            Slot.LEADER_SPEED,
            Slot.FOLLOWER_SPEED,
            Slot.CLOSING),
    UNCERTAINTY(
            "uncertainty",
            "uncertainty of a stopping distance",
            "uncertainty 100 ± 3 km/h, 1.5 ± 0.3 s, 7 ± 0.5 m/s²",
            Names.NONE,
            ExplainedStop::uncertainty,
            Slot.SPEED,
            Slot.REACTION,
            Slot.DECELERATION),
    HYDROPLANE(
            "hydroplane",
            "speed from which a tyre rides on deep water",
            "hydroplane 32 psi",
            Names.NONE,
            ExplainedStop::hydroplane,
            Slot.PRESSURE),
    PERCENTILE(
            "percentile",
            "percentile of a log-normal reaction time",
            "percentile 85 %, study sivak-1982",
            Names.STUDY,
            ExplainedDriver::percentile,
            Slot.PERCENTILE,
            Slot.MEAN,
            Slot.SD,
            Slot.RESPONDING),
    RULER("ruler", "reaction time from a falling ruler", "ruler 20 cm", Names.NONE, ExplainedDriver::ruler, Slot.DROP),
    ENERGY(
            "energy",
            "energy that a stop turns to heat",
            "energy 1500 kg, 100 km/h",
            Names.NONE,
            ExplainedStop::energy,
            Slot.MASS,
            Slot.SPEED),
    WARM(
            "warm",
            "time until a filament lamp gives a share of its light",
            "warm 21 W at 13.5 V, level 50 %",
            Names.BULB,
            ExplainedLamp::warm,
            Slot.BULB,
            Slot.RATED,
            Slot.SUPPLY_OF_LAMP,
            Slot.SERIES,
            Slot.LEVEL),
    OFF(
            "off",
            "time until a filament lamp has lost a share of its light",
            "off 21 W at 13.5 V, level 10 %",
            Names.BULB,
            ExplainedLamp::off,
            Slot.BULB,
            Slot.RATED,
            Slot.LEVEL),
    LAG(
            "lag",
            "distance that a lamp's lag adds",
            "lag 0.2 s at 100 km/h",
            Names.BULB,
            ExplainedLamp::lag,
            Slot.LAG,
            Slot.SPEED,
            Slot.REACTION_NAMED,
            Slot.BULB,
            Slot.RATED,
            Slot.SUPPLY_OF_LAMP,
            Slot.LEVEL_NAMED),
    RESISTOR(
            "resistor",
            "largest load resistor that satisfies an outage monitor",
            "resistor 21 W at 13.5 V",
            Names.BULB,
            ExplainedCircuit::resistor,
            Slot.BULB,
            Slot.RATED,
            Slot.SUPPLY,
            Slot.HEALTHY,
            Slot.LED,
            Slot.TOLERANCE),
    HEAT(
            "heat",
            "surface temperature of a load resistor",
            "heat 10 ohm, 14.5 V, 6 K/W, 40 °C",
            Names.NONE,
            ExplainedCircuit::heat,
            Slot.RESISTANCE,
            Slot.VOLTAGE,
            Slot.THERMAL,
            Slot.AMBIENT,
            Slot.TOLERANCE),
    DIODE(
            "diode",
            "junction temperature of an isolating diode",
            "diode 0.8 V, 2 A, 40 K/W, 40 °C",
            Names.NONE,
            ExplainedCircuit::diode,
            Slot.FORWARD,
            Slot.CURRENT,
            Slot.THERMAL,
            Slot.AMBIENT),
    RULE(
            "rule",
            "stopping distance of a published rule",
            "rule uk-highway-code, 40 mph",
            Names.RULE,
            ExplainedStop::rule,
            Slot.SPEED);

    /** What a part without a number names. */
    enum Names {
        NONE,
        ROAD,
        STUDY,
        RULE,
        BULB,
        STILL
    }

    private final String word;
    private final String answers;
    private final String example;
    private final Names names;
    private final BiFunction<QuestionParts, Style, Solution> working;
    private final List<Slot> slots;

    QuestionKind(
            String word,
            String answers,
            String example,
            Names names,
            BiFunction<QuestionParts, Style, Solution> working,
            Slot... slots) {
        this.word = word;
        this.answers = answers;
        this.example = example;
        this.names = names;
        this.working = working;
        this.slots = List.of(slots);
    }

    /** Whether a piece is the word with which a question of this kind that is sure to be understood begins. */
    boolean isWordedBy(QuestionText.Token token) {
        return token instanceof QuestionText.Word first && first.text().equalsIgnoreCase(word);
    }

    /** Whether its numbers have uncertainties. */
    boolean isUncertain() {
        return this == UNCERTAINTY;
    }

    String word() {
        return word;
    }

    String answers() {
        return answers;
    }

    String example() {
        return example;
    }

    Names names() {
        return names;
    }

    List<Slot> slots() {
        return slots;
    }

    Solution work(QuestionParts parts, Style style) {
        return working.apply(parts, style);
    }
}
