package io.github.stoplag.following;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.braking.BrakeResponse;
import io.github.stoplag.kernel.DragKernel;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.Deceleration;
import io.github.stoplag.quantity.Distance;
import io.github.stoplag.quantity.Mass;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.RoadLoad;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.ClassicalRungeKuttaIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Motion with drag against closed forms, against another integrator, and against none as drag goes to zero. */
class RoadLoadMotionTest {
    private static final RoadLoad CAR = RoadLoad.of(Mass.kg(1400), 0.65, 1.225, 0.013);

    private static RoadLoad scaled(double share) {
        return RoadLoad.of(Mass.kg(1400), 0.65 * share, 1.225, 0.013 * share);
    }

    private static Pair pair(double gapM, double latencyS) {
        BrakeResponse response = new BrakeResponse(TimeSpan.seconds(0.1), TimeSpan.seconds(0.3));
        return Pair.of(
                BrakingVehicle.of(Speed.mps(36), TimeSpan.seconds(0), response, Deceleration.mps2(6)),
                BrakingVehicle.of(Speed.mps(38), TimeSpan.seconds(1.1), response, Deceleration.mps2(5.5)),
                Distance.metres(gapM),
                TimeSpan.seconds(latencyS));
    }

    @ParameterizedTest
    @CsvSource({"38, 6", "60, 0.3", "12, 9", "25, 0"})
    void constantBrakingHasTheClosedForms(double speed, double braking) {
        Trajectory motion = RoadLoadMotion.of(Trajectory.stop(speed, 0, 0, braking), CAR, TimeSpan.seconds(0));
        double atRest = braking + CAR.rolling().inMps2();
        double k = CAR.dragPerM();
        assertThat(motion.restPositionM().orElseThrow())
                .isCloseTo(DragKernel.distanceM(speed, 0, atRest, k), within(1e-7));
        assertThat(motion.restS().orElseThrow()).isCloseTo(DragKernel.timeS(speed, 0, atRest, k), within(1e-8));
        for (int i = 1; i < 40; i++) {
            double t = motion.restS().orElseThrow() * i / 40.7;
            assertThat(motion.speedAtMps(t)).isCloseTo(DragKernel.speedAtTimeMps(speed, t, atRest, k), within(1e-7));
        }
    }

    @Test
    void buildUpAgreesWithAnotherIntegrator() {
        Trajectory braking = Trajectory.startingAt(40)
                .cruise(1.2)
                .changeTo(7, 0.5)
                .hold(1)
                .changeTo(4, 0.3)
                .build();
        Trajectory motion = RoadLoadMotion.of(braking, CAR, TimeSpan.seconds(0.7));
        double[] state = {40 * 0.7, 40};
        double[] kinks = {0.7, 1.2, 1.7, 2.7, 3.0, 5.5};
        for (int i = 0; i + 1 < kinks.length; i++) {
            double from = kinks[i];
            double to = kinks[i + 1];
            FirstOrderDifferentialEquations slowing = new FirstOrderDifferentialEquations() {
                @Override
                public int getDimension() {
                    return 2;
                }

                @Override
                public void computeDerivatives(double t, double[] y, double[] rate) {
                    double inside = Math.min(Math.max(t, from + 1e-12), to - 1e-12);
                    rate[0] = y[1];
                    rate[1] = -(braking.decelerationAtMps2(inside)
                            + CAR.rolling().inMps2()
                            + CAR.dragPerM() * y[1] * y[1]);
                }
            };
            new ClassicalRungeKuttaIntegrator(1e-3).integrate(slowing, from, state, to, state);
            assertThat(motion.positionAtM(to)).isCloseTo(state[0], within(1e-8));
            assertThat(motion.speedAtMps(to)).isCloseTo(state[1], within(1e-8));
        }
        assertThat(motion.speedAtMps(0.69)).isEqualTo(40);
    }

    @Test
    void outcomeTendsToThePairWithoutDrag() {
        for (double gap : new double[] {30, 60, 90}) {
            double last = Double.POSITIVE_INFINITY;
            for (double share : new double[] {1, 0.1, 0.01, 0.001}) {
                double off = distance(
                        pair(gap, 0.2)
                                .withRoadLoad(scaled(share), scaled(share))
                                .outcome(),
                        pair(gap, 0.2).outcome());
                assertThat(off).isLessThan(0.2 * last);
                last = off;
            }
            assertThat(last).isLessThan(0.02);
            assertThat(pair(gap, 0.2).withRoadLoad(RoadLoad.NONE, RoadLoad.NONE).outcome())
                    .isEqualTo(pair(gap, 0.2).encounter().outcome());
        }
    }

    private static double distance(PairOutcome one, PairOutcome other) {
        if (one instanceof PairOutcome.Contact a && other instanceof PairOutcome.Contact b) {
            return Math.abs(a.closingSpeed().inMps() - b.closingSpeed().inMps());
        }
        return Math.abs(((PairOutcome.NoContact) one).smallestGap().inMetres()
                - ((PairOutcome.NoContact) other).smallestGap().inMetres());
    }

    @Test
    void gapNeededIsTheBorderOfTheOutcomeWithDrag() {
        DragPair dragging = pair(1, 0.2).withRoadLoad(CAR, RoadLoad.of(Mass.kg(12000), 6, 1.225, 0.008));
        double needed = dragging.gapNeeded().orElseThrow().inMetres();
        DragPair more = pair(needed + 1e-6, 0.2).withRoadLoad(dragging.leaderLoad(), dragging.followerLoad());
        DragPair less = pair(needed - 1e-6, 0.2).withRoadLoad(dragging.leaderLoad(), dragging.followerLoad());
        assertThat(more.outcome()).isInstanceOf(PairOutcome.NoContact.class);
        assertThat(less.outcome()).isInstanceOf(PairOutcome.Contact.class);
        LatencyBorder.UpTo border = (LatencyBorder.UpTo) more.largestLampLatency();
        assertThat(border.latency().inSeconds()).isCloseTo(0.2, within(1e-6));
    }

    @Test
    void equalLoadOnBothShortensBothStops() {
        Encounter with = pair(50, 0).withRoadLoad(CAR, CAR).encounter();
        assertThat(with.leader().restPositionM().orElseThrow())
                .isLessThan(pair(50, 0).leaderTrajectory().restPositionM().orElseThrow());
        assertThat(with.leader().restPositionM().orElseThrow())
                .isGreaterThan(
                        0.9 * pair(50, 0).leaderTrajectory().restPositionM().orElseThrow());
    }

    @Test
    void vehicleThatDragAloneSlowsIsRefused() {
        RoadLoad drag = RoadLoad.of(Mass.kg(1400), 0.65, 1.225, 0);
        assertThatThrownBy(() -> RoadLoadMotion.of(Trajectory.startingAt(30).build(), drag, TimeSpan.seconds(0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("deceleration at rest with brakes and rolling resistance must be in (0, 200] m/s²,"
                        + " got 0 m/s²");
        assertThatThrownBy(() -> RoadLoadMotion.of(Trajectory.startingAt(30).build(), CAR, TimeSpan.seconds(-1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("engine-off time must be in [0, 1000000] s, got -1 s");
    }
}
