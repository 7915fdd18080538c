package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Ranges;
import io.github.stoplag.source.Evidence;
import io.github.stoplag.source.Source;
import java.util.Objects;

/**
 * A diode by a table of forward voltage against current, as a data sheet gives it.
 *
 * <p>Straight lines between the points; from 0 A and 0 V to the first point (which is too low a voltage there); beyond
 * the last point the last line goes on. Outside the table with a caveat.
 */
public final class TabledDiode implements ForwardCharacteristic {
    private final double[] amperes;
    private final double[] volts;
    private final String basis;

    private TabledDiode(double[] amperes, double[] volts, String basis) {
        this.amperes = amperes;
        this.volts = volts;
        this.basis = basis;
    }

    /**
     * Makes a diode from points.
     *
     * @param currentA currents in amperes, above 0 and increasing
     * @param voltageV forward voltages there in volts, above 0 and increasing
     * @param source where the points come from, and whether they are typical or highest values
     * @return the diode
     * @throws IllegalArgumentException if the arrays differ in length, are empty or do not increase
     */
    public static TabledDiode of(double[] currentA, double[] voltageV, Source source) {
        Objects.requireNonNull(currentA, "currentA");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(voltageV, "voltageV");
        if (currentA.length == 0 || currentA.length != voltageV.length) {
            throw new IllegalArgumentException("a diode table needs as many voltages as currents and at least one, got "
                    + currentA.length + " currents and " + voltageV.length + " voltages");
        }
        double[] i = new double[currentA.length + 1];
        double[] u = new double[i.length];
        for (int k = 1; k < i.length; k++) {
            i[k] = Check.above("diode current " + (k - 1), currentA[k - 1], i[k - 1], 1e5, "A");
            u[k] = Check.above("forward voltage " + (k - 1), voltageV[k - 1], u[k - 1], 1000, "V");
        }
        return new TabledDiode(i, u, "diode by a table of " + currentA.length + " points: " + source);
    }

    @Override
    public double voltageV(double currentA) {
        return along(amperes, volts, Ranges.FORWARD_CURRENT.check("diode current", currentA));
    }

    @Override
    public double currentA(double voltageV) {
        return along(volts, amperes, Ranges.SUPPLY.check("forward voltage", voltageV));
    }

    private static double along(double[] x, double[] y, double at) {
        int k = 1;
        while (k < x.length - 1 && x[k] < at) {
            k++;
        }
        return y[k - 1] + (y[k] - y[k - 1]) * (at - x[k - 1]) / (x[k] - x[k - 1]);
    }

    /** The currents at which the line turns. */
    double[] knotsA() {
        return amperes.clone();
    }

    @Override
    public Evidence evidence(double currentA) {
        double first = amperes[1];
        double last = amperes[amperes.length - 1];
        return Evidence.of(basis)
                .withCaveatIf(
                        currentA < first || currentA > last,
                        "diode current " + Numbers.text(currentA) + " A is outside the table, " + Numbers.text(first)
                                + " to " + Numbers.text(last) + " A");
    }
}
