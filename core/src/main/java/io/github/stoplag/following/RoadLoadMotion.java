package io.github.stoplag.following;

import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.RoadLoad;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.ode.ContinuousOutputModel;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;

/**
 * The motion of a vehicle that rolling resistance and aerodynamic drag slow besides its brakes.
 *
 * <p>dv/dt = −(a(t) + g C_rr + k v²) while v > 0, from the moment the engine no longer holds the speed
 *
 * <p>a(t) deceleration by the brakes [m/s²], taken over time from a motion without road load; g C_rr and k as in {@link
 * RoadLoad}. Integrated phase by phase with the embedded Runge-Kutta method of Dormand and Prince, order 8(5,3),
 * tolerance 1e-11 m and m/s, the moment of rest as an event. The result is a motion of constant-jerk pieces of at most
 * 20 ms that agree with the integration in position and speed at their ends, so that all exact methods take it; between
 * the ends it is closer than 1e-8 m for road vehicles. Rest is final.
 */
public final class RoadLoadMotion {
    private static final double PIECE_S = 0.02;
    private static final double TOLERANCE = 1e-11;
    private static final double FITTED_FROM_S = 1e-3;

    private final Trajectory braking;
    private final RoadLoad load;
    private final double rollingMps2;

    private RoadLoadMotion(Trajectory braking, RoadLoad load) {
        this.braking = braking;
        this.load = load;
        this.rollingMps2 = load.rolling().inMps2();
    }

    /**
     * Adds road load to a motion.
     *
     * @param braking the motion that the brakes alone would give
     * @param load rolling resistance and drag
     * @param engineOff the moment from which on the engine no longer balances the road load, in [0, 1e6] s
     * @return the motion with road load; the same motion without any
     * @throws IllegalArgumentException if the moment is out of range, or neither brakes nor rolling resistance ever
     *     bring the vehicle to rest
     */
    public static Trajectory of(Trajectory braking, RoadLoad load, TimeSpan engineOff) {
        Objects.requireNonNull(engineOff, "engineOff");
        Objects.requireNonNull(braking, "braking");
        double fromS = Ranges.ELAPSED.check("engine-off time", engineOff.inSeconds());
        boolean none = load.dragPerM() == 0 && load.rolling().inMps2() == 0;
        return none || braking.speedAtMps(fromS) == 0 ? braking : new RoadLoadMotion(braking, load).from(fromS);
    }

    private Trajectory from(double fromS) {
        List<Trajectory.Phase> phases = braking.phases();
        int moving = braking.restS().isPresent() ? phases.size() - 1 : phases.size();
        Trajectory.Phase last = phases.get(moving - 1);
        Ranges.BRAKING.check("deceleration at rest with brakes and rolling resistance", last.decelMps2() + rollingMps2);
        Trajectory.Builder motion = Trajectory.startingAt(phases.get(0).speedMps());
        double[] state = {0, phases.get(0).speedMps()};
        for (int i = 0; i < moving && state[1] > 0; i++) {
            Trajectory.Phase phase = phases.get(i);
            double endS = i + 1 < moving ? phases.get(i + 1).startS() : Double.POSITIVE_INFINITY;
            double heldS = Math.min(fromS, endS) - phase.startS();
            if (heldS > 0) {
                motion.changeTo(phase.decelMps2(), 0);
                motion.changeTo(phase.decelMps2() + phase.jerkMps3() * heldS, heldS);
                state = new double[] {
                    braking.positionAtM(phase.startS() + heldS), braking.speedAtMps(phase.startS() + heldS)
                };
            }
            if (endS > fromS) {
                state = integrate(phase, Math.max(fromS, phase.startS()), endS, state, motion);
            }
        }
        return motion.changeTo(last.decelMps2() + rollingMps2, 0).build();
    }

    /** Integrates within one phase of the brakes and appends the pieces; gives position and speed at the end. */
    private double[] integrate(
            Trajectory.Phase phase, double startS, double endS, double[] state, Trajectory.Builder motion) {
        double aimS = endS < Double.POSITIVE_INFINITY ? endS : startS + longestS(phase, state[1]);
        ContinuousOutputModel dense = new ContinuousOutputModel();
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-13, 0.5, TOLERANCE, TOLERANCE);
        integrator.addStepHandler(dense);
        integrator.addEventHandler(new Rest(), 0.5, 1e-13, 100);
        double[] end = new double[2];
        double stopS = integrator.integrate(new Slowing(phase), startS, state, aimS, end);
        int count = (int) Math.ceil((stopS - startS) / PIECE_S);
        double[] before = state;
        for (int i = 0; i < count; i++) {
            double fromS = startS + (stopS - startS) * i / count;
            double toS = startS + (stopS - startS) * (i + 1) / count;
            dense.setInterpolatedTime(toS);
            double[] after = i + 1 < count ? dense.getInterpolatedState().clone() : end;
            append(phase, fromS, before, toS, after, motion);
            before = after;
        }
        return new double[] {end[0], stopS < aimS ? 0 : Math.max(0, end[1])};
    }

    /** A time after which the vehicle has surely come to rest: drag left out. */
    private double longestS(Trajectory.Phase phase, double speedMps) {
        return 1 + 2 * speedMps / (phase.decelMps2() + rollingMps2);
    }

    private void append(
            Trajectory.Phase phase,
            double fromS,
            double[] before,
            double toS,
            double[] after,
            Trajectory.Builder motion) {
        double lengthS = toS - fromS;
        double first = decelMps2(phase, fromS, before[1]);
        double second = decelMps2(phase, toS, after[1]);
        if (lengthS >= FITTED_FROM_S) {
            double meanMps2 = (before[1] - after[1]) / lengthS;
            double lagMps2 = (before[1] - (after[0] - before[0]) / lengthS) / lengthS;
            double growth = 6 * meanMps2 - 12 * lagMps2;
            first = meanMps2 - 0.5 * growth;
            second = meanMps2 + 0.5 * growth;
        }
        motion.changeTo(first, 0).changeTo(second, lengthS);
    }

    private double decelMps2(Trajectory.Phase phase, double timeS, double speedMps) {
        return phase.decelMps2()
                + phase.jerkMps3() * (timeS - phase.startS())
                + rollingMps2
                + load.dragPerM() * speedMps * speedMps;
    }

    /** Position and speed as the state. */
    private final class Slowing implements FirstOrderDifferentialEquations {
        private final Trajectory.Phase phase;

        private Slowing(Trajectory.Phase phase) {
            this.phase = phase;
        }

        @Override
        public int getDimension() {
            return 2;
        }

        @Override
        public void computeDerivatives(double timeS, double[] state, double[] rate) {
            rate[0] = state[1];
            rate[1] = -decelMps2(phase, timeS, state[1]);
        }
    }

    /** Ends the integration when the speed has come down to zero. */
    private static final class Rest implements EventHandler {
        @Override
        public void init(double startS, double[] state, double endS) {
            // nothing to remember between runs
        }

        @Override
        public double g(double timeS, double[] state) {
            return state[1];
        }

        @Override
        public Action eventOccurred(double timeS, double[] state, boolean increasing) {
            return Action.STOP;
        }

        @Override
        public void resetState(double timeS, double[] state) {
            // the integration stops instead
        }
    }
}
