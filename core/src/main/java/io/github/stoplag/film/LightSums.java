package io.github.stoplag.film;

import java.util.Arrays;

/**
 * The light of a film's bins for an amount of pixel noise, straight between those it was read for, with running sums
 * that give the mean and scatter of any stretch at once.
 */
final class LightSums {
    private final FilmedLight film;
    private final double base;
    private final double[][] offset;
    private final double[][] sum;
    private final double[][] squares;
    private final double[][] products;
    private final double[] slopes;
    private final double[] darkGain;
    private final int[] frames;
    private final int[] freeBins;
    private final int[] atLeast;
    private final int[] atMost;
    private final double widestSpreadS2;
    private int lower;
    private double share;

    LightSums(FilmedLight film) {
        this.film = film;
        int levels = film.light.length;
        base = Arrays.stream(film.light[0]).min().orElseThrow();
        offset = new double[levels][film.size];
        sum = new double[levels][film.size + 1];
        squares = new double[levels][film.size + 1];
        products = new double[Math.max(1, levels - 1)][film.size + 1];
        slopes = new double[levels];
        darkGain = new double[levels];
        frames = new int[film.size + 1];
        freeBins = new int[film.size + 1];
        atLeast = new int[film.size + 1];
        atMost = new int[film.size + 1];
        widestSpreadS2 = Arrays.stream(film.spreadS2).max().orElseThrow();
        for (int j = 0; j < film.size; j++) {
            boolean free = film.bound[j] == FilmedLight.FREE;
            frames[j + 1] = frames[j] + (free ? film.count[j] : 0);
            freeBins[j + 1] = freeBins[j] + (free ? 1 : 0);
            atLeast[j + 1] = atLeast[j] + (film.bound[j] == FilmedLight.AT_LEAST ? film.count[j] : 0);
            atMost[j + 1] = atMost[j] + (film.bound[j] == FilmedLight.AT_MOST ? film.count[j] : 0);
            for (int q = 0; q < levels; q++) {
                add(q, j, free ? film.count[j] : 0);
            }
        }
        int darkest = film.rising ? 0 : film.size - 1;
        for (int q = 0; q < levels; q++) {
            darkGain[q] = film.logSlope[q][darkest] - film.logSlope[0][darkest];
        }
    }

    private void add(int q, int j, int weight) {
        double value = film.light[q][j] - base;
        offset[q][j] = value;
        sum[q][j + 1] = sum[q][j] + weight * value;
        squares[q][j + 1] = squares[q][j] + weight * value * value;
        slopes[q] += weight > 0 ? film.logSlope[q][j] - film.logSlope[0][j] : 0;
        if (q > 0) {
            products[q - 1][j + 1] = products[q - 1][j] + weight * value * offset[q - 1][j];
        }
    }

    /** Takes the light for an amount of pixel noise: its place among those the light was read for. */
    void noise(double place) {
        lower = Math.max(0, Math.min((int) place, film.light.length - 2));
        share = place - lower;
    }

    /** What the least light is that values are counted from. */
    double base() {
        return base;
    }

    /** How much light lies between the dimmest and the brightest bin. */
    double range() {
        return Arrays.stream(offset[0]).max().orElseThrow();
    }

    double widestS(double exposureS) {
        return Math.sqrt(widestSpreadS2 + exposureS * exposureS);
    }

    int firstAfter(double timeS) {
        int found = Arrays.binarySearch(film.middleS, timeS);
        return found >= 0 ? found : -found - 1;
    }

    double value(int j) {
        return share == 0 ? offset[lower][j] : offset[lower][j] + share * (offset[lower + 1][j] - offset[lower][j]);
    }

    /** The logarithm of how densely light lies in grey values, against that without pixel noise. */
    double logSlopes() {
        return share == 0 ? slopes[lower] : slopes[lower] + share * (slopes[lower + 1] - slopes[lower]);
    }

    /** The logarithm of how much more light a step of the dark's grey value is than without pixel noise. */
    double darkGain() {
        return share == 0 ? darkGain[lower] : darkGain[lower] + share * (darkGain[lower + 1] - darkGain[lower]);
    }

    int bins(int from, int to) {
        return freeBins[to] - freeBins[from];
    }

    int frames(int from, int to) {
        return frames[to] - frames[from];
    }

    /** How many frames are bounds of a kind. */
    int bounds(int kind, int from, int to) {
        int[] of = kind == FilmedLight.AT_LEAST ? atLeast : atMost;
        return of[to] - of[from];
    }

    double mean(int from, int to) {
        return total(from, to) / frames(from, to);
    }

    /** The sum of squares about the mean, frame by frame in a bin alike. */
    double scatter(int from, int to) {
        double total = total(from, to);
        double of = squares[lower][to] - squares[lower][from];
        if (share != 0) {
            of = (1 - share) * (1 - share) * of
                    + 2 * share * (1 - share) * (products[lower][to] - products[lower][from])
                    + share * share * (squares[lower + 1][to] - squares[lower + 1][from]);
        }
        return Math.max(0, of - total * total / frames(from, to));
    }

    private double total(int from, int to) {
        double of = sum[lower][to] - sum[lower][from];
        return share == 0 ? of : of + share * (sum[lower + 1][to] - sum[lower + 1][from] - of);
    }
}
