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
    private final double[] tenths;

    ESeries(int stride) {
        double[] all = Table.read(ESeries.class, "e_series.csv").numbers("e24");
        this.tenths = new double[all.length / stride];
        Arrays.setAll(tenths, i -> Math.rint(10 * all[i * stride]));
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
            for (int i = tenths.length - 1; i >= 0; i--) {
                double value = value(tenths[i], d);
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
        for (double tenth : tenths) {
            double value = value(tenth, decade);
            if (value > preferred * (1 + 1e-9)) {
                return value;
            }
        }
        return value(tenths[0], decade + 1);
    }

    /**
     * Multiplies or divides a whole number by an exact power of ten, so that 5.6 and 0.56 come out as the nearest
     * doubles.
     */
    private static double value(double tenths, int decade) {
        return decade >= 1 ? tenths * Math.pow(10, decade - 1.0) : tenths / Math.pow(10, 1.0 - decade);
    }
}
