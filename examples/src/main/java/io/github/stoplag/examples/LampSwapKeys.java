package io.github.stoplag.examples;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.Temperature;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.quantity.Voltage;
import io.github.stoplag.units.QuantityText;
import java.util.List;
import java.util.stream.Stream;

/** The keys of the scenario of {@code lamp-swap}. */
final class LampSwapKeys {
    static final String SPEEDS = "speeds";
    static final String GAP = "following.gap";
    static final String LENS = "filament.lens";
    static final String DETECTOR = "detector";

    static final Key<Speed> SPEED = new Key<>(SPEEDS, null, QuantityText::parseSpeed, Speed::inKmh, 5, 250, "km/h");
    static final Key<TimeSpan> TIME_GAP = Key.time(GAP, null, 0, 10);
    static final Key<Distance> DISTANCE_GAP = Key.distance(GAP, null, 0, 500);
    static final Key<Deceleration> LEADER_BRAKING = Key.deceleration("leader.deceleration");
    static final Key<Deceleration> FOLLOWER_BRAKING = Key.deceleration("follower.deceleration");
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
    static final Key<TimeSpan> LEADER_DEAD_TIME = Key.time("leader.brake-dead-time", "0.1 s", 0, 3);
    static final Key<TimeSpan> LEADER_BUILD_UP = Key.time("leader.brake-build-up", "0.2 s", 0, 3);
    static final Key<Distance> LEADER_LENGTH = Key.distance("leader.length", "6 m", 1, 30);
    static final Key<TimeSpan> REACTION = Key.time("follower.reaction", null, 0, 10);
    static final Key<TimeSpan> FOLLOWER_DEAD_TIME = Key.time("follower.brake-dead-time", "0.1 s", 0, 3);
    static final Key<TimeSpan> FOLLOWER_BUILD_UP = Key.time("follower.brake-build-up", "0.2 s", 0, 3);
    static final Key<Distance> FOLLOWER_LENGTH = Key.distance("follower.length", "4.4 m", 1, 30);
    static final Key<LuminousIntensity> FILAMENT_INTENSITY = Key.intensity("filament.intensity", null, 0.1, 10_000);
    static final Key<Temperature> FILAMENT_TEMPERATURE = Key.kelvin("filament.temperature", "model", 2200, 3200);
    static final Key<Double> GAS_LOSS = Key.ratio("filament.gas-loss-share", "model", 0, 0.5);
    static final Key<Double> COIL_FACTOR = Key.ratio("filament.coil-factor", "model", 0.5, 1);
    static final Key<Voltage> SUPPLY = Key.voltage("supply.voltage", null, 1, 60);
    static final Key<Resistance> WIRING = Key.resistance("supply.series-resistance", "0 ohm", 0, 100);
    static final Key<Temperature> AMBIENT = Key.celsius("ambient.temperature", "27 °C", -50, 90);
    static final Key<TimeSpan> LED_DELAY = Key.time("led.driver-delay", "0 s", 0, 2);
    static final Key<TimeSpan> LED_RISE = Key.time("led.rise-time", null, 0, 2);
    static final Key<LuminousIntensity> LED_INTENSITY = Key.intensity("led.intensity", null, 0.1, 10_000);
    static final Key<Double> SHARE = Key.ratio("detector.share.level", "10 %", 0.001, 0.999);
    static final Key<TimeSpan> EYE_TIME = Key.time("detector.eye.time-constant", "0.2 s", 0.001, 2);
    static final Key<LuminousIntensity> EYE_THRESHOLD =
            Key.intensity("detector.eye.threshold", "1.86 cd", 1e-6, 10_000);
    static final Key<Distance> VIEWING_DISTANCE = Key.distance("viewing.distance", "50 m", 1, 2000);
    static final Key<Distance> VISIBILITY = Key.distance("viewing.visibility", "model", 10, 100_000);
    static final Key<LuminousIntensity> TAIL_INTENSITY = Key.intensity("tail.intensity", "6 cd", 0.1, 1000);

    static final ScenarioKind KIND = new ScenarioKind("minibus.properties", names());

    private LampSwapKeys() {}

    private static List<String> names() {
        return Stream.of(
                        Heading.KEYS.stream(),
                        Stream.of(SPEEDS, GAP),
                        FilamentInput.KEYS.stream(),
                        Stream.of(LENS, DETECTOR),
                        Stream.of(
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
                                        TAIL_INTENSITY)
                                .map(Key::name))
                .flatMap(names -> names)
                .toList();
    }

    /** Says of a key that was given but not asked for why it does not count. */
    static String unused(String key) {
        return key.startsWith("road.")
                ? "neither vehicle's deceleration is \"road\""
                : "filament.bulb names a bulb of the catalogue, which has its own rating";
    }
}
