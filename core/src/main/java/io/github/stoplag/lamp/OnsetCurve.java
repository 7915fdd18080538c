package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evident;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a lamp's light rises after switch-on: luminous intensity relative to its final value against time.
 *
 * <p>Time 0 is the instant the lamp's circuit closes. The curve starts at its value before switch-on (0 for a dark
 * lamp) and ends at 1, or below 1 where a measured curve was cut off. Between its breakpoints it only rises or only
 * falls: a lamp that flashes names every turn among them, and whoever looks for the moment it is seen refuses a curve
 * that hides one.
 */
public interface OnsetCurve extends Evident {
    /**
     * Names the lamp in reports.
     *
     * @return a short name, for example {@code filament 12 V 21 W at 13.5 V}
     */
    String label();

    /**
     * Gives the luminous intensity at a time, relative to the final intensity.
     *
     * @param timeS the time since switch-on in seconds; before 0 the lamp is as it was, positive infinity gives the end
     *     value
     * @return I(t)/I(∞), in [0, 1], or above 1 while the light overshoots
     * @throws IllegalArgumentException if the time is NaN
     */
    double relativeIntensity(double timeS);

    /**
     * Gives the first time at which the light reaches a level; unless a curve knows better, by halving the first
     * stretch between breakpoints that ends above it.
     *
     * @param levelRatio the level relative to the final intensity, in (0, 1)
     * @return the time since switch-on in seconds, or nothing if the curve never reaches the level
     * @throws IllegalArgumentException if the level is outside (0, 1)
     */
    default OptionalDouble timeToLevelS(double levelRatio) {
        checkLevel(levelRatio);
        double[] knotsS = breakpointsS();
        double fromS = 0;
        for (int i = 0; i <= knotsS.length; i++) {
            double endS = i < knotsS.length ? Math.nextDown(knotsS[i]) : Double.POSITIVE_INFINITY;
            if (relativeIntensity(fromS) >= levelRatio) {
                return OptionalDouble.of(fromS);
            }
            if (endS > fromS && relativeIntensity(endS) >= levelRatio) {
                return OptionalDouble.of(crossS(levelRatio, fromS, endS));
            }
            fromS = i < knotsS.length ? Math.max(fromS, knotsS[i]) : fromS;
        }
        return OptionalDouble.empty();
    }

    /** Halves a stretch, of which the last has no end. */
    private double crossS(double levelRatio, double fromS, double endS) {
        double loS = fromS;
        double hiS = Math.min(endS, fromS + 1);
        while (hiS < endS && relativeIntensity(hiS) < levelRatio) {
            loS = hiS;
            hiS = Math.min(endS, fromS + 2 * (hiS - fromS));
        }
        for (double midS = (loS + hiS) / 2; midS > loS && midS < hiS; midS = (loS + hiS) / 2) {
            if (relativeIntensity(midS) >= levelRatio) {
                hiS = midS;
            } else {
                loS = midS;
            }
        }
        return hiS;
    }

    /**
     * Gives the time after which the light no longer changes enough to matter: where it has reached 99.9 % of its end
     * value.
     *
     * @return the time since switch-on in seconds
     */
    double settledS();

    /**
     * Gives the times at which the curve jumps, bends or turns, so that an integral over it can be split there.
     *
     * @return the times since switch-on in seconds, increasing; empty for a smooth curve
     */
    default double[] breakpointsS() {
        return new double[0];
    }

    /**
     * Tells why the lamp gives no visible light even once settled, for a criterion that looks at the curve's shape
     * alone.
     *
     * @return the reason with the values compared, or nothing if the lamp lights or the curve cannot tell
     */
    default Optional<String> staysDark() {
        return Optional.empty();
    }

    /**
     * Gives the first time at which the light reaches a level.
     *
     * @param levelRatio the level relative to the final intensity, in (0, 1)
     * @return the time since switch-on, or nothing if the curve never reaches the level
     * @throws IllegalArgumentException if the level is outside (0, 1)
     */
    default Optional<TimeSpan> timeToLevel(double levelRatio) {
        OptionalDouble timeS = timeToLevelS(levelRatio);
        return timeS.isPresent() ? Optional.of(TimeSpan.seconds(timeS.getAsDouble())) : Optional.empty();
    }

    /**
     * Gives the time the light takes from one level to a higher one; 0.1 and 0.9 give the usual rise time.
     *
     * @param fromRatio the lower level relative to the final intensity
     * @param toRatio the upper level relative to the final intensity
     * @return the rise time, or nothing if the curve never reaches the upper level
     * @throws IllegalArgumentException if the levels are not 0 &lt; from &lt; to &lt; 1
     */
    default Optional<TimeSpan> riseTime(double fromRatio, double toRatio) {
        Check.above("upper level", toRatio, fromRatio, 1, "");
        OptionalDouble from = timeToLevelS(fromRatio);
        OptionalDouble to = timeToLevelS(toRatio);
        return from.isPresent() && to.isPresent()
                ? Optional.of(TimeSpan.seconds(to.getAsDouble() - from.getAsDouble()))
                : Optional.empty();
    }

    /**
     * Requires a level that a curve can be asked for.
     *
     * @param levelRatio the level relative to the final intensity
     * @return the level
     * @throws IllegalArgumentException if the level is outside (0, 1)
     */
    static double checkLevel(double levelRatio) {
        if (!(levelRatio > 0 && levelRatio < 1)) {
            throw new IllegalArgumentException(
                    "level of the final intensity must be in (0, 1), got " + Numbers.text(levelRatio));
        }
        return levelRatio;
    }

    /**
     * Requires a time that a curve can be asked for: any but NaN.
     *
     * @param name what the time is, as the message shall name it
     * @param timeS the time in seconds, negative and infinite ones included
     * @return the time
     * @throws IllegalArgumentException if the time is NaN
     */
    static double checkTimeS(String name, double timeS) {
        Objects.requireNonNull(name, "name");
        if (Double.isNaN(timeS)) {
            throw new IllegalArgumentException(name + " must be a number of seconds, got NaN");
        }
        return timeS;
    }
}
