package io.github.stoplag.examples.film;

import io.github.stoplag.film.Camera;
import io.github.stoplag.film.GreySeries;
import io.github.stoplag.quantity.TimeSpan;
import java.util.HashMap;
import java.util.Map;

/**
 * When the middle of each frame's exposure was, from the beginning of frame 0; an unknown exposure is taken as half a
 * frame.
 */
final class FrameClock {
    private final Map<Integer, Double> middleS = new HashMap<>();

    FrameClock(GreySeries series, Camera camera) {
        double intervalS = 1 / camera.takenHz();
        double exposureS = camera.exposure().map(TimeSpan::inSeconds).orElse(intervalS / 2);
        double shiftS = camera.exposurePlace() * (intervalS - exposureS) + exposureS / 2;
        for (int i = 0; i < series.size(); i++) {
            middleS.put(series.frame(i), camera.frameTimeS(series.frame(i), series.stampS(i)) + shiftS);
        }
    }

    boolean has(int frame) {
        return middleS.containsKey(frame);
    }

    double middleS(int frame) {
        Double found = middleS.get(frame);
        if (found == null) {
            throw new IllegalArgumentException("frame " + frame + " was not read");
        }
        return found;
    }
}
