package io.github.stoplag.film;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * One switching of a lamp in a film: whether it comes on or goes out, and the frames that show it.
 *
 * <p>Found in the light smoothed by a running median of five frames: on where it passes 70 % between its least and its
 * greatest value from below 30 %, off the other way. A lamp whose light changes by less than six times its scatter does
 * not switch.
 *
 * @param series the film of the lamp
 * @param rising whether it comes on
 * @param from the first frame's place in the series that belongs to it: where the switching before has reached its
 *     level, or the film's start
 * @param low the place of the last frame before the middle of the change
 * @param high the place of the first frame after it
 * @param to the place after its last frame: where the next switching begins, or the film's end
 */
public record Switching(GreySeries series, boolean rising, int from, int low, int high, int to) {
    private static final double LOW = 0.3;
    private static final double HIGH = 0.7;
    private static final double CLEAR = 6;
    /** The light is at its level while it differs from it by less than this share of the change, or by its scatter. */
    private static final double ALIKE = 0.01;
    /** As many changes, so close to each other, are no signal that a driver can tell. */
    private static final int MANY = 6;

    private static final double FLICKER_S = 0.02;

    /**
     * Checks the order of the places.
     *
     * @param series the film of the lamp
     * @param rising whether it comes on
     * @param from the first place
     * @param low the place of the last frame before the middle of the change
     * @param high the place of the first frame after it
     * @param to the place after its last frame
     * @throws IllegalArgumentException unless 0 ≤ from ≤ low &lt; high &lt; to ≤ size
     */
    public Switching {
        Objects.requireNonNull(series, "series");
        Check.inRange("first place of a switching", from, 0, low, "");
        Check.inRange("place before a change", low, from, high - 1.0, "");
        Check.inRange("place after a change", high, low, to - 1.0, "");
        Check.inRange("end of a switching", to, high, series.size(), "");
    }

    /**
     * Finds every switching of a lamp.
     *
     * @param series the film of the lamp
     * @param camera the camera that took it
     * @return the switchings in order
     * @throws IllegalArgumentException if the light never changes beyond its scatter, flickers, or every frame is
     *     clipped or black
     */
    public static List<Switching> all(GreySeries series, Camera camera) {
        Objects.requireNonNull(camera, "camera");
        double[] light = new double[series.size()];
        for (int i = 0; i < light.length; i++) {
            light[i] = camera.transfer().light(camera.scale().signal(series.grey(i)));
        }
        double[] smooth = smoothed(light);
        double least = Arrays.stream(smooth).min().orElseThrow();
        double greatest = Arrays.stream(smooth).max().orElseThrow();
        double scatter = scatter(light, 0, light.length);
        refuseIfHidden(series, camera);
        if (!(greatest - least > Math.max(CLEAR * scatter, 1e-4))) {
            throw new IllegalArgumentException("light of " + series.label() + " must change by more than six times its"
                    + " scatter of " + Numbers.text(100 * scatter, 3) + " % of full scale, got a change of "
                    + Numbers.text(100 * (greatest - least), 3)
                    + " %: the lamp never switches, or it is not in its region");
        }
        List<Change> changes = changes(
                smooth, least + LOW * (greatest - least), least + HIGH * (greatest - least), (least + greatest) / 2);
        refuseIfFlickering(series, camera, changes);
        return cut(series, changes, smooth, Math.max(ALIKE * (greatest - least), 2 * scatter));
    }

    private static void refuseIfFlickering(GreySeries series, Camera camera, List<Change> changes) {
        if (changes.size() < MANY) {
            return;
        }
        double everyS = (timeS(series, camera, changes.get(changes.size() - 1)) - timeS(series, camera, changes.get(0)))
                / (changes.size() - 1);
        if (everyS < FLICKER_S) {
            throw new IllegalArgumentException("light of " + series.label() + " must stay on or off for "
                    + Numbers.text(1000 * FLICKER_S) + " ms, got " + changes.size() + " changes, one every "
                    + Numbers.text(1000 * everyS, 3)
                    + " ms: the lamp is dimmed by switching; film it with an exposure of"
                    + " one or more of its periods, or at full power");
        }
    }

    private static double timeS(GreySeries series, Camera camera, Change change) {
        return camera.frameTimeS(series.frame(change.high()), series.stampS(change.high()));
    }

    private static void refuseIfHidden(GreySeries series, Camera camera) {
        int clipped = 0;
        int crushed = 0;
        for (int i = 0; i < series.size(); i++) {
            clipped += FilmedLight.clipped(series, i, camera) ? 1 : 0;
            crushed += series.grey(i) <= camera.scale().bottom() ? 1 : 0;
        }
        if (clipped == series.size()) {
            throw new IllegalArgumentException("light of " + series.label() + " must leave the end of the grey scale, "
                    + Numbers.text(camera.scale().top()) + ", got all " + clipped
                    + " frames clipped: film with a shorter exposure, or take a dimmer part of the lamp as its region");
        }
        if (crushed == series.size()) {
            throw new IllegalArgumentException("light of " + series.label() + " must rise above the least grey value, "
                    + Numbers.text(camera.scale().bottom()) + ", got all " + crushed
                    + " frames black: film with a longer exposure, or check the region");
        }
    }

    /**
     * Finds the first switching of one kind.
     *
     * @param series the film of the lamp
     * @param camera the camera that took it
     * @param rising true for on, false for off
     * @return the switching
     * @throws IllegalArgumentException if there is none
     */
    public static Switching first(GreySeries series, Camera camera, boolean rising) {
        Objects.requireNonNull(camera, "camera");
        return all(series, camera).stream()
                .filter(s -> s.rising == rising)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the film must show " + series.label() + " "
                        + (rising ? "come on: it is lit from the first frame" : "go out: it stays lit to the end")));
    }

    private record Change(boolean rising, int low, int high) {}

    private static List<Change> changes(double[] smooth, double low, double high, double middle) {
        List<Change> changes = new ArrayList<>();
        boolean lit = smooth[0] > middle;
        int last = 0;
        for (int i = 0; i < smooth.length; i++) {
            if (lit ? smooth[i] >= high : smooth[i] <= low) {
                last = i;
            } else if (lit ? smooth[i] <= low : smooth[i] >= high) {
                changes.add(new Change(!lit, last, i));
                lit = !lit;
                last = i;
            }
        }
        return changes;
    }

    /**
     * Ends each switching where the light leaves its level, and begins the next where it has reached it: a slow fall is
     * not part of the rise before it, nor a slow rise of the fall after it.
     */
    private static List<Switching> cut(GreySeries series, List<Change> changes, double[] smooth, double alike) {
        List<Switching> result = new ArrayList<>();
        int from = 0;
        for (int k = 0; k < changes.size(); k++) {
            Change change = changes.get(k);
            int first = 0;
            int last = series.size() - 1;
            if (k + 1 < changes.size()) {
                double sign = change.rising() ? 1 : -1;
                int end = changes.get(k + 1).low();
                double level = IntStream.rangeClosed(change.high(), end)
                        .mapToDouble(i -> sign * smooth[i])
                        .max()
                        .orElseThrow();
                int[] there = IntStream.rangeClosed(change.high(), end)
                        .filter(i -> sign * smooth[i] >= level - alike)
                        .toArray();
                first = there[0];
                last = there[there.length - 1];
            }
            result.add(new Switching(series, change.rising(), from, change.low(), change.high(), last + 1));
            from = first;
        }
        return result;
    }

    private static double[] smoothed(double[] light) {
        double[] smooth = new double[light.length];
        for (int i = 0; i < light.length; i++) {
            int half = Math.min(2, Math.min(i, light.length - 1 - i));
            double[] near = Arrays.copyOfRange(light, i - half, i + half + 1);
            Arrays.sort(near);
            smooth[i] = near[half];
        }
        return smooth;
    }

    /**
     * The standard deviation of a frame's light from the median difference of neighbours, which a switching hardly
     * moves.
     */
    static double scatter(double[] light, int from, int to) {
        if (to - from < 3) {
            return 0;
        }
        double[] steps = new double[to - from - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = Math.abs(light[from + i + 1] - light[from + i]);
        }
        Arrays.sort(steps);
        // of two normal numbers' difference the median size is 0.6745 √2 σ
        return steps[steps.length / 2] / (0.67449 * Math.sqrt(2));
    }
}
