package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import java.util.Objects;

/**
 * How an LED driver answers a broken string: it waits, cuts out, and tries again.
 *
 * <p>An interruption shorter than the waiting time td costs just its own darkness. A longer one trips the cut-out at
 * td; the driver then tries every tr, and light is back at the first try after the contact has healed: dark for td + n
 * tr, n the least whole number with td + n tr ≥ the interruption.
 *
 * <pre>{@code
 * OpenCircuitCutOut.vehicleLedDriver().darkness(TimeSpan.seconds(0.001)); // 0.010925 s
 * }</pre>
 *
 * @param deglitch the waiting time td, [0, 1] s
 * @param retry the time tr between tries, (0, 10] s
 * @param source where they come from
 */
public record OpenCircuitCutOut(TimeSpan deglitch, TimeSpan retry, Source source) {
    /**
     * Checks the times.
     *
     * @param deglitch the waiting time td, [0, 1] s
     * @param retry the time tr between tries, (0, 10] s
     * @param source where they come from
     * @throws IllegalArgumentException if either is out of range
     */
    public OpenCircuitCutOut {
        Objects.requireNonNull(deglitch, "deglitch");
        Objects.requireNonNull(retry, "retry");
        Objects.requireNonNull(source, "source");
        Check.inRange("open-circuit waiting time", deglitch.inSeconds(), 0, 1, "s");
        Check.above("retry time", retry.inSeconds(), 0, 10, "s");
    }

    /** {@return a lamp driver's published times: waiting 125 µs (100 to 150 µs), a try every 10.8 ms} */
    public static OpenCircuitCutOut vehicleLedDriver() {
        return new OpenCircuitCutOut(
                TimeSpan.seconds(125e-6),
                TimeSpan.seconds(10.8e-3),
                Source.seen("data sheet SLIS178B of a vehicle LED driver", "open-circuit detection; retry off-time"));
    }

    /**
     * Gives how long the lamp is dark after an interruption.
     *
     * @param interruption how long the contact is open, not negative
     * @return the darkness, not shorter than the interruption
     * @throws IllegalArgumentException if the interruption is negative
     */
    public TimeSpan darkness(TimeSpan interruption) {
        Objects.requireNonNull(interruption, "interruption");
        double openS = Check.inRange("interruption", interruption.inSeconds(), 0, 1e4, "s");
        if (openS < deglitch.inSeconds()) {
            return interruption;
        }
        double tries = Math.ceil((openS - deglitch.inSeconds()) / retry.inSeconds());
        return TimeSpan.seconds(deglitch.inSeconds() + Math.max(1, tries) * retry.inSeconds());
    }
}
