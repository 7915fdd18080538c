package io.github.stoplag.film;

import io.github.stoplag.quantity.Check;

/**
 * What a simulated camera's pixels add, and how many of them look at the lamp.
 *
 * <p>Variance of a pixel's light = read² + shot² L, L its light over full scale: electronic noise and the scatter of
 * the number of photons.
 *
 * @param readRatio standard deviation of a dark pixel over full scale, [0, 0.5]
 * @param shotRatio standard deviation that photons add at full scale, [0, 0.5]
 * @param pixels how many pixels the lamp's region has, [1, 100000]
 * @param unevenness by how much the dimmest pixel of the region is below the brightest, [0, 0.95]
 */
public record Sensor(double readRatio, double shotRatio, int pixels, double unevenness) {
    /** A small sensor by day, 100 pixels of an even lamp (assumed). */
    public static final Sensor USUAL = new Sensor(0.005, 0.02, 100, 0);

    /**
     * Checks the ranges.
     *
     * @param readRatio standard deviation of a dark pixel over full scale
     * @param shotRatio standard deviation that photons add at full scale
     * @param pixels how many pixels the lamp's region has
     * @param unevenness by how much the dimmest pixel is below the brightest
     * @throws IllegalArgumentException if a value is out of range
     */
    public Sensor {
        Check.inRange("noise of a dark pixel over full scale", readRatio, 0, 0.5, "");
        Check.inRange("noise of photons at full scale", shotRatio, 0, 0.5, "");
        Check.inRange("pixels of a region", pixels, 1, 100_000, "");
        Check.inRange("unevenness of a region", unevenness, 0, 0.95, "");
    }

    double gain(int pixel) {
        return pixels == 1 ? 1 : 1 - unevenness * pixel / (pixels - 1);
    }

    double noise(double lightRatio) {
        return Math.sqrt(readRatio * readRatio + shotRatio * shotRatio * Math.max(0, lightRatio));
    }
}
