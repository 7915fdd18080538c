package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Current;
import io.github.stoplag.quantity.Voltage;

/**
 * A supply voltage and the current drawn at it.
 *
 * @param supply the supply voltage
 * @param current the current drawn
 */
public record OperatingPoint(Voltage supply, Current current) {
    @Override
    public String toString() {
        return current + " at " + supply;
    }
}
