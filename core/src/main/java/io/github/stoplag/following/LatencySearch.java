package io.github.stoplag.following;

import io.github.stoplag.quantity.TimeSpan;
import java.util.function.DoublePredicate;

/** Finds the largest lamp latency that avoids contact. */
final class LatencySearch {
    private static final double LONGEST_S = 1e5;

    private LatencySearch() {}

    /** Narrows down where a predicate that holds at 0, and later not, ceases to hold. */
    private static double lastHolding(DoublePredicate avoids) {
        double good = 0;
        double bad = LONGEST_S;
        for (double middle = 0.5 * (good + bad);
                middle > good && middle < bad && bad - good > 1e-15 * bad;
                middle = 0.5 * (good + bad)) {
            if (avoids.test(middle)) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        return good;
    }

    /**
     * Finds the border by bisection: delaying the follower's brakes never shrinks the gap needed.
     *
     * @param avoids whether a latency in s avoids contact
     * @param never whether a lamp that is never seen avoids contact
     * @param compared the values compared, for the reason
     */
    static LatencyBorder find(DoublePredicate avoids, boolean never, String compared) {
        if (never) {
            return new LatencyBorder.Any("the follower does not reach the leader even without braking: " + compared);
        }
        if (!avoids.test(0)) {
            return new LatencyBorder.None("the gap is too small even for a lamp seen at once: " + compared);
        }
        if (avoids.test(LONGEST_S)) {
            return new LatencyBorder.Any("the follower does not reach the leader within 1e5 s: " + compared);
        }
        return new LatencyBorder.UpTo(TimeSpan.seconds(lastHolding(avoids)));
    }
}
