package io.github.stoplag.circuit;

import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Resistance;
import io.github.stoplag.source.Table;
import java.util.Arrays;

/**
 * A series of preferred resistance values, IEC 60063 (values from memory; each is near 10^(k/n) rounded to two digits).
 *
 * <p>Range of the values sought: [1e-6, 1e8] Ω.
 */
public enum ESeries {
    /** Six values a decade, usual tolerance 20 %. */
    E6(4),
    /** Twelve values a decade, usual tolerance 10 %. */
    E12(2),
    /** Twenty-four values a decade, usual tolerance 5 %. */
    E24(1);

    @SuppressWarnings("ImmutableEnumChecker") // the array is filled once and never handed out
    private final double[] mantissas;

    ESeries(int stride) {
        double[] all = Table.read(ESeries.class, "e_series.csv").numbers("e24");
        this.mantissas = new double[all.length / stride];
        Arrays.setAll(mantissas, i -> all[i * stride]);
    }

    /**
     * Gives the greatest preferred value that is not above a resistance: the rule for a load that must draw at least a
     * given current.
     *
     * @param resistance the resistance, in [1e-6, 1e8] Ω
     * @return the preferred value
     * @throws IllegalArgumentException if the resistance is outside the range
     */
    public Resistance atMost(Resistance resistance) {
        double ohms = Check.inRange("resistance", resistance.inOhms(), 1e-6, 1e8, "Ω");
        int decade = (int) Math.floor(Math.log10(ohms)) + 1;
        for (int d = decade; ; d--) {
            for (int i = mantissas.length - 1; i >= 0; i--) {
                double value = value(mantissas[i], d);
                if (value <= ohms) {
                    return Resistance.ohms(value);
                }
            }
        }
    }

    /**
     * Gives the preferred value with the smallest ratio to a resistance.
     *
     * @param resistance the resistance, in [1e-6, 1e8] Ω
     * @return the preferred value
     * @throws IllegalArgumentException if the resistance is outside the range
     */
    public Resistance nearest(Resistance resistance) {
        double below = atMost(resistance).inOhms();
        double above = next(below);
        return Resistance.ohms(resistance.inOhms() / below <= above / resistance.inOhms() ? below : above);
    }

    private double next(double preferred) {
        int decade = (int) Math.floor(Math.log10(preferred) + 1e-9);
        for (double mantissa : mantissas) {
            double value = value(mantissa, decade);
            if (value > preferred * (1 + 1e-9)) {
                return value;
            }
        }
        return value(mantissas[0], decade + 1);
    }

    /** Multiplies or divides by an exact power of ten, so that 5.6 Ω and 0.56 Ω come out as the nearest doubles. */
    private static double value(double mantissa, int decade) {
        return decade >= 0 ? mantissa * Math.pow(10, decade) : mantissa / Math.pow(10, -decade);
    }
}
