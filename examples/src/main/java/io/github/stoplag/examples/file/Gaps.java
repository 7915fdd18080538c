package io.github.stoplag.examples.file;

import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;

/** Gaps between vehicles as users write them: as a distance, or as a time at the follower's speed. */
public final class Gaps {
    private Gaps() {}

    /**
     * Reads a gap given as a time at a speed or as a distance.
     *
     * @throws InputException if it is neither, or out of its key's range
     */
    public static Distance read(
            ScenarioFile file, Key<TimeSpan> timeGap, Key<Distance> distanceGap, String text, Speed speed) {
        if (text.matches(".*[0-9]\\s*(s|ms)")) {
            return Distance.metres(speed.inMps() * file.parse(timeGap, text).inSeconds());
        }
        try {
            return file.parse(distanceGap, text);
        } catch (InputException e) {
            throw new InputException(e.getMessage() + "; or a time gap such as 1.5 s, in " + timeGap.range(), e);
        }
    }
}
