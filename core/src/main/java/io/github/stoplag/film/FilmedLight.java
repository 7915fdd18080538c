package io.github.stoplag.film;

import java.util.Arrays;

/**
 * The frames around one switching as light over full scale, with the time of each exposure's middle and what rounding
 * adds.
 *
 * <p>Frames far before and long after the change are left out: a lamp droops as it warms and a camera adapts.
 */
final class FilmedLight {
    private static final int MARGIN = 40;
    private static final double CLIPPED = 0.005;
    private static final double NEAR = 2.5;
    /** Where the bright end is clipped or cut off, half the change lies up to this much beyond half of what is seen. */
    private static final double HIDDEN_WIDTHS = 10;

    private static final double HIDDEN_S = 0.3;
    private static final double UNSETTLED_WIDTHS = 10;
    private static final double CLIP_MARGIN = 0.03;

    final boolean rising;
    final int size;
    final double[] middleS;
    final double[] light;
    final double[] roundingVariance;
    final boolean[] bound;
    /** The light from which on frames are bounds. */
    final double boundLight;

    /** Whether the brighter side of the change is clipped. */
    final boolean brightBound;

    final double contrast;
    final double[] scatterVariance;
    /** The times between which the middle of the change lies. */
    final double earliestS;

    final double latestS;
    final double intervalS;
    final boolean anyBound;
    /** Frames before and after the change. */
    final int before;

    final int after;
    final boolean cut;

    FilmedLight(Switching switching, Camera camera) {
        GreySeries series = switching.series();
        rising = switching.rising();
        intervalS = 1 / camera.takenHz();
        int width = switching.high() - switching.low();
        int from = Math.max(switching.from(), switching.low() - MARGIN - 4 * width);
        int to = Math.min(switching.to(), switching.high() + MARGIN + 10 * width);
        cut = switching.to() < series.size() && to == switching.to();
        size = to - from;
        middleS = new double[size];
        light = new double[size];
        roundingVariance = new double[size];
        bound = new boolean[size];
        double exposureS = camera.exposure().map(e -> e.inSeconds()).orElse(intervalS / 2);
        double shiftS = camera.exposurePlace() * (intervalS - exposureS)
                + exposureS / 2
                + series.middleRow() * camera.rowTime().map(t -> t.inSeconds()).orElse(0.0);
        boolean rounded = rounded(series, camera.scale());
        for (int i = 0; i < size; i++) {
            int at = from + i;
            middleS[i] = camera.frameTimeS(series.frame(at), series.stampS(at)) + shiftS;
            light[i] = light(camera, series.grey(at));
            double half = camera.scale().step() / 2;
            double step = light(camera, series.grey(at) + half) - light(camera, series.grey(at) - half);
            roundingVariance[i] = rounded ? step * step / 12 : 0;
        }
        before = switching.low() - from;
        after = size - (switching.high() - from);
        boundLight = censor(switching, from, camera);
        anyBound = boundLight < Double.POSITIVE_INFINITY;
        contrast = contrast();
        brightBound = anyBound && (rising ? boundAt(size - after, size) : boundAt(0, Math.max(1, before)));
        double seenS = middleS[switching.high() - from] - middleS[before];
        double hiddenS = HIDDEN_WIDTHS * seenS + HIDDEN_S;
        boolean unsettled = switching.to() - switching.high() < UNSETTLED_WIDTHS * width;
        earliestS = middleS[before] - NEAR * intervalS - (brightBound && !rising ? hiddenS : 0);
        latestS = middleS[switching.high() - from]
                + NEAR * intervalS
                + ((brightBound && rising) || unsettled ? hiddenS : 0);
        double global = Switching.scatter(light, 0, size);
        scatterVariance = new double[] {
            variance(0, before - 1, global), variance(size - after + Math.min(after / 2, 3 * width), size, global)
        };
    }

    /**
     * Takes every frame that shows at least as much as the dimmest clipped one, less some noise, as a bound at that
     * light: were only the frames left out whose pixels happened to clip, those kept would be the ones whose noise
     * happened to be low.
     */
    private double censor(Switching switching, int from, Camera camera) {
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < size; i++) {
            greatest = Math.max(greatest, light[i]);
            if (clipped(switching.series(), from + i, camera)) {
                least = Math.min(least, light[i]);
            }
        }
        if (least == Double.POSITIVE_INFINITY) {
            return least;
        }
        double c = least - Math.max(CLIP_MARGIN * greatest, 3 * Switching.scatter(light, 0, size));
        for (int i = 0; i < size; i++) {
            bound[i] = light[i] >= c;
        }
        return c;
    }

    /** Says whether the frames before, or after, are bounds, so that their scatter says nothing of the noise. */
    private boolean boundAt(int from, int to) {
        int count = 0;
        for (int i = from; i < to; i++) {
            count += bound[i] ? 1 : 0;
        }
        return 2 * count > to - from;
    }

    private double contrast() {
        double[] sorted = light.clone();
        Arrays.sort(sorted);
        return sorted[size - 1 - size / 50] - sorted[size / 50];
    }

    /** The variance of frames before or after, never below what rounding hides. */
    private double variance(int from, int to, double global) {
        double sigma = to - from >= 4 ? Switching.scatter(light, Math.max(0, from), to) : global;
        double rounding = roundingVariance[Math.min(size - 1, Math.max(0, from))];
        return Math.max(sigma * sigma, Math.max(0.02 * rounding, 1e-9 * contrast * contrast));
    }

    /** A number of the film's own, so that two lamps are shuffled differently. */
    long fingerprint() {
        return 31L * Arrays.hashCode(light) + Double.hashCode(middleS[0]);
    }

    static boolean clipped(GreySeries series, int at, Camera camera) {
        return series.clippedShare(at) > CLIPPED
                || series.grey(at) >= camera.scale().top();
    }

    private static double light(Camera camera, double grey) {
        return camera.transfer().light(camera.scale().signal(grey));
    }

    /** Says whether grey values sit on the steps, so that rounding is not averaged out by the pixels' noise. */
    private static boolean rounded(GreySeries series, GreyScale scale) {
        if (scale.step() == 0) {
            return false;
        }
        double off = 0;
        for (int i = 0; i < series.size(); i++) {
            double steps = series.grey(i) / scale.step();
            off += Math.abs(steps - Math.rint(steps));
        }
        // a quarter on average where pixels' noise spreads them
        return off / series.size() < 0.15;
    }
}
