package io.github.stoplag.braking;

import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Evident;
import io.github.stoplag.source.Source;
import java.util.Objects;

/**
 * The mean deceleration over distance between two speeds of a stop.
 *
 * <pre>
 *   d_m = (v_b² − v_e²)/(2 (s_e − s_b))          in m/s and m
 *   d_m = (v_b² − v_e²)/(25.92 (s_e − s_b))      in km/h and m
 * </pre>
 *
 * <p>Symbols: d_m mean deceleration [m/s²], v_b and v_e speeds at the begin and the end, s_b and s_e their places from
 * the start of the stop.
 *
 * @param from the higher speed v_b
 * @param to the lower speed v_e
 * @param fromAt the place s_b
 * @param toAt the place s_e, beyond s_b
 * @param samples how many samples lie between the two speeds
 */
public record MeanDeceleration(Speed from, Speed to, Distance fromAt, Distance toAt, int samples) implements Evident {
    private static final int FEW = 10;

    /**
     * Checks the order.
     *
     * @param from the higher speed v_b
     * @param to the lower speed v_e
     * @param fromAt the place s_b
     * @param toAt the place s_e, beyond s_b
     * @param samples how many samples lie between the two speeds
     * @throws IllegalArgumentException if v_b does not exceed v_e or s_e does not exceed s_b
     */
    public MeanDeceleration {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(fromAt, "fromAt");
        Objects.requireNonNull(to, "to");
        Objects.requireNonNull(toAt, "toAt");
        if (!(from.compareTo(to) > 0 && toAt.compareTo(fromAt) > 0)) {
            throw new IllegalArgumentException("mean deceleration needs a falling speed over a distance, got " + from
                    + " at " + fromAt + " and " + to + " at " + toAt);
        }
    }

    /**
     * Takes the four figures of a test sheet.
     *
     * @param from the higher speed v_b
     * @param to the lower speed v_e
     * @param fromAt the place s_b
     * @param toAt the place s_e, beyond s_b
     * @return the mean
     * @throws IllegalArgumentException if v_b does not exceed v_e or s_e does not exceed s_b
     */
    public static MeanDeceleration between(Speed from, Speed to, Distance fromAt, Distance toAt) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(fromAt, "fromAt");
        Objects.requireNonNull(to, "to");
        Objects.requireNonNull(toAt, "toAt");
        return new MeanDeceleration(from, to, fromAt, toAt, 2);
    }

    /**
     * Gives the mean deceleration d_m.
     *
     * @return the deceleration
     */
    public Deceleration deceleration() {
        double b = from.inMps();
        double e = to.inMps();
        return Deceleration.mps2((b - e) * (b + e) / (2 * (toAt.inMetres() - fromAt.inMetres())));
    }

    /**
     * Goes back from the mean to a stopping distance: s = v t + v²/(2 d_m).
     *
     * @param name a short name for the rule
     * @param lag the time t at constant speed that stands for dead time and build-up, in [0, 30] s
     * @return the rule that gives the distance for any speed
     * @throws IllegalArgumentException if the lag is out of range
     */
    public KinematicRule rule(String name, TimeSpan lag) {
        Objects.requireNonNull(name, "name");
        return new KinematicRule(
                name,
                lag,
                deceleration(),
                Source.assumed("mean deceleration of a recorded stop and a lag given by the caller"));
    }

    /**
     * Says what the mean rests on.
     *
     * @return the evidence, with a caveat if few samples lie between the two speeds
     */
    @Override
    public Evidence evidence() {
        return Evidence.of(
                        "mean deceleration over distance from " + from + " at " + fromAt + " to " + to + " at " + toAt)
                .withCaveatIf(
                        samples < FEW,
                        "only " + samples + " samples lie between " + from + " and " + to
                                + ": the mean leans on their interpolation");
    }

    @Override
    public String toString() {
        return "mean deceleration " + deceleration() + " from " + from + " to " + to;
    }
}
