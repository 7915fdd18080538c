package io.github.stoplag.film;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.sweep.CounterRandom;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * A camera that films a given course of light with every fault a real one has: for trying out a set-up before a lamp is
 * filmed, and the test bench of this package.
 *
 * <pre>
 *   exposure of row y of frame n   [t, t + e],  t = begin + n/f + s (1/f − e) + y r + jitter · z
 *   light of a pixel               gain · mean of the course over the exposure + noise · z
 *   grey                           round(black + (white − black) · V(light)), held in [0, top]
 * </pre>
 *
 * <p>Symbols as in {@link Camera} and {@link Sensor}; z normal numbers from {@link CounterRandom}, so that a film
 * depends on its seed alone. Frames are stamped with the constant time, not the jittered one. The exposure's mean is
 * exact to 1e-7 of full scale. A region's rows are exposed one after another; pixels are spread over them evenly.
 */
public final class SimulatedCamera {
    private static final int JITTER_AXIS = 1 << 15;
    private static final int MOST_ROWS = 5;
    private static final int DEEPEST = 30;
    private static final double TOLERANCE = 1e-8;

    private final Camera camera;
    private final Sensor sensor;
    private final double exposureS;

    private SimulatedCamera(Camera camera, Sensor sensor, double exposureS) {
        this.camera = camera;
        this.sensor = sensor;
        this.exposureS = exposureS;
    }

    /**
     * Makes a camera.
     *
     * @param camera its times, transfer curve and grey scale; the exposure must be known
     * @param sensor its pixels
     * @return the camera
     * @throws IllegalArgumentException if the camera's exposure is not known
     */
    public static SimulatedCamera of(Camera camera, Sensor sensor) {
        Objects.requireNonNull(sensor, "sensor");
        TimeSpan exposure = camera.exposure()
                .orElseThrow(() -> new IllegalArgumentException("a simulated camera must have an exposure, got none"));
        return new SimulatedCamera(camera, sensor, exposure.inSeconds());
    }

    /**
     * Films a lamp at the top of the picture.
     *
     * @param label the lamp's name
     * @param course its light
     * @param begin the time of the course at which frame 0 begins, usually negative
     * @param frames how many frames, [8, 100000]
     * @param seed the seed of noise and jitter
     * @return what the film shows of it
     * @throws IllegalArgumentException if the number of frames is out of range
     */
    public GreySeries film(String label, LightCourse course, TimeSpan begin, int frames, long seed) {
        Objects.requireNonNull(begin, "begin");
        Objects.requireNonNull(course, "course");
        Objects.requireNonNull(label, "label");
        return film(GreySeries.of(label), course, begin, frames, seed, 0, 0);
    }

    /**
     * Films a lamp somewhere in the picture, as a rolling shutter sees it; lamps of one film have the same seed and so
     * the same jitter.
     *
     * @param label the lamp's name; the pixel noise differs from name to name
     * @param course its light
     * @param begin the time of the course at which frame 0 begins, usually negative
     * @param frames how many frames, [8, 100000]
     * @param seed the seed of noise and jitter
     * @param middleRow the middle row of the lamp's region
     * @param rows how many rows it has
     * @return what the film shows of it
     * @throws IllegalArgumentException if a value is out of range
     */
    public GreySeries film(
            String label, LightCourse course, TimeSpan begin, int frames, long seed, double middleRow, double rows) {
        Objects.requireNonNull(begin, "begin");
        Objects.requireNonNull(course, "course");
        Objects.requireNonNull(label, "label");
        return film(GreySeries.of(label).region(middleRow, rows), course, begin, frames, seed, middleRow, rows);
    }

    /**
     * Says in which frame a lamp at the top of the picture is first visible: its light, noise left out, exceeds that
     * of frame 0 by some multiple of a dark pixel's noise and by a step of grey values. A judge by eye usually marks
     * later.
     *
     * @param course its light
     * @param begin the time of the course at which frame 0 begins
     * @param frames how many frames are looked at, [8, 100000]
     * @param noiseMultiple how many standard deviations of a dark pixel count as visible, [0, 100]
     * @return the mark of judge {@code camera}; nothing if the lamp is not visible in any of the frames
     * @throws IllegalArgumentException if a value is out of range
     */
    public Optional<FrameMark> firstVisible(LightCourse course, TimeSpan begin, int frames, double noiseMultiple) {
        Objects.requireNonNull(begin, "begin");
        Objects.requireNonNull(course, "course");
        Check.inRange("frames of a simulated film", frames, 8, 100_000, "");
        Check.inRange("multiple of a pixel's noise", noiseMultiple, 0, 100, "");
        double leadS = camera.exposurePlace() * (1 / camera.takenHz() - exposureS);
        double dark = Double.NaN;
        for (int n = 0; n < frames; n++) {
            double fromS = begin.inSeconds() + n / camera.takenHz() + leadS;
            double light = mean(course::lightRatio, course.breakpointsS(), fromS, fromS + exposureS);
            dark = n == 0 ? light : dark;
            double greySteps = camera.scale().grey(camera.transfer().signal(light))
                    - camera.scale().grey(camera.transfer().signal(dark));
            if (light - dark > noiseMultiple * sensor.noise(dark)
                    && greySteps >= camera.scale().step()
                    && n > 0) {
                return Optional.of(FrameMark.at("camera", n));
            }
        }
        return Optional.empty();
    }

    private GreySeries film(
            GreySeries.Builder series,
            LightCourse course,
            TimeSpan begin,
            int frames,
            long seed,
            double middleRow,
            double rows) {
        Check.inRange("frames of a simulated film", frames, 8, 100_000, "");
        double rowS = camera.rowTime().map(TimeSpan::inSeconds).orElse(0.0);
        double[] rowStartS = new double[rowS * rows > 0 ? MOST_ROWS : 1];
        for (int i = 0; i < rowStartS.length; i++) {
            rowStartS[i] = rowS * (middleRow + rows * ((i + 0.5) / rowStartS.length - 0.5));
        }
        CounterRandom jitter = CounterRandom.of(seed);
        CounterRandom noise = CounterRandom.of(seed ^ ((long) series.label().hashCode() << 32) ^ 0x5DEECE66DL);
        double[] breaksS = course.breakpointsS();
        double leadS = camera.exposurePlace() * (1 / camera.takenHz() - exposureS);
        double[] light = new double[rowStartS.length];
        double[] result = new double[2];
        for (int n = 0; n < frames; n++) {
            double startS = begin.inSeconds()
                    + n / camera.takenHz()
                    + leadS
                    + camera.jitter().inSeconds() * normal(jitter, JITTER_AXIS, n);
            for (int row = 0; row < light.length; row++) {
                double fromS = startS + rowStartS[row];
                light[row] = mean(course::lightRatio, breaksS, fromS, fromS + exposureS);
            }
            expose(light, noise, n, result);
            series.add(n, n / camera.playedHz(), result[0], result[1]);
        }
        return series.build();
    }

    /** Turns the light of the rows into the mean grey value and the share of clipped pixels. */
    private void expose(double[] rowLight, CounterRandom noise, int frame, double[] result) {
        GreyScale scale = camera.scale();
        double sum = 0;
        int clipped = 0;
        for (int pixel = 0; pixel < sensor.pixels(); pixel++) {
            double light = sensor.gain(pixel) * rowLight[pixel % rowLight.length];
            double noisy = light
                    + sensor.noise(light)
                            * normal(noise, pixel % JITTER_AXIS, frame + 200_000L * (pixel / JITTER_AXIS));
            double grey = scale.grey(camera.transfer().signal(noisy));
            double rounded = scale.step() > 0 ? scale.step() * Math.rint(grey / scale.step()) : grey;
            double kept = Math.min(scale.top(), Math.max(scale.bottom(), rounded));
            clipped += kept >= scale.top() ? 1 : 0;
            sum += kept;
        }
        result[0] = sum / sensor.pixels();
        result[1] = (double) clipped / sensor.pixels();
    }

    private static double normal(CounterRandom random, int axis, long index) {
        double radius = Math.sqrt(-2 * Math.log(random.uniform(axis, 2 * index)));
        return radius * Math.cos(2 * Math.PI * random.uniform(axis, 2 * index + 1));
    }

    /** Gives the mean of a function, cut at its breaks, by Simpson's rule on halves until they agree. */
    static double mean(DoubleUnaryOperator f, double[] breaksS, double fromS, double toS) {
        int next = Arrays.binarySearch(breaksS, fromS);
        next = next >= 0 ? next : -next - 1;
        double sum = 0;
        double loS = fromS;
        while (loS < toS) {
            while (next < breaksS.length && breaksS[next] <= loS) {
                next++;
            }
            double hiS = next < breaksS.length ? Math.min(toS, breaksS[next]) : toS;
            // a jump at the end belongs to the next piece
            double endS = hiS < toS || (next < breaksS.length && breaksS[next] == hiS) ? Math.nextDown(hiS) : hiS;
            double a = f.applyAsDouble(loS);
            double m = f.applyAsDouble((loS + hiS) / 2);
            double b = f.applyAsDouble(endS);
            sum += simpson(f, loS, hiS, a, m, b, TOLERANCE * (toS - fromS), DEEPEST);
            loS = hiS;
        }
        return sum / (toS - fromS);
    }

    private static double simpson(
            DoubleUnaryOperator f, double loS, double hiS, double a, double m, double b, double tolerance, int depth) {
        double midS = (loS + hiS) / 2;
        double left = f.applyAsDouble((loS + midS) / 2);
        double right = f.applyAsDouble((midS + hiS) / 2);
        double whole = (hiS - loS) / 6 * (a + 4 * m + b);
        double halves = (hiS - loS) / 12 * (a + 4 * left + 2 * m + 4 * right + b);
        if (depth == 0 || Math.abs(halves - whole) <= 15 * tolerance) {
            return halves + (halves - whole) / 15;
        }
        return simpson(f, loS, midS, a, left, m, tolerance / 2, depth - 1)
                + simpson(f, midS, hiS, m, right, b, tolerance / 2, depth - 1);
    }
}
