package io.github.stoplag.examples.teach;

import java.util.List;

/**
 * A place in a question that one part fills.
 *
 * @param name what it is
 * @param keywords the words that may stand before its value, the first as help shows it
 * @param bare true if the value may stand without a keyword
 * @param measure what the value measures
 */
record Slot(String name, List<String> keywords, boolean bare, Measure measure) {
    static final Slot SPEED = bare("speed", Measure.SPEED, "speed");
    static final Slot LEADER_SPEED = keyed("leader's speed", Measure.SPEED, "leader");
    static final Slot FOLLOWER_SPEED = keyed("follower's speed", Measure.SPEED, "follower");
    static final Slot REACTION = bare("reaction time", Measure.TIME, "reaction");
    static final Slot REACTION_NAMED = keyed("reaction time", Measure.TIME, "reaction");
    static final Slot LAG = bare("lamp lag", Measure.TIME, "lamp");
    static final Slot LAMP = keyed("lamp latency", Measure.TIME, "lamp");
    static final Slot BRAKES = keyed("brake lag", Measure.TIME, "brakes");
    static final Slot BUILD_UP = keyed("brake build-up", Measure.TIME, "build-up");
    static final Slot BRAKING_TIME = bare("braking time", Measure.TIME, "time");
    static final Slot DECELERATION = bare("deceleration", Measure.DECELERATION, "deceleration");
    static final Slot LEADER_DECELERATION = keyed("leader's deceleration", Measure.DECELERATION, "leader");
    static final Slot FOLLOWER_DECELERATION = keyed("follower's deceleration", Measure.DECELERATION, "follower");
    static final Slot FRICTION = keyed("friction coefficient", Measure.FRICTION, "friction", "mu", "μ");
    static final Slot GRADE = bare("grade", Measure.GRADE, "grade");
    static final Slot MARKS = bare("length of the marks", Measure.DISTANCE, "marks", "length");
    static final Slot BRAKING_DISTANCE = bare("braking distance", Measure.DISTANCE, "distance");
    static final Slot GAP = bare("gap", Measure.DISTANCE, "gap");
    static final Slot PERCENTILE = bare("percentile", Measure.PERCENT, "percentile");
    static final Slot MEAN = keyed("mean", Measure.TIME, "mean");
    static final Slot SD = keyed("standard deviation", Measure.TIME, "sd");
    static final Slot BULB = bare("power of the bulb", Measure.POWER, "bulb");
    static final Slot RATED = bare("rated voltage of the bulb", Measure.VOLTAGE, "rated");
    static final Slot SUPPLY = keyed("lowest supply voltage", Measure.VOLTAGE, "supply");
    static final Slot HEALTHY = keyed("current the monitor takes for healthy", Measure.CURRENT, "healthy");
    static final Slot LED = keyed("current of the LED lamp", Measure.CURRENT, "led");
    static final Slot TOLERANCE = keyed("tolerance of the resistor", Measure.PERCENT, "tolerance");
    static final Slot RESISTANCE = bare("resistance", Measure.RESISTANCE, "resistance");
    static final Slot VOLTAGE = bare("highest supply voltage", Measure.VOLTAGE, "supply");
    static final Slot THERMAL = bare("thermal resistance", Measure.THERMAL_RESISTANCE, "thermal");
    static final Slot AMBIENT = bare("ambient temperature", Measure.TEMPERATURE, "ambient");
    static final Slot FORWARD = bare("forward voltage", Measure.VOLTAGE, "forward");
    static final Slot CURRENT = bare("lamp current", Measure.CURRENT, "current");

    Slot {
        keywords = List.copyOf(keywords);
    }

    private static Slot bare(String name, Measure measure, String... keywords) {
        return new Slot(name, List.of(keywords), true, measure);
    }

    private static Slot keyed(String name, Measure measure, String... keywords) {
        return new Slot(name, List.of(keywords), false, measure);
    }

    /** How a part that fills it is written. */
    String help() {
        String keyword = bare ? "[" + keywords.get(0) + "]" : keywords.get(0);
        return name + ": " + keyword + " " + measure.units()
                + (measure == Measure.GRADE ? ", with up or down; or level" : "");
    }
}
