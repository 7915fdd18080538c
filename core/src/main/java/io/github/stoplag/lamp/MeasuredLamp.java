package io.github.stoplag.lamp;

import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.source.Caveat;
import io.github.stoplag.source.Evidence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A lamp's onset as it was measured: samples of time and of intensity relative to the final intensity.
 *
 * <p>Between samples the curve is straight; before the first sample it holds the first value, after the last the last.
 * An onset never falls, so noise is removed by the non-decreasing curve closest to the samples in least squares
 * (pooling of adjacent violators, Ayer et al. 1955, from memory); a caveat tells by how much it moved a sample. Samples
 * may overshoot [0, 1] by 0.2; the pooled curve is held inside, with a caveat.
 */
public final class MeasuredLamp implements OnsetCurve {
    private static final double OVERSHOOT = 0.2;
    private static final double NOTICEABLE = 0.02;

    private final String label;
    private final double[] timeS;
    private final double[] ratio;
    private final List<Caveat> caveats;

    private MeasuredLamp(String label, double[] timeS, double[] samples) {
        this.label = label;
        this.timeS = timeS;
        double[] pooled = pooled(samples);
        ratio = Arrays.stream(pooled).map(v -> Math.min(1, Math.max(0, v))).toArray();
        caveats = caveats(timeS, samples, pooled, ratio);
    }

    /**
     * Makes an onset from samples.
     *
     * @param label a name for reports
     * @param timeS the sample times since switch-on in seconds, strictly increasing, [-1000, 1000] s; at least two
     * @param relativeIntensity the intensity at each relative to the final intensity, [-0.2, 1.2]
     * @return the lamp's onset
     * @throws IllegalArgumentException if the arrays differ in length, hold fewer than two samples, or a sample is out
     *     of range or order; the message names the sample's index, counted from 0
     */
    public static MeasuredLamp of(String label, double[] timeS, double[] relativeIntensity) {
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(relativeIntensity, "relativeIntensity");
        Objects.requireNonNull(timeS, "timeS");
        if (label.isBlank()) {
            throw new IllegalArgumentException("a measured lamp must have a label, got an empty text");
        }
        if (timeS.length != relativeIntensity.length) {
            throw new IllegalArgumentException("times and relative intensities must be equally many, got "
                    + timeS.length + " and " + relativeIntensity.length);
        }
        if (timeS.length < 2) {
            throw new IllegalArgumentException("a measured onset must have at least 2 samples, got " + timeS.length);
        }
        for (int i = 0; i < timeS.length; i++) {
            check(i, "time", timeS[i], -1000, 1000, " s");
            check(i, "relative intensity", relativeIntensity[i], -OVERSHOOT, 1 + OVERSHOOT, "");
            if (i > 0 && !(timeS[i] > timeS[i - 1])) {
                throw new IllegalArgumentException("sample " + i + ": time must be after that of sample " + (i - 1)
                        + ", " + Numbers.text(timeS[i - 1]) + " s, got " + Numbers.text(timeS[i]) + " s");
            }
        }
        return new MeasuredLamp(label, timeS.clone(), relativeIntensity);
    }

    private static void check(int index, String name, double value, double lo, double hi, String unit) {
        if (!(value >= lo && value <= hi)) {
            throw new IllegalArgumentException("sample " + index + ": " + name + " must be in [" + Numbers.text(lo)
                    + ", " + Numbers.text(hi) + "]" + unit + ", got " + Numbers.text(value) + unit);
        }
    }

    /** Merges runs of samples until the means of the runs rise, and gives every sample its run's mean. */
    private static double[] pooled(double[] samples) {
        double[] mean = new double[samples.length];
        int[] size = new int[samples.length];
        int runs = 0;
        for (double sample : samples) {
            mean[runs] = sample;
            size[runs] = 1;
            runs++;
            while (runs > 1 && mean[runs - 2] >= mean[runs - 1]) {
                int total = size[runs - 2] + size[runs - 1];
                mean[runs - 2] = (mean[runs - 2] * size[runs - 2] + mean[runs - 1] * size[runs - 1]) / total;
                size[runs - 2] = total;
                runs--;
            }
        }
        double[] result = new double[samples.length];
        int at = 0;
        for (int run = 0; run < runs; run++) {
            Arrays.fill(result, at, at + size[run], mean[run]);
            at += size[run];
        }
        return result;
    }

    private static List<Caveat> caveats(double[] timeS, double[] samples, double[] pooled, double[] ratio) {
        List<Caveat> result = new ArrayList<>();
        double moved = largestDifference(samples, pooled);
        if (moved > NOTICEABLE) {
            result.add(new Caveat("samples fall in places: the closest non-decreasing curve moves one by "
                    + Numbers.text(moved, 2) + " of the final intensity"));
        }
        double limited = largestDifference(pooled, ratio);
        if (limited > NOTICEABLE) {
            result.add(new Caveat("samples lie outside [0, 1] by up to " + Numbers.text(limited, 2)
                    + " of the final intensity: check the dark level and the final level"));
        }
        double end = ratio[ratio.length - 1];
        if (end < 1 - NOTICEABLE) {
            result.add(new Caveat("samples end at " + Numbers.text(end, 3)
                    + " of the final intensity: higher levels are never reached"));
        }
        if (timeS[0] > 0 && ratio[0] > NOTICEABLE) {
            result.add(new Caveat("the first sample, at " + Numbers.text(timeS[0]) + " s, already shows "
                    + Numbers.text(ratio[0], 3) + " of the final intensity: the start of the onset was missed"));
        }
        double before = at(timeS, ratio, 0);
        if (timeS[0] <= 0 && before > NOTICEABLE) {
            result.add(new Caveat("the lamp already shows " + Numbers.text(100 * before, 3)
                    + " % at switch-on: check time 0, or whether a tail lamp was lit"));
        }
        return List.copyOf(result);
    }

    private static double largestDifference(double[] a, double[] b) {
        double largest = 0;
        for (int i = 0; i < a.length; i++) {
            largest = Math.max(largest, Math.abs(a[i] - b[i]));
        }
        return largest;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public double relativeIntensity(double atS) {
        OnsetCurve.checkTimeS("time since switch-on", atS);
        return at(timeS, ratio, atS);
    }

    private static double at(double[] timeS, double[] ratio, double atS) {
        if (!(atS > timeS[0])) {
            return ratio[0];
        }
        int last = timeS.length - 1;
        if (atS >= timeS[last]) {
            return ratio[last];
        }
        int found = Arrays.binarySearch(timeS, atS);
        int left = found >= 0 ? found : -found - 2;
        double share = (atS - timeS[left]) / (timeS[left + 1] - timeS[left]);
        return ratio[left] + share * (ratio[left + 1] - ratio[left]);
    }

    @Override
    public OptionalDouble timeToLevelS(double levelRatio) {
        return firstAtS(OnsetCurve.checkLevel(levelRatio));
    }

    private OptionalDouble firstAtS(double level) {
        int right = 0;
        while (right < ratio.length && ratio[right] < level) {
            right++;
        }
        if (right == ratio.length) {
            return OptionalDouble.empty();
        }
        if (right == 0) {
            return OptionalDouble.of(Math.max(0, timeS[0]));
        }
        double share = (level - ratio[right - 1]) / (ratio[right] - ratio[right - 1]);
        // light before switch-on is there at switch-on
        return OptionalDouble.of(Math.max(0, timeS[right - 1] + share * (timeS[right] - timeS[right - 1])));
    }

    @Override
    public double settledS() {
        return firstAtS(0.999 * ratio[ratio.length - 1]).orElseThrow();
    }

    @Override
    public double[] breakpointsS() {
        return Arrays.stream(timeS).filter(t -> t > 0).toArray();
    }

    @Override
    public Evidence evidence() {
        return Evidence.of("measured: " + timeS.length + " samples from " + Numbers.text(timeS[0]) + " s to "
                        + Numbers.text(timeS[timeS.length - 1])
                        + " s, given by the caller; straight between samples")
                .withCaveats(caveats);
    }

    @Override
    public String toString() {
        return label;
    }
}
