package io.github.stoplag.kernel;

import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;

/**
 * The same pair by numerical integration with event detection: the second way to each outcome. It shares nothing with
 * the kernel; the integration is split at every kink, with a new integrator for each piece.
 */
final class IntegratorRival {
    private final Scenario scenario;
    private final double[] state;
    private double timeS;

    boolean contact;
    double contactS;
    double closingMps;
    double smallestGapM;

    /** State: gap, leader's speed, follower's speed. */
    IntegratorRival(Scenario scenario) {
        this.scenario = scenario;
        state = new double[] {scenario.gapM(), scenario.leaderMps(), scenario.followerMps()};
        smallestGapM = scenario.gapM();
        while (!contact && timeS < 400 && (moving(1) || moving(2))) {
            integrateTo(nextKinkS());
        }
    }

    private boolean moving(int vehicle) {
        return state[vehicle] > 0;
    }

    private double nextKinkS() {
        double next = 400;
        for (double kink : new double[] {
            scenario.leaderOnsetS(),
            scenario.leaderOnsetS() + scenario.leaderBuildUpS(),
            scenario.followerOnsetS(),
            scenario.followerOnsetS() + scenario.followerBuildUpS()
        }) {
            if (kink > timeS + 1e-9 && kink < next) {
                next = kink;
            }
        }
        return next;
    }

    private static double decelMps2(double t, double onset, double buildUp, double full) {
        double share = buildUp > 0 ? (t - onset) / buildUp : t >= onset ? 1 : 0;
        return full * Math.min(1, Math.max(0, share));
    }

    private void integrateTo(double endS) {
        double middle = 0.5 * (timeS + endS);
        boolean leaderMoves = moving(1);
        boolean followerMoves = moving(2);
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 1, 1e-11, 1e-11);
        int[] stoppedBy = {-1};
        // events: the gap closes, the leader rests, the follower rests, the speeds are equal (an extremum of the gap)
        integrator.addEventHandler(new Zero(0, stoppedBy, true), 0.02, 1e-12, 200);
        if (leaderMoves) {
            integrator.addEventHandler(new Zero(1, stoppedBy, true), 0.02, 1e-12, 200);
        }
        if (followerMoves) {
            integrator.addEventHandler(new Zero(2, stoppedBy, true), 0.02, 1e-12, 200);
        }
        if (leaderMoves && followerMoves) {
            integrator.addEventHandler(new Zero(3, stoppedBy, false), 0.02, 1e-12, 200);
        }
        FirstOrderDifferentialEquations motion = new FirstOrderDifferentialEquations() {
            @Override
            public int getDimension() {
                return 3;
            }

            @Override
            public void computeDerivatives(double t, double[] y, double[] rate) {
                // a step in deceleration sits on a kink: ask on the inner side of it
                double inside = Math.min(Math.max(t, timeS + 1e-12), endS - 1e-12);
                rate[0] = y[1] - y[2];
                rate[1] = leaderMoves
                        ? -decelMps2(
                                scenario.leaderBuildUpS() > 0 ? inside : middle,
                                scenario.leaderOnsetS(),
                                scenario.leaderBuildUpS(),
                                scenario.leaderMps2())
                        : 0;
                rate[2] = followerMoves
                        ? -decelMps2(
                                scenario.followerBuildUpS() > 0 ? inside : middle,
                                scenario.followerOnsetS(),
                                scenario.followerBuildUpS(),
                                scenario.followerMps2())
                        : 0;
            }
        };
        double[] end = new double[3];
        timeS = integrator.integrate(motion, timeS, state, endS, end);
        System.arraycopy(end, 0, state, 0, 3);
        smallestGapM = Math.min(smallestGapM, state[0]);
        if (stoppedBy[0] == 0) {
            contact = true;
            contactS = timeS;
            closingMps = state[2] - state[1];
        } else if (stoppedBy[0] > 0) {
            state[stoppedBy[0]] = 0;
        }
    }

    private final class Zero implements EventHandler {
        private final int what;
        private final int[] stoppedBy;
        private final boolean stops;

        Zero(int what, int[] stoppedBy, boolean stops) {
            this.what = what;
            this.stoppedBy = stoppedBy;
            this.stops = stops;
        }

        @Override
        public void init(double t0, double[] y0, double t) {}

        @Override
        public double g(double t, double[] y) {
            return what == 3 ? y[1] - y[2] : y[what];
        }

        @Override
        public Action eventOccurred(double t, double[] y, boolean increasing) {
            smallestGapM = Math.min(smallestGapM, y[0]);
            if (stops) {
                stoppedBy[0] = what;
            }
            return stops ? Action.STOP : Action.CONTINUE;
        }

        @Override
        public void resetState(double t, double[] y) {
            throw new IllegalStateException("no event resets the state");
        }
    }
}
