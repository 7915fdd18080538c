package io.github.stoplag.film;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Evidence;
import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** What a film of one change rests on and where it can say little. */
final class FilmCaveats {
    private static final int FEW_FRAMES = 5;
    private static final double SETTLED = 0.98;
    private static final double LIT_BEFORE = 0.05;
    private static final double ALL_THERE = 0.999;
    private static final double DRIFTING = 0.005;
    private static final double CLEAR = 4;

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
        double drift = drift(switching, camera, draws);
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
                        Math.abs(drift) > DRIFTING,
                        "the light of " + lamp + " drifts by " + percent(drift) + " of the change after it has "
                                + (rising ? "come on" : "gone out")
                                + ", by its warming or the camera's exposure control:"
                                + " which level is the final one is not told by the film, and intervals do not hold it")
                .withCaveatIf(
                        clipped > 0,
                        clipped + " of " + (switching.to() - switching.from()) + " frames of " + lamp
                                + " are clipped: their light counts as at least what they show; how bright the lamp"
                                + " gets is inferred from the unclipped part of the change")
                .withCaveatIf(
                        clipped > 0 && !rising,
                        "intervals of a clipped lamp going out can be too narrow: 24 of 32 instead of 95 % held in a"
                                + " small trial at 120 frames/s")
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

    /** How much the settled light changes from the first to the last quarter of its frames, over the change. */
    private static double drift(Switching switching, Camera camera, CourseDraws draws) {
        GreySeries series = switching.series();
        double settledS = median(draws, d -> d.timeS(ALL_THERE));
        int from = switching.high();
        while (from < switching.to() && camera.frameTimeS(series.frame(from), series.stampS(from)) < settledS) {
            from++;
        }
        int quarter = (switching.to() - from) / 4;
        if (quarter < FEW_FRAMES) {
            return 0;
        }
        double[] light = IntStream.range(from, switching.to())
                .mapToDouble(i -> camera.transfer().light(camera.scale().signal(series.grey(i))))
                .toArray();
        double first = Arrays.stream(light, 0, quarter).average().orElseThrow();
        double last = Arrays.stream(light, light.length - quarter, light.length)
                .average()
                .orElseThrow();
        double change = median(draws, CourseDraws.Draw::switchedRatio);
        double scatter = Switching.scatter(light, 0, light.length) * Math.sqrt(2.0 / quarter);
        return Math.abs(last - first) > CLEAR * scatter ? (last - first) / change : 0;
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
