package io.github.stoplag.examples.teach;

/**
 * A place in a question that one part fills.
 *
 * @param name what it is
 * @param word the word of the {@link Vocabulary} that may stand beside its value
 * @param bare true if the value may stand without the word
 * @param measure what the value measures
 */
record Slot(String name, String word, boolean bare, Measure measure) {
    static final Slot SPEED = bare("speed", Measure.SPEED, "speed");
    static final Slot LEADER_SPEED = keyed("leader's speed", Measure.SPEED, "leader");
    static final Slot FOLLOWER_SPEED = keyed("follower's speed", Measure.SPEED, "follower");
    static final Slot CLOSING = keyed("closing speed", Measure.SPEED, "closing");
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
    static final Slot FRICTION = keyed("friction coefficient", Measure.FRICTION, "friction");
    static final Slot GRADE = bare("grade", Measure.GRADE, "grade");
    static final Slot MARKS = bare("length of the marks", Measure.DISTANCE, "marks");
    static final Slot BRAKING_DISTANCE = bare("braking distance", Measure.DISTANCE, "distance");
    static final Slot ROOM = bare("room to stop in", Measure.DISTANCE, "room");
    static final Slot DROP = bare("way of the ruler", Measure.DISTANCE, "drop");
    static final Slot MASS = bare("mass", Measure.MASS, "mass");
    static final Slot GAP = bare("gap", Measure.DISTANCE, "gap");
    static final Slot TIME_GAP = keyed("time gap", Measure.TIME, "gap");
    static final Slot TIME_GAP_BARE = bare("time gap", Measure.TIME, "gap");
    static final Slot VEHICLES = keyed("number of vehicles", Measure.COUNT, "vehicles");
    static final Slot PRESSURE = bare("inflation pressure", Measure.PRESSURE, "pressure");
    static final Slot PERCENTILE = bare("percentile", Measure.PERCENT, "percentile");
    static final Slot MEAN = keyed("mean", Measure.TIME, "mean");
    static final Slot SD = keyed("standard deviation", Measure.TIME, "sd");
    static final Slot RESPONDING = keyed("share of drivers who respond", Measure.PERCENT, "responding");
    static final Slot BULB = bare("power of the bulb", Measure.POWER, "bulb");
    static final Slot RATED = bare("rated voltage of the bulb", Measure.VOLTAGE, "rated");
    static final Slot SUPPLY = keyed("lowest supply voltage", Measure.VOLTAGE, "supply");
    static final Slot SUPPLY_OF_LAMP = keyed("supply voltage", Measure.VOLTAGE, "supply");
    static final Slot SERIES = bare("series resistance", Measure.RESISTANCE, "series");
    static final Slot LEVEL = bare("level of the light", Measure.PERCENT, "level");
    static final Slot LEVEL_NAMED = keyed("level of the light", Measure.PERCENT, "level");
    static final Slot HEALTHY = keyed("current the monitor takes for healthy", Measure.CURRENT, "healthy");
    static final Slot LED = keyed("current of the LED lamp", Measure.CURRENT, "led");
    static final Slot TOLERANCE = keyed("tolerance of the resistor", Measure.PERCENT, "tolerance");
    static final Slot RESISTANCE = bare("resistance", Measure.RESISTANCE, "resistance");
    static final Slot VOLTAGE = bare("highest supply voltage", Measure.VOLTAGE, "supply");
    static final Slot THERMAL = bare("thermal resistance", Measure.THERMAL_RESISTANCE, "thermal");
    static final Slot AMBIENT = bare("ambient temperature", Measure.TEMPERATURE, "ambient");
    static final Slot FORWARD = bare("forward voltage", Measure.VOLTAGE, "forward");
    static final Slot CURRENT = bare("lamp current", Measure.CURRENT, "current");

    private static Slot bare(String name, Measure measure, String word) {
        return new Slot(name, word, true, measure);
    }

    private static Slot keyed(String name, Measure measure, String word) {
        return new Slot(name, word, false, measure);
    }

    /** A value as a question that is sure to be understood writes it. */
    String written(String value) {
        return bare && measure != Measure.DISTANCE ? value : word + " " + value;
    }

    /** How a part that fills it is written. */
    String help() {
        String keyword = bare ? "[" + word + "]" : word;
        return name + ": " + keyword + " " + measure.units()
                + (measure == Measure.GRADE ? ", with up or down; or level" : "");
    }
}
