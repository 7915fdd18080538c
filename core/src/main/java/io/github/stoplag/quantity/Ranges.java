package io.github.stoplag.quantity;

/**
 * The ranges of the library's quantities, each in one place: value types, models, kernel, plan columns and file keys
 * check against these.
 *
 * <p>They hold what is possible, widely drawn, not what is usual or was validated.
 */
public final class Ranges {
    /** A vehicle's speed, [0, 150] m/s. */
    public static final Range SPEED = Range.closed("speed", 0, 150, "m/s");

    /** A deceleration, 0 for a vehicle that does not slow, [0, 200] m/s². */
    public static final Range DECELERATION = Range.closed("deceleration", 0, 200, "m/s²");

    /** The speed of a vehicle that moves, (0, 150] m/s. */
    public static final Range MOVING = SPEED.withoutLowerEnd();

    /** The deceleration of a vehicle that brakes, (0, 200] m/s². */
    public static final Range BRAKING = DECELERATION.withoutLowerEnd();

    /** The friction of a road that holds at all, (0, 2]. */
    public static final Range GRIP = Range.above("friction coefficient", 0, 2, "");

    /** A distance, [-1e7, 1e7] m. */
    public static final Range DISTANCE = Range.closed("distance", -1e7, 1e7, "m");

    /** A time span, [-1e6, 1e6] s. */
    public static final Range TIME = Range.closed("time", -1e6, 1e6, "s");

    /** A friction coefficient, [0, 2]. */
    public static final Range FRICTION = Range.closed("friction coefficient", 0, 2, "");

    /** A grade: rise over run, [-1, 1]. */
    public static final Range GRADE = Range.closed("grade", -1, 1, "");

    /** A grade given as an angle, [-45, 45] °. */
    public static final Range SLOPE = Range.closed("slope", -45, 45, "°");

    /** A mass, (0, 1e6] kg. */
    public static final Range MASS = Range.above("mass", 0, 1e6, "kg");

    /** A pressure, [0, 1e8] Pa. */
    public static final Range PRESSURE = Range.closed("pressure", 0, 1e8, "Pa");

    /** An absolute temperature, (0, 20000] K. */
    public static final Range TEMPERATURE = Range.above("temperature", 0, 20_000, "K");

    /** A voltage of either sign, [-1000, 1000] V. */
    public static final Range VOLTAGE = Range.closed("voltage", -1000, 1000, "V");

    /** A current of either direction, [-1e5, 1e5] A. */
    public static final Range CURRENT = Range.closed("current", -1e5, 1e5, "A");

    /** A resistance, [0, 1e9] Ω. */
    public static final Range RESISTANCE = Range.closed("resistance", 0, 1e9, "Ω");

    /** A power, [0, 1e6] W. */
    public static final Range POWER = Range.closed("power", 0, 1e6, "W");

    /** A luminous intensity, [0, 1e7] cd. */
    public static final Range INTENSITY = Range.closed("luminous intensity", 0, 1e7, "cd");

    /** The luminous intensity of a light that is on, (0, 1e7] cd. */
    public static final Range SHINING = INTENSITY.withoutLowerEnd();

    /** A luminous flux, [0, 1e8] lm. */
    public static final Range FLUX = Range.closed("luminous flux", 0, 1e8, "lm");

    /** A luminance, [0, 1e10] cd/m². */
    public static final Range LUMINANCE = Range.closed("luminance", 0, 1e10, "cd/m²");

    /** An illuminance, [0, 1e6] lx. */
    public static final Range ILLUMINANCE = Range.closed("illuminance", 0, 1e6, "lx");

    /** A driver's reaction time, or a part of it, [0, 30] s. */
    public static final Range REACTION = Range.closed("reaction time", 0, 30, "s");

    /** The reaction time of a driver who needs some, (0, 30] s. */
    public static final Range REACTING = REACTION.withoutLowerEnd();

    /** A lamp latency, [0, 30] s. */
    public static final Range LATENCY = Range.closed("lamp latency", 0, 30, "s");

    /** The dead time of brakes, [0, 10] s. */
    public static final Range DEAD_TIME = Range.closed("brake dead time", 0, 10, "s");

    /** The build-up time of brakes, [0, 10] s. */
    public static final Range BUILD_UP = Range.closed("brake build-up time", 0, 10, "s");

    /** The gap between two vehicles, [0, 1e5] m. */
    public static final Range GAP = Range.closed("gap", 0, 1e5, "m");

    /** The gap between two vehicles that do not touch, (0, 1e5] m. */
    public static final Range APART = GAP.withoutLowerEnd();

    /** The time gap between two vehicles: gap over the follower's speed, [0, 300] s. */
    public static final Range TIME_GAP = Range.closed("time gap", 0, 300, "s");

    /** The gravity of a road, [1, 30] m/s². */
    public static final Range GRAVITY = Range.closed("gravity", 1, 30, "m/s²");

    /** A deceleration that may speed the vehicle up, [-200, 200] m/s². */
    public static final Range SIGNED_DECELERATION = Range.closed("deceleration", -200, 200, "m/s²");

    /** A length, or a distance gone, [0, 1e7] m. */
    public static final Range LENGTH = Range.closed("length", 0, 1e7, "m");

    /** A road vehicle from bumper to bumper, a road train included, [1, 100] m. */
    public static final Range VEHICLE_LENGTH = Range.closed("vehicle length", 1, 100, "m");

    /** The voltage that a lamp is made for, [0.5, 300] V. */
    public static final Range RATED_VOLTAGE = Range.closed("rated voltage", 0.5, 300, "V");

    /** The power that a lamp is made for, [0.1, 1000] W. */
    public static final Range LAMP_POWER = Range.closed("rated power", 0.1, 1000, "W");

    /** The resistance of a load resistor, (0, 1e6] Ω. */
    public static final Range LOAD_RESISTANCE = Range.above("load resistance", 0, 1e6, "Ω");

    /** From the current's start to an LED lamp's driver letting it through, [0, 1] s. */
    public static final Range LED_DELAY = Range.closed("LED driver delay", 0, 1, "s");

    /** The rise of an LED's light from 10 to 90 %, or its fall from 90 to 10 %, [0, 1] s. */
    public static final Range LED_RISE = Range.closed("LED rise time", 0, 1, "s");

    /** A supply voltage, or a voltage it drives somewhere, [0, 1000] V. */
    public static final Range SUPPLY = Range.closed("supply voltage", 0, 1000, "V");

    /** A resistor's tolerance, [0, 0.5]. */
    public static final Range TOLERANCE = Range.closed("resistor tolerance", 0, 0.5, "");

    /** The resistance of a switch, a harness or a diode, [0, 100] Ω. */
    public static final Range SERIES_RESISTANCE = Range.closed("series resistance", 0, 100, "Ω");

    /** The coil factor of a filament: radiating over wire surface, [0.5, 1]. */
    public static final Range COIL_FACTOR = Range.closed("coil factor", 0.5, 1, "");

    /** The share of a filament's power that goes into gas and supports, [0, 0.5]. */
    public static final Range GAS_LOSS = Range.closed("gas-loss share", 0, 0.5, "");

    /** The temperature around a lamp, [200, 500] K. */
    public static final Range AMBIENT = Range.closed("ambient temperature", 200, 500, "K");

    /** A supply voltage that drives something, (0, 1000] V. */
    public static final Range LIVE_SUPPLY = SUPPLY.withoutLowerEnd();

    /** A current that flows one way only, through a load or a diode, [0, 1e5] A. */
    public static final Range FORWARD_CURRENT = Range.closed("current", 0, 1e5, "A");

    /** A power that something is rated for, (0, 1e6] W. */
    public static final Range RATED_POWER = POWER.withoutLowerEnd();

    /** A thermal resistance, (0, 1000] K/W. */
    public static final Range THERMAL_RESISTANCE = Range.above("thermal resistance", 0, 1000, "K/W");

    /** A probability, [0, 1]. */
    public static final Range PROBABILITY = Range.closed("probability", 0, 1, "");

    /** A time after a start, [0, 1e6] s. */
    public static final Range ELAPSED = Range.closed("time", 0, 1e6, "s");

    /** A time that something lasts, (0, 1e6] s. */
    public static final Range LASTING = ELAPSED.withoutLowerEnd();

    /** The decimals of a printed number, [0, 15]. */
    public static final Range DECIMALS = Range.closed("decimals", 0, 15, "");

    private Ranges() {}
}
