package io.github.stoplag.following;

import io.github.stoplag.quantity.TimeSpan;
import java.util.function.DoublePredicate;

/** The largest lamp latency with which follower and leader do not come into contact. */
public sealed interface LatencyBorder {
    /**
     * Contact is avoided up to this latency.
     *
     * @param latency the border, to 1e-9 s; a larger latency ends in contact
     */
    record UpTo(TimeSpan latency) implements LatencyBorder {}

    /**
     * The latency does not matter: there is no contact even if the lamp is never seen.
     *
     * @param reason why not, with the values compared
     */
    record Any(String reason) implements LatencyBorder {}

    /**
     * There is contact even if the lamp is seen at once.
     *
     * @param reason why, with the values compared
     */
    record None(String reason) implements LatencyBorder {}

    /** Narrows down where a predicate that holds at 0, and later not, ceases to hold. */
    private static double lastHolding(DoublePredicate avoids) {
        double good = 0;
        double bad = 1;
        while (bad < 1e6 && avoids.test(bad)) {
            good = bad;
            bad *= 2;
        }
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
            return new Any("the follower does not reach the leader even without braking: " + compared);
        }
        if (!avoids.test(0)) {
            return new None("the gap is too small even for a lamp seen at once: " + compared);
        }
        return new UpTo(TimeSpan.seconds(lastHolding(avoids)));
    }
}
