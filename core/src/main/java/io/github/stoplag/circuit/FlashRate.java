package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.quantity.TimeSpan;
import java.util.List;
import java.util.Objects;

/**
 * A flash rate in cycles per minute.
 *
 * @param inPerMinute the rate, in (0, 6000] per minute
 */
public record FlashRate(double inPerMinute) {
    /**
     * A range of lawful rates.
     *
     * @param lowest the lowest rate
     * @param highest the highest rate
     * @param source where the range stands
     */
    public record Band(FlashRate lowest, FlashRate highest, String source) {

        /**
         * Refuses nulls.
         *
         * @param lowest the lowest rate
         * @param highest the highest rate
         * @param source where the range stands
         * @throws NullPointerException if one that is required is null
         */
        public Band {
            Objects.requireNonNull(highest, "highest");
            Objects.requireNonNull(lowest, "lowest");
            Objects.requireNonNull(source, "source");
        }

        /**
         * Says whether a rate is inside.
         *
         * @param rate the rate
         * @return true from the lowest to the highest, both included
         */
        public boolean contains(FlashRate rate) {
            Objects.requireNonNull(rate, "rate");
            return rate.inPerMinute >= lowest.inPerMinute && rate.inPerMinute <= highest.inPerMinute;
        }
    }

    /** Direction indicators, 90 ± 30 per minute. */
    public static final Band UN_R48 =
            new Band(new FlashRate(60), new FlashRate(120), "UN R48 6.5.9, 90 ± 30 per minute (seen, in a copy)");

    /** Flashers of the variable-load kind, 60 to 120 per minute. */
    public static final Band SAE_J945 = new Band(
            new FlashRate(60),
            new FlashRate(120),
            "SAE J945, normally open contacts, 60 to 120 per minute (seen, as stated in letters of the US authority)");

    /**
     * Checks the rate.
     *
     * @param inPerMinute the rate, in (0, 6000] per minute
     * @throws IllegalArgumentException if it is outside (0, 6000] per minute
     */
    public FlashRate {
        Check.above("flash rate", inPerMinute, 0, 6000, "per minute");
    }

    /**
     * Makes a rate.
     *
     * @param perMinute cycles per minute
     * @return the rate
     * @throws IllegalArgumentException if it is outside (0, 6000] per minute
     */
    public static FlashRate perMinute(double perMinute) {
        return new FlashRate(perMinute);
    }

    /**
     * Averages the rates of single cycles, as the US flasher rule is read: the mean of 60/T, not 60 over the mean T.
     *
     * @param cycles the lengths of at least three consecutive cycles, above 0
     * @return the mean of the rates
     * @throws IllegalArgumentException if there are fewer than three cycles or one is not above 0
     */
    public static FlashRate meanOfCycles(List<TimeSpan> cycles) {
        Objects.requireNonNull(cycles, "cycles");
        if (cycles.size() < 3) {
            throw new IllegalArgumentException("a flash rate is averaged over at least 3 cycles, got " + cycles.size());
        }
        return new FlashRate(cycles.stream()
                .mapToDouble(c -> 60 / Ranges.LASTING.check("cycle", c.inSeconds()))
                .average()
                .orElseThrow());
    }

    @Override
    public String toString() {
        return Numbers.text(inPerMinute) + " per minute";
    }
}
