package io.github.stoplag.examples.file;

import io.github.stoplag.lamp.LaboratoryLamps;
import io.github.stoplag.quantity.Current;
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
import io.github.stoplag.quantity.Units;
import io.github.stoplag.quantity.Voltage;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A key of a scenario file that holds a quantity.
 *
 * @param name the key as the file writes it
 * @param fallback the value used if the file does not have the key; null if it must
 * @param parse text to value
 * @param measure value to number, in the unit of the range
 * @param lo the lowest value allowed
 * @param hi the highest value allowed
 * @param unit the unit of the range
 * @param <T> the quantity
 */
public record Key<T>(
        String name,
        @Nullable String fallback,
        Function<String, T> parse,
        ToDoubleFunction<T> measure,
        double lo,
        double hi,
        String unit) {
    public static final String TITLE = "title";
    public static final String INVENTED = "invented";
    public static final String SPEEDS = "speeds";
    public static final String GAP = "following.gap";
    public static final String LENS = "filament.lens";
    public static final String DETECTOR = "detector";

    public static final Key<Speed> SPEED =
            new Key<>(SPEEDS, null, Speed::parse, Speed::inKmh, 5, 250, "km/h");
    public static final Key<TimeSpan> TIME_GAP = time(GAP, null, 0, 10);
    public static final Key<Distance> DISTANCE_GAP = distance(GAP, null, 0, 500);
    public static final Key<Deceleration> LEADER_BRAKING = deceleration("leader.deceleration");
    public static final Key<Deceleration> FOLLOWER_BRAKING = deceleration("follower.deceleration");
    public static final Key<FrictionCoefficient> FRICTION = new Key<>(
            "road.friction",
            "0.7",
            FrictionCoefficient::parse,
            FrictionCoefficient::inRatio,
            0.05,
            1.5,
            "");
    public static final Key<Grade> GRADE =
            new Key<>("road.grade", "0 %", Grade::parse, Grade::inPercent, -30, 30, "%");
    public static final Key<TimeSpan> LEADER_DEAD_TIME = time("leader.brake-dead-time", "0.1 s", 0, 3);
    public static final Key<TimeSpan> LEADER_BUILD_UP = time("leader.brake-build-up", "0.2 s", 0, 3);
    public static final Key<Distance> LEADER_LENGTH = distance("leader.length", "6 m", 1, 30);
    public static final Key<TimeSpan> REACTION = time("follower.reaction", null, 0, 10);
    public static final Key<TimeSpan> FOLLOWER_DEAD_TIME = time("follower.brake-dead-time", "0.1 s", 0, 3);
    public static final Key<TimeSpan> FOLLOWER_BUILD_UP = time("follower.brake-build-up", "0.2 s", 0, 3);
    public static final Key<Distance> FOLLOWER_LENGTH = distance("follower.length", "4.4 m", 1, 30);
    public static final Key<LuminousIntensity> FILAMENT_INTENSITY = intensity("filament.intensity", null, 0.1, 10_000);
    public static final Key<Temperature> FILAMENT_TEMPERATURE = kelvin("filament.temperature", "model", 2200, 3200);
    public static final Key<Double> GAS_LOSS = ratio("filament.gas-loss-share", "model", 0, 0.5);
    public static final Key<Double> COIL_FACTOR = ratio("filament.coil-factor", "model", 0.5, 1);
    public static final Key<Voltage> SUPPLY = voltage("supply.voltage", null, 1, 60);
    public static final Key<Resistance> WIRING = resistance("supply.series-resistance", "0 ohm", 0, 100);
    public static final Key<Temperature> AMBIENT = celsius("ambient.temperature", "27 °C", -50, 90);
    public static final Key<TimeSpan> LED_DELAY = time("led.driver-delay", "0 s", 0, 1);
    public static final Key<TimeSpan> LED_RISE = time("led.rise-time", null, 0, 1);
    public static final Key<LuminousIntensity> LED_INTENSITY = intensity("led.intensity", null, 0.1, 10_000);
    public static final Key<Double> SHARE = ratio("detector.share.level", "10 %", 0.001, 0.999);
    public static final Key<TimeSpan> EYE_TIME =
            time("detector.eye.time-constant", LaboratoryLamps.EYE_TIME_CONSTANT.toString(), 0.001, 2);
    public static final Key<LuminousIntensity> EYE_THRESHOLD =
            intensity("detector.eye.threshold", LaboratoryLamps.EYE_THRESHOLD.toString(), 1e-6, 10_000);
    public static final Key<Distance> VIEWING_DISTANCE = distance("viewing.distance", "50 m", 1, 2000);
    public static final Key<Distance> VISIBILITY = distance("viewing.visibility", "model", 10, 100_000);
    public static final Key<LuminousIntensity> TAIL_INTENSITY = intensity("tail.intensity", "6 cd", 0.1, 1000);

    /** The keys of {@code lamp-swap} that hold one quantity each. */
    public static final List<Key<?>> QUANTITIES = List.of(
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
            EYE_THRESHOLD,
            VIEWING_DISTANCE,
            VISIBILITY,
            TAIL_INTENSITY);

    /** Gives the name of every key that a scenario of {@code lamp-swap} may have. */
    public static List<String> names() {
        return Stream.of(
                        Heading.KEYS.stream(),
                        Stream.of(SPEEDS, GAP),
                        FilamentInput.KEYS.stream(),
                        Stream.of(LENS, DETECTOR),
                        QUANTITIES.stream().map(Key::name))
                .flatMap(names -> names)
                .toList();
    }

    /** Says whether a key of {@code lamp-swap} tells of the modelled filament lamp, which a filmed lamp replaces. */
    public static boolean ofFilamentModel(String key) {
        return FilamentInput.KEYS.contains(key)
                || key.equals(LENS)
                || Stream.of(FILAMENT_TEMPERATURE, GAS_LOSS, COIL_FACTOR, SUPPLY, WIRING, AMBIENT)
                        .anyMatch(unused -> unused.name.equals(key));
    }

    /** Says of a key that was given but not asked for why it does not count. */
    public static String unused(String key) {
        return key.startsWith("road.") ? "neither vehicle's deceleration is \"road\"" : FilamentInput.RATING_UNUSED;
    }

    /** Gives the same key under another name, which has no default. */
    public Key<T> named(String newName) {
        return new Key<>(newName, null, parse, measure, lo, hi, unit);
    }

    /** Gives the allowed range, for example {@code [0, 10] s}. */
    public String range() {
        return "[" + Numbers.text(lo) + ", " + Numbers.text(hi) + "]" + (unit.isEmpty() ? "" : " " + unit);
    }

    /**
     * Makes a key of a time.
     *
     * @param name the key as the file writes it
     * @param fallback the value used if the file does not have the key; null if it must
     * @param lo the lowest value allowed
     * @param hi the highest value allowed
     * @return the key
     */
    public static Key<TimeSpan> time(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, TimeSpan::parse, TimeSpan::inSeconds, lo, hi, "s");
    }

    public static Key<Distance> distance(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Distance::parse, Distance::inMetres, lo, hi, "m");
    }

    public static Key<Deceleration> deceleration(String name) {
        return new Key<>(name, null, Deceleration::parse, Deceleration::inMps2, 0.5, 15, "m/s²");
    }

    /**
     * Makes a key of a voltage.
     *
     * @param name the key as the file writes it
     * @param fallback the value used if the file does not have the key; null if it must
     * @param lo the lowest value allowed
     * @param hi the highest value allowed
     * @return the key
     */
    public static Key<Voltage> voltage(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Voltage::parse, Voltage::inVolts, lo, hi, "V");
    }

    public static Key<Current> current(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Current::parse, Current::inAmperes, lo, hi, "A");
    }

    /**
     * Makes a key of a power.
     *
     * @param name the key as the file writes it
     * @param fallback the value used if the file does not have the key; null if it must
     * @param lo the lowest value allowed
     * @param hi the highest value allowed
     * @return the key
     */
    public static Key<Power> power(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Power::parse, Power::inWatts, lo, hi, "W");
    }

    public static Key<Resistance> resistance(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Resistance::parse, Resistance::inOhms, lo, hi, "ohm");
    }

    public static Key<Temperature> celsius(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Temperature::parse, Temperature::inCelsius, lo, hi, "°C");
    }

    static Key<Temperature> kelvin(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Temperature::parse, Temperature::inKelvin, lo, hi, "K");
    }

    /**
     * Makes a key of a luminous intensity.
     *
     * @param name the key as the file writes it
     * @param fallback the value used if the file does not have the key; null if it must
     * @param lo the lowest value allowed
     * @param hi the highest value allowed
     * @return the key
     */
    public static Key<LuminousIntensity> intensity(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(
                name, fallback, LuminousIntensity::parse, LuminousIntensity::inCandela, lo, hi, "cd");
    }

    public static Key<Double> ratio(String name, @Nullable String fallback, double lo, double hi) {
        return new Key<>(name, fallback, Units.SHARE::parseSi, ratio -> ratio, lo, hi, "");
    }

    /**
     * Makes a key of a number counted in one unit, for units that no value type has; without a unit, a plain number.
     *
     * @param name the key as the file writes it
     * @param fallback the value used if the file does not have the key; null if it must
     * @param lo the lowest value allowed
     * @param hi the highest value allowed
     * @param unit the unit of range and value, which the file may write in any unit of that quantity; empty for none
     * @return the key
     */
    public static Key<Double> number(String name, @Nullable String fallback, double lo, double hi, String unit) {
        return new Key<>(name, fallback, text -> parseNumber(text, unit), number -> number, lo, hi, unit);
    }

    private static Double parseNumber(String text, String unit) {
        Units units = Units.having(unit).orElseThrow(() -> new IllegalArgumentException("no unit: " + unit));
        return units.read(text).in(units.unit(unit));
    }
}
