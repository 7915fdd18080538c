package io.github.stoplag.circuit;

import io.github.stoplag.source.Evidence;

/** A diode's forward voltage against its current, by Shockley's equation or by a table. */
public sealed interface ForwardCharacteristic permits ShockleyDiode, TabledDiode {
    /**
     * Gives the forward voltage at a current.
     *
     * @param currentA I in amperes, not negative
     * @return U_F in volts
     * @throws IllegalArgumentException if the current is negative
     */
    double voltageV(double currentA);

    /**
     * Gives the current at a forward voltage.
     *
     * @param voltageV U_F in volts, not negative
     * @return I in amperes
     * @throws IllegalArgumentException if the voltage is negative
     */
    double currentA(double voltageV);

    /**
     * Says what the characteristic rests on at a current.
     *
     * @param currentA the current in amperes
     * @return the evidence
     */
    Evidence evidence(double currentA);
}
