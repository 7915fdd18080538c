package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Voltage;
import java.util.Objects;

/**
 * A supply voltage and the current drawn at it.
 *
 * @param supply the supply voltage
 * @param current the current drawn
 */
public record OperatingPoint(Voltage supply, Current current) {

    /**
     * Refuses nulls.
     *
     * @param supply the supply voltage
     * @param current the current drawn
     * @throws NullPointerException if one that is required is null
     */
    public OperatingPoint {
        Objects.requireNonNull(current, "current");
        Objects.requireNonNull(supply, "supply");
    }

    @Override
    public String toString() {
        return current + " at " + supply;
    }
}
