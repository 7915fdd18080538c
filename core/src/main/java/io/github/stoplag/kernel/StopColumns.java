package io.github.stoplag.kernel;

/**
 * What the case theorem needs of each of a block of vehicles, worked out in small loops of one store each. The block is
 * copied first: the JIT turns a loop over whole arrays from index 0 into vector instructions, but not one that starts
 * inside longer arrays, and the copies cost less than that.
 */
final class StopColumns {
    final double[] midS;
    final double[] stopS;
    final double[] distanceM;
    private final double[] speed;
    private final double[] buildUp;
    private final double[] decel;
    private final double[] braking;

    StopColumns(int rows) {
        midS = new double[rows];
        stopS = new double[rows];
        distanceM = new double[rows];
        speed = new double[rows];
        buildUp = new double[rows];
        decel = new double[rows];
        braking = new double[rows];
    }

    void fill(int from, int n, double[] speedMps, double[] onsetS, double[] buildUpS, double[] decelMps2) {
        System.arraycopy(speedMps, from, speed, 0, n);
        System.arraycopy(onsetS, from, midS, 0, n);
        System.arraycopy(buildUpS, from, buildUp, 0, n);
        System.arraycopy(decelMps2, from, decel, 0, n);
        for (int i = 0; i < n; i++) {
            midS[i] = midS[i] + 0.5 * buildUp[i];
        }
        for (int i = 0; i < n; i++) {
            braking[i] = speed[i] / decel[i];
        }
        for (int i = 0; i < n; i++) {
            stopS[i] = midS[i] + braking[i];
        }
        for (int i = 0; i < n; i++) {
            distanceM[i] = speed[i] * (midS[i] + 0.5 * braking[i]) - decel[i] * buildUp[i] * buildUp[i] * (1.0 / 24);
        }
    }
}
