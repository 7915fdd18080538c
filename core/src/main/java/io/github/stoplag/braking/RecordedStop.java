package io.github.stoplag.braking;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.Speed;
import java.util.Objects;
import java.util.Optional;

/**
 * A recorded stop: samples of distance and speed from the first movement of the brake control on.
 *
 * <pre>
 *   between samples the deceleration is constant:  v² falls linearly with s
 *   s(v) = s_i + (s_{i+1} − s_i) (v_i² − v²)/(v_i² − v_{i+1}²)
 * </pre>
 *
 * <p>Symbols: s distance [m], v speed [m/s]. The initial speed v₀ is that of the first sample.
 *
 * <p>Range: at least 2 samples, distance not falling, speed not rising by more than the stated noise. Where noise lets
 * the speed cross a level more than once, the middle between its first and last crossing counts.
 */
public final class RecordedStop {
    private final double[] distanceM;
    private final double[] speedMps;

    private RecordedStop(double[] distanceM, double[] speedMps) {
        this.distanceM = distanceM;
        this.speedMps = speedMps;
    }

    /**
     * Takes samples of distance and speed without noise.
     *
     * @param distanceM the distances in m, not falling
     * @param speedMps the speeds in m/s, not rising
     * @return the recorded stop
     * @throws IllegalArgumentException if there are fewer than 2 samples, the arrays differ in length, or a sample is
     *     out of range or order; the message names its index, counted from 0
     */
    public static RecordedStop of(double[] distanceM, double[] speedMps) {
        Objects.requireNonNull(distanceM, "distanceM");
        Objects.requireNonNull(speedMps, "speedMps");
        return of(distanceM, speedMps, Speed.mps(0));
    }

    /**
     * Takes samples of distance and noisy speed.
     *
     * @param distanceM the distances in m, not falling
     * @param speedMps the speeds in m/s
     * @param noise how far a speed may lie above the lowest before it
     * @return the recorded stop
     * @throws IllegalArgumentException if there are fewer than 2 samples, the arrays differ in length, or a sample is
     *     out of range or order; the message names its index, counted from 0
     */
    public static RecordedStop of(double[] distanceM, double[] speedMps, Speed noise) {
        Objects.requireNonNull(distanceM, "distanceM");
        Objects.requireNonNull(noise, "noise");
        Objects.requireNonNull(speedMps, "speedMps");
        checkLengths("distance", distanceM.length, speedMps.length);
        double lowestMps = Double.POSITIVE_INFINITY;
        for (int i = 0; i < speedMps.length; i++) {
            Check.inRange("distance of sample " + i, distanceM[i], -1e6, 1e6, "m");
            Ranges.SPEED.check("speed of sample " + i, speedMps[i]);
            if (i > 0 && distanceM[i] < distanceM[i - 1]) {
                throw disorder(i, "distance must not fall", distanceM[i], distanceM[i - 1], "m");
            }
            if (speedMps[i] > lowestMps + noise.inMps()) {
                throw disorder(i, "speed must not rise by more than " + noise, speedMps[i], lowestMps, "m/s");
            }
            lowestMps = Math.min(lowestMps, speedMps[i]);
        }
        Ranges.MOVING.check("initial speed", speedMps[0]);
        return new RecordedStop(distanceM.clone(), speedMps.clone());
    }

    /**
     * Takes samples of time and speed; the distance is the area under the speed, straight between samples.
     *
     * @param timeS the times in s, rising
     * @param speedMps the speeds in m/s
     * @param noise how far a speed may lie above the lowest before it; 0 for none
     * @return the recorded stop
     * @throws IllegalArgumentException if there are fewer than 2 samples, the arrays differ in length, or a sample is
     *     out of range or order; the message names its index, counted from 0
     */
    public static RecordedStop ofTimes(double[] timeS, double[] speedMps, Speed noise) {
        Objects.requireNonNull(noise, "noise");
        Objects.requireNonNull(speedMps, "speedMps");
        Objects.requireNonNull(timeS, "timeS");
        checkLengths("time", timeS.length, speedMps.length);
        double[] distanceM = new double[timeS.length];
        Ranges.TIME.check("time of sample 0", timeS[0]);
        for (int i = 1; i < timeS.length; i++) {
            Ranges.TIME.check("time of sample " + i, timeS[i]);
            if (!(timeS[i] > timeS[i - 1])) {
                throw disorder(i, "time must rise", timeS[i], timeS[i - 1], "s");
            }
            distanceM[i] = distanceM[i - 1] + 0.5 * (speedMps[i] + speedMps[i - 1]) * (timeS[i] - timeS[i - 1]);
            // a bad speed is named by its own check, not as a bad distance
            Ranges.SPEED.check("speed of sample " + i, speedMps[i]);
        }
        return of(distanceM, speedMps, noise);
    }

    private static void checkLengths(String other, int length, int speeds) {
        if (length != speeds) {
            throw new IllegalArgumentException(
                    other + " and speed must have one sample each, got " + length + " and " + speeds);
        }
        if (length < 2) {
            throw new IllegalArgumentException("a recorded stop needs at least 2 samples, got " + length);
        }
    }

    private static IllegalArgumentException disorder(int i, String rule, double value, double before, String unit) {
        return new IllegalArgumentException("sample " + i + ": " + rule + ", got " + Numbers.text(value) + " " + unit
                + " after " + Numbers.text(before) + " " + unit);
    }

    /**
     * Gives the speed of the first sample.
     *
     * @return the initial speed v₀
     */
    public Speed initialSpeed() {
        return Speed.mps(speedMps[0]);
    }

    /**
     * Gives the stopping distance: from the first sample to the first one at rest.
     *
     * @return the distance, or nothing if the recording ends before the vehicle stands
     */
    public Optional<Distance> stoppingDistance() {
        return speedMps[speedMps.length - 1] == 0
                ? Optional.of(Distance.metres(crossingM(0) - distanceM[0]))
                : Optional.empty();
    }

    /**
     * Gives the mean fully developed deceleration: the mean over distance between 0.8 and 0.1 of the initial speed.
     *
     * <p>d_m = (v_b² − v_e²)/(2 (s_e − s_b)), v_b = 0.8 v₀, v_e = 0.1 v₀; with speeds in km/h the divisor is 25.92 (s_e
     * − s_b)
     *
     * <p>Source: UN Regulations No. 13 and 13-H, annex on braking tests.
     *
     * @return the mean with the places it was taken between
     * @throws IllegalArgumentException if the recording ends before 0.1 of the initial speed
     */
    public MeanDeceleration meanFullyDevelopedDeceleration() {
        return meanDeceleration(Speed.mps(0.8 * speedMps[0]), Speed.mps(0.1 * speedMps[0]));
    }

    /**
     * Gives the mean deceleration over distance between two speeds.
     *
     * @param from the higher speed v_b
     * @param to the lower speed v_e
     * @return the mean with the places it was taken between
     * @throws IllegalArgumentException if the speeds are not in order or the recording does not cover them
     */
    public MeanDeceleration meanDeceleration(Speed from, Speed to) {
        double lastMps = speedMps[speedMps.length - 1];
        if (!(from.inMps() > to.inMps())) {
            throw new IllegalArgumentException(
                    "mean deceleration needs a higher speed first, got " + from + " and " + to);
        }
        if (!(from.inMps() <= speedMps[0] && to.inMps() >= lastMps)) {
            throw new IllegalArgumentException("recording must cover " + from + " down to " + to + ", it runs from "
                    + Numbers.text(speedMps[0]) + " m/s to " + Numbers.text(lastMps) + " m/s");
        }
        double fromM = crossingM(from.inMps());
        double toM = crossingM(to.inMps());
        if (!(toM > fromM)) {
            throw new IllegalArgumentException("recording must move between " + from + " and " + to + ", both are at "
                    + Numbers.text(fromM) + " m");
        }
        return new MeanDeceleration(
                from,
                to,
                Distance.metres(fromM - distanceM[0]),
                Distance.metres(toM - distanceM[0]),
                between(from, to));
    }

    private int between(Speed from, Speed to) {
        int count = 0;
        for (double v : speedMps) {
            if (v <= from.inMps() && v >= to.inMps()) {
                count++;
            }
        }
        return count;
    }

    /** The place where the speed falls through a level: the middle of first and last crossing. */
    private double crossingM(double levelMps) {
        int first = 0;
        while (speedMps[first] > levelMps) {
            first++;
        }
        int last = speedMps.length - 1;
        while (last > first && speedMps[last - 1] <= levelMps) {
            last--;
        }
        return 0.5 * (fallM(first, levelMps) + fallM(last, levelMps));
    }

    /** The place before sample i, whose speed is at or below the level, where the level is met. */
    private double fallM(int i, double levelMps) {
        if (i == 0) {
            return distanceM[0];
        }
        double above = speedMps[i - 1] * speedMps[i - 1];
        double share = (above - levelMps * levelMps) / (above - speedMps[i] * speedMps[i]);
        return distanceM[i - 1] + share * (distanceM[i] - distanceM[i - 1]);
    }
}
