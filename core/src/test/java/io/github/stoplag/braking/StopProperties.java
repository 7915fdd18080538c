package io.github.stoplag.braking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.kernel.StopKernel;
import io.github.stoplag.kernel.Trajectory;
import io.github.stoplag.quantity.FrictionCoefficient;
import io.github.stoplag.quantity.Grade;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.quantity.TimeSpan;
import io.github.stoplag.road.Road;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class StopProperties {
    private static double stoppingM(double speedMps, double reactionS, double friction, double grade) {
        BrakeResponse response = new BrakeResponse(TimeSpan.seconds(0.1), TimeSpan.seconds(0.3));
        Road road = Road.of(FrictionCoefficient.of(friction), Grade.ratio(grade));
        return ((Stop) Stop.onRoad(Speed.mps(speedMps), TimeSpan.seconds(reactionS), response, road))
                .stoppingDistance()
                .inMetres();
    }

    @Property(seed = "42")
    void stoppingDistanceGrowsWithSpeedReactionAndDowngrade(
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 60) double speedMps,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 5) double reactionS,
            @ForAll @Scale(6) @DoubleRange(min = 0.3, max = 1.2) double friction,
            @ForAll @Scale(6) @DoubleRange(min = -0.2, max = 0.2) double grade,
            @ForAll @Scale(6) @DoubleRange(min = 1e-3, max = 0.05) double more) {
        double base = stoppingM(speedMps, reactionS, friction, grade);
        assertThat(stoppingM(speedMps + more, reactionS, friction, grade)).isGreaterThan(base);
        assertThat(stoppingM(speedMps, reactionS + more, friction, grade)).isGreaterThan(base);
        assertThat(stoppingM(speedMps, reactionS, friction, grade - more)).isGreaterThan(base);
        assertThat(stoppingM(speedMps, reactionS, friction + more, grade)).isLessThan(base);
    }

    @Property(seed = "42")
    void twiceTheSpeedTakesFourTimesTheBrakingDistance(
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 70) double speedMps,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 15) double decelMps2) {
        double once = StopKernel.brakingDistanceM(speedMps, 0, decelMps2);
        assertThat(StopKernel.brakingDistanceM(2 * speedMps, 0, decelMps2)).isCloseTo(4 * once, within(1e-12 * once));
    }

    /** Lengths times L and times times T: speed L/T, deceleration L/T². */
    @Property(seed = "42")
    void distanceScalesWithTheUnitsOfLengthAndTime(
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 50) double speedMps,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 3) double onsetS,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 3) double buildUpS,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 15) double decelMps2,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 10) double length,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 10) double time) {
        double once = StopKernel.stoppingDistanceM(speedMps, onsetS, buildUpS, decelMps2);
        double scaled = StopKernel.stoppingDistanceM(
                speedMps * length / time, onsetS * time, buildUpS * time, decelMps2 * length / (time * time));
        assertThat(scaled).isCloseTo(length * once, within(1e-11 * length * once));
    }

    @Property(seed = "42")
    void positionAndSpeedAreContinuousAtTheJoins(
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 60) double speedMps,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 3) double onsetS,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 3) double buildUpS,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 15) double decelMps2) {
        Trajectory motion = Trajectory.stop(speedMps, onsetS, buildUpS, decelMps2);
        double before = 1e-7;
        for (Trajectory.Phase phase : motion.phases()) {
            double t = phase.startS();
            double left = Math.max(0, t - before);
            double dt = t - left;
            assertThat(motion.speedAtMps(left)).isCloseTo(motion.speedAtMps(t), within(decelMps2 * dt + 1e-9));
            assertThat(motion.positionAtM(left)).isCloseTo(motion.positionAtM(t), within(speedMps * dt + 1e-9));
        }
        double rest = motion.restS().orElseThrow();
        assertThat(motion.positionAtM(rest + 100))
                .isCloseTo(StopKernel.stoppingDistanceM(speedMps, onsetS, buildUpS, decelMps2), within(1e-9));
        assertThat(rest).isCloseTo(StopKernel.stoppingTimeS(speedMps, onsetS, buildUpS, decelMps2), within(1e-9));
    }
}
