package io.github.stoplag.film;

import java.util.Arrays;

/**
 * What averaging noisy pixels after the transfer curve does to a region's mean near black, undone.
 *
 * <pre>
 *   mean signal of a region whose pixels have light L and noise r:   G(L) = mean of max(V(L + r z), floor)
 *   light read from a mean signal:                                   G⁻¹(V) = V⁻¹(V) + c(V)
 * </pre>
 *
 * <p>Symbols: z normal, V the transfer curve, floor the least signal a film can hold. With a curve that bends or a
 * floor that cuts, V⁻¹(G(L)) is not L: dark frames look darker, or brighter, than they are by about r²/L.
 */
final class PixelToe {
    private static final int NODES = 240;
    private static final int STEPS = 33;
    private static final double REACH = 3.6;
    private static final double[] Z = new double[STEPS];
    private static final double[] WEIGHT = new double[STEPS];

    static {
        double sum = 0;
        for (int k = 0; k < STEPS; k++) {
            Z[k] = REACH * (2.0 * k / (STEPS - 1) - 1);
            WEIGHT[k] = Math.exp(-Z[k] * Z[k] / 2);
            sum += WEIGHT[k];
        }
        for (int k = 0; k < STEPS; k++) {
            WEIGHT[k] /= sum;
        }
    }

    private final TransferCurve curve;
    private final double[] signal = new double[NODES];
    private final double[] light = new double[NODES];

    /** Prepares for pixels of a given noise over full scale. */
    PixelToe(TransferCurve curve, double floorSignal, double noiseRatio) {
        this.curve = curve;
        double lowest = -3 * noiseRatio - 1e-3;
        for (int i = 0; i < NODES; i++) {
            double u = (double) i / (NODES - 1);
            light[i] = lowest + (1.2 - lowest) * u * u * u;
            double mean = 0;
            for (int k = 0; k < STEPS; k++) {
                mean += WEIGHT[k] * Math.max(floorSignal, curve.signal(light[i] + noiseRatio * Z[k]));
            }
            signal[i] = mean;
        }
        for (int i = 0; i < NODES; i++) {
            light[i] -= curve.light(signal[i]);
        }
    }

    /** The light that a mean signal stands for. */
    double light(double meanSignal) {
        int found = Arrays.binarySearch(signal, meanSignal);
        int right = Math.max(1, Math.min(NODES - 1, found >= 0 ? found : -found - 1));
        double width = signal[right] - signal[right - 1];
        double share = width > 0 ? Math.max(0, Math.min(1, (meanSignal - signal[right - 1]) / width)) : 0;
        return curve.light(meanSignal) + light[right - 1] + share * (light[right] - light[right - 1]);
    }
}
