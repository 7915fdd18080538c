package io.github.stoplag.approval;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.PublishedRange;
import java.util.List;
import java.util.Objects;

/**
 * Published rules on when a stop lamp must, may or must not be lit without the brake pedal, and when it may flash.
 *
 * <p>The thresholds, each with law, paragraph and standing, stand in {@code stop_signal_rules.csv}. The law in force
 * decides; later amendments of the rule on regenerative braking were not read.
 */
public final class StopSignalRules {
    /** What a rule says of the stop lamp. */
    public enum StopLamp {
        /** It shall not be lit. */
        MUST_BE_OFF,
        /** It may be lit. */
        OPTIONAL,
        /** It shall be lit. */
        MANDATORY
    }

    /** What a rule says of the emergency stop signal. */
    public enum EmergencySignal {
        /** It must not flash. */
        MUST_BE_OFF,
        /** It may start. */
        MAY_START,
        /** It may go on but not start. */
        MAY_CONTINUE
    }

    private static final Catalogue<PublishedRange> PUBLISHED =
            Catalogue.readRanges("stop signal rule", StopSignalRules.class, "stop_signal_rules.csv");

    private StopSignalRules() {}

    /** {@return the published thresholds} */
    public static List<PublishedRange> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a threshold.
     *
     * @param id its name in the table, for example {@code emergency_on}
     * @return the row
     * @throws IllegalArgumentException if there is none; the message offers the nearest
     */
    public static PublishedRange published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    /**
     * Says whether the stop lamp of a car is on while it slows by regenerative braking, accelerator released.
     *
     * <p>a ≤ 0.7 m/s²: off; up to 1.3 m/s²: optional; above: mandatory (UN R13-H).
     *
     * @param deceleration the deceleration a
     * @return what the rule says
     */
    public static StopLamp regenerative(Deceleration deceleration) {
        double a = deceleration.inMps2();
        if (a <= published("regenerative_off").high()) {
            return StopLamp.MUST_BE_OFF;
        }
        return a > published("regenerative_on").low() ? StopLamp.MANDATORY : StopLamp.OPTIONAL;
    }

    /**
     * Says whether the emergency stop signal of a car may flash.
     *
     * <p>It may start above 50 km/h from 6 m/s² on or with the antilock system cycling fully, and ends at the latest
     * below 2.5 m/s² or when the antilock system no longer cycles (UN R13-H, UN R48). Once started it may go on below
     * 50 km/h.
     *
     * @param speed the vehicle's speed
     * @param deceleration its deceleration
     * @param antilockCycling whether the antilock system cycles fully
     * @return what the rule says
     */
    public static EmergencySignal emergency(Speed speed, Deceleration deceleration, boolean antilockCycling) {
        return emergency(speed, deceleration, antilockCycling, "emergency_on");
    }

    /**
     * Says the same of a heavy vehicle, which may start it from 4 m/s² on (UN R13, from memory).
     *
     * @param speed the vehicle's speed
     * @param deceleration its deceleration
     * @param antilockCycling whether the antilock system cycles fully
     * @return what the rule says
     */
    public static EmergencySignal emergencyHeavy(Speed speed, Deceleration deceleration, boolean antilockCycling) {
        return emergency(speed, deceleration, antilockCycling, "emergency_on_heavy");
    }

    private static EmergencySignal emergency(
            Speed speed, Deceleration deceleration, boolean antilockCycling, String onId) {
        double a = deceleration.inMps2();
        if (speed.inKmh() > published("emergency_speed").high()
                && (antilockCycling || a >= published(onId).low())) {
            return EmergencySignal.MAY_START;
        }
        return antilockCycling || a >= published("emergency_off").low()
                ? EmergencySignal.MAY_CONTINUE
                : EmergencySignal.MUST_BE_OFF;
    }

    /**
     * Says whether a frequency is allowed for the emergency stop signal.
     *
     * @param frequencyHz the flash frequency in hertz
     * @param filament whether a flashing rear lamp has a filament
     * @return true within 4 ± 1 Hz, or 4 +0/−1 Hz with a filament
     * @throws IllegalArgumentException if the frequency is not in [0, 1000] Hz
     */
    public static boolean emergencyFrequencyAllowed(double frequencyHz, boolean filament) {
        Check.inRange("flash frequency", frequencyHz, 0, 1000, "Hz");
        PublishedRange range = published(filament ? "emergency_flash_filament" : "emergency_flash");
        return frequencyHz >= range.low() && frequencyHz <= range.high();
    }
}
