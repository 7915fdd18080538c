package io.github.stoplag.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class StopKernelTest {
    @Test
    void buildUpOfLengthZeroIsTheTextbookFormula() {
        assertThat(StopKernel.brakingDistanceM(30, 0, 7)).isCloseTo(900 / 14.0, within(1e-12));
        assertThat(StopKernel.brakingTimeS(30, 0, 7)).isCloseTo(30 / 7.0, within(1e-14));
    }

    @Test
    void distanceIsTheIntegralOfSpeedOverTime() {
        SplittableRandom random = new SplittableRandom(11);
        int insideBuildUp = 0;
        for (int i = 0; i < 500; i++) {
            double v = random.nextDouble(0.1, 60);
            double tr = random.nextDouble(0.01, 3);
            double a = random.nextDouble(0.5, 15);
            insideBuildUp += v < a * tr / 2 ? 1 : 0;
            // second way: Simpson's rule on the speed, exact for the piecewise quadratic speed, cut at the end of the
            // build-up
            double end = StopKernel.brakingTimeS(v, tr, a);
            double cut = Math.min(tr, end);
            double simpson = simpson(0, cut, v, tr, a) + simpson(cut, end, v, tr, a);
            assertThat(StopKernel.brakingDistanceM(v, tr, a)).isCloseTo(simpson, within(1e-9));
            assertThat(speed(end, v, tr, a)).isCloseTo(0, within(1e-9));
        }
        assertThat(insideBuildUp).isBetween(20, 480);
    }

    private static double simpson(double from, double to, double v, double tr, double a) {
        return (to - from) / 6 * (speed(from, v, tr, a) + 4 * speed((from + to) / 2, v, tr, a) + speed(to, v, tr, a));
    }

    private static double speed(double t, double v, double tr, double a) {
        return t <= tr ? v - a * t * t / (2 * tr) : v - a * tr / 2 - a * (t - tr);
    }

    @Test
    void bothFormsAgreeWhereTheStopEndsWithTheBuildUp() {
        double v = 0.5 * 6 * 1.5;
        double above = StopKernel.brakingDistanceM(Math.nextUp(v), 1.5, 6);
        double below = StopKernel.brakingDistanceM(Math.nextDown(v), 1.5, 6);
        // both forms give a tᵣ²/3 there
        assertThat(above).isCloseTo(6 * 1.5 * 1.5 / 3, within(1e-13));
        assertThat(below).isCloseTo(6 * 1.5 * 1.5 / 3, within(1e-13));
    }

    @Test
    void batchEqualsScalarIncludingTheOddCases() {
        int n = 20_000;
        double[] v = new double[n];
        double[] onset = new double[n];
        double[] tr = new double[n];
        double[] a = new double[n];
        SplittableRandom random = new SplittableRandom(12);
        for (int i = 0; i < n; i++) {
            v[i] = random.nextInt(20) == 0 ? 0 : random.nextDouble(0, 60);
            onset[i] = random.nextDouble(0, 3);
            tr[i] = random.nextInt(4) == 0 ? 0 : random.nextDouble(0, 3);
            a[i] = random.nextInt(20) == 0 ? random.nextInt(2) - 1.0 : random.nextDouble(0.2, 15);
        }
        v[5] = Double.NaN;
        a[6] = Double.NaN;
        double[] distance = new double[n];
        double[] time = new double[n];
        StopKernel.stoppingDistances(v, onset, tr, a, distance);
        StopKernel.stoppingTimes(v, onset, tr, a, time);
        double[] distanceBeside = new double[n];
        double[] timeBeside = new double[n];
        StopKernel.stoppingDistancesAndTimes(v, onset, tr, a, distanceBeside, timeBeside);
        assertThat(distanceBeside).isEqualTo(distance);
        assertThat(timeBeside).isEqualTo(time);
        int never = 0;
        for (int i = 0; i < n; i++) {
            double s = StopKernel.stoppingDistanceM(v[i], onset[i], tr[i], a[i]);
            double t = StopKernel.stoppingTimeS(v[i], onset[i], tr[i], a[i]);
            never += Double.isInfinite(s) ? 1 : 0;
            assertThat(distance[i]).isCloseTo(s, within(Double.isFinite(s) ? 1e-12 * (1 + s) : 0.0));
            assertThat(time[i]).isCloseTo(t, within(Double.isFinite(t) ? 1e-12 * (1 + t) : 0.0));
        }
        assertThat(never).isPositive();
    }

    @Test
    void batchRefusesArraysOfDifferentLength() {
        double[] three = new double[3];
        assertThatThrownBy(() -> StopKernel.stoppingDistances(three, three, three, new double[2], three))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("arrays must have one length, got 3, 3, 3, 2, 3");
        assertThatThrownBy(() -> StopKernel.stoppingTimes(three, three, three, three, new double[4]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("arrays must have one length, got 3, 3, 3, 3, 4");
        assertThatThrownBy(() -> StopKernel.stoppingDistancesAndTimes(three, three, three, three, three, three))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("distances and times must go into two arrays, got one for both");
        assertThatThrownBy(() -> StopKernel.stoppingDistancesAndTimes(three, three, three, three, three, new double[4]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("arrays must have one length, got 3, 3, 3, 3, 4");
    }

    @Test
    void whatNeverStopsGoesToTheLimitAndNaNStaysNaN() {
        assertThat(StopKernel.stoppingDistanceM(20, 1, 0.3, 0)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(StopKernel.stoppingTimeS(20, 1, 0.3, -1)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(StopKernel.stoppingDistanceM(20, 1, 0.3, Double.NaN)).isNaN();
        assertThat(StopKernel.stoppingTimeS(Double.NaN, 1, 0.3, 7)).isNaN();
    }

    @Test
    void standingVehicleHasStopped() {
        assertThat(StopKernel.stoppingDistanceM(0, 1, 0.3, 7)).isZero();
        assertThat(StopKernel.stoppingTimeS(0, 1, 0.3, 7)).isZero();
        assertThat(StopKernel.stoppingTimeS(0, 1, 0.3, 0)).isZero();
    }

    @Test
    void speedAndDecelerationFromASkidAreInverse() {
        assertThat(StopKernel.decelerationToStopMps2(StopKernel.speedToStopMps(30.5, 5.39), 30.5))
                .isCloseTo(5.39, within(1e-14));
    }
}
