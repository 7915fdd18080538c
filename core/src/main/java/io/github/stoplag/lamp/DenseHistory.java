package io.github.stoplag.lamp;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.ode.sampling.StepHandler;
import org.apache.commons.math3.ode.sampling.StepInterpolator;

/**
 * The steps of an integration, kept as values at eight Chebyshev points each and read by barycentric interpolation. The
 * integrator's own record moves while it is read, so two threads could not share it.
 */
final class DenseHistory implements StepHandler {
    private static final int POINTS = 8;

    private final List<double[]> nodesS = new ArrayList<>();
    private final List<double[][]> values = new ArrayList<>();

    @Override
    public void init(double t0, double[] y0, double t) {}

    @Override
    public void handleStep(StepInterpolator interpolator, boolean isLast) {
        double from = interpolator.getPreviousTime();
        double to = interpolator.getCurrentTime();
        double[] at = new double[POINTS];
        double[][] state = new double[POINTS][];
        for (int i = 0; i < POINTS; i++) {
            at[i] = i == POINTS - 1 ? to : from + (to - from) * (1 - Math.cos(Math.PI * i / (POINTS - 1))) / 2;
            interpolator.setInterpolatedTime(at[i]);
            state[i] = interpolator.getInterpolatedState().clone();
        }
        nodesS.add(at);
        values.add(state);
    }

    double endS() {
        return nodesS.get(nodesS.size() - 1)[POINTS - 1];
    }

    /** Gives every point kept, in rising order. */
    double[] gridS() {
        return nodesS.stream().flatMapToDouble(Arrays::stream).distinct().toArray();
    }

    double value(double timeS, int component) {
        int lo = 0;
        int hi = nodesS.size() - 1;
        while (lo < hi) {
            int mid = (lo + hi) / 2;
            if (timeS <= nodesS.get(mid)[POINTS - 1]) {
                hi = mid;
            } else {
                lo = mid + 1;
            }
        }
        double[] at = nodesS.get(lo);
        double[][] state = values.get(lo);
        double above = 0;
        double below = 0;
        for (int i = 0; i < POINTS; i++) {
            double off = timeS - at[i];
            if (off == 0) {
                return state[i][component];
            }
            double weight = (i % 2 == 0 ? 1 : -1) * (i == 0 || i == POINTS - 1 ? 0.5 : 1) / off;
            above += weight * state[i][component];
            below += weight;
        }
        return above / below;
    }
}
