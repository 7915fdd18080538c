package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Objects;

/**
 * How long a load is on in each period.
 *
 * @param on the time on in each period, above 0
 * @param off the time off in each period, not negative; 0 is continuous
 */
public record Duty(TimeSpan on, TimeSpan off) {
    /** On all the time. */
    public static final Duty CONTINUOUS = new Duty(TimeSpan.seconds(1), TimeSpan.seconds(0));

    /**
     * Checks the times.
     *
     * @param on the time on in each period, above 0
     * @param off the time off in each period, not negative; 0 is continuous
     * @throws IllegalArgumentException if the time on is not above 0 or the time off is negative
     */
    public Duty {
        Objects.requireNonNull(off, "off");
        Ranges.LASTING.check("time on", on.inSeconds());
        Ranges.ELAPSED.check("time off", off.inSeconds());
    }

    /**
     * Makes the duty of a flashing lamp.
     *
     * @param rate the flash rate
     * @param onRatio the share of the period with the current on, in (0, 1]
     * @return the duty
     * @throws IllegalArgumentException if the share is outside its range
     */
    public static Duty flashing(FlashRate rate, double onRatio) {
        Check.above("share of time on", onRatio, 0, 1, "");
        double periodS = 60 / rate.inPerMinute();
        return new Duty(TimeSpan.seconds(periodS * onRatio), TimeSpan.seconds(periodS * (1 - onRatio)));
    }

    /**
     * Gives the share of time on.
     *
     * @return t_on/(t_on + t_off), in (0, 1]
     */
    public double ratio() {
        return on.inSeconds() / (on.inSeconds() + off.inSeconds());
    }

    /**
     * Gives the highest temperature rise in the settled cycle as a share of the rise under continuous load, for a body
     * with one thermal time constant.
     *
     * <p>x = (1 − e^(−t_on/τ))/(1 − e^(−(t_on + t_off)/τ)); it goes to {@link #ratio()} for a slow body and to 1 for a
     * quick one.
     *
     * @param timeConstant τ, above 0 s
     * @return x, in (0, 1]
     * @throws IllegalArgumentException if the time constant is not above 0 s
     */
    public double peakShare(TimeSpan timeConstant) {
        Objects.requireNonNull(timeConstant, "timeConstant");
        double tau = Ranges.LASTING.check("thermal time constant", timeConstant.inSeconds());
        return Math.expm1(-on.inSeconds() / tau) / Math.expm1(-(on.inSeconds() + off.inSeconds()) / tau);
    }
}
