package io.github.stoplag.benchmarks;

import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;

/**
 * The pair by Dormand and Prince's method of order 8 at 1e-9 with event detection, split where a vehicle comes to rest
 * and at the kinks of the deceleration, a new integrator for each piece.
 */
final class IntegratorRival {
    /** The longest of the intervals tried that misses no contact in {@link RivalAccuracy}; 0.1 s misses some. */
    static final double CHECK_S = 0.02;

    boolean contact;
    double timeS;
    double closingMps;
    double smallestGapM;

    private final double checkS;
    private final double[] state = new double[3];
    private int stoppedBy;

    /** Looks for events at least this often. */
    IntegratorRival(double checkS) {
        this.checkS = checkS;
    }

    void run(PairSet set, int i) {
        state[0] = set.gapM[i];
        state[1] = set.leaderMps[i];
        state[2] = set.followerMps[i];
        contact = false;
        smallestGapM = state[0];
        double[] kinks = {
            set.leaderOnsetS[i],
            set.leaderOnsetS[i] + set.leaderBuildUpS[i],
            set.followerOnsetS[i],
            set.followerOnsetS[i] + set.followerBuildUpS[i]
        };
        double t = 0;
        while (!contact && t < 100 && (state[1] > 0 || state[2] > 0)) {
            double end = 100;
            for (double kink : kinks) {
                if (kink > t + 1e-9 && kink < end) {
                    end = kink;
                }
            }
            t = integrate(set, i, t, end);
        }
    }

    private double integrate(PairSet set, int i, double from, double to) {
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-8, 1, 1e-9, 1e-9);
        boolean leaderMoves = state[1] > 0;
        boolean followerMoves = state[2] > 0;
        stoppedBy = -1;
        integrator.addEventHandler(new Zero(0), checkS, 1e-10, 100);
        if (leaderMoves) {
            integrator.addEventHandler(new Zero(1), checkS, 1e-10, 100);
        }
        if (followerMoves) {
            integrator.addEventHandler(new Zero(2), checkS, 1e-10, 100);
        }
        if (leaderMoves && followerMoves) {
            integrator.addEventHandler(new Zero(3), checkS, 1e-10, 100);
        }
        double end = integrator.integrate(
                new FirstOrderDifferentialEquations() {
                    @Override
                    public int getDimension() {
                        return 3;
                    }

                    @Override
                    public void computeDerivatives(double t, double[] y, double[] rate) {
                        rate[0] = y[1] - y[2];
                        rate[1] = leaderMoves
                                ? -SteppingRival.decelMps2(
                                        t, set.leaderOnsetS[i], set.leaderBuildUpS[i], set.leaderMps2[i])
                                : 0;
                        rate[2] = followerMoves
                                ? -SteppingRival.decelMps2(
                                        t, set.followerOnsetS[i], set.followerBuildUpS[i], set.followerMps2[i])
                                : 0;
                    }
                },
                from,
                state,
                to,
                state);
        smallestGapM = Math.min(smallestGapM, state[0]);
        if (stoppedBy == 0) {
            contact = true;
            timeS = end;
            closingMps = state[2] - state[1];
        } else if (stoppedBy > 0) {
            state[stoppedBy] = 0;
        }
        return end;
    }

    /** Gap 0, leader at rest, follower at rest, or equal speeds (an extremum of the gap). */
    private final class Zero implements EventHandler {
        private final int what;

        Zero(int what) {
            this.what = what;
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
            if (what == 3) {
                return Action.CONTINUE;
            }
            stoppedBy = what;
            return Action.STOP;
        }

        @Override
        public void resetState(double t, double[] y) {
            throw new IllegalStateException("no event resets the state");
        }
    }
}
