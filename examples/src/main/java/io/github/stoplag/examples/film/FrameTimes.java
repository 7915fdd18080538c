package io.github.stoplag.examples.film;

import io.github.stoplag.film.GreySeries;
import io.github.stoplag.quantity.Numbers;
import java.util.Arrays;
import java.util.Optional;

/**
 * What the time stamps of a film say of its rate.
 *
 * @param playedHz frames a second by the middle one of its intervals
 * @param shortestS the shortest interval in seconds
 * @param longestS the longest one
 */
record FrameTimes(double playedHz, double shortestS, double longestS) {
    /** Rates nearer than this are the same: 29.97 and 30, or a phone's 119.6 and 120. */
    private static final double SAME = 0.03;
    /** A rate is called variable if intervals leave this share around the usual one. */
    private static final double STEADY = 0.1;

    /** Reads them; nothing if the film has none. */
    static Optional<FrameTimes> of(GreySeries series) {
        if (!series.isStamped()) {
            return Optional.empty();
        }
        double[] intervals = new double[series.size() - 1];
        for (int i = 0; i < intervals.length; i++) {
            intervals[i] = (series.stampS(i + 1) - series.stampS(i)) / (series.frame(i + 1) - series.frame(i));
        }
        Arrays.sort(intervals);
        return Optional.of(
                new FrameTimes(1 / intervals[intervals.length / 2], intervals[0], intervals[intervals.length - 1]));
    }

    /** Says which frames are missing; nothing if none is. */
    static Optional<String> missing(GreySeries series) {
        long all = 1L + series.frame(series.size() - 1) - series.frame(0);
        int longest = 0;
        for (int i = 1; i < series.size(); i++) {
            if (series.frame(i) - series.frame(i - 1) > series.frame(longest + 1) - series.frame(longest)) {
                longest = i - 1;
            }
        }
        return all == series.size()
                ? Optional.empty()
                : Optional.of("of frames " + series.frame(0) + " to " + series.frame(series.size() - 1) + " only "
                        + series.size() + " are there; the longest gap is from frame " + series.frame(longest) + " to "
                        + series.frame(longest + 1) + ": what happens in it is inferred");
    }

    /**
     * By how much a film plays slower than it was taken: a whole number where it is near one, 1 where the stamps are
     * the true times.
     */
    double slowMotion(double takenHz) {
        double factor = takenHz / playedHz;
        double nearest = Math.rint(factor);
        return nearest >= 1 && Math.abs(factor / nearest - 1) <= SAME ? nearest : factor;
    }

    /** Says what is unusual. */
    Optional<String> caveat(double takenHz) {
        double factor = slowMotion(takenHz);
        String slow = factor == 1
                ? ""
                : "the film plays at " + Numbers.text(playedHz, 4) + " frames/s, taken at " + Numbers.text(takenHz, 4)
                        + ": its time stamps are divided by " + Numbers.text(factor, 4);
        boolean steady = shortestS * playedHz > 1 - STEADY && longestS * playedHz < 1 + STEADY;
        String varies = steady
                ? ""
                : "the frame rate varies: intervals of " + Numbers.text(1000 * shortestS, 3) + " to "
                        + Numbers.text(1000 * longestS, 3) + " ms; the film's own time stamps are used, frame by frame";
        String both = slow.isEmpty() || varies.isEmpty() ? slow + varies : slow + "; " + varies;
        return both.isEmpty() ? Optional.empty() : Optional.of(both);
    }
}
