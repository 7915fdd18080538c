package io.github.stoplag.examples.draw;

import io.github.stoplag.quantity.Numbers;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * An axis: values to drawing coordinates; linear with round ticks, or logarithmic with one tick for each power of ten.
 *
 * @param lo the value at the start, of a logarithmic axis its power of ten
 * @param hi the value at the end, likewise
 * @param step the distance between ticks, likewise
 * @param from the drawing coordinate of the start
 * @param to the drawing coordinate of the end
 * @param decades whether it is logarithmic
 */
public record Scale(double lo, double hi, double step, double from, double to, boolean decades) {
    private static final int AIMED_TICKS = 6;

    /** Makes a linear axis. */
    public static Scale linear(double lo, double hi, double step, double from, double to) {
        return new Scale(lo, hi, step, from, to, false);
    }

    /** Makes the logarithmic axis that holds all values, which must be above zero, between powers of ten. */
    static Scale overDecades(double[] values, double from, double to) {
        double lo = Math.floor(Math.log10(Arrays.stream(values).min().orElse(1)) + 1e-9);
        double hi = Math.ceil(Math.log10(Arrays.stream(values).max().orElse(10)) - 1e-9);
        return new Scale(lo, Math.max(hi, lo + 1), 1, from, to, true);
    }

    /** Makes the linear axis that holds zero and all values, between round ends. */
    public static Scale over(double[] values, double from, double to) {
        double least = Math.min(0, Arrays.stream(values).min().orElse(0));
        double most = Math.max(0, Arrays.stream(values).max().orElse(1));
        double step = roundStep(most > least ? most - least : 1);
        double lo = Math.floor(least / step + 1e-9) * step;
        double hi = Math.max(Math.ceil(most / step - 1e-9) * step, lo + step);
        return linear(lo, hi, step, from, to);
    }

    /** Gives the step of 1, 2 or 5 times a power of ten that parts a span into about six. */
    public static double roundStep(double span) {
        double rough = span / AIMED_TICKS;
        double decade = Math.pow(10, Math.floor(Math.log10(rough)));
        for (double factor : new double[] {1, 2, 5}) {
            if (rough <= factor * decade * (1 + 1e-9)) {
                return factor * decade;
            }
        }
        return 10 * decade;
    }

    public double at(double value) {
        return from + (to - from) * ((decades ? Math.log10(value) : value) - lo) / (hi - lo);
    }

    double[] ticks() {
        int count = (int) Math.round((hi - lo) / step);
        return IntStream.rangeClosed(0, count)
                .mapToDouble(i -> lo + i * step)
                .map(tick -> decades ? Math.pow(10, tick) : tick)
                .toArray();
    }

    String text(double tick) {
        return decades
                ? Numbers.text(tick)
                : Numbers.fixed(tick, Math.max(0, (int) Math.ceil(-Math.log10(step) - 1e-9)));
    }
}
