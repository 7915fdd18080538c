package io.github.stoplag.source;

import io.github.stoplag.quantity.Numbers;
import java.util.Objects;
import java.util.Optional;

/**
 * The range in which a model or table was validated by its source. Outside it a model still computes, with a caveat.
 *
 * @param quantity what is limited, for example {@code filament temperature}
 * @param lo the lowest validated value
 * @param hi the highest validated value
 * @param unit the unit of both, empty for a plain ratio
 * @param source who validated it
 */
public record Validity(String quantity, double lo, double hi, String unit, Source source) {
    /**
     * Checks the order of the bounds.
     *
     * @param quantity what is limited, for example {@code filament temperature}
     * @param lo the lowest validated value
     * @param hi the highest validated value
     * @param unit the unit of both, empty for a plain ratio
     * @param source who validated it
     * @throws IllegalArgumentException if lo is not below hi
     */
    public Validity {
        Objects.requireNonNull(quantity, "quantity");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(unit, "unit");
        if (!(lo < hi)) {
            throw new IllegalArgumentException("validated range of " + quantity + " must have lo < hi, got "
                    + Numbers.text(lo) + " and " + Numbers.text(hi));
        }
    }

    /**
     * Gives a caveat if a value lies outside the validated range.
     *
     * @param value the value used
     * @return a caveat naming quantity, range, value and source, or nothing
     */
    public Optional<Caveat> check(double value) {
        if (value >= lo && value <= hi) {
            return Optional.empty();
        }
        String suffix = unit.isEmpty() ? "" : " " + unit;
        return Optional.of(
                new Caveat(quantity + " " + Numbers.text(value) + suffix + " is outside the validated range ["
                        + Numbers.text(lo) + ", " + Numbers.text(hi) + "]" + suffix + " of " + source));
    }
}
