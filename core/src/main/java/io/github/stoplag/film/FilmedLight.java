package io.github.stoplag.film;

import java.util.Arrays;

/**
 * The frames around one switching as light over full scale: bins of a few frames where they are many, with the time of
 * the middle of each, the width of its exposures and what rounding adds; light read for several amounts of pixel noise.
 *
 * <p>Frames far before and long after the change are left out: a lamp droops as it warms and a camera adapts.
 */
final class FilmedLight {
    /** A frame that shows as much light as the end of the scale allows, or as little. */
    static final int FREE = 0;

    static final int AT_LEAST = 1;
    static final int AT_MOST = -1;

    private static final int MARGIN = 40;
    private static final double CLIPPED = 0.005;
    private static final double NEAR = 2.5;
    /** Where an end is clipped or cut off, half the change lies up to this much beyond half of what is seen. */
    private static final double HIDDEN_WIDTHS = 10;

    private static final double HIDDEN_S = 0.3;
    private static final double UNSETTLED_WIDTHS = 10;
    private static final double CLIP_MARGIN = 0.03;
    /** Bins across the middle of the change: as many as its shape needs. */
    static final int BINS_ACROSS = 8;
    /** Pixels whose average a frame may be, up to 4^LAST_NOISE of them. */
    private static final int LAST_NOISE = 6;

    private static final double MOST_NOISE = 0.04;
    /** Grey steps above the least grey value within which a region is taken as crushed to black. */
    private static final double CRUSHED_STEPS = 1.5;

    private static final double CRUSHED_SIGNAL = 0.003;
    private static final int ENOUGH_FRAMES = 5;
    /** The noise of a frame where too few frames show it, over the change. */
    private static final double USUAL_NOISE = 3e-3;

    private static final double LEAST_NOISE = 2e-4;

    final boolean rising;
    final int size;
    final double[] middleS;
    /** How many frames a bin has, and the square of the width of their exposures beyond one exposure. */
    final int[] count;

    final double[] spreadS2;
    /** Light for each amount of pixel noise, none first, and ln of its change with the signal. */
    final double[][] light;

    final double[][] logSlope;
    final double[] roundingVariance;
    final int[] bound;
    final double upperBound;
    final double lowerBound;
    final boolean anyClipped;
    final boolean brightBound;
    final boolean darkBound;
    final boolean anyCrushed;
    final double contrast;
    /** The variance of a frame in the dark and lit, and whether frames enough show it. */
    final double[] noiseVariance;

    final boolean[] noiseShown;
    final double leastVariance;
    /** The times between which the middle of the change lies. */
    final double earliestS;

    final double latestS;
    final double intervalS;

    FilmedLight(Switching switching, Camera camera, int binsAcross) {
        GreySeries series = switching.series();
        rising = switching.rising();
        intervalS = 1 / camera.takenHz();
        int width = switching.high() - switching.low();
        int from = Math.max(switching.from(), switching.low() - MARGIN - 4 * width);
        int to = Math.min(switching.to(), switching.high() + MARGIN + 10 * width);
        double[] frameLight = new double[to - from];
        double[] frameS = new double[to - from];
        double exposureS = camera.exposure().map(e -> e.inSeconds()).orElse(intervalS / 2);
        double shiftS = camera.exposurePlace() * (intervalS - exposureS)
                + exposureS / 2
                + series.middleRow() * camera.rowTime().map(t -> t.inSeconds()).orElse(0.0);
        for (int i = 0; i < frameLight.length; i++) {
            frameS[i] = camera.frameTimeS(series.frame(from + i), series.stampS(from + i)) + shiftS;
            frameLight[i] = light(camera, series.grey(from + i));
        }
        contrast = contrast(frameLight);
        leastVariance = LEAST_NOISE * LEAST_NOISE * contrast * contrast;
        double scatter = Switching.scatter(frameLight, 0, frameLight.length);
        upperBound = upperBound(switching, from, camera, frameLight, scatter);
        lowerBound = lowerBound(frameLight, camera);
        int[] frameBound = new int[frameLight.length];
        for (int i = 0; i < frameBound.length; i++) {
            frameBound[i] = frameLight[i] >= upperBound ? AT_LEAST : frameLight[i] <= lowerBound ? AT_MOST : FREE;
        }
        anyCrushed = lowerBound > Double.NEGATIVE_INFINITY;
        anyClipped = upperBound < Double.POSITIVE_INFINITY;
        int before = switching.low() - from + 1;
        int after = switching.high() - from;
        brightBound = mostly(frameBound, AT_LEAST, rising ? after : 0, rising ? frameBound.length : before);
        darkBound = mostly(frameBound, AT_MOST, rising ? 0 : after, rising ? before : frameBound.length);

        boolean rounded = rounded(series, camera.scale());
        double[] noise = new double[2];
        boolean[] shown = new boolean[2];
        int settled = after + Math.min((frameLight.length - after) / 2, 3 * width);
        noise[0] = variance(frameLight, 0, before, scatter, rounded ? rounding(camera, series.grey(from)) : 0);
        shown[0] = before >= ENOUGH_FRAMES;
        noise[1] = variance(
                frameLight, settled, frameLight.length, scatter, rounded ? rounding(camera, series.grey(to - 1)) : 0);
        shown[1] = frameLight.length - settled >= ENOUGH_FRAMES;
        noiseVariance = rising ? noise : new double[] {noise[1], noise[0]};
        noiseShown = rising ? shown : new boolean[] {shown[1], shown[0]};
        noiseShown[0] &= !anyCrushed;
        noiseShown[1] &= !brightBound;

        int[] start = bins(frameBound, Math.max(1, width / binsAcross));
        size = start.length - 1;
        middleS = new double[size];
        count = new int[size];
        spreadS2 = new double[size];
        bound = new int[size];
        roundingVariance = new double[size];
        double[] grey = new double[size];
        for (int j = 0; j < size; j++) {
            count[j] = start[j + 1] - start[j];
            bound[j] = frameBound[start[j]];
            for (int i = start[j]; i < start[j + 1]; i++) {
                middleS[j] += frameS[i] / count[j];
                grey[j] += series.grey(from + i) / count[j];
            }
            for (int i = start[j]; i < start[j + 1]; i++) {
                // exposures side by side have the variance of one long one: its width squared by 12
                spreadS2[j] += 12 * Math.pow(frameS[i] - middleS[j], 2) / count[j];
            }
            roundingVariance[j] = rounded ? rounding(camera, grey[j]) / count[j] : 0;
        }
        double[] noises = pixelNoises(camera, grey, rounded);
        light = new double[noises.length][size];
        logSlope = new double[noises.length][size];
        for (int q = 0; q < noises.length; q++) {
            read(camera, noises[q], grey, light[q], logSlope[q]);
        }

        double seenS = frameS[after] - frameS[before - 1];
        double hiddenS = HIDDEN_WIDTHS * seenS + HIDDEN_S;
        boolean unsettled = switching.to() - switching.high() < UNSETTLED_WIDTHS * width;
        earliestS = frameS[before - 1]
                - NEAR * intervalS
                - ((brightBound && !rising) || (darkBound && rising) ? hiddenS : 0);
        latestS = frameS[after]
                + NEAR * intervalS
                + ((brightBound && rising) || (darkBound && !rising) || unsettled ? hiddenS : 0);
    }

    /** The dark frames' and the bright frames' end of the scale, both sides of one frame to the next. */
    private static int[] bins(int[] frameBound, int most) {
        int[] start = new int[frameBound.length + 1];
        int n = 0;
        int i = 0;
        while (i < frameBound.length) {
            start[n++] = i;
            int end = i + 1;
            while (end < frameBound.length && end - i < most && frameBound[end] == frameBound[i]) {
                end++;
            }
            i = end;
        }
        start[n] = frameBound.length;
        return Arrays.copyOf(start, n + 1);
    }

    /**
     * Takes every frame that shows at least as much as the dimmest clipped one, less some noise, as a bound at that
     * light: were only the frames left out whose pixels happened to clip, those kept would be the ones whose noise
     * happened to be low.
     */
    private static double upperBound(Switching switching, int from, Camera camera, double[] light, double scatter) {
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < light.length; i++) {
            greatest = Math.max(greatest, light[i]);
            if (clipped(switching.series(), from + i, camera)) {
                least = Math.min(least, light[i]);
            }
        }
        return least - Math.max(CLIP_MARGIN * greatest, 3 * scatter);
    }

    /** Takes frames whose pixels are nearly all at the least grey value as bounds. */
    private static double lowerBound(double[] light, Camera camera) {
        double crushed = light(camera, crushedGrey(camera.scale()));
        double[] sorted = light.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 20] <= crushed ? crushed : Double.NEGATIVE_INFINITY;
    }

    private static double crushedGrey(GreyScale scale) {
        return scale.bottom()
                + Math.max(CRUSHED_STEPS * scale.step(), CRUSHED_SIGNAL * (scale.white() - scale.black()));
    }

    /** Says whether a frame is black but for a pixel or two. */
    static boolean crushed(double grey, Camera camera) {
        return grey <= crushedGrey(camera.scale());
    }

    private static boolean mostly(int[] bound, int kind, int from, int to) {
        int n = 0;
        for (int i = from; i < to; i++) {
            n += bound[i] == kind ? 1 : 0;
        }
        return 2 * n > to - from;
    }

    private static double contrast(double[] light) {
        double[] sorted = light.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length - 1 - sorted.length / 50] - sorted[sorted.length / 50];
    }

    /** The variance of frames before or after, never below what rounding hides. */
    private double variance(double[] light, int from, int to, double global, double rounding) {
        boolean shown = to - from >= ENOUGH_FRAMES;
        double sigma = shown ? Switching.scatter(light, from, to) : Math.max(global, USUAL_NOISE * contrast);
        return Math.max(sigma * sigma, Math.max(0.02 * rounding, leastVariance));
    }

    private static double rounding(Camera camera, double grey) {
        double half = camera.scale().step() / 2;
        double step = light(camera, grey + half) - light(camera, grey - half);
        return step * step / 12;
    }

    /** The amounts of pixel noise to read the light for: as a frame is the mean of 1, 4, 16, ... noisy pixels. */
    private double[] pixelNoises(Camera camera, double[] grey, boolean rounded) {
        double sigma = Math.sqrt(noiseVariance[0]);
        double[] noises = new double[LAST_NOISE + 1];
        int used = 1;
        for (int q = 1; q <= LAST_NOISE && !rounded && !anyCrushed; q++) {
            noises[q] = sigma * Math.sqrt(Math.pow(4, q) - 1);
            used = noises[q] <= MOST_NOISE ? q + 1 : used;
        }
        double[] plain = new double[size];
        double[] noisy = new double[size];
        read(camera, 0, grey, plain, new double[size]);
        read(camera, noises[used - 1], grey, noisy, new double[size]);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int j = 0; j < size; j++) {
            if (bound[j] == FREE) {
                least = Math.min(least, noisy[j] - plain[j]);
                most = Math.max(most, noisy[j] - plain[j]);
            }
        }
        return Arrays.copyOf(noises, most - least > 0.1 * sigma ? used : 1);
    }

    private static void read(Camera camera, double noise, double[] grey, double[] light, double[] logSlope) {
        GreyScale scale = camera.scale();
        PixelToe toe = noise > 0 ? new PixelToe(camera.transfer(), scale.signal(scale.bottom()), noise) : null;
        double width = 2e-3;
        for (int j = 0; j < grey.length; j++) {
            double signal = scale.signal(grey[j]);
            light[j] = toe == null ? camera.transfer().light(signal) : toe.light(signal);
            double above = toe == null ? camera.transfer().light(signal + width) : toe.light(signal + width);
            double below = toe == null ? camera.transfer().light(signal - width) : toe.light(signal - width);
            logSlope[j] = Math.log(Math.max(1e-9, above - below));
        }
    }

    /** A number of the film's own, so that two lamps are shuffled differently. */
    long fingerprint() {
        return 31L * Arrays.hashCode(light[0]) + Double.hashCode(middleS[0]);
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
