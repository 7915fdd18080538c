package io.github.stoplag.kernel;

/**
 * What the case theorem needs of each of a block of vehicles, worked out in small loops of one store each, which the JIT turns
 * into vector instructions.
 */
final class StopColumns {
    final double[] midS;
    final double[] brakingS;
    final double[] stopS;
    final double[] shiftM;

    StopColumns(int rows) {
        midS = new double[rows];
        brakingS = new double[rows];
        stopS = new double[rows];
        shiftM = new double[rows];
    }

    void fill(int from, int n, double[] speedMps, double[] onsetS, double[] buildUpS, double[] decelMps2) {
        for (int i = 0; i < n; i++) {
            midS[i] = onsetS[from + i] + 0.5 * buildUpS[from + i];
        }
        for (int i = 0; i < n; i++) {
            brakingS[i] = speedMps[from + i] / decelMps2[from + i];
        }
        for (int i = 0; i < n; i++) {
            stopS[i] = midS[i] + brakingS[i];
        }
        for (int i = 0; i < n; i++) {
            shiftM[i] = decelMps2[from + i] * buildUpS[from + i] * buildUpS[from + i] * (1.0 / 24);
        }
    }
}
