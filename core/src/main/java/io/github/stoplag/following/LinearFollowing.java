package io.github.stoplag.following;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Source;
import java.util.Objects;

/**
 * Linear car following: each driver answers, a delay later, in proportion to the difference of speeds ahead.
 *
 * <pre>
 *   dv_n/dt (t + T) = λ (v_{n−1} − v_n)(t)
 *   |G(ω)| = λ / √(λ² + ω² − 2 λ ω sin ωT)
 * </pre>
 *
 * <p>λ sensitivity [1/s], T delay from the change ahead to the answer [s], ω angular frequency of a disturbance
 * [rad/s], G its gain from one vehicle to the next. Local motion behind one leader: no oscillation up to λT = 1/e,
 * damped oscillation below π/2, growing above. Along a chain disturbances die out while λT ≤ 1/2, and grow from vehicle
 * to vehicle above. A stop lamp's latency is a part of T; the model holds for small changes of speed, not for emergency
 * braking.
 *
 * <p>Range: λ in (0, 100] 1/s, T in (0, 30] s. Source: {@link #SOURCE}; local limits {@link #LOCAL_SOURCE}.
 *
 * <pre>{@code
 * LinearFollowing driver = new LinearFollowing(0.37, TimeSpan.seconds(1.5));
 * driver.local(); // DAMPED
 * driver.stringStable(); // false
 * }</pre>
 *
 * @param sensitivityPerS the sensitivity λ in 1/s
 * @param delay the delay T
 */
public record LinearFollowing(double sensitivityPerS, TimeSpan delay) {
    /** Where the model, the limit along a chain and the measured 0.37 1/s at 1.5 s come from. */
    public static final Source SOURCE =
            Source.seen("Chandler, Herman & Montroll, Operations Research 6:165-184, 1958", "abstract");

    /** Where the local limits come from; they also follow from the delay equation itself. */
    public static final Source LOCAL_SOURCE = Source.fromMemory(
            "Herman, Montroll, Potts & Rothery, Operations Research 7:86-106, 1959", "local stability");

    /** How one vehicle behind another answers a disturbance. */
    public enum Local {
        /** The speed settles without swinging. */
        NON_OSCILLATORY,
        /** The speed swings and settles. */
        DAMPED,
        /** The swings grow. */
        UNSTABLE
    }

    /**
     * The largest gain over all frequencies.
     *
     * @param ratio the gain from one vehicle to the next; 1 at frequency 0 for a stable chain
     * @param atRadPerS the frequency in rad/s
     */
    public record Gain(double ratio, double atRadPerS) {}

    /**
     * Checks the ranges.
     *
     * @param sensitivityPerS the sensitivity λ in 1/s
     * @param delay the delay T
     * @throws IllegalArgumentException if sensitivity or delay is out of range
     */
    public LinearFollowing {
        Objects.requireNonNull(delay, "delay");
        Check.above("sensitivity", sensitivityPerS, 0, 100, "1/s");
        Ranges.REACTING.check("delay", delay.inSeconds());
    }

    /**
     * Gives the number that decides stability.
     *
     * @return λT
     */
    public double productRatio() {
        return sensitivityPerS * delay.inSeconds();
    }

    /**
     * Says how one vehicle behind another answers a disturbance.
     *
     * @return no oscillation up to λT = 1/e, damped below π/2, unstable from there on
     */
    public Local local() {
        if (productRatio() <= Math.exp(-1)) {
            return Local.NON_OSCILLATORY;
        }
        return productRatio() < Math.PI / 2 ? Local.DAMPED : Local.UNSTABLE;
    }

    /**
     * Says whether disturbances die out along a chain.
     *
     * @return true if λT ≤ 1/2
     */
    public boolean stringStable() {
        return productRatio() <= 0.5;
    }

    /**
     * Gives the gain at one frequency, as a lasting oscillation has it.
     *
     * @param radPerS the angular frequency ω in rad/s, in [0, 1e6]
     * @return |G|
     * @throws IllegalArgumentException if the frequency is out of range, or the vehicle is locally unstable: no lasting
     *     oscillation exists then
     */
    public double gainRatio(double radPerS) {
        Check.inRange("angular frequency", radPerS, 0, 1e6, "rad/s");
        requireLocallyStable();
        double lambda = sensitivityPerS;
        double square =
                lambda * lambda + radPerS * radPerS - 2 * lambda * radPerS * Math.sin(radPerS * delay.inSeconds());
        return lambda / Math.sqrt(square);
    }

    /**
     * Finds the largest gain over all frequencies.
     *
     * <p>With x = ωT and p = λT the gain is largest where x = p (sin x + x cos x) in (0, π), which has a solution from
     * p = 1/2 on
     *
     * @return the gain and its frequency; gain 1 at frequency 0 if the chain is stable
     * @throws IllegalArgumentException if the vehicle is locally unstable
     */
    public Gain largestGain() {
        requireLocallyStable();
        if (stringStable()) {
            return new Gain(1, 0);
        }
        double p = productRatio();
        // divided by x: 1 − p (sin x / x + cos x), below 0 near x = 0 and above 0 at π
        double x = Polynomial.root(angle -> 1 - p * (Math.sin(angle) / angle + Math.cos(angle)), 1e-9, Math.PI);
        double radPerS = x / delay.inSeconds();
        return new Gain(gainRatio(radPerS), radPerS);
    }

    private void requireLocallyStable() {
        if (local() == Local.UNSTABLE) {
            throw new IllegalArgumentException(
                    "sensitivity times delay must be below pi/2 = 1.5708 for a gain to exist, got "
                            + Numbers.text(productRatio()));
        }
    }
}
