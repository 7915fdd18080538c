package io.github.stoplag.kernel;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Ranges;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The motion of one vehicle along the road as phases of constant jerk, from time 0 and position 0 on.
 *
 * <p>In a phase that starts at t₀ with position s₀, speed v₀, deceleration d₀ and jerk k, with τ = t − t₀:
 *
 * <pre>
 *   d = d₀ + k τ      v = v₀ − d₀ τ − k τ²/2      s = s₀ + v₀ τ − d₀ τ²/2 − k τ³/6
 * </pre>
 *
 * <p>Symbols: s position [m], v speed [m/s], d deceleration [m/s²], positive where the vehicle slows, k its rate of
 * change [m/s³]. Once the speed has come down to zero the vehicle rests for ever; it never reverses. Position and speed
 * are continuous, deceleration may jump.
 *
 * <p>Example, a stop: {@code Trajectory.startingAt(20).cruise(1.0).changeTo(7.0, 0.3).build()}. After the last phase
 * the vehicle holds the deceleration it has: until rest if that is positive, for ever at constant speed if it is 0.
 */
public final class Trajectory {

    private final Phases phases;

    private Trajectory(Phases phases) {
        this.phases = phases;
    }

    /**
     * One phase of constant jerk.
     *
     * @param startS when it starts, in s; it lasts until the next one starts, the last one for ever
     * @param positionM the position at its start, in m
     * @param speedMps the speed at its start, in m/s
     * @param decelMps2 the deceleration at its start, in m/s²
     * @param jerkMps3 the rate of change of deceleration, in m/s³
     */
    public record Phase(double startS, double positionM, double speedMps, double decelMps2, double jerkMps3) {
        /**
         * Checks that the phase is one a vehicle can be in.
         *
         * @param startS when it starts, not negative
         * @param positionM the position at its start, not negative
         * @param speedMps the speed at its start, not negative
         * @param decelMps2 the deceleration at its start
         * @param jerkMps3 the rate of change of deceleration
         * @throws IllegalArgumentException if a value is not finite, or one of the first three is negative
         */
        public Phase {
            Check.inRange("start of a phase", startS, 0, Double.MAX_VALUE, "s");
            Check.inRange("position at the start of a phase", positionM, 0, Double.MAX_VALUE, "m");
            Check.inRange("speed at the start of a phase", speedMps, 0, Double.MAX_VALUE, "m/s");
            Check.inRange("deceleration of a phase", decelMps2, -Double.MAX_VALUE, Double.MAX_VALUE, "m/s²");
            Check.inRange("jerk of a phase", jerkMps3, -Double.MAX_VALUE, Double.MAX_VALUE, "m/s³");
        }
    }

    /**
     * Starts describing a motion.
     *
     * @param speedMps the speed at time 0, in [0, 150] m/s
     * @return a builder without phases
     * @throws IllegalArgumentException if the speed is out of range
     */
    public static Builder startingAt(double speedMps) {
        return new Builder(Ranges.SPEED.check(speedMps));
    }

    /**
     * Gives the standard stop: constant speed until the brake onset, linear build-up, constant deceleration to rest.
     *
     * @param speedMps the speed at time 0, in [0, 150] m/s
     * @param brakeOnsetS when the deceleration starts, in [0, 1e6] s
     * @param buildUpS how long it takes to build up, in [0, 1e6] s
     * @param decelMps2 the deceleration after the build-up, in [0, 200] m/s²; 0 never brakes
     * @return the motion
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static Trajectory stop(double speedMps, double brakeOnsetS, double buildUpS, double decelMps2) {
        Ranges.ELAPSED.check("brake onset", brakeOnsetS);
        Ranges.BUILD_UP.check(buildUpS);
        Ranges.DECELERATION.check(decelMps2);
        return startingAt(speedMps)
                .cruise(brakeOnsetS)
                .changeTo(decelMps2, buildUpS)
                .build();
    }

    /**
     * Gives the position.
     *
     * @param timeS the time, in [0, 1e6] s
     * @return the distance run since time 0, in m
     * @throws IllegalArgumentException if the time is out of range
     */
    public double positionAtM(double timeS) {
        return phases.positionAtM(phaseAt(timeS), timeS);
    }

    /**
     * Gives the speed.
     *
     * @param timeS the time, in [0, 1e6] s
     * @return the speed in m/s
     * @throws IllegalArgumentException if the time is out of range
     */
    public double speedAtMps(double timeS) {
        return Math.max(0, phases.speedAtMps(phaseAt(timeS), timeS));
    }

    /**
     * Gives the deceleration; at a jump, the one after it.
     *
     * @param timeS the time, in [0, 1e6] s
     * @return the deceleration in m/s², negative where the vehicle speeds up
     * @throws IllegalArgumentException if the time is out of range
     */
    public double decelerationAtMps2(double timeS) {
        int i = phaseAt(timeS);
        return phases.decelMps2[i] + phases.jerkMps3[i] * (timeS - phases.startS[i]);
    }

    /**
     * Gives the time at which the vehicle has come to rest.
     *
     * @return the time in s, or nothing if it never stops
     */
    public OptionalDouble restS() {
        return Double.isInfinite(phases.restS) ? OptionalDouble.empty() : OptionalDouble.of(phases.restS);
    }

    /**
     * Gives the distance run from time 0 to rest.
     *
     * @return the distance in m, or nothing if the vehicle never stops
     */
    public OptionalDouble restPositionM() {
        return Double.isInfinite(phases.restS)
                ? OptionalDouble.empty()
                : OptionalDouble.of(phases.positionM[phases.count - 1]);
    }

    /**
     * Gives the phases in order: the rest after a stop is the last one, and a motion that never stops has none.
     *
     * @return the phases, at least one
     */
    public List<Phase> phases() {
        return IntStream.range(0, phases.count)
                .mapToObj(i -> new Phase(
                        phases.startS[i],
                        phases.positionM[i],
                        phases.speedMps[i],
                        phases.decelMps2[i],
                        phases.jerkMps3[i]))
                .toList();
    }

    Phases buffer() {
        return phases;
    }

    private int phaseAt(double timeS) {
        Ranges.ELAPSED.check(timeS);
        int i = phases.count - 1;
        while (i > 0 && timeS < phases.startS[i]) {
            i--;
        }
        return i;
    }

    @Override
    public String toString() {
        return "Trajectory" + phases();
    }

    /** Collects the phases of a motion in order. A builder is used once, by one thread. */
    public static final class Builder {
        private final double speedMps;
        private final List<double[]> parts = new ArrayList<>();
        private double decelMps2;

        private Builder(double speedMps) {
            this.speedMps = speedMps;
        }

        /**
         * Appends a phase at constant speed; the deceleration drops to 0 at once.
         *
         * @param durationS how long, in [0, 1e6] s
         * @return this builder
         * @throws IllegalArgumentException if the duration is out of range
         */
        public Builder cruise(double durationS) {
            decelMps2 = 0;
            return hold(durationS);
        }

        /**
         * Appends a phase in which the deceleration changes linearly from what it is to another value.
         *
         * @param targetMps2 the deceleration at the end, in [-200, 200] m/s²; negative speeds the vehicle up
         * @param durationS how long, in [0, 1e6] s; 0 makes the deceleration jump
         * @return this builder
         * @throws IllegalArgumentException if an argument is out of range
         */
        public Builder changeTo(double targetMps2, double durationS) {
            Ranges.SIGNED_DECELERATION.check(targetMps2);
            Ranges.ELAPSED.check("duration", durationS);
            if (durationS > 0) {
                parts.add(new double[] {decelMps2, (targetMps2 - decelMps2) / durationS, durationS});
            }
            decelMps2 = targetMps2;
            return this;
        }

        /**
         * Appends a phase that holds the deceleration reached so far.
         *
         * @param durationS how long, in [0, 1e6] s
         * @return this builder
         * @throws IllegalArgumentException if the duration is out of range
         */
        public Builder hold(double durationS) {
            Ranges.ELAPSED.check("duration", durationS);
            parts.add(new double[] {decelMps2, 0, durationS});
            return this;
        }

        /**
         * Ends the description; the vehicle holds the deceleration it has for ever, or until rest.
         *
         * @return the motion
         */
        public Trajectory build() {
            Phases phases = new Phases(parts.size() + 2);
            phases.begin(speedMps);
            for (double[] part : parts) {
                phases.append(part[0], part[1], part[2]);
            }
            phases.append(decelMps2, 0, Double.POSITIVE_INFINITY);
            return new Trajectory(phases);
        }
    }
}
