package io.github.stoplag.examples.lamps;

import io.github.stoplag.quantity.Numbers;
import java.util.function.DoubleUnaryOperator;

/**
 * A number with the interval that holds 95 % of what a film or a bulb's rating leaves possible; where nothing is left
 * open the interval is the number.
 *
 * @param value the number
 * @param lo the lower end
 * @param hi the upper end, infinite where there is none
 */
public record Estimated(double value, double lo, double hi) {
    /** Half the width of a 95 % interval of a normal law in standard deviations. */
    private static final double NORMAL_95 = 1.96;

    public static Estimated exactly(double value) {
        return new Estimated(value, value, value);
    }

    /** Says whether there is no interval. */
    public boolean exact() {
        return lo == hi;
    }

    /** Gives the standard uncertainty: the interval's half width over 1.96, as for a normal law. */
    public double uncertainty() {
        return (hi - lo) / 2 / NORMAL_95;
    }

    /**
     * Takes another off as if nothing were common to both, which makes the interval too wide rather than too narrow.
     */
    public Estimated minus(Estimated other) {
        double difference = value - other.value;
        return new Estimated(
                difference,
                difference - Math.hypot(value - lo, other.hi - other.value),
                difference + Math.hypot(hi - value, other.value - other.lo));
    }

    /** Gives what a function that nowhere falls makes of it. */
    public Estimated map(DoubleUnaryOperator rising) {
        return new Estimated(rising.applyAsDouble(value), rising.applyAsDouble(lo), rising.applyAsDouble(hi));
    }

    public Estimated times(double factor) {
        return factor >= 0
                ? new Estimated(factor * value, factor * lo, factor * hi)
                : new Estimated(factor * value, factor * hi, factor * lo);
    }

    /** Writes the interval as the end of a phrase, nothing if its ends are written alike: {@code , 1.08 to 1.11 m}. */
    public String between(int decimals, String unit) {
        String from = Numbers.fixed(lo, decimals);
        String to = Double.isInfinite(hi) ? "never" : Numbers.fixed(hi, decimals);
        return from.equals(to) ? "" : ", " + from + " to " + to + " " + unit;
    }
}
