package io.github.stoplag.examples.film;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The pixels of one lamp over a film: least and greatest level of each, and all levels as long as memory is to be had.
 */
final class LampPixels {
    /** Levels are kept as whole numbers of this part of the way from black to white. */
    private static final double UNIT = 1 / 16_000.0;

    private final LampRegion region;
    private final float[] least;
    private final float[] greatest;
    private final List<short[]> kept = new ArrayList<>();
    private int firstRow = Integer.MAX_VALUE;
    private int lastRow = Integer.MIN_VALUE;

    LampPixels(LampRegion region) {
        this.region = region;
        least = new float[region.pixels()];
        greatest = new float[region.pixels()];
        Arrays.fill(least, Float.POSITIVE_INFINITY);
        Arrays.fill(greatest, Float.NEGATIVE_INFINITY);
    }

    LampRegion region() {
        return region;
    }

    /** Looks at a frame, and keeps its levels if asked to. */
    void add(Raster raster, Channel channel, boolean keep) {
        short[] levels = levels(raster, channel);
        for (int i = 0; i < levels.length; i++) {
            float level = (float) (levels[i] * UNIT);
            least[i] = Math.min(least[i], level);
            greatest[i] = Math.max(greatest[i], level);
        }
        for (int corner = 0; corner < 4; corner++) {
            int row = raster.rowReadOut(
                    region.x() + (corner & 1) * (region.width() - 1),
                    region.y() + (corner >> 1) * (region.height() - 1));
            firstRow = Math.min(firstRow, row);
            lastRow = Math.max(lastRow, row);
        }
        if (keep) {
            kept.add(levels);
        }
    }

    short[] levels(Raster raster, Channel channel) {
        short[] levels = new short[region.pixels()];
        for (int y = 0; y < region.height(); y++) {
            for (int x = 0; x < region.width(); x++) {
                double level = raster.level(channel, region.x() + x, region.y() + y);
                levels[y * region.width() + x] = (short) Math.round(Math.max(-2, Math.min(2, level)) / UNIT);
            }
        }
        return levels;
    }

    static double level(short stored) {
        return stored * UNIT;
    }

    void forget() {
        kept.clear();
    }

    short[] kept(int frame) {
        return kept.get(frame);
    }

    double greatest() {
        double most = Double.NEGATIVE_INFINITY;
        for (float level : greatest) {
            most = Math.max(most, level);
        }
        return most;
    }

    double greatest(int pixel) {
        return greatest[pixel];
    }

    double change(int pixel) {
        return greatest[pixel] - least[pixel];
    }

    double middleRow() {
        return (firstRow + lastRow) / 2.0;
    }

    int rows() {
        return lastRow - firstRow + 1;
    }
}
