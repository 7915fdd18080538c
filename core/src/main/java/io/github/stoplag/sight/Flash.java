package io.github.stoplag.sight;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.LuminousIntensity;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;

/**
 * A flash: luminous intensity against time over a finite interval, dark before and after.
 *
 * <p>Straight between samples; two samples at the same time are a jump. Every integral over it is exact for that shape.
 * Ranges: times [-1000, 1000] s, intensities [0, 1e7] cd, a peak above 0 cd.
 */
public final class Flash {
    private final double[] timeS;
    private final double[] leftCd;
    private final double[] rightCd;

    /** Keeps nodes of different times with the intensity just before and just after each. */
    private Flash(double[] sampleS, double[] sampleCd) {
        double[] times = new double[sampleS.length];
        double[] left = new double[sampleS.length];
        double[] right = new double[sampleS.length];
        int nodes = 0;
        for (int i = 0; i < sampleS.length; i++) {
            if (nodes == 0 || sampleS[i] > times[nodes - 1]) {
                times[nodes] = sampleS[i];
                left[nodes] = sampleCd[i];
                nodes++;
            }
            right[nodes - 1] = sampleCd[i];
        }
        left[0] = 0;
        right[nodes - 1] = 0;
        timeS = Arrays.copyOf(times, nodes);
        leftCd = Arrays.copyOf(left, nodes);
        rightCd = Arrays.copyOf(right, nodes);
    }

    /**
     * Makes a flash from samples, measured or worked out.
     *
     * @param timeS the sample times in seconds, not decreasing, at most two alike, [-1000, 1000] s; at least two times
     * @param intensityCd the luminous intensity at each in candela, [0, 1e7] cd
     * @return the flash
     * @throws IllegalArgumentException if the arrays differ in length, a sample is out of range or order, or all are
     *     dark; the message names the sample's index, counted from 0
     */
    public static Flash samples(double[] timeS, double[] intensityCd) {
        Objects.requireNonNull(intensityCd, "intensityCd");
        Objects.requireNonNull(timeS, "timeS");
        if (timeS.length != intensityCd.length) {
            throw new IllegalArgumentException(
                    "times and intensities must be equally many, got " + timeS.length + " and " + intensityCd.length);
        }
        if (timeS.length < 2) {
            throw new IllegalArgumentException("a flash must have at least 2 samples, got " + timeS.length);
        }
        for (int i = 0; i < timeS.length; i++) {
            Check.inRange("sample " + i + ": time", timeS[i], -1000, 1000, "s");
            Ranges.INTENSITY.check("sample " + i + ": intensity", intensityCd[i]);
            checkOrder(timeS, i);
        }
        Check.above("duration of the flash", timeS[timeS.length - 1] - timeS[0], 0, 2000, "s");
        Ranges.SHINING.check(
                "peak of the flash", Arrays.stream(intensityCd).max().orElseThrow());
        return new Flash(timeS, intensityCd);
    }

    private static void checkOrder(double[] timeS, int i) {
        if (i > 0 && timeS[i] < timeS[i - 1]) {
            throw new IllegalArgumentException("sample " + i + ": time must not be before that of sample " + (i - 1)
                    + ", " + Numbers.text(timeS[i - 1]) + " s, got " + Numbers.text(timeS[i]) + " s");
        }
        if (i > 1 && timeS[i] == timeS[i - 2]) {
            throw new IllegalArgumentException("sample " + i + ": at most two samples may share a time, got a third at "
                    + Numbers.text(timeS[i]) + " s");
        }
    }

    /**
     * Makes a flash that is fully on at once and off at once.
     *
     * @param peak the intensity I, above 0 cd
     * @param duration the duration T, (0, 1000] s
     * @return the flash
     * @throws IllegalArgumentException if either is out of range
     */
    public static Flash rectangle(LuminousIntensity peak, TimeSpan duration) {
        Objects.requireNonNull(duration, "duration");
        Objects.requireNonNull(peak, "peak");
        return samples(new double[] {0, duration.inSeconds()}, new double[] {peak.inCandela(), peak.inCandela()});
    }

    /**
     * Makes a flash that rises and falls in straight lines.
     *
     * @param peak the greatest intensity, above 0 cd
     * @param duration the duration T, (0, 1000] s
     * @param riseRatio the share of the duration spent rising, [0, 1]: 0 falls only, 0.5 is symmetric, 1 rises only
     * @return the flash
     * @throws IllegalArgumentException if one is out of range
     */
    public static Flash triangle(LuminousIntensity peak, TimeSpan duration, double riseRatio) {
        Objects.requireNonNull(duration, "duration");
        Objects.requireNonNull(peak, "peak");
        double topS = duration.inSeconds() * Check.inRange("rising share of the flash", riseRatio, 0, 1, "");
        return samples(new double[] {0, topS, duration.inSeconds()}, new double[] {0, peak.inCandela(), 0});
    }

    /**
     * Makes a flash from a function, taken as straight over equal panels.
     *
     * @param intensityCd the luminous intensity in candela at a time in seconds since the start
     * @param duration the duration T, (0, 1000] s
     * @param panels how many panels, [1, 100000]; the error falls with the square of their number for a smooth function
     * @return the flash
     * @throws IllegalArgumentException if a value is out of range
     */
    public static Flash of(DoubleUnaryOperator intensityCd, TimeSpan duration, int panels) {
        Objects.requireNonNull(duration, "duration");
        Objects.requireNonNull(intensityCd, "intensityCd");
        Check.inRange("panels of the flash", panels, 1, 100_000, "");
        double[] times = new double[panels + 1];
        Arrays.setAll(times, i -> duration.inSeconds() * i / panels);
        return samples(times, Arrays.stream(times).map(intensityCd).toArray());
    }

    /**
     * Gives the greatest intensity.
     *
     * @return the peak
     */
    public LuminousIntensity peak() {
        return LuminousIntensity.candela(Math.max(
                Arrays.stream(leftCd).max().orElseThrow(),
                Arrays.stream(rightCd).max().orElseThrow()));
    }

    /**
     * Gives the time from first to last sample.
     *
     * @return the duration T
     */
    public TimeSpan duration() {
        return TimeSpan.seconds(timeS[timeS.length - 1] - timeS[0]);
    }

    /**
     * Gives the light of the whole flash.
     *
     * @return ∫ I dt in cd·s
     */
    public double integralCdS() {
        double sum = 0;
        for (int i = 1; i < timeS.length; i++) {
            sum += (rightCd[i - 1] + leftCd[i]) / 2 * (timeS[i] - timeS[i - 1]);
        }
        return sum;
    }

    /**
     * Gives the intensity at a time; at a jump, the greater of the two.
     *
     * @param time on the time scale of the samples
     * @return I(t), 0 cd outside the flash
     */
    public LuminousIntensity intensityAt(TimeSpan time) {
        double t = time.inSeconds();
        int found = Arrays.binarySearch(timeS, t);
        if (found >= 0) {
            return LuminousIntensity.candela(Math.max(leftCd[found], rightCd[found]));
        }
        int i = -found - 1;
        return LuminousIntensity.candela(
                i == 0 || i == timeS.length ? 0 : rightCd[i - 1] + slopeCdPerS(i - 1) * (t - timeS[i - 1]));
    }

    int nodes() {
        return timeS.length;
    }

    double timeS(int node) {
        return timeS[node];
    }

    /** Gives the intensity just before a node. */
    double leftCd(int node) {
        return leftCd[node];
    }

    /** Gives the intensity just after a node. */
    double rightCd(int node) {
        return rightCd[node];
    }

    /** Gives the slope of the segment after a node, 0 before the first node and after the last. */
    double slopeCdPerS(int node) {
        return node < 0 || node == timeS.length - 1
                ? 0
                : (leftCd[node + 1] - rightCd[node]) / (timeS[node + 1] - timeS[node]);
    }
}
