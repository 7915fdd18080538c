package io.github.stoplag.film;

import java.util.Arrays;

/**
 * A monotone course from 0 to 1 whose speed is a function of where it is: dx/dt = h(x), h straight between fixed levels
 * and falling to 0 at x = 1, so that the end is approached exponentially.
 *
 * <p>An LED with a first-order rise has h = (1 − x)/τ, a ramp h = 1/T, a filament whose temperature alone moves it some
 * other h. Piece by piece x, its time and its integral have closed forms. Time is counted in rise times (10 to 90 %)
 * from the middle level, x = 0.5.
 *
 * <p>It is a workspace: {@link #set} changes it.
 */
final class RiseShape {
    /** The levels between which the speed is straight. */
    static final double[] LEVELS = {
        0, 0.001, 0.003, 0.01, 0.02, 0.04, 0.07, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7,
        0.75, 0.8, 0.84, 0.87, 0.9, 0.93, 0.955, 0.975, 0.99, 0.997
    };

    private static final int LOW = 7;
    private static final int MIDDLE = 15;
    private static final int HIGH = 24;
    private static final int LAST = LEVELS.length - 1;
    private static final double SMALL = 1e-4;
    private static final double SERIES = 0.4;
    /** Of 9 down to 2. */
    private static final double[] INVERSE_FACTORIALS = {
        1 / 362880.0, 1 / 40320.0, 1 / 5040.0, 1 / 720.0, 1 / 120.0, 1 / 24.0, 1 / 6.0, 1 / 2.0
    };

    private final double[] log = new double[LEVELS.length];
    private final double[] speed = new double[LEVELS.length];
    private final double[] slope = new double[LEVELS.length];
    private final double[] at = new double[LEVELS.length];
    private final double[] area = new double[LEVELS.length];

    /** Takes a shape from the logarithm of its speed at the levels, in any unit. */
    RiseShape set(double[] logSpeed) {
        double top = logSpeed[MIDDLE];
        for (int k = 0; k <= LAST; k++) {
            log[k] = Math.max(-60, Math.min(60, logSpeed[k] - top));
            speed[k] = Math.exp(log[k]);
        }
        for (int k = 0; k < LAST; k++) {
            double step = LEVELS[k + 1] - LEVELS[k];
            slope[k] = (speed[k + 1] - speed[k]) / step;
            // speed grows as e^(slope t): the logarithms tell the time
            double growth = log[k + 1] - log[k];
            double ratio = (speed[k + 1] - speed[k]) / speed[k];
            at[k + 1] = at[k]
                    + step
                            / speed[k]
                            * (Math.abs(growth) < SMALL ? 1 - growth / 2 + growth * growth / 12 : growth / ratio);
        }
        slope[LAST] = -speed[LAST] / (1 - LEVELS[LAST]);
        double rise = at[HIGH] - at[LOW];
        double middle = at[MIDDLE];
        for (int k = 0; k <= LAST; k++) {
            speed[k] *= rise;
            slope[k] *= rise;
            at[k] = (at[k] - middle) / rise;
        }
        for (int k = 0; k < LAST; k++) {
            area[k + 1] = area[k] + areaWithin(k, at[k + 1] - at[k]);
        }
        return this;
    }

    /** The time from the lower end of a piece to a level in it. */
    private double within(int piece, double level) {
        double dx = level - LEVELS[piece];
        double ratio = slope[piece] * dx / speed[piece];
        return dx
                / speed[piece]
                * (Math.abs(ratio) < SMALL ? 1 - ratio / 2 + ratio * ratio / 3 : Math.log1p(ratio) / ratio);
    }

    private double areaWithin(int piece, double time) {
        double mt = slope[piece] * time;
        // (e^mt − 1 − mt)/mt², by its series where that is exact to 1e-10 and quicker
        double bend = 0;
        if (Math.abs(mt) < SERIES) {
            for (double inverse : INVERSE_FACTORIALS) {
                bend = bend * mt + inverse;
            }
        } else {
            bend = (Math.expm1(mt) - mt) / (mt * mt);
        }
        return time * (LEVELS[piece] + speed[piece] * time * bend);
    }

    /** The time of a level in (0, 1). */
    double timeTo(double level) {
        int piece = 0;
        while (piece < LAST && LEVELS[piece + 1] <= level) {
            piece++;
        }
        return at[piece] + within(piece, level);
    }

    double start() {
        return at[0];
    }

    /** The mean time of the light that is switched, ∫ t dx: where all of it would jump to give the same total. */
    double centroid() {
        return at[LAST] - area[LAST] - (1 - LEVELS[LAST]) / slope[LAST];
    }

    /** The piece a time after the start lies in. */
    int piece(double time) {
        int lo = 0;
        int hi = LAST;
        while (lo < hi) {
            int mid = (lo + hi + 1) >>> 1;
            if (at[mid] <= time) {
                lo = mid;
            } else {
                hi = mid - 1;
            }
        }
        return lo;
    }

    double level(double time, int piece) {
        double dt = time - at[piece];
        double mt = slope[piece] * dt;
        double mean = Math.abs(mt) < SMALL ? 1 + mt / 2 : Math.expm1(mt) / mt;
        return LEVELS[piece] + speed[piece] * dt * mean;
    }

    /** The integral of x up to a time in a piece. */
    double area(double time, int piece) {
        return area[piece] + areaWithin(piece, time - at[piece]);
    }

    /** The level at any time. */
    double level(double time) {
        return time <= at[0] ? 0 : Math.min(1, level(time, piece(time)));
    }

    double[] bends() {
        return Arrays.copyOf(at, at.length);
    }
}
