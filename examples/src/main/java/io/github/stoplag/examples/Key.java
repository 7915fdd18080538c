package io.github.stoplag.examples;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Power;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.units.QuantityText;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A key of the scenario file that holds a quantity.
 *
 * @param name the key as the file writes it
 * @param fallback the value used if the file does not have the key; null if it must
 * @param parse text to value
 * @param measure value to number, in the unit of the range
 * @param lo the lowest value allowed
 * @param hi the highest value allowed
 * @param unit the unit of the range
 */
record Key<T>(
        String name,
        @Nullable String fallback,
        Function<String, T> parse,
        ToDoubleFunction<T> measure,
        double lo,
        double hi,
        String unit) {
    static final String TITLE = "title";
    static final String INVENTED = "invented";
    static final String SPEEDS = "speeds";
    static final String GAP = "following.gap";
    static final String LEADER_DECELERATION = "leader.deceleration";
    static final String FOLLOWER_DECELERATION = "follower.deceleration";
    static final String LENS = "filament.lens";
    static final String DETECTOR = "detector";

    static final Key<Speed> SPEED = new Key<>(SPEEDS, null, QuantityText::parseSpeed, Speed::inKmh, 5, 250, "km/h");
    static final Key<TimeSpan> TIME_GAP = time(GAP, null, 0, 10);
    static final Key<Distance> DISTANCE_GAP = distance(GAP, null, 0, 500);
    static final Key<Deceleration> LEADER_BRAKING = deceleration(LEADER_DECELERATION);
    static final Key<Deceleration> FOLLOWER_BRAKING = deceleration(FOLLOWER_DECELERATION);
    static final Key<FrictionCoefficient> FRICTION = new Key<>(
            "road.friction",
            "0.7",
            QuantityText::parseFrictionCoefficient,
            FrictionCoefficient::inRatio,
            0.05,
            1.5,
            "");
    static final Key<Grade> GRADE =
            new Key<>("road.grade", "0 %", QuantityText::parseGrade, Grade::inPercent, -30, 30, "%");
    static final Key<TimeSpan> LEADER_DEAD_TIME = time("leader.brake-dead-time", "0.1 s", 0, 3);
    static final Key<TimeSpan> LEADER_BUILD_UP = time("leader.brake-build-up", "0.2 s", 0, 3);
    static final Key<Distance> LEADER_LENGTH = distance("leader.length", "6 m", 1, 30);
    static final Key<TimeSpan> REACTION = time("follower.reaction", null, 0, 10);
    static final Key<TimeSpan> FOLLOWER_DEAD_TIME = time("follower.brake-dead-time", "0.1 s", 0, 3);
    static final Key<TimeSpan> FOLLOWER_BUILD_UP = time("follower.brake-build-up", "0.2 s", 0, 3);
    static final Key<Distance> FOLLOWER_LENGTH = distance("follower.length", "4.4 m", 1, 30);
    static final Key<Voltage> DESIGN_VOLTAGE = voltage("filament.design-voltage");
    static final Key<Power> DESIGN_POWER =
            new Key<>("filament.design-power", null, QuantityText::parsePower, Power::inWatts, 1, 100, "W");
    static final Key<LuminousIntensity> FILAMENT_INTENSITY = intensity("filament.intensity", null, 0.1, 10_000);
    static final Key<Temperature> FILAMENT_TEMPERATURE =
            temperature("filament.temperature", "model", 2200, 3200, Temperature::inKelvin, "K");
    static final Key<Double> GAS_LOSS = ratio("filament.gas-loss-share", "model", 0, 0.5);
    static final Key<Double> COIL_FACTOR = ratio("filament.coil-factor", "model", 0.5, 1);
    static final Key<Voltage> SUPPLY = voltage("supply.voltage");
    static final Key<Resistance> WIRING = new Key<>(
            "supply.series-resistance", "0 ohm", QuantityText::parseResistance, Resistance::inOhms, 0, 100, "ohm");
    static final Key<Temperature> AMBIENT =
            temperature("ambient.temperature", "27 °C", -50, 90, Temperature::inCelsius, "°C");
    static final Key<TimeSpan> LED_DELAY = time("led.driver-delay", "0 s", 0, 2);
    static final Key<TimeSpan> LED_RISE = time("led.rise-time", null, 0, 2);
    static final Key<LuminousIntensity> LED_INTENSITY = intensity("led.intensity", null, 0.1, 10_000);
    static final Key<Double> SHARE = ratio("detector.share.level", "10 %", 0.001, 0.999);
    static final Key<TimeSpan> EYE_TIME = time("detector.eye.time-constant", "0.2 s", 0.001, 2);
    static final Key<LuminousIntensity> EYE_THRESHOLD = intensity("detector.eye.threshold", "1.86 cd", 1e-6, 10_000);

    private static final List<String> WORDS = List.of(TITLE, INVENTED, LENS, DETECTOR);

    /** Gives the name of every key that a scenario file may have. */
    static List<String> names() {
        return Stream.concat(
                        WORDS.stream(),
                        Stream.of(
                                        SPEED,
                                        TIME_GAP,
                                        LEADER_BRAKING,
                                        FOLLOWER_BRAKING,
                                        FRICTION,
                                        GRADE,
                                        LEADER_DEAD_TIME,
                                        LEADER_BUILD_UP,
                                        LEADER_LENGTH,
                                        REACTION,
                                        FOLLOWER_DEAD_TIME,
                                        FOLLOWER_BUILD_UP,
                                        FOLLOWER_LENGTH,
                                        DESIGN_VOLTAGE,
                                        DESIGN_POWER,
                                        FILAMENT_INTENSITY,
                                        FILAMENT_TEMPERATURE,
                                        GAS_LOSS,
                                        COIL_FACTOR,
                                        SUPPLY,
                                        WIRING,
                                        AMBIENT,
                                        LED_DELAY,
                                        LED_RISE,
                                        LED_INTENSITY,
                                        SHARE,
                                        EYE_TIME,
                                        EYE_THRESHOLD)
                                .map(Key::name))
                .toList();
    }

    /** Gives the allowed range, for example {@code [0, 10] s}. */
    String range() {
        return "[" + Numbers.text(lo) + ", " + Numbers.text(hi) + "]" + (unit.isEmpty() ? "" : " " + unit);
    }

    /** Gives the same key under another name, which has no default. */
    Key<T> named(String newName) {
        return new Key<>(newName, null, parse, measure, lo, hi, unit);
    }

    static Key<TimeSpan> time(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, QuantityText::parseTimeSpan, TimeSpan::inSeconds, lo, hi, "s");
    }

    static Key<Distance> distance(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, QuantityText::parseDistance, Distance::inMetres, lo, hi, "m");
    }

    static Key<Deceleration> deceleration(String name) {
        return new Key<>(name, null, QuantityText::parseDeceleration, Deceleration::inMps2, 0.5, 15, "m/s²");
    }

    private static Key<Voltage> voltage(String name) {
        return new Key<>(name, null, QuantityText::parseVoltage, Voltage::inVolts, 1, 60, "V");
    }

    private static Key<Temperature> temperature(
            String name, String fallback, double lo, double hi, ToDoubleFunction<Temperature> measure, String unit) {
        return new Key<>(name, fallback, QuantityText::parseTemperature, measure, lo, hi, unit);
    }

    private static Key<LuminousIntensity> intensity(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(
                name, fallback, QuantityText::parseLuminousIntensity, LuminousIntensity::inCandela, lo, hi, "cd");
    }

    static Key<Double> ratio(String name, String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Key::parseRatio, ratio -> ratio, lo, hi, "");
    }

    private static Double parseRatio(String text) {
        boolean percent = text.endsWith("%");
        String number = (percent ? text.substring(0, text.length() - 1) : text).strip();
        if (!number.matches("[0-9]+(\\.[0-9]+)?")) {
            throw new IllegalArgumentException("not a ratio; write it like 0.1 or 10 %");
        }
        return Double.parseDouble(number) / (percent ? 100 : 1);
    }
}
