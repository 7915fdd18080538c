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
        0, 0.001, 0.003, 0.01, 0.02, 0.04, 0.07, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.87, 0.93, 0.97, 0.99
    };

    private static final int LOW = 7;
    private static final int MIDDLE = 12;
    private static final double LEVEL_HIGH = 0.9;
    private static final int LAST = LEVELS.length - 1;
    private static final double SMALL = 1e-4;

    private final double[] speed = new double[LEVELS.length];
    private final double[] slope = new double[LEVELS.length];
    private final double[] at = new double[LEVELS.length];
    private final double[] area = new double[LEVELS.length];

    /** Takes a shape from the logarithm of its speed at the levels, in any unit. */
    RiseShape set(double[] logSpeed) {
        double top = logSpeed[MIDDLE];
        for (int k = 0; k <= LAST; k++) {
            speed[k] = Math.exp(Math.max(-60, Math.min(60, logSpeed[k] - top)));
        }
        for (int k = 0; k < LAST; k++) {
            slope[k] = (speed[k + 1] - speed[k]) / (LEVELS[k + 1] - LEVELS[k]);
            at[k + 1] = at[k] + within(k, LEVELS[k + 1]);
        }
        slope[LAST] = -speed[LAST] / (1 - LEVELS[LAST]);
        double rise = timeTo(LEVEL_HIGH) - at[LOW];
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

    RiseShape copy() {
        RiseShape copy = new RiseShape();
        System.arraycopy(speed, 0, copy.speed, 0, speed.length);
        System.arraycopy(slope, 0, copy.slope, 0, slope.length);
        System.arraycopy(at, 0, copy.at, 0, at.length);
        System.arraycopy(area, 0, copy.area, 0, area.length);
        return copy;
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
        double bend = Math.abs(mt) < SMALL ? 0.5 + mt / 6 : (Math.expm1(mt) - mt) / (mt * mt);
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

    /** The piece a time lies in, searched upward from a piece known to begin earlier; -1 before the start. */
    int piece(double time, int from) {
        int piece = from;
        while (piece < LAST && at[piece + 1] <= time) {
            piece++;
        }
        return piece;
    }

    double level(double time, int piece) {
        if (piece < 0) {
            return 0;
        }
        double dt = time - at[piece];
        double mt = slope[piece] * dt;
        double mean = Math.abs(mt) < SMALL ? 1 + mt / 2 : Math.expm1(mt) / mt;
        return LEVELS[piece] + speed[piece] * dt * mean;
    }

    /** The integral of x up to a time. */
    double area(double time, int piece) {
        return piece < 0 ? 0 : area[piece] + areaWithin(piece, time - at[piece]);
    }

    /** The level at any time. */
    double level(double time) {
        return time <= at[0] ? 0 : Math.min(1, level(time, piece(time, 0)));
    }

    double[] bends() {
        return Arrays.copyOf(at, at.length);
    }
}
