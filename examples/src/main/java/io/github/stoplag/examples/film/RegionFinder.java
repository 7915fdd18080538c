package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.InputException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/**
 * Finds the lamps in a film: pixels that change much more than the rest, grouped. Which lamp is which stays the user's
 * word; they are numbered from left to right.
 */
final class RegionFinder {
    private static final int MOST_LAMPS = 8;
    private static final int FEWEST_PIXELS = 9;
    /**
     * What a lamp's pixels must change by: a share of the whole picture's largest change, and of the way from black to
     * white.
     */
    private static final double LEAST_SHARE = 0.3;

    private static final double LEAST_CHANGE = 0.06;
    /** How far beyond the usual change of a pixel that does not belong to a lamp, in its median deviations. */
    private static final double BEYOND_NOISE = 8;

    private static final double CORE = 0.5;
    private static final double SMALLEST_GROUP = 0.02;
    private static final double MUCH_OF_PICTURE = 0.3;

    private final int width;
    private final int height;
    private final float[] least;
    private final float[] greatest;
    private int frames;

    RegionFinder(FilmSource.Facts facts) {
        width = facts.width();
        height = facts.height();
        least = new float[width * height];
        greatest = new float[width * height];
        Arrays.fill(least, Float.POSITIVE_INFINITY);
        Arrays.fill(greatest, Float.NEGATIVE_INFINITY);
    }

    void add(Raster raster, Channel channel) {
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                float level = (float) raster.level(channel, x, y);
                int i = y * width + x;
                least[i] = Math.min(least[i], level);
                greatest[i] = Math.max(greatest[i], level);
            }
        }
        frames++;
    }

    /**
     * Gives the lamps found.
     *
     * @throws InputException if nothing stands out, or too much does
     */
    List<LampRegion> regions() {
        if (frames < 2) {
            throw new InputException("a film must have at least 2 frames to find lamps in it, got " + frames);
        }
        float[] change = new float[least.length];
        for (int i = 0; i < change.length; i++) {
            change[i] = greatest[i] - least[i];
        }
        float[] sorted = change.clone();
        Arrays.sort(sorted);
        double usual = sorted[sorted.length / 2];
        double largest = sorted[sorted.length - 1 - Math.min(sorted.length - 1, FEWEST_PIXELS)];
        double threshold = Math.max(
                Math.max(LEAST_CHANGE, LEAST_SHARE * largest), usual + BEYOND_NOISE * deviation(sorted, usual));
        if (!(largest > threshold)) {
            throw new InputException(
                    "no lamp was found: no group of pixels changes clearly more than the rest; give its"
                            + " region by --lamp name=x,y,width,height");
        }
        List<List<Integer>> groups = groups(change, threshold);
        int area = groups.stream().mapToInt(List::size).sum();
        if (area > MUCH_OF_PICTURE * change.length) {
            throw new InputException(
                    "no lamp was found: " + Math.round(100.0 * area / change.length)
                            + " % of the picture changes, as when the camera moves; give regions by --lamp name=x,y,width,height");
        } else if (groups.size() > MOST_LAMPS) {
            throw new InputException("no lamp was found: " + groups.size() + " places of the picture change, more than "
                    + MOST_LAMPS + "; give regions by --lamp name=x,y,width,height");
        }
        return named(groups.stream().map(group -> box(group, change)).toList());
    }

    private static double deviation(float[] sorted, double middle) {
        float[] off = new float[sorted.length];
        for (int i = 0; i < off.length; i++) {
            off[i] = (float) Math.abs(sorted[i] - middle);
        }
        Arrays.sort(off);
        return off[off.length / 2];
    }

    /** Gathers pixels above a threshold that are nearer to each other than a hundredth of the picture. */
    private List<List<Integer>> groups(float[] change, double threshold) {
        int reach = Math.max(1, Math.max(width, height) / 100);
        boolean[] taken = new boolean[change.length];
        List<List<Integer>> groups = new ArrayList<>();
        for (int start = 0; start < change.length; start++) {
            if (!taken[start] && change[start] > threshold) {
                groups.add(group(start, change, threshold, taken, reach));
            }
        }
        int most = groups.stream().mapToInt(List::size).max().orElse(0);
        groups.removeIf(group -> group.size() < Math.max(FEWEST_PIXELS, SMALLEST_GROUP * most));
        return groups;
    }

    private List<Integer> group(int start, float[] change, double threshold, boolean[] taken, int reach) {
        List<Integer> group = new ArrayList<>();
        Deque<Integer> open = new ArrayDeque<>(List.of(start));
        taken[start] = true;
        while (!open.isEmpty()) {
            int pixel = open.pop();
            group.add(pixel);
            int px = pixel % width;
            int py = pixel / width;
            for (int y = Math.max(0, py - reach); y <= Math.min(height - 1, py + reach); y++) {
                for (int x = Math.max(0, px - reach); x <= Math.min(width - 1, px + reach); x++) {
                    int near = y * width + x;
                    if (!taken[near] && change[near] > threshold) {
                        taken[near] = true;
                        open.push(near);
                    }
                }
            }
        }
        return group;
    }

    /** Gives the box around the pixels of a group that change at least half as much as its most lively ones. */
    private LampRegion box(List<Integer> group, float[] change) {
        double[] changes = group.stream().mapToDouble(i -> change[i]).sorted().toArray();
        double peak = changes[(int) (0.95 * (changes.length - 1))];
        int[] inner = group.stream()
                .filter(i -> change[i] >= CORE * peak)
                .mapToInt(Integer::intValue)
                .toArray();
        int left = Arrays.stream(inner).map(i -> i % width).min().orElseThrow();
        int right = Arrays.stream(inner).map(i -> i % width).max().orElseThrow();
        int top = Arrays.stream(inner).map(i -> i / width).min().orElseThrow();
        int bottom = Arrays.stream(inner).map(i -> i / width).max().orElseThrow();
        return new LampRegion("found", left, top, right - left + 1, bottom - top + 1);
    }

    private static List<LampRegion> named(List<LampRegion> found) {
        List<LampRegion> ordered = new ArrayList<>(found);
        ordered.sort(Comparator.comparingInt(LampRegion::x).thenComparingInt(LampRegion::y));
        List<LampRegion> named = new ArrayList<>();
        for (LampRegion region : ordered) {
            named.add(new LampRegion(
                    "lamp" + (named.size() + 1), region.x(), region.y(), region.width(), region.height()));
        }
        return named;
    }
}
