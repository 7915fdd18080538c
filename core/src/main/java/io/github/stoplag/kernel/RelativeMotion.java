package io.github.stoplag.kernel;

/**
 * The gap over one interval in which both vehicles have constant jerk: a cubic in the time τ since its start, h(τ) = h₀
 * + h₁ τ + h₂ τ²/2 + h₃ τ³/6. It is cut at its extrema into monotone pieces; each piece either crosses zero once or not
 * at all, so no crossing can be missed and every root is bracketed.
 */
final class RelativeMotion {
    private static final int MOST_STEPS = 100;

    private RelativeMotion() {}

    /**
     * Carries the smallest gap and the state of a crossing through one interval.
     *
     * @return true if the gap has gone deeper than the event's contact depth; crossedAtS is then the moment of contact
     */
    static boolean closes(GapEvent event, double startS, double lengthS, double h0, double h1, double h2, double h3) {
        double first = Double.NaN;
        double second = Double.NaN;
        if (h3 == 0) {
            first = -h1 / h2;
        } else {
            double square = h2 * h2 - 2 * h3 * h1;
            if (square > 0) {
                double q = -(h2 + Math.copySign(Math.sqrt(square), h2));
                first = Math.min(q / h3, 2 * h1 / q);
                second = Math.max(q / h3, 2 * h1 / q);
            }
        }
        note(event, h0, startS);
        double fromS = 0;
        double from = h0;
        if (first > 0 && first < lengthS) {
            double to = at(first, h0, h1, h2, h3);
            if (piece(event, startS, fromS, from, first, to, h0, h1, h2, h3)) {
                return true;
            }
            fromS = first;
            from = to;
        }
        if (second > 0 && second < lengthS) {
            double to = at(second, h0, h1, h2, h3);
            if (piece(event, startS, fromS, from, second, to, h0, h1, h2, h3)) {
                return true;
            }
            fromS = second;
            from = to;
        }
        double end = lengthS < Double.POSITIVE_INFINITY ? at(lengthS, h0, h1, h2, h3) : limit(h1, h2, from);
        return piece(event, startS, fromS, from, lengthS, end, h0, h1, h2, h3);
    }

    /** What the gap tends to in a last interval, which has no jerk. */
    private static double limit(double h1, double h2, double constant) {
        double slope = h2 != 0 ? h2 : h1;
        return slope == 0 ? constant : Math.copySign(Double.POSITIVE_INFINITY, slope);
    }

    private static boolean piece(
            GapEvent event,
            double startS,
            double fromS,
            double from,
            double toS,
            double to,
            double h0,
            double h1,
            double h2,
            double h3) {
        note(event, to, startS + toS);
        if (event.contactDepthM == Double.POSITIVE_INFINITY) {
            return false;
        }
        if (to > 0) {
            event.crossedAtS = Double.NaN;
            return false;
        }
        if (from > 0) {
            double tauS =
                    h3 == 0 ? fallingRoot(h0, h1, h2) : bracketedRoot(fromS, from, toS, to, startS, h0, h1, h2, h3);
            event.crossedAtS = startS + Math.min(Math.max(tauS, fromS), toS);
        } else if ((to < from || to < -event.contactDepthM) && Double.isNaN(event.crossedAtS)) {
            // the second only where rounding makes the gap jump between two intervals
            event.crossedAtS = startS + fromS;
        }
        return to < -event.contactDepthM;
    }

    private static void note(GapEvent event, double gapM, double atS) {
        if (gapM < event.smallestGapM) {
            // rounding along a constant gap does not move the moment at which it was first reached
            if (gapM < event.smallestGapM - GapKernel.TIE_M) {
                event.timeS = atS;
            }
            event.smallestGapM = gapM;
        }
    }

    static double at(double tauS, double h0, double h1, double h2, double h3) {
        return h0 + tauS * (h1 + tauS * (0.5 * h2 + tauS * h3 / 6));
    }

    /** The root of h₀ + h₁ τ + h₂ τ²/2 at which it falls: slope −√(h₁² − 2 h₂ h₀), written without cancellation. */
    private static double fallingRoot(double h0, double h1, double h2) {
        double root = Math.sqrt(Math.max(0, h1 * h1 - 2 * h2 * h0));
        // the product may vanish beside a denormal gap
        return h1 <= 0 ? 2 * h0 / Math.max(root - h1, Double.MIN_NORMAL) : -(h1 + root) / h2;
    }

    /** Newton's method inside a shrinking bracket, bisecting where a step would leave it; from &gt; 0 ≥ to. */
    static double bracketedRoot(
            double fromS,
            double from,
            double toS,
            double to,
            double startS,
            double h0,
            double h1,
            double h2,
            double h3) {
        double above = fromS;
        double below = toS;
        double tauS = fromS + (toS - fromS) * from / (from - to);
        for (int step = 0; step < MOST_STEPS; step++) {
            double h = at(tauS, h0, h1, h2, h3);
            if (h > 0) {
                above = tauS;
            } else {
                below = tauS;
            }
            double next = tauS - h / (h1 + tauS * (h2 + 0.5 * tauS * h3));
            if (!(next > above && next < below)) {
                next = 0.5 * (above + below);
            }
            if (Math.abs(next - tauS) <= Math.ulp(startS + tauS)) {
                return next;
            }
            tauS = next;
        }
        return tauS;
    }
}
