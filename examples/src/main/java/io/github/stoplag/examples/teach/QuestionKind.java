package io.github.stoplag.examples.teach;

import io.github.stoplag.worked.Solution;
import io.github.stoplag.worked.Style;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Collectors;

/** What can be asked: the word a question begins with and the parts it takes. */
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
            Slot.BUILD_UP),
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
    LAG(
            "lag",
            "distance that a lamp's lag adds",
            "lag 0.2 s at 100 km/h",
            Names.NONE,
            ExplainedStop::lag,
            Slot.LAG,
            Slot.SPEED,
            Slot.REACTION_NAMED),
    DECELERATION(
            "deceleration",
            "mean deceleration of a measured stop",
            "deceleration 60 mph, 140 ft",
            Names.NONE,
            ExplainedStop::deceleration,
            Slot.SPEED,
            Slot.BRAKING_DISTANCE,
            Slot.BRAKING_TIME),
    FOLLOW(
            "follow",
            "gap needed behind a braking vehicle or, with a gap, what becomes of it",
            "follow at 60 mph, 30 m, lamp 0.2 s, 1.5 s, wet asphalt",
            Names.ROAD,
            ExplainedPair::follow,
            Slot.SPEED,
            Slot.LEADER_SPEED,
            Slot.FOLLOWER_SPEED,
            Slot.REACTION,
            Slot.LAMP,
            Slot.BRAKES,
            Slot.GAP,
            Slot.DECELERATION,
            Slot.LEADER_DECELERATION,
            Slot.FOLLOWER_DECELERATION,
            Slot.FRICTION,
            Slot.GRADE),
    PERCENTILE(
            "percentile",
            "percentile of a log-normal reaction time",
            "percentile 85 %, study sivak-1982",
            Names.STUDY,
            ExplainedPair::percentile,
            Slot.PERCENTILE,
            Slot.MEAN,
            Slot.SD),
    RESISTOR(
            "resistor",
            "largest load resistor that satisfies an outage monitor",
            "resistor 21 W at 13.5 V",
            Names.NONE,
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
        RULE
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

    static Optional<QuestionKind> of(String word) {
        return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
    }

    /** Lists the words a question may begin with. */
    static String words() {
        return Arrays.stream(values()).map(QuestionKind::word).collect(Collectors.joining(", "));
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
