package io.github.stoplag.film;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Evidence;
import java.util.function.ToDoubleFunction;

/** What a film of one change rests on and where it can say little. */
final class FilmCaveats {
    private static final int FEW_FRAMES = 5;
    private static final double SETTLED = 0.98;
    private static final double LIT_BEFORE = 0.05;

    private FilmCaveats() {}

    static Evidence of(Switching switching, Camera camera, CourseDraws draws) {
        GreySeries series = switching.series();
        String lamp = series.label();
        boolean rising = switching.rising();
        int before = switching.low() - switching.from() + 1;
        double lastS = camera.frameTimeS(series.frame(switching.to() - 1), series.stampS(switching.to() - 1));
        double end = median(draws, d -> d.risenLevel(lastS));
        double steady = median(draws, d -> d.darkRatio() / d.switchedRatio());
        double riseS = median(draws, CourseDraws.Draw::riseS);
        int clipped = clipped(switching, camera);
        return camera.evidence()
                .with(Evidence.of(lamp + ": " + (switching.to() - switching.from()) + " frames from frame "
                        + series.frame(switching.from()) + " on; light before and after, noise and course inferred"
                        + " together over electronic, filament and any other monotone courses"))
                .withCaveatIf(
                        before < FEW_FRAMES,
                        "the film shows " + lamp + " for " + before + (before == 1 ? " frame" : " frames")
                                + " before the change: the level it starts from is uncertain")
                .withCaveatIf(
                        end < SETTLED,
                        "the film ends when the change of " + lamp + " is at about " + percent(end)
                                + ": its final level is inferred, not seen, and intervals of levels can be too narrow")
                .withCaveatIf(
                        steady > LIT_BEFORE,
                        "a steady light of about " + percent(steady) + " of the switched one stays beside " + lamp
                                + ": taken as a lit tail lamp or stray light, not as part of the change")
                .withCaveatIf(
                        clipped > 0,
                        clipped + " of " + (switching.to() - switching.from()) + " frames of " + lamp
                                + " are clipped: their light counts as at least what they show; how bright the lamp gets"
                                + " is inferred from the unclipped part of the change")
                .withCaveatIf(
                        clipped > 0 && !rising,
                        "intervals of a clipped lamp going out can be too narrow: 24 of 32 instead of 95 % held in a small"
                                + " trial at 120 frames/s")
                .withCaveatIf(
                        crushed(switching, camera) > 0,
                        crushed(switching, camera) + " of " + (switching.to() - switching.from()) + " frames of " + lamp
                                + " are black: their light counts as at most what black hides; low levels are inferred"
                                + " from the visible part of the change")
                .withCaveatIf(
                        riseS < camera.frameInterval().inSeconds(),
                        lamp + (rising ? " rises" : " falls") + " within about a frame interval: the film bounds when,"
                                + " the course between frames is inferred from what lamps do");
    }

    private static String percent(double ratio) {
        return Numbers.text(100 * ratio, 2) + " %";
    }

    private static int clipped(Switching switching, Camera camera) {
        int count = 0;
        for (int i = switching.from(); i < switching.to(); i++) {
            count += FilmedLight.clipped(switching.series(), i, camera) ? 1 : 0;
        }
        return count;
    }

    private static int crushed(Switching switching, Camera camera) {
        int count = 0;
        for (int i = switching.from(); i < switching.to(); i++) {
            count += FilmedLight.crushed(switching.series().grey(i), camera) ? 1 : 0;
        }
        return count;
    }

    private static double median(CourseDraws draws, ToDoubleFunction<CourseDraws.Draw> f) {
        double[] sorted = draws.draws().stream().mapToDouble(f).sorted().toArray();
        return sorted[sorted.length / 2];
    }
}
